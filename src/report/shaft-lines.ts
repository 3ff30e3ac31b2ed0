/** Key numbers of the shaft: its length, the wedge, the swing of the signal. */
import { studyAngles } from '../rotor/shaft-angles.ts';
import { studyFit } from '../rotor/shaft-fit.ts';
import type { JointWithShaft } from '../rotor/shaft-line.ts';
import { studyShims } from '../rotor/shaft-shims.ts';
import { shimsInShort } from '../rotor/shaft-words.ts';
import { rippleOf } from '../rotor/signal-ripple.ts';
import type { LengthUnits } from '../units/format.ts';
import type { KeyNumber } from './key-numbers.ts';
import { sizeText } from './numbers.ts';

function lengthLines(joint: JointWithShaft, units: LengthUnits): KeyNumber[] {
  const fit = studyFit(joint);
  if (!fit?.ok) return [];
  const size = (mm: number) => sizeText(mm, units, 1);
  const { faces, ends, ordered, doubt, toCut } = fit;
  const centres = ends === null ? '' : `, ${size(faces - ends)} between joint centres`;
  const homeCentres = ends === null || !ordered ? '' : `, ${size(ordered.compressed - ends)} between joint centres`;
  const note = ordered
    ? `face to face, pushed home${homeCentres}; as fitted at ride height ${size(faces)}${centres}; give or take ${size(doubt)}`
    : `face to face as fitted at ride height${centres}; give or take ${size(doubt)}`;
  const cut: KeyNumber[] =
    toCut === null
      ? []
      : [
          {
            label: toCut.out >= 0 ? 'Take out of the shaft' : 'Shaft too short by',
            value: size(Math.abs(toCut.out)),
            note: toCut.tubeLeft === null ? 'of the tube' : `leaves a tube of ${size(toCut.tubeLeft)} weld to weld`,
          },
        ];
  return [{ label: 'Shaft length to order', value: size(ordered?.compressed ?? faces), note }, ...cut];
}

function angleLines(joint: JointWithShaft): KeyNumber[] {
  const study = studyAngles(joint);
  if (!study) return [];
  const shims = studyShims(joint, study);
  const ripple = rippleOf(joint, study);
  const angles = study.angles.map((angle) => `${angle.toFixed(1)}`).join(', ');
  const after = shims?.shims.every(({ by }) => by === 0) ? '' : ` with it ${shims?.after.toFixed(2)} deg;`;
  return [
    ...(shims === null
      ? []
      : [
          {
            label: 'Wedge',
            value: shimsInShort(shims.shims),
            note: `the train runs as one joint at ${study.residual.toFixed(2)} deg;${after} joints at ${angles} deg`,
          },
        ]),
    ...(ripple === null
      ? []
      : [
          {
            label: 'Signal swing by the joints',
            value: `${(100 * ripple.swing).toFixed(2)} %`,
            note: `wheel on the ${ripple.on}, speed wanted of the ${ripple.of}; greatest less least, twice per turn`,
          },
        ]),
  ];
}

/** Length to order, what to cut, wedge and signal swing, as far as the job tells. */
export function shaftLines(joint: JointWithShaft, units: LengthUnits): KeyNumber[] {
  return [...lengthLines(joint, units), ...angleLines(joint)];
}
