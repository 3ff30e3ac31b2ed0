/** Screws, their lengths and their holes, against sums by hand. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { type Case, findingOf, judge, prove } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };
// 15 thick, head pockets 8.6 deep: the M8 pass 6.4 of the adapter before they reach the driving flange.
const at15 = { ...noWheel, adapter: { thickness: 15 } };
const driving = (keys: object) => ({ ...noWheel, adapter: { thickness: 15, driving: keys } });
const through = { ...noWheel, adapter: { thickness: 20, driven: { fastening: 'through' } } };

const cases: readonly Case[] = [
  // ISO 4014 and ISO 4017 list hexagon heads up to 10.9, ISO 4762 socket heads in 12.9 (from memory).
  {
    what: 'class 12.9 in a hexagon head is no stock item',
    code: 'screw-class@driven',
    patch: { adapter: { driven: { head: 'hex', class: '12.9' } } },
    verdict: 'caution',
    says: 'adapter.driven.head: socket',
  },
  // 1045 has 565 MPa: 1 d for class 10.9, 0.9 d for 8.8. S355 has 470: 1.25 d.
  { what: 'M8 x 16: 16 - 6.4', code: 'thread-engagement@driving', patch: at15, verdict: 'pass', value: 9.6, limit: 8 },
  {
    what: 'M8 x 12: 12 - 6.4',
    code: 'thread-engagement@driving',
    patch: driving({ length: 12 }),
    verdict: 'fail',
    value: 5.6,
    limit: 8,
    says: /^Take screws 14\.40 mm long or longer/,
    cure: driving({ length: 'auto' }),
  },
  {
    what: 'a thread right through a flange of 7.5: no screw holds in more than there is',
    code: 'thread-engagement@driving',
    patch: {
      ...at15,
      driving: { thickness: 7.5, holes: { depth: undefined, through: true }, behind: undefined },
      ...driving({ length: 16 }),
    },
    verdict: 'fail',
    value: 7.5,
    limit: 8,
    says: /^There is 0\.50 mm of thread too little: take weaker screws \(adapter\.driving\.class: 8\.8\)/,
    cure: driving({ length: 16, class: '8.8' }),
  },
  {
    // M10 x 25 through a flange of 9; the mouth of the hole, (10 - 8.5) / 2, does not count.
    what: 'M10 x 25 into the adapter: 25 - 9 - 0.75',
    code: 'thread-engagement@driven',
    patch: noWheel,
    verdict: 'pass',
    value: 15.25,
    limit: 12.5,
  },
  {
    what: 'no flange thickness, no length',
    code: 'thread-engagement@driven',
    patch: { driven: { thickness: undefined } },
    verdict: 'not assessed',
    says: /^Give driven\.thickness/,
    cure: { driven: { thickness: 9 } },
  },
  // 16 of thread, less a pitch of 1.25 that is not full: 6.4 + 14.75.
  {
    what: 'M8 x 16 in 16 of thread',
    code: 'screw-length@driving',
    patch: at15,
    verdict: 'pass',
    value: 16,
    limit: 21.15,
  },
  {
    what: 'M8 x 40 in 16 of thread',
    code: 'screw-length@driving',
    patch: driving({ length: 40 }),
    verdict: 'fail',
    value: 40,
    limit: 21.15,
    says: /^Take a screw of at most 21\.15 mm: M8 x 20/,
    cure: driving({ length: 20 }),
  },
  {
    what: 'no length is made between 14.4 and 6.4 + 10 - 1.25 = 15.15',
    code: 'screw-length@driving',
    patch: { ...at15, driving: { holes: { depth: 10 } } },
    verdict: 'fail',
    value: 16,
    limit: 15.15,
    says: /^Make the adapter 0\.9 mm thicker/,
    cure: { adapter: { thickness: 15.9 } },
  },
  {
    what: 'a thread of 8 less a pitch does not hold 8: 14.4 is the least, 13.15 the most',
    code: 'screw-length@driving',
    patch: { ...at15, driving: { holes: { depth: 8 } } },
    verdict: 'fail',
    value: 16,
    limit: 13.15,
    says: /^There is 1\.25 mm of thread too little/,
    cure: { driving: { holes: { depth: 16 } } },
  },
  {
    what: 'nobody makes M8 that long',
    code: 'screw-length@driving',
    patch: { ...noWheel, adapter: { thickness: 290 } },
    verdict: 'fail',
    says: /no M8 socket screw is made that long/,
  },
  {
    what: 'nobody measured the thread',
    code: 'screw-length@driving',
    patch: { ...at15, driving: { holes: { depth: undefined } } },
    verdict: 'not assessed',
    says: /^Give driving\.holes\.depth/,
    cure: { driving: { holes: { depth: 16 } } },
  },
  {
    what: 'nobody measured the flange',
    code: 'screw-length@driven',
    patch: { driven: { thickness: undefined } },
    verdict: 'not assessed',
    says: /^Give driven\.thickness/,
    cure: { driven: { thickness: 9 } },
  },
  {
    what: 'bolts through a flange with an unknown back',
    code: 'screw-length@driven',
    patch: { ...through, driven: { behind: undefined } },
    verdict: 'not assessed',
    says: /^Give driven\.behind/,
    cure: { driven: { behind: 60 } },
  },
  // Pocket 10.6 in 20: 9.4, flange 9, nut 8.4 (ISO 4032), two pitches of 1.5: 29.8.
  {
    what: 'M10 x 30 through both',
    code: 'bolt-reaches-nut@driven',
    patch: through,
    verdict: 'pass',
    value: 30,
    limit: 29.8,
  },
  {
    what: 'M10 x 25 through both',
    code: 'bolt-reaches-nut@driven',
    patch: { ...through, adapter: { thickness: 20, driven: { fastening: 'through', length: 25 } } },
    verdict: 'fail',
    value: 25,
    limit: 29.8,
    says: /at least 29\.80 mm/,
    cure: { adapter: { driven: { length: 'auto' } } },
  },
];

describe('screws', () => {
  it.each(cases)('$code, $verdict: $what', (row) => prove(row));

  it('counts the whole way through two flanges for shared bolts', () => {
    const holes = { count: 6, circle: 84, diameter: 8.4 };
    const { joint, findings } = judge(
      { ...noWheel, driving: { holes: undefined }, driven: { holes: undefined } },
      {
        driving: { thickness: 14, holes, behind: 30 },
        driven: { holes },
        adapter: { thickness: 14, driving: { fastening: 'through' }, driven: { fastening: 'through' } },
      },
    );
    expect(joint.screws.map(({ id }) => id)).toEqual(['driving-screws']);
    // 9 + 14 + 14 of metal, a nut of 6.8 and two pitches of 1.25: 46.3, so 50; at most 37 + 30 - 0.5.
    expect(findingOf({ findings }, 'bolt-reaches-nut')).toMatchObject({ verdict: 'pass', value: 50, limit: 46.3 });
    expect(findingOf({ findings }, 'screw-length')).toMatchObject({ verdict: 'pass', value: 50, limit: 66.5 });
  });
});

// A circle read once with a caliper is good to 0.03, its holes to half of that; drilled holes stand within 0.05: 2 (0.015 + 0.05).
const holeCases: readonly Case[] = [
  { what: 'M8 in 9', code: 'holes-clear@driving', patch: {}, verdict: 'pass', value: 1, limit: 0.13 },
  { what: 'M10 in 10.4', code: 'holes-clear@driven', patch: {}, verdict: 'pass', value: 0.4, limit: 0.13 },
  {
    what: 'M10 in 10.05: no reading is good enough for that',
    code: 'holes-clear@driven',
    patch: { driven: { holes: { diameter: 10.05 } }, adapter: { driven: { screw: 'M10' } } },
    verdict: 'caution',
    value: 0.05,
    limit: 0.13,
    says: /^Drill through the flange as a template, or take a thinner screw/,
    cure: { adapter: { driven: { screw: 'M8' } } },
  },
  {
    what: 'M10 in 10.11',
    code: 'holes-clear@driven',
    patch: { driven: { holes: { diameter: 10.11 } } },
    verdict: 'caution',
    value: 0.11,
    limit: 0.13,
    says: /^Measure the bolt circle better/,
    cure: { driven: { holes: { circle: { value: 108, doubt: 0.001 } } } },
  },
  {
    what: 'M10 in 10.0: no play at all',
    code: 'holes-clear@driven',
    patch: { driven: { holes: { diameter: 10 } }, adapter: { driven: { screw: 'M10' } } },
    verdict: 'fail',
    value: 0,
    limit: 0.13,
    says: /take a thinner screw \(adapter\.driven\.screw\)/,
    cure: { adapter: { driven: { screw: 'M8' } } },
  },
  {
    what: 'a circle that is only known within 1.5',
    code: 'holes-clear@driving',
    patch: { driving: { holes: { circle: { value: 84, doubt: 1.5 } } } },
    verdict: 'caution',
    value: 1,
    limit: 1.6,
    says: /adapter\.driving\.hole: coarse/,
    cure: { adapter: { driving: { hole: 'coarse' } } },
  },
  {
    what: 'a bolt plays in both holes: 11 - 10 and 10.4 - 10',
    code: 'holes-clear@driven',
    patch: through,
    verdict: 'pass',
    value: 1.4,
    limit: 0.13,
  },
];

describe('screws through their holes', () => {
  it.each(holeCases)('$code, $verdict: $what', (row) => prove(row));
});
