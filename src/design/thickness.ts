/** How thick the adapter has to be, and which demand decides. */
import { leastWebUnderHead } from '../formulas/head-web.ts';
import type { ThicknessStudy } from '../job/joint.ts';
import type { AdapterSpec, RegisterSpec, WheelSeatSpec } from '../parts/adapter-spec.ts';
import { blindTip, leastThreadRoom, type ThreadNeed, tappedDepth } from './adapter-thread.ts';
import { type Fixing, pocketDepth } from './fixing.ts';
import { type AdapterFlanges, fixingRadius, innermost } from './layout.ts';
import { type LengthSpan, lengthSpan, type Surroundings, standardLengthIn } from './screw-length.ts';

/** Thicknesses are rounded up to this step, mm: stock is faced to half millimetres. */
const step = 0.5;
/** How far above the least thickness a screw length that fits is looked for, mm. */
const searchRoom = 8;

/** What the thickness is worked out from. */
export interface ThicknessInput {
  readonly wanted: 'auto' | number;
  readonly web: number;
  readonly chamfer: number;
  readonly fixings: readonly Fixing[];
  readonly flanges: AdapterFlanges;
  readonly registers: AdapterSpec['registers'];
  readonly wheelSeat: WheelSeatSpec | null;
  /** The wheel's tapped holes; null without a wheel. */
  readonly wheelThread: ThreadNeed | null;
}

interface Demand {
  readonly what: string;
  readonly side: string;
  readonly least: number;
}

const across = { driving: 'driven', driven: 'driving' } as const;

const recess = (register: RegisterSpec | null) =>
  register?.gender === 'female' && register.at === 'inner' ? register.depth : 0;

/** Depth of a face's recess where a fixing's holes reach over it in plan, mm; 0 where they do not. */
function recessUnder(
  fixing: Fixing,
  face: 'driving' | 'driven',
  input: Pick<ThicknessInput, 'flanges' | 'registers'>,
): number {
  const register = input.registers[face];
  if (!register || recess(register) === 0) return 0;
  const reach = innermost(input.flanges[fixing.side]) - fixingRadius(fixing);
  return reach < register.diameter / 2 + register.chamfer ? register.depth : 0;
}

/** What a fixing's tapped holes in the adapter must take. */
export function threadNeed(fixing: Fixing, flanges: AdapterFlanges): ThreadNeed {
  const flange = flanges[fixing.side].thickness;
  return {
    thread: fixing.thread,
    head: fixing.head.kind,
    engagement: fixing.engagement.length,
    grip: flange === null ? null : flange.value + (fixing.washer?.thickness ?? 0),
    length: fixing.length,
  };
}

/** Tapped depth of a fixing's holes in the adapter at a thickness: a recess behind them takes its share of the metal. */
export function adapterThread(
  fixing: Fixing,
  input: Pick<ThicknessInput, 'flanges' | 'registers' | 'web'>,
  thickness: number,
) {
  return tappedDepth(
    threadNeed(fixing, input.flanges),
    thickness - recessUnder(fixing, across[fixing.side], input),
    input.web,
  );
}

function fixingDemands(fixing: Fixing, input: ThicknessInput): Demand[] {
  const { side, thread } = fixing;
  const { web } = input;
  if (fixing.threadIn === 'adapter') {
    const need = threadNeed(fixing, input.flanges);
    const behind = recessUnder(fixing, across[side], input);
    const tip = blindTip(need);
    return behind > 0 && tip !== null
      ? [{ what: `${thread.designation} thread over the ${across[side]} recess`, side, least: behind + tip + web }]
      : [{ what: `thread engagement of ${thread.designation}`, side, least: leastThreadRoom(need) }];
  }
  if (fixing.seat === 'outside') return [];
  const under = leastWebUnderHead(thread.d, web);
  const beneath = recessUnder(fixing, side, input);
  const what =
    fixing.seat === 'sunk'
      ? `${thread.designation} head and the web under it`
      : `web under the ${thread.designation} heads`;
  return [
    {
      what: beneath > 0 ? `${what}, over the ${side} recess` : what,
      side,
      least: pocketDepth(fixing) + under + beneath,
    },
  ];
}

/** Every demand on the thickness, greatest first. */
function demandsOf(input: ThicknessInput): Demand[] {
  const { web, registers, wheelSeat, wheelThread } = input;
  const demands = input.fixings.flatMap((fixing) => fixingDemands(fixing, input));
  const deepest = { driving: recess(registers.driving), driven: recess(registers.driven) };
  if (deepest.driving + deepest.driven > 0) {
    demands.push({
      what:
        deepest.driving && deepest.driven
          ? 'both register recesses and the web between them'
          : 'register recess and the web behind it',
      side: deepest.driving >= deepest.driven ? 'driving' : 'driven',
      least: deepest.driving + deepest.driven + web,
    });
  }
  if (wheelThread) {
    const seat = wheelSeat?.height ?? 0;
    const what = seat > 0 ? 'wheel seat and the thread of its screws' : 'thread of the wheel screws';
    demands.push({ what, side: 'wheel', least: seat + Math.max(leastThreadRoom(wheelThread), web) });
  }
  demands.push({ what: 'rim chamfers and a land to hold', side: 'body', least: 2 * input.chamfer + web });
  return demands.sort((a, b) => b.least - a.least);
}

/** What lies around a fixing at a thickness. */
export function surroundings(fixing: Fixing, input: ThicknessInput, thickness: number): Surroundings {
  const flange = input.flanges[fixing.side];
  const tapped = fixing.threadIn === 'adapter' ? adapterThread(fixing, input, thickness) : null;
  return {
    thickness,
    flangeThickness: flange.thickness?.value ?? null,
    otherFlangeThickness: input.flanges[across[fixing.side]].thickness?.value ?? null,
    otherOutside: input.flanges[across[fixing.side]].outside.value,
    flangeThreadDepth: flange.holes.depth,
    flangeThreadThrough: flange.holes.through,
    behindFlange: flange.behind,
    adapterThread: tapped && { depth: tapped.threadDepth, through: tapped.drillDepth === null },
  };
}

/** How many fixings take their screw at this thickness: a standard one, or the one asked for. Unknown spans count as fitting. */
function screwsThatFit(input: ThicknessInput, thickness: number): number {
  return input.fixings.filter((fixing) => {
    const span: LengthSpan | null = lengthSpan(fixing, surroundings(fixing, input, thickness));
    if (span === null) return true;
    if (fixing.length === null) return standardLengthIn(fixing.head.kind, fixing.thread.size, span) !== null;
    return fixing.length >= span.least - 1e-9 && (span.most === null || fixing.length <= span.most + 1e-9);
  }).length;
}

/**
 * The thickness: the one asked for, or the least that meets every demand, rounded up to half a millimetre and, where that helps,
 * a little further so that more of the screws fit.
 */
export function studyThickness(input: ThicknessInput): ThicknessStudy {
  const demands = demandsOf(input);
  const least = demands[0]?.least ?? 0;
  if (input.wanted !== 'auto') return { mode: 'given', thickness: input.wanted, least, demands };

  const first = Math.ceil(least / step - 1e-9) * step;
  let best = { thickness: first, fit: screwsThatFit(input, first) };
  for (
    let thickness = first + step;
    thickness <= first + searchRoom && best.fit < input.fixings.length;
    thickness += step
  ) {
    const fit = screwsThatFit(input, thickness);
    if (fit > best.fit) best = { thickness, fit };
  }
  const stretched = { what: 'a screw length that fits', side: 'screws', least: best.thickness };
  return {
    mode: 'auto',
    thickness: best.thickness,
    least,
    demands: best.thickness > first ? [stretched, ...demands] : demands,
  };
}
