/** The height of a wheel's teeth or windows where it is left open: what the sensor asks for, and what is kept in hand for the cut. mm. */
import type { JobInput } from './schema.ts';
import { heldOnContour } from './schema-sheet.ts';
import type { WheelInput } from './schema-wheel.ts';
import { sensorNeeds } from './sensor-needs.ts';

/** What judges the teeth. */
export type Judges = Pick<Partial<JobInput>, 'sensor' | 'sheet'>;

/** Height of teeth where nothing asks for more, mm. Common practice: data sheets ask for 2 to 5. */
const usualHeight = 4;
/** Height of teeth or windows that are read from the side by a pole that nobody states, mm. Common practice. */
const usualSideHeight = 6;
/** What run-out moves them across a pole, both ways, mm. Common practice. */
const runoutAcross = 1;
/** Heights are chosen in steps of this, mm. */
const heightStep = 0.5;

/**
 * What is kept in hand of a height or a width that the sensor asks for, mm. Each of its two edges may be cut as far from where it is drawn as the
 * service holds (sheet.tolerance, else what one service publishes for the thickness), and both towards each other at worst; so drawn by twice
 * that over the least, a size is never cut under it. Geometry; that both edges may be at their limits is the cautious side.
 */
export const cutInHand = ({ thickness }: Pick<WheelInput, 'thickness'>, { sheet }: Judges): number =>
  2 * heldOnContour(sheet ?? {}, thickness);

/** A height and where it comes from. */
export interface ChosenHeight {
  readonly value: number;
  /** The height without anything in hand for the cut: where space is short, no less than this. */
  readonly least: number;
  /** What of the height is kept in hand for the cut, mm; 0 where nothing is asked that a cut could miss. */
  readonly inHand: number;
  readonly from: string;
  /** Rests on a figure that no source confirms. */
  readonly memory: boolean;
}

/**
 * Height of the teeth, or of the windows, where the job gives neither height nor root: what the sensor needs and what the cut may take of it, rounded
 * up to half a mm. Seen from the side it is the pole and all that moves past it; where nobody tells, a usual one (common practice, and said so).
 */
export function chosenHeight(wheel: WheelInput, judges: Judges): ChosenHeight {
  const { sensor } = judges;
  const windows = wheel.form === 'windows';
  const need = sensor ? sensorNeeds(sensor).of('height') : null;
  const isAxial = windows || sensor?.direction === 'axial';
  const { pole, bearing_play: play = 0, travel = 0 } = sensor ?? {};
  const hand = cutInHand(wheel, judges);
  const asked = [
    ...(need
      ? [
          {
            bare: need.value,
            inHand: hand,
            from: `what ${need.isOwn ? 'the data sheet of the sensor asks for' : 'this kind of sensor needs; its own data sheet stands before it'}`,
            memory: need.memory,
          },
        ]
      : []),
    ...(isAxial && pole !== undefined
      ? [
          {
            bare: pole + 2 * (play + travel) + runoutAcross,
            inHand: hand,
            from: 'the pole and what moves past it, seen from the side; 1 mm of it for run-out is common practice',
            memory: false,
          },
        ]
      : []),
  ];
  const usual = isAxial && pole === undefined ? usualSideHeight : usualHeight;
  const known =
    asked.length > 0
      ? asked
      : [
          {
            bare: usual,
            inHand: 0,
            from: 'common practice, for nobody tells what the sensor needs',
            memory: false,
          },
        ];
  const corners = (windows ? 2 : 1) * wheel.root_radius + wheel.tip_break;
  const all = [
    ...known,
    {
      bare: corners + heightStep,
      inHand: 0,
      from: 'room for its rounds (wheel.root_radius, wheel.tip_break)',
      memory: false,
    },
    ...(windows
      ? [{ bare: wheel.thickness, inHand: 0, from: 'no narrower than the sheet is thick, as it is cut', memory: false }]
      : []),
  ];
  const { from, memory, bare, inHand } = all.reduce((a, b) => (b.bare + b.inHand > a.bare + a.inHand ? b : a));
  const stepped = (height: number) => Math.ceil(height / heightStep - 1e-9) * heightStep;
  const least = stepped(Math.max(...all.map((one) => one.bare)));
  return { value: Math.max(least, stepped(bare + inHand)), least, inHand, from, memory };
}

/** Heights that may be chosen, the one with enough in hand first, in steps down to the least. */
export const heightsToTry = ({ value, least }: ChosenHeight): number[] =>
  Array.from({ length: Math.round((value - least) / heightStep) + 1 }, (_, i) => value - i * heightStep);
