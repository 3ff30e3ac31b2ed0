/** What shakes a job's shaft and what of it answers: the numbers of the order chart. */
import { type Order, ordersOf } from '../formulas/orders.ts';
import type { Joint } from '../job/joint.ts';
import { wordsOf } from '../job/wheel-form.ts';
import { mostShare } from '../standards/shaft-speed-rules.ts';
import { studyWhirl } from './shaft-whirl.ts';

export interface ShaftOrders {
  readonly orders: readonly { readonly name: string; readonly perTurn: number }[];
  readonly levels: readonly { readonly name: string; readonly frequency: number }[];
  readonly speeds: readonly { readonly name: string; readonly rpm: number }[];
  readonly bands: readonly { readonly name: string; readonly from: number; readonly to: number | null }[];
}

const short: Readonly<Record<Order['id'], string>> = {
  shaft: 'once a turn: balance, run-out',
  joint: 'twice a turn: joints at an angle',
  tyre: 'once a turn of the wheels',
  engine: 'once a turn of the engine',
  half: 'every second turn of the engine',
  firing: 'engine firing',
  tooth: 'teeth of the speed wheel',
};

const modeNames = ['bending of the shaft', 'second bending of the shaft', 'third bending of the shaft'];

/** Null where the job describes no tube. */
export function shaftOrders(joint: Pick<Joint, 'job' | 'adapterMass' | 'wheelMass' | 'wheelSpec'>): ShaftOrders | null {
  const study = studyWhirl(joint);
  if (!study) return null;
  const { duty, shaft } = joint.job;
  const { engine, cruise } = shaft ?? {};
  const { teeth } = wordsOf(joint.job.wheel);
  const plain = ordersOf({ axle: duty?.tyre?.ratio, teeth: joint.wheelSpec?.teeth });
  const firing = (engine?.gears ?? []).flatMap((gear) =>
    ordersOf({ gear, cylinders: engine?.cylinders })
      .filter(({ id }) => id === 'firing')
      .map(({ perTurn }) => ({ name: `${short.firing}, engine ${Number(gear.toFixed(3))} to 1`, perTurn })),
  );
  // The handbook may be lower than the beam: the chart shows the level that counts.
  const levels = study.modes.map(({ frequency }, i) => ({
    name: modeNames[i] ?? '',
    frequency: i === 0 ? study.critical / 60 : frequency,
  }));
  const { critical, half } = study;
  return {
    orders: [
      ...plain.map(({ id, perTurn }) => ({
        name: id === 'tooth' ? `${teeth} of the speed wheel` : short[id],
        perTurn,
      })),
      ...firing,
    ],
    levels,
    speeds: [
      ...(cruise === undefined ? [] : [{ name: 'cruise', rpm: cruise }]),
      ...(duty?.speed === undefined ? [] : [{ name: 'highest', rpm: duty.speed }]),
    ],
    bands: [
      { name: 'half critical: not for long', from: half.from, to: half.to },
      {
        name: `never: ${Math.round(100 * mostShare)} % of critical`,
        from: mostShare * critical,
        to: null,
      },
    ],
  };
}
