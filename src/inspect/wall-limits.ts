/**
 * Limits of outside and bore that the holes beside them leave: a general tolerance must not eat the wall that a check asks for. mm.
 * Source: geometry; the least wall is the job's (adapter.web, common practice).
 */
import { leastWebs, type WebPair } from '../geometry/web-pairs.ts';
import type { Joint } from '../job/joint.ts';
import type { Drilling } from '../model/part.ts';
import { buildAdapter } from '../parts/adapter.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import { hypot } from '../units/hypot.ts';

interface Limits {
  readonly lower: number;
  readonly upper: number;
}

/** How closely the last size that still leaves the wall is found: 0.5 mm halved this often is under a hundredth of a micrometre. */
const halvings = 16;
/** A wall that lacks less than this is whole: binary noise. */
const noise = 1e-9;

const isAxial = ({ x, y }: Drilling) => hypot(x, y) < 1e-6;

/** The walls that hang on the outside, and those that hang on the bore. */
const beside: Readonly<Record<'outside' | 'bore', (a: Drilling, b: WebPair['b']) => 'wall' | null>> = {
  outside: (_, b) => (b === 'outside' ? 'wall' : null),
  bore: (a, b) => (typeof b !== 'string' && isAxial(a) !== isAxial(b) ? 'wall' : null),
};

/** One part is asked for by several papers, and worked out once. */
const known = new WeakMap<AdapterSpec, Map<string, Limits>>();

/**
 * Limits within which a part keeps its least wall: the outside no smaller, the bore no larger than that. Where the wall is too thin as
 * drawn, the limits stay: the part fails anyway.
 * @param size which one, in the spec of a built adapter
 * @param limits of the general tolerance, absolute
 */
export function limitsByWalls(joint: Joint, size: 'outside' | 'bore', limits: Limits): Limits {
  const spec = joint.adapterSpec;
  const { web } = joint.job.adapter;
  const key = `${size} ${limits.lower} ${limits.upper} ${web}`;
  const before = known.get(spec)?.get(key);
  if (before) return before;
  const found = searched(spec, web, size, limits);
  known.set(spec, (known.get(spec) ?? new Map<string, Limits>()).set(key, found));
  return found;
}

function searched(spec: AdapterSpec, web: number, size: 'outside' | 'bore', limits: Limits): Limits {
  const drawn = spec[size];
  if (drawn === null) return limits;
  const keeps = (at: number) => {
    const wall = leastWebs(buildAdapter({ ...spec, [size]: at }), beside[size]).get('wall')?.gap;
    return wall === undefined || wall >= web - noise;
  };
  let out = size === 'outside' ? limits.lower : limits.upper;
  if (keeps(out) || !keeps(drawn)) return limits;
  let within = drawn;
  for (let i = 0; i < halvings; i++) {
    const middle = (within + out) / 2;
    if (keeps(middle)) within = middle;
    else out = middle;
  }
  return size === 'outside' ? { ...limits, lower: within } : { ...limits, upper: within };
}
