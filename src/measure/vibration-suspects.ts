/** What shakes a driveline: how often, when it is felt, and the next cheap test for each. */
import type { Driveline, OrderId } from '../formulas/orders.ts';

export const whens = ['load', 'coast', 'neutral', 'always', 'standing'] as const;
export type When = (typeof whens)[number];

export const highers = ['grows', 'fades'] as const;
export type Higher = (typeof highers)[number];

/** Does what was felt speak for a suspect, against it, or neither way? */
export type Speaks = 'for' | 'neither' | 'against';

export interface Suspect {
  readonly id: 'balance' | 'angle' | 'stiffness' | 'tyre' | 'firing' | 'misfire' | 'axle' | 'critical';
  readonly name: string;
  /** Orders it shakes with; for the critical speed only while the shaft is near it. */
  readonly orders: readonly OrderId[];
  readonly when: Readonly<Record<When, Speaks>>;
  readonly higher: Readonly<Record<Higher, Speaks>>;
  /** The next cheap test, one sentence or two. */
  readonly test: string;
  /** Where the rule comes from. */
  readonly source: string;
  /** What must be known before its orders can be told. */
  readonly needs: readonly (keyof Driveline)[];
}

const manual = "light-truck workshop manuals' driveline vibration pages";

export const suspects: readonly Suspect[] = [
  {
    id: 'balance',
    name: 'balance or run-out of the shaft',
    orders: ['shaft'],
    when: { load: 'neither', coast: 'for', neutral: 'for', always: 'for', standing: 'against' },
    higher: { grows: 'for', fades: 'neither' },
    test: 'Look for a lost weight, a dent, mud or underseal; then turn the shaft by half a turn on its flange: if the shake changes, it is the shaft on its flange. Dial the tube (0.5 mm at most), then flangewright measure balance.',
    source: manual,
    needs: [],
  },
  {
    id: 'angle',
    name: 'joint angles that do not cancel, or forks out of line',
    orders: ['joint'],
    when: { load: 'for', coast: 'neither', neutral: 'neither', always: 'neither', standing: 'against' },
    higher: { grows: 'for', fades: 'neither' },
    test: 'Lay an inclinometer on engine, shaft and axle, loaded as driven: the angles at both ends should be equal within 1 degree and the forks in line. Then load the bed, or shim the axle by 2 degrees for a trial: the shake must change.',
    source: `${manual}: twice a turn comes from joints and no balancing helps; a joint maker's installation manual`,
    needs: [],
  },
  {
    id: 'stiffness',
    name: 'a stiff or worn joint, or a stiff slip spline',
    orders: ['shaft', 'joint'],
    when: { load: 'for', coast: 'neither', neutral: 'neither', always: 'neither', standing: 'against' },
    higher: { grows: 'neither', fades: 'neither' },
    test: 'Take one end of the shaft off and swing each joint by hand both ways: it must move freely, without a notch and without play. Listen for a knock when the load changes.',
    source: `${manual}; common practice`,
    needs: [],
  },
  {
    id: 'tyre',
    name: 'tyre, rim, brake drum or axle shaft',
    orders: ['tyre'],
    when: { load: 'neither', coast: 'for', neutral: 'for', always: 'for', standing: 'against' },
    higher: { grows: 'neither', fades: 'neither' },
    test: 'Drive at the same road speed in another gear and in neutral: it stays. Swap front and rear wheels: it moves with them. Mind that a heavy tyre shakes twice a turn too.',
    source: `${manual}: tyres answer to speed and not to torque`,
    needs: ['axle'],
  },
  {
    id: 'firing',
    name: 'firing or balance of the engine, through its mounts',
    orders: ['firing', 'engine'],
    when: { load: 'for', coast: 'neither', neutral: 'against', always: 'neither', standing: 'for' },
    higher: { grows: 'neither', fades: 'neither' },
    test: 'Hold the same engine speed standing still in neutral; then drive at the same road speed in another gear. If it follows the engine, look at mounts, exhaust touching the frame, flywheel or converter.',
    source: 'a trade journal on vibration orders: half as many shakes as cylinders, gone when coasting in neutral',
    needs: ['gear'],
  },
  {
    id: 'misfire',
    name: 'one cylinder of the engine',
    orders: ['half'],
    when: { load: 'for', coast: 'neither', neutral: 'against', always: 'neither', standing: 'for' },
    higher: { grows: 'neither', fades: 'for' },
    test: 'Standing still, cut the cylinders one at a time: the one that changes nothing is it.',
    source: 'four-stroke cycle, textbook',
    needs: ['gear'],
  },
  {
    id: 'axle',
    name: 'pinion, its flange or its bearings in the axle',
    orders: ['shaft'],
    when: { load: 'for', coast: 'for', neutral: 'neither', always: 'neither', standing: 'against' },
    higher: { grows: 'neither', fades: 'neither' },
    test: 'Dial the pinion flange (0.10 mm at most on face and bore), feel for play of the pinion. If it shakes with the wheels free on stands without load too, it is not this.',
    source: `${manual}: once a turn and only under torque points into the axle`,
    needs: [],
  },
  {
    id: 'critical',
    name: 'critical speed of the shaft, or half of it',
    orders: ['shaft', 'joint'],
    when: { load: 'neither', coast: 'for', neutral: 'for', always: 'for', standing: 'against' },
    higher: { grows: 'against', fades: 'for' },
    test: 'Never hunt for it by going faster. Work out the speed (shaft.tube in the job), and compare. A band that stays at one shaft speed in every gear is it; a stiffer mount or a larger or shorter tube moves it, balancing does not cure it.',
    source: 'rotor dynamics, textbook',
    needs: [],
  },
];
