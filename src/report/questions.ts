/** The questions of whoever bolts a joint up, and which findings answer each. */
import type { Finding } from '../model/finding.ts';

/** Which checks answer a question: starts of their codes, the one that leads first. */
export interface Question {
  readonly question: string;
  readonly codes: readonly string[];
  /** The finding that tells the chance of it, where there is one. */
  readonly chance?: string;
  /** No link of the joint: it is answered, but what is as bad in the joint itself is told before it. */
  readonly isBesides?: true;
  /** Sizes that are chosen so as to just do: what passes here is not what gives way first. */
  readonly isChosen?: true;
  /** While this one is open the joint is not known to be good. */
  readonly isVital?: true;
}

export const questions: readonly Question[] = [
  {
    question: 'Does it stay centred?',
    codes: ['concentricity', 'face-runout', 'register-', 'dowel-fit', 'faces-seat-first', 'built-runout', 'phasing'],
    chance: 'centring-chance',
    isVital: true,
  },
  {
    question: 'Does it stay balanced?',
    codes: ['joint-unbalance', 'balance-adapter', 'balance-wheel', 'couple-', 'symmetry'],
    chance: 'balance-chance',
    isVital: true,
  },
  {
    question: 'Does it stay tight?',
    codes: [
      'grip-',
      'preload-',
      'head-pressure-',
      'nut-pressure-',
      'thread-stripping',
      'thread-engagement',
      'bolt-pitch-',
      'design-torque',
    ],
    isVital: true,
  },
  {
    question: 'Is the metal strong enough?',
    codes: [
      'torsion',
      'ring-shear',
      'bolt-shear-',
      'bearing-',
      'plate-bending-',
      'head-web-shear-',
      'dowel-shear',
      'dowel-work-',
      'burst-',
      'shaft-torsion',
      'shaft-twist',
    ],
    isVital: true,
  },
  {
    question: 'Does the shaft stay below its critical speed?',
    codes: ['shaft-critical-speed', 'shaft-half-critical', 'shaft-orders'],
  },
  {
    question: 'Does the shaft fit?',
    codes: ['shaft-length', 'shaft-plunge', 'spline-engagement', 'shaft-to-cut', 'mock-up-thickness'],
    isBesides: true,
  },
  {
    question: 'Are the joint angles right?',
    codes: ['train-residual', 'angle-reading', 'joint-angle-', 'needle-angle', 'angle-difference', 'angle-signs'],
    isBesides: true,
  },
  {
    question: 'Can the sensor read the wheel?',
    codes: [
      'tooth-',
      'valley-width',
      'wheel-thickness',
      'wheel-magnetic',
      'sensor-',
      'signal-',
      'wheel-runout',
      'wheel-room',
      'missing-teeth',
      'position-mark',
    ],
    isBesides: true,
  },
  {
    question: 'Does the controller read true?',
    codes: ['reading-error'],
    isBesides: true,
  },
  {
    question: 'Does the bracket hold the sensor?',
    codes: ['bracket-'],
    isBesides: true,
  },
  {
    question: 'Can it be made, and does it go together?',
    codes: [
      'web-',
      'wall-',
      'thickness',
      'clocking',
      'holes-clear',
      'head-below-face',
      'head-in-pocket',
      'heads-clear-',
      'nuts-clear-',
      'heads-below-roots',
      'room-behind-flange',
      'tool-room',
      'assembly-order',
      'screw-length',
      'thread-in-flange',
      'bolt-reaches-nut',
      'screw-class',
      'dowel-press-',
      'dowel-length-',
      'dowel-room-',
      'dowel-web-',
      'dowel-setting-',
      'wheel-size',
      'wheel-goes-on',
      'wheel-clears-flange',
      'wheel-heads-clear-flange',
      'root-web',
      'rim-below-roots',
      'window-rim',
      'sheet-',
      'built-size',
      'built-verdict',
    ],
    isChosen: true,
  },
];

/** Whether a finding speaks to a question. */
export const speaksTo = ({ codes }: Question, { code }: Pick<Finding, 'code'>): boolean =>
  codes.some((start) => code.startsWith(start));

/** Whether a finding tells the chance of what another one judges at its worst: the same sums told again. */
export const isChance = ({ code }: Pick<Finding, 'code'>): boolean => questions.some(({ chance }) => chance === code);
