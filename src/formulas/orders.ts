/** How often each thing in a driveline shakes for one turn of the shaft, and when that meets a frequency. rpm, Hz. */

export const orderIds = ['shaft', 'joint', 'tyre', 'engine', 'firing', 'half', 'tooth'] as const;
export type OrderId = (typeof orderIds)[number];

/** One thing that shakes. */
export interface Order {
  readonly id: OrderId;
  /** "twice a turn of the shaft" */
  readonly name: string;
  /** Shakes in one turn of the shaft, > 0. */
  readonly perTurn: number;
}

/** What is known of what the shaft hangs on; each part left out leaves its orders out. */
export interface Driveline {
  /** Shaft turns for one turn of the wheels, > 0. */
  readonly axle?: number | undefined;
  /** Engine turns for one turn of the shaft, > 0. */
  readonly gear?: number | undefined;
  /** Of a four-stroke engine. */
  readonly cylinders?: number | undefined;
  /** Teeth of the speed wheel on the shaft. */
  readonly teeth?: number | undefined;
}

/**
 * Orders of a driveline: once a turn (balance, run-out), twice (each joint at an angle: kinematics of the joint), once a turn of the
 * wheels, and the engine's: once a turn, a half (one cylinder of a four-stroke), and half its cylinders (firing evenly).
 */
export function ordersOf({ axle, gear, cylinders, teeth }: Driveline): Order[] {
  const known = <T>(value: T | undefined, make: (value: T) => readonly Order[]): readonly Order[] =>
    value === undefined ? [] : make(value);
  return [
    { id: 'shaft', name: 'once a turn of the shaft', perTurn: 1 },
    { id: 'joint', name: 'twice a turn of the shaft', perTurn: 2 },
    ...known(axle, (ratio) => [{ id: 'tyre', name: 'once a turn of the wheels', perTurn: 1 / ratio }]),
    ...known(gear, (ratio) => [
      { id: 'engine', name: 'once a turn of the engine', perTurn: ratio },
      { id: 'half', name: 'every second turn of the engine', perTurn: ratio / 2 },
      ...known(cylinders, (count): Order[] => [
        { id: 'firing', name: 'with every firing of the engine', perTurn: (ratio * count) / 2 },
      ]),
    ]),
    ...known(teeth, (count) => [{ id: 'tooth', name: 'with every tooth of the wheel', perTurn: count }]),
  ];
}

/** Frequency of an order at a speed of the shaft, Hz. */
export function frequencyAt({ perTurn }: Pick<Order, 'perTurn'>, rpm: number): number {
  return (perTurn * rpm) / 60;
}

/** Speed of the shaft at which an order reaches a frequency, rpm. */
export function speedAt({ perTurn }: Pick<Order, 'perTurn'>, frequency: number): number {
  return (60 * frequency) / perTurn;
}

/** Speed of the shaft on the road, rpm. @param roadSpeed m/s @param rolled one turn of the wheel rolls so far, mm @param axle ratio of the axle */
export function shaftSpeedOnRoad(roadSpeed: number, rolled: number, axle: number): number {
  return ((60 * 1000 * roadSpeed) / rolled) * axle;
}
