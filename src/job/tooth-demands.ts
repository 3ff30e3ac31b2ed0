/** Sizes of a wheel's teeth against what the sensor needs: one list, read by the checks and by the choice of a tooth count. mm. */
import type { Verdict } from '../model/finding.ts';
import type { ToothMeasures } from '../parts/tone-wheel.ts';
import type { Need, SensorNeeds } from './sensor-needs.ts';

/** A data sheet's reference target is a recommendation: within this share of it the sensor may still read. Common practice. */
const mayStillRead = 0.2;

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

/**
 * Demands of the sensor on the teeth; what nobody states is left out.
 * @param sizes nominal measures of the teeth
 * @param thickness of the sheet, mm
 */
export function toothDemands(
  sizes: Pick<ToothMeasures, 'toothChord' | 'valleyChord' | 'height' | 'pitch'>,
  thickness: number,
  needs: SensorNeeds,
): ToothDemand[] {
  const { toothChord, valleyChord, height, pitch } = sizes;
  const tooth = { title: 'tooth width at the tip', value: toothChord };
  const wanted: Wanted[] = [
    { ...tooth, code: 'tooth-width', need: needs.of('tooth'), sense: 'at least' },
    { ...tooth, code: 'tooth-width-most', need: needs.of('toothMost'), sense: 'at most', worst: 'caution' },
    {
      code: 'valley-width',
      title: 'valley width at the tip',
      value: valleyChord,
      need: needs.of('valley'),
      sense: 'at least',
    },
    { code: 'tooth-height', title: 'tooth height', value: height, need: needs.of('height'), sense: 'at least' },
    {
      code: 'tooth-pitch',
      title: 'tooth pitch along the tips',
      value: pitch,
      need: needs.of('pitch'),
      sense: 'at least',
    },
    {
      code: 'wheel-thickness',
      title: 'wheel thickness',
      value: thickness,
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

/** What a demand comes to. */
export function demandVerdict({ value, need, sense, hard, worst }: ToothDemand): Verdict {
  const sign = sense === 'at least' ? 1 : -1;
  if (sign * (value - need.value) >= -1e-6) return 'pass';
  return sign * (value - hard) >= -1e-6 ? 'caution' : worst;
}
