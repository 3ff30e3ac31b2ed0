/** Random brackets in whole jobs: a bracket is drawn and can be made, or its errors say at which key. Nothing else ever happens. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import '../seed.ts';
import { judgeJob } from '../../src/core.ts';
import { boxGap } from '../../src/geometry/box-gap.ts';
import { contourFaults } from '../../src/geometry/contour.ts';
import { meshFolded } from '../../src/solids/folded-mesh.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { patched, patterns, soundJob } from '../validate/help.ts';

const length = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
const orAuto = <T>(some: fc.Arbitrary<T>) => fc.oneof(fc.constant('auto' as const), some);

const anyKeys = fc.record({
  form: fc.constantFrom('flat', 'angle', 'offset', 'channel'),
  towards: fc.constantFrom('driving', 'driven'),
  bolts: fc.record({
    size: fc.constantFrom('M5', 'M6', 'M8', '1/4-20 UNC'),
    spacing: length(12, 90),
    from_axis: length(40, 180),
    along: length(-5, 90),
  }),
  sensor: fc.record({
    bore: length(4, 30),
    reach: length(8, 60),
    ear: fc.option(
      fc.record({
        distance: length(4, 35),
        size: fc.constantFrom('M5', 'M6', '1/4-20 UNC'),
        towards: fc.constantFrom('across', 'end', 'foot'),
      }),
      { nil: undefined },
    ),
  }),
  thickness: length(0.8, 6),
  material: fc.constantFrom('DC01', 'S355', '304', '6061-T6', '7075-T6', 'PLA'),
  radius: orAuto(length(0, 12)),
  angle: orAuto(length(15, 90)),
  slot: orAuto(length(0, 20)),
  width: orAuto(length(20, 90)),
  edge: orAuto(length(1, 12)),
  packing: length(0, 6),
});

it('every bracket is sound or refused with a key', () => {
  let drawn = 0;
  fc.assert(
    fc.property(anyKeys, fc.constantFrom('radial', 'axial'), (keys, direction) => {
      const job = patched(soundJob, { sensor: { gap: 1, direction }, bracket: JSON.parse(JSON.stringify(keys)) });
      const judged = judgeJob(JSON.stringify(job), 'any.job.yaml', patterns, { search: false });
      if (!judged.ok) {
        for (const { path, message } of judged.errors) {
          expect(path).toMatch(/^bracket/);
          expect(message).toMatch(/^[A-Z].*\.$/s);
          expect(message).not.toMatch(/NaN|undefined|Infinity/);
        }
        return;
      }
      drawn += 1;
      const { bracket } = judged.joint;
      if (!bracket) throw new Error('no bracket');
      expect(contourFaults(bracket.part.outside)).toEqual([]);
      // The seat of the ear is where gap and reach put it: the sensor's axis meets the upper face there.
      const seat = 1 + keys.sensor.reach;
      const near = { pMin: -1e-6, pMax: 1e-6, qMin: seat - 1e-6, qMax: seat + 1e-6 };
      expect(boxGap(bracket.plane.profile, near)).toBeLessThan(1e-6);
      for (const finding of judged.findings.filter(({ code }) => code.startsWith('bracket-'))) {
        expect(JSON.stringify(finding)).not.toMatch(/NaN|undefined|Infinity/);
        if (finding.verdict !== 'pass') expect(finding.remedy).toMatch(/\.$/);
      }
      const mesh = meshFolded(bracket.part);
      expect(checkMesh(mesh)).toMatchObject({ badEdges: 0, bodies: 1, genus: bracket.part.holes.length });
    }),
    { numRuns: 120 },
  );
  expect(drawn).toBeGreaterThan(10);
});
