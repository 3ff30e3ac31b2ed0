/** Heads, what is under them, and what stands beside them, against sums by hand. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { validate } from '../../src/validate/all.ts';
import { type Case, expectSaid, findingOf, judge, prove } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };
// A small flange on four holes: it leaves the heads of the driving side free.
const small = (outside: number) => ({ driven: { outside, register: 'none', holes: { circle: 44 } } });

// ISO 4762 M8: head 13.27 x 8 (knurled); DIN 974-1: counterbore 15 x 8.6. ISO 4017 M10: head 6.4. ISO 7380-1 M5: head 9.5.
const cases: readonly Case[] = [
  {
    what: '20 thick less a pocket of 8.6; 0.8 d = 6.4',
    code: 'web-under-head',
    patch: { adapter: { thickness: 20 } },
    verdict: 'pass',
    value: 11.4,
    limit: 6.4,
  },
  {
    what: '12 thick less 8.6',
    code: 'web-under-head',
    patch: { adapter: { thickness: 12 } },
    verdict: 'fail',
    value: 3.4,
    limit: 6.4,
    says: /Make the adapter 3 mm thicker/,
    cure: { adapter: { thickness: 15 } },
  },
  {
    // A recess of 68 and its mouth reach to 34.8; the heads reach in to 34.5. 17 - 8.6 - (4 + 0.3) = 4.1.
    what: 'heads over the recess of their own side',
    code: 'web-under-head',
    patch: { driving: { register: { diameter: 68 } }, adapter: { thickness: 17 } },
    verdict: 'fail',
    value: 4.1,
    limit: 6.4,
    says: /2\.3 mm thicker/,
    cure: { adapter: { thickness: 19.3 } },
  },
  {
    what: 'heads on the surface: the whole thickness is under them',
    code: 'web-under-head',
    patch: { ...noWheel, ...small(56), adapter: { thickness: 25 } },
    verdict: 'pass',
    value: 25,
    limit: 6.4,
  },
  {
    what: 'a socket head 8 high in a pocket 8.6 deep',
    code: 'head-below-face',
    patch: {},
    verdict: 'pass',
    value: 0.6,
    limit: 0,
  },
  {
    what: 'the same on a washer of 1.6, in a pocket that much deeper',
    code: 'head-below-face',
    patch: { adapter: { driving: { washer: true } } },
    verdict: 'pass',
    value: 0.6,
    limit: 0,
  },
  {
    // DIN 74 F: 18.3 at the face; ISO 10642: head 17.92 sharp. (18.3 - 17.92) / 2 at 90 degrees.
    what: 'a flat head in its countersink',
    code: 'head-below-face',
    patch: { adapter: { driving: { head: 'flat' } } },
    verdict: 'pass',
    value: 0.19,
    limit: 0,
  },
  {
    what: 'a head of 13.27 in a pocket of 15',
    code: 'head-in-pocket',
    patch: {},
    verdict: 'pass',
    value: 1.73,
    limit: 0.1,
  },
  {
    what: 'a washer of 16 in its pocket of 18',
    code: 'head-in-pocket',
    about: 'washers',
    patch: { adapter: { driving: { washer: true } } },
    verdict: 'pass',
    value: 2,
    limit: 0.1,
  },
];

describe('heads in the adapter', () => {
  it.each(cases)('$code, $verdict: $what', (row) => prove(row));

  /** The sound joint with other heads than its pockets were made for: a part drawn by hand. */
  function withHeads(
    head: Partial<ScrewGroup['head']>,
  ): Pick<Joint, never> & { findings: ReturnType<typeof validate> } {
    const { joint } = judge(noWheel);
    const screws = joint.screws.map((group) =>
      group.side === 'driving' ? { ...group, head: { ...group.head, ...head } } : group,
    );
    return { findings: validate({ ...joint, screws }) };
  }

  it('fails a head of 9 in a pocket of 8.6: it stands 0.4 proud', () => {
    const finding = findingOf(withHeads({ height: 9 }), 'head-below-face');
    expectSaid(finding, { verdict: 'fail', value: -0.4, limit: 0 });
    expect(finding.remedy).toMatch(/^Sink the heads 0\.4 mm deeper/);
  });

  it('fails a head of 14.95 in a pocket of 15', () => {
    const finding = findingOf(withHeads({ diameter: 14.95 }), 'head-in-pocket');
    expectSaid(finding, { verdict: 'fail', value: 0.05, limit: 0.1 });
    expect(finding.remedy).toMatch(/0\.1 mm wider/);
  });
});

const roomCases: readonly Case[] = [
  {
    what: 'heads on the face, a flange of 56 inside them: 42 - 13.27/2 - 28',
    code: 'heads-clear-flange',
    patch: { ...noWheel, ...small(56) },
    verdict: 'pass',
    value: 7.365,
    limit: 1,
  },
  {
    what: 'half a millimetre beside the rim: 42 - 6.635 - 34.865',
    code: 'heads-clear-flange',
    patch: { ...noWheel, ...small(69.73), adapter: { driving: { seat: 'surface' } } },
    verdict: 'caution',
    value: 0.5,
    limit: 1,
    says: /adapter\.driving\.seat: sunk/,
  },
  {
    what: 'heads under the flange: 42 - 6.635 - 64',
    code: 'heads-clear-flange',
    patch: { ...noWheel, adapter: { driving: { seat: 'surface' } } },
    verdict: 'fail',
    value: -28.635,
    limit: 1,
  },
  {
    // Seat: twice 42 + 6.635 and a web and a chamfer: 105.27, so 106; bore 106.12.
    what: 'heads inside a bore that was made for them',
    code: 'heads-clear-wheel',
    patch: { ...small(56) },
    verdict: 'pass',
    value: 53.06 - 48.635,
    limit: 1,
  },
  {
    what: 'heads that just pass the bore: 49.5 - 48.635',
    code: 'heads-clear-wheel',
    patch: { ...small(56), wheel: { bore: 99 } },
    verdict: 'caution',
    value: 0.865,
    limit: 1,
    says: /leave wheel\.bore on auto/,
    cure: { wheel: { bore: 'auto' } },
  },
  {
    what: 'heads in the way of the wheel: 48 - 48.635',
    code: 'heads-clear-wheel',
    patch: { ...small(56), wheel: { bore: 96 } },
    verdict: 'fail',
    value: -0.635,
    limit: 1,
    cure: { wheel: { bore: 'auto' } },
  },
  {
    // Circle: bore 129.12, twice a hole's 2.75 and a web of 3: 140.62, so 141.
    what: 'wheel heads round the flange: 70.5 - 4.75 - 64 - 0.03',
    code: 'wheel-heads-clear-flange',
    patch: {},
    verdict: 'pass',
    value: 1.72,
    limit: 0.3,
  },
  {
    what: 'on a circle of 138: 69 - 4.75 - 64.03',
    code: 'wheel-heads-clear-flange',
    patch: { wheel: { screws: { circle: 138 } } },
    verdict: 'caution',
    value: 0.22,
    limit: 0.3,
    says: /at least 0\.2 mm larger/,
    cure: { wheel: { screws: { circle: 138.2 } } },
  },
  {
    what: 'on a circle of 137: 68.5 - 4.75 - 64.03',
    code: 'wheel-heads-clear-flange',
    patch: { wheel: { screws: { circle: 137 } } },
    verdict: 'fail',
    value: -0.28,
    limit: 0.3,
    says: /at least 1\.2 mm larger/,
    cure: { wheel: { screws: { circle: 138.2 } } },
  },
  // M10 x 25 (9 + 0.75 + 12.5 = 22.25 is the least) with a head of 6.4: 31.4 goes in.
  { what: '60 behind the flange', code: 'room-behind-flange', patch: {}, verdict: 'pass', value: 60, limit: 31.4 },
  {
    what: '30: the head has room, the whole screw has not',
    code: 'room-behind-flange',
    patch: { driven: { behind: 30 } },
    verdict: 'caution',
    value: 30,
    limit: 31.4,
    says: /Put the screws in before the flange goes on its shaft/,
  },
  {
    what: '6: not even the head has room',
    code: 'room-behind-flange',
    patch: { driven: { behind: 6 } },
    verdict: 'fail',
    value: 6,
    limit: 31.4,
    says: /^The heads do not fit there/,
  },
  {
    what: 'nobody measured it',
    code: 'room-behind-flange',
    patch: { driven: { behind: undefined } },
    verdict: 'not assessed',
    says: /^Give driven\.behind/,
    cure: { driven: { behind: 60 } },
  },
  {
    what: 'the screws have no length yet',
    code: 'room-behind-flange',
    patch: { driven: { thickness: undefined } },
    verdict: 'not assessed',
    says: /see screw-length/,
    cure: { driven: { thickness: 9 } },
  },
];

describe('room for heads', () => {
  it.each(roomCases)('$code, $verdict: $what', (row) => prove(row));

  it('has nothing to say about heads on the face once they are sunk', () => {
    const { findings } = judge(noWheel, { adapter: { driving: { seat: 'sunk' } } });
    expect(findings.filter(({ code }) => code === 'heads-clear-flange')).toEqual([]);
    expect(findingOf({ findings }, 'head-below-face').verdict).toBe('pass');
  });

  it('leaves the wheel on the other face alone', () => {
    const { findings } = judge(small(56), { wheel: { face: 'driving' } });
    expect(findings.filter(({ code }) => code === 'heads-clear-wheel')).toEqual([]);
  });
});
