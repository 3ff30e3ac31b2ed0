/** Reading a job file: text in; a whole job with defaults, or every mistake with its place. Nothing is thrown at a typist. */
import type { z } from 'zod';
import { keepDigits } from './as-typed.ts';
import { crossCheck } from './cross-check.ts';
import type { JobDocument } from './document.ts';
import { parseJobText } from './document.ts';
import type { ErrorAt, ErrorMore, JobError, PathStep } from './errors.ts';
import { isWithin, pathSteps, pathText, printable, shownValue, sortErrors } from './errors.ts';
import { emptyKey, isMap } from './field.ts';
import { legalKeys, unknownKeySentence } from './legal-keys.ts';
import { salvage } from './salvage.ts';
import type { JobInput, JobUnits } from './schema.ts';
import { jobSchema } from './schema.ts';
import { textFault } from './text-limits.ts';

export type { ErrorAt, JobError } from './errors.ts';
export { formatErrors } from './errors.ts';

export interface Place {
  /** Counted from 1. */
  readonly line: number;
  readonly column: number;
}

export type JobRead =
  | {
      readonly ok: true;
      readonly file: string;
      readonly job: JobInput;
      /** Key paths that were typed: "driven.holes.circle", "driven.holes.at[2]". */
      readonly given: ReadonlySet<string>;
      /** Where a typed key path's value stands; undefined for what was not typed. */
      readonly lines: (path: string) => Place | undefined;
      /** Make an error at a path's place, for whoever judges the job further. */
      readonly errorAt: ErrorAt;
    }
  | { readonly ok: false; readonly errors: readonly JobError[] };

/** A path and a file's name may hold anything; told, they are printable and no longer than this. */
const longestPath = 200;

/** More errors than this help nobody; the last one then says how many were left out. */
const mostErrors = 100;

/**
 * Read a job file. `fileName` appears in the errors only. A bare length is in the job's `units`; the result holds mm, N.m,
 * rpm, degrees and grams. All errors come at once, in the order of the file. Hostile text is answered within a second.
 */
export function readJob(text: string, fileName: string): JobRead {
  const limit = textFault(text);
  if (limit !== null) return { ok: false, errors: [{ file: printable(fileName, longestPath), path: '', ...limit }] };
  return readJobDocument(parseJobText(textOf(text)), fileName);
}

/** A job's text without a byte order mark, with one kind of line end. */
export const textOf = (text: string): string => text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

/** The second half of reading: from plain data and its places to a whole job, or every mistake. */
export function readJobDocument(document: JobDocument, fileName: string): JobRead {
  const errorAt = errorMaker(document, fileName);
  const errors: JobError[] = document.faults.map((fault) => {
    const { line, col } = document.lines.linePos(fault.offset);
    return {
      file: printable(fileName, longestPath),
      line,
      column: col,
      path: printable(fault.path, longestPath),
      message: printable(fault.message, Infinity),
    };
  });
  if (errors.length > 0 && document.data === undefined) return { ok: false, errors: sortErrors(errors) };
  if (!isMap(document.data)) {
    const message =
      'A job is a list of keys, each written key: value with a space after the colon, starting with job: 1.';
    return { ok: false, errors: [...errors, errorAt('', message, { value: shownValue(document.data) })] };
  }
  const schema = jobSchema(unitsOf(document.data));
  const read = schema.safeParse(document.data, { reportInput: true });
  if (!read.success) {
    const spoilt = new Set(errors.map((error) => error.path));
    for (const error of read.error.issues.flatMap((issue) => errorsOf(issue, document, errorAt))) {
      if (![...spoilt].some((path) => path !== '' && isWithin(error.path, path))) errors.push(error);
    }
  }
  const judged = read.success ? read.data : (salvage(schema, document.data) as Partial<JobInput>);
  const places = new Set(errors.map((error) => error.path));
  crossCheck(judged, document.data, (path, message, more) => {
    if (places.has(path)) return;
    places.add(path);
    errors.push(errorAt(path, message, more));
  });
  if (!read.success || errors.length > 0) return { ok: false, errors: atMost(sortErrors(errors)) };
  if (document.document) keepDigits(read.data, document.data, document.document.contents, document.document);
  return {
    ok: true,
    file: fileName,
    job: read.data,
    given: new Set(document.places.keys()),
    lines: (path) => {
      const place = document.places.get(path);
      return place === undefined ? undefined : placeOf(document, place.value);
    },
    errorAt,
  };
}

function unitsOf(data: Readonly<Record<string, unknown>>): JobUnits {
  return typeof data.units === 'string' && data.units.trim().toLowerCase() === 'in' ? 'in' : 'mm';
}

function placeOf(document: JobDocument, offset: number): Place {
  const { line, col } = document.lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

/** Errors stand at the value; where the path was not typed, at the key of the deepest part that was. */
function errorMaker(document: JobDocument, fileName: string): ErrorAt {
  const file = printable(fileName, longestPath);
  return (path: string, message: string, more: ErrorMore = {}) => {
    const steps = pathSteps(path);
    for (let length = steps.length; length > 0; length--) {
      const place = document.places.get(pathText(steps.slice(0, length)));
      if (place === undefined) continue;
      return {
        file,
        ...placeOf(document, length === steps.length ? place.value : place.key),
        path: printable(path, longestPath),
        message: printable(message, Infinity),
        ...more,
      };
    }
    return {
      file,
      line: 1,
      column: 1,
      path: printable(path, longestPath),
      message: printable(message, Infinity),
      ...more,
    };
  };
}

/** One zod issue as errors: unknown keys one by one, everything else one for one. */
function errorsOf(issue: z.core.$ZodIssue, document: JobDocument, errorAt: ErrorAt): JobError[] {
  const steps = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
  const typed = valueAt(document.data, steps);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const { message, allowed } = unknownKeySentence(steps, key, isMap(typed) ? typed[key] : undefined);
      const path = pathText([...steps, key]);
      const error = errorAt(printable(path, 120), message, { value: printable(key, 60), allowed });
      return atItsKey(error, path, document);
    });
  }
  const path = pathText(steps);
  const value = typed === undefined ? {} : { value: shownValue(typed) };
  if (issue.code === 'custom') {
    const { allowed, hint, atKey } = (issue.params ?? {}) as ErrorMore & { atKey?: boolean };
    const error = errorAt(path, issue.message, {
      ...value,
      ...(allowed === undefined ? {} : { allowed }),
      ...(hint === undefined ? {} : { hint }),
    });
    return [atKey === true ? atItsKey(error, path, document) : error];
  }
  if (typed === null) return [errorAt(path, emptyKey, value)];
  const keys = legalKeys(steps);
  if (typed === undefined)
    return [
      errorAt(path, `The section ${path} is missing; it holds ${keys.join(', ')}.`, {
        allowed: keys.join(', '),
      }),
    ];
  if (issue.code === 'invalid_type') {
    return [
      errorAt(path, `The section ${path} has keys of its own (${keys.join(', ')}); got ${shownValue(typed)}.`, {
        ...value,
        allowed: keys.join(', '),
      }),
    ];
  }
  return [errorAt(path, `${issue.message}.`, value)];
}

/** The error moved from a key's value to the key itself. */
function atItsKey(error: JobError, path: string, document: JobDocument): JobError {
  const place = document.places.get(path);
  return place === undefined ? error : { ...error, ...placeOf(document, place.key) };
}

function valueAt(data: unknown, steps: readonly PathStep[]): unknown {
  return steps.reduce<unknown>((node, step) => {
    if (Array.isArray(node)) return node[Number(step)];
    return isMap(node) && Object.hasOwn(node, step) ? node[step] : undefined;
  }, data);
}

function atMost(errors: JobError[]): JobError[] {
  if (errors.length <= mostErrors) return errors;
  const last = errors[mostErrors - 1] as JobError;
  return [
    ...errors.slice(0, mostErrors - 1),
    { ...last, message: `${last.message} (${errors.length - mostErrors} more mistakes are not shown.)` },
  ];
}
