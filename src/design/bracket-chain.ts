/**
 * Lengths along the bracket's strip, and where its foot begins, by form. All in the plane of the bends: q from the teeth along the
 * sensor, p towards the bolts. The ear's seat is the face z = 0 of the blank.
 */
import type { FramePoint } from '../formulas/frame-vibration.ts';
import type { BracketInput } from '../job/schema-bracket.ts';
import type { BracketBend } from '../parts/bracket.ts';
import { axialRadius, hasWindows, type ToothBand } from '../parts/tone-wheel.ts';
import { cos, sin } from '../units/trig.ts';
import { type Designed, designed, trouble } from './trouble.ts';

/** What the lengths follow from. */
export interface ChainInput {
  readonly input: BracketInput;
  readonly gap: number;
  /** Which way the sensor looks: at the axis, or along it. */
  readonly direction: 'radial' | 'axial';
  readonly bend: { readonly radius: number; readonly k: number; readonly die: { readonly leastFlange: number } | null };
  /** From the bolts to the free end, from them to the bend at least, and from the sensor to the arm's end. */
  readonly sizes: { readonly footEdge: number; readonly footTail: number; readonly armEdge: number };
  readonly wheel: ToothBand & { readonly thickness: number };
}

export interface Chain {
  readonly bends: readonly BracketBend[];
  readonly straights: readonly number[];
  /** Where the blank's origin goes, the way its x runs, and its face z = thickness looks. */
  readonly origin: FramePoint;
  readonly e: FramePoint;
  readonly n: FramePoint;
  /** Stand-offs or shims under the foot, mm. */
  readonly packing: number;
}

/** Where the bolts are in the plane: to the pad's face and to the row, whichever lies which way. */
function boltsAt({ input, wheel, direction }: ChainInput): FramePoint {
  const { along, from_axis: out } = input.bolts;
  // Beside the teeth's middle on the rim; beside their mean radius on the face.
  return direction === 'radial' ? { p: along, q: out - wheel.outside / 2 } : { p: out - axialRadius(wheel), q: along };
}

/** Heading e; the face z = thickness looks to its left. */
const headed = (p: number, q: number): Pick<Chain, 'e' | 'n'> => ({ e: { p, q }, n: { p: 0 - q, q: p + 0 } });

/** Lengths of the strip for its form. */
export function chainFor(about: ChainInput): Designed<Chain> {
  const at = boltsAt(about);
  if (at.p <= 0) {
    const where =
      about.direction === 'radial'
        ? 'the middle of the teeth'
        : `the middle of the ${hasWindows(about.wheel) ? 'windows' : 'teeth'}, measured from the axis`;
    return trouble(
      distancePath(about),
      `The bolts must lie beyond ${where}: this is the side that bracket.towards names.`,
    );
  }
  const seat = about.gap + about.input.sensor.reach;
  switch (about.input.form) {
    case 'flat':
      return flat(about, at, seat);
    case 'angle':
      return angle(about, at, seat);
    case 'offset':
      return offset(about, at, seat);
    case 'channel':
      return channel(about, at, seat);
  }
}

/** The keys that move the bolts up or down, and to or fro. */
const heightPath = ({ direction }: ChainInput) => `bracket.bolts.${direction === 'radial' ? 'from_axis' : 'along'}`;
const distancePath = ({ direction }: ChainInput) => `bracket.bolts.${direction === 'radial' ? 'along' : 'from_axis'}`;

/** A plate level with the ear's seat, on stand-offs. */
function flat({ input, sizes }: ChainInput, at: FramePoint, seat: number): Designed<Chain> {
  return designed({
    bends: [],
    straights: [sizes.footEdge + at.p + sizes.armEdge],
    origin: { p: at.p + sizes.footEdge, q: seat },
    ...headed(-1, 0),
    packing: seat - input.thickness - at.q,
  });
}

/** The foot stands up the face at p, the arm runs over the teeth. */
function angle(about: ChainInput, at: FramePoint, seat: number): Designed<Chain> {
  const { input, bend, sizes } = about;
  const { thickness: t } = input;
  const { radius: r, k } = bend;
  const arm = at.p - t - r + sizes.armEdge;
  if (arm <= 0)
    return trouble(
      distancePath(about),
      `The face for the bolts is ${at.p.toFixed(1)} mm from the sensor's axis: too near for a bend of ${r} mm inside radius.`,
    );
  const bent = (direction: 'up' | 'down'): BracketBend[] => [{ angle: 90, direction, radius: r, k }];
  const below = seat - t - r - at.q;
  const above = at.q - seat - r;
  if (below > 0)
    return designed({
      bends: bent('up'),
      straights: [sizes.footEdge + below, arm],
      origin: { p: at.p, q: at.q - sizes.footEdge },
      ...headed(0, 1),
      packing: 0,
    });
  if (above > 0)
    return designed({
      bends: bent('down'),
      straights: [sizes.footEdge + above, arm],
      origin: { p: at.p - t, q: at.q + sizes.footEdge },
      ...headed(0, -1),
      packing: 0,
    });
  return trouble(
    heightPath(about),
    `The row of bolts lies level with the sensor's seat, where the bend is (${at.q.toFixed(1)} and ${seat.toFixed(1)} mm over the teeth): use form: flat or offset, or bolt it lower or higher.`,
  );
}

/** Angles that an offset may have, steepest first. */
const offsetAngles = [90, 60, 45, 30];

function offset(about: ChainInput, at: FramePoint, seat: number): Designed<Chain> {
  const { input, bend, sizes } = about;
  const { thickness: t } = input;
  const { radius: r, k } = bend;
  const rise = seat - (at.q + input.packing + t);
  const web = (degrees: number): number => {
    const a = (degrees * Math.PI) / 180;
    return (Math.abs(rise) - (2 * r + t) * (1 - cos(a))) / sin(a);
  };
  const between = (degrees: number) => web(degrees) + ((degrees * Math.PI) / 180) * (r + k * t);
  const possible = offsetAngles.filter((degrees) => web(degrees) > 0);
  const chosen =
    input.angle !== 'auto'
      ? input.angle
      : (possible.find((degrees) => between(degrees) >= (bend.die?.leastFlange ?? 0)) ?? possible.at(-1));
  if (chosen === undefined || web(chosen) <= 0)
    return trouble(
      chosen === undefined ? heightPath(about) : 'bracket.angle',
      `The step is ${Math.abs(rise).toFixed(2)} mm, too low for two bends of ${r} mm inside radius${chosen === undefined ? '' : ` at ${chosen} degrees`}: use form: flat with stand-offs, change bracket.packing, or a smaller bracket.angle.`,
    );
  const a = (chosen * Math.PI) / 180;
  const run = (2 * r + t) * sin(a) + web(chosen) * cos(a);
  const foot = sizes.footEdge + sizes.footTail;
  const arm = at.p + sizes.footEdge - foot - run + sizes.armEdge;
  if (arm <= sizes.armEdge)
    return trouble(
      distancePath(about),
      `Foot and step need ${(foot - sizes.footEdge + run + sizes.armEdge).toFixed(1)} mm from bolts to sensor and have ${at.p.toFixed(1)} mm: use form: channel, or bolt it farther away.`,
    );
  const [first, second] = rise > 0 ? (['down', 'up'] as const) : (['up', 'down'] as const);
  return designed({
    bends: [
      { angle: chosen, direction: first, radius: r, k },
      { angle: chosen, direction: second, radius: r, k },
    ],
    straights: [foot, web(chosen), arm],
    origin: { p: at.p + sizes.footEdge, q: at.q + input.packing + t },
    ...headed(-1, 0),
    packing: input.packing,
  });
}

function channel(about: ChainInput, at: FramePoint, seat: number): Designed<Chain> {
  const { input, bend, sizes } = about;
  const { thickness: t } = input;
  const { radius: r, k } = bend;
  const web = seat - (at.q + input.packing) - 2 * (r + t);
  if (web <= 0)
    return trouble(
      heightPath(about),
      `A channel here is ${(seat - at.q - input.packing).toFixed(1)} mm high; two bends alone take ${(2 * (r + t)).toFixed(1)} mm: use form: offset or flat, or bolt it lower.`,
    );
  const foot = sizes.footEdge + sizes.footTail;
  const bent: BracketBend = { angle: 90, direction: 'up', radius: r, k };
  return designed({
    bends: [bent, bent],
    straights: [foot, web, at.p + sizes.footTail + sizes.armEdge],
    origin: { p: at.p - sizes.footEdge, q: at.q + input.packing },
    ...headed(1, 0),
    packing: input.packing,
  });
}
