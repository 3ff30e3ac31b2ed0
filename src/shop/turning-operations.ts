/** Operations at the lathe, or under a boring head: rough both sides, rest, finish, turn over, finish. */
import type { Joint } from '../job/joint.ts';
import type { WorkFace } from './hole-table.ts';
import { lengthsIn } from './lengths.ts';
import { nothing, type ShopSize, sizesOf, type Unnumbered } from './operation.ts';
import { indicated, otherFace, underneath } from './route.ts';
import { turningCuts } from './turning-cuts.ts';
import { type FinishingPart, finishing, roughing } from './turning-steps.ts';

/** The dial need not show less than this while roughing, mm. Common practice. */
const roughTir = 0.2;

/** How the turned shapes of a side are held. */
function heldTurning(joint: Joint, face: WorkFace, part: FinishingPart | 'rough'): string[] {
  const { setup } = joint.job.adapter;
  const isSecond = part === 'second';
  if (setup === 'edge finder') {
    return [
      joint.adapterSpec.flats
        ? 'Milling vise on the flats; the fixed jaw decides.'
        : 'Milling vise with a V-jaw, or three clamps on the table.',
      'A boring head for bore and register; a rotary table, or the lathe before, for the rim.',
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
  const mm = lengthsIn(joint.job.units);
  const { turnOver, job } = joint;
  const dial = `${indicated(joint)}: turned by hand, the dial moves no more than ${mm(turnOver.tir)} (${turnOver.from}); try for half`;
  const face = `Face of the first side, near the rim: no more than ${mm(0.02)}, else a chip lies under it.`;
  if (job.adapter.setup === 'edge finder') {
    return [
      `Edge finder on ${joint.adapterSpec.flats ? 'both flats, and on the rim the other way' : 'four places of the rim'}; halve each way. Do it twice: the two answers within ${mm(0.02)}.`,
      `Where a dial is at hand, sweep ${dial}.`,
      face,
    ];
  }
  return [`Dial on ${dial}.`, face];
}

/** All turned shapes of the adapter, the side `first` before the other. */
export function turningOperations(joint: Joint, sizes: readonly ShopSize[], first: WorkFace): Unnumbered[] {
  const second = otherFace(first);
  const mm = lengthsIn(joint.job.units);
  const { setup } = joint.job.adapter;
  const machine = setup === 'edge finder' ? ('mill' as const) : ('lathe' as const);
  const rough = (face: WorkFace, rest: readonly string[]): Unnumbered => ({
    ...nothing,
    title: `Rough the ${face} side`,
    machine,
    face,
    held: heldTurning(joint, face, 'rough'),
    zero: ['Face cleaned up: that is Z 0.'],
    indicate: [`Runs true to ${mm(roughTir, 1)}: no more is needed yet.`],
    steps: [...roughing(joint, face), ...rest],
    cuts: turningCuts(joint, 'rough turn', machine === 'lathe'),
  });
  const finish = (face: WorkFace, part: FinishingPart): Unnumbered => ({
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
      ...(joint.adapterSpec.wheelSeat?.face === face ? ['wheel-seat', 'wheel-seat-runout'] : []),
      ...(part === 'second' ? ['thickness', 'register-runout', 'face-parallel'] : ['bore']),
    ]),
    cuts: turningCuts(joint, 'finish turn', machine === 'lathe'),
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
          ...['thickness', 'outside', 'bore', 'wheel-seat', 'wheel-seat-runout', 'register-runout', 'face-parallel'],
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
