/** How thick the adapter has to be, and which demand decides. */
import type { ThicknessStudy } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { AdapterSpec, RegisterSpec, WheelSeatSpec } from '../parts/adapter-spec.ts';
import { blindTap } from '../standards/tap-depth.ts';
import type { Thread } from '../standards/threads.ts';
import { type Fixing, pocketDepth, pocketRadius } from './fixing.ts';
import { type LengthSpan, lengthSpan, standardLengthIn, type Surroundings } from './screw-length.ts';

/** Least metal under a sunk head, as a share of the screw diameter. Common practice, no source. */
export const webUnderHeadShare = 0.8;
/** Thicknesses are rounded up to this step, mm: stock is faced to half millimetres. */
const step = 0.5;
/** How far above the least thickness a standard screw length is looked for, mm. */
const searchRoom = 8;

/** Least web under the head of this screw, mm: never under the job's own least web. */
export function leastWebUnderHead(d: number, web: number): number {
  return Math.max(web, webUnderHeadShare * d);
}

/** Full thread and drill depth of a blind tapped hole in the adapter, mm; through when the thickness leaves no floor. */
export interface TappedDepth {
  readonly threadDepth: number;
  readonly drillDepth: number | null;
}

/** Standard screws come in steps of 5 mm, so a blind thread is cut this much deeper than it must engage, mm. */
const lengthStep = 5;

/**
 * Depths of the adapter's own thread: blind where a floor of at least the least web is left, else right through.
 * @param engagement full threads that the screw needs, mm
 * @param room thickness available under the mouth, mm
 * @param asked full thread depth asked for, mm
 */
export function tappedDepth(thread: Thread, engagement: number, room: number, web: number, asked: number | null = null): TappedDepth {
  const threadDepth = asked ?? engagement + lengthStep + thread.pitch;
  const blind = blindTap(thread, threadDepth);
  return blind.ok && blind.value.tip + web <= room
    ? { threadDepth, drillDepth: blind.value.drill }
    : { threadDepth: room, drillDepth: null };
}

/** What the thickness is worked out from. */
export interface ThicknessInput {
  readonly wanted: 'auto' | number;
  readonly web: number;
  readonly chamfer: number;
  readonly fixings: readonly Fixing[];
  readonly flanges: { readonly driving: ResolvedFlange; readonly driven: ResolvedFlange };
  readonly registers: AdapterSpec['registers'];
  readonly wheelSeat: WheelSeatSpec | null;
  /** Engagement that the wheel's screws need below the step of the seat, mm; 0 without a wheel. */
  readonly wheelEngagement: number;
}

interface Demand {
  readonly what: string;
  readonly side: string;
  readonly least: number;
}

const recess = (register: RegisterSpec | null) => (register?.gender === 'female' && register.at === 'inner' ? register.depth : 0);

function demandsOf(input: ThicknessInput): Demand[] {
  const { web, registers, wheelSeat } = input;
  const demands: Demand[] = [];
  for (const fixing of input.fixings) {
    const { side, thread } = fixing;
    if (fixing.threadIn === 'adapter') {
      const mouth = (thread.d - thread.tapDrill) / 2;
      demands.push({ what: `thread engagement of ${thread.designation}`, side, least: fixing.engagement.length + mouth });
    }
    if (fixing.seat === 'sunk') {
      const under = leastWebUnderHead(thread.d, web);
      demands.push({ what: `${thread.designation} head and the web under it`, side, least: pocketDepth(fixing) + under });
    }
    if (fixing.threadIn !== 'adapter' && fixing.seat !== 'sunk' && !fixing.shared) {
      demands.push({ what: `web under the ${thread.designation} heads`, side, least: leastWebUnderHead(thread.d, web) });
    }
  }
  const deepest = { driving: recess(registers.driving), driven: recess(registers.driven) };
  if (deepest.driving + deepest.driven > 0) {
    demands.push({
      what: deepest.driving && deepest.driven ? 'both register recesses and the web between them' : 'register recess and the web behind it',
      side: deepest.driving >= deepest.driven ? 'driving' : 'driven',
      least: deepest.driving + deepest.driven + web,
    });
  }
  for (const fixing of input.fixings) {
    // A pocket that reaches in plan over the recess of the face it screws to needs metal between the two floors.
    const own = registers[fixing.side];
    const facing = recess(own);
    if (fixing.seat !== 'sunk' || !own || facing === 0) continue;
    const holes = input.flanges[fixing.side].holes.positions;
    const innermost = Math.min(...holes.map(({ x, y }) => Math.hypot(x, y))) - pocketRadius(fixing);
    if (innermost < own.diameter / 2 + own.chamfer) {
      demands.push({ what: `${fixing.thread.designation} head over the ${fixing.side} recess`, side: fixing.side, least: facing + pocketDepth(fixing) + web });
    }
  }
  if (wheelSeat) {
    demands.push({ what: 'wheel seat and the thread of its screws', side: 'wheel', least: wheelSeat.height + Math.max(input.wheelEngagement, web) });
  }
  demands.push({ what: 'rim chamfers and a land to hold', side: 'body', least: 2 * input.chamfer + web });
  return demands.sort((a, b) => b.least - a.least);
}

/** What lies around a fixing at a thickness. */
export function surroundings(fixing: Fixing, input: ThicknessInput, thickness: number): Surroundings {
  const flange = input.flanges[fixing.side];
  const other = input.flanges[fixing.side === 'driving' ? 'driven' : 'driving'];
  const { thread, engagement } = fixing;
  const tapped =
    fixing.threadIn === 'adapter' ? tappedDepth(thread, engagement.length, thickness, input.web) : null;
  return {
    thickness,
    flangeThickness: flange.thickness?.value ?? null,
    otherFlangeThickness: other.thickness?.value ?? null,
    flangeThreadDepth: flange.holes.depth,
    flangeThreadThrough: flange.holes.through,
    behindFlange: flange.behind,
    adapterThread: tapped && { depth: tapped.threadDepth, through: tapped.drillDepth === null },
  };
}

/** Does every fixing whose lengths can be known take a standard screw at this thickness? */
function screwsFit(input: ThicknessInput, thickness: number): boolean {
  return input.fixings.every((fixing) => {
    if (fixing.length !== null) return true;
    const span: LengthSpan | null = lengthSpan(fixing, surroundings(fixing, input, thickness));
    return span === null || standardLengthIn(fixing.head.kind, fixing.thread.size, span) !== null;
  });
}

/**
 * The thickness: the one asked for, or the least that meets every demand, rounded up to half a millimetre and, where that helps,
 * a little further so that a standard screw length fits.
 */
export function studyThickness(input: ThicknessInput): ThicknessStudy {
  const demands = demandsOf(input);
  const least = demands[0]?.least ?? 0;
  if (input.wanted !== 'auto') return { mode: 'given', thickness: input.wanted, least, demands };

  const first = Math.ceil(least / step - 1e-9) * step;
  for (let thickness = first; thickness <= first + searchRoom; thickness += step) {
    if (!screwsFit(input, thickness)) continue;
    const stretched = { what: 'a standard screw length that fits', side: 'screws', least: thickness };
    return { mode: 'auto', thickness, least, demands: thickness > first ? [stretched, ...demands] : demands };
  }
  return { mode: 'auto', thickness: first, least, demands };
}
