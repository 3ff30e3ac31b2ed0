/** Metal between features and the clocking, against plane geometry by hand. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { type Case, expectSaid, findingOf, judge, prove } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };
const noRegisters = { driving: { register: 'none' }, driven: { register: 'none' } };

// The sound joint drills M8 heads of 15 mm on 84 (the driven face) and taps M10 on 108 from the same face; the M10 mouths are 10 wide.
const cases: readonly Case[] = [
  {
    what: 'six and four holes at their best, 15 degrees apart: the cosine law',
    code: 'web-between-holes',
    patch: noWheel,
    verdict: 'pass',
    value: Math.sqrt(42 ** 2 + 54 ** 2 - 2 * 42 * 54 * Math.cos(Math.PI / 12)) - 7.5 - 5, // 4.7789
    limit: 3,
  },
  {
    what: 'a head straight inside a thread: 54 - 42 = 12 from centre to centre, 7.5 and 5 of it gone',
    code: 'web-between-holes',
    patch: { ...noWheel, adapter: { clocking: 0 } },
    verdict: 'fail',
    value: -0.5,
    limit: 3,
    says: /^Turn the driven pattern: see clocking\.$/,
    cure: { adapter: { clocking: 'auto' } },
  },
  {
    what: 'the clocking says the angle, once',
    code: 'clocking',
    patch: { ...noWheel, adapter: { clocking: 0 } },
    verdict: 'caution',
    value: -0.5,
    limit: 3,
    says: /\(adapter\.clocking: auto\), or type 15\.000\./,
    cure: { adapter: { clocking: 15 } },
  },
  {
    what: 'six and eight holes 7.5 degrees apart at best: no angle is good enough',
    code: 'web-between-holes',
    patch: { ...noWheel, driven: { holes: { count: 8, circle: 104 } } },
    verdict: 'fail',
    value: Math.sqrt(42 ** 2 + 52 ** 2 - 2 * 42 * 52 * Math.cos(Math.PI / 24)) - 12.5, // -0.7796
    limit: 3,
    says: /^No angle leaves enough metal \(best -0\.78 mm\)/,
  },
  {
    what: 'sixteen heads on 84: the chord 84 sin(180 / 16) = 16.388, less 15',
    code: 'web-between-holes',
    patch: { ...noWheel, driven: { holes: { circle: 116 } }, driving: { holes: { count: 16 } } },
    verdict: 'fail',
    value: 84 * Math.sin(Math.PI / 16) - 15,
    limit: 3,
    says: /^Neighbours of the driving pattern/,
  },
  {
    what: 'a bore of 66 (33.5 at its broken edge) beside heads that reach in to 42 - 7.5 = 34.5',
    code: 'wall-to-bore',
    patch: { ...noWheel, ...noRegisters, adapter: { bore: 66 } },
    verdict: 'fail',
    value: 1,
    limit: 3,
    says: /Make the bore at least 4 mm smaller/,
    cure: { adapter: { bore: 62 } },
  },
  {
    what: 'an outside of 124 is 61 at its chamfer; the M10 mouths reach 54 + 5 = 59',
    code: 'wall-to-rim',
    patch: { ...noWheel, adapter: { outside: 124 } },
    verdict: 'fail',
    value: 2,
    limit: 3,
    says: /Make the outside at least 2 mm larger/,
    cure: { adapter: { outside: 126 } },
  },
  {
    what: 'heads that reach in to 34.5 under a spigot of 78: 39 - 34.5 = 4.5 of it is bitten away',
    code: 'wall-to-rim',
    patch: { ...noWheel, driven: { register: { diameter: 78 } } },
    verdict: 'fail',
    value: -4.5,
    limit: 3,
    says: /adapter\.driven\.register: none/,
    cure: { adapter: { driven: { register: 'none' } } },
  },
  {
    // Seat 134.5 - 0.12 = 134.38, 66.19 at its chamfer; mouths reach 59 + 5 = 64.
    what: 'a wheel seat close round the tapped holes',
    code: 'wall-to-rim',
    patch: { driven: { outside: 134, holes: { circle: 118 } }, wheel: { bore: 134.5, outside: 190 } },
    verdict: 'fail',
    value: 2.19,
    limit: 3,
    says: /Make the wheel's bore at least 1\.7 mm larger/,
    cure: { wheel: { bore: 136.2 } },
  },
  {
    // Six heads: along 150 degrees the nearest lies 30 degrees off, 42 cos 30 = 36.373; the threads 45 degrees off, 38.18 + 5.
    what: 'flats of 90 across, turned to where there is most metal',
    code: 'wall-to-flats',
    patch: { ...noWheel, adapter: { flats: 90 } },
    verdict: 'fail',
    value: 45 - 42 * Math.cos(Math.PI / 6) - 7.5, // 1.1269
    limit: 3,
    says: /Set the flats at least 3\.8 mm further apart/,
    cure: { adapter: { flats: 93.8 } },
  },
  {
    // A spigot of 60 with a 0.5 lead, a bore of 54 with its edges broken 0.5: a land from 27.5 to 29.5 at the end.
    what: 'a bore that leaves the spigot a thin end',
    code: 'wall-bore-to-outside',
    patch: { ...noWheel, driving: { register: 'none' }, adapter: { bore: 54 } },
    verdict: 'fail',
    value: 2,
    limit: 3,
    says: /Make the bore at least 2 mm smaller/,
    cure: { adapter: { bore: 52 } },
  },
  {
    // Recesses 4 + 0.3 and 3 + 0.3 deep in 9.6.
    what: 'two recesses back to back',
    code: 'web-between-recesses',
    patch: { ...noWheel, driven: { register: { gender: 'male', fit: 'h7' } }, adapter: { thickness: 9.6 } },
    verdict: 'fail',
    value: 2,
    limit: 3,
    says: /at least 1 mm thicker/,
    cure: { adapter: { thickness: 10.6 } },
  },
];

describe('webs and clocking', () => {
  it.each(cases)('$code, $verdict: $what', (row) => prove(row));

  it('passes each kind of wall on the sound joint', () => {
    const { findings } = judge({ adapter: { flats: 'auto' } });
    for (const code of ['web-between-holes', 'wall-to-bore', 'wall-to-rim', 'wall-to-flats', 'wall-bore-to-outside']) {
      expect(findingOf({ findings }, code).verdict, code).toBe('pass');
    }
  });

  it('names the recess where that is nearer than the bore, and proposes no smaller bore', () => {
    // Heads of 15 on 84 reach in to 34.5; a driven recess made for a spigot of 66 is 33 and more, with its chamfer.
    const wide = { ...noWheel, driven: { register: { gender: 'male', diameter: 66, fit: 'h7' } } };
    const near = findingOf(judge(wide), 'wall-to-bore');
    expect(near.verdict).toBe('fail');
    expect(near.why).toMatch(/driven register recess and driving hole 1/);
    expect(near.remedy).toBe('Use smaller screws or heads on the driving side.');
    // A smaller bore leaves it as it is.
    expect(findingOf(judge(wide, { adapter: { bore: 20 } }), 'wall-to-bore').value).toBeCloseTo(near.value ?? 0, 9);
    const bore = findingOf(judge({ ...noWheel, ...noRegisters, adapter: { bore: 66 } }), 'wall-to-bore');
    expect(bore.why).toMatch(/centre bore .* and driving hole 1/);
  });

  it('names the two features by side and number', () => {
    const { why } = findingOf(judge({ ...noWheel, adapter: { clocking: 0 } }), 'web-between-holes');
    expect(why).toBe('driving hole 1 and driven hole 3 run 0.50 mm into each other.');
  });

  it('says that shared bolts settle the angle', () => {
    const same = { count: 6, circle: 84, diameter: 8.4 };
    const { findings } = judge(
      { ...noWheel, driving: { holes: undefined }, driven: { holes: undefined } },
      {
        driving: { holes: same },
        driven: { holes: same },
        adapter: { driving: { fastening: 'through' }, driven: { fastening: 'through' } },
      },
    );
    expectSaid(findingOf({ findings }, 'clocking'), { verdict: 'pass' });
  });

  it('keeps the clocking quiet where a worse angle costs nothing that is needed', () => {
    // 12 degrees off leaves sqrt(42^2 + 54^2 - 2 42 54 cos 12) - 12.5 = 3.082: less than the best, but enough.
    const finding = findingOf(judge({ ...noWheel, adapter: { clocking: 12 } }), 'clocking');
    expectSaid(finding, {
      verdict: 'pass',
      value: Math.sqrt(42 ** 2 + 54 ** 2 - 2 * 42 * 54 * Math.cos(Math.PI / 15)) - 12.5,
      limit: 3,
    });
  });
});
