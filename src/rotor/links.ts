/**
 * The centring chain: what can push each part of the joint off the axis that drives it, link by link, and what can tilt it.
 *
 * Angles are in the adapter's frame, counter-clockwise seen from the driven side, and say where the part further on is pushed to.
 * Offsets in mm across the axis; tilts in mm per mm. Sources stand on the links. A flange whose run-out nobody gave adds nothing,
 * and is named in `unread`.
 */

import type { Link } from '../formulas/chain.ts';
import { eccentricityOf } from '../formulas/fit.ts';
import type { DialFact } from '../job/built-facts.ts';
import type { Joint } from '../job/joint.ts';
import { dowelPlay } from '../job/joint-dowels.ts';
import { machiningRule } from '../standards/machining-practice.ts';
import { cutTolerance } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { type FlangeSide, overTemperatures, registerClearance, screwPlay } from './plays.ts';

/** The places along the joint whose axis the chain tells. */
export type Station = 'adapter' | 'driven face' | 'shaft' | 'wheel' | 'teeth';

const turn = (degrees: number) => ((degrees % 360) + 360) % 360;

/** How far the drawing of one flange is turned against the adapter as it is bolted up, degrees. */
function turnOf(joint: Joint, side: FlangeSide): number {
  const { bolt_up: boltUp } = joint.job.adapter;
  return side === 'driving' ? -(boltUp?.driving ?? 0) : joint.adapterSpec.clocking + (boltUp?.driven ?? 0);
}

/**
 * Run-out of a flange: half a total indicator reading is the eccentricity. Dial readings tell which way. The driving flange's register
 * carries the adapter with it; on the driven side the register is held, so that the shaft goes the other way.
 */
function runOut(joint: Joint, side: FlangeSide): Link[] {
  const { rim, rimEccentricity } = joint[side].runout;
  const common = { id: `${side}-run-out`, what: `run-out of the ${side} flange`, memory: false };
  const cure = `the ${side} flange trued up`;
  if (rimEccentricity) {
    const { size, angle, doubt } = rimEccentricity;
    const held = side === 'driven' ? 180 : 0;
    const at = turn(angle + turnOf(joint, side) + held);
    return [{ ...common, least: size, most: size, angle: at, doubt, source: 'dial readings', cure }];
  }
  if (rim === null) return [];
  const source = 'total indicator reading; its direction is not known';
  return [{ ...common, least: rim / 2, most: rim / 2, angle: null, doubt: 0, source, cure }];
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
    const finer = joint.adapterSpec.registers[side]?.gender === 'male' ? 'h5' : 'H6';
    return {
      ...common,
      what: `${side} register fit`,
      least: eccentricityOf(play.least),
      most: eccentricityOf(widest),
      source: `limits of both halves${isHeat ? ', opened by heat' : ''}`,
      cure: `a closer fit (adapter.${side}.fit: ${finer}), or a mate measured with a micrometer`,
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
      cure: `dowel holes reamed together (adapter.${side}.dowels: { reamed: together })`,
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
function turnOver({ turnOver: { tir, from }, job, asMeasured }: Joint): Link {
  const arrow = asMeasured?.register?.arrow;
  const isMeasured = job.adapter.runout !== undefined || (asMeasured?.register ?? null) !== null;
  return {
    id: 'turn-over',
    what: 'turning the part over',
    least: arrow?.size ?? (isMeasured ? tir / 2 : 0),
    most: arrow?.size ?? tir / 2,
    angle: arrow?.angle ?? null,
    doubt: arrow?.doubt ?? 0,
    source: from,
    memory: !isMeasured,
    cure: 'both registers in one chucking (adapter.setup: one chucking)',
  };
}

/** Slope of a flange's face, mm per mm, the angle at which it stands high, and how far that may be wrong. */
function slopeOf(joint: Joint, side: FlangeSide): { slope: number; high: number | null; doubt: number } | null {
  const { runout, outside } = joint[side];
  if (runout.faceTilt) {
    const { degrees, high, doubt = 0 } = runout.faceTilt;
    const slope = (angle: number) => Math.tan((angle * Math.PI) / 180);
    return { slope: slope(degrees), high: turn(high + turnOf(joint, side)), doubt: slope(doubt) };
  }
  return runout.face === null ? null : { slope: runout.face / outside.value, high: null, doubt: 0 };
}

function faceLink(joint: Joint, side: FlangeSide): Link[] {
  const read = slopeOf(joint, side);
  if (!read) return [];
  return [
    {
      id: `${side}-face`,
      what: `face run-out of the ${side} flange`,
      least: read.slope,
      most: read.slope,
      // An axis leans away from where its face stands high, whichever flange it is.
      angle: read.high === null ? null : turn(read.high + 180),
      doubt: read.doubt,
      source: read.high === null ? 'total indicator reading; its direction is not known' : 'dial readings',
      memory: false,
      cure: `the ${side} face skimmed true, or cleaned of burrs and paint`,
    },
  ];
}

/** The two faces of the adapter are parallel within what the trade holds. */
function parallelism(joint: Joint): Link {
  const rule = must(machiningRule('parallelism', 0));
  const face = joint.asMeasured?.face;
  if (face) {
    const slope = face.arrow?.size ?? face.tir / joint.adapterSpec.outside;
    return {
      id: 'parallelism',
      what: "the adapter's two faces",
      least: slope,
      most: slope,
      // The far face leans the shaft away from where it stands high.
      angle: face.arrow ? turn(face.arrow.angle + 180) : null,
      doubt: face.arrow?.doubt ?? 0,
      source: 'measured on the finished adapter',
      memory: false,
      cure: 'the second face faced again, against the first',
    };
  }
  return {
    id: 'parallelism',
    what: "the adapter's two faces",
    least: 0,
    most: rule.value / joint.adapterSpec.outside,
    angle: null,
    doubt: 0,
    source: rule.source,
    memory: rule.memory,
    cure: 'both faces in one chucking, or the second one faced against a lapped plate',
  };
}

/** A dial on the joint as bolted up sees all links before it at once, and takes their place. */
function seen(fact: DialFact, scale: number, what: string, leans: boolean): Link {
  const { tir, arrow } = fact;
  const size = arrow?.size ?? tir * scale;
  return {
    id: 'as-bolted-up',
    what,
    least: size,
    most: size,
    angle: arrow ? turn(arrow.angle + (leans ? 180 : 0)) : null,
    doubt: arrow?.doubt ?? 0,
    source: 'measured on the joint as bolted up',
    memory: false,
    cure: 'the joint bolted up another way round, or burrs and dirt cleaned from faces and registers',
  };
}

/** What tilts the driven shaft's axis, mm per mm. */
export function tiltLinks(joint: Joint): Link[] {
  const face = joint.asMeasured?.jointFace;
  if (face) return [seen(face, 1 / joint.driven.outside.value, 'lean of the joint as bolted up', true)];
  return [...faceLink(joint, 'driving'), parallelism(joint), ...faceLink(joint, 'driven')];
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

/** Tolerance of a cut where nothing is published for the thickness, plus or minus mm: the widest of the usual range. */
const unknownCut = 0.75;

/** What the cutting service holds on a contour of the wheel, plus or minus mm. */
export function wheelCut(joint: Joint): number {
  const published = cutTolerance(joint.wheelSpec?.thickness ?? 0);
  return joint.job.sheet.tolerance ?? (published.ok ? published.value : unknownCut);
}

/** How much larger the wheel's bore is than its register as made, least and greatest, mm on the diameter; null without a wheel. */
export function wheelPlay(joint: Joint): { readonly least: number; readonly greatest: number } | null {
  const { wheelRegister: register, wheelSpec: spec, wheelBore: made } = joint;
  if (!register || !spec) return null;
  const cut = wheelCut(joint);
  const bore = made?.limits ?? { lower: spec.bore - cut, upper: spec.bore + cut };
  return { least: bore.lower - register.upper, greatest: bore.upper - register.lower };
}

/** The wheel's bore on its register, and its teeth about its bore. */
function wheelLinks(joint: Joint): { readonly bore: Link; readonly teeth: Link } | null {
  const play = wheelPlay(joint);
  if (!play) return null;
  const cut = wheelCut(joint);
  const common = { angle: null, doubt: 0, memory: false };
  return {
    bore: {
      ...common,
      id: 'wheel-bore',
      what: 'the wheel on its register',
      least: eccentricityOf(play.least),
      most: eccentricityOf(play.greatest),
      source: joint.wheelBore ? 'limits of both halves' : 'tolerance of the cut',
      cure: 'the bore turned to the register after cutting (wheel.fit: H8), or the wheel set true with a dial (wheel.set_true: 0.1 mm)',
    },
    teeth: {
      ...common,
      id: 'teeth',
      what: 'the teeth about the bore',
      least: 0,
      // Bore and teeth are cut in one go: half of what two contours may each be out. Common practice.
      most: cut / 2,
      source: 'half the tolerance of the cut, common practice',
      memory: true,
      cure: 'bore and teeth cut in one clamping by a service that holds less (sheet.tolerance)',
    },
  };
}

/** The wheel by a dial that stands on something fixed, turned with the driving shaft: total indicator reading, mm. */
function setLink(tir: number): Link {
  return {
    id: 'set-true',
    what: 'the wheel by the dial at its teeth',
    least: 0,
    most: tir / 2,
    angle: null,
    doubt: 0,
    source: 'asked for in the job (wheel.set_true)',
    memory: false,
    cure: 'a finer setting (wheel.set_true)',
  };
}

/** Links from the driving axis to a station. The wheel's stations are empty where there is no wheel. */
export function linksTo(joint: Joint, station: Station): Link[] {
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
  if (teeth !== null) return [{ ...setLink(teeth), least: teeth / 2, source: 'measured at the teeth' }];
  if (wheel.set_true !== undefined) return [setLink(wheel.set_true), ...(station === 'wheel' ? [own.teeth] : [])];
  // A seat is turned in the same set-up as the face it belongs to; a flange's rim runs out as that flange does.
  const upTo =
    wheel.on === 'driving'
      ? runOut(joint, 'driving')
      : wheel.on === 'driven'
        ? shaft()
        : wheel.face === 'driven'
          ? drivenFace
          : adapter;
  return station === 'wheel' ? [...upTo, own.bore] : [...upTo, own.bore, own.teeth];
}

/** Flanges whose run-out nobody gave, each as a key of the job: "driving.runout.rim". */
export function unread(joint: Joint): string[] {
  return (['driving', 'driven'] as const).flatMap((side) =>
    (['rim', 'face'] as const).filter((of) => joint[side].runout[of] === null).map((of) => `${side}.runout.${of}`),
  );
}
