/**
 * Gap card: a printed stair of steps, thin to thick, for setting a sensor's air gap. The thin step must go between tooth and tip,
 * the middle one sets the gap, the thick one must not go. Common practice: a go and no-go feeler.
 *
 * Datum: the card lies along x, its foot on z = 0; the outline of the side view is in x and z.
 */

/** One step: its thickness and what it is for, mm. */
export interface GapStep {
  readonly thickness: number;
  readonly use: 'goes' | 'sets' | 'stops';
}

/** Thinnest step that a filament printer makes sound: two layers of 0.2 mm. Common practice. */
export const thinnestStep = 0.4;

/** The steps for a gap and how far it may be off; a step too thin to print is left out. */
export function gapSteps(gap: number, tolerance: number): GapStep[] {
  const steps: GapStep[] = [
    { thickness: gap - tolerance, use: 'goes' },
    { thickness: gap, use: 'sets' },
    { thickness: gap + tolerance, use: 'stops' },
  ];
  return steps.filter(({ thickness }) => thickness >= thinnestStep - 1e-9);
}

/** Length of one step, of the grip, height of the grip over the thickest step, width of the card, mm. */
export const cardSizes = { step: 14, grip: 42, over: 1.2, width: 22 };

/** The side view as closed corners (x, z), counter-clockwise, and where the grip's middle and top are. */
export function gapCardProfile(steps: readonly GapStep[]): {
  readonly corners: readonly (readonly [number, number])[];
  readonly grip: { readonly x: number; readonly top: number };
} {
  const thickest = Math.max(...steps.map(({ thickness }) => thickness));
  const top = thickest + cardSizes.over;
  const end = steps.length * cardSizes.step + cardSizes.grip;
  const stairs = steps.flatMap(({ thickness }, i): [number, number][] => [
    [i * cardSizes.step, thickness],
    [(i + 1) * cardSizes.step, thickness],
  ]);
  const corners: [number, number][] = [
    [0, 0],
    [end, 0],
    [end, top],
    [steps.length * cardSizes.step, top],
    ...stairs.toReversed(),
  ];
  return { corners, grip: { x: end - cardSizes.grip / 2, top } };
}

/** Words for the grip, one line a step: "0.50 GOES". */
export function gapCardWords(steps: readonly GapStep[]): string[] {
  return steps.map(({ thickness, use }) => `${thickness.toFixed(2)} ${use.toUpperCase()}`);
}
