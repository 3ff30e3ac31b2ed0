/**
 * The print-first mock-up: the same adapter with the printer's allowances, engraved so that nobody drives it.
 * Allowances are diametral: holes and recesses grow by them, spigots and the wheel seat shrink. Lengths stay, because the mock-up is
 * there to be measured.
 */
import type { Engraving } from '../model/engraving.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import { buildAdapter } from './adapter.ts';
import type { AdapterSpec, HoleGroupSpec, RegisterSpec } from './adapter-spec.ts';
import { layText, type FreeArc, type MeasureText } from './lay-text.ts';
import { buildToneWheel, type ToneWheelSpec } from './tone-wheel.ts';

/** What every mock-up says. */
export const warning = 'FIT CHECK - DO NOT DRIVE';

/** Printer allowances on diameters, mm. */
export interface PrintAllowances {
  /** Added to every hole, bore and pocket. */
  readonly holes: number;
  /** Added to recesses, taken off spigots. */
  readonly registers: number;
}

/** How the mock-up is marked. */
export interface MockUpMarks {
  /** Words besides the warning, most important first: the part's name, or that checks failed. */
  readonly words: readonly string[];
  /** Width of a text at a cap height, mm. */
  readonly measure: MeasureText;
}

/** Depth of engraved letters, radius of the index groove, mm: plain to see in a filament print. */
const letterDepth = 0.6;
const grooveRadius = 0.8;
/** Letters are between these cap heights, mm, and take at most this share of the band they stand on. */
const letters = { least: 2.5, most: 8, share: 0.62 };
/** Kept free on each side of the index mark and the flats, mm. */
const margin = 3;

function printedGroup(group: HoleGroupSpec, holes: number): HoleGroupSpec {
  const { shape } = group;
  if (shape.kind === 'tapped') {
    return { ...group, shape: { ...shape, tapDrill: shape.tapDrill + holes, major: shape.major + holes } };
  }
  const { head } = shape;
  const wider = head.kind === 'surface' ? head : { ...head, diameter: head.diameter + holes };
  return { ...group, shape: { ...shape, diameter: shape.diameter + holes, head: wider } };
}

function printedRegister(register: RegisterSpec | null, allowance: number): RegisterSpec | null {
  if (!register) return null;
  const diameter = register.diameter + (register.gender === 'female' ? allowance : -allowance);
  return { ...register, diameter, limits: { lower: diameter, upper: diameter, zone: 'printed' } };
}

/** The adapter's measures with the printer's allowances in. */
export function printedSpec(spec: AdapterSpec, { holes, registers }: PrintAllowances): AdapterSpec {
  return {
    ...spec,
    name: `${spec.name} mock-up`,
    bore: spec.bore === null ? null : spec.bore + holes,
    registers: {
      driving: printedRegister(spec.registers.driving, registers),
      driven: printedRegister(spec.registers.driven, registers),
    },
    groups: spec.groups.map((group) => printedGroup(group, holes)),
    wheelSeat: spec.wheelSeat && { ...spec.wheelSeat, diameter: spec.wheelSeat.diameter - registers },
  };
}

/** The tallest plain cylinder at the largest radius of a turned part. */
function rimBand(part: TurnedPart): { radius: number; low: number; high: number } {
  const radius = Math.max(...part.outer.map((p) => p.r));
  let best = { radius, low: 0, high: 0 };
  part.outer.forEach((b, i) => {
    const a = part.outer[i - 1];
    if (a && a.r === radius && b.r === radius && b.z - a.z > best.high - best.low) best = { radius, low: a.z, high: b.z };
  });
  return best;
}

/** Stretches of the rim that carry letters: all round, less the index mark at 0 and the flats. Degrees. */
function freeRim(part: TurnedPart, radius: number): FreeArc[] {
  const degrees = (length: number) => ((length / radius) * 180) / Math.PI;
  const mark = degrees(grooveRadius + margin);
  if (!part.flats || part.flats.across >= 2 * radius) return [{ from: mark, to: 360 - mark }];
  const half = (Math.acos(part.flats.across / 2 / radius) * 180) / Math.PI + degrees(margin / 2);
  const { angle } = part.flats;
  const normal = ((angle % 180) + 180) % 180;
  return [
    { from: mark, to: normal - half },
    { from: normal + half, to: normal + 180 - half },
    { from: normal + 180 + half, to: 360 - mark },
  ].filter((arc) => arc.to > arc.from);
}

/** The adapter as it is printed. */
export function adapterMockUp(spec: AdapterSpec, allowances: PrintAllowances, marks: MockUpMarks): TurnedPart {
  const part = buildAdapter(printedSpec(spec, allowances));
  const { radius, low, high } = rimBand(part);
  const height = Math.min(letters.most, letters.share * (high - low));
  const texts = layText([warning, ...marks.words, warning], freeRim(part, radius), radius, Math.max(letters.least, height), letters.least, marks.measure);
  const bottom = Math.min(...part.outer.filter((p) => p.r > radius / 2).map((p) => p.z));
  const top = Math.max(...part.outer.filter((p) => p.r > radius / 2).map((p) => p.z));
  const engravings: Engraving[] = [
    { kind: 'index', angle: 0, radius, zFrom: bottom, zTo: top, grooveRadius },
    ...texts.map(
      (text): Engraving => ({ kind: 'text', surface: 'rim', radius, z: (low + high) / 2, depth: letterDepth, ...text }),
    ),
  ];
  return {
    ...part,
    engravings,
    features: [...part.features, { id: 'index-mark', purpose: 'index mark', label: 'index mark at the clocking zero' }],
  };
}

/** The wheel as it is printed: nominal teeth, wider holes, letters on its upper face. */
export function wheelMockUp(spec: ToneWheelSpec, allowances: PrintAllowances, marks: MockUpMarks): SheetPart {
  const part = buildToneWheel({
    ...spec,
    kerf: 0,
    name: `${spec.name} mock-up`,
    bore: spec.bore + allowances.registers,
    screwHoles: spec.screwHoles && { ...spec.screwHoles, diameter: spec.screwHoles.diameter + allowances.holes },
  });
  const { radius, height, arcs } = wheelBand(spec);
  const texts = layText([warning, ...marks.words, warning], arcs, radius, height, letters.least, marks.measure);
  const z = spec.thickness;
  const depth = Math.min(letterDepth, spec.thickness / 3);
  return { ...part, engravings: texts.map((text) => ({ kind: 'text', surface: 'top', radius, z, depth, ...text })) };
}

/** Ring of the wheel's face that carries letters: clear of the screw holes if one is wide enough, else between them. */
function wheelBand(spec: ToneWheelSpec): { radius: number; height: number; arcs: FreeArc[] } {
  const holes = spec.screwHoles?.positions ?? [];
  const circle = holes.length > 0 ? Math.hypot((holes[0] as { x: number }).x, (holes[0] as { y: number }).y) : 0;
  const hole = (spec.screwHoles?.diameter ?? 0) / 2;
  const inner = spec.bore / 2;
  const outer = spec.root / 2;
  const bands = holes.length > 0 ? [[inner, circle - hole], [circle + hole, outer]] : [[inner, outer]];
  const [from, to] = bands.reduce((a, b) => ((b[1] as number) - (b[0] as number) > (a[1] as number) - (a[0] as number) ? b : a)) as [number, number];
  const room = letters.share * (to - from);
  if (room >= letters.least + 0.5 || holes.length === 0) {
    const height = Math.min(letters.most, Math.max(letters.least, room));
    return { radius: (from + to) / 2, height, arcs: [{ from: 0, to: 360 }] };
  }
  const clear = ((hole + margin) / circle) * (180 / Math.PI);
  const angles = holes.map(({ x, y }) => ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360).sort((a, b) => a - b);
  const arcs = angles.map((angle, i) => ({ from: angle + clear, to: (angles[i + 1] ?? (angles[0] as number) + 360) - clear }));
  const height = Math.min(letters.most, letters.share * (outer - inner));
  return { radius: circle, height: Math.max(letters.least, height), arcs: arcs.filter((arc) => arc.to > arc.from) };
}
