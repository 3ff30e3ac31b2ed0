/** Sections of a turned part against counting points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleCut, cylinderArea, sectionsBetween } from '../../src/geometry/turned-sections.ts';
import type { TurnedPart } from '../../src/model/part.ts';
import '../seed.ts';

const disc = (drillings: TurnedPart['drillings'], more: Partial<TurnedPart> = {}): TurnedPart => ({
  kind: 'turned',
  id: 'disc',
  name: 'disc',
  material: { id: 'steel', name: 'steel', density: 0.00785 },
  outer: [
    { z: 0, r: 60 },
    { z: 20, r: 60 },
  ],
  drillings,
  features: [],
  engravings: [],
  ...more,
});

const through = (id: string, x: number, y: number, r: number) => ({
  id,
  feature: id,
  x,
  y,
  profile: [
    { z: 0, r },
    { z: 20, r },
  ],
});

describe('sections of a turned part', () => {
  it('are cut where anything changes, and keep the weaker end of a cone', () => {
    const stepped = {
      id: 'hole',
      feature: 'hole',
      x: 40,
      y: 0,
      profile: [
        { z: 0, r: 4 },
        { z: 12, r: 4 },
        { z: 12, r: 7 },
        { z: 20, r: 9 },
      ],
    };
    const part = disc([through('bore', 0, 0, 13), stepped], {
      outer: [
        { z: 0, r: 60 },
        { z: 19, r: 60 },
        { z: 20, r: 59 },
      ],
    });
    expect(sectionsBetween(part, 0, 20)).toEqual([
      {
        z0: 0,
        z1: 12,
        outside: 60,
        holes: [
          { offset: 0, radius: 13 },
          { offset: 40, radius: 4 },
        ],
      },
      {
        z0: 12,
        z1: 19,
        outside: 60,
        holes: [
          { offset: 0, radius: 13 },
          { offset: 40, radius: 8.75 },
        ],
      },
      {
        z0: 19,
        z1: 20,
        outside: 59,
        holes: [
          { offset: 0, radius: 13 },
          { offset: 40, radius: 9 },
        ],
      },
    ]);
    expect(sectionsBetween(part, 5, 10)).toHaveLength(1);
    expect(sectionsBetween(part, 30, 40)).toEqual([]);
  });

  it('count flats as a smaller turning', () => {
    const part = disc([], { flats: { feature: 'flats', across: 100, angle: 0 } });
    expect(sectionsBetween(part, 0, 20)).toEqual([{ z0: 0, z1: 20, outside: 50, holes: [] }]);
  });
});

describe('a cylinder through a part', () => {
  it('cuts 2 pi r t where nothing is missing, and nothing outside', () => {
    const sections = sectionsBetween(disc([through('bore', 0, 0, 13)]), 0, 20);
    expect(cylinderArea(sections, 40)).toBeCloseTo(2 * Math.PI * 40 * 20, 6);
    expect(cylinderArea(sections, 10)).toBe(0);
    expect(cylinderArea(sections, 61)).toBe(0);
  });

  it('loses the angle that counting points on the circle finds', () => {
    const length = (max: number) => fc.double({ min: 0.5, max, noNaN: true });
    fc.assert(
      fc.property(length(60), length(60), length(30), (radius, offset, hole) => {
        const points = 20_000;
        let inside = 0;
        for (let i = 0; i < points; i++) {
          const angle = (2 * Math.PI * (i + 0.5)) / points;
          if (Math.hypot(radius * Math.cos(angle) - offset, radius * Math.sin(angle)) < hole) inside++;
        }
        expect(Math.abs(angleCut(radius, { offset, radius: hole }) - (2 * Math.PI * inside) / points)).toBeLessThan(
          0.002,
        );
      }),
      { numRuns: 60 },
    );
  });
});
