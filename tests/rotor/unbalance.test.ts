/** Pulls to one side, against brute force and against sums by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stackOf } from '../../src/formulas/chain.ts';
import { chanceFrom } from '../../src/formulas/chance.ts';
import { linksTo } from '../../src/rotor/links.ts';
import { screwMasses } from '../../src/rotor/screw-body.ts';
import { tiltLinks } from '../../src/rotor/tilt.ts';
import { bodiesOf, mostOneSided, unbalanceLinks } from '../../src/rotor/unbalance.ts';
import { judge } from '../validate/help.ts';

describe('heavy screws on one side', () => {
  it('is the greatest sum over every way of making each screw heavy or light', () => {
    const point = fc.record({
      x: fc.double({ min: -60, max: 60, noNaN: true }),
      y: fc.double({ min: -60, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 8 }), (points) => {
        let most = 0;
        for (let bits = 0; bits < 2 ** points.length; bits++) {
          let [x, y] = [0, 0];
          points.forEach((p, i) => {
            const sign = (bits >> i) & 1 ? 1 : -1;
            x += sign * p.x;
            y += sign * p.y;
          });
          most = Math.max(most, Math.hypot(x, y));
        }
        expect(mostOneSided(points)).toBeCloseTo(most, 6);
      }),
    );
  });

  it('four screws square on a circle of 100: 4 x 50 x cos 45 degrees', () => {
    const square = [0, 90, 180, 270].map((a) => ({
      x: 50 * Math.cos((a * Math.PI) / 180),
      y: 50 * Math.sin((a * Math.PI) / 180),
    }));
    expect(mostOneSided(square)).toBeCloseTo(200 * Math.SQRT1_2, 6);
  });
});

describe('the chain of unbalances', () => {
  const { joint } = judge();

  it('pushes every rider by every link before it', () => {
    const links = unbalanceLinks(joint);
    const bodies = bodiesOf(joint).reduce((sum, { mass }) => sum + mass.mass, 0);
    // 0.010 of run-out moves adapter, screws, wheel and half of 9 kg; the driven flange's only the half shaft.
    const of = (id: string) => links.find((link) => link.id === id)?.most;
    expect(of('driving-run-out')).toBeCloseTo(0.01 * (bodies + 4500), 6);
    expect(of('driven-run-out')).toBeCloseTo(0.01 * 4500, 6);
    // The wheel sits on the driven face, which is turned in the second set-up.
    const wheel = joint.wheelMass?.mass ?? Number.NaN;
    expect(of('turn-over')).toBeCloseTo(0.01 * (4500 + wheel), 6);
  });

  it('adds riders link by link: the same as each body at its own worst offset', () => {
    const riding = unbalanceLinks(joint).filter(({ id }) => !id.startsWith('shape') && id !== 'screw-scatter');
    const byBody =
      bodiesOf(joint).reduce((sum, { on, mass }) => sum + mass.mass * stackOf(linksTo(joint, on)).worst, 0) +
      4500 * stackOf(linksTo(joint, 'shaft')).worst;
    expect(stackOf(riding).worst).toBeCloseTo(byBody, 6);
  });

  it('lets screws differ by 1 per cent', () => {
    const byHand = joint.screws.reduce(
      (sum, group) => sum + 0.01 * screwMasses(group).screw * mostOneSided(group.positions),
      0,
    );
    const link = unbalanceLinks(joint).find(({ id }) => id === 'screw-scatter');
    expect(link?.most).toBeCloseTo(byHand, 9);
    // Root mean square of screws thrown one by one, to five standard errors of 20,000 throws (2 % of it, at most).
    const chance = chanceFrom(5);
    let squares = 0;
    for (let run = 0; run < 20_000; run++) {
      let [x, y] = [0, 0];
      for (const group of joint.screws) {
        const { screw } = screwMasses(group);
        for (const p of group.positions) {
          const off = 0.01 * screw * (2 * chance() - 1);
          x += off * p.x;
          y += off * p.y;
        }
      }
      squares += x * x + y * y;
    }
    expect((link?.usual ?? 0) / Math.sqrt(squares / 20_000)).toBeCloseTo(1, 1.7);
  });
});

describe('directions', () => {
  const eight = (size: number, high: number) => ({
    readings: Array.from({ length: 8 }, (_, i) =>
      Number((size * Math.cos(((45 * i - high) * Math.PI) / 180)).toFixed(4)),
    ),
  });
  const patch = (drivenHigh: number) => ({
    driving: { runout: { rim: eight(0.02, 0) } },
    driven: { runout: { rim: eight(0.02, drivenHigh) } },
    adapter: { clocking: 15 },
  });

  it('cancels two rims whose high spots come to lie together, but for the doubt of the dial', () => {
    // Looking at its own face the driven flange is mirrored: 180 - a; turned by the clocking of 15 it comes to 0 for a = 195.
    const links = linksTo(judge(patch(195)).joint, 'shaft').filter(({ id }) => id.endsWith('run-out'));
    expect(Math.hypot(stackOf(links).known.x, stackOf(links).known.y)).toBeLessThan(2e-4);
    const apart = linksTo(judge(patch(15)).joint, 'shaft').filter(({ id }) => id.endsWith('run-out'));
    expect(Math.hypot(stackOf(apart).known.x, stackOf(apart).known.y)).toBeCloseTo(0.04, 3);
  });

  it('cancels two faces whose high spots come to lie opposite', () => {
    const face = (high: number) => ({ face: { ...eight(0.02, high), radius: 50 } });
    const tilted = (drivenHigh: number) =>
      tiltLinks(
        judge({
          driving: { runout: face(0) },
          driven: { runout: face(drivenHigh) },
          adapter: { clocking: 15 },
        }).joint,
      ).filter(({ id }) => id.endsWith('face'));
    // Own angle 15 stands at 180 - 15 + 15 = 180 in the adapter's frame: opposite.
    expect(Math.hypot(stackOf(tilted(15)).known.x, stackOf(tilted(15)).known.y)).toBeLessThan(1e-5);
    expect(Math.hypot(stackOf(tilted(195)).known.x, stackOf(tilted(195)).known.y)).toBeCloseTo(0.04 / 50, 5);
  });
});
