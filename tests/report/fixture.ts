/** A small joint made by hand: invented demo data, an adapter between two flanges that were never meant to meet. */
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';

export const ring = (count: number, circle: number, from = 0): { x: number; y: number }[] =>
  Array.from({ length: count }, (_, i) => {
    const a = ((from + (360 * i) / count) * Math.PI) / 180;
    return { x: (circle / 2) * Math.cos(a), y: (circle / 2) * Math.sin(a) };
  });

export const adapterSpec: AdapterSpec = {
  id: 'adapter',
  name: 'demo adapter',
  material: { id: 'steel', name: 'steel', density: 0.00785 },
  thickness: 26,
  outside: 128,
  chamfer: 1,
  bore: 30,
  flats: null,
  registers: {
    driving: { gender: 'male', at: 'inner', diameter: 60, depth: 4, limits: { lower: 59.971, upper: 59.99, zone: 'g6' }, chamfer: 1, undercut: { width: 1.5, depth: 0.5 } },
    driven: { gender: 'female', at: 'inner', diameter: 57, depth: 4, limits: { lower: 57, upper: 57.03, zone: 'H7' }, chamfer: 0.5, undercut: null },
  },
  clocking: 30,
  groups: [
    {
      id: 'driving-screws',
      side: 'driving',
      label: 'screws into the driving flange',
      positions: ring(6, 94),
      shape: { kind: 'passing', diameter: 11, headFace: 'driven', head: { kind: 'counterbore', diameter: 18, depth: 11 } },
    },
    {
      id: 'driven-screws',
      side: 'driven',
      label: 'driven flange screws',
      positions: ring(6, 101.5),
      shape: { kind: 'tapped', thread: 'M10x1.5', major: 10, tapDrill: 8.5, face: 'driven', threadDepth: 16, drillDepth: 20, pointAngle: 118 },
    },
  ],
  wheelSeat: null,
};

export const adapter = buildAdapter(adapterSpec);
