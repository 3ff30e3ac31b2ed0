/** The built page in Debian's Chromium, served by our own server. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { pageServer } from '../../src/cli/commands/serve.ts';
import { builtPage } from '../program.ts';

const root = resolve(import.meta.dirname, '../..');

export interface Bench {
  readonly browser: Browser;
  readonly address: string;
  /** A page that remembers nothing; everything it asked for, and every complaint on its console. */
  open(options?: { readonly width?: number; readonly height?: number }): Promise<Opened>;
  close(): Promise<void>;
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly requests: readonly string[];
  readonly complaints: readonly string[];
}

/** Serves the page as it is built, and starts the browser. */
export async function openBench(): Promise<Bench> {
  const folder = await builtPage();
  const { server, port } = await pageServer(0, folder);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const address = `http://127.0.0.1:${port}/`;
  /** The page of the last test: what a browser keeps of a page it has seen makes the next visit quicker. */
  let kept: { readonly context: BrowserContext; readonly page: Page } | undefined;
  /** One that a test has made its own: it would go on working beside the next. */
  let left: BrowserContext | undefined;
  /** The same page as if it had never been here; a new one where a test has got hold of the browser's own side of it. */
  async function visited(): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
    if (kept && !kept.page.isClosed()) {
      const { page } = kept;
      page.removeAllListeners();
      await page.evaluate(() => {
        localStorage.clear();
        sessionStorage.clear();
      });
      await page.emulateMedia({ colorScheme: null, media: null });
      return kept;
    }
    await left?.close().catch(() => undefined);
    const context = await browser.newContext({ acceptDownloads: true });
    return { context, page: await context.newPage() };
  }
  return {
    browser,
    address,
    async open({ width = 1400, height = 1000 } = {}) {
      const { context, page } = await visited();
      kept = { context, page };
      await page.setViewportSize({ width, height });
      const requests: string[] = [];
      const complaints: string[] = [];
      page.on('request', (request) => requests.push(request.url()));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      page.on('pageerror', (fault) => complaints.push(fault.message));
      await page.goto(address);
      await page.waitForSelector('#picture-section svg');
      return {
        page,
        get context() {
          // Routes and scripts that are put there stay there.
          kept = undefined;
          left = context;
          return context;
        },
        requests,
        complaints,
      };
    },
    async close() {
      await browser.close();
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Waits until nothing is being worked out. An edit counts from the moment it is typed. */
export const settled = (page: Page) => page.locator('main[aria-busy="false"]').waitFor({ timeout: 60_000 });

/** The job as text, as the page would save it. */
export async function jobText(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'text', exact: true }).click();
  const text = await page.locator('#job-text').inputValue();
  await page.getByRole('button', { name: 'sheet', exact: true }).click();
  return text;
}

/**
 * From now on the page's saved files are caught before the browser takes them: a browser holds back a page that saves many in a row.
 * @returns the bytes of the last one
 */
export async function catchSaved(page: Page): Promise<() => Promise<Buffer>> {
  await page.evaluate(() => {
    const made = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (blob: Blob) => {
      (window as unknown as { saved: Blob }).saved = blob;
      return made(blob);
    };
    HTMLAnchorElement.prototype.click = () => undefined;
  });
  return async () => {
    const address = await page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          const reader = new FileReader();
          reader.onload = () => resolve(String(reader.result));
          reader.readAsDataURL((window as unknown as { saved: Blob }).saved);
        }),
    );
    return Buffer.from(address.slice(address.indexOf(',') + 1), 'base64');
  };
}

/** Type into a field of the sheet, as a person does, and wait for what comes of it. */
export async function fill(page: Page, key: string, typed: string): Promise<void> {
  const field = page.locator(`[name="${key}"]`);
  if ((await field.evaluate((element) => element.tagName)) === 'SELECT') await field.selectOption(typed);
  else {
    await field.fill(typed);
    await field.press('Tab');
  }
  await settled(page);
}

/** What axe blames on a page, or within one part of it: nothing, where everybody can use it. */
export async function blamedByAxe(page: Page, within = 'html'): Promise<string[]> {
  await page.evaluate(readFileSync(resolve(root, 'node_modules/axe-core/axe.min.js'), 'utf8'));
  return page.evaluate(async (of) => {
    const { axe } = window as unknown as {
      axe: { run(of: string): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run(of)).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
  }, within);
}
