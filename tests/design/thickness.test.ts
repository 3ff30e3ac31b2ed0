/** Auto thickness against sums by hand and against trying every half millimetre. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { errorsOf, judge, type Patch } from '../validate/help.ts';

const noWheel: Patch = { wheel: undefined, sensor: undefined };

/** Checks that the thickness can make fail. */
const hangsOnThickness = new Set([
  'thickness',
  'web-under-head',
  'web-between-recesses',
  'thread-engagement',
  'screw-length',
  'bolt-reaches-nut',
]);

/** True where a thickness fails a check or leaves nothing to make. */
function fails(patch: Patch, thickness: number): boolean {
  const given = { adapter: { thickness } };
  if (errorsOf(noWheel, patch, given).length > 0) return true;
  return judge(noWheel, patch, given).findings.some((f) => hangsOnThickness.has(f.code) && f.verdict === 'fail');
}

describe('auto thickness', () => {
  it.each<{ what: string; patch: Patch; least: number; governs: RegExp }>([
    { what: 'an M8 socket head: 8.6 + 0.8 x 8', patch: {}, least: 15, governs: /M8 head/ },
    {
      what: 'an M10 head: 10.6 + 8',
      patch: { driving: { holes: { thread: 'M10', depth: 20 } } },
      least: 18.6,
      governs: /M10 head/,
    },
    {
      // DIN 74 F: 18.3 at the face, hole 9: (18.3 - 9) / 2 deep at 90 degrees, and 6.4. M10 in S355: 12.5 + 0.75 + 0.5.
      what: 'a flat head is flatter: 4.65 + 6.4 = 11.05; then the M10 thread governs, 13.75',
      patch: { adapter: { driving: { head: 'flat' } } },
      least: 13.75,
      governs: /thread engagement of M10/,
    },
    {
      // 0.9 d of M10 in 1045 for class 8.8: 9 + 0.75 + 0.5.
      what: 'a stronger adapter and weaker screws: 10.25; the flat head governs again',
      patch: { adapter: { material: '1045', driving: { head: 'flat' }, driven: { class: '8.8' } } },
      least: 11.05,
      governs: /M8 head/,
    },
    {
      // 8.3 + 4.3 and a web of 3 make 15.6.
      what: 'two recesses back to back',
      patch: { driving: { register: { depth: 8 } }, driven: { register: { gender: 'male', depth: 4, fit: 'h7' } } },
      least: 15.6,
      governs: /both register recesses/,
    },
    {
      // Heads (in to 34.5) over a recess of 68 with its mouth (out to 34.8): 8.6 + 6.4 + 4.3.
      what: 'heads over the recess of their own side',
      patch: { driving: { register: { diameter: 68 } } },
      least: 19.3,
      governs: /over the driving recess/,
    },
    {
      // M6 on 48 behind a recess of 62: screw 9 + 0.5 + 7.5 = 17, so 20; thread 20 - 9 + 1 = 12, drill 12 + 5.1, point 2.5 / tan 59.
      what: 'blind threads over the recess of the other side',
      patch: { driven: { outside: 70, register: 'none', holes: { circle: 48, diameter: 6.4 } } },
      least: 4.3 + 12 + 5.1 + 2.5 / Math.tan((59 * Math.PI) / 180) + 3,
      governs: /M6 thread over the driving recess/,
    },
    {
      what: 'shared bolts need no head in the part: a recess of 4.3 and a web',
      patch: {
        driving: { holes: { count: 4, thread: undefined, depth: undefined, diameter: 8.4, circle: 84 } },
        driven: { holes: { circle: 84, diameter: 8.4 } },
        adapter: { driving: { fastening: 'through' }, driven: { fastening: 'through' } },
      },
      least: 7.3,
      governs: /register recess/,
    },
  ])('is the sum by hand: $what', ({ patch, least, governs }) => {
    const { thickness } = judge(noWheel, patch).joint;
    expect(thickness.least).toBeCloseTo(least, 9);
    expect(thickness.demands.find((demand) => demand.least === thickness.least)?.what).toMatch(governs);
    expect(thickness.thickness).toBeGreaterThanOrEqual(least - 1e-9);
  });

  it('counts the seat of the wheel and the thread behind it', () => {
    // Shoulder 3; M5 of class 8.8 in S355: 1 d, the mouth (5 - 4.2) / 2 and half a millimetre.
    const wheel = judge().joint.thickness.demands.find(({ side }) => side === 'wheel');
    expect(wheel?.least).toBeCloseTo(3 + 5 + 0.4 + 0.5, 9);
  });

  it.each<{ what: string; patch: Patch }>([
    { what: 'the sound joint', patch: {} },
    { what: 'flat heads', patch: { adapter: { driving: { head: 'flat' } } } },
    { what: 'a shallow thread', patch: { driving: { holes: { depth: 10 } } } },
    { what: 'aluminium', patch: { adapter: { material: '6061-T6' } } },
    { what: 'inch screws', patch: { driven: { holes: { circle: 108, diameter: 9.7 } } } },
    { what: 'bolts and nuts on one side', patch: { adapter: { driven: { fastening: 'through' } } } },
    { what: 'two recesses', patch: { driven: { register: { gender: 'male', depth: 4, fit: 'h7' } } } },
    { what: 'screws that are already in the drawer', patch: { adapter: { driving: { length: 25 } } } },
  ])('is the first half millimetre at which nothing fails: $what', ({ patch }) => {
    const chosen = judge(noWheel, patch).joint.thickness.thickness;
    expect(chosen * 2).toBe(Math.round(chosen * 2));
    expect(fails(patch, chosen)).toBe(false);
    const thinner = Array.from({ length: (chosen - 11) * 2 }, (_, i) => 11 + i / 2);
    expect(thinner.filter((thickness) => !fails(patch, thickness))).toEqual([]);
  });

  it('goes past the sum where only that finds a screw that is made, and says so', () => {
    // 15 is the sum. M10 x 25 through a flange of 9 reaches 16 into the adapter, and stays half a millimetre inside: 16.5.
    const { thickness } = judge(noWheel).joint;
    expect(thickness).toMatchObject({ thickness: 16.5, least: 15 });
    expect(thickness.demands[0]).toMatchObject({ what: 'a screw length that fits', least: 16.5 });
  });

  it('stretches for a shallow thread in the flange', () => {
    // At 15 thick an M8 must be 14.4 to 6.4 + 10 - 1.25 = 15.15: none is made. At 16 it is 15.4 to 16.15: 16 is.
    const patch: Patch = { driving: { holes: { depth: 10 } }, driven: { thickness: undefined } };
    expect(judge(noWheel, patch).joint.thickness.thickness).toBe(16);
  });

  it('stays at the sum where no thickness helps', () => {
    // A thread of 8 less a pitch never holds 8.
    const patch: Patch = { driving: { holes: { depth: 8 } }, driven: { thickness: undefined } };
    expect(judge(noWheel, patch).joint.thickness.thickness).toBe(15);
  });

  it('keeps a thickness that was asked for, and still tells the least', () => {
    expect(judge(noWheel, { adapter: { thickness: 12 } }).joint.thickness).toMatchObject({
      mode: 'given',
      thickness: 12,
      least: 15,
    });
  });
});
