/** Why a tone wheel cannot be drawn as asked: sentences for the person who typed the numbers. */
import { sin } from '../units/trig.ts';
import { LEAST_LAND, lengthWords as mm, noRoomForExtra, SLACK } from './tone-wheel-limits.ts';
import { largestRootRadius, largestTipBreak } from './tone-wheel-measures.ts';
import { hasWindows, leastPitchAngle, pitchAngle, type ToneWheelSpec, toothShape } from './tone-wheel-tooth.ts';
import { largestCorner } from './tone-wheel-window.ts';
import { rimFaults, windowFaults } from './tone-wheel-window-faults.ts';

/**
 * Sentences about a wheel that cannot be drawn; empty when it can. Each starts with the field it speaks of,
 * then the value, what is allowed, and the likely slip. Only geometry is judged here: whether a sensor likes
 * the teeth is a check.
 */
export function toneWheelFaults(spec: ToneWheelSpec): string[] {
  const plain = plainFaults(spec);
  const faults = plain.length > 0 ? plain : rimFaults(spec);
  if (faults.length > 0) return faults;
  const shape = hasWindows(spec) ? windowFaults(spec) : shapeFaults(spec);
  return [...(shape.length > 0 ? shape : kerfFaults(spec)), ...holeFaults(spec)];
}

/** Each number on its own, and the order of the diameters. */
function plainFaults(spec: ToneWheelSpec): string[] {
  const faults: string[] = [];
  const { teeth, missing, outside, root, bore, ratio } = spec;
  if (!Number.isInteger(teeth) || teeth < 3) {
    faults.push(`teeth: ${teeth} is not a whole number of 3 or more. Count every position, missing ones included.`);
  } else if (!Number.isInteger(missing) || missing < 0 || missing >= teeth) {
    faults.push(
      `missing: ${missing} is not a whole number from 0 to ${teeth - 1}. Give the positions left out: 2 for "60-2".`,
    );
  } else faults.push(...markFaults(spec));
  const positive = ['thickness', 'outside', 'root', 'bore'] as const;
  for (const field of positive) {
    if (!(spec[field] > 0) || !Number.isFinite(spec[field])) {
      faults.push(`${field}: ${mm(spec[field])} must be more than 0 mm. Is a number or a unit missing?`);
    }
  }
  for (const field of ['rootRadius', 'tipBreak', 'kerf'] as const) {
    if (!(spec[field] >= 0) || !Number.isFinite(spec[field])) {
      faults.push(`${field}: ${mm(spec[field])} must be 0 mm or more. Use 0 for none.`);
    }
  }
  if (!Number.isFinite(spec.toothAngle)) faults.push(`toothAngle: ${spec.toothAngle} is not an angle in degrees.`);
  if (!(ratio > 0 && ratio < 1)) {
    const slip = ratio > 1 && ratio < 100 ? ` Was ${ratio} % meant? Then give ${ratio / 100}.` : '';
    faults.push(
      `ratio: ${ratio} must lie between 0 and 1: tooth width over pitch, 0.5 for tooth and valley alike.${slip}`,
    );
  }
  if (faults.length > 0) return faults;
  if (root >= outside) {
    faults.push(
      `root: ${mm(root)} must be less than the outside diameter of ${mm(outside)}. ` +
        'Both are diameters: were they swapped, or is the outside a radius?',
    );
  }
  if (bore >= root) {
    faults.push(
      `bore: ${mm(bore)} must be less than the root diameter of ${mm(root)}. ` +
        'Both are diameters: was a radius given for the root?',
    );
  }
  return faults;
}

/** The mark of a position: one of its kind, and an ordinary tooth besides. For a sound number of teeth. */
function markFaults({ teeth, missing, wide = 0, extra = 0 }: ToneWheelSpec): string[] {
  if ([missing, wide, extra].filter((count) => count > 0).length > 1) {
    return [
      `missing, wide, extra: ${missing}, ${wide} and ${extra} are given, and one mark is all that a turn takes. Give one of them.`,
    ];
  }
  if (!Number.isInteger(wide) || wide < 0 || wide > teeth - 2) {
    return [
      `wide: ${wide} is not a whole number from 0 to ${teeth - 2}. Give the valleys that are filled: 1 makes two teeth one.`,
    ];
  }
  return extra === 0 || extra === 1
    ? []
    : [`extra: ${extra} is neither 0 nor 1. One more tooth is all that marks a place.`];
}

/** The tooth and the valley. */
function shapeFaults(spec: ToneWheelSpec): string[] {
  const faults: string[] = [];
  const sharp = toothShape({ ...spec, rootRadius: 0, tipBreak: 0 });
  const middle = sin(pitchAngle(spec) / 2 - sharp.flankAngle);
  const meet = sharp.flankOffset / middle;
  if (sharp.rootR - meet < SLACK) {
    return [
      `root: ${mm(spec.root)} is too deep: straight flanks of neighbouring teeth meet at ${mm(2 * meet)} diameter. ` +
        'Allowed: a larger root diameter. Is the tooth-to-pitch ratio too large, or would radial flanks do?',
    ];
  }
  const land = 2 * sharp.tipEnd * sharp.outsideR;
  const valley = (pitchAngle(spec) - 2 * sharp.tipEnd) * sharp.outsideR;
  if (Math.min(land, valley) < LEAST_LAND) {
    return [
      `ratio: ${spec.ratio} with ${spec.teeth} teeth leaves a tooth of ${mm(land)} and a valley of ${mm(valley)}; ` +
        `each must keep ${mm(LEAST_LAND)} at least. Is the number of teeth right?`,
    ];
  }
  if ((spec.extra ?? 0) > 0) {
    const half = leastPitchAngle(spec) / 2;
    const isOpen = half > sharp.tipEnd && half > sharp.rootStart && half > sharp.flankAngle;
    const narrow = (2 * half - 2 * Math.max(sharp.tipEnd, sharp.rootStart)) * sharp.rootR;
    if (!isOpen || narrow < LEAST_LAND) return [noRoomForExtra('tooth', land, 'valley', valley)];
  }
  const breakLimit = largestTipBreak({ ...spec, rootRadius: 0 });
  const shape = toothShape(spec);
  if (spec.tipBreak > 0 && !(2 * shape.tipEnd * shape.outsideR >= LEAST_LAND && spec.tipBreak < breakLimit)) {
    return [
      `tipBreak: ${mm(spec.tipBreak)} eats the tooth, which is ${mm(land)} wide and ` +
        `${mm(shape.outsideR - shape.rootR)} high. Allowed: less than ${mm(breakLimit)}. Was 0.2 or so meant?`,
    ];
  }
  const roundLimit = largestRootRadius(spec);
  if (spec.rootRadius > roundLimit + SLACK) {
    faults.push(
      `rootRadius: ${mm(spec.rootRadius)} does not fit the valley${(spec.extra ?? 0) > 0 ? ' beside the extra tooth' : ''}. Allowed: up to ${mm(roundLimit)}` +
        `${spec.tipBreak > 0 ? ' beside this tip break' : ''}. Is it a diameter?`,
    );
  }
  return faults;
}

/**
 * The outline moved out by half the kerf: a disc of the kerf's width must reach the bottom of the valley,
 * just as the largest root round does.
 */
function kerfFaults(spec: ToneWheelSpec): string[] {
  if (spec.kerf === 0) return [];
  const isOpen = !hasWindows(spec);
  const widest = 2 * (isOpen ? largestRootRadius(spec) : largestCorner(spec));
  const faults: string[] = [];
  if (spec.kerf > widest + SLACK) {
    faults.push(
      `kerf: ${mm(spec.kerf)} does not reach ${isOpen ? 'the bottom of the valleys' : 'the ends of the windows'}. Allowed: up to ${mm(widest)}. ` +
        'Is it in the right unit, or does the cutting service allow for the kerf?',
    );
  }
  const holes = [{ field: 'bore', d: spec.bore }];
  if (spec.screwHoles) holes.push({ field: 'screwHoles', d: spec.screwHoles.diameter });
  for (const { field, d } of holes) {
    if (d - spec.kerf < LEAST_LAND) {
      faults.push(
        `kerf: ${mm(spec.kerf)} is no less than the diameter of ${mm(d)} at ${field}. Is it in the right unit?`,
      );
    }
  }
  return faults;
}

/** Screw holes against bore, root circle and each other. */
function holeFaults(spec: ToneWheelSpec): string[] {
  if (spec.screwHoles === null) return [];
  const { diameter, positions } = spec.screwHoles;
  if (!(diameter > 0) || !Number.isFinite(diameter)) {
    return [`screwHoles.diameter: ${mm(diameter)} must be more than 0 mm. Is a number or a unit missing?`];
  }
  const faults: string[] = [];
  positions.forEach(({ x, y }, i) => {
    const place = `screwHoles.positions[${i}]`;
    const at = Math.hypot(x, y);
    const inner = (spec.bore + diameter) / 2;
    const outer = (spec.root - diameter) / 2;
    if (!(at > inner && at < outer)) {
      faults.push(
        `${place}: a hole of ${mm(diameter)} at ${mm(at)} from the axis breaks into ` +
          `${at <= inner ? 'the bore' : hasWindows(spec) ? 'the windows' : 'the teeth'}. Allowed: ${
            outer > inner ? `between ${mm(inner)} and ${mm(outer)}` : 'none, there is no room for this diameter'
          }. Is the circle's diameter given for its radius, or the other way round?`,
      );
    }
    for (let k = 0; k < i; k++) {
      const other = positions[k];
      if (other === undefined) continue;
      const apart = Math.hypot(x - other.x, y - other.y);
      if (!(apart > diameter)) {
        faults.push(
          `${place}: ${mm(apart)} from hole ${k} is not clear of it. Allowed: more than the diameter of ` +
            `${mm(diameter)}. Was one hole given twice?`,
        );
      }
    }
  });
  return faults;
}
