/**
 * The print-first mock-up: the same adapter with the printer's allowances, engraved so that nobody drives it.
 * Allowances are diametral: holes and recesses grow by them, spigots and the wheel seat shrink. Lengths stay, because the mock-up is
 * there to be measured.
 */
import type { Engraving } from '../model/engraving.ts';
import type { TurnedPart } from '../model/part.ts';
import type { SheetPart } from '../model/sheet.ts';
import { acos, atan2, cos } from '../units/trig.ts';
import { buildAdapter } from './adapter.ts';
import type { AdapterSpec, HoleGroupSpec, RegisterSpec, WheelSeatSpec } from './adapter-spec.ts';
import { type FreeArc, freeArcs, layText, type MeasureText } from './lay-text.ts';
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

/** A name as it is engraved: plain capitals, digits and signs, which the engraving font knows best, at most 28 of them. */
export function plainName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/[^\x20-\x7e]/g, '')
    .trim()
    .toUpperCase()
    .slice(0, 28);
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
  if (shape.kind === 'dowel') return { ...group, shape: { ...shape, diameter: shape.diameter + holes } };
  const { head } = shape;
  const wider = head.kind === 'surface' ? head : { ...head, diameter: head.diameter + holes };
  return { ...group, shape: { ...shape, diameter: shape.diameter + holes, head: wider } };
}

function printedRegister(register: RegisterSpec | null, allowance: number): RegisterSpec | null {
  if (!register) return null;
  const diameter = register.diameter + (register.gender === 'female' ? allowance : -allowance);
  return { ...register, diameter, limits: { lower: diameter, upper: diameter, zone: 'printed' } };
}

/** A rim that is itself the register (a shoulder as wide as the outside) shrinks with it: it goes into the flange's recess. */
function printedOutside({ outside, registers }: AdapterSpec, allowance: number): number {
  const isRegister = [registers.driving, registers.driven].some(
    (register) => register?.at === 'rim' && register.gender === 'male' && register.diameter >= outside,
  );
  return isRegister ? outside - allowance : outside;
}

function printedSeat(seat: WheelSeatSpec | null, allowance: number): WheelSeatSpec | null {
  if (!seat) return null;
  const diameter = seat.diameter - allowance;
  return { ...seat, diameter, limits: { lower: diameter, upper: diameter, zone: 'printed' } };
}

/** The adapter's measures with the printer's allowances in. */
export function printedSpec(spec: AdapterSpec, { holes, registers }: PrintAllowances): AdapterSpec {
  return {
    ...spec,
    name: `${spec.name} mock-up`,
    outside: printedOutside(spec, registers),
    bore: spec.bore === null ? null : spec.bore + holes,
    registers: {
      driving: printedRegister(spec.registers.driving, registers),
      driven: printedRegister(spec.registers.driven, registers),
    },
    groups: spec.groups.map((group) => printedGroup(group, holes)),
    wheelSeat: printedSeat(spec.wheelSeat, registers),
  };
}

/** A plain cylinder of the outside. */
interface Band {
  readonly radius: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Where the letters go: the tallest plain cylinder at the largest radius, or where that is too narrow for legible letters, the tallest
 * one that an upright glance at the rim still meets (a wheel seat, a turned-down rim). With nothing better the middle of the rim.
 */
function letterBand(part: TurnedPart): Band {
  const largest = Math.max(...part.outer.map((p) => p.r));
  const bands = part.outer.flatMap((b, i): Band[] => {
    const a = part.outer[i - 1];
    return a && a.r === b.r && b.z > a.z && b.r > 0.8 * largest ? [{ radius: b.r, low: a.z, high: b.z }] : [];
  });
  const tallest = (from: readonly Band[]) =>
    from.reduce<Band | null>((a, b) => (a && a.high - a.low >= b.high - b.low ? a : b), null);
  const rim = tallest(bands.filter((band) => band.radius === largest));
  if (rim && rim.high - rim.low >= letters.least) return rim;
  const other = tallest(bands);
  if (other && other.high - other.low >= letters.least) return other;
  const heights = part.outer.filter((p) => p.r === largest).map((p) => p.z);
  return { radius: largest, low: Math.min(...heights), high: Math.max(...heights) };
}

/** Radius of the outside at an angle where it is a cylinder of a radius cut by flats, mm. */
function radiusToFlats({ flats }: TurnedPart, radius: number, degrees: number): number {
  if (!flats) return radius;
  const towards = Math.abs(cos(((degrees - flats.angle) * Math.PI) / 180));
  return towards < 1e-9 ? radius : Math.min(radius, flats.across / 2 / towards);
}

/** Stretches of the rim that carry letters: all round, less the index mark at 0 and the flats. Degrees. */
function freeRim({ flats }: TurnedPart, radius: number): FreeArc[] {
  const degrees = (length: number) => ((length / radius) * 180) / Math.PI;
  const mark = degrees(grooveRadius + margin);
  const blocked = [{ from: -mark, to: mark }];
  if (flats && flats.across < 2 * radius) {
    const half = (acos(flats.across / 2 / radius) * 180) / Math.PI + degrees(margin / 2);
    for (const normal of [flats.angle, flats.angle + 180]) blocked.push({ from: normal - half, to: normal + half });
  }
  return freeArcs(blocked);
}

/** The warning and the other words. Where the warning does not fit in one piece, its two halves stand on two stretches. */
function layWarned(
  words: readonly string[],
  arcs: readonly FreeArc[],
  radius: number,
  height: number,
  measure: MeasureText,
) {
  const lay = (texts: readonly string[]) => layText(texts, arcs, radius, height, letters.least, measure);
  const whole = lay([warning, ...words, warning]);
  if (whole.length > 0 && (whole[0] as { height: number }).height >= letters.least) return whole;
  const halves = warning.split(' - ').reverse();
  const split = lay([...halves, ...words]);
  return split.length >= halves.length ? split : whole;
}

/** The adapter as it is printed. */
export function adapterMockUp(spec: AdapterSpec, allowances: PrintAllowances, marks: MockUpMarks): TurnedPart {
  const part = buildAdapter(printedSpec(spec, allowances));
  const { radius, low, high } = letterBand(part);
  const height = Math.max(letters.least, Math.min(letters.most, letters.share * (high - low)));
  const texts = layWarned(marks.words, freeRim(part, radius), radius, height, marks.measure);
  const largest = Math.max(...part.outer.map((p) => p.r));
  const heights = part.outer.filter((p) => p.r > largest / 2).map((p) => p.z);
  const engravings: Engraving[] = [
    {
      kind: 'index',
      angle: 0,
      radius: radiusToFlats(part, largest, 0),
      zFrom: Math.min(...heights),
      zTo: Math.max(...heights),
      grooveRadius,
    },
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
  const { radius, height, arcs } = wheelBand(spec, part);
  const texts = layWarned(marks.words, arcs, radius, height, marks.measure);
  const z = spec.thickness;
  const depth = Math.min(letterDepth, spec.thickness / 3);
  return { ...part, engravings: texts.map((text) => ({ kind: 'text', surface: 'top', radius, z, depth, ...text })) };
}

/** Kept free between letters on a face and what bounds their ring, mm. */
const ringMargin = 0.5;

/** Ring of the printed wheel's face that carries letters: clear of the screw holes if one is wide enough, else between them. */
function wheelBand(spec: ToneWheelSpec, part: SheetPart): { radius: number; height: number; arcs: FreeArc[] } {
  const circles = part.holes.flatMap((contour) => (contour.kind === 'circle' ? [contour] : []));
  const holes = circles.map(({ x, y, r }) => ({ x, y, r, out: Math.hypot(x, y) })).filter(({ r, out }) => out > r);
  const inner = Math.max(0, ...circles.filter(({ x, y, r }) => Math.hypot(x, y) <= r).map(({ r }) => r));
  const outer = spec.root / 2;
  const [nearest, farthest] = [
    Math.min(outer, ...holes.map((h) => h.out - h.r)),
    Math.max(inner, ...holes.map((h) => h.out + h.r)),
  ];
  const bands =
    holes.length > 0
      ? ([
          [inner, nearest],
          [farthest, outer],
        ] as const)
      : ([[inner, outer]] as const);
  const [from, to] = bands.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
  const tall = (room: number) => Math.max(letters.least, Math.min(letters.most, letters.share * room));
  if (to - from >= letters.least + 2 * ringMargin || holes.length === 0) {
    return { radius: (from + to) / 2, height: tall(to - from), arcs: freeArcs([]) };
  }
  const radius = (inner + outer) / 2;
  const degrees = (angle: number) => (angle * 180) / Math.PI;
  const blocked = holes.map(({ x, y, r, out }) => {
    const half = degrees((r + margin) / Math.min(out, radius));
    return { from: degrees(atan2(y, x)) - half, to: degrees(atan2(y, x)) + half };
  });
  return { radius, height: tall(outer - inner), arcs: freeArcs(blocked) };
}
