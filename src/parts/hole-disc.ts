/**
 * Hole-pattern disc: a thin print of one flange's face, to lay on the flange and see whether the measured pattern is right before
 * anything is made of metal. Screws drop through its holes, its register goes over the spigot or into the recess, its rim is flush.
 *
 * Axes: the disc lies between z = 0 (towards the flange) and z = thickness (towards the eye that looks at the flange's own face).
 * x, y and angles are those of that eye, as they were typed. A boss for a recess reaches below z = 0. Lengths in mm, diameters.
 */
import type { Engraving } from '../model/engraving.ts';
import type { Drilling, Feature, ProfilePoint, TurnedPart } from '../model/part.ts';
import { atan2 } from '../units/trig.ts';
import { gaugeWords, printed } from './fit-ring.ts';
import { type FreeArc, freeArcs, layText, type MeasureText } from './lay-text.ts';

export interface HoleDiscSpec {
  readonly id: string;
  readonly name: string;
  readonly outside: number;
  /** rim: the register lies outside the bolt circle. `doubt` is the half-width of its diameter's limits. */
  readonly register: {
    readonly gender: 'male' | 'female';
    readonly at: 'inner' | 'rim';
    readonly diameter: number;
    readonly doubt: number;
    readonly depth: number;
  } | null;
  /** Free bore of the flange; null when not known. */
  readonly bore: number | null;
  readonly holes: {
    /** Seen looking at the flange's own face; hole 1 first. */
    readonly positions: readonly { readonly x: number; readonly y: number }[];
    /** What goes through: the clear hole's own size, or the thread's major diameter. */
    readonly diameter: number;
    readonly tapped: boolean;
    /** How far a hole may stand from its place, radial. */
    readonly doubt: number;
  };
}

/** The printer's allowances on diameters. */
export interface DiscAllowances {
  readonly holes: number;
  readonly registers: number;
}

export interface DiscMarks {
  /** Words besides the side and FIT CHECK. */
  readonly words: readonly string[];
  readonly measure: MeasureText;
}

/** The disc as it is modelled, and how it lies on the bed. */
export interface HoleDisc {
  readonly part: TurnedPart;
  /** True when the face towards the flange must be up: it carries a boss. */
  readonly upsideDown: boolean;
}

export const discThickness = 2;

const bossHeight = 2;
/** A boss never touches the floor of its recess. */
const floorRoom = 0.3;
const edge = 0.4;
const bossWall = 4;
/** Least ring of material between a hole and an opening in the middle. */
const web = 5;
const letters = { least: 2.5, most: 6, share: 0.6, depth: 0.5 };
const margin = 1;
const indexRadius = 0.8;
/** Width kept for the hole's number beside the index mark, in letter heights to each side. */
const numberRoom = 1.4;

const degrees = (angle: number) => (angle * 180) / Math.PI;

/** Radii of what the disc is made of. `inner`: opening in the middle, or null. */
interface DiscRadii {
  readonly rim: number;
  readonly inner: number | null;
  readonly boss: { readonly r: number; readonly height: number } | null;
}

function radiiOf(spec: HoleDiscSpec, allowances: DiscAllowances, hole: number): DiscRadii {
  const { register, holes } = spec;
  const nearest = Math.min(...holes.positions.map(({ x, y }) => Math.hypot(x, y))) - hole / 2;
  const wanted = spec.bore === null ? nearest - web : Math.min(spec.bore / 2, nearest - web);
  const opening = wanted >= web ? wanted : null;
  if (register?.gender === 'male' && register.at === 'inner') {
    return {
      rim: spec.outside / 2,
      inner: (register.diameter + register.doubt + allowances.registers) / 2,
      boss: null,
    };
  }
  if (register?.gender === 'female') {
    const r = (register.diameter - register.doubt - allowances.registers) / 2;
    // A recess that holds the whole bolting face takes the whole disc.
    if (register.at === 'rim') return { rim: r, inner: opening, boss: null };
    const height = Math.min(bossHeight, register.depth - floorRoom);
    if (height >= 2 * edge)
      return { rim: spec.outside / 2, inner: r > 2 * bossWall ? r - bossWall : null, boss: { r, height } };
  }
  // A spigot wider than the bolt circle: the disc lies on it, flush with its rim.
  const rim = (register?.gender === 'male' ? register.diameter : spec.outside) / 2;
  return { rim, inner: opening, boss: null };
}

/** Ring of the face that carries letters: clear of the holes where one is wide enough, else between them. */
function letterRing(
  spec: HoleDiscSpec,
  { rim, inner, boss }: DiscRadii,
  hole: number,
): { radius: number; height: number; blocked: FreeArc[] } {
  const out = spec.holes.positions.map(({ x, y }) => Math.hypot(x, y));
  const core = boss?.r ?? inner ?? 0;
  const bands = [
    [core, Math.min(...out) - hole / 2],
    [Math.max(...out) + hole / 2, rim - indexRadius],
  ] as const;
  const [from, to] = bands.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
  const tall = (room: number) => Math.max(letters.least, Math.min(letters.most, letters.share * room));
  if (to - from >= letters.least + 2 * margin) return { radius: (from + to) / 2, height: tall(to - from), blocked: [] };
  const radius = (Math.max(core, Math.min(...out) - hole / 2) + Math.min(rim, Math.max(...out) + hole / 2)) / 2;
  const blocked = spec.holes.positions.map(({ x, y }) => {
    const half = degrees((hole / 2 + margin) / radius);
    const at = degrees(atan2(y, x));
    return { from: at - half, to: at + half };
  });
  return { radius, height: tall(Math.min(hole, 2 * (rim - radius))), blocked };
}

function engravingsOf(spec: HoleDiscSpec, radii: DiscRadii, hole: number, { words, measure }: DiscMarks): Engraving[] {
  const { radius, height, blocked } = letterRing(spec, radii, hole);
  const [first] = spec.holes.positions;
  const at = first ? degrees(atan2(first.y, first.x)) : 0;
  const numberHalf = degrees((numberRoom * height) / radius);
  const atHole = blocked.length > 0;
  // Between the holes the number stands just past hole 1, else in line with it.
  const numberAt = atHole ? at + degrees((hole / 2 + margin + height) / radius) : at;
  const free = freeArcs([...blocked, { from: numberAt - numberHalf, to: numberAt + numberHalf }]);
  const surface = radii.boss ? 'bottom' : 'top';
  const z = radii.boss ? 0 : discThickness;
  const side = radii.boss ? 'THIS SIDE TO FLANGE' : 'THIS SIDE OUT';
  const laid = [
    { text: '1', angle: numberAt, height },
    ...layText([side, gaugeWords, ...words], free, radius, height, letters.least, measure),
  ];
  return [
    ...laid.map((text): Engraving => ({ kind: 'text', surface, radius, z, depth: letters.depth, ...text })),
    { kind: 'index', angle: at, radius: radii.rim, zFrom: 0, zTo: discThickness, grooveRadius: indexRadius },
  ];
}

/**
 * The disc of one flange. Holes have the flange's own clear size, or the thread's major diameter and twice the doubt of their places, and
 * the printer's allowance: when the pattern was measured right, screws drop through all of them.
 */
export function buildHoleDisc(spec: HoleDiscSpec, allowances: DiscAllowances, marks: DiscMarks): HoleDisc {
  const { holes } = spec;
  const hole = holes.diameter + allowances.holes + (holes.tapped ? 2 * holes.doubt : 0);
  const radii = radiiOf(spec, allowances, hole);
  const { rim, inner, boss } = radii;
  const low = boss ? 0 - boss.height : 0;
  const straight = (of: string, r: number, from: number): ProfilePoint[] => [
    { z: from, r, of },
    { z: discThickness, r, of },
  ];
  const bossPoints: ProfilePoint[] = boss
    ? [
        { z: low, r: boss.r - edge, of: 'register' },
        { z: low + edge, r: boss.r, of: 'register' },
        { z: 0, r: boss.r, of: 'body' },
      ]
    : [];
  const drillings: Drilling[] = holes.positions.map(({ x, y }, i) => ({
    id: `hole-${i + 1}`,
    feature: 'holes',
    x,
    y,
    profile: straight('holes', hole / 2, 0),
  }));
  const middle = spec.register?.gender === 'male' && spec.register.at === 'inner' ? 'register' : 'opening';
  if (inner !== null)
    drillings.unshift({ id: 'middle', feature: middle, x: 0, y: 0, profile: straight(middle, inner, low) });
  const features: Feature[] = [
    { id: 'body', purpose: 'body', label: 'hole-pattern disc', diameter: 2 * rim },
    { id: 'holes', purpose: 'bolt hole', label: `${holes.positions.length} holes`, diameter: hole },
  ];
  if (boss) features.push({ id: 'register', purpose: 'spigot', label: 'boss for the recess', diameter: 2 * boss.r });
  if (inner !== null) {
    const purpose = middle === 'register' ? 'recess' : 'bore';
    features.push({
      id: middle,
      purpose,
      label: middle === 'register' ? 'opening for the spigot' : 'opening',
      diameter: 2 * inner,
    });
  }
  return {
    upsideDown: boss !== null,
    part: {
      kind: 'turned',
      id: `${spec.id}-disc`,
      name: `${spec.name}, hole-pattern disc`,
      material: printed,
      outer: [...bossPoints, ...straight('body', rim, 0)],
      drillings,
      features,
      engravings: engravingsOf(spec, radii, hole, marks),
    },
  };
}
