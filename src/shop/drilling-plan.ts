/**
 * The drilling of one side as it is done at the machine: tools in their order, every hole with the height that the tool goes down to.
 * Set-up sheets and programs read this one plan. Zero: the middle of the bore, and the face of the side that is worked. mm.
 */
import type { Joint } from '../job/joint.ts';
import { type StartingCut, startingCut } from '../standards/cutting-speeds.ts';
import { findThread } from '../standards/threads.ts';
import { highestOver, levelsOf, spotAngle, tipOf } from './drill-levels.ts';
import { type Cut, type HolePlace, type HoleSet, holeSets, type WorkFace } from './hole-table.ts';

export interface PlanTool {
  /** From 1, in the order of use. */
  readonly number: number;
  readonly op: Cut['op'];
  /** "spot drill 90 deg, 12 mm", "drill 8.5 mm", "tap M8". */
  readonly name: string;
  /** What else would do: an inch drill; or empty. */
  readonly or: string;
  readonly diameter: number;
  readonly cut: StartingCut;
}

export interface PlanHole extends HolePlace {
  /** Metal that the tool meets first, and where its tip stops, as heights over the face. */
  readonly surface: number;
  readonly tip: number;
}

/** One tool in one set of holes. */
export interface PlanStep {
  readonly tool: number;
  readonly letter: string;
  readonly what: string;
  readonly cut: Cut;
  readonly holes: readonly PlanHole[];
  /** Deepest peck, mm; null where the hole is drilled in one go. */
  readonly peck: number | null;
  /** Pitch of the thread; null but for a tap. */
  readonly pitch: number | null;
}

/** A cut that is made elsewhere: dowel holes that are reamed together with their flange. */
export interface LaterCut {
  readonly letter: string;
  readonly what: string;
  readonly cut: Cut;
}

export interface DrillingPlan {
  readonly face: WorkFace;
  /** Highest metal over the face; height that a rapid move never goes below; height of travel from hole to hole. */
  readonly highest: number;
  readonly safe: number;
  readonly travel: number;
  readonly tools: readonly PlanTool[];
  readonly steps: readonly PlanStep[];
  readonly later: readonly LaterCut[];
}

/** The tool stands this far over the highest metal before it is fed down. Common practice. */
const clearance = 2;
/** Holes deeper than this many diameters are drilled in pecks of one diameter. Common practice. */
const peckFrom = 3;
/** Spot drills as they are sold, mm. */
const spotSizes: readonly number[] = [6, 8, 10, 12, 16, 20, 25];

const order: readonly Cut['op'][] = ['spot', 'drill', 'counterbore', 'countersink', 'ream', 'tap'];
const size = (mm: number): string => `${Number(mm.toFixed(3))} mm`;

/** Smallest spot drill that makes every mouth of a side, or the largest there is. */
function spotFor(sets: readonly HoleSet[]): number {
  const widest = Math.max(0, ...sets.flatMap(({ cuts }) => cuts.flatMap((c) => (c.op === 'spot' ? [c.diameter] : []))));
  return spotSizes.find((d) => d >= widest - 1e-9) ?? (spotSizes[spotSizes.length - 1] as number);
}

/** Pitch of a set's thread, mm; 0 where it has none. Throws an Error for a thread that is in no table. */
function pitchOf(joint: Joint, set: HoleSet): number {
  const tap = set.cuts.find((cut) => cut.op === 'tap');
  if (tap?.op !== 'tap') return 0;
  const own = joint.screws.find(({ id }) => id === set.group);
  if (own) return own.pitch;
  const known = findThread(tap.thread);
  if (!known.ok) throw new Error(known.why);
  return known.value.pitch;
}

interface ToolWanted {
  readonly op: Cut['op'];
  readonly name: string;
  readonly or: string;
  readonly diameter: number;
  readonly pitch: number;
}

function toolWanted(joint: Joint, set: HoleSet, cut: Cut, spot: number, pitch: number): ToolWanted {
  const plain = { op: cut.op, or: '', pitch: 0 };
  switch (cut.op) {
    case 'spot':
      return { ...plain, name: `spot drill ${spotAngle} deg, ${size(spot)}`, diameter: spot };
    case 'drill': {
      const names = joint.screws.find(({ id }) => id === set.group)?.drills;
      const name = names?.drill ? names.drill : size(cut.diameter);
      return { ...plain, name: `drill ${name}`, or: names?.orDrill ?? '', diameter: cut.diameter };
    }
    case 'counterbore':
      return { ...plain, name: `counterbore ${size(cut.diameter)}`, or: 'end mill', diameter: cut.diameter };
    case 'countersink':
      return { ...plain, name: `countersink ${cut.angle} deg, ${size(cut.diameter)} or more`, diameter: cut.diameter };
    case 'ream':
      return { ...plain, name: `reamer ${size(cut.diameter)} ${cut.zone}`, diameter: cut.diameter };
    case 'tap': {
      const major = joint.screws.find(({ id }) => id === set.group)?.major;
      const known = findThread(cut.thread);
      return {
        ...plain,
        name: `tap ${cut.thread}`,
        diameter: major ?? (known.ok ? known.value.d : 0),
        pitch,
      };
    }
  }
}

const isLater = (joint: Joint, set: HoleSet, cut: Cut): boolean =>
  cut.op === 'ream' && set.side !== 'wheel' && joint.dowels?.[set.side]?.reamed === 'together';

/** The drilling of one side; null where no hole is worked from there. */
export function drillingPlan(joint: Joint, face: WorkFace): DrillingPlan | null {
  const sets = holeSets(joint).filter(({ from }) => from === face);
  if (sets.length === 0) return null;
  const { tools: made, top_speed: top, travel } = joint.job.adapter.shop;
  const spot = spotFor(sets);
  const cuts = sets
    .flatMap((set) => set.cuts.map((cut) => ({ set, cut })))
    .sort((a, b) => order.indexOf(a.cut.op) - order.indexOf(b.cut.op));
  const tools: PlanTool[] = [];
  const steps: PlanStep[] = [];
  const later: LaterCut[] = [];
  for (const { set, cut } of cuts) {
    const { letter, what } = set;
    if (isLater(joint, set, cut)) {
      later.push({ letter, what, cut });
      continue;
    }
    const pitch = pitchOf(joint, set);
    const wanted = toolWanted(joint, set, cut, spot, pitch);
    let tool = tools.find(({ op, name }) => op === wanted.op && name === wanted.name);
    if (!tool) {
      const { op, name, or, diameter } = wanted;
      const speed = startingCut(joint.adapterMaterial, op, made, diameter, top, op === 'tap' ? pitch : undefined);
      tool = { number: tools.length + 1, op, name, or, diameter, cut: speed };
      tools.push(tool);
    }
    const holes = set.holes.map((hole): PlanHole => {
      const levels = levelsOf(joint, face, hole);
      return { ...hole, surface: levels.surface, tip: tipOf(cut, set, levels, { spot, pitch }) };
    });
    const deepest = Math.max(...holes.map(({ surface, tip }) => surface - tip));
    const isDeep = cut.op === 'drill' && deepest > peckFrom * cut.diameter;
    steps.push({
      tool: tool.number,
      letter,
      what,
      cut,
      holes,
      peck: isDeep ? cut.diameter : null,
      pitch: cut.op === 'tap' ? pitch : null,
    });
  }
  // One tool does all its holes before the next comes in.
  steps.sort((a, b) => a.tool - b.tool);
  const highest = highestOver(joint, face);
  return { face, highest, safe: highest + clearance, travel: highest + travel, tools, steps, later };
}
