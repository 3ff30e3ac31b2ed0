/**
 * The route as plain data: operation by operation, how the part is held, what the dial must show, what is cut in which order, where to
 * stop and measure, and what to do when it is off. Words are those of the bench; sizes in mm.
 */
import type { Joint } from '../job/joint.ts';
import { type DrillingPlan, drillingPlan } from './drilling-plan.ts';
import type { WorkFace } from './hole-table.ts';
import { clocked, firstSide, indicated, otherFace, stockOf, underneath } from './route.ts';
import { throughHole } from './through-hole.ts';
import { type TurningCut, turningCuts } from './turning-cuts.ts';
import { type FinishingPart, finishing, roughing } from './turning-steps.ts';

/** A size to stop at: its number is its line in the inspection record. */
export interface ShopSize {
  readonly number: number;
  readonly id: string;
  readonly part: 'adapter' | 'wheel';
  readonly what: string;
  readonly lower: number;
  readonly upper: number;
  readonly unit: 'mm' | 'g';
  readonly gauge: string;
  readonly mend: 'too large' | 'too small' | 'never';
  readonly verb: string;
}

export interface Operation {
  /** 10, 20, ...: room between for what a shop adds. */
  readonly number: number;
  readonly title: string;
  readonly machine: 'saw' | 'lathe' | 'mill' | 'bench';
  /** Side that is up, or towards the tool; null where that makes no difference. */
  readonly face: WorkFace | null;
  readonly held: readonly string[];
  readonly zero: readonly string[];
  /** What the dial runs on, and the reading to reach. */
  readonly indicate: readonly string[];
  readonly steps: readonly string[];
  readonly measure: readonly ShopSize[];
  readonly off: readonly string[];
  /** Speeds and feeds of turning to start from. */
  readonly cuts: readonly TurningCut[];
  readonly plan: DrillingPlan | null;
}

export interface Route {
  readonly first: WorkFace;
  readonly why: string;
  readonly operations: readonly Operation[];
}

const mm = (value: number, decimals = 3): string => `${value.toFixed(decimals)} mm`;
/** The dial need not show less than this while roughing, mm. Common practice. */
const roughTir = 0.2;

const nothing = { face: null, zero: [], indicate: [], measure: [], off: [], cuts: [], plan: null };

/** What is done where nothing more can be taken off. */
const whenToStop =
  'Off with metal left: take off half of what is missing, cold, and measure again. Where it says stop: enter what you found under built: in the job and run check before more is cut. It tells what can be saved.';

function sizesOf(sizes: readonly ShopSize[], ids: readonly string[]): Pick<Operation, 'measure' | 'off'> {
  const measure = sizes.filter(({ id, part }) => part === 'adapter' && ids.includes(id));
  return { measure, off: measure.length > 0 ? [whenToStop] : [] };
}

function sawing(joint: Joint): Omit<Operation, 'number'> {
  const stock = stockOf(joint);
  const isOne = joint.job.adapter.setup === 'one chucking';
  return {
    ...nothing,
    title: 'Stock',
    machine: 'saw',
    held: ['Saw vise.'],
    steps: [
      `Saw ${joint.adapterMaterial.name}, round, ${stock.diameter} mm or more, ${stock.length} mm long, ${(stock.mass / 1000).toFixed(2)} kg.`,
      `The finished part is ${mm(joint.adapterSpec.outside, 2)} by ${mm(stock.overall, 2)} over all${isOne ? '; 25 mm are for the jaws' : ''}.`,
      'Write the heat or batch number of the bar on the sheet.',
    ],
  };
}

/** Flats come before everything that is held by them; angles count from the index mark, which is scribed now. */
function flatting(joint: Joint): Omit<Operation, 'number'>[] {
  const { flats } = joint.adapterSpec;
  if (!flats) return [];
  return [
    {
      ...nothing,
      title: 'Mill the flats',
      machine: 'mill',
      face: 'driven',
      held: ['Clamped on the table or in a vise with V-jaws, driven side up.'],
      zero: ['X 0, Y 0 in the middle of the part.'],
      steps: [
        `Two flats, ${mm(flats.across, 2)} across, both ${mm(flats.across / 2, 2)} from the middle, over the whole height.`,
        'Mill both without letting go: they are parallel only then.',
        `Scribe the index mark across the rim. Seen from the driven side, the way out through the first flat is ${flats.angle.toFixed(2)} degrees counter-clockwise from it.`,
      ],
    },
  ];
}

/** How the turned shapes of a side are held. */
function heldTurning(joint: Joint, face: WorkFace, part: FinishingPart | 'rough'): string[] {
  const { setup } = joint.job.adapter;
  const isSecond = part === 'second';
  if (setup === 'edge finder') {
    return [
      joint.adapterSpec.flats
        ? 'Milling vise on the flats; the fixed jaw decides.'
        : 'Milling vise with a V-jaw, or three clamps on the table.',
      ...(part === 'rough' ? [] : [underneath(joint, face)]),
    ];
  }
  if (part === 'rough') return ['Three-jaw chuck, hard jaws, on the raw rim.'];
  if (!isSecond) return ['Three-jaw chuck on the roughed rim, soft jaws or copper under the jaws.'];
  return [
    setup === 'three jaw'
      ? 'Three-jaw chuck on the finished rim, soft jaws bored to the rim. Jaw 1 where jaw 1 was: mark it.'
      : 'Four-jaw chuck, or three-jaw with shims, on the finished rim, copper under the jaws.',
    underneath(joint, face).replace('parallels', 'the steps of the jaws').replace('flat on', 'flat against'),
  ];
}

/** What the dial must show. */
function indicateSecond(joint: Joint): string[] {
  const { turnOver, job } = joint;
  const dial = `${indicated(joint)}: turned by hand, the dial moves no more than ${mm(turnOver.tir)} (${turnOver.from}); try for half`;
  const face = 'Face of the first side, near the rim: no more than 0.02 mm, else a chip lies under it.';
  if (job.adapter.setup === 'edge finder') {
    return [
      'Edge finder on both flats or on four places of the rim; halve each way. Do it twice: the two answers within 0.02 mm.',
      `Where a dial is at hand, sweep ${dial}.`,
      face,
    ];
  }
  return [`Dial on ${dial}.`, face];
}

function turningOperations(joint: Joint, sizes: readonly ShopSize[], first: WorkFace): Omit<Operation, 'number'>[] {
  const second = otherFace(first);
  const { setup } = joint.job.adapter;
  const machine = setup === 'edge finder' ? ('mill' as const) : ('lathe' as const);
  const rough = (face: WorkFace, rest: readonly string[]): Omit<Operation, 'number'> => ({
    ...nothing,
    title: `Rough the ${face} side`,
    machine,
    face,
    held: heldTurning(joint, face, 'rough'),
    zero: ['Face cleaned up: that is Z 0.'],
    indicate: [`Runs true to ${mm(roughTir, 1)}: no more is needed yet.`],
    steps: [...roughing(joint, face), ...rest],
    cuts: turningCuts(joint, 'rough turn'),
  });
  const finish = (face: WorkFace, part: FinishingPart): Omit<Operation, 'number'> => ({
    ...nothing,
    title: part === 'second' ? `Turn over, finish the ${face} side` : `Finish the ${face} side`,
    machine,
    face,
    held: heldTurning(joint, face, part),
    zero: ['X 0 on the axis. Z 0 on the finished face of this side, not on a spigot.'],
    indicate:
      part === 'second'
        ? indicateSecond(joint)
        : [
            `Rim or rough bore true to ${mm(roughTir / 4, 2)}; once the bore is cut, everything of this chucking runs with it.`,
          ],
    steps: finishing(joint, face, part),
    ...sizesOf(sizes, [
      `${face}-register`,
      `${face}-depth`,
      'outside',
      ...(joint.adapterSpec.wheelSeat?.face === face ? ['wheel-seat'] : []),
      ...(part === 'second' ? ['thickness', 'register-runout', 'face-parallel'] : ['bore']),
    ]),
    cuts: turningCuts(joint, 'finish turn'),
  });
  if (setup === 'one chucking') {
    const whole = finish(first, 'only');
    return [
      {
        ...whole,
        title: 'Turn everything in one chucking',
        held: [
          'Three-jaw chuck on the spare end of the stock. The part is not let go until both registers are finished.',
          `The ${second} side is the one next to the jaws: a neck thinner than its register is left standing there.`,
        ],
        indicate: ['Nothing: both registers, both faces and the bore come from one chucking.'],
        steps: [
          ...roughing(joint, first),
          `Behind the part, with a left-hand tool or a hooked bar: rough the ${second} side down to the neck. Where the register or the bore leaves no neck that holds, this way does not work: write adapter.setup: indicated.`,
          'Let it cool; with the chuck untouched, take the finishing cuts.',
          ...finishing(joint, first, 'first'),
          ...finishing(joint, second, 'only'),
          'Part off at the neck last of all, 0.3 mm proud; face the stub off in soft jaws. Nothing is located by that spot.',
        ],
        ...sizesOf(sizes, [
          ...['driving', 'driven'].flatMap((side) => [`${side}-register`, `${side}-depth`]),
          ...['thickness', 'outside', 'bore', 'wheel-seat', 'register-runout', 'face-parallel'],
        ]),
      },
    ];
  }
  return [
    rough(first, []),
    rough(second, [
      'Rest: take it out of the jaws and leave it, overnight if you can. What moves, moves now and not after the last cut.',
    ]),
    finish(first, 'first'),
    finish(second, 'second'),
  ];
}

function drillingOperation(
  joint: Joint,
  sizes: readonly ShopSize[],
  plan: DrillingPlan,
  before: DrillingPlan | null,
): Omit<Operation, 'number'> {
  const { face } = plan;
  const { flats } = joint.adapterSpec;
  const { tir } = joint.turnOver;
  return {
    ...nothing,
    title: before ? `Turn over, drill the ${face} side` : `Drill the ${face} side`,
    machine: 'mill',
    face,
    held: [
      flats
        ? `Milling vise on the flats, ${mm(flats.across, 2)} across.`
        : 'Three-jaw chuck on the table, or three clamps on the face, clear of every hole.',
      underneath(joint, face),
      ...(before ? ['Turned over like the page of a book: what was right is now left, what was up is still up.'] : []),
    ],
    zero: [
      'X 0, Y 0 in the middle of the bore (or of the register, or of the rim, where there is no bore). Z 0 on the face of this side, not on a spigot.',
      ...clocked(joint, face, before === null, before ? throughHole(joint, before, face) : ''),
    ],
    indicate: [
      `Dial in the spindle, swept round ${indicated(joint)}: no more than ${mm(Math.max(0.02, tir / 2))}. Then set the read-out to zero, and do not lean on the table.`,
    ],
    steps: [
      'Spot every hole first; count them and hold a steel rule to two of them before the first drill goes in.',
      'One tool does all its holes, column by column, in the order of the list.',
      ...(plan.steps.some(({ cut }) => cut.op === 'drill' && cut.diameter > 13)
        ? ['Drills over 13 mm: go through with one of half the diameter first (common practice).']
        : []),
      ...(plan.steps.some(({ cut }) => cut.op === 'tap')
        ? ['Tap under the spindle, started straight by it, with tapping oil; half a turn back for each turn in.']
        : []),
      ...plan.later.map(
        ({ letter, what }) => `Set ${letter}, ${what}: drilled here, reamed later together with its flange.`,
      ),
      'Break every edge by 0.5 mm, both ends; no burr may stand on a face.',
    ],
    ...sizesOf(
      sizes,
      joint.screws
        .filter(({ id }) => plan.steps.some(({ holes }) => holes.some(({ drilling }) => drilling.startsWith(`${id}-`))))
        .map(({ side }) => `${side}-holes`),
    ),
    plan,
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
  const list: Omit<Operation, 'number'>[] = [
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
