/**
 * What tilts the driven shaft's axis: the two flanges' faces and the adapter's own, mm per mm. Angles in the adapter's frame say where
 * the axis leans to.
 */
import type { Link } from '../formulas/chain.ts';
import type { Joint } from '../job/joint.ts';
import { faceParallelism } from '../standards/machining-practice.ts';
import { tan } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { seen, sizesRead, turnOf } from './as-bolted.ts';
import { faceCure, trueUp } from './link-cures.ts';
import type { FlangeSide } from './plays.ts';

/** Slope of a flange's face, mm per mm, the angle at which it stands high, and how far that may be wrong. */
function slopeOf(joint: Joint, side: FlangeSide): { slope: number; high: number | null; doubt: number } | null {
  const { runout, outside } = joint[side];
  if (runout.faceTilt) {
    const { degrees, high, doubt = 0 } = runout.faceTilt;
    const slope = (angle: number) => tan((angle * Math.PI) / 180);
    return { slope: slope(degrees), high: withinTurn(high + turnOf(joint, side)), doubt: slope(doubt) };
  }
  if (runout.face === null) return null;
  return { slope: runout.face / outside.value, high: null, doubt: (runout.faceDoubt ?? 0) / outside.value };
}

/** How a flange's face tilts the axis that stands on it, mm per mm; empty where nobody gave its run-out. */
export function faceLink(joint: Joint, side: FlangeSide): Link[] {
  const read = slopeOf(joint, side);
  if (!read) return [];
  return [
    {
      id: `${side}-face`,
      what: `face run-out of the ${side} flange`,
      ...(read.high === null
        ? sizesRead({ size: read.slope, doubt: read.doubt })
        : {
            least: read.slope,
            most: read.slope,
            // An axis leans away from where its face stands high, whichever flange it is.
            angle: withinTurn(read.high + 180),
            high: read.high,
            doubt: read.doubt,
          }),
      source: read.high === null ? 'total indicator reading; its direction is not known' : 'dial readings',
      memory: false,
      cure: trueUp(`the ${side} face skimmed true, or cleaned of burrs and paint`, {
        size: read.slope,
        doubt: read.doubt,
      }),
    },
  ];
}

/** The two faces of the adapter are parallel within what the set-up holds. */
function parallelism(joint: Joint): Link {
  const rule = faceParallelism(joint.job.adapter.setup);
  const face = joint.asMeasured?.face;
  if (face) {
    const across = joint.adapterSpec.outside;
    return {
      id: 'parallelism',
      what: "the adapter's two faces",
      ...(face.arrow
        ? {
            least: face.arrow.size,
            most: face.arrow.size,
            // The far face leans the shaft away from where it stands high.
            angle: withinTurn(face.arrow.angle + 180),
            high: withinTurn(face.arrow.angle),
            doubt: face.arrow.doubt,
          }
        : sizesRead({ size: face.tir / across, doubt: face.doubt / across })),
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
    cure: faceCure(joint),
  };
}

/** What tilts the driven shaft's axis, mm per mm. */
export function tiltLinks(joint: Joint): Link[] {
  const face = joint.asMeasured?.jointFace;
  // The dial sees how the driven flange stands; how its shaft stands on it was read beforehand.
  if (face) {
    return [
      seen(face, 1 / joint.driven.outside.value, 'lean of the joint as bolted up', true),
      ...faceLink(joint, 'driven'),
    ];
  }
  return [...faceLink(joint, 'driving'), parallelism(joint), ...faceLink(joint, 'driven')];
}
