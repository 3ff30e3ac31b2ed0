/** Shear areas, strip loads and engagement against published figures and against the thread's own profile. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  engagementFor,
  equalStrengthEngagement,
  externalShearArea,
  internalShearArea,
  stripLoads,
  threadShearStrength,
  type WorstThread,
  weakParentEngagement,
  worstThread,
} from '../../src/formulas/stripping.ts';
import { mmPerInch } from '../../src/standards/inch.ts';
import { must } from '../../src/standards/table.ts';
import { threadLimits } from '../../src/standards/thread-limits.ts';
import { allThreads, findThread, type Thread } from '../../src/standards/threads.ts';
import { equalStrengthTruths, shearAreaTruths } from '../truth/standards-threads.truth.ts';
import { handEngagements, publishedEngagement, weakParent } from '../truth/stripping.truth.ts';

const away = (ours: number, printed: number) => Math.abs(ours / printed - 1);
const worst = (thread: Thread) => worstThread(must(threadLimits(thread)), thread.pitch);
const M10 = must(findThread('M10'));
/** Threads whose tolerances are tabled. */
const tabled = allThreads().filter((thread) => threadLimits(thread).ok);

describe('stripping as published', () => {
  it.each(shearAreaTruths)('$thread shear areas ($source)', ({ thread: name, Le, internal, external }) => {
    const limits = worst(must(findThread(name)));
    // Printed to five figures.
    expect(away(internalShearArea(limits, Le), internal)).toBeLessThan(1e-4);
    expect(away(externalShearArea(limits, Le), external)).toBeLessThan(1e-4);
  });

  it.each(equalStrengthTruths)('$thread engagement for equal strength ($source)', ({ thread: name, Le }) => {
    const thread = must(findThread(name));
    expect(away(equalStrengthEngagement(thread.stressArea, worst(thread)) / mmPerInch, Le)).toBeLessThan(0.03);
  });

  it('needs 21.6 mm in the published example of cast aluminium', () => {
    const { thread, load, parentShear, length } = publishedEngagement;
    const answer = engagementFor(load, thread, { parent: parentShear, screw: 720 });
    expect(answer.weaker).toBe('parent');
    expect(away(answer.length, length)).toBeLessThan(0.005);
  });

  it.each(handEngagements)('M10 in 290 MPa: $load N need $length mm', ({ load, length }) => {
    const shear = { parent: threadShearStrength(290), screw: threadShearStrength(1040) };
    expect(away(engagementFor(load, worst(M10), shear).length, length)).toBeLessThan(0.002);
  });

  it('M10 10.9 in a weak parent', () => {
    const { screwTensile, parentTensile, J, length } = weakParent;
    const answer = weakParentEngagement(58, worst(M10), screwTensile, parentTensile);
    expect(away(answer.J, J)).toBeLessThan(0.002);
    expect(away(answer.length, length)).toBeLessThan(0.002);
    // A parent as strong as the screw asks for no more than equal strength.
    const strong = weakParentEngagement(58, worst(M10), 1040, 1040);
    expect(strong.J).toBeLessThan(1);
    expect(strong.length).toBe(equalStrengthEngagement(58, worst(M10)));
  });
});

/** Share of a pitch in which a 60 degree thread of pitch diameter `d2` has metal at diameter `at`, by walking along the profile. */
function metalShare(d2: number, at: number, pitch: number, side: 'screw' | 'hole'): number {
  const steps = 20_000;
  let metal = 0;
  for (let step = 0; step < steps; step++) {
    // Distance from the middle of the screw's tooth, along the axis.
    const z = Math.abs(((step + 0.5) / steps) * pitch - pitch / 2);
    // The flank at z: at a quarter of the pitch it crosses the pitch diameter; it leans by 30 degrees.
    const flank = d2 + 2 * ((pitch / 4 - z) / Math.tan(Math.PI / 6));
    if (side === 'screw' ? at < flank : at > flank) metal++;
  }
  return metal / steps;
}

describe('stripping by a second method', () => {
  it('cuts as much metal as the profile has at the shear cylinder, for every thread', () => {
    for (const thread of tabled) {
      const limits = worst(thread);
      const { pitch, dMin, d2Min, D1Max, D2Max } = limits;
      const hole = Math.PI * dMin * metalShare(D2Max, dMin, pitch, 'hole');
      const screw = Math.PI * D1Max * metalShare(d2Min, D1Max, pitch, 'screw');
      expect(away(internalShearArea(limits, 1), hole)).toBeLessThan(0.001);
      expect(away(externalShearArea(limits, 1), screw)).toBeLessThan(0.001);
    }
    expect(tabled.length).toBeGreaterThan(20);
  });

  it('finds half the cylinder where both cut at the pitch diameter', () => {
    const flush: WorstThread = { pitch: 1.5, dMin: 9, d2Min: 9, D1Max: 9, D2Max: 9 };
    expect(internalShearArea(flush, 10)).toBeCloseTo((Math.PI * 9 * 10) / 2, 9);
    expect(externalShearArea(flush, 10)).toBeCloseTo((Math.PI * 9 * 10) / 2, 9);
  });

  it('strips at exactly the load that the engagement was made for', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tabled),
        fc.double({ min: 100, max: 500_000, noNaN: true }),
        fc.double({ min: 80, max: 700, noNaN: true }),
        fc.double({ min: 80, max: 700, noNaN: true }),
        (thread, load, parent, screw) => {
          const { length, weaker } = engagementFor(load, worst(thread), { parent, screw });
          const loads = stripLoads(worst(thread), length, { parent, screw });
          expect(away(loads.least, load)).toBeLessThan(1e-9);
          expect(loads.weaker).toBe(weaker);
          expect(loads[weaker]).toBe(loads.least);
        },
      ),
    );
  });

  it('breaks the screw first at equal-strength engagement when its shear strength is half its tensile strength', () => {
    for (const thread of tabled) {
      const length = equalStrengthEngagement(thread.stressArea, worst(thread));
      const { screw } = stripLoads(worst(thread), length, { parent: 1e9, screw: 0.5 * 800 });
      expect(away(screw, 800 * thread.stressArea)).toBeLessThan(1e-9);
      expect(length).toBeGreaterThan(0.4 * thread.d);
      expect(length).toBeLessThan(thread.d);
    }
  });
});
