/** Does the tube of the shaft bear the design torque, and how far does it twist? */
import { tubeTwist } from '../formulas/shaft-tube.ts';
import type { Joint } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import { torsionSafety, tubeStrength, tubeStress } from '../rotor/shaft-choices.ts';
import { type ShaftToBend, shaftOf } from '../rotor/shaft-whirl.ts';
import { twistDegrees, twistDiameters } from '../standards/shaft-speed-rules.ts';
import { type Check, judged, notAssessed } from './check.ts';
import { torqueInWords, torqueMissing, torqueOf } from './duty-torque.ts';
import { plain, sourced } from './words.ts';

const feature = 'shaft-tube';
const stressWords = { code: 'shaft-torsion', feature, title: 'torsion of the tube of the shaft' };
const twistWords = { code: 'shaft-twist', feature, title: 'twist of the shaft under the design torque' };
const stressSource = 'textbook torsion; von Mises; a safety of 1.5 is common practice';
const twistSource = 'textbook torsion; one degree in twenty diameters is a handbook rule, from memory';

const gave = {
  yields: 'yields in shear',
  'yields beside the weld': 'yields in shear beside the weld, where the heat softens it (EN 1999-1-1, from memory)',
  buckles: 'buckles in torsion, half of the theory for a tube without dents (from memory)',
} as const;

function stressFinding(shaft: ShaftToBend, torque: number, words: string): Finding {
  const { size, metal } = shaft;
  const { gives, how } = tubeStrength(size, metal);
  return judged(
    {
      ...stressWords,
      unit: 'MPa',
      why: `Under ${words}, at the outside of the tube of ${plain(size.outside, 1)} x ${plain(size.wall, 2)} mm. ${metal.name[0]?.toUpperCase()}${metal.name.slice(1)} ${gave[how]} at ${plain(gives, 0)} MPa. Welds, forks and joints are not judged.`,
      cure: 'Take a thicker wall (shaft.tube.wall), a larger tube (shaft.tube.outside) or a stronger metal (shaft.tube.material).',
      improve: 'A thicker wall or a larger tube (shaft.tube).',
      source: sourced(stressSource, metal.memory || how !== 'yields'),
    },
    tubeStress(size, torque),
    { limit: gives / torsionSafety, sense: 'at most', hard: gives },
  );
}

function twistFinding(shaft: ShaftToBend, torque: number, words: string): Finding {
  const { size, metal, length } = shaft;
  return judged(
    {
      ...twistWords,
      unit: 'deg',
      why: `Under ${words} over the whole ${plain(length, 0)} mm, taken as tube. One degree in ${twistDiameters} diameters is hardly felt; more is a spring between engine and wheels.`,
      cure: 'Take a larger tube (shaft.tube.outside) if the drive jerks when the load comes and goes; strength is judged by the stress.',
      source: sourced(twistSource, metal.memory),
    },
    tubeTwist(size, torque, length, metal.shearModulus),
    { limit: (twistDegrees * length) / (twistDiameters * size.outside), sense: 'at most', worst: 'caution' },
  );
}

/** Judges nothing where the job describes no tube. */
export const shaftTorsion: Check = {
  id: 'shaft-torsion',
  title: 'Torsion of the shaft',
  source: 'textbook torsion; von Mises',
  run: (joint: Joint) => {
    const shaft = shaftOf(joint);
    if (!shaft) return [];
    const torque = torqueOf(joint);
    if (!torque) {
      const why = 'Stress and twist hang on the torque.';
      return [
        notAssessed({ ...stressWords, why, missing: torqueMissing, source: stressSource }),
        notAssessed({ ...twistWords, why, missing: torqueMissing, source: twistSource }),
      ];
    }
    const words = torqueInWords(torque);
    return [stressFinding(shaft, torque.value, words), twistFinding(shaft, torque.value, words)];
  },
};
