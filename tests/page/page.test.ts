/** The page as a newcomer uses it, in a real browser. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { judgeJob, kindsFor, liveReport, makeFiles, products } from '../../src/core.ts';
import { patterns } from '../validate/help.ts';
import { type Bench, blamedByAxe, catchSaved, fill, jobText, type Opened, openBench, settled } from './browser.ts';

const presets = resolve(import.meta.dirname, '../../presets');
const shipped = readdirSync(presets).filter((name) => name.endsWith('.job.yaml'));

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 120_000);
afterAll(() => bench?.close());

describe('the whole path', () => {
  it('goes from two measured flanges to a verdict and an STL, without the README', async () => {
    const { page, requests, complaints } = await bench.open();
    await page.getByRole('button', { name: 'text', exact: true }).click();
    await page.locator('#job-text').fill('job: 1\ndriving: {}\ndriven: {}\n');
    await page.locator('#job-text').press('Tab');
    await page.getByRole('button', { name: 'sheet', exact: true }).click();
    await expect.poll(() => page.locator('.errors li').count(), { timeout: 20_000 }).toBeGreaterThan(2);
    const typed: Readonly<Record<string, string>> = {
      title: 'Winch motor to cable drum',
      'driving.outside': '112',
      'driving.thickness': '14',
      'driving.register.gender': 'male',
      'driving.register.diameter': '[62.00, 62.01]',
      'driving.register.depth': '4',
      'driving.holes.count': '6',
      'driving.holes.circle': '84',
      'driving.holes.thread': 'M8',
      'driving.holes.depth': '16',
      'driven.outside': '138',
      'driven.thickness': '9',
      'driven.register.gender': 'female',
      'driven.register.diameter': '57.00',
      'driven.register.depth': '3',
      'driven.holes.count': '4',
      'driven.holes.circle': '120',
      'driven.holes.diameter': '10.4',
    };
    for (const [key, value] of Object.entries(typed)) await fill(page, key, value);
    await page.locator('#sheet-duty > summary').click();
    await fill(page, 'duty.torque', '150 N.m');
    await fill(page, 'duty.speed', '900 rpm');
    await page.waitForSelector('.banner');
    expect(await page.locator('.errors').count()).toBe(0);
    expect(await page.locator('.banner h2').textContent()).toMatch(/Pass|Caution/);
    await page.getByRole('button', { name: /^adapter mock-up/ }).click();
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: /^save .*-adapter-mockup\.stl/ }).click();
    const bytes = readFileSync(await (await waiting).path());
    // A binary STL says how many triangles follow, 50 bytes each.
    expect(bytes.length).toBe(84 + 50 * bytes.readUInt32LE(80));
    // Nothing is asked of anybody else, and nothing complains.
    expect(requests.filter((url) => !url.startsWith(bench.address) && !url.startsWith('blob:'))).toEqual([]);
    expect(complaints).toEqual([]);
  }, 120_000);
});

describe('files', () => {
  /** One page for all jobs, as somebody uses it who makes one after the other. */
  let opened: Opened;
  let bytesSaved: () => Promise<Buffer>;
  beforeAll(async () => {
    opened = await bench.open();
    bytesSaved = await catchSaved(opened.page);
  });

  /** Parts, pictures, a page to print, drawings of every shipped job; of the first example whatever is made without the solid modeller (`live.test.ts`). */
  const usual = ['mockup', 'preview', 'report', 'drawing'];
  const all = products.map(({ kind }) => kind).filter((kind) => kind !== 'step' && kind !== 'pack');

  it.each(shipped.map((file) => [file, file.startsWith('orchard') ? [...all, 'report'] : usual] as const))(
    '%s: the same bytes as the command line makes',
    async (file, wanted) => {
      const { page } = opened;
      const base = file.replace('.job.yaml', '');
      await page.getByLabel('start from').selectOption(base);
      await settled(page);
      const judged = judgeJob(readFileSync(join(presets, file), 'utf8'), file, patterns);
      if (!judged.ok) throw new Error(file);
      const kinds = wanted.filter((kind) => kindsFor(judged.joint).includes(kind));
      for (const kind of kinds) {
        // The page knows no folders: a job is called by its file's name.
        const options = { base, jobName: `${base}.job.yaml`, only: [kind], force: false };
        const { files } = await makeFiles(judged.joint, judged.findings, options);
        const about = products.find((product) => product.kind === kind)?.about ?? 'report: a page to print, text, data';
        await page.getByRole('button', { name: about, exact: true }).click();
        for (const { name, bytes } of files) {
          const save = page.getByRole('button', { name: `save ${name}`, exact: true });
          await save.waitFor();
          await save.click();
          expect((await bytesSaved()).equals(Buffer.from(bytes)), name).toBe(true);
        }
      }
      expect(kinds.length).toBeGreaterThan(3);
    },
    120_000,
  );
});

describe('the job stays the user’s', () => {
  it('changes one value and no other letter of the file', async () => {
    const { page } = await bench.open();
    const before = await jobText(page);
    expect(before).toBe(readFileSync(join(presets, 'orchard-truck.job.yaml'), 'utf8'));
    await fill(page, 'duty.speed', '2700 rpm');
    expect(await jobText(page)).toBe(before.replace('speed: 2600 rpm', 'speed: 2700 rpm'));
  });

  it('takes steps back and forth, by button and by key', async () => {
    const { page } = await bench.open();
    const before = await jobText(page);
    await fill(page, 'driving.outside', '114');
    await fill(page, 'driving.thickness', '15');
    const after = await jobText(page);
    await page.getByRole('button', { name: 'undo' }).click();
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    expect(await jobText(page)).toBe(before);
    await page.locator('h1').click();
    await page.keyboard.press('Control+Shift+z');
    await page.getByRole('button', { name: 'redo' }).click();
    expect(await jobText(page)).toBe(after);
  });

  it('is there again after the page is loaded anew', async () => {
    const { page } = await bench.open();
    await fill(page, 'title', 'Kept: through a reload');
    await page.reload();
    await page.waitForSelector('#picture-section svg');
    expect(await page.locator('[name="title"]').inputValue()).toBe('Kept: through a reload');
  });

  it('keeps a wrong value where it was typed, and says what is wrong beside it', async () => {
    const { page } = await bench.open();
    await fill(page, 'duty.torque', '320 Nn');
    expect(await page.locator('[name="duty.torque"]').inputValue()).toBe('320 Nn');
    expect(await page.locator('.field.wrong strong').first().textContent()).toMatch(/Did you mean N\.m/);
    expect(await page.locator('.errors').textContent()).toContain('duty.torque');
    expect(await page.locator('.stale-note').count()).toBe(1);
    await fill(page, 'duty.torque', '320 N.m');
    expect(await page.locator('.errors').count()).toBe(0);
  });

  it('survives a worker that dies in the middle of the sums', async () => {
    const { page, context } = await bench.open();
    await context.addInitScript(() => {
      // The first worker is one that fails at once; the next is sound.
      const Sound = window.Worker;
      const made: unknown[] = [];
      Object.assign(window, { made });
      window.Worker = class extends Sound {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(made.length === 0 ? URL.createObjectURL(new Blob(['throw new Error("gone")'])) : url, options);
          made.push(url);
        }
      };
    });
    await page.reload();
    await fill(page, 'driving.outside', '113');
    expect(await page.evaluate(() => (window as unknown as { made: unknown[] }).made.length)).toBe(2);
    expect(await page.locator('[name="driving.outside"]').inputValue()).toBe('113');
    expect(await jobText(page)).toContain('outside: 113');
  });
});

describe('deciding', () => {
  it('turns a number up and down by key and by drag, and everything follows', async () => {
    const { page } = await bench.open();
    const teeth = page.locator('[name="wheel.teeth"]');
    await teeth.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => teeth.inputValue(), { timeout: 20_000 }).toBe('61');
    await settled(page);
    const label = page.locator('label', { hasText: /^teeth$/ }).first();
    const box = await label.boundingBox();
    if (!box) throw new Error('no label');
    await page.mouse.move(box.x + 10, box.y + 5);
    await page.mouse.down();
    await page.mouse.move(box.x + 10 + 19, box.y + 5, { steps: 3 });
    await page.mouse.up();
    await expect.poll(() => teeth.inputValue(), { timeout: 20_000 }).toBe('64');
    await settled(page);
    await expect
      .poll(() => page.locator('#picture-wheel svg').textContent(), { timeout: 20_000 })
      .toContain('64 teeth');
  });

  it('tells every torque, the class of each screw, and the number for the controller', async () => {
    const { page } = await bench.open();
    await settled(page);
    const rows = await page.locator('.screws tr').allTextContents();
    const text = readFileSync(join(presets, 'orchard-truck.job.yaml'), 'utf8');
    const judged = judgeJob(text, 'orchard-truck.job.yaml', patterns);
    if (!judged.ok) throw new Error('orchard-truck');
    const { screws } = liveReport(judged.joint, judged.findings).report;
    expect(rows.length).toBe(screws.length);
    for (const [i, { count, what, detail, tighten }] of screws.entries()) {
      const row = rows[i] ?? '';
      expect(row.startsWith(`${count} x ${what}${detail}`)).toBe(true);
      for (const part of tighten.split('; ')) expect(row).toContain(part);
    }
    // 48 teeth times 5.125 were in the controller, 60 teeth times 4.1 are: both 246.
    const said = page.locator('table.answers', { hasText: 'Pulses in a turn of the road wheels' });
    expect(await said.textContent()).toMatch(/road wheels246\b/);
  });

  it('sets two designs side by side and marks what differs', async () => {
    const { page } = await bench.open();
    await page.getByRole('button', { name: 'put this design aside' }).click();
    await fill(page, 'adapter.thickness', '22');
    const changed = page.locator('tr.differs', { hasText: 'Adapter thickness' });
    await expect.poll(() => changed.count(), { timeout: 20_000 }).toBe(1);
    expect(await changed.textContent()).toContain('22.00 mm');
    // What asks decide by stands there too, and all of it outlives a reload.
    await settled(page);
    expect(await page.locator('tr', { hasText: 'Does it stay tight?' }).last().textContent()).toMatch(/Yes\. .* times/);
    await page.reload();
    await expect.poll(() => changed.count(), { timeout: 20_000 }).toBe(1);
    await page.getByRole('button', { name: 'go back to it' }).click();
    await expect.poll(() => page.locator('[name="adapter.thickness"]').inputValue(), { timeout: 20_000 }).toBe('');
  });

  it('measures a bolt circle by picture: five holes, skip one, 1.05 times (published amplification)', async () => {
    const { page } = await bench.open();
    await page.getByText('Measure a bolt circle by picture').click();
    expect(await page.locator('.measure').textContent()).toContain('grows 1.05 times');
    // Five holes of 8 on 100: skip-one chords of 95.106, so 103.106 over and 87.106 between.
    await page.getByLabel(/far edges/).fill('103.11');
    await page.getByLabel(/near edges/).fill('87.10');
    await page.getByRole('button', { name: 'work it out' }).click();
    await page.getByRole('button', { name: 'put it into the job' }).click();
    await expect
      .poll(() => jobText(page), { timeout: 20_000 })
      .toMatch(/circle: \{ value: (99.99|100.00)\d, doubt: 0\.\d+ \}/);
    expect(await jobText(page)).toContain('count: 5');
  });
});

describe('for everybody', () => {
  it('lights up a feature from its finding, and a finding from its feature', async () => {
    const { page } = await bench.open();
    await page.getByText(/checks pass/).click();
    const finding = page.locator('.finding', { hasText: 'web between holes' }).first();
    await finding.locator('summary').hover();
    expect(await page.locator('svg .lit').count()).toBeGreaterThan(0);
  });

  it('can be worked by keyboard alone', async () => {
    const { page } = await bench.open();
    await page.locator('[name="title"]').focus();
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('units');
    const reached = new Set<string>();
    for (let i = 0; i < 160; i++) {
      await page.keyboard.press('Tab');
      reached.add(await page.evaluate(() => document.activeElement?.textContent?.slice(0, 40) ?? ''));
    }
    expect([...reached].join('|')).toMatch(/adapter mock-up to print/);
  });

  it.each([
    { width: 1400, height: 1000 },
    { width: 390, height: 844 },
  ])('axe finds nothing to blame at $width wide, and nothing runs off the side', async (size) => {
    const { page } = await bench.open(size);
    expect(await blamedByAxe(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });

  it('prints the verdict with its lists, then every picture below it, and no buttons', async () => {
    const { page } = await bench.open();
    await settled(page);
    await page.emulateMedia({ media: 'print' });
    const boxes = await page.evaluate(() => {
      const box = (of: string) => [...document.querySelectorAll(of)].map((one) => one.getBoundingClientRect());
      return {
        verdict: box('.result')[0]?.bottom ?? 0,
        pictures: box('.pictures figure').map(({ top, bottom }) => [top, bottom]),
        buttons: box('main button:not(.key), main input, main select').filter(({ height }) => height > 0).length,
        torque: box('.result details[open] strong').some(({ height }) => height > 0),
      };
    });
    expect(boxes.pictures.length).toBeGreaterThan(8);
    let end = boxes.verdict;
    for (const [top = 0, bottom = 0] of boxes.pictures) {
      expect(top).toBeGreaterThanOrEqual(end - 1);
      end = bottom;
    }
    expect(boxes.buttons).toBe(0);
    expect(boxes.torque).toBe(true);
  });

  it('shows the parts in space, with WebGL', async () => {
    const { page, complaints } = await bench.open();
    await page.getByRole('heading', { name: 'In space' }).click();
    const canvas = page.locator('.space canvas');
    await expect.poll(async () => new Set(await canvas.screenshot()).size, { timeout: 20_000 }).toBeGreaterThan(100);
    expect(complaints).toEqual([]);
  });
});
