/**
 * Sensor bracket: a strip of sheet with a foot that is bolted down and an arm that carries the sensor, flat or with one or two bends.
 * Pure: measures in, the flat blank out, with its bend lines.
 *
 * Datum of the blank: x along the strip from the foot's free end, y across from its middle, sheet between z = 0 and z = thickness.
 * The sensor's ear lies on the face z = 0. `foldOf` (geometry) makes the bends. Source: plane geometry; neutral fibre method for the
 * lengths of bends.
 */
import { bendAllowance } from '../formulas/bending.ts';
import { leastGap, pointInContour } from '../geometry/contour.ts';
import type { Feature, PartMaterial } from '../model/part.ts';
import type { BendLine, Contour, SheetPart } from '../model/sheet.ts';
import { type RoundedCorner, roundedPolygon } from './rounded-corners.ts';

/** A bend of the strip, in the order of x. */
export interface BracketBend {
  readonly angle: number;
  readonly direction: 'up' | 'down';
  readonly radius: number;
  readonly k: number;
}

/** Every dimension of a bracket, decided. mm, degrees. */
export interface BracketSpec {
  readonly id: string;
  readonly name: string;
  readonly material: PartMaterial;
  readonly thickness: number;
  readonly bends: readonly BracketBend[];
  /** Lengths of the straights between the bends, one more than there are bends; the first is the foot, the last the arm. */
  readonly straights: readonly number[];
  readonly foot: {
    readonly width: number;
    /** From the free end to the row of bolts. */
    readonly edge: number;
    /** Distance of the two bolts, diameter of their holes, and how far the bracket can be pushed along its slots, in all. */
    readonly spacing: number;
    readonly hole: number;
    readonly travel: number;
  };
  readonly arm: {
    readonly width: number;
    /** From the sensor's axis to the free end. */
    readonly edge: number;
  };
  readonly sensor: {
    readonly bore: number;
    readonly ear: {
      readonly distance: number;
      readonly hole: number;
      readonly towards: 'end' | 'across' | 'foot';
      /** Which way an ear across the strip points: 1 towards +y of the blank (left out: that), -1 towards -y. */
      readonly side?: 1 | -1;
    } | null;
  };
  /** Cuts beside the first bend where the arm is narrower than the foot; depth from where the bend begins. */
  readonly relief: { readonly width: number; readonly depth: number } | null;
  /** Radius of outside corners. */
  readonly corner: number;
  /** Width of the cut to allow for: the outline grows and holes shrink by half of it. Left out: none. */
  readonly kerf?: number;
}

/** Length of the blank, mm. */
export function blankLength({ straights, bends, thickness }: BracketSpec): number {
  const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
  return sum(straights) + sum(bends.map((bend) => bendAllowance(bend, thickness)));
}

/** Where along x the sensor's axis stands. */
export function sensorAt(spec: BracketSpec): number {
  return blankLength(spec) - spec.arm.edge;
}

/** Centre of the hole for the ear's screw on the blank. */
export function earAt(spec: BracketSpec): { x: number; y: number } | null {
  const { ear } = spec.sensor;
  if (!ear) return null;
  const x = sensorAt(spec);
  if (ear.towards === 'across') return { x, y: (ear.side ?? 1) * ear.distance };
  return { x: ear.towards === 'end' ? x + ear.distance : x - ear.distance, y: 0 };
}

/** How far the foot's shoulders stand behind the start of the first bend: half a thickness, clear of the die's round. */
const shoulderSetBack = 0.5;

/** Why a bracket cannot be drawn at all, as sentences; empty when it can. */
export function bracketFaults(spec: BracketSpec): string[] {
  const faults = faultsOfSizes(spec);
  return faults.length > 0 ? faults : faultsOfHoles(draw(spec));
}

/** Holes that run into one another or out of the part. */
function faultsOfHoles({ outside, holes, features }: SheetPart): string[] {
  const name = (hole: Contour) => features.find(({ id }) => id === hole.feature)?.label ?? hole.feature;
  const corner = (hole: Contour) => (hole.kind === 'circle' ? { x: hole.x + hole.r, y: hole.y } : hole.vertices[0]);
  const within = (hole: Contour, other: Contour) => {
    const at = corner(hole);
    return at !== undefined && pointInContour(other, at.x, at.y);
  };
  return holes.flatMap((hole, i) => [
    ...(within(hole, outside) && leastGap(hole, outside).gap > 0 ? [] : [`The ${name(hole)} runs out of the sheet.`]),
    ...holes
      .slice(0, i)
      .filter((other) => within(hole, other) || within(other, hole) || leastGap(hole, other).gap <= 0)
      .map((other) => `The ${name(hole)} runs into the ${name(other)}.`),
  ]);
}

function faultsOfSizes(spec: BracketSpec): string[] {
  const { straights, bends, foot, arm, thickness, relief } = spec;
  const { ear } = spec.sensor;
  const faults: string[] = [];
  if (straights.length !== bends.length + 1) faults.push('There must be one straight more than there are bends.');
  straights.forEach((length, i) => {
    if (!(length > 0)) faults.push(`Straight ${i + 1} has no length (${length.toFixed(2)} mm).`);
  });
  const clear = foot.edge + foot.travel / 2 + foot.hole / 2;
  if (clear >= (straights[0] ?? 0)) faults.push('The slots run out of the foot.');
  if (foot.spacing + foot.hole >= foot.width) faults.push('The bolt holes run out of the foot.');
  if (spec.sensor.bore >= Math.min(arm.width, 2 * arm.edge)) faults.push("The sensor's bore runs out of the arm.");
  const reach = Math.max(spec.sensor.bore / 2, ear?.towards === 'foot' ? ear.distance + ear.hole / 2 : 0);
  if (bends.length > 0 && (straights.at(-1) ?? 0) - arm.edge <= reach)
    faults.push("The sensor's bore or the hole of its ear runs into the bend: it needs the bolts farther away.");
  if (bends.length === 0 && arm.width !== foot.width) faults.push('A flat bracket has one width.');
  if (arm.width > foot.width) faults.push('The arm is wider than the foot.');
  if (arm.width < foot.width && relief && arm.width / 2 + relief.width + thickness / 2 > foot.width / 2)
    faults.push('There is no room for relief cuts beside the arm.');
  if (
    relief &&
    relief.depth + thickness / 2 > (straights[0] ?? 0) - clear &&
    arm.width / 2 + relief.width + thickness / 2 > (foot.spacing - foot.hole) / 2
  )
    faults.push('The relief cuts run into the slots.');
  if (relief && relief.width <= (spec.kerf ?? 0)) faults.push('The relief cuts are narrower than the cut itself.');
  if (relief && relief.depth >= (straights[0] ?? 0)) faults.push('The relief cuts are longer than the foot.');
  return faults;
}

/** The blank. Features: `bracket-outline`, `bracket-bolt-1`, `-2`, `bracket-sensor`, `bracket-ear`. @throws naming the faults */
export function buildBracket(spec: BracketSpec): SheetPart {
  const faults = bracketFaults(spec);
  if (faults.length > 0) throw new Error(`Bracket ${spec.id}: ${faults.join(' ')}`);
  return draw(spec);
}

function draw(spec: BracketSpec): SheetPart {
  const { foot, sensor, kerf = 0 } = spec;
  const features: Feature[] = [{ id: 'bracket-outline', purpose: 'body', label: 'bracket outline' }];
  const holes: Contour[] = [];
  for (const [i, side] of [-1, 1].entries()) {
    const id = `bracket-bolt-${i + 1}`;
    const label = foot.travel > 0 ? `bolt slot ${i + 1}` : `bolt hole ${i + 1}`;
    features.push({ id, purpose: 'bolt hole', label, diameter: foot.hole });
    holes.push(slot(id, foot.edge, (side * foot.spacing) / 2, (foot.hole - kerf) / 2, foot.travel / 2));
  }
  features.push({ id: 'bracket-sensor', purpose: 'bore', label: 'sensor bore', diameter: sensor.bore });
  holes.push({ kind: 'circle', feature: 'bracket-sensor', x: sensorAt(spec), y: 0, r: (sensor.bore - kerf) / 2 });
  const ear = earAt(spec);
  if (ear && sensor.ear) {
    const diameter = sensor.ear.hole;
    features.push({ id: 'bracket-ear', purpose: 'screw hole', label: "hole for the ear's screw", diameter });
    holes.push({ kind: 'circle', feature: 'bracket-ear', ...ear, r: (diameter - kerf) / 2 });
  }
  return {
    kind: 'sheet',
    id: spec.id,
    name: spec.name,
    material: spec.material,
    thickness: spec.thickness,
    outside: { kind: 'path', feature: 'bracket-outline', vertices: roundedPolygon(outline(spec)) },
    holes,
    features,
    engravings: [],
    ...(spec.bends.length > 0 ? { bends: bendLines(spec) } : {}),
  };
}

/** A hole drawn out along x by `half` both ways, clockwise; a circle where there is nothing to draw out. */
function slot(feature: string, x: number, y: number, r: number, half: number): Contour {
  if (half < 1e-9) return { kind: 'circle', feature, x, y, r };
  const corner = (dx: number, dy: number, bulge: number) => ({ x: x + dx, y: y + dy, bulge });
  return {
    kind: 'path',
    feature,
    vertices: [corner(-half, r, 0), corner(half, r, -1), corner(half, -r, 0), corner(-half, -r, -1)],
  };
}

/** Middle lines of the bends, from edge to edge of the arm. */
function bendLines(spec: BracketSpec): BendLine[] {
  const half = spec.arm.width / 2;
  let x = 0;
  return spec.bends.map((bend, i) => {
    const allowance = bendAllowance(bend, spec.thickness);
    x += spec.straights[i] ?? 0;
    const middle = x + allowance / 2;
    x += allowance;
    return { id: `bend-${i + 1}`, from: { x: middle, y: -half }, to: { x: middle, y: half }, ...bend };
  });
}

/** The outline counter-clockwise: along the lower edge to the arm's end, and back along the upper one. */
function outline(spec: BracketSpec): RoundedCorner[] {
  const { foot, arm, relief, thickness, kerf = 0 } = spec;
  const half = kerf / 2;
  const length = blankLength(spec) + half;
  const [wide, narrow] = [foot.width / 2 + half, arm.width / 2 + half];
  const corner = spec.corner > 0 ? spec.corner + half : 0;
  const bendStart = spec.straights[0] ?? 0;
  const shoulder = bendStart - shoulderSetBack * thickness + half;
  const lower: RoundedCorner[] = [{ x: -half, y: -wide, r: corner }];
  if (arm.width < foot.width && relief) {
    const bottom = bendStart - relief.depth + half;
    const cut = relief.width - kerf;
    lower.push(
      { x: shoulder, y: -wide, r: corner },
      { x: shoulder, y: -narrow - cut, r: 0 },
      { x: bottom, y: -narrow - cut, r: cut / 2 },
      { x: bottom, y: -narrow, r: cut / 2 },
    );
  }
  lower.push({ x: length, y: -narrow, r: corner });
  return [...lower, ...lower.toReversed().map(({ x, y, r }) => ({ x, y: -y, r }))];
}
