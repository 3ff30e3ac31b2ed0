/** The page while somebody works: answers in steps, edits in a hurry, files that take long, and what may go wrong meanwhile. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  type Choice,
  editJob,
  type JudgedAtLast,
  type JudgedSoFar,
  judgeInSteps,
  judgeJob,
  makeFiles,
  revisionOf,
} from '../../src/core.ts';
import { patterns } from '../validate/help.ts';
import { type Bench, fill, jobText, openBench, settled } from './browser.ts';

const presets = resolve(import.meta.dirname, '../../presets');
const textOf = (name: string) => readFileSync(join(presets, `${name}.job.yaml`), 'utf8');
const shipped = readdirSync(presets)
  .filter((name) => name.endsWith('.job.yaml'))
  .map((name) => name.replace('.job.yaml', ''));

function inSteps(text: string, choice?: Choice): { readonly shown: JudgedSoFar[]; readonly last: JudgedAtLast } {
  const steps = judgeInSteps(text, 'job', patterns, choice);
  const shown: JudgedSoFar[] = [];
  for (;;) {
    const step = steps.next();
    if (step.done) return { shown, last: step.value };
    if (step.value) shown.push(step.value);
  }
}

/** What a whole judging says, and nothing of how it was come by. */
const said = (judged: JudgedAtLast) =>
  judged.ok ? { joint: judged.joint, findings: judged.findings } : { errors: judged.errors };

describe('judging in steps', () => {
  it.each(shipped)('%s: ends with what judging at once says, whatever was shown first', (name) => {
    const text = textOf(name);
    const first = inSteps(text);
    expect(said(first.last)).toEqual(said(judgeJob(text, 'job', patterns)));
    expect(first.shown.length).toBeGreaterThan(0);
    if (!first.last.ok) throw new Error(name);
    // The next edit begins with the way that was found; a torque that changes the choice must not be held to it.
    const [path, typed] =
      shipped.indexOf(name) % 2 === 0
        ? [['duty', 'torque'], '900 N.m']
        : [['adapter', 'driven', 'fastening'], 'through'];
    const edited = editJob(text, path, typed);
    if (!edited.ok) throw new Error(edited.why);
    const { last } = inSteps(edited.text, first.last.choice);
    expect(said(last)).toEqual(said(judgeJob(edited.text, 'job', patterns)));
  });

  it('says first what is quick, and what is still open; each later answer only adds', () => {
    const { shown, last } = inSteps(textOf('orchard-truck'));
    if (!last.ok) throw new Error('no job');
    const [quick] = shown;
    expect(quick?.open).toContain('Chance of passing');
    expect(quick?.open).toContain('What the sensor will see');
    expect(quick?.findings.some(({ code }) => code === 'signal-jitter')).toBe(false);
    expect(last.findings.some(({ code }) => code === 'signal-jitter')).toBe(true);
    const counts = shown.map(({ findings }) => findings.length);
    expect([...counts].sort((a, b) => a - b)).toEqual(counts);
    const left = shown.map(({ open }) => open.length);
    expect([...left].sort((a, b) => b - a)).toEqual(left);
  });

  it('can be given up between any two steps, and begun anew', () => {
    const text = textOf('kart');
    const whole = said(inSteps(text).last);
    for (let kept = 0; kept < 6; kept++) {
      const steps = judgeInSteps(text, 'job', patterns);
      for (let i = 0; i < kept; i++) steps.next();
      expect(said(inSteps(text).last)).toEqual(whole);
    }
  });
});

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 240_000);
afterAll(() => bench?.close());

const start = async (page: Page, job: string) => {
  await page.getByLabel('start from').selectOption(job);
  await settled(page);
};

const revisionShown = (page: Page) => page.locator('.banner .quiet').textContent();

describe('edits in a hurry', () => {
  it('follows every keystroke; the latest wins, and one word is one step back', async () => {
    const { page, complaints } = await bench.open();
    await settled(page);
    const before = await jobText(page);
    const field = page.locator('[name="driving.thickness"]');
    await field.focus();
    await page.keyboard.press('Control+a');
    // A hand that does not wait for the sums.
    for (const key of '15.25') await page.keyboard.press(key);
    await settled(page);
    // No Enter, no Tab: the job has it already.
    expect(await field.inputValue()).toBe('15.25');
    await page.getByRole('button', { name: 'text', exact: true }).click();
    const typed = await page.locator('#job-text').inputValue();
    expect(typed).toMatch(/thickness: 15\.25/);
    const judged = judgeJob(typed, 'job', patterns);
    if (!judged.ok) throw new Error('no job');
    expect(await revisionShown(page)).toBe(`revision ${revisionOf(judged.joint)}`);
    await page.getByText(/checks pass/).click();
    expect(await page.locator('.finding').count()).toBe(judged.findings.length);
    expect(await page.locator('#picture-section svg').textContent()).toContain('15.25 thick');
    await page.getByRole('button', { name: 'undo' }).click();
    await settled(page);
    expect(await page.locator('#job-text').inputValue()).toBe(before);
    expect(complaints).toEqual([]);
  }, 120_000);

  it('keeps the key of a field that is emptied on the way to another value', async () => {
    const { page } = await bench.open();
    await settled(page);
    const before = await jobText(page);
    const field = page.locator('[name="duty.speed"]');
    await field.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Delete');
    for (const key of '2650 rpm') await page.keyboard.press(key === ' ' ? 'Space' : key);
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await jobText(page)).toBe(before.replace('speed: 2600 rpm', 'speed: 2650 rpm'));
  }, 120_000);

  it('takes what is no job with a sentence, and goes on', async () => {
    const { page, complaints } = await bench.open();
    await settled(page);
    const picker = page.locator('.bar input[type="file"]');
    await picker.setInputFiles({ name: 'large.yaml', mimeType: 'text/plain', buffer: Buffer.alloc(1_200_000, 'a') });
    await expect.poll(() => page.locator('.notice').textContent()).toMatch(/too large for a job/);
    expect(await page.locator('.banner').count()).toBe(1);
    const noise = Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 7919) % 256));
    await picker.setInputFiles({ name: 'noise.yaml', mimeType: 'text/plain', buffer: noise });
    await expect.poll(() => page.locator('.errors li').count(), { timeout: 20_000 }).toBeGreaterThan(0);
    await start(page, 'kart');
    expect(await page.locator('.errors').count()).toBe(0);
    expect(await page.locator('.banner').count()).toBe(1);
    expect(complaints).toEqual([]);
  }, 120_000);

  it('keeps two tabs apart: each brings back its own work', async () => {
    const { page, context } = await bench.open();
    await fill(page, 'title', 'Left hand');
    const other = await context.newPage();
    await other.goto(bench.address);
    await other.waitForSelector('#picture-section svg');
    // A new tab takes up what was worked on last.
    expect(await other.locator('[name="title"]').inputValue()).toBe('Left hand');
    await fill(other, 'title', 'Right hand');
    await expect.poll(() => page.locator('.notice').textContent()).toMatch(/another tab/);
    for (const [tab, title] of [
      [page, 'Left hand'],
      [other, 'Right hand'],
    ] as const) {
      await tab.reload();
      await tab.waitForSelector('#picture-section svg');
      expect(await tab.locator('[name="title"]').inputValue()).toBe(title);
    }
    await context.close();
  }, 120_000);
});

describe('files that take long', () => {
  it('loads the modeller only when STEP is asked for; survives its loss; says how far it is; can be stopped; same bytes', async () => {
    const { page, context, requests } = await bench.open();
    await start(page, 'kart');
    const button = page.getByRole('button', { name: /^exact solids/ });
    const asked = () => requests.filter((url) => /replicad.*\.wasm/.test(url)).length;
    await page.getByRole('button', { name: /^adapter mock-up/ }).click();
    await page.getByRole('button', { name: /^save kart-adapter-mockup/ }).waitFor();
    expect(asked()).toBe(0);

    await context.route(/replicad.*\.wasm/, (route) => route.abort());
    await button.click();
    const alert = page.locator('[aria-label="Files"] [role="alert"]');
    await expect
      .poll(() => alert.textContent().catch(() => ''), { timeout: 60_000 })
      .toMatch(/could not be made.*Your job is kept.*command line/);
    await fill(page, 'title', 'Kept while the modeller was lost');
    expect(await jobText(page)).toContain('Kept while the modeller was lost');

    await context.unroute(/replicad.*\.wasm/);
    // The modeller's file comes when this test lets it.
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((done) => {
      letGo = done;
    });
    await context.route(/replicad.*\.wasm/, async (route) => {
      await held;
      await route.continue().catch(() => undefined);
    });
    await button.click();
    const progress = page.locator('.progress');
    await expect.poll(() => progress.textContent().catch(() => ''), { timeout: 60_000 }).toMatch(/\d+ %: .*modeller/);
    // Edits go on meanwhile.
    await fill(page, 'adapter.name', 'plate');
    await page.getByRole('button', { name: 'cancel' }).click();
    await expect.poll(() => alert.textContent(), { timeout: 20_000 }).toMatch(/Cancelled/);
    expect(await page.locator('[name="adapter.name"]').inputValue()).toBe('plate');

    letGo();
    await context.unrouteAll({ behavior: 'ignoreErrors' });
    const text = await jobText(page);
    await button.click();
    const judged = judgeJob(text, 'kart.job.yaml', patterns);
    if (!judged.ok) throw new Error('no job');
    // The title is not the example's any more: its files are called by it.
    const base = 'kept-while-the-modeller-was-lost';
    const options = { base, jobName: `${base}.job.yaml`, only: ['step'], force: false };
    const { files } = await makeFiles(judged.joint, judged.findings, options);
    expect(files.length).toBe(2);
    for (const { name, bytes } of files) {
      const save = page.getByRole('button', { name: `save ${name}`, exact: true });
      await save.waitFor({ timeout: 120_000 });
      const waiting = page.waitForEvent('download', { timeout: 30_000 });
      await save.click();
      expect(readFileSync(await (await waiting).path()).equals(Buffer.from(bytes)), name).toBe(true);
    }
    await context.close();
  }, 240_000);

  it('survives a worker that dies whenever it makes something', async () => {
    const { page, context } = await bench.open();
    await settled(page);
    await page.evaluate(() => {
      const Sound = window.Worker;
      window.Worker = class extends Sound {
        constructor(_: string | URL, options?: WorkerOptions) {
          super(URL.createObjectURL(new Blob(['throw new Error("gone")'])), options);
        }
      };
    });
    await page.getByRole('button', { name: /^adapter mock-up/ }).click();
    const alert = page.locator('[aria-label="Files"] [role="alert"]');
    await expect.poll(() => alert.textContent().catch(() => ''), { timeout: 20_000 }).toMatch(/Your job is kept/);
    // Whoever edits has a worker of its own, and it lives.
    await fill(page, 'driving.outside', '113');
    expect(await jobText(page)).toContain('outside: 113');
    await context.close();
  }, 120_000);
});

describe('in space', () => {
  it('shows everything in its place, the finished parts, and the mock-ups', async () => {
    const { page, context, complaints } = await bench.open();
    await start(page, 'hill-tractor');
    await page.getByRole('heading', { name: 'In space' }).click();
    const canvas = page.locator('.space canvas');
    const bodies = () => canvas.getAttribute('data-bodies');
    await expect.poll(bodies, { timeout: 60_000 }).toMatch(/^adapter; wheel; /);
    for (const part of ['driving flange', 'driven flange', 'head cap screw', 'washer', 'bracket', 'sensor'])
      expect(await bodies()).toContain(part);
    const look = page.locator('.space select');
    await look.selectOption('finished');
    await expect.poll(bodies, { timeout: 60_000 }).toBe('adapter; wheel; bracket');
    await look.selectOption('printed');
    await expect.poll(bodies, { timeout: 60_000 }).toBe('adapter mock-up; wheel mock-up');
    expect(complaints).toEqual([]);
    await context.close();
  }, 240_000);
});

describe('nothing leaves', () => {
  it('may not ask anybody else, nor run what is not its own', async () => {
    const { page, context } = await bench.open();
    const answer = await page.goto(bench.address);
    expect(answer?.headers()['content-security-policy']).toMatch(/default-src 'none'.*connect-src 'self'/);
    const tried = await page.evaluate(async () => {
      const refused: string[] = [];
      document.addEventListener('securitypolicyviolation', (event) => refused.push(event.effectiveDirective));
      await fetch(location.href.replace('127.0.0.1', 'localhost')).catch(() => undefined);
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken over"';
      document.body.append(script);
      await new Promise((done) => setTimeout(done, 200));
      return { refused, title: document.title };
    });
    expect(tried.title).toBe('flangewright');
    expect(tried.refused).toEqual(expect.arrayContaining(['connect-src', 'script-src-elem']));
    await context.close();
  }, 60_000);
});
