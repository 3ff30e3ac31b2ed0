/** A joint that is no more than one register and what stands beside it: drawn by hand, every number chosen for sums on paper. mm */
import type { Joint } from '../../src/job/joint.ts';
import { bent, type Patch } from './help.ts';

/** A spigot of 60 in a recess of 60, driving side; nothing on the driven one. */
const paired: Patch = {
  adapterSpec: {
    thickness: 20,
    registers: {
      driving: {
        gender: 'male',
        at: 'inner',
        diameter: 60,
        depth: 3,
        chamfer: 0.5,
        undercut: null,
        limits: { lower: 59.98, upper: 60, zone: 'h6' },
      },
      driven: null,
    },
  },
  driving: {
    register: {
      gender: 'female',
      diameter: { value: 60.01, doubt: 0.002 },
      limits: { lower: 60, upper: 60.02 },
      zone: 'H7',
      depth: { value: 4, doubt: 0.1 },
      corner: 0.5,
    },
    material: 'S355',
    thickness: { value: 14, doubt: 0.2 },
    holes: { positions: [] },
  },
  driven: { register: null, material: 'S355', thickness: null, holes: { positions: [] } },
  adapterMaterial: { yieldStrength: 300, memory: false },
  fits: null,
  job: { adapter: { web: 3, driving: { register: 'auto', fit: undefined }, driven: {}, setup: 'one chucking' } },
};

/** That joint with some of it changed. */
export const joint = (...patches: Patch[]): Joint => bent(paired as unknown as Joint, ...patches);
