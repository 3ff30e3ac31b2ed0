/** Screws, nuts and washers by weight, against a published table. */
import { describe, expect, it } from 'vitest';
import type { ScrewGroup } from '../../src/job/joint.ts';
import { screwBodies, screwMasses } from '../../src/rotor/screw-body.ts';
import { nutFor } from '../../src/standards/hex-nuts.ts';
import { type HeadKind, screwHead } from '../../src/standards/screw-heads.ts';
import { must } from '../../src/standards/table.ts';
import { findThread } from '../../src/standards/threads.ts';

function group(thread: string, kind: HeadKind, length: number, more: Partial<ScrewGroup> = {}): ScrewGroup {
  const { d, pitch } = must(findThread(thread));
  const head = must(screwHead(kind, thread));
  // The tables list the plain head; the knurled one is up to 0.3 wider.
  const plain: Record<string, number> = { M6: 10, M8: 13, M10: 16, M12: 18 };
  return {
    id: 'screws',
    side: 'driven',
    label: 'screws',
    fastening: 'into_adapter',
    count: 1,
    thread,
    major: d,
    pitch,
    class: '10.9',
    head: { kind, diameter: kind === 'socket' ? (plain[thread] ?? head.dk) : head.dk, height: head.k, standard: '' },
    washer: null,
    nut: null,
    positions: [{ x: 40, y: 0 }],
    headZ: 30,
    points: -1,
    seat: 'surface',
    length,
    grip: 20,
    engagement: { has: 10, needs: 10, rule: '', memory: false },
    tightening: { torque: null, preload: null, leastPreload: null, friction: 0.12, note: '' },
    lengths: { least: 20, most: null, mostWhy: '' },
    ...more,
  };
}

describe('weights', () => {
  // Weight table of DIN 912 screws printed by a fastener house, kg per 1000.
  it.each([
    ['M6', 20, 6.5],
    ['M6', 30, 8.3],
    ['M8', 20, 13.4],
    ['M8', 25, 15],
    ['M8', 30, 16.9],
    ['M10', 25, 25.4],
    ['M10', 30, 27.9],
    ['M12', 30, 39.3],
    ['M12', 40, 46.5],
  ] as const)('socket head %s x %d weighs %d g, to 7 per cent', (thread, length, grams) => {
    expect(Math.abs(screwMasses(group(thread, 'socket', length)).screw / grams - 1)).toBeLessThan(0.07);
  });

  it('a hexagon nut M10 of 16 across flats: prism less thread, by hand', () => {
    const nut = must(nutFor('M10'));
    const made = group('M10', 'hex', 40, { nut: { height: nut.height, acrossFlats: nut.acrossFlats } });
    const pitchDiameter = 9.026;
    const byHand = 0.00785 * 8.4 * ((Math.sqrt(3) / 2) * 16 ** 2 - (Math.PI / 4) * pitchDiameter ** 2);
    expect(screwMasses(made).nut).toBeCloseTo(byHand, 2);
  });
});

describe('places', () => {
  it('stands the head above its seat and the shank below it, where the screw points down', () => {
    const bodies = screwBodies(group('M10', 'socket', 30));
    const [head, shank] = bodies;
    expect(head?.mass.centre).toEqual([40, 0, 35]);
    expect(shank?.mass.centre[2]).toBeCloseTo(15, 9);
    const up = screwBodies(group('M10', 'socket', 30, { points: 1, headZ: 0 }));
    expect(up[0]?.mass.centre[2]).toBeCloseTo(-5, 9);
    expect(up[1]?.mass.centre[2]).toBeCloseTo(15, 9);
  });

  it('sinks a flat head to its top plane', () => {
    const bodies = screwBodies(group('M8', 'flat', 25));
    const lowest = Math.min(...bodies.map(({ mass }) => mass.centre[2]));
    const highest = Math.max(...bodies.map(({ mass }) => mass.centre[2]));
    expect(highest).toBeLessThan(30);
    expect(lowest).toBeGreaterThan(5);
  });
});
