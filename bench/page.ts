/**
 * What the page costs its user, in a real browser: from a keystroke, a drag or a visit to what is painted. The page's own clock is read, from
 * the event's own time to the first task after the frame that shows what came of it.
 */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { pageServer } from '../src/cli/commands/serve.ts';

const root = resolve(import.meta.dirname, '..');
/** One frame of a screen at 60 Hz, ms. */
export const frame = 1000 / 60;
const field = 'driving.outside';

export interface PageRow {
  readonly what: string;
  /** Milliseconds, in the order measured. */
  readonly ms: readonly number[];
  /** What is wanted at the 95th percentile, ms; null: nothing was promised. */
  readonly wanted: number | null;
}

/** Value below which so many per cent of the sample lie; the next measured one. @param share 0 to 1 */
export function percentile(sample: readonly number[], share: number): number {
  const sorted = [...sample].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

interface Marks {
  start: number;
  picture: number | null;
  checks: number | null;
  whole: number | null;
  mesh: number | null;
}
/** What watch-page.js keeps in the page. */
const inPage = (page: Page, what: string) => page.evaluate(what) as Promise<unknown>;
/** Waits until a number is there. */
const isNumber = (page: Page, what: string) =>
  page.waitForFunction(`Number.isFinite(${what} ?? NaN)`, null, { timeout: 60_000, polling: 20 });

const marksOf = (page: Page) => inPage(page, 'marks') as Promise<Marks>;

/** Waits until a mark is a number. */
async function until(page: Page, key: keyof Marks): Promise<number> {
  await isNumber(page, `marks.${key}`);
  return (await marksOf(page))[key] as number;
}

/** Keystrokes that change the joint back and forth, each after everything has settled. */
async function keystrokes(page: Page, count: number, isMeshed: boolean) {
  const rows: Marks[] = [];
  for (let i = -4; i < count; i++) {
    await page.keyboard.press(i % 2 === 0 ? '5' : 'Backspace');
    await until(page, 'whole');
    if (isMeshed) await until(page, 'mesh');
    if (i >= 0) rows.push(await marksOf(page));
  }
  return rows;
}

/** The same while somebody goes on typing, a key every 150 ms. */
async function typing(page: Page, count: number): Promise<number[]> {
  const ms: number[] = [];
  for (let i = -4; i < count; i++) {
    await page.keyboard.press(i % 2 === 0 ? '5' : 'Backspace');
    const from = Date.now();
    const picture = await until(page, 'picture');
    if (i >= 0) ms.push(picture);
    await page.waitForTimeout(Math.max(0, 150 - (Date.now() - from)));
  }
  return ms;
}

async function drags(page: Page, count: number) {
  const box = await page.locator(`.field:has([name="${field}"]) label`).boundingBox();
  if (!box) throw new Error('no label to drag');
  const [x, y] = [box.x + 5, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const ms: number[] = [];
  for (let i = 0; i < count; i++) {
    await page.mouse.move(x + 6.5 * (1 + (i % 8)), y);
    ms.push(await until(page, 'picture'));
  }
  // And without waiting: how many pictures come in a second of steady drag?
  await inPage(page, 'pictures = 0');
  const from = Date.now();
  for (let i = 0; Date.now() - from < 2000; i++) await page.mouse.move(x + 6.5 * (1 + (i % 8)), y);
  await page.mouse.up();
  const pictures = (await inPage(page, 'pictures')) as number;
  return { ms, aSecond: pictures / 2 };
}

/** @param runs of each measurement */
export async function pageCosts(runs = 40): Promise<{ readonly rows: readonly PageRow[]; readonly aSecond: number }> {
  const folder = join(root, 'dist/page');
  if (!existsSync(join(folder, 'index.html'))) throw new Error('the page is not built: npm run build');
  const { server, port } = await pageServer(0, folder);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  try {
    const open = async () => {
      const context = await browser.newContext({ viewport: { width: 1400, height: 1000 }, bypassCSP: true });
      const page = await context.newPage();
      await page.addInitScript({ path: join(root, 'bench/watch-page.js') });
      await page.goto(`http://127.0.0.1:${port}/`);
      await isNumber(page, 'firstPicture');
      return page;
    };
    const first: number[] = [];
    for (let i = 0; i < Math.max(4, runs / 4); i++) {
      const page = await open();
      first.push((await inPage(page, 'firstPicture')) as number);
      await page.context().close();
    }
    const page = await open();
    await page.locator('main[aria-busy="false"]').waitFor();
    await page.locator(`[name="${field}"]`).focus();
    await page.keyboard.press('End');
    await page.keyboard.press('.');
    await page.locator('main[aria-busy="false"]').waitFor();
    const keys = await keystrokes(page, runs, false);
    const typed = await typing(page, runs);
    await page.locator('main[aria-busy="false"]').waitFor();
    await page.locator('.space summary').click();
    await page.locator('canvas[data-bodies]').waitFor();
    // A field that was left shows its number as the job has it, without the point that the next digit goes behind.
    await page.locator(`[name="${field}"]`).fill('112.');
    await page.waitForTimeout(1500);
    const meshed = await keystrokes(page, runs / 2, true);
    await page.locator('.space summary').click();
    const { ms, aSecond } = await drags(page, runs);
    const of = (key: 'picture' | 'checks' | 'whole') => keys.map((marks) => marks[key] as number);
    return {
      aSecond,
      rows: [
        { what: 'keystroke to the pictures of the parts and the quick findings', ms: of('picture'), wanted: frame },
        { what: 'the same in the middle of typing, a key every 150 ms', ms: typed, wanted: frame },
        { what: 'step of a drag to the same', ms, wanted: frame },
        { what: 'keystroke to all findings', ms: of('checks'), wanted: frame },
        { what: 'keystroke to the end of the search and every picture', ms: of('whole'), wanted: null },
        {
          what: 'view in space open: from the pictures to the new bodies',
          ms: meshed.map(({ mesh, picture }) => Math.max(0, (mesh as number) - (picture as number))),
          wanted: 2 * frame,
        },
        { what: 'visit with nothing cached to the first picture', ms: first, wanted: null },
      ],
    };
  } finally {
    await browser.close();
    server.close();
    server.closeAllConnections();
  }
}
