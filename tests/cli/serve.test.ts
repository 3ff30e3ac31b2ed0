/** The server of the page: this machine only, its own files only. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pageServer } from '../../src/cli/commands/serve.ts';

let port = 0;
let close = () => {};
beforeAll(async () => {
  const outer = mkdtempSync(join(tmpdir(), 'served-'));
  const folder = join(outer, 'page');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outer, 'secret.html'), 'secret');
  mkdirSync(join(outer, 'page-beside'));
  writeFileSync(join(outer, 'page-beside', 'x.html'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(folder, 'assets', 'a.js'), '1');
  writeFileSync(join(folder, 'notes.txt'), 'not served');
  const served = await pageServer(0, folder);
  port = served.port;
  close = () => {
    served.server.close();
    served.server.closeAllConnections();
  };
});
afterAll(() => close());

interface Reply {
  readonly status: number;
  readonly body: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

function get(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Reply> {
  return new Promise((done, fail) => {
    const asked = request(
      { host: '127.0.0.1', port, path, method, headers: { host: `127.0.0.1:${port}`, ...headers } },
      (response) => {
        let body = '';
        response.on('data', (part) => {
          body += part;
        });
        response.on('end', () => done({ status: response.statusCode ?? 0, body, headers: response.headers }));
      },
    );
    asked.on('error', fail);
    asked.end();
  });
}

describe('what it sends', () => {
  it('its own page and files, with a policy that lets nothing else in or out', async () => {
    const page = await get('/');
    expect(page.status).toBe(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toMatch(/script-src 'self'(?! 'unsafe-inline')/);
    expect(policy).toContain("connect-src 'self'");
    expect((await get('/assets/a.js')).headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect((await get('/?x=1')).status).toBe(200);
    expect((await get('/', {}, 'HEAD')).body).toBe('');
  });
});

describe('what it refuses', () => {
  it.each([
    '/../secret.html',
    '/..%2fsecret.html',
    '/%2e%2e/secret.html',
    '/assets/../../secret.html',
    '/../page-beside/x.html',
    '/notes.txt',
    '/nothing.html',
    '/assets/',
    '//etc/passwd',
    '/index.html%00.js',
  ])('%s', async (path) => {
    const { status, body } = await get(path);
    expect([400, 404]).toContain(status);
    expect(body).not.toContain('secret');
  });

  it('addresses that cannot be read', async () => {
    expect((await get('/%zz')).status).toBe(400);
  });

  it.each(['evil.example', 'localhost.evil.example:80', '192.168.1.4:4477', '0.0.0.0'])(
    'another host name: %s',
    async (host) => {
      expect((await get('/', { host })).status).toBe(403);
    },
  );

  it('pages from elsewhere, and anything but reading', async () => {
    expect((await get('/', { origin: 'http://evil.example' })).status).toBe(403);
    expect((await get('/', { origin: 'null' })).status).toBe(403);
    expect((await get('/', { origin: `http://127.0.0.1:${port}` })).status).toBe(200);
    expect((await get('/', {}, 'POST')).status).toBe(405);
    expect((await get('/', {}, 'DELETE')).status).toBe(405);
  });
});
