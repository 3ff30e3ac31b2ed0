/** Heads, nuts and washers partly over other holes: distances by the chord, areas by a count of small squares. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { headsOverHoles } from '../../src/validate/heads-over-holes.ts';
import { bent, findingOf, judge, type Patch } from './help.ts';

/** 120 mm round, holes of 11 in it, M10 hexagon heads behind the flange (ISO 4017: face 14.63), washers 20 x 2 (ISO 7089). */
const holes = (count: number, use: number | undefined, more: Patch = {}): Patch => ({
  driven: {
    outside: 140,
    register: 'none',
    holes: { count, circle: 120, diameter: 11, use },
  },
  adapter: { driven: { screw: 'M10', head: 'hex', fastening: 'into_adapter', ...more } },
  wheel: undefined,
  sensor: undefined,
});
const washers = { washer: true };
const code = 'heads-clear-holes-driven';
const chord = (count: number) => 120 * Math.sin(Math.PI / count);
/** A head's face of 14.63, spread by 1.6 times the washer's 2. */
const onWasher = 14.63 + 1.6 * 2;

/** Share of a ring that holes of 11 on both sides of it leave, by counting. */
function leftOf(outer: number, inner: number, distance: number): number {
  const n = 800;
  let [all, left] = [0, 0];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [x, y] = [(i + 0.5) / n - 0.5, (j + 0.5) / n - 0.5].map((at) => at * outer) as [number, number];
      const r = Math.hypot(x, y);
      if (r > outer / 2 || r < inner / 2) continue;
      all++;
      if (Math.hypot(x - distance, y) > 5.5 && Math.hypot(x + distance, y) > 5.5) left++;
    }
  return left / all;
}

describe('heads beside empty holes', () => {
  it('pass with their margin where they lie clear', () => {
    const found = findingOf(judge(holes(24, 12)), code);
    expect(found.verdict).toBe('pass');
    expect(found.value).toBeCloseTo(chord(24) - 5.5 - 14.63 / 2, 2);
    // The screw may stand off by half of 11 - 10.
    expect(found.margin).toBeCloseTo(chord(24) - 5.5 - 14.63 / 2 - 0.5, 2);
    expect(found.why).toContain('empty hole');
  });

  it('get a caution where the washer lies a little over them, and the washer is what to leave out', () => {
    const judged = judge(holes(28, 14, washers));
    const found = findingOf(judged, code);
    const over = onWasher / 2 + 5.5 - chord(28);
    expect(over).toBeCloseTo(0.98, 2);
    expect(found.verdict).toBe('caution');
    expect(found.value).toBeCloseTo(-over, 2);
    const left = Math.floor(100 * leftOf(onWasher, 11, chord(28)));
    expect(found.why).toContain(`${left} % of it is left`);
    expect(found.remedy).toMatch(/^Leave the washers out \(adapter\.driven\.washer: false\)/);
    expect(found.remedy).toContain('another number in driven.holes.use does not take it away');
    const cured = findingOf(judge(holes(28, 14)), code);
    expect([cured.verdict, cured.value]).toEqual(['pass', expect.closeTo(chord(28) - 5.5 - 14.63 / 2, 2)]);
  });

  it('press harder on what is left, by just that much', () => {
    const pressure = (count: number) =>
      Number(findingOf(judge(holes(count, count / 2, washers)), 'head-pressure-driven').value);
    expect(pressure(24) / pressure(28)).toBeCloseTo(leftOf(onWasher, 11, chord(28)), 3);
    expect(findingOf(judge(holes(28, 14, washers)), 'head-pressure-driven').why).toContain(
      'of which other holes of the flange leave',
    );
  });

  it('fail where more than a tenth of the face is gone', () => {
    // 32 holes: 0.74 of metal between them; the washer lies 2.65 over both neighbours.
    const found = findingOf(judge(holes(32, 16, washers)), code);
    expect(leftOf(onWasher, 11, chord(32))).toBeLessThan(0.9);
    expect(found.verdict).toBe('fail');
    expect(found.value).toBeCloseTo(chord(32) - 5.5 - onWasher / 2, 2);
  });

  it('where a bare head is cut, a washer that leaves more area is named with the areas', () => {
    const found = findingOf(judge(holes(32, 16)), code);
    expect(found.verdict).not.toBe('pass');
    const area = (outer: number) => leftOf(outer, 11, chord(32)) * (Math.PI / 4) * (outer ** 2 - 11 ** 2);
    const told = /gives (\d+) mm2 in place of (\d+)/.exec(found.remedy);
    expect(Math.abs(Number(told?.[1]) - area(onWasher))).toBeLessThan(1.5);
    expect(Math.abs(Number(told?.[2]) - area(14.63))).toBeLessThan(1.5);
  });

  it('nuts are judged as heads are, each on its own flange', () => {
    const through: Patch = {
      driving: {
        outside: 140,
        register: 'none',
        holes: { count: 28, use: 14, circle: 120, diameter: 11, thread: undefined, depth: undefined },
      },
      driven: {
        outside: 140,
        thickness: 9,
        register: 'none',
        holes: { count: 28, use: 14, circle: 120, diameter: 11 },
      },
      adapter: {
        driving: { fastening: 'through', screw: 'M10', head: 'hex', washer: true },
        driven: { fastening: 'through' },
      },
      wheel: undefined,
      sensor: undefined,
    };
    const judged = judge(through);
    for (const what of ['heads', 'nuts']) {
      expect(findingOf(judged, `${what}-clear-holes-driving`).value).toBeCloseTo(chord(28) - 5.5 - onWasher / 2, 2);
    }
  });
});

describe('heads where every hole has its screw', () => {
  it('have nothing to tell while they lie clear', () => {
    expect(judge(holes(12, undefined)).findings.filter((finding) => finding.code.includes('clear-holes'))).toEqual([]);
  });

  it('fail where a washer lies over the next hole: the two washers lie on each other', () => {
    const found = findingOf(judge(holes(28, undefined, washers)), code);
    expect(found.verdict).toBe('fail');
    expect(found.why).toContain('come into each other');
    expect(found.remedy).not.toContain('holes.use');
  });

  it('get no more than a caution where a dowel hole is under them', () => {
    const { joint } = judge(holes(8, undefined, { ...washers, dowels: { size: 6, count: 2 } }));
    const group = joint.adapterSpec.groups.find(({ id }) => id === 'driven-dowels');
    expect(group).toBeDefined();
    // A pin of 6, 10 mm beside the first screw: 3 + 8.915 - 10 of it lies under the washer.
    const moved = bent(joint, {
      adapterSpec: {
        groups: joint.adapterSpec.groups.map((one) =>
          one === group
            ? {
                ...one,
                positions: [
                  { x: 70 * -1, y: 0 },
                  { x: 70, y: 0 },
                ],
              }
            : one,
        ),
      },
    });
    const found = findingOf({ findings: headsOverHoles.run(moved) }, code);
    expect(joint.driven.holes.positions.some(({ x, y }) => Math.hypot(Math.abs(x) - 60, y) < 1e-9)).toBe(true);
    expect(found.value).toBeCloseTo(10 - 3 - onWasher / 2, 2);
    expect(found.verdict).toBe('caution');
    expect(found.why).toContain('dowel hole');
  });
});

describe('heads that stand on the adapter', () => {
  /** A small flange on the driven face leaves the M8 heads (ISO 4762: face 12.33) of the driving side free, on 84. */
  const free: Patch = {
    driven: { outside: 56, register: 'none', holes: { circle: 44 } },
    adapter: { thickness: 25 },
    wheel: undefined,
    sensor: undefined,
  };
  const { joint } = judge(free);
  const screw = joint.screws.find(({ side }) => side === 'driving')?.positions[0];
  const found = (away: number, top: number) => {
    if (!screw) throw new Error('no screw');
    const wide = { id: 'beside-1', feature: 'driven-screws', x: screw.x + away, y: screw.y };
    const drilling = {
      ...wide,
      profile: [
        { z: 0, r: 5 },
        { z: top, r: 5 },
      ],
    };
    const more = bent(joint, { adapter: { drillings: [...joint.adapter.drillings, drilling] } });
    return headsOverHoles.run(more).filter(({ feature }) => feature === 'driving-screws');
  };

  it('are told of where a hole opens in their face under them', () => {
    expect(joint.screws.find(({ side }) => side === 'driving')?.seat).toBe('surface');
    const [one] = found(10, 25);
    expect([one?.code, one?.verdict]).toEqual(['heads-clear-holes-driving', 'caution']);
    expect(one?.value).toBeCloseTo(10 - 5 - 12.33 / 2, 5);
    expect(one?.remedy).not.toContain('holes.use');
  });

  it('have nothing to tell of a hole that does not come out there, or lies clear', () => {
    expect(found(10, 15)).toEqual([]);
    expect(found(12, 25)).toEqual([]);
  });
});
