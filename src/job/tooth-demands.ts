/** Sizes of a wheel's teeth against what the sensor needs: one list, read by the checks and by the choice of a tooth count. mm. */
import type { Verdict } from '../model/finding.ts';
import { hasWindows, type ToneWheelSpec, type ToothMeasures } from '../parts/tone-wheel.ts';
import type { Need, SensorNeeds } from './sensor-needs.ts';

/** A data sheet's reference target is a recommendation: within this share of it the sensor may still read. Common practice. */
const mayStillRead = 0.2;

/** How far off a quarter turn the two channels of a direction sensor may be, degrees, for a counter to follow safely. Common practice. */
export const phaseSafe = 45;

/** One size held against what the sensor needs. */
export interface ToothDemand {
  readonly code: string;
  readonly title: string;
  readonly value: number;
  readonly need: Need;
  readonly sense: 'at least' | 'at most';
  /** Beyond this it fails; between limit and this it cautions. */
  readonly hard: number;
  readonly worst: Verdict;
}

type Wanted = Pick<ToothDemand, 'code' | 'title' | 'value' | 'sense'> & {
  readonly need: Need | null;
  readonly worst?: Verdict;
};

/** What the sizes are called on open teeth, and on windows. */
const openNames = {
  tooth: 'tooth width at the tip',
  valley: 'valley width at the tip',
  height: 'tooth height',
  pitch: 'tooth pitch along the tips',
};
const windowNames: typeof openNames = {
  tooth: 'bar width in the middle of the windows',
  valley: 'window width in its middle',
  height: 'window height',
  pitch: 'pitch along the middle of the windows',
};

/**
 * Demands of the sensor on the teeth, where it looks at them; what nobody states is left out.
 * A mark counts where it makes a size worse: valley and pitch beside an extra tooth, the length of a wide one.
 * @param sizes nominal measures of the teeth
 * @param wheel thickness of the sheet, mm, and its rim where it has windows
 */
export function toothDemands(
  sizes: Pick<
    ToothMeasures,
    'toothChord' | 'toothArc' | 'mostToothArc' | 'leastValleyChord' | 'height' | 'pitch' | 'leastPitch'
  >,
  wheel: Pick<ToneWheelSpec, 'thickness' | 'rim'>,
  needs: SensorNeeds,
): ToothDemand[] {
  const { toothChord, toothArc, mostToothArc, leastValleyChord, height, pitch, leastPitch } = sizes;
  const names = hasWindows(wheel) ? windowNames : openNames;
  const beside = leastPitch < pitch ? `, beside the extra ${hasWindows(wheel) ? 'bar' : 'tooth'}` : '';
  const isWide = mostToothArc > toothArc;
  const tooth = { title: names.tooth, value: toothChord };
  const wanted: Wanted[] = [
    { ...tooth, code: 'tooth-width', need: needs.of('tooth'), sense: 'at least' },
    {
      code: 'tooth-width-most',
      title: isWide ? `length of the wide ${hasWindows(wheel) ? 'bar' : 'tooth'}` : names.tooth,
      value: isWide ? mostToothArc : toothChord,
      need: needs.of('toothMost'),
      sense: 'at most',
      worst: 'caution',
    },
    {
      code: 'valley-width',
      title: `${names.valley}${beside}`,
      value: leastValleyChord,
      need: needs.of('valley'),
      sense: 'at least',
    },
    { code: 'tooth-height', title: names.height, value: height, need: needs.of('height'), sense: 'at least' },
    {
      code: 'tooth-pitch',
      title: `${names.pitch}${beside}`,
      value: leastPitch,
      need: needs.of('pitch'),
      sense: 'at least',
    },
    {
      code: 'wheel-thickness',
      title: 'wheel thickness',
      value: wheel.thickness,
      need: needs.of('thickness'),
      sense: 'at least',
    },
  ];
  return wanted.flatMap(({ need, worst = 'fail', ...rest }) => {
    if (need === null) return [];
    const share = need.isOwn ? 0 : mayStillRead;
    const hard = need.value * (rest.sense === 'at least' ? 1 - share : 1 + share);
    // What rests on memory is no ground to scrap a wheel on; but two elements a pitch apart see one and the same, whoever says so.
    const isSoft = need.memory && rest.code !== 'tooth-pitch';
    return [{ ...rest, need, hard, worst: isSoft ? 'caution' : worst }];
  });
}

/** The narrowest that the cutter has to leave or to clear: teeth and valleys at both ends, a mark among them. mm */
export const narrowestCut = ({
  toothRootChord,
  toothChord,
  leastValleyRootArc,
  leastValleyChord,
}: Pick<ToothMeasures, 'toothRootChord' | 'toothChord' | 'leastValleyRootArc' | 'leastValleyChord'>): number =>
  Math.min(toothRootChord, toothChord, leastValleyRootArc, leastValleyChord);

/** What a demand comes to. */
export function demandVerdict({ value, need, sense, hard, worst }: ToothDemand): Verdict {
  const sign = sense === 'at least' ? 1 : -1;
  if (sign * (value - need.value) >= -1e-6) return 'pass';
  return sign * (value - hard) >= -1e-6 ? 'caution' : worst;
}
