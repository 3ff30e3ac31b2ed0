/** Directions of every link that a dial can tell, against rigid bodies stacked seat on seat in space. mm, degrees */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stackOf } from '../../src/formulas/chain.ts';
import { asBuilt } from '../../src/inspect/as-built.ts';
import { linksTo } from '../../src/rotor/links.ts';
import { tiltLinks } from '../../src/rotor/tilt.ts';
import { type FlangeBody, spun, stacked } from '../formulas/rigid-stack.ts';
import { judge } from '../validate/help.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = between(0, 360);
const body: fc.Arbitrary<FlangeBody> = fc.record({
  off: fc.record({ size: between(0.005, 0.05), angle }),
  face: fc.record({ high: between(0.005, 0.04), angle }),
});

/** What a dial reads at eight places round a turn; `mirrored` as one reads it who looks at the driven flange's own face. */
const readings = (size: number, high: number, mirrored = false) =>
  Array.from({ length: 8 }, (_, i) => {
    const at = mirrored ? 180 - 45 * i : 45 * i;
    return Number((size * Math.cos(((at - high) * Math.PI) / 180)).toFixed(6));
  });
const dials = ({ off, face }: FlangeBody, mirrored = false) => ({
  rim: readings(off.size, off.angle, mirrored),
  face: { readings: readings(face.high, face.angle, mirrored), radius: 50 },
});

describe('all that dials tell, together', () => {
  it('puts the driven shaft where stacked bodies put it, whichever way round they are bolted up', () => {
    const turns = fc.record({ driving: fc.constantFrom(0, 60, 120, 300), driven: fc.constantFrom(0, 90, 180, 270) });
    fc.assert(
      fc.property(body, body, body, turns, (driving, driven, adapter, boltUp) => {
        const { rim: register, face } = dials(adapter);
        const { joint } = judge({
          driving: { runout: dials(driving) },
          driven: { runout: dials(driven, true) },
          adapter: {
            thickness: 20,
            bolt_up: { driving: `${boltUp.driving} deg`, driven: `${boltUp.driven} deg` },
          },
          built: { adapter: { runout: { register, face } } },
        });
        const real = asBuilt(joint);
        if (!real) throw new Error('nothing was built');
        const place = stacked(
          { driving, driven, adapter, thickness: 20 },
          { driving: boltUp.driving, driven: real.adapterSpec.clocking + boltUp.driven },
        );
        // The chain speaks in the adapter's frame, the stack in that of the driving shaft.
        const [x, y, z] = spun(place([0, 0, 0]), -boltUp.driving);
        const [farX, farY, farZ] = spun(place([0, 0, 100]), -boltUp.driving);
        const offset = stackOf(linksTo(real, 'shaft')).known;
        const lean = stackOf(tiltLinks(real)).known;
        // Micrometre readings, and leans of a thousandth, whose squares are left out.
        expect(offset.x).toBeCloseTo(x, 3);
        expect(offset.y).toBeCloseTo(y, 3);
        expect(lean.x).toBeCloseTo((farX - x) / (farZ - z), 5);
        expect(lean.y).toBeCloseTo((farY - y) / (farZ - z), 5);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a dial on the joint as bolted up', () => {
  it('leans the axis away from where the face stands high, and pushes it to where the rim does', () => {
    const made = judge({
      built: {
        joint: { rim: readings(0.02, 70), face: { readings: readings(0.03, 130), radius: 50 } },
      },
    });
    const real = asBuilt(made.joint);
    if (!real) throw new Error('nothing was built');
    const seen = (links: ReturnType<typeof linksTo>) => links.find(({ id }) => id === 'as-bolted-up');
    expect(seen(linksTo(real, 'shaft'))?.angle).toBeCloseTo(70, 2);
    expect(seen(linksTo(real, 'shaft'))?.most).toBeCloseTo(0.02, 6);
    // High at 130: a plane that rises that way has its normal the other way.
    expect(seen(tiltLinks(real))?.angle).toBeCloseTo(310, 2);
    expect(seen(tiltLinks(real))?.most).toBeCloseTo(0.03 / 50, 8);
  });
});
