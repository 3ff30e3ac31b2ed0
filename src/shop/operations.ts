/**
 * The route as plain data: operation by operation, how the part is held, what the dial must show, what is cut in which order, where to
 * stop and measure, and what to do when it is off.
 */
import type { Joint } from '../job/joint.ts';
import { drillingPlan } from './drilling-plan.ts';
import type { WorkFace } from './hole-table.ts';
import { lengthsIn } from './lengths.ts';
import { drillingOperation, flatting } from './mill-operations.ts';
import { nothing, type Operation, type ShopSize, sizesOf, type Unnumbered } from './operation.ts';
import { firstSide, otherFace, stockOf } from './route.ts';
import { turningOperations } from './turning-operations.ts';

export interface Route {
  readonly first: WorkFace;
  readonly why: string;
  readonly operations: readonly Operation[];
}

function sawing(joint: Joint): Unnumbered {
  const mm = lengthsIn(joint.job.units);
  const stock = stockOf(joint);
  const isOne = joint.job.adapter.setup === 'one chucking';
  return {
    ...nothing,
    title: 'Stock',
    machine: 'saw',
    held: ['Saw vise.'],
    steps: [
      `Saw ${joint.adapterMaterial.name}, round, ${mm(stock.diameter)} or more, ${mm(stock.length)} long, ${(stock.mass / 1000).toFixed(2)} kg.`,
      `The finished part is ${mm(joint.adapterSpec.outside, 2)} by ${mm(stock.overall, 2)} over all${isOne ? '; 25 mm are for the jaws' : ''}.`,
      'Write the heat or batch number of the bar on the sheet.',
    ],
  };
}

/**
 * The whole route of the adapter.
 * @param sizes the adapter's sizes with their limits, as the inspection record numbers them
 */
export function routeOf(joint: Joint, sizes: readonly ShopSize[]): Route {
  const { face: first, why } = firstSide(joint);
  const plans = [first, otherFace(first)].flatMap((face) => {
    const plan = drillingPlan(joint, face);
    return plan ? [plan] : [];
  });
  // A vise holds by the flats from the first cut on; a chuck does not need them until the holes are drilled.
  const byVise = joint.job.adapter.setup === 'edge finder';
  const list: Unnumbered[] = [
    sawing(joint),
    ...(byVise ? flatting(joint) : []),
    ...turningOperations(joint, sizes, first),
    ...(byVise ? [] : flatting(joint)),
    ...plans.map((plan, i) => drillingOperation(joint, sizes, plan, i === 0 ? null : (plans[0] ?? null))),
    {
      ...nothing,
      title: 'Deburr and inspect',
      machine: 'bench',
      held: ['By hand, on a clean plate.'],
      steps: [
        'Stone both faces lightly: a burr of a hair lifts a flange.',
        'Wash, dry, let it come to room temperature. Fill in the inspection record, registers first.',
        'Mark the revision and the index mark on the rim, where no flange covers it.',
        'Oil it, or what the order says. Pack the registers so that nothing knocks them.',
      ],
      ...sizesOf(sizes, ['adapter-mass']),
    },
  ];
  return { first, why, operations: list.map((operation, i) => ({ number: 10 * (i + 1), ...operation })) };
}
