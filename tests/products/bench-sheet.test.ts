/** The bench sheet: what the job file has, and what record, drawing and report say, once more on one sheet. */
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import { asTyped } from '../../src/job/as-typed.ts';
import { readJob } from '../../src/job/read.ts';
import { placedPositions } from '../../src/parts/adapter-holes.ts';
import { makeFiles } from '../../src/products/make.ts';
import { crossOrder } from '../../src/report/cross-order.ts';
import { type Shipped, shipped, shippedJob } from '../presets/shipped.ts';

async function pageOf({ base, file, joint, findings }: Shipped, force = false): Promise<string> {
  const made = await makeFiles(joint, findings, { base, jobName: file, only: ['bench-sheet'], force });
  expect(made.held).toEqual([]);
  expect(made.files.map(({ name }) => name)).toEqual([`${base}-bench-sheet.html`]);
  return new TextDecoder().decode(made.files[0]?.bytes);
}

/** Words of a page without its marks. */
const wordsOf = (page: string) =>
  page
    .replace(/<svg[\s\S]*?<\/svg>|<style>[\s\S]*?<\/style>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#39;', "'")
    .replace(/\s+/g, ' ');

/** Cells of a page's tables, row by row. */
const rowsOf = (page: string) =>
  [...page.matchAll(/<tr>(.*?)<\/tr>/g)].map(([, row = '']) =>
    [...row.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map(([, cell = '']) => wordsOf(cell).trim()),
  );

/** Every number in what was typed for a measured size. */
function numbersIn(typed: unknown): number[] {
  if (typeof typed === 'number') return [typed];
  if (Array.isArray(typed)) return typed.flatMap(numbersIn);
  return typeof typed === 'object' && typed !== null ? Object.values(typed).flatMap(numbersIn) : [];
}

interface TypedFlange {
  readonly outside?: unknown;
  readonly thickness?: unknown;
  readonly register?: { readonly diameter?: unknown; readonly depth?: unknown };
  readonly holes?: { readonly circle?: unknown; readonly diameter?: unknown; readonly thread?: string };
}

describe.each(shipped.map((job) => [job.base, job] as const))('%s', (_, job) => {
  it('has every reading of the flanges as the job file has it', async () => {
    const rows = rowsOf(await pageOf(job));
    const typed = parse(job.text) as { driving: TypedFlange; driven: TypedFlange };
    for (const { outside, thickness, register, holes } of [typed.driving, typed.driven]) {
      for (const size of [outside, thickness, register?.diameter, register?.depth, holes?.circle, holes?.diameter]) {
        if (size === undefined) continue;
        const wanted = numbersIn(size);
        const has = rows.some(([, cell = '']) => {
          const found = (cell.replace(/^\d+ holes: /, '').match(/\d+(\.\d+)?/g) ?? []).map(Number);
          return JSON.stringify(found) === JSON.stringify(wanted);
        });
        expect(has, JSON.stringify(size)).toBe(true);
      }
      if (holes?.thread) expect(rows.flat()).toContain(holes.thread);
    }
  });

  it('has every line of the inspection record by its number, with its limits and a box', async () => {
    const page = await pageOf(job);
    const rows = rowsOf(page);
    const inch = job.joint.job.units === 'in';
    for (const { number, lower, upper, unit } of characteristicsOf(job.joint)) {
      const own = rows.filter(([first]) => first === String(number));
      expect(own, `line ${number}`).toHaveLength(1);
      const [, , limits = ''] = own[0] as string[];
      const shown = (limits.match(/\d+(\.\d+)?/g) ?? []).map(Number);
      const real = (lower === 0 ? [upper] : [lower, upper]).map((size) => (inch && unit === 'mm' ? size / 25.4 : size));
      expect(shown).toHaveLength(real.length);
      // Limits are rounded inwards, by less than their last figure; grams to whole ones.
      shown.forEach((value, i) => {
        expect(Math.abs(value - (real[i] as number))).toBeLessThan(unit === 'g' ? 0.51 : inch ? 1.01e-4 : 1.01e-3);
      });
    }
    // A box a size and a dial reading, a torque and a gap.
    const boxes = [...page.matchAll(/<td class="box">/g)].length;
    expect(boxes).toBeGreaterThanOrEqual(characteristicsOf(job.joint).length + job.joint.screws.length);
  });

  it('has each set of screws with its torque, its steps and each screw once in its order', async () => {
    const rows = rowsOf(await pageOf(job));
    for (const { count, thread, class: grade, tightening } of job.joint.screws) {
      const own = rows.find(([what = '']) => what.startsWith(`${count} x ${thread} `) && what.includes(grade));
      const [, torque = '', steps = '', order = ''] = own ?? [];
      const asked = tightening.torque ?? Number.NaN;
      expect(Number.parseFloat(torque)).toBeCloseTo(asked, asked < 20 ? 1 : 0);
      const [third = 0, two = 0, full = 0] = (steps.match(/[\d.]+/g) ?? []).map(Number);
      expect(full).toBe(Number.parseFloat(torque));
      expect(Math.abs(third - full / 3)).toBeLessThan(0.6);
      expect(Math.abs(two - (2 * full) / 3)).toBeLessThan(0.6);
      // 1 lbf.ft is 1.35582 N.m (NIST SP 811, appendix B).
      const feet = (/\(([\d., ]+) lbf\.ft\)/.exec(steps)?.[1] ?? '').split(', ').map(Number);
      if (job.joint.job.units === 'in')
        [1 / 3, 2 / 3, 1].forEach((share, k) => {
          expect(Math.abs((feet[k] ?? 0) - (share * asked) / 1.35582)).toBeLessThan(0.06);
        });
      else expect(steps).not.toContain('lbf');
      const places = order.split(' ').map((tag) => Number(tag.replace(/^[A-Z]/, '')));
      expect([...places].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i + 1));
    }
  });

  it('tells each even circle by a hole that stands there, counter-clockwise from the index mark', async () => {
    const words = wordsOf(await pageOf(job));
    const { adapterSpec } = job.joint;
    const places = adapterSpec.groups.map((group) => placedPositions(adapterSpec, group));
    const angleOf = ({ x, y }: { x: number; y: number }) => ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360;
    for (const [, count, angle] of words.matchAll(
      /[A-Z]: (\d+) x [^,]*, (?:one at (\d+(?:\.\d+)?)\u00b0|one on the index mark)/g,
    )) {
      const told = Number(angle ?? 0);
      // One of the sets with so many holes has its first one there, before a pitch is over.
      const stands = places.some(
        (set) =>
          set.length === Number(count) &&
          set.some((hole) => Math.abs(((angleOf(hole) - told + 540) % 360) - 180) < 1e-3),
      );
      expect(stands, `${count} holes, ${told}`).toBe(true);
      expect(told).toBeLessThan(360 / Number(count));
    }
    expect(words).toContain('angles from the index mark, counter-clockwise seen from the driven side');
  });

  it('is one page without script, and says which revision it is', async () => {
    const page = await pageOf(job);
    expect(/<script|<link|<img|\ssrc=|url\((?!#)/.exec(page)).toBeNull();
    const record = await makeFiles(job.joint, job.findings, {
      base: 'x',
      jobName: 'x',
      only: ['inspection'],
      force: false,
    });
    const mark = /revision (R\w{5})/.exec(new TextDecoder().decode(record.files[0]?.bytes))?.[1];
    expect(mark).toBeDefined();
    expect(wordsOf(page)).toContain(`${mark} bench sheet`);
  });
});

describe('a job with known numbers', () => {
  it('shows limits of ISO 286-2, the gap as it was typed and the dial limits of common practice', async () => {
    const words = wordsOf(await pageOf(shippedJob('orchard-truck')));
    // H7 on 62.01, the largest that the spigot of 62.00 +-0.01 may be: 30 micrometres over 50 to 80 mm.
    expect(words).toContain('62.010 to 62.040');
    expect(words).toContain('62.00 \u00b10.01 62.00 \u00b10.01 micrometer');
    expect(words).toContain('84.02, 83.98, 84.00');
    expect(words).toContain('set 1.2 mm; least 0.5 mm; most 2.5 mm');
    expect(words).not.toContain('usual of its kind');
    // No data sheet was typed there: the range is that of its kind, and says so.
    expect(wordsOf(await pageOf(shippedJob('near-miss')))).toMatch(/most \S+ mm \(usual of its kind/);
    expect(words).toMatch(/turned over: the bore, 26\.00 mm 0\.02 /);
    expect(words).toContain('the wheel set true: its teeth 0.15');
    expect(words).toMatch(/teeth 60 /);
    expect(words).toContain('A: 6 x \u00d89 on \u00d884, one on the index mark');
    expect(words).toContain('B: 4 x M10 on \u00d8108, one at 15\u00b0');
  });

  it('is made while checks fail, and says so in its title', async () => {
    const job = shippedJob('near-miss');
    const page = await pageOf(job);
    expect(page).toContain(`<title>CHECKS FAILED: ${job.joint.job.title}: bench sheet</title>`);
    expect(page).toContain(`<h1>CHECKS FAILED: ${job.joint.job.title}</h1>`);
    expect(await pageOf(job, true)).toContain('<h1>CHECKS FAILED - FORCED: ');
    expect(await pageOf(shippedJob('kart'))).not.toContain('CHECKS FAILED');
  });

  it('shows what was found already', async () => {
    const rows = rowsOf(await pageOf(shippedJob('test-stand')));
    const built = (parse(shippedJob('test-stand').text) as { built: { adapter: { thickness: unknown } } }).built;
    const [thickness] = numbersIn(built.adapter.thickness);
    expect(rows.find(([, what]) => what === 'thickness between the faces')?.at(-1)).toBe(String(thickness));
  });

  it('lets no typed name be markup', async () => {
    const job = shippedJob('orchard-truck');
    const name = `<img src=x onerror="a()">'&`;
    const { driving } = job.joint;
    const joint = { ...job.joint, driving: { ...driving, name }, job: { ...job.joint.job, title: name } };
    const page = await pageOf({ ...job, joint });
    expect(page).not.toContain('<img');
    expect(page.split('&lt;img src=x onerror=&quot;a()&quot;&gt;&#39;&amp;').length).toBeGreaterThan(3);
  });
});

describe('how a reading was typed', () => {
  const typedAs = (outside: string) => {
    const text = shippedJob('kart').text.replace(/outside: .*/, `outside: ${outside}`);
    const read = readJob(text, 'x');
    if (!read.ok) throw new Error(JSON.stringify(read.errors));
    const size = read.job.driving.outside;
    return size && asTyped(size);
  };

  it.each([
    ['105', '105', null],
    ['[105.02, 105, 105.01]', '105.02, 105.00, 105.01', null],
    ['{ readings: [105.02, 105.01], instrument: micrometer }', '105.02, 105.01', 'micrometer'],
    ['{ value: 105, doubt: 0.01, instrument: micrometer }', '105 \u00b10.01', 'micrometer'],
    ['"105.00 micrometer"', '105.00 micrometer', 'micrometer'],
    ['4 1/8 in', '4 1/8 in', null],
    ['105.00', '105.00', null],
    ['[105.00, 105.0]', '105.00, 105.00', null],
    ['{ value: 105.0, doubt: 0.010, instrument: micrometer }', '105.0 \u00b10.010', 'micrometer'],
    ['{ value: 105.00, readings: [105.00, 105.01] }', '105.00 (105.00, 105.01)', null],
    ['&size 105.0', '105.0', null],
    ['105.000', '105.000', null],
    ['[105, 105.1, 105, 105, 105, 105, 105.1]', '7 readings, 105.0 to 105.1', null],
  ])('%s', (typed, words, instrument) => {
    expect(typedAs(typed)).toEqual({ words, instrument });
  });
});

describe('the cross-wise order', () => {
  it('is what is drawn in every workshop book', () => {
    // Common practice; 4, 5, 6 and 8 as they stand on wheels and flanges.
    expect(crossOrder(4)).toEqual([1, 3, 2, 4]);
    expect(crossOrder(5)).toEqual([1, 3, 5, 2, 4]);
    expect(crossOrder(6)).toEqual([1, 4, 2, 5, 3, 6]);
    expect(crossOrder(8)).toEqual([1, 5, 3, 7, 2, 6, 4, 8]);
  });

  it('meets each screw once; of even counts each second one stands across from the one before', () => {
    for (let count = 1; count <= 72; count++) {
      const order = crossOrder(count);
      expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i + 1));
      if (count % 2 === 0)
        for (let i = 0; i < count; i += 2) expect((order[i + 1] as number) - (order[i] as number)).toBe(count / 2);
    }
  });
});
