/** How long the shaft must be made: the readings with the mock-up in place, the adapter counted once, slip and travel. Lengths mm. */

import {
  type Between,
  centreDistance,
  type Directions,
  meanReading,
  type OrderedLength,
  orderedLength,
  type Travel,
} from '../formulas/shaft-length.ts';
import { lastLength, type PlacedTrain, placed, travelled } from '../formulas/train-moves.ts';
import type { ShaftInput } from '../job/schema-shaft.ts';
import { machiningRule } from '../standards/machining-practice.ts';
import { shaftRule } from '../standards/shaft-practice.ts';
import { must } from '../standards/table.ts';
import { hypot } from '../units/hypot.ts';
import { type JointWithShaft, readAcross, type ShaftLine, shaftLine } from './shaft-line.ts';

/** What the shaft at hand needs. */
export interface ToCut {
  /** To take out of the tube; minus: to put in. */
  readonly out: number;
  /** Tube left between the welds; null where its length was not given. */
  readonly tubeLeft: number | null;
}

export interface ShaftFit {
  readonly ok: true;
  /** Mean of the readings, and the doubt of the finished length: reading and thickness together. */
  readonly reading: number;
  readonly doubt: number;
  /** What was taken off the reading between the face that was read and the shaft's flange, and why: a sentence. */
  readonly takenOff: number;
  readonly because: string;
  /** Installed at ride height, as it lies straight on the bench. */
  readonly faces: number;
  /** Joint centre to joint centre; null where the shaft's ends were not given. */
  readonly centres: number | null;
  /** From the shaft's faces to its joint centres, both ends together; null where not given. */
  readonly ends: number | null;
  /** By how much the bend at the joints makes the bench length longer than the reading between faces; 0 without angles. */
  readonly bend: number;
  /** Lengths through the travel of the axle; null where it is not known. */
  readonly travel: Travel | null;
  readonly travelFrom: 'readings' | 'geometry' | null;
  /** Null for a shaft without slip. */
  readonly ordered: OrderedLength | null;
  readonly reserve: number;
  /** What `orderedLength` was asked for when no travel is known: slip both ways counts as free. */
  readonly toCut: ToCut | null;
}

export type FitStudy = ShaftFit | { readonly ok: false; readonly why: 'hanging' | 'parts too long' | 'no swing' };

function directionsOf(line: ShaftLine | null): Directions | null {
  if (!line || readAcross(line).length > 0) return null;
  const { shafts } = line.train;
  const shaft = shafts[line.boltedTo];
  if (!shaft) return null;
  return { ahead: shafts[line.boltedTo - 1] ?? shaft, shaft, behind: shafts[line.boltedTo + 1] ?? shaft };
}

/** Face to face on the bench, and joint centres, from one reading. Null when the parts are longer than it. */
function benchLength(reading: number, taken: number, shaft: ShaftInput, directions: Directions | null) {
  const [here, there] = [shaft.ends?.adapter ?? 0, shaft.ends?.far ?? 0];
  // The adapter lies at the near end of a shaft that it turns, at the far end of one that turns it.
  const between: Between =
    shaft.bolts_to === 'driven'
      ? { reading, near: taken, far: 0, nearEnd: here, farEnd: there }
      : { reading, near: 0, far: taken, nearEnd: there, farEnd: here };
  const centres = centreDistance(between, directions);
  return centres === null ? null : { centres, faces: centres + here + there };
}

/** How many mm lie between the face that was read and the shaft's flange, and why. */
function takenOff(
  joint: JointWithShaft,
  measured: NonNullable<ShaftInput['measured']>,
): { by: number; because: string } {
  const { thickness } = joint.adapterSpec;
  const spacers = joint.job.shaft?.spacers ?? 0;
  const size = (value: number) => `${Number(value.toFixed(2))} mm`;
  const wheel = joint.wheel === null ? '' : ' The wheel stands beside the faces, not between them: it takes no length.';
  const extra = spacers > 0 ? ` Spacers of ${size(spacers)} come off as well.` : '';
  if (measured.from === 'flange') {
    const because = `Read on the bare flange, so the adapter's ${size(thickness)} come off, once.${extra}${wheel}`;
    return { by: thickness + spacers, because };
  }
  const mockUp = measured.mock_up ?? thickness;
  const step = thickness - mockUp;
  const differs =
    Math.abs(step) < 1e-9
      ? ''
      : ` The mock-up is ${size(mockUp)} thick, the adapter ${size(thickness)}: ${size(Math.abs(step))} ${step > 0 ? 'come off' : 'are added'}.`;
  const because = `Read on the mock-up, so the adapter's thickness is in it already and is not taken off again.${differs}${extra}${wheel}`;
  return { by: step + spacers, because };
}

/** Stations between droop and bump at which the shaft's length is looked at. */
const stations = 40;

/** Whether the travel of the axle moves the measured shaft: it must be the last one before the axle. */
const isLast = (line: ShaftLine): boolean => line.boltedTo === line.readings.length - 2;

/** The line set out in space with the measured shaft's length filled in; null where a length is missing. */
export function placedLine(line: ShaftLine, centres: number | null): PlacedTrain | null {
  const lengths = line.lengths
    .slice(1, -1)
    .map((length, i) => (i + 1 === line.boltedTo ? (centres ?? length) : length));
  if (lengths.some((length) => length === null)) return null;
  return placed(line.train, lengths as number[]);
}

/** Shortest and longest face to face through the travel that the axle's geometry gives; null where the pivot does not reach. */
function travelByGeometry(line: ShaftLine, centres: number, faces: number, travel: NonNullable<ShaftInput['travel']>) {
  const train = placedLine(line, centres);
  if (!train) return null;
  const path = { arm: travel.arm ?? 0, pivot: travel.pivot ?? null };
  const lengths: number[] = [];
  for (let i = 0; i <= stations; i++) {
    const up = -travel.droop + ((travel.bump + travel.droop) * i) / stations;
    const there = travelled(train, up, path);
    if (!there) return null;
    lengths.push(lastLength(there) - centres + faces);
  }
  return { ride: faces, shortest: Math.min(...lengths, faces), longest: Math.max(...lengths, faces) };
}

/** What the job tells of the shaft's length; null where it gives no reading. */
export function studyFit(joint: JointWithShaft): FitStudy | null {
  const { shaft } = joint.job;
  const measured = shaft?.measured;
  if (!shaft || !measured) return null;
  if (measured.at === 'hanging') return { ok: false, why: 'hanging' };
  const line = shaftLine(joint);
  const directions = directionsOf(line);
  const { by, because } = takenOff(joint, measured);
  const tape = measured.doubt ?? shaftRule('tape').limit;
  const { value: reading, doubt } = meanReading(measured.value, tape);
  const lengthAt = (value: number) => benchLength(value, by, shaft, directions);
  const ride = lengthAt(reading);
  if (!ride) return { ok: false, why: 'parts too long' };

  const { faces } = ride;
  const moved = [measured.at_bump, measured.at_droop].flatMap((list) =>
    list === undefined ? [] : [lengthAt(meanReading(list, tape).value)?.faces ?? Number.NaN],
  );
  if (moved.some(Number.isNaN)) return { ok: false, why: 'parts too long' };
  const both = moved.length === 2;
  const swings = !both && shaft.travel !== undefined && shaft.ends !== undefined && line !== null && isLast(line);
  const byGeometry = swings && shaft.travel ? travelByGeometry(line, ride.centres, faces, shaft.travel) : null;
  if (swings && !byGeometry && placedLine(line, ride.centres)) return { ok: false, why: 'no swing' };
  const travel: Travel | null = both
    ? { ride: faces, shortest: Math.min(faces, ...moved), longest: Math.max(faces, ...moved) }
    : byGeometry;

  const reserve = shaft.slip?.reserve ?? shaftRule('reserve').limit;
  const still: Travel = { ride: faces, shortest: faces, longest: faces };
  const ordered = shaft.slip ? orderedLength(travel ?? still, { stroke: shaft.slip.stroke, reserve }) : null;
  const ends = shaft.ends ? shaft.ends.adapter + shaft.ends.far : null;
  const thicknessDoubt =
    measured.from === 'flange' || measured.mock_up === undefined ? must(machiningRule('tolerance', 0)).value : 0;
  return {
    ok: true,
    reading,
    doubt: hypot(doubt, thicknessDoubt),
    takenOff: by,
    because,
    faces,
    centres: shaft.ends ? ride.centres : null,
    ends,
    bend: faces - (reading - by),
    travel,
    travelFrom: travel === null ? null : both ? 'readings' : 'geometry',
    ordered,
    reserve,
    toCut: toCut(shaft, faces, ends, ordered),
  };
}

function toCut(shaft: ShaftInput, faces: number, ends: number | null, ordered: OrderedLength | null): ToCut | null {
  const { at_hand: hand } = shaft;
  if (!hand || (hand.between === 'centres' && ends === null)) return null;
  const now = hand.length - hand.pulled_out + (hand.between === 'centres' ? (ends ?? 0) : 0);
  const out = now - (ordered?.compressed ?? faces);
  return { out, tubeLeft: hand.tube === undefined ? null : hand.tube - out };
}
