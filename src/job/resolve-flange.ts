/** A typed flange and its preset joined into one flange with every fact at hand, in adapter coordinates. */
import type { Assumption } from '../model/finding.ts';
import { toleranceLimits } from '../standards/iso286.ts';
import { findThread } from '../standards/threads.ts';
import { checkFlangeInput } from './cross-check-flange.ts';
import type { Report } from './cross-check-words.ts';
import { isHalfOf, radiusQuestion, size } from './cross-check-words.ts';
import type { ErrorAt, JobError } from './errors.ts';
import { printable, sortErrors } from './errors.ts';
import type { FlangePreset } from './flange-presets.ts';
import { findPreset } from './flange-presets.ts';
import type { HolePosition } from './hole-pattern.ts';
import { chordSetOf, circleOf, fittedCircle, patternOf, positionDoubt, usedOf } from './hole-pattern.ts';
import { fromCatalogue, type Measured } from './measured.ts';
import { mergePreset } from './merge-preset.ts';
import type { ResolvedRunout } from './resolve-runout.ts';
import { resolveRunout } from './resolve-runout.ts';
import type { FlangeInput, HolesInput } from './schema.ts';

export interface ResolvedRegister {
  readonly gender: 'male' | 'female';
  readonly diameter: Measured;
  readonly depth: Measured;
  /** Limits of the flange's own register as absolute diameters, mm: by its fit zone when stated, else value -+ doubt. */
  readonly limits: { readonly lower: number; readonly upper: number };
  /** Tolerance zone, null when none is stated. */
  readonly zone: string | null;
  /** Fillet radius at a male foot or chamfer at a female mouth, mm; 0 when not stated. */
  readonly corner: number;
}

export interface ResolvedHoles {
  /** Those that get a screw. In adapter coordinates: seen from the driven side, mm. In typed order. */
  readonly positions: readonly HolePosition[];
  /** Those of the same size that are there and stay empty. */
  readonly unused: readonly HolePosition[];
  /** Diameter of the circle through the centres, mm; null when they do not lie on one. */
  readonly circle: number | null;
  /** How far a hole may stand from where it was measured, mm radial. */
  readonly doubt: number;
  readonly kind: 'clear' | 'tapped';
  /** Clear holes: their size. Tapped holes: the thread's major diameter as its designation says. */
  readonly diameter: Measured;
  readonly thread: string | null;
  /** Usable depth of thread, mm; null when not stated. */
  readonly depth: number | null;
  readonly through: boolean;
}

export interface ResolvedFlange {
  readonly side: 'driving' | 'driven';
  readonly name: string;
  /** Id of the preset it started from. */
  readonly preset: string | null;
  readonly outside: Measured;
  readonly thickness: Measured | null;
  readonly register: ResolvedRegister | null;
  readonly holes: ResolvedHoles;
  /** Free bore in the middle, mm. */
  readonly bore: number | null;
  readonly runout: ResolvedRunout;
  readonly material: string | null;
  /** Free room behind the flange, mm. */
  readonly behind: number | null;
  /** Key paths that rest on memory: "driven.holes.circle". */
  readonly memory: readonly string[];
  /** Source of the preset's figures. */
  readonly source: string | null;
}

/** What a flange is taken to be made of when the job does not say: ordinary structural steel, the weaker guess. */
const usualMaterial = 'S355';

/** The material that a flange is reckoned with: the job's, or the usual one. */
export const materialOfFlange = ({ material }: Pick<ResolvedFlange, 'material'>): string => material ?? usualMaterial;

export type FlangeResolution =
  | { readonly ok: true; readonly flange: ResolvedFlange; readonly assumptions: readonly Assumption[] }
  | { readonly ok: false; readonly errors: readonly JobError[] };

/**
 * Resolve one flange. `input` is a flange as readJob gives it, `presets` the known patterns, `errorAt` readJob's maker of
 * errors. Everything typed about a flange is seen looking at its own face. The driving face looks to the driven side, so its
 * holes stay; the driven face looks the other way, so its holes are mirrored, x to -x. Assumptions list what the preset gave.
 */
export function resolveFlange(
  side: 'driving' | 'driven',
  input: FlangeInput,
  presets: readonly FlangePreset[],
  errorAt: ErrorAt,
): FlangeResolution {
  const start = input.from === undefined ? null : findPreset(presets, input.from);
  if (start !== null && !start.ok)
    return {
      ok: false,
      errors: [errorAt(`${side}.from`, start.why, { value: printable(input.from ?? '', 60) })],
    };
  const preset = start?.value ?? null;
  if (preset?.unsuitable !== undefined) {
    return {
      ok: false,
      errors: [
        errorAt(`${side}.from`, `No adapter is made for ${preset.id}: ${preset.unsuitable}`, {
          value: preset.id,
        }),
      ],
    };
  }
  const errors: JobError[] = [];
  const report: Report = (path, message, more) => errors.push(errorAt(path, message, more));
  const measured = withCircleOfChords(input, preset, side, report);
  if (measured === null) return { ok: false, errors };
  const { flange, fromPreset } = preset === null ? { flange: measured, fromPreset: [] } : mergePreset(measured, preset);
  if (preset !== null) {
    checkFlangeInput(flange, side, report);
    askAboutRadii(measured, preset, side, report);
  }
  const outside = flange.outside;
  if (outside === undefined)
    report(
      `${side}.outside`,
      `The outside diameter of the ${side} flange is missing: measure across its rim and write ${side}: { outside: ... }.`,
    );
  const register = resolveRegister(flange, preset, side, report);
  const holes = resolveHoles(flange.holes, side, report);
  const runout = resolveRunout(flange, input.runout, side, report);
  if (errors.length > 0 || outside === undefined || holes === null) return { ok: false, errors: firstPerPath(errors) };
  const isMemory = (path: string) =>
    preset?.memory.some((entry) => path === entry || path.startsWith(`${entry}.`)) ?? false;
  return {
    ok: true,
    flange: {
      side,
      name: flange.name ?? preset?.title ?? `${side} flange`,
      preset: preset?.id ?? null,
      outside,
      thickness: flange.thickness ?? null,
      register,
      holes,
      bore: flange.bore ?? null,
      runout,
      material: flange.material ?? null,
      behind: flange.behind ?? null,
      memory: fromPreset.filter(isMemory).map((path) => `${side}.${path}`),
      source: preset?.source ?? null,
    },
    assumptions: fromPreset.map((path) => ({
      path: `${side}.${path}`,
      value: valueText(flange, path),
      from: `preset ${preset?.id ?? ''}`,
      memory: isMemory(path),
    })),
  };
}

/**
 * The flange with the circle its chords say, so that a preset's circle gives way to it; null when the chords say none. The
 * preset may know the count and the hole size.
 */
function withCircleOfChords(
  input: FlangeInput,
  preset: FlangePreset | null,
  side: string,
  report: Report,
): FlangeInput | null {
  if (input.holes?.chords === undefined) return input;
  const { chords, ...holes } = input.holes;
  const known = preset?.holes;
  const count = holes.count ?? known?.count;
  const diameter =
    holes.diameter ??
    (holes.thread === undefined && known?.diameter !== undefined ? fromCatalogue(known.diameter) : undefined);
  const set = chordSetOf({ chords, count, diameter });
  if (set === null) return input;
  if (set.ok) return { ...input, holes: { ...holes, circle: set.circle } };
  report(`${side}.holes.chords${set.reading === null ? '' : `[${set.reading}].reading`}`, set.why);
  return null;
}

function resolveRegister(
  flange: FlangeInput,
  preset: FlangePreset | null,
  side: string,
  report: Report,
): ResolvedRegister | null {
  const { register } = flange;
  if (register === undefined || register === 'none') return null;
  const { gender, diameter, depth, fit, corner = 0 } = register;
  if (preset !== null) {
    const how = `${preset.id} gives none. Measure it and add ${side}: { register: { ... } }, or write register: none.`;
    if (gender === undefined) report(`${side}.register.gender`, `The register's gender is missing, and ${how}`);
    if (diameter === undefined) report(`${side}.register.diameter`, `The register's diameter is missing, and ${how}`);
    if (depth === undefined) report(`${side}.register.depth`, `The register's depth is missing, and ${how}`);
  }
  if (gender === undefined || diameter === undefined || depth === undefined) return null;
  let limits = { lower: diameter.value - diameter.doubt, upper: diameter.value + diameter.doubt };
  if (fit !== undefined) {
    const deviations = toleranceLimits(diameter.value, fit);
    if (!deviations.ok) {
      report(`${side}.register.fit`, deviations.why, { value: fit });
      return null;
    }
    limits = {
      lower: diameter.value + deviations.value.lower,
      upper: diameter.value + deviations.value.upper,
    };
  }
  const tidy = (size: number) => Number(size.toFixed(9));
  return {
    gender,
    diameter,
    depth,
    limits: { lower: tidy(limits.lower), upper: tidy(limits.upper) },
    zone: fit ?? null,
    corner,
  };
}

function resolveHoles(holes: HolesInput | undefined, side: 'driving' | 'driven', report: Report): ResolvedHoles | null {
  const path = `${side}.holes`;
  if (holes === undefined) {
    report(
      path,
      `The ${side} flange has no holes: count them, measure the circle through their centres, and write ${side}: { holes: { count: ..., circle: ..., diameter: ... } }.`,
    );
    return null;
  }
  const pattern = patternOf(holes);
  if (pattern === null) {
    const missing = holes.count === undefined && holes.angles === undefined ? 'count' : 'circle';
    const how =
      missing === 'count'
        ? 'How many holes? Count them.'
        : 'Measure across two opposite holes (outer edge to outer edge, less one hole), or from hole to hole and write chord.';
    report(`${path}.${missing}`, `${path}.${missing} is missing. ${how}`);
  }
  if (holes.diameter === undefined && holes.thread === undefined) {
    report(
      `${path}.diameter`,
      `The size of the ${side} flange's holes is missing: write diameter for clear holes, or thread for tapped ones.`,
    );
  }
  const thread = holes.thread === undefined ? null : findThread(holes.thread);
  if (thread !== null && !thread.ok) report(`${path}.thread`, thread.why, { value: holes.thread ?? '' });
  const major = thread?.ok === true ? { value: thread.value.d, doubt: 0, basis: 'catalogue' as const } : undefined;
  const diameter = holes.diameter ?? major;
  if (pattern === null || diameter === undefined) return null;
  return {
    ...usedOf(side === 'driven' ? pattern.map(({ x, y }) => ({ x: 0 - x, y })) : pattern, holes.use),
    circle: circleOf(holes) ?? fittedCircle(pattern)?.diameter ?? commonCircle(pattern),
    doubt: positionDoubt(holes),
    kind: holes.thread === undefined ? 'clear' : 'tapped',
    diameter,
    thread: thread?.ok === true ? thread.value.designation : null,
    depth: holes.depth ?? null,
    through: holes.through ?? false,
  };
}

/** Diameter of the circle that all holes lie on within what a caliper can tell (0.1 mm of radius); null when there is none. */
function commonCircle(pattern: readonly HolePosition[]): number | null {
  const radii = pattern.map(({ x, y }) => Math.hypot(x, y));
  if (Math.max(...radii) - Math.min(...radii) > 0.1) return null;
  return (2 * radii.reduce((sum, radius) => sum + radius, 0)) / radii.length;
}

/** A typed size that is half of the preset's was probably a radius. */
function askAboutRadii(typed: FlangeInput, preset: FlangePreset, side: string, report: Report): void {
  const register = typeof typed.register === 'object' ? typed.register.diameter?.value : undefined;
  const pairs: [string, number | undefined, number | undefined][] = [
    ['outside', typed.outside?.value, preset.outside],
    ['register.diameter', register, preset.register?.diameter],
    ['holes.circle', typed.holes?.circle?.value, preset.holes?.circle],
    ['holes.diameter', typed.holes?.diameter?.value, preset.holes?.diameter],
  ];
  for (const [path, own, known] of pairs) {
    if (own !== undefined && known !== undefined && isHalfOf(own, known)) {
      report(`${side}.${path}`, `${preset.id} has ${size(known)} here. ${radiusQuestion(own, known)}`, {
        value: size(own),
      });
    }
  }
}

function valueText(flange: FlangeInput, path: string): string {
  const value = path
    .split('.')
    .reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], flange);
  if (typeof value === 'object' && value !== null && 'value' in value) return size((value as Measured).value);
  if (typeof value === 'number')
    return path === 'holes.count' ? String(value) : path === 'holes.first' ? `${value} deg` : size(value);
  return String(value);
}

function firstPerPath(errors: readonly JobError[]): JobError[] {
  return sortErrors(errors.filter((error, index) => errors.findIndex((other) => other.path === error.path) === index));
}
