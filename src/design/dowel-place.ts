/**
 * Where a side's dowels stand: on the screw circle or the nearest one that leaves metal, turned to where most is left in adapter and
 * flange together, through the adapter if there is room (a pin can then be driven out), else blind.
 */

import { bestClocking, type Clocking, webAtClocking } from '../geometry/clocking.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { DowelSet, Dowels } from '../job/joint-dowels.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { Drilling, Profile } from '../model/part.ts';
import { groupDrillings, placedPositions, turned } from '../parts/adapter-holes.ts';
import type { AdapterSpec, HoleGroupSpec } from '../parts/adapter-spec.ts';
import { drillPointAngle } from '../standards/tap-depth.ts';
import { hypot } from '../units/hypot.ts';
import { blindDowelHole, type DowelLength, type DowelPlan, dowelLength } from './dowels.ts';
import { innermost, outermost } from './layout.ts';
import { onCircle } from './wheel.ts';

type Side = 'driving' | 'driven';

/** A flange whose thickness nobody measured is reckoned this thick while its holes are kept apart, mm: deeper than any pin goes. */
const deep = 100;
/** Radii tried beside the screw circle's: no more than about so many, and no nearer to each other, mm. */
const mostRadii = 10;
const leastStep = 1;

/** One end of the ring on which adapter and flange touch. */
interface Edge {
  readonly r: number;
  readonly what: string;
}

/** The ring of a face on which adapter and flange touch: dowels stand within it. mm, radii. */
export function contactRing(
  spec: Omit<AdapterSpec, 'groups'>,
  flange: ResolvedFlange,
): { readonly inner: Edge; readonly outer: Edge } {
  const { side } = flange;
  const own = spec.registers[side];
  const mate = flange.register;
  const isRim = (diameter: number) => diameter / 2 > outermost(flange);
  const steps: (Edge & { readonly isOuter: boolean })[] = [
    { r: spec.outside / 2 - spec.chamfer, what: "the adapter's rim", isOuter: true },
    { r: flange.outside.value / 2, what: "the flange's rim", isOuter: true },
    ...(spec.bore === null ? [] : [{ r: spec.bore / 2, what: "the adapter's bore", isOuter: false }]),
    ...(flange.bore === null ? [] : [{ r: flange.bore / 2, what: "the flange's bore", isOuter: false }]),
    ...(own
      ? [
          {
            r: own.diameter / 2 + (own.gender === 'female' && own.at === 'inner' ? own.chamfer : 0),
            what: `the ${side} register`,
            isOuter: own.at === 'rim',
          },
        ]
      : []),
    ...(mate
      ? [{ r: mate.diameter.value / 2, what: "the flange's register", isOuter: isRim(mate.diameter.value) }]
      : []),
    ...(spec.wheelSeat?.face === side
      ? [{ r: spec.wheelSeat.diameter / 2, what: 'the wheel seat', isOuter: true }]
      : []),
  ];
  const inner = steps
    .filter(({ isOuter }) => !isOuter)
    .reduce((a, b) => (b.r > a.r ? b : a), { r: 0, what: 'the axis' });
  const outer = steps.filter(({ isOuter }) => isOuter).reduce((a, b) => (b.r < a.r ? b : a));
  return { inner, outer };
}

/** The flange's own holes, the empty ones among them, as drillings beside the adapter, clocking applied. */
function flangeHoles(spec: Pick<AdapterSpec, 'clocking' | 'thickness'>, flange: ResolvedFlange): Drilling[] {
  const r = flange.holes.diameter.value / 2;
  const ends = flange.side === 'driving' ? [-deep, 0] : [spec.thickness, spec.thickness + deep];
  return holesThere(flange.holes).map((position, i) => ({
    id: `${flange.side}-flange-${i + 1}`,
    feature: 'flange',
    ...(flange.side === 'driven' ? turned(position, spec.clocking) : position),
    profile: ends.map((z) => ({ z, r })),
  }));
}

/** A dowel hole drawn on through the flange. */
function throughFlange(drilling: Drilling, side: Side): Drilling {
  const { profile } = drilling;
  const [first, last] = [profile[0], profile[profile.length - 1]] as [Profile[number], Profile[number]];
  const longer: Profile =
    side === 'driving' ? [{ ...first, z: first.z - deep }, ...profile] : [...profile, { ...last, z: last.z + deep }];
  return { ...drilling, profile: longer };
}

/** Dowels placed. */
export interface PlacedDowels {
  readonly plan: DowelPlan;
  readonly group: HoleGroupSpec;
  readonly circle: number;
  readonly first: number;
  readonly length: DowelLength;
}

interface Try {
  readonly radius: number;
  readonly first: number;
  readonly depth: number | null;
  /** Least metal in adapter and flange, mm. */
  readonly web: number;
}

function groupOf(plan: DowelPlan, { radius, first, depth }: Omit<Try, 'web'>): HoleGroupSpec {
  const { side, pin, fits, wish } = plan;
  const { limits } = fits.adapter;
  return {
    id: `${side}-dowels`,
    side,
    label: `dowel holes on the ${side} side, for pins ${pin.d} m6`,
    positions: onCircle(wish.count, 2 * radius, first),
    shape: {
      kind: 'dowel',
      // A hole whose limits begin at the pin's own size is drawn with it; any other with its least size.
      diameter: limits.lower,
      limits,
      face: side,
      drillDepth: depth,
      pointAngle: drillPointAngle,
    },
  };
}

/** The angle that leaves most metal; the whole degree beside it where that leaves enough as well. */
function roundAngle(fixed: readonly Drilling[], moving: readonly Drilling[], enough: number): Clocking {
  const best = bestClocking(fixed, moving);
  const whole = Math.round(best.angle);
  const web = webAtClocking(fixed, moving, whole);
  return web !== null && web >= enough ? { angle: whole, web } : best;
}

/** Radii to try, the screw circle's first and then the nearest to it within the ring. */
function radiiToTry(plan: DowelPlan, flange: ResolvedFlange, ring: ReturnType<typeof contactRing>, web: number) {
  if (plan.wish.circle !== 'auto') return [plan.wish.circle / 2];
  const usual = flange.holes.circle === null ? (innermost(flange) + outermost(flange)) / 2 : flange.holes.circle / 2;
  const room = plan.pin.d / 2 + web;
  const [from, to] = [ring.inner.r + room, ring.outer.r - room];
  const step = Math.max(leastStep, (to - from) / mostRadii);
  const beside = Array.from(
    { length: 2 * mostRadii },
    (_, i) => usual + (i % 2 === 0 ? 1 : -1) * step * Math.ceil((i + 1) / 2),
  );
  return [usual, ...beside.filter((r) => r >= from && r <= to)];
}

/**
 * Place a side's dowels among the holes that are there.
 * @param spec the adapter with its clocking and every hole to keep clear of
 * @param web metal wanted between features, mm
 * @returns the first place that leaves it, else the one that leaves most
 */
export function placeDowels(plan: DowelPlan, flange: ResolvedFlange, spec: AdapterSpec, web: number): PlacedDowels {
  const { side, pin, wish } = plan;
  const length = dowelLength(plan, flange, spec.thickness);
  const ring = contactRing(spec, flange);
  const fixed = [...spec.groups.flatMap((group) => groupDrillings(spec, group)), ...flangeHoles(spec, flange)];
  const blind = blindDowelHole(pin, length.inside.adapter);
  const depths = [null, ...(blind.tip + web <= spec.thickness ? [blind.full] : [])];
  // The driven flange was mirrored when it was read, and so is an angle that was read on its face.
  const given = wish.first === 'auto' ? null : side === 'driven' ? 180 - wish.first : wish.first;
  const tries = function* (): Generator<Try> {
    for (const radius of radiiToTry(plan, flange, ring, web)) {
      for (const depth of depths) {
        const start = groupOf(plan, { radius, first: given ?? 0, depth });
        const moving = groupDrillings(spec, start).map((drilling) => throughFlange(drilling, side));
        const turn =
          given === null ? roundAngle(fixed, moving, web) : { angle: 0, web: webAtClocking(fixed, moving, 0) };
        const inRing = Math.min(radius - ring.inner.r, ring.outer.r - radius) - pin.d / 2;
        yield {
          radius,
          first: given ?? turn.angle,
          depth,
          web: Math.min(turn.web ?? Number.POSITIVE_INFINITY, inRing),
        };
      }
    }
  };
  let best: Try | null = null;
  for (const one of tries()) {
    if (best === null || one.web > best.web + 1e-9) best = one;
    if (one.web >= web) break;
  }
  const { radius, first, depth } = best as Try;
  return { plan, group: groupOf(plan, { radius, first, depth }), circle: 2 * radius, first, length };
}

/** Least metal round a dowel hole in the flange, mm, and what is nearest to it. */
function flangeWeb(
  { plan, circle, group }: PlacedDowels,
  flange: ResolvedFlange,
  spec: AdapterSpec,
): DowelSet['flangeWeb'] {
  const own = plan.pin.d / 2;
  const ring = contactRing(spec, flange);
  const hole = flange.holes.diameter.value / 2;
  const gaps = group.positions.flatMap((a) => holesThere(flange.holes).map((b) => hypot(a.x - b.x, a.y - b.y)));
  return [
    { gap: circle / 2 - ring.inner.r - own, what: ring.inner.what },
    { gap: ring.outer.r - circle / 2 - own, what: ring.outer.what },
    { gap: Math.min(...gaps) - hole - own, what: "the flange's holes" },
  ].reduce((least, one) => (one.gap < least.gap ? one : least));
}

/** What the joint says of placed dowels. */
function dowelSet(placed: PlacedDowels, flange: ResolvedFlange, spec: AdapterSpec): DowelSet {
  const { plan, group, circle, first, length } = placed;
  const { side, pin, wish, fits } = plan;
  return {
    side,
    pin,
    count: wish.count,
    ...length,
    circle,
    first,
    reamed: wish.reamed,
    isMeasured: wish.flange !== undefined,
    positions: placedPositions(spec, group),
    depth: group.shape.kind === 'dowel' ? group.shape.drillDepth : null,
    fits,
    flangeWeb: flangeWeb(placed, flange, spec),
  };
}

/** An adapter with dowel holes, and where they went. */
export interface Dowelled {
  readonly spec: AdapterSpec;
  readonly placed: readonly PlacedDowels[];
}

/** Least outside diameter that given circles of dowels need, mm; 0 when all of them are open. */
export function outsideForDowels(plans: readonly DowelPlan[], web: number, chamfer: number): number {
  const needs = plans.map(({ wish, pin }) => (wish.circle === 'auto' ? 0 : wish.circle + pin.d + 2 * (web + chamfer)));
  return Math.max(0, ...needs);
}

/**
 * Dowels that stand at a given angle are drilled before the patterns are clocked: they turn with their side, so only their own
 * side's holes are in their way here.
 */
export function withGivenDowels(
  sketch: AdapterSpec,
  plans: readonly DowelPlan[],
  flanges: Readonly<Record<Side, ResolvedFlange>>,
  web: number,
): Dowelled {
  const placed = plans
    .filter(({ wish }) => wish.first !== 'auto')
    .map((plan) => {
      const groups = sketch.groups.filter(({ side }) => side === plan.side);
      return placeDowels(plan, flanges[plan.side], { ...sketch, groups }, web);
    });
  return { spec: { ...sketch, groups: [...sketch.groups, ...placed.map(({ group }) => group)] }, placed };
}

/** Dowels whose angle is open go, side after side, where the clocked patterns leave most metal. */
export function withOpenDowels(
  { spec, placed }: Dowelled,
  plans: readonly DowelPlan[],
  flanges: Readonly<Record<Side, ResolvedFlange>>,
  web: number,
): Dowelled {
  return plans
    .filter(({ wish }) => wish.first === 'auto')
    .reduce<Dowelled>(
      (so, plan) => {
        const next = placeDowels(plan, flanges[plan.side], so.spec, web);
        return { spec: { ...so.spec, groups: [...so.spec.groups, next.group] }, placed: [...so.placed, next] };
      },
      { spec, placed },
    );
}

/** The dowels of both sides, as the joint tells of them; null when there are none. */
export function dowelsOf(
  placed: readonly PlacedDowels[],
  flanges: Readonly<Record<Side, ResolvedFlange>>,
  spec: AdapterSpec,
): Dowels | null {
  if (placed.length === 0) return null;
  const of = (side: Side) => {
    const own = placed.find(({ plan }) => plan.side === side);
    return own ? dowelSet(own, flanges[side], spec) : null;
  };
  return { driving: of('driving'), driven: of('driven') };
}
