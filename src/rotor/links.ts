/**
 * The centring chain: what can push each part of the joint off the axis that drives it, link by link.
 *
 * Angles are in the adapter's frame, counter-clockwise seen from the driven side, and say where the part further on is pushed to.
 * Offsets in mm across the axis. Sources stand on the links. A flange whose run-out nobody gave adds nothing,
 * and is named in `unread`.
 */
import type { Link } from '../formulas/chain.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import type { Joint } from '../job/joint.ts';
import { dowelPlay } from '../job/joint-dowels.ts';
import { withinTurn } from '../units/turn.ts';
import { seen, sizesRead, turnOf } from './as-bolted.ts';
import { registerCure, trueUp, turnOverCure } from './link-cures.ts';
import { type FlangeSide, overTemperatures, registerClearance, screwPlay } from './plays.ts';
import { faceLink } from './tilt.ts';
import { seatLinks, setLink, wheelLinks } from './wheel-links.ts';

/** The places along the joint whose axis the chain tells. */
export type Station = 'adapter' | 'driven face' | 'shaft' | 'wheel' | 'teeth';

/**
 * Run-out of a flange: half a total indicator reading is the eccentricity. Dial readings tell which way. The driving flange's register
 * carries the adapter with it; on the driven side the register is held, so that the shaft goes the other way.
 */
function runOut(joint: Joint, side: FlangeSide): Link[] {
  const { rim, rimDoubt = 0, rimEccentricity } = joint[side].runout;
  const common = { id: `${side}-run-out`, what: `run-out of the ${side} flange`, memory: false };
  const cure = `the ${side} flange trued up`;
  if (rimEccentricity) {
    const { size, angle, doubt } = rimEccentricity;
    const high = withinTurn(angle + turnOf(joint, side));
    const at = side === 'driven' ? withinTurn(high + 180) : high;
    const left = trueUp(cure, { size, doubt });
    return [{ ...common, least: size, most: size, angle: at, high, doubt, source: 'dial readings', cure: left }];
  }
  if (rim === null) return [];
  const source = 'total indicator reading; its direction is not known';
  const read = { size: rim / 2, doubt: rimDoubt / 2 };
  return [{ ...common, ...sizesRead(read), source, cure: trueUp(cure, read) }];
}

/** What stands between a flange's axis and the adapter's: the register's fit, cold and hot, or the play of the screws without one. */
function seat(joint: Joint, side: FlangeSide): Link {
  const common = { id: `${side}-seat`, angle: null, doubt: 0, memory: false };
  const play = registerClearance(joint, side);
  if (play) {
    const heat = joint.job.duty?.temperature;
    const warm = heat ? overTemperatures(joint, side, heat.cold, heat.hot)?.worst : undefined;
    const widest = Math.max(play.greatest, warm?.greatest ?? play.greatest);
    const isHeat = widest > play.greatest + 5e-4;
    return {
      ...common,
      what: `${side} register fit`,
      least: eccentricityOf(play.least),
      most: eccentricityOf(widest),
      source: `limits of both halves${isHeat ? ', opened by heat' : ''}`,
      cure: registerCure(joint, side, isHeat && widest > 2 * play.greatest),
    };
  }
  const pins = dowelPlay(joint, side);
  if (pins !== null) {
    return {
      ...common,
      what: `play of the ${side} dowels`,
      least: 0,
      most: eccentricityOf(pins),
      source: 'limits of pins and holes',
      cure:
        joint.dowels?.[side]?.reamed === 'together'
          ? `closer dowel holes (adapter.${side}.dowels), or a register on the ${side} flange`
          : `dowel holes reamed together (adapter.${side}.dowels: { reamed: together })`,
    };
  }
  const screws = joint.screws.find((group) => group.side === side) ?? joint.screws[0];
  return {
    ...common,
    what: `play of the ${side} screws`,
    least: 0,
    most: screws ? screwPlay(joint, screws, side) / 2 : 0,
    source: 'no register: the screws can move in their holes',
    cure: `a register on the ${side} flange, or dowels (adapter.${side}.dowels: auto)`,
  };
}

/** The two registers against each other, after the part was turned over. */
function turnOver(joint: Joint): Link {
  const {
    turnOver: { tir, from },
    job,
    asMeasured,
  } = joint;
  const arrow = asMeasured?.register?.arrow;
  const isMeasured = job.adapter.runout !== undefined || (asMeasured?.register ?? null) !== null;
  return {
    id: 'turn-over',
    what: 'turning the part over',
    ...(arrow
      ? { least: arrow.size, most: arrow.size, angle: arrow.angle, high: arrow.angle, doubt: arrow.doubt }
      : isMeasured
        ? sizesRead({ size: tir / 2, doubt: (asMeasured?.register?.doubt ?? 0) / 2 })
        : { least: 0, most: tir / 2, angle: null, doubt: 0 }),
    source: from,
    memory: !isMeasured,
    cure: turnOverCure(joint),
  };
}

/** A leaning axis is off by its slope times the adapter's thickness where the driven flange begins. */
function leanOverThickness(joint: Joint): Link[] {
  const { thickness } = joint.adapterSpec;
  return faceLink(joint, 'driving').map((link) => ({
    ...link,
    id: 'lean',
    what: 'lean of the driving face over the thickness',
    least: link.least * thickness,
    most: link.most * thickness,
    doubt: link.doubt * thickness,
  }));
}

/** Links from the driving axis to a station. The wheel's stations are empty where there is no wheel. */
export function linksTo(joint: Joint, station: Station): readonly Link[] {
  const known = knownLinks.get(joint) ?? new Map<Station, readonly Link[]>();
  knownLinks.set(joint, known);
  const links = known.get(station) ?? workedOut(joint, station);
  known.set(station, links);
  return links;
}

/** A joint never changes, and many checks ask for the same chain. */
const knownLinks = new WeakMap<Joint, Map<Station, readonly Link[]>>();

function workedOut(joint: Joint, station: Station): Link[] {
  const adapter = [...runOut(joint, 'driving'), seat(joint, 'driving')];
  const drivenFace = [...adapter, ...leanOverThickness(joint), turnOver(joint)];
  const rim = joint.asMeasured?.jointRim;
  const toDriven = () =>
    rim ? [seen(rim, 1 / 2, 'run-out of the joint as bolted up', false)] : [...drivenFace, seat(joint, 'driven')];
  const shaft = () => [...toDriven(), ...runOut(joint, 'driven')];
  if (station === 'adapter') return adapter;
  if (station === 'driven face') return drivenFace;
  if (station === 'shaft') return shaft();
  const own = wheelLinks(joint);
  const wheel = joint.job.wheel;
  if (!own || !wheel) return [];
  // A dial at the tips sees everything before it; what is left is what it was set to.
  const teeth = joint.asMeasured?.teeth ?? null;
  const at = wheel.form === 'windows' ? 'rim' : 'teeth';
  const set =
    teeth !== null
      ? { ...setLink(teeth, at), least: teeth / 2, source: `measured at the ${at}` }
      : wheel.set_true === undefined
        ? null
        : setLink(wheel.set_true, at);
  // What is set true are the teeth: the rest of the wheel stays off by as much as they are off the bore.
  if (set) return [set, ...(station === 'wheel' ? [own.teeth] : [])];
  // A seat belongs to the set-up of its face, and runs out in it by what the drawing lets it. A flange's rim goes with its register: the driving one runs out as
  // that flange does, the driven one stands where the adapter's register holds it, whatever its own shaft does.
  const upTo =
    wheel.on === 'driving'
      ? runOut(joint, 'driving')
      : wheel.on === 'driven'
        ? toDriven()
        : [...(wheel.face === 'driven' ? drivenFace : adapter), ...seatLinks(joint)];
  return station === 'wheel' ? [...upTo, own.bore] : [...upTo, own.bore, own.teeth];
}

/** Run-outs of the flanges that nobody gave and no dial on the joint saw, each as a key of the job: "driving.runout.rim". */
export function unread({ asMeasured, ...joint }: Joint): string[] {
  // A dial on the driven flange sees all before it, and nothing of the shaft behind it.
  const isSeen = (side: FlangeSide, of: 'rim' | 'face') =>
    side === 'driving' && Boolean(of === 'rim' ? asMeasured?.jointRim : asMeasured?.jointFace);
  return (['driving', 'driven'] as const).flatMap((side) =>
    (['rim', 'face'] as const)
      .filter((of) => joint[side].runout[of] === null && !isSeen(side, of))
      .map((of) => `${side}.runout.${of}`),
  );
}
