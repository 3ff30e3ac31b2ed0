/** What the record accepts must work: no limit of it may be a size with which a check fails that passes as drawn. mm. */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { asBuilt } from '../../src/inspect/as-built.ts';
import { characteristicsOf } from '../../src/inspect/characteristics.ts';
import type { Joint } from '../../src/job/joint.ts';
import { validate } from '../../src/validate/all.ts';
import { sheetsOf, texts } from '../drawing/shop/help.ts';
import { patterns, shipped, shippedJob } from '../presets/shipped.ts';
import { judge } from '../validate/help.ts';

/** Where a size of the record stands under `built`. */
const typed: Readonly<Record<string, (size: unknown) => object>> = {
  'driving-register': (register) => ({ adapter: { driving: { register } } }),
  'driven-register': (register) => ({ adapter: { driven: { register } } }),
  'driving-depth': (depth) => ({ adapter: { driving: { depth } } }),
  'driven-depth': (depth) => ({ adapter: { driven: { depth } } }),
  thickness: (thickness) => ({ adapter: { thickness } }),
  outside: (outside) => ({ adapter: { outside } }),
  bore: (bore) => ({ adapter: { bore } }),
  'wheel-bore': (bore) => ({ wheel: { bore } }),
  'wheel-outside': (outside) => ({ wheel: { outside } }),
};

const failing = (joint: Joint) =>
  new Set(
    validate(joint)
      .filter(({ verdict }) => verdict === 'fail')
      .map(({ code, feature }) => `${code} ${feature}`),
  );

describe.each(shipped.map(({ base, joint }) => [base, joint] as const))('%s', (_, joint) => {
  const { built: _built, ...job } = joint.job;
  const drawn: Joint = { ...joint, job };
  it('passes every check at each limit of its record that it passes as drawn', () => {
    const before = failing(drawn);
    const rows = characteristicsOf(drawn).filter(({ id }) => id in typed);
    expect(rows.length).toBeGreaterThan(2);
    for (const { id, lower, upper } of rows) {
      for (const value of [lower, upper]) {
        const size = { value, doubt: 0, basis: 'repeated' };
        const real = asBuilt({ ...drawn, job: { ...job, built: typed[id]?.(size) } } as unknown as Joint);
        const fails = real ? [...failing(real)].filter((one) => !before.has(one)) : ['not built'];
        expect(fails, `${id} of ${value}`).toEqual([]);
      }
    }
  });
});

/** The shipped job with a line of its adapter more, or another one. */
function nearMiss(line: string): Joint {
  const { text, file } = shippedJob('near-miss');
  const more = text.replace(/^adapter:\n/m, `adapter:\n  ${line}\n`);
  expect(more).not.toBe(text);
  const judged = judgeJob(more, file, patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join('\n'));
  return judged.joint;
}

const limitsOf = (joint: Joint, id: string) => characteristicsOf(joint).find((row) => row.id === id);

describe('a limit that the general tolerance would put too low', () => {
  // M10 socket heads sunk 10.6 deep, and 0.8 of the diameter under them (common practice): 18.6.
  it.each([
    [18.7, 18.6, 18.9],
    [18.6, 18.6, 18.8],
    // Far enough above it ISO 2768-m holds: 0.2 over 6 to 30.
    [19, 18.8, 19.2],
  ])('a thickness of %d is held to %d to %d', (thickness, lower, upper) => {
    const joint = nearMiss(`thickness: ${thickness}`);
    const row = limitsOf(joint, 'thickness');
    expect(row?.lower).toBeCloseTo(lower, 6);
    expect(row?.upper).toBeCloseTo(upper, 6);
    // The shop keeps half of the general tolerance, whatever was typed.
    expect((row?.upper ?? 0) - (row?.lower ?? 0)).toBeGreaterThanOrEqual(0.2 - 1e-9);
    const said = sheetsOf(joint, 'adapter').flatMap((sheet) => texts(sheet).map(({ text }) => text));
    const close = `${lower.toFixed(3)} to ${upper.toFixed(3)}`;
    expect(said.includes(close)).toBe(thickness < 19);
    const why = validate(joint).find(({ code }) => code === 'thickness')?.why ?? '';
    expect(/its lower limit is that least/.test(why)).toBe(thickness < 19);
  });

  it('a thickness below the least keeps the general tolerance, and fails', () => {
    const joint = nearMiss('thickness: 18.5');
    expect(limitsOf(joint, 'thickness')?.lower).toBeCloseTo(18.3, 6);
    expect(failing(joint)).toContain('thickness body');
  });

  // M5 on 140 for the wheel, a chamfer of 1 at the rim, a least wall of 3: 2 (70 + 2.5 + 3 + 1) = 153.
  it.each([
    [153, 153],
    [153.4, 153],
    // ISO 2768-m: 0.5 over 120 to 400.
    [154, 153.5],
  ])('an outside of %d may be %d at least', (outside, lower) => {
    const row = limitsOf(nearMiss(`outside: ${outside}`), 'outside');
    expect(row?.lower).toBeCloseTo(lower, 4);
    expect(row?.upper).toBeCloseTo(outside + 0.5, 6);
  });

  // 129.05 cut to 0.15 may come out at 128.90; the shoulder of 129 h7 is 129 at most (ISO 286-2).
  it('a wheel bore is accepted from what goes on', () => {
    const { joint, findings } = judge({ wheel: { clearance: 0.05 }, sheet: { tolerance: 0.15 } });
    const row = limitsOf(joint, 'wheel-bore');
    expect(row?.lower).toBeCloseTo(129, 9);
    expect(row?.upper).toBeCloseTo(129.2, 9);
    const said = sheetsOf(joint, 'wheel').flatMap((sheet) => texts(sheet).map(({ text }) => text));
    expect(said.some((text) => text.includes('(129.000 to 129.200)'))).toBe(true);
    // As designed already: the smallest cut does not go on, and what would.
    const found = findings.find(({ code }) => code === 'wheel-goes-on');
    expect(found).toMatchObject({ verdict: 'caution', remedy: expect.stringContaining('clearance 0.15 mm') });
  });
});
