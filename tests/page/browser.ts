/** The built page in Debian's Chromium, served by our own server. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { pageServer } from '../../src/cli/commands/serve.ts';

const root = resolve(import.meta.dirname, '../..');

export interface Bench {
  readonly browser: Browser;
  readonly address: string;
  /** A page with a memory of its own; everything it asked for, and every complaint on its console. */
  open(options?: { readonly width?: number; readonly height?: number }): Promise<Opened>;
  close(): Promise<void>;
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  readonly complaints: readonly string[];
}

/** Builds the page into a folder of its own, serves it, and starts the browser. */
export async function openBench(): Promise<Bench> {
  const folder = join(mkdtempSync(join(tmpdir(), 'page-')), 'page');
  execFileSync(
    process.execPath,
    [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'],
    {
      cwd: root,
    },
  );
  const { server, port } = await pageServer(0, folder);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const address = `http://127.0.0.1:${port}/`;
  return {
    browser,
    address,
    async open({ width = 1400, height = 1000 } = {}) {
      const context = await browser.newContext({ viewport: { width, height }, acceptDownloads: true });
      const page = await context.newPage();
      const requests: string[] = [];
      const complaints: string[] = [];
      page.on('request', (request) => requests.push(request.url()));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      page.on('pageerror', (fault) => complaints.push(fault.message));
      await page.goto(address);
      await page.waitForSelector('#picture-section svg');
      return { page, context, requests, complaints };
    },
    async close() {
      await browser.close();
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Waits until nothing is being worked out. */
export const settled = (page: Page) =>
  page.waitForFunction(() => document.querySelector('.notice')?.textContent !== 'working it out...');

/** The job as text, as the page would save it. */
export async function jobText(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'text', exact: true }).click();
  const text = await page.locator('#job-text').inputValue();
  await page.getByRole('button', { name: 'sheet', exact: true }).click();
  return text;
}

/** Type into a field of the sheet, as a person does, and wait for what comes of it. */
export async function fill(page: Page, key: string, typed: string): Promise<void> {
  const field = page.locator(`[name="${key}"]`);
  if ((await field.evaluate((element) => element.tagName)) === 'SELECT') await field.selectOption(typed);
  else {
    await field.fill(typed);
    await field.press('Tab');
  }
  await page.waitForTimeout(50);
  await settled(page);
}
