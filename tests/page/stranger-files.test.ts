/** Made files belong to the job that is shown; a job is opened, begun, emptied and named without losing anything. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { editJob, holdsNothing, judgeJob, makeFiles } from '../../src/core.ts';
import { nameOf, slug, titleOf } from '../../src/page/job/job-name.ts';
import { patterns } from '../validate/help.ts';
import { type Bench, blamedByAxe, fill, jobText, openBench, settled } from './browser.ts';

const presets = resolve(import.meta.dirname, '../../presets');
const textOf = (name: string) => readFileSync(join(presets, `${name}.job.yaml`), 'utf8');

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 240_000);
afterAll(() => bench?.close());

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const called = (page: Page) => page.getByLabel('called', { exact: true });
const saves = (page: Page) => page.locator('[aria-label="Files"] button.file');

async function saved(page: Page, name: string | RegExp): Promise<{ readonly file: string; readonly bytes: Buffer }> {
  const waiting = page.waitForEvent('download', { timeout: 30_000 });
  await button(page, name).click();
  const download = await waiting;
  return { file: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

async function emptied(page: Page): Promise<void> {
  await button(page, 'text').click();
  await page.locator('#job-text').fill('');
  await page.locator('#job-text').press('Tab');
  await button(page, 'sheet').click();
  await settled(page);
}

describe('made files', () => {
  it('are never of another job than the one shown', async () => {
    const { page, complaints } = await bench.open();
    await settled(page);
    const outline = button(page, /^wheel outline/);
    await outline.click();
    await saves(page).first().waitFor();
    const before = await saved(page, 'save orchard-truck-wheel.dxf');
    await fill(page, 'wheel.teeth', '72');
    expect(await saves(page).count()).toBe(0);
    expect(await page.locator('[aria-label="Files"]').textContent()).toContain('of the job as it was before');
    // A number typed and the button pressed at once: the file is of what was typed.
    await page.locator('[name="wheel.teeth"]').fill('71');
    await outline.click();
    await saves(page).first().waitFor();
    const { bytes } = await saved(page, 'save orchard-truck-wheel.dxf');
    const text = await jobText(page);
    expect(text).toMatch(/teeth: 71/);
    const judged = judgeJob(text, 'job', patterns);
    if (!judged.ok) throw new Error('no job');
    const options = { base: 'orchard-truck', jobName: 'orchard-truck.job.yaml', only: ['outline'], force: false };
    const { files } = await makeFiles(judged.joint, judged.findings, options);
    expect(bytes.equals(Buffer.from(files.find(({ name }) => name === 'orchard-truck-wheel.dxf')?.bytes ?? []))).toBe(
      true,
    );
    expect(bytes.equals(before.bytes)).toBe(false);
    // An example, or a new name, is another job too.
    await called(page).fill('Shed 4');
    await called(page).press('Tab');
    expect(await saves(page).count()).toBe(0);
    await page.getByLabel('start from').selectOption('kart');
    await settled(page);
    expect(await saves(page).count()).toBe(0);
    expect(complaints).toEqual([]);
  }, 120_000);

  it('are not offered while a field shows what the job could not take', async () => {
    const { page } = await bench.open();
    await settled(page);
    await button(page, /^wheel outline/).click();
    await saves(page).first().waitFor();
    // A text that cannot be read takes no edits; once it is mended, the field still shows what was typed.
    const before = await jobText(page);
    await button(page, 'text').click();
    await page.locator('#job-text').fill(`${before}wheel: [\n`);
    await page.locator('#job-text').press('Tab');
    await button(page, 'sheet').click();
    await settled(page);
    await fill(page, 'title', 'Shed');
    await button(page, 'undo').click();
    await settled(page);
    expect(await page.locator('[name="title"]').inputValue()).toBe('Shed');
    expect(await page.locator('.errors').count()).toBe(0);
    expect(await saves(page).count()).toBe(0);
    const files = page.locator('[aria-label="Files"]');
    expect(await files.textContent()).toContain('What stands in title is not in the job');
    expect(await button(page, /^wheel outline/).isDisabled()).toBe(true);
    await fill(page, 'title', 'Shed');
    await expect.poll(() => files.textContent()).not.toContain('What stands in');
    expect(await jobText(page)).toMatch(/^title: Shed/m);
  }, 120_000);

  it('that come after a change are not offered', async () => {
    const { page, context } = await bench.open();
    await settled(page);
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((done) => {
      letGo = done;
    });
    // The modeller's file comes when this test lets it.
    await context.route(/replicad.*\.wasm/, async (route) => {
      await held;
      await route.continue().catch(() => undefined);
    });
    const solids = page.locator('.kinds li', { hasText: /exact solids|working\.\.\./ });
    await button(page, /^exact solids/).click();
    await fill(page, 'wheel.teeth', '72');
    letGo();
    await expect.poll(() => solids.textContent(), { timeout: 120_000 }).toContain('of the job as it was before');
    expect(await saves(page).count()).toBe(0);
    await context.unrouteAll({ behavior: 'ignoreErrors' });
  }, 180_000);

  it('wait right under their button, and stay while others are made', async () => {
    const { page } = await bench.open();
    await settled(page);
    for (const [words, file] of [
      [/^adapter mock-up/, 'save orchard-truck-adapter-mockup.stl'],
      [/^wheel outline/, 'save orchard-truck-wheel.dxf'],
    ] as const) {
      await button(page, words).click();
      const item = page.locator('.kinds li').filter({ has: button(page, words) });
      await item.getByRole('button', { name: file, exact: true }).waitFor();
    }
    expect(await button(page, 'save orchard-truck-adapter-mockup.stl').count()).toBe(1);
    expect(await blamedByAxe(page, '[aria-label="Files"]')).toEqual([]);
  }, 120_000);

  it('are held back under their button while a check fails, and forced there, until the job changes', async () => {
    const { page } = await bench.open();
    await fill(page, 'duty.speed', '30000 rpm');
    expect(await page.locator('.banner h2').textContent()).toBe('Fail');
    await button(page, /^wheel outline/).click();
    const item = page.locator('.kinds li').filter({ has: button(page, /^wheel outline/) });
    await item.locator('.held').waitFor();
    expect(await saves(page).count()).toBe(0);
    await item.getByRole('button', { name: /marked as failed/ }).click();
    const { bytes } = await saved(page, 'save orchard-truck-wheel.dxf');
    expect(bytes.toString()).toContain('CHECKS FAILED - FORCED');
    await button(page, 'undo').click();
    await settled(page);
    expect(await item.locator('.held, .file').count()).toBe(0);
  }, 120_000);

  it('are not offered for parts that the job has not', async () => {
    const { page } = await bench.open();
    await settled(page);
    await expect.poll(() => button(page, /^wheel outline/).count()).toBe(1);
    await button(page, 'take toothed wheel out of the job').click();
    // Without a wheel nothing is there to sense or to hold over it.
    for (const section of ['sensor', 'bracket']) {
      const out = button(page, `take ${section} out of the job`);
      await settled(page);
      if ((await out.count()) > 0) await out.click();
    }
    await settled(page);
    expect(await page.locator('.errors').count()).toBe(0);
    for (const words of [/^wheel outline/, /^wheel mock-up/, /^bracket blank/, /^card to set the air gap/])
      await expect.poll(() => button(page, words).count(), { timeout: 20_000 }).toBe(0);
    for (const words of [/^adapter mock-up/, /^report/]) expect(await button(page, words).count()).toBe(1);
  }, 120_000);
});

describe('no job', () => {
  it('has no verdict, no pictures, no files; an edit begins one; undo brings the old one back', async () => {
    const { page, complaints } = await bench.open();
    await settled(page);
    const before = await jobText(page);
    await emptied(page);
    expect(await page.locator('.banner').count()).toBe(0);
    expect(await page.locator('.pictures svg').count()).toBe(0);
    expect(await page.locator('.kinds').count()).toBe(0);
    expect(await page.locator('.result').textContent()).toMatch(/No job/);
    expect(await page.locator('[name="driving.outside"]').inputValue()).toBe('');
    expect(await blamedByAxe(page)).toEqual([]);
    await fill(page, 'driving.outside', '112');
    expect(await jobText(page)).toBe('job: 1\ndriving: { outside: 112 }\n');
    expect(await page.locator('.errors li').count()).toBeGreaterThan(0);
    await button(page, 'undo').click();
    await settled(page);
    expect(await page.locator('.errors').count()).toBe(0);
    await button(page, 'undo').click();
    await settled(page);
    expect(await jobText(page)).toBe(before);
    await page.waitForSelector('.banner');
    await page.waitForSelector('#picture-section svg');
    expect(complaints).toEqual([]);
  }, 120_000);

  it('is a text of blanks and comments; these stay when a value begins the job', () => {
    for (const text of ['', ' \n\t', '# a note\n\n  # more', '---\n']) expect(holdsNothing(text)).toBe(true);
    for (const text of ['job: 1', '{}', '# a note\ntitle: x']) expect(holdsNothing(text)).toBe(false);
    const edit = (text: string, typed: string | null) => editJob(text, ['duty', 'speed'], typed);
    expect(edit('', '900 rpm')).toEqual({ ok: true, text: 'job: 1\nduty: { speed: 900 rpm }\n' });
    expect(edit('  \n', '900 rpm')).toEqual({ ok: true, text: 'job: 1\nduty: { speed: 900 rpm }\n' });
    expect(edit('# mine', '900 rpm')).toEqual({ ok: true, text: '# mine\njob: 1\nduty: { speed: 900 rpm }\n' });
    expect(edit('# mine', null)).toEqual({ ok: true, text: '# mine' });
    expect(editJob('', ['job'], '1')).toEqual({ ok: true, text: 'job: 1\n' });
  });
});

describe('another job', () => {
  it('from an example or a file is one step back, its name too', async () => {
    const { page } = await bench.open();
    await fill(page, 'driving.outside', '113');
    const mine = await jobText(page);
    await page.getByLabel('start from').selectOption('kart');
    await settled(page);
    expect(await called(page).inputValue()).toBe('kart');
    expect(await page.locator('.notice').textContent()).toMatch(/undo/);
    const picker = page.locator('.bar input[type="file"]');
    const buffer = Buffer.from(textOf('river-launch'));
    await picker.setInputFiles({ name: 'Boat 2.job.yaml', mimeType: 'text/plain', buffer });
    await expect.poll(() => called(page).inputValue()).toBe('Boat 2');
    await settled(page);
    await button(page, 'undo').click();
    expect(await called(page).inputValue()).toBe('kart');
    expect(await jobText(page)).toBe(textOf('kart'));
    await button(page, 'undo').click();
    expect(await called(page).inputValue()).toBe('orchard-truck');
    expect(await jobText(page)).toBe(mine);
    // What was done before the example is there to be taken back as well.
    await button(page, 'undo').click();
    expect(await jobText(page)).toBe(textOf('orchard-truck'));
    for (let i = 0; i < 3; i++) await button(page, 'redo').click();
    expect(await called(page).inputValue()).toBe('Boat 2');
    expect(await jobText(page)).toBe(textOf('river-launch'));
  }, 120_000);

  it('begins empty, says what to fill in first, and is called by its title', async () => {
    const { page } = await bench.open();
    await settled(page);
    await button(page, 'new job').click();
    await settled(page);
    expect(await page.locator('.banner').count()).toBe(0);
    expect(await page.locator('.notice').textContent()).toMatch(/title.*both flanges.*carry/);
    expect(await page.locator('[name="driving.outside"]').inputValue()).toBe('');
    expect(await called(page).inputValue()).toBe('my-joint');
    await fill(page, 'title', 'Winch, No. 3: drüm side');
    expect((await saved(page, 'save the job')).file).toBe('winch-no-3-drum-side.job.yaml');
    // A name of the user's own stays, whatever the title, and through a reload.
    await called(page).fill('Shed 4/left');
    await called(page).press('Tab');
    await fill(page, 'title', 'Winch');
    expect((await saved(page, 'save the job')).file).toBe('shed-4-left.job.yaml');
    await page.reload();
    await page.waitForSelector('[name="title"]');
    await expect.poll(() => called(page).inputValue()).toBe('shed-4-left');
    // Emptied: by the title again.
    await called(page).fill('');
    await called(page).press('Tab');
    await expect.poll(() => called(page).inputValue()).toBe('winch');
  }, 120_000);

  it('comes back after a new job was begun', async () => {
    const { page } = await bench.open();
    const mine = await jobText(page);
    await button(page, 'new job').click();
    await settled(page);
    await button(page, 'undo').click();
    expect(await called(page).inputValue()).toBe('orchard-truck');
    expect(await jobText(page)).toBe(mine);
    await page.waitForSelector('#picture-section svg');
  }, 120_000);

  it('is not called like the example once its title is another', () => {
    const from = { name: 'kart', title: 'Kart axle' };
    expect(nameOf(from, 'job: 1\ntitle: Kart axle # as shipped\n')).toBe('kart');
    expect(nameOf(from, 'job: 1\ntitle: "Pump & motor"\n')).toBe('pump-motor');
    expect(nameOf(from, 'job: 1\n')).toBe('my-joint');
    expect(nameOf({ name: 'Mine', title: null }, 'title: Other\n')).toBe('Mine');
    expect(titleOf("title: 'a # b'  # note")).toBe('a # b');
    expect(slug('../../etc: "x"')).toBe('etc-x');
    expect(slug('  ')).toBe('');
    expect(slug('a'.repeat(200)).length).toBe(60);
  });
});

describe('measured by picture', () => {
  it('goes into the job in one step', async () => {
    const { page } = await bench.open();
    const before = await jobText(page);
    await page.getByText('Measure a bolt circle by picture').click();
    await page.getByLabel(/far edges/).fill('103.11');
    await page.getByLabel(/near edges/).fill('87.10');
    await button(page, 'work it out').click();
    await button(page, 'put it into the job').click();
    await expect.poll(() => page.locator('.notice').textContent()).toMatch(/bolt circle is/);
    await settled(page);
    expect(await jobText(page)).toMatch(/circle: \{ value/);
    await button(page, 'undo').click();
    expect(await jobText(page)).toBe(before);
    expect(await button(page, 'undo').isDisabled()).toBe(true);
  }, 120_000);

  it('changes nothing where one of its values is refused, and says so', async () => {
    const { page } = await bench.open();
    await button(page, 'text').click();
    const text = textOf('orchard-truck').replace(/^ {2}holes:(.*\n(?: {4}.*\n)*)/m, '  holes: none\n');
    expect(text).not.toBe(textOf('orchard-truck'));
    await page.locator('#job-text').fill(text);
    await page.locator('#job-text').press('Tab');
    await settled(page);
    await page.getByText('Measure a bolt circle by picture').click();
    await page.getByLabel(/far edges/).fill('103.11');
    await page.getByLabel(/near edges/).fill('87.10');
    await button(page, 'work it out').click();
    await button(page, 'put it into the job').click();
    await expect.poll(() => page.locator('.notice').textContent()).toMatch(/clear it first/);
    expect(await page.locator('#job-text').inputValue()).toBe(text);
  }, 120_000);
});
