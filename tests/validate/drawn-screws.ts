/** A joint that is no more than one group of screws and what it holds: drawn by hand, every number chosen for sums on paper. mm, N, MPa */
import type { Joint, ScrewGroup } from '../../src/job/joint.ts';
import { bent, type Patch } from './help.ts';

/** So many screws on a radius. */
export const round = (count: number, radius: number) =>
  Array.from({ length: count }, (_, i) => {
    const at = (2 * Math.PI * i) / count;
    return { x: radius * Math.cos(at), y: radius * Math.sin(at) };
  });

/** M8 10.9, its head of 13 on a hole of 9, four on 100. */
const group: Patch = {
  id: 'screws',
  side: 'driving',
  fastening: 'into_flange',
  count: 4,
  thread: 'M8',
  major: 8,
  pitch: 1.25,
  class: '10.9',
  head: { kind: 'socket', diameter: 13, height: 8, standard: 'ISO 4762' },
  washer: null,
  nut: null,
  positions: round(4, 50),
  headZ: 20,
  points: -1,
  seat: 'surface',
  length: 60,
  engagement: { has: 10, needs: 8 },
  tightening: {
    preload: 24,
    leastPreload: 15,
    friction: 0.12,
    note: 'no torque',
    seats: [{ under: 'head', part: 'adapter', face: 13, outer: 13, inner: 9, limit: null }],
  },
};
const flange: Patch = {
  outside: { value: 130, doubt: 0 },
  bore: null,
  register: null,
  holes: { positions: [], unused: [] },
  material: 'S355',
};
/** An adapter of 20 with an outside of 140 and a bore of 60, driving flange 14 thick, driven 9, a wheel of 3. */
const bare: Patch = {
  adapterSpec: {
    thickness: 20,
    outside: 140,
    chamfer: 0,
    bore: 60,
    registers: { driving: null, driven: null },
    wheelSeat: null,
    groups: [{ id: 'screws', shape: { kind: 'passing', diameter: 9, headFace: 'driven', head: { kind: 'surface' } } }],
  },
  adapterMaterial: { name: 'metal A', youngsModulus: 70_000, thermalExpansion: 23e-6, yieldStrength: 300 },
  driving: { ...flange, side: 'driving', thickness: { value: 14, doubt: 0 } },
  driven: { ...flange, side: 'driven', thickness: { value: 9, doubt: 0 } },
  wheelSpec: { thickness: 3, bore: 104, root: 160 },
  wheelMaterial: { name: 'metal W', youngsModulus: 200_000, thermalExpansion: 12e-6, yieldStrength: 200 },
  job: { adapter: { web: 3 } },
};
/** That joint with its one group of screws changed, and anything else of it. */
export const drawn = (patch: Patch = {}, of: Patch = {}) => {
  const screws = bent(group as unknown as Joint, patch) as unknown as ScrewGroup;
  return { joint: bent(bare as unknown as Joint, { screws: [screws] }, of), screws };
};
/** What sinks the heads, laid over the joint. */
export const shape = (head: Patch, diameter = 9) => ({
  adapterSpec: { groups: [{ id: 'screws', shape: { kind: 'passing', diameter, headFace: 'driven', head } }] },
});
