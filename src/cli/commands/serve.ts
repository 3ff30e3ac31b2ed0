/** `serve`: the page, on this machine only. Sends nothing but its own built files. */
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, resolve, sep } from 'node:path';
import { exit, type Io, UsageError } from '../io.ts';
import { pageFolder } from '../places.ts';

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.icc': 'application/vnd.iccprofile',
  '.ttf': 'font/ttf',
};

/** Scripts come from this address only; nothing may be sent elsewhere; pictures style themselves. */
const policy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "connect-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/**
 * The solid modeller's glue writes functions as text and has the browser read them. It runs in a worker only, and a worker goes by the policy
 * of its own file: the page itself stays without.
 */
const workerPolicy = policy.replace("'wasm-unsafe-eval'", "'wasm-unsafe-eval' 'unsafe-eval'");
const isWorker = (file: string) => /[\\/]worker-[\w-]+\.js$/.test(file);

/** Names by which this machine may be called on its own loopback address. */
const isLocal = (host: string | undefined, port: number) =>
  host !== undefined && [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`].includes(host.toLowerCase());

function refuse(response: ServerResponse, code: number, why: string): void {
  response.writeHead(code, { 'Content-Type': 'text/plain; charset=utf-8', 'X-Content-Type-Options': 'nosniff' });
  response.end(`${why}\n`);
}

async function respond(request: IncomingMessage, response: ServerResponse, root: string, port: number): Promise<void> {
  const { method, headers } = request;
  // A page elsewhere that has its name pointed at this machine is not this page.
  if (!isLocal(headers.host, port)) return refuse(response, 403, 'This page is served to this machine only.');
  if (headers.origin !== undefined && !isLocal(headers.origin.replace(/^http:\/\//, ''), port)) {
    return refuse(response, 403, 'This page answers only itself.');
  }
  if (method !== 'GET' && method !== 'HEAD') return refuse(response, 405, 'Nothing can be sent here.');
  const asked = (request.url ?? '/').split(/[?#]/)[0] ?? '/';
  let path: string;
  try {
    path = decodeURIComponent(asked);
  } catch {
    return refuse(response, 400, 'This address cannot be read.');
  }
  const file = resolve(root, `.${normalize(`/${path.endsWith('/') ? `${path}index.html` : path}`)}`);
  const type = mediaTypes[extname(file)];
  if (!file.startsWith(root.endsWith(sep) ? root : root + sep) || path.includes('\0') || type === undefined) {
    return refuse(response, 404, 'There is no such file.');
  }
  try {
    const bytes = await readFile(file);
    response.writeHead(200, {
      'Content-Type': type,
      'Content-Length': bytes.length,
      'Content-Security-Policy': isWorker(file) ? workerPolicy : policy,
      'X-Content-Type-Options': 'nosniff',
      'Referrer-Policy': 'no-referrer',
      'Cross-Origin-Opener-Policy': 'same-origin',
      'Cross-Origin-Resource-Policy': 'same-origin',
      'Cache-Control': 'no-cache',
    });
    response.end(method === 'HEAD' ? undefined : bytes);
  } catch {
    refuse(response, 404, 'There is no such file.');
  }
}

/** The folder of the built page, or a sentence on how to get it. */
async function builtPage(): Promise<string> {
  const isThere = await readFile(join(pageFolder, 'index.html')).then(
    () => true,
    () => false,
  );
  if (isThere) return resolve(pageFolder);
  throw new UsageError('The page is not built yet. Run: npm run build');
}

/** A server of the page on the loopback address. @param port 0 for any free one */
export async function pageServer(
  port: number,
  folder?: string,
): Promise<{ readonly server: Server; readonly port: number }> {
  const root = folder ?? (await builtPage());
  let actual = port;
  const server = createServer((request, response) => {
    respond(request, response, root, actual).catch(() => refuse(response, 500, 'This file could not be sent.'));
  });
  server.requestTimeout = 10_000;
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(port, '127.0.0.1', done);
  });
  const address = server.address();
  if (address !== null && typeof address === 'object') actual = address.port;
  return { server, port: actual };
}

/** Serve until the process is told to end. */
export async function serve(io: Io, { port }: { readonly port: number }): Promise<number> {
  const { server, port: actual } = await pageServer(port).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'EADDRINUSE')
      throw new UsageError(`Port ${port} is taken. Choose another: flangewright serve --port ${port + 1}`);
    if (fault.code === 'EACCES') throw new UsageError(`Port ${port} may not be used here. Choose one above 1024.`);
    throw fault;
  });
  io.out(`The page is at http://127.0.0.1:${actual}/ on this machine only. Ctrl-C ends it.\n`);
  await new Promise<void>((done) => {
    const end = () => {
      server.close();
      server.closeAllConnections();
      done();
    };
    process.once('SIGINT', end);
    process.once('SIGTERM', end);
  });
  return exit.clean;
}
