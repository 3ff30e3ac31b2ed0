/** What no input may ever do. Each function returns what is wrong in a sentence, or null; a throw is for the caller to catch. */
import {
  flangeSketches,
  formatErrors,
  holesFromDxf,
  type JobError,
  judgeJob,
  liveBodies,
  makeFiles,
  type PatternList,
  pointsFromCsv,
  preflightDxf,
  preflightJson,
  preflightText,
  reportData,
  reportJson,
  reportText,
  revisionOf,
  withTriedRemedies,
} from '../../src/core.ts';
import { checkMesh } from '../../src/solids/mesh-check.ts';
import { programFault } from './program-fault.ts';
import { openEdges } from './stl-edges.ts';

export type Fault = string | null;

/** A number that slipped into a text; words like these stand in no text of the program. */
const slipped = /\bNaN\b|\bInfinity\b|\bundefined\b|\[object /;
/** Signs that move a cursor or turn the writing: never in a text for people. Line ends and tabs may stand. */
const control = /[^\P{Cc}\t\n\r]|\p{Bidi_Control}/u;

/** The first number inside some data that is not finite, by its path. */
export function notFinite(data: unknown, path = ''): Fault {
  if (typeof data === 'number') return Number.isFinite(data) ? null : `${path} is ${data}`;
  if (typeof data !== 'object' || data === null || ArrayBuffer.isView(data)) return null;
  for (const [key, value] of Object.entries(data)) {
    const fault = notFinite(value, `${path}.${key}`);
    if (fault !== null) return fault;
  }
  return null;
}

/** A text without the words of what came in that it quotes: "NaN" for a number of a drawing is no slip. */
export const withoutQuotes = (text: string, given: string): string =>
  text.replace(/"([^"\n]*)"/g, (quoted, word) => (word !== '' && given.includes(word) ? '""' : quoted));

/** @param given what came in: what a text quotes of it is no slip */
export function textFaultOf(name: string, text: string, given = ''): Fault {
  const hit = slipped.exec(withoutQuotes(text, given)) ?? control.exec(text);
  if (hit === null) return null;
  const { index, input } = hit;
  return `${name} holds ${JSON.stringify(hit[0])}: ${JSON.stringify(input.slice(Math.max(0, index - 60), index + 30))}`;
}

function errorsFault(errors: readonly JobError[], text: string): Fault {
  if (errors.length === 0) return 'refused without an error';
  const lines = text.split(/\r\n|\n|\r/).length;
  for (const { line, column, message } of errors) {
    if (!(Number.isInteger(line) && line >= 1 && line <= lines))
      return `an error stands at line ${line} of ${lines}: ${message}`;
    if (!(Number.isInteger(column) && column >= 1)) return `an error stands in column ${column}: ${message}`;
    if (message.length < 10 || message.length > 1500)
      return `an error of ${message.length} letters: ${message.slice(0, 80)}`;
    if (/\n\s+at |\[object|\bundefined\b|\bNaN\b/.test(message)) return `an error that is no sentence: ${message}`;
  }
  return textFaultOf('the error text', formatErrors(errors, text));
}

export interface JobAsked {
  /** Try every way that is left open. */
  readonly search: boolean;
  /** Kinds of files to make; none: no file is made. */
  readonly kinds: readonly string[];
}

export interface JobSeen {
  readonly fault: Fault;
  readonly becameJoint: boolean;
  readonly errors: readonly JobError[];
}

/** A job, judged as `check` does, its bodies meshed, and files made as `make` does. */
export async function jobFault(text: string, patterns: PatternList, { search, kinds }: JobAsked): Promise<JobSeen> {
  const judged = judgeJob(text, 'fuzz.job.yaml', patterns, { search });
  if (!judged.ok) {
    const fault = errorsFault(judged.errors, text) ?? sketchesFault(text, patterns);
    return { fault, becameJoint: false, errors: judged.errors };
  }
  const { findings } = judged;
  const joint = withTriedRemedies(text, 'fuzz.job.yaml', patterns, judged);
  const data = reportData(joint, findings, null, revisionOf(joint));
  const shown = reportJson(data, 'fuzz.job.yaml');
  const bodies = await liveBodies(joint, findings);
  const fault =
    notFinite(findings, 'findings') ??
    notFinite(shown, 'report') ??
    textFaultOf('report.txt', reportText(data, { passes: true })) ??
    bodies.map(bodyFault).find((found) => found !== null) ??
    (kinds.length === 0 ? null : await filesFault(judged, kinds));
  return { fault, becameJoint: true, errors: [] };
}

/** What the page draws of a job that is not whole. */
function sketchesFault(text: string, { flanges }: PatternList): Fault {
  for (const { name, svg } of flangeSketches(text, flanges)) {
    const fault = textFaultOf(name, svg);
    if (fault !== null) return fault;
  }
  return null;
}

function bodyFault({ name, meshes }: Awaited<ReturnType<typeof liveBodies>>[number]): Fault {
  for (const mesh of meshes) {
    if (!mesh.positions.every(Number.isFinite)) return `the ${name}'s mesh has a corner nowhere`;
    const { badEdges, bodies } = checkMesh(mesh);
    if (badEdges > 0) return `the ${name}'s mesh has ${badEdges} open edges`;
    if (bodies === 0) return `the ${name}'s mesh encloses nothing`;
  }
  return null;
}

type Judged = Extract<ReturnType<typeof judgeJob>, { ok: true }>;

async function filesFault({ joint, findings }: Judged, only: readonly string[]): Promise<Fault> {
  const { files } = await makeFiles(joint, findings, { base: 'fuzz', jobName: 'fuzz.job.yaml', only, force: true });
  for (const { name, bytes } of files) {
    if (name.endsWith('.stl')) {
      const open = openEdges(bytes);
      if (open !== 0) return `${name} has ${open} open edges`;
    } else if (name.endsWith('.ngc')) {
      const { outside, thickness } = joint.adapterSpec;
      // Drill points and what comes out below: no deeper than another thickness and 30 mm.
      const fault = programFault(new TextDecoder().decode(bytes), { radius: outside / 2, deepest: 2 * thickness + 30 });
      if (fault !== null) return `${name}: ${fault}`;
    } else if (/\.(svg|dxf|html|txt|json|csv|step|md)$/.test(name)) {
      const fault = textFaultOf(name, new TextDecoder().decode(bytes));
      if (fault !== null) return fault;
    }
  }
  return null;
}

const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

/** A table of points or the holes of a drawing, as `measure pattern` reads them. */
export function pointsFault(kind: 'csv' | 'dxf', bytes: Uint8Array, units: 'mm' | 'in', wanted?: number): Fault {
  const read = kind === 'csv' ? pointsFromCsv(textOf(bytes), units) : holesFromDxf(textOf(bytes), units, wanted);
  if (read.ok) return notFinite(read.value, 'points');
  return read.why.length < 10
    ? `a miss that is no sentence: ${read.why}`
    : slipped.test(withoutQuotes(read.why, textOf(bytes)))
      ? `a miss that says ${read.why}`
      : null;
}

/** A drawing before it goes to a cutting service. */
export function preflightFault(
  bytes: Uint8Array,
  thickness: number | undefined,
  units: 'mm' | 'in' | undefined,
): Fault {
  const read = preflightDxf(bytes, { thickness, units });
  if (read.findings.length === 0) return 'a drawing without a finding';
  return (
    notFinite(read, 'preflight') ??
    notFinite(preflightJson(read, 'x.dxf'), 'json') ??
    textFaultOf('preflight', preflightText(read, 'x.dxf'), textOf(bytes))
  );
}
