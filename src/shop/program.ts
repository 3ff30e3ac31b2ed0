/** The drilling program of one side, from the same plan as the set-up sheet. A starting point for who knows the machine. */
import type { Joint } from '../job/joint.ts';
import type { Program, ProgramCut, ProgramTool, Stroke } from '../model/program.ts';
import type { DrillingPlan, PlanStep, PlanTool } from './drilling-plan.ts';

/** What stands in every program, before the first move. */
const safety: readonly string[] = [
  'A STARTING POINT, NOT A PROVEN PROGRAM. READ IT THROUGH.',
  'SPEEDS AND FEEDS ARE SUGGESTIONS. CLAMPS MUST STAND BELOW THE TRAVEL HEIGHT.',
  'RUN THE DRY COPY FIRST, THEN THIS ONE BLOCK BY BLOCK, A HAND ON THE FEED HOLD. NEVER LEAVE IT ALONE.',
];

export interface ProgramOptions {
  readonly title: string;
  readonly revision: string;
  /** What a failing job's files say; empty where nothing fails. */
  readonly warning: string;
  /** The copy that moves above the work with the spindle at rest. */
  readonly dry: boolean;
}

const strokeOf = ({ cut, peck }: PlanStep): Stroke =>
  cut.op === 'tap' ? 'tap' : cut.op === 'ream' ? 'feed out' : peck === null ? 'plain' : 'peck';

const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

/** "T2 drill 8.5 mm, 820 rpm, 98 mm/min" */
const tableLine = ({ number, name, cut }: PlanTool): string =>
  `T${number} ${name}, ${cut.rpm} RPM, ${Number(cut.feed.toFixed(3))} MM/MIN`;

const tapWords = ({ letter, what, cut }: PlanStep): string =>
  cut.op === 'tap'
    ? `TAP ${cut.thread} ${cut.depth === null ? 'RIGHT THROUGH' : `${mm(cut.depth)} DEEP`}: SET ${letter}, ${what}`
    : '';

function markWords(face: DrillingPlan['face']): string {
  return face === 'driven'
    ? 'DRIVEN SIDE UP. THE INDEX MARK LIES TO THE RIGHT, AT X PLUS.'
    : 'DRIVING SIDE UP. TURNED OVER LIKE A PAGE: THE INDEX MARK LIES TO THE LEFT, AT X MINUS.';
}

/**
 * The program of a side.
 * @param plan the drilling of that side, as the set-up sheet has it
 */
export function drillingProgram(joint: Joint, plan: DrillingPlan, options: ProgramOptions): Program {
  const { cycles, tap_cycle: taps } = joint.job.adapter.shop;
  const { title, revision, warning, dry } = options;
  const byHand = taps ? [] : plan.steps.filter(({ cut }) => cut.op === 'tap');
  const done = plan.steps.filter((step) => !byHand.includes(step));
  const lowest = Math.min(...done.flatMap(({ holes }) => holes.map(({ tip }) => tip)));
  // The dry copy is the same path, lifted until its lowest point is over the highest metal.
  const lift = dry ? Math.ceil(plan.safe - lowest) : 0;
  const toolsOf = plan.tools.filter(({ number }) => done.some(({ tool }) => tool === number));
  const tools = toolsOf.map(
    ({ number, name, diameter, cut }): ProgramTool => ({ number, name, diameter, rpm: dry ? 0 : cut.rpm }),
  );
  const cuts = done.map((step): ProgramCut => {
    const stroke = strokeOf(step);
    const feed = plan.tools.find(({ number }) => number === step.tool)?.cut.feed ?? 0;
    return {
      tool: step.tool,
      title: `${step.letter}, ${step.what}, ${step.cut.op}`,
      // A spindle at rest cannot tap: the dry copy shows the way of it only.
      stroke: dry && stroke === 'tap' ? 'plain' : stroke,
      feed,
      peck: step.peck,
      holes: step.holes.map(({ tag, x, y, tip }) => ({ tag, x, y, z: tip + lift })),
    };
  });
  const later = plan.later.map(
    ({ letter, what, cut }) => `${letter}, ${what}: ${cut.op} LATER, TOGETHER WITH THE FLANGE. NOT IN THIS PROGRAM.`,
  );
  return {
    header: [
      ...(warning === '' ? [] : [warning]),
      `${title}: adapter, ${plan.face} side, holes`,
      `REVISION ${revision}`,
      ...(dry ? [`DRY COPY: SPINDLE AT REST, EVERY HEIGHT RAISED BY ${mm(lift)}. NOTHING IS CUT.`] : []),
      ...safety,
      'ZERO G54: X0 Y0 IN THE MIDDLE OF THE INDICATED BORE OR REGISTER, Z0 ON THE FACE THAT IS WORKED, NOT ON A SPIGOT.',
      markWords(plan.face),
      `MILLIMETRES. HIGHEST METAL Z ${mm(plan.highest)}, SAFE HEIGHT Z ${mm(plan.safe + lift)}, TRAVEL Z ${mm(plan.travel + lift)}.`,
      ...(done.some(({ cut }) => cut.op !== 'tap' && 'depth' in cut && cut.depth === null)
        ? ['DRILLS COME OUT BELOW. PARALLELS AND TABLE MUST STAND CLEAR OF THE HOLES.']
        : []),
      'LENGTH OF EACH TOOL IN THE TABLE OF THE MACHINE. RAISE THE SPINDLE BEFORE A TOOL IS CHANGED BY HAND.',
      ...later,
      'TOOLS',
      ...toolsOf.map(tableLine),
    ],
    tools,
    cuts,
    safe: plan.safe + lift,
    travel: plan.travel + lift,
    start: ['SPINDLE OVER THE MIDDLE OF THE BORE? HEIGHT RIGHT? ELSE STOP HERE.'],
    stops: dry ? [] : byHand.map((step) => `${tapWords(step)}. BY HAND.`),
    canned: cycles === 'canned',
  };
}
