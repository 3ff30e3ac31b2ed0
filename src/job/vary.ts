/**
 * A plan of a sweep: a job, and fields of it that each take several values. Every combination is a variant with a number; the last
 * field turns fastest. Variants are worked out from their numbers: a million of them take no more room than one.
 */

import { readChanged } from './changed-job.ts';
import { type JobDocument, parseJobText } from './document.ts';
import { isWithin, type JobError, pathSteps, pathText, printable } from './errors.ts';
import { isMap } from './field.ts';
import { legalKeys, unknownKeySentence } from './legal-keys.ts';
import { type JobRead, readJobDocument, textOf } from './read.ts';
import { textFault } from './text-limits.ts';
import { readValues, type VariedValue, type VariedValues } from './vary-values.ts';
import type { EditPath } from './with-value.ts';

/** No more variants than this in one plan. */
export const mostVariants = 10_000_000;

/** A field that is varied. */
export interface Axis extends VariedValues {
  /** "adapter.thickness" */
  readonly name: string;
  readonly path: EditPath;
}

export interface SweepPlan {
  readonly file: string;
  readonly document: JobDocument;
  readonly axes: readonly Axis[];
  /** Number of variants, 1 or more. */
  readonly count: number;
}

/** A plan, the mistakes of the job's text, or a sentence about what was asked. */
export type Planned =
  | { readonly ok: true; readonly plan: SweepPlan }
  | { readonly ok: false; readonly why: string; readonly errors?: readonly JobError[] };

const forbidden = ['__proto__', 'constructor', 'prototype'];

/** Says where in one --vary something is wrong, with a mark under it. */
function placed(text: string, offset: number, why: string): string {
  const shown = printable(text, 200);
  return `${why}\n    --vary ${shown}\n           ${' '.repeat(Math.min(offset, shown.length))}^`;
}

/** A sentence about the first key of a path that the job's format does not have; null when all are known. */
function unknownKey(path: EditPath): { readonly depth: number; readonly why: string } | null {
  for (const [depth, step] of path.entries()) {
    const above = path.slice(0, depth);
    if (typeof step === 'number') continue;
    if (forbidden.includes(step)) return { depth, why: `"${step}" cannot be a key.` };
    const keys = legalKeys(above);
    if (keys.length === 0)
      return { depth, why: `${pathText(above)} has no keys below it: vary ${pathText(above)} itself.` };
    if (!keys.includes(step)) return { depth, why: unknownKeySentence(above, step, undefined).message };
  }
  return null;
}

function readAxis(
  text: string,
): { readonly ok: true; readonly axis: Axis } | { readonly ok: false; readonly why: string } {
  const no = (offset: number, why: string) => ({ ok: false as const, why: placed(text, offset, why) });
  const equals = text.indexOf('=');
  if (equals < 0)
    return no(text.length, 'There is no equals sign; write key=values, such as adapter.thickness=14..22/0.5.');
  const name = text.slice(0, equals).trim();
  const path = pathSteps(name);
  if (path.length === 0)
    return no(0, 'There is no key before the equals sign; write for example adapter.thickness=14..22/0.5.');
  if (pathText(path) !== name)
    return no(
      0,
      `"${printable(name, 60)}" is not a key; write keys with points between, such as driving.holes.circle.`,
    );
  const unknown = unknownKey(path);
  if (unknown) {
    const start = pathText(path.slice(0, unknown.depth)).length;
    return no(unknown.depth === 0 ? 0 : start + 1, unknown.why);
  }
  if (path[0] === 'job') return no(0, 'job is the version of the format; there is nothing to vary.');
  const read = readValues(text.slice(equals + 1));
  if (!read.ok) return no(equals + 1 + read.fault.offset, read.fault.why);
  return { ok: true, axis: { name, path, ...read.values } };
}

/** Two fields of which one holds the other, or that are the same. */
function clash(axes: readonly Axis[]): string | null {
  for (const [i, one] of axes.entries()) {
    for (const other of axes.slice(i + 1)) {
      if (one.name === other.name) return `${one.name} is varied twice; write all its values in one --vary, by comma.`;
      if (isWithin(one.name, other.name) || isWithin(other.name, one.name))
        return `${one.name} and ${other.name} cannot both be varied: one is part of the other.`;
    }
  }
  return null;
}

/**
 * Lay out a sweep.
 * @param text the job file
 * @param file how errors name it
 * @param varied one text for each field: "adapter.thickness=14..22/0.5"; at least one
 * @returns the plan; mistakes of YAML in the job; or the first mistake in what is varied, with a mark under its place
 */
export function planSweep(text: string, file: string, varied: readonly string[]): Planned {
  const limit = textFault(text);
  if (limit !== null) return { ok: false, why: 'The job cannot be read.', errors: [{ file, path: '', ...limit }] };
  const document = parseJobText(textOf(text));
  if (document.faults.length > 0 || !isMap(document.data)) {
    const read = readJobDocument(document, file);
    return { ok: false, why: 'The job cannot be read.', errors: read.ok ? [] : read.errors };
  }
  if (varied.length === 0)
    return { ok: false, why: 'Say what to vary: --vary "adapter.thickness=14..22/0.5", once for each field.' };
  const axes: Axis[] = [];
  for (const one of varied) {
    const read = readAxis(one);
    if (!read.ok) return read;
    axes.push(read.axis);
  }
  const why = clash(axes);
  if (why !== null) return { ok: false, why };
  const count = axes.reduce((product, axis) => product * axis.count, 1);
  if (count > mostVariants) {
    const product = axes.map((axis) => `${axis.count} of ${axis.name}`).join(' times ');
    return {
      ok: false,
      why: `${product} are ${count.toPrecision(3)} variants; at most ${mostVariants} are swept at once. Take larger steps.`,
    };
  }
  const plan = { file, document, axes, count };
  const blocked = axes.map((axis) => blockedBy(document.data, axis)).find((sentence) => sentence !== null);
  return blocked === undefined || blocked === null ? { ok: true, plan } : { ok: false, why: blocked };
}

/** A path that leads through a plain value, or past the end of a list, cannot be set. */
function blockedBy(data: unknown, { path, name }: Axis): string | null {
  let node = data;
  for (const [depth, step] of path.entries()) {
    const above = pathText(path.slice(0, depth));
    if (node === undefined || node === null) {
      if (typeof step === 'number') return `${name} cannot be varied: the job has no list ${above}.`;
      return null;
    }
    if (Array.isArray(node)) {
      if (typeof step !== 'number' || step >= node.length)
        return `${name} cannot be varied: ${above} is a list of ${node.length}, counted from 0.`;
      node = node[step];
      continue;
    }
    if (!isMap(node) || typeof step === 'number')
      return `${name} cannot be varied: ${above} is a value of its own in this job, not a section.`;
    node = Object.hasOwn(node, step) ? node[step] : undefined;
  }
  return null;
}

/** Places of a variant on its axes, in the order of the axes. @param index from 0 up to the plan's count less one */
export function placesOf({ axes, count }: Pick<SweepPlan, 'axes' | 'count'>, index: number): number[] {
  if (!Number.isInteger(index) || index < 0 || index >= count) throw new RangeError(`variant ${index} of ${count}`);
  const places: number[] = new Array(axes.length).fill(0);
  let left = index;
  for (let k = axes.length - 1; k >= 0; k--) {
    const { count: long } = axes[k] as Axis;
    places[k] = left % long;
    left = Math.floor(left / long);
  }
  return places;
}

/** The value of each varied field in a variant, in the order of the axes. */
export function valuesOf(plan: SweepPlan, index: number): VariedValue[] {
  const places = placesOf(plan, index);
  return plan.axes.map((axis, k) => axis.at(places[k] as number));
}

/** The job of one variant, read: the same as if the values had been typed into the file. */
export function readVariant(plan: SweepPlan, index: number): JobRead {
  const values = valuesOf(plan, index);
  const puts = plan.axes.map(({ path }, k) => ({ path, data: (values[k] as VariedValue).data }));
  return readChanged(plan.document, plan.file, puts);
}
