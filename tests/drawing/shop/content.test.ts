/** What stands on a workshop drawing: every size of the part once, holes where the part has them, views where the projection puts them. */
import { describe, expect, it } from 'vitest';
import { type Joint, judgeJob } from '../../../src/core.ts';
import { calloutLines } from '../../../src/drawing/shop/callout.ts';
import { cutAdapter } from '../../../src/drawing/shop/section.ts';
import { limitTexts, toleranceText } from '../../../src/drawing/shop/size-text.ts';
import type { SetToDraw } from '../../../src/drawing/shop/to-draw.ts';
import { characteristicsOf } from '../../../src/inspect/characteristics.ts';
import type { Drawing } from '../../../src/model/drawing.ts';
import { buildAdapter } from '../../../src/parts/adapter.ts';
import { adapterToDraw } from '../../../src/products/shop-to-draw.ts';
import { patterns, shipped, shippedJob } from '../../presets/shipped.ts';
import { laidOut, sheetsOf, texts, words } from './help.ts';

const all = (sheets: readonly Drawing[]) => sheets.flatMap(texts);

/** Rows of every table: texts on one level that start with a hole's tag. */
function tableRows(sheets: readonly Drawing[]): string[][] {
  return sheets.flatMap((sheet) => {
    const there = texts(sheet);
    return there.flatMap((first) => {
      if (!/^[A-Z]\d+$/.test(first.text) || first.size > 2.3) return [];
      const row = there.filter(
        (t) => Math.abs(t.at.y - first.at.y) < 0.01 && t.at.x > first.at.x && t.at.x - first.at.x < 125,
      );
      return [[first.text, ...row.sort((a, b) => a.at.x - b.at.x).map((t) => t.text)]];
    });
  });
}

/** Each side's tags, by the heading of their set. */
function seenFrom(sheets: readonly Drawing[]): Map<string, 'driving' | 'driven'> {
  const heads = all(sheets).flatMap(({ text }) => {
    const found = /^([A-Z]) {2}.*: seen from the (driving|driven) side$/.exec(text);
    return found ? [[found[1] as string, found[2] as 'driving' | 'driven'] as const] : [];
  });
  return new Map(heads);
}

const edited = (joint: { text: string; file: string }, from: string, to: string): Joint => {
  expect(joint.text).toContain(from);
  const judged = judgeJob(joint.text.replace(from, to), joint.file, patterns);
  if (!judged.ok) throw new Error(JSON.stringify(judged.errors));
  return judged.joint;
};

describe.each(shipped.map((job) => [job.base, job] as const))('%s', (_, { joint }) => {
  const sheets = sheetsOf(joint, 'adapter');
  const { units } = joint.job;

  it('lists every hole of the part once, where a finger on that side finds it', () => {
    const rows = tableRows(sheets);
    const sides = seenFrom(sheets);
    const off = joint.adapter.drillings.filter(({ x, y }) => Math.hypot(x, y) > 1e-6);
    expect(rows).toHaveLength(off.length);
    const mm = units === 'in' ? 25.4 : 1;
    // Four decimals of an inch are 0.00127 mm each way, three of a mm half a micrometre.
    const slack = units === 'in' ? 0.0019 : 0.00072;
    const left = new Set(off);
    for (const [tag = '', x, y, radius, angle] of rows) {
      const side = sides.get(tag[0] ?? '');
      // Turned over about the y axis: left and right change places.
      const place = { x: Number(x) * mm * (side === 'driving' ? -1 : 1), y: Number(y) * mm };
      const hole = [...left].find((d) => Math.hypot(d.x - place.x, d.y - place.y) < slack);
      expect(hole, `${tag} at ${place.x}, ${place.y}`).toBeDefined();
      if (hole) left.delete(hole);
      const turn = (Number(angle) * Math.PI) / 180;
      expect(Number(radius) * Math.cos(turn)).toBeCloseTo(Number(x), units === 'in' ? 3 : 2);
      expect(Number(radius) * Math.sin(turn)).toBeCloseTo(Number(y), units === 'in' ? 3 : 2);
    }
    expect(left.size).toBe(0);
  });

  it.each(['adapter', 'wheel'] as const)('has each line of the inspection record of the %s in one balloon', (part) => {
    const own = sheetsOf(joint, part);
    const numbers = own.flatMap((sheet) => {
      const rings = sheet.shapes.flatMap((s) => (s.kind === 'circle' && Math.abs(s.r - 2.7) < 1e-9 ? [s.centre] : []));
      return texts(sheet).flatMap((t) =>
        rings.some((c) => Math.abs(c.x - t.at.x) < 0.01 && Math.abs(c.y - t.at.y) < 1.5) ? [Number(t.text)] : [],
      );
    });
    // The mass stands in the title block of every sheet.
    const mass = characteristicsOf(joint).find(({ id }) => id === `${part}-mass`)?.number;
    const wanted = characteristicsOf(joint).flatMap((row) => (row.part === part ? [row.number] : []));
    expect(numbers.filter((n) => n !== mass).sort((a, b) => a - b)).toEqual(wanted.filter((n) => n !== mass));
    expect(numbers.filter((n) => n === mass)).toHaveLength(mass === undefined ? 0 : own.length);
  });

  it('writes every size of the part once', () => {
    const { registers, wheelSeat, outside, bore, thickness, flats, groups } = joint.adapterSpec;
    const shown = (mm: number) => (units === 'in' ? (mm / 25.4).toFixed(4) : String(Number(mm.toFixed(3))));
    // Limits are rounded inwards: looked for within their last figure.
    const figures = units === 'in' ? 4 : 3;
    const sizes = all(sheets).filter(({ size, text }) => size === 2.5 && !text.includes(':') && !text.startsWith('('));
    const once = (what: string, found: readonly unknown[]) => expect(found, what).toHaveLength(1);
    for (const seat of [registers.driving, registers.driven, wheelSeat]) {
      if (!seat) continue;
      for (const limit of [seat.limits.lower, seat.limits.upper]) {
        const value = units === 'in' ? limit / 25.4 : limit;
        once(
          `limit ${value}`,
          sizes.filter(
            ({ text }) =>
              text.startsWith('\u00d8') &&
              Math.abs(Number(text.slice(1)) - value) <= 1.001 * 10 ** -figures &&
              text.length > figures + 2 &&
              /\.\d{3,4}$/.test(text) &&
              text !== `\u00d8${shown(outside)}`,
          ),
        );
      }
    }
    // A size whose general tolerance would go past what a check allows has its limits instead (which they are: limits-hold.test.ts).
    const rows = characteristicsOf(joint);
    const bare = (id: string, size: number) => {
      const row = rows.find((one) => one.id === id);
      if (!row || Math.abs(size - row.lower - (row.upper - size)) < 1e-6) return [shown(size)];
      return limitTexts(row.lower, row.upper, units);
    };
    for (const [id, size] of [
      ['outside', outside],
      ['bore', bore],
    ] as const) {
      if (size === null) continue;
      for (const words of bare(id, size))
        once(
          id,
          sizes.filter(({ text }) => text === `\u00d8${words}`),
        );
    }
    const lengths = [thickness, registers.driving?.depth, registers.driven?.depth, wheelSeat?.height].filter(
      (l) => l !== undefined,
    );
    for (const length of lengths) {
      const alike = lengths.filter((other) => shown(other) === shown(length)).length;
      expect(
        sizes.filter(({ text }) => text === shown(length)),
        `length ${length}`,
      ).toHaveLength(alike);
    }
    if (flats)
      once(
        'flats',
        all(sheets).filter(({ text }) => text.includes(`${shown(flats.across)} across`)),
      );
    for (const group of groups) {
      const { shape } = group;
      const count = group.positions.length;
      const drawn = adapterToDraw(joint, words).sets.find((set) => set.group === group.id) as SetToDraw;
      const said = calloutLines(drawn, units);
      for (const line of said) expect(all(sheets).filter(({ text }) => text === line).length).toBeGreaterThan(0);
      const whole = said.join('; ');
      expect(whole.startsWith(`${count} x `)).toBe(true);
      if (shape.kind === 'passing') expect(whole).toContain(`\u00d8${shown(shape.diameter)} through`);
      if (shape.kind === 'passing' && shape.head.kind === 'counterbore')
        expect(whole).toContain(`counterbore \u00d8${shown(shape.head.diameter)} x ${shown(shape.head.depth)} deep`);
      if (shape.kind === 'passing' && shape.head.kind === 'countersink')
        expect(whole).toContain(`countersink \u00d8${shown(shape.head.diameter)} x ${shape.head.angle}\u00b0`);
      if (shape.kind === 'tapped') {
        expect(whole).toContain(`${shape.thread}-${shape.thread.startsWith('M') ? '6H' : '2B'}`);
        expect(whole).toContain(
          `\u00d8${shown(shape.tapDrill)} ${shape.drillDepth === null ? 'through' : `${shown(shape.drillDepth)} deep`}`,
        );
        if (shape.drillDepth !== null) expect(whole).toContain(`${shown(shape.threadDepth)} deep`);
      }
    }
  });

  it('says what else a shop asks', () => {
    const said = all(sheets)
      .map(({ text }) => text)
      .join(' ');
    expect(said).toContain('DO NOT SCALE');
    expect(said).toContain(units === 'in' ? 'inches' : 'sizes in mm');
    expect(said).toContain('ISO 2768-m');
    expect(said).toContain(joint.adapter.material.name);
    expect(said).toContain(words.revision);
    expect(said).toContain('SEEN FROM THE DRIVEN SIDE');
    expect(said).toContain('SEEN FROM THE DRIVING SIDE');
    expect(said).toMatch(units === 'in' ? /63 \u00b5in/ : /Ra 1\.6/);
  });
});

describe('the drawing follows the job', () => {
  it('a moved bolt circle moves the circle, the table and nothing else', () => {
    const before = sheetsOf(shippedJob('orchard-truck').joint, 'adapter');
    const after = sheetsOf(edited(shippedJob('orchard-truck'), 'circle: 108', 'circle: 110'), 'adapter');
    const radii = (sheets: readonly Drawing[]) =>
      tableRows(sheets)
        .filter(([tag]) => tag?.startsWith('B'))
        .map((row) => row[3]);
    expect(radii(before)).toEqual(['54.000', '54.000', '54.000', '54.000']);
    expect(radii(after)).toEqual(['55.000', '55.000', '55.000', '55.000']);
    const centre = (sheets: readonly Drawing[]) =>
      (sheets[0] as Drawing).shapes.flatMap((s) => (s.kind === 'circle' && s.pen === 'centre' ? [s.r] : []));
    expect(centre(before).some((r) => Math.abs(r - 54) < 1e-9)).toBe(true);
    expect(centre(after).some((r) => Math.abs(r - 55) < 1e-9)).toBe(true);
    const rows = (sheets: readonly Drawing[]) =>
      tableRows(sheets).flatMap((row) => (row[0]?.startsWith('A') ? [row.slice(0, 5)] : []));
    expect(rows(after)).toEqual(rows(before));
  });

  it('a thicker part is drawn thicker', () => {
    const after = sheetsOf(edited(shippedJob('kart'), 'thickness: 14', 'thickness: 15.5'), 'adapter');
    expect(all(after).filter(({ text }) => text === '15.5')).toHaveLength(1);
    expect(all(after).filter(({ text, size }) => text === '14' && size === 2.5)).toHaveLength(0);
  });

  it('places the driven face by the projection: left of the section in first angle, right of it in third (ISO 5456-2)', () => {
    for (const { joint } of shipped) {
      for (const [angle, right] of [
        ['first', false],
        ['third', true],
      ] as const) {
        const [sheet] = sheetsOf(laidOut(joint, { angle, paper: 'a3' }), 'adapter');
        const x = (wanted: string) => texts(sheet as Drawing).find(({ text }) => text === wanted)?.at.x ?? Number.NaN;
        expect(x('SEEN FROM THE DRIVEN SIDE') > x('S-S')).toBe(right);
      }
    }
  });

  it('keeps to a scale that is asked for, and says so where it cannot', () => {
    const { joint } = shippedJob('kart');
    const said = (scale: '1:2' | '5:1') =>
      all(sheetsOf(laidOut(joint, { scale }), 'adapter'))
        .map(({ text }) => text)
        .join(' ');
    expect(said('1:2')).toContain('1:2');
    expect(said('5:1')).toMatch(/Scale 5:1 was asked for,? but does not fit on A3/);
  });
});

describe('the section', () => {
  it('has the area that closed forms give: a ring with broken edges and no holes', () => {
    const base = shippedJob('kart').joint;
    const spec = { ...base.adapterSpec, registers: { driving: null, driven: null }, groups: [], bore: 30, flats: null };
    const drawn = { ...adapterToDraw(base, words), adapter: buildAdapter(spec) };
    const { loops } = cutAdapter(drawn, null);
    const area = loops.reduce((sum, loop) => {
      const twice = loop.reduce((s, p, i) => {
        const q = loop[(i + 1) % loop.length] ?? p;
        return s + p.x * q.y - q.x * p.y;
      }, 0);
      return sum + Math.abs(twice) / 2;
    }, 0);
    // Two rectangles of (110 - 30) / 2 x 14, less four rim chamfers of 1 mm and four bore edges of 0.5 mm.
    expect(area).toBeCloseTo((110 - 30) * 14 - 4 * 0.5 * 1 ** 2 - 4 * 0.5 * 0.5 ** 2, 6);
  });
});

describe('limits', () => {
  it('are rounded inwards: what passes the drawing passes the design', () => {
    expect(limitTexts(62.01, 62.04, 'mm')).toEqual(['62.040', '62.010']);
    // 63.459 / 25.4 = 2.498386, 63.489 / 25.4 = 2.499567.
    expect(limitTexts(63.459, 63.489, 'in')).toEqual(['2.4995', '2.4984']);
    // 0.004 mm is less than two ten-thousandths: one figure more.
    expect(limitTexts(20, 20.004, 'in')).toEqual(['0.78755', '0.78741']);
    expect(toleranceText(0.05, 'in')).toBe('0.0019');
    expect(toleranceText(0.05, 'mm')).toBe('0.05');
  });
});

it('says once what the part is, also where its name says it', () => {
  const called = (from: string, to: string) =>
    adapterToDraw(edited(shippedJob('orchard-truck'), from, to), words).title.part;
  const named = '  name: ORCHARD 1\n';
  expect(called(named, named)).toBe('ORCHARD 1 adapter');
  expect(called(named, '')).toBe('adapter');
  expect(called(named, '  name: Lower Adapter\n')).toBe('Lower Adapter');
});
