/** Adapter specs with every dimension decided, for the generator's tests. Invented sizes, mm. */
import type { AdapterSpec, HoleGroupSpec, RegisterSpec } from '../../src/parts/adapter-spec.ts';

export const steel = { id: 'S355', name: 'steel', density: 0.00785 };

export const onCircle = (count: number, diameter: number) =>
  Array.from({ length: count }, (_, i) => {
    const angle = (i * 2 * Math.PI) / count;
    return { x: (diameter / 2) * Math.cos(angle), y: (diameter / 2) * Math.sin(angle) };
  });

const limits = (diameter: number) => ({ lower: diameter, upper: diameter, zone: 'test' });

export const spigot = (diameter: number, depth: number): RegisterSpec => ({
  gender: 'male',
  at: 'inner',
  diameter,
  depth,
  limits: limits(diameter),
  chamfer: 0.5,
  undercut: { width: 0.8, depth: 0.3 },
});

export const recess = (diameter: number, depth: number): RegisterSpec => ({
  gender: 'female',
  at: 'inner',
  diameter,
  depth,
  limits: limits(diameter),
  chamfer: 0.5,
  undercut: null,
});

/** Six M8 screws, heads in counterbores in the driven face. */
export const drivingScrews: HoleGroupSpec = {
  id: 'driving-screws',
  side: 'driving',
  label: 'driving flange holes',
  positions: onCircle(6, 84),
  shape: { kind: 'passing', diameter: 9, headFace: 'driven', head: { kind: 'counterbore', diameter: 15, depth: 8.6 } },
};

/** Four M10 threads, blind, from the driven face. */
export const drivenScrews: HoleGroupSpec = {
  id: 'driven-screws',
  side: 'driven',
  label: 'driven flange holes',
  positions: onCircle(4, 108),
  shape: {
    kind: 'tapped',
    thread: 'M10',
    major: 10,
    tapDrill: 8.5,
    face: 'driven',
    threadDepth: 12,
    drillDepth: 14,
    pointAngle: 118,
  },
};

/** A plain adapter: recess below, spigot above, bore right through, two hole groups. */
export const plainSpec: AdapterSpec = {
  id: 'adapter',
  name: 'TEST 1',
  material: steel,
  thickness: 20,
  outside: 130,
  chamfer: 1,
  bore: 30,
  flats: null,
  registers: { driving: recess(62, 4), driven: spigot(56, 2.5) },
  clocking: 45,
  groups: [drivingScrews, drivenScrews],
  wheelSeat: null,
};
