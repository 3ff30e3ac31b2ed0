/** What keys may stand where, read from the job's JSON Schema, and what to say to a key that may not. */

import { type JsonSchema, sectionOf } from '../model/json-schema.ts';
import { nearestWord } from '../units/near.ts';
import type { PathStep } from './errors.ts';
import { pathText, printable } from './errors.ts';
import { jobJsonSchema, reservedKeys } from './schema.ts';
import { didYouMean } from './word-fields.ts';

let schema: JsonSchema | undefined;

/** The job's schema as data, worked out once: it takes as long as many jobs to read. */
export function knownSchema(): JsonSchema {
  schema ??= jobJsonSchema() as JsonSchema;
  return schema;
}

/** Keys that may stand in the section at `steps`; empty when it is not a section. */
export function legalKeys(steps: readonly PathStep[]): string[] {
  return Object.keys(propertiesOf(nodeAt(steps)));
}

function nodeAt(steps: readonly PathStep[]): JsonSchema | undefined {
  let node: JsonSchema | undefined = knownSchema();
  for (const step of steps) node = typeof step === 'number' ? node?.items : propertiesOf(node)[step];
  return node;
}

/** True where a list of plain values may stand: repeated readings, ratios. */
export function takesList(steps: readonly PathStep[]): boolean {
  const node = nodeAt(steps);
  return [node, ...(node?.anyOf ?? [])].some((one) => one?.type === 'array' && one.items?.type !== 'array');
}

/**
 * True for a section that may stand without a key: one that its own section cannot do without, and one at the left margin that asks for
 * no key, for it says that the part is wanted.
 */
export function mayStandEmpty(steps: readonly PathStep[]): boolean {
  const key = steps.at(-1);
  if (nodeAt(steps.slice(0, -1))?.required?.some((name) => name === key)) return true;
  return steps.length === 1 && (nodeAt(steps)?.required ?? []).length === 0;
}

const propertiesOf = (node: JsonSchema | undefined): Readonly<Record<string, JsonSchema>> =>
  (node && sectionOf(node)?.properties) ?? {};

/** Words of the trade for keys that have another name here. */
const otherNames: Readonly<Record<string, readonly string[]>> = {
  outside: ['od', 'outsidediameter', 'outerdiameter', 'outer', 'diameteroutside'],
  circle: ['pcd', 'bcd', 'bc', 'boltcircle', 'pitchcircle', 'pitchcirclediameter', 'holecircle', 'lk'],
  diameter: ['dia', 'd', 'diam', 'size', 'hole', 'holediameter'],
  count: ['n', 'number', 'quantity', 'qty', 'holecount', 'bolts'],
  register: ['pilot', 'spigot', 'centre', 'center', 'centring', 'centering', 'recess'],
  holes: ['bolts', 'hole', 'boltholes', 'drilling', 'pattern', 'boltpattern'],
  bore: ['id', 'insidediameter', 'innerdiameter', 'centrebore', 'centerbore', 'inside'],
  speed: ['rpm', 'revs', 'n', 'maxspeed', 'max_rpm'],
  torque: ['nm', 'peaktorque', 'moment'],
  first: ['offset', 'start', 'startangle', 'angle'],
  depth: ['height', 'deep'],
  fit: ['tolerance', 'zone'],
  thickness: ['width', 'length', 'thick'],
  at: ['positions', 'coordinates', 'xy', 'points'],
  use: ['used', 'using', 'usedholes'],
  from: ['preset', 'type', 'standard'],
  driving: ['input', 'drive', 'front'],
  driven: ['output', 'rear'],
  wheel: ['tonewheel', 'tone', 'tone_wheel', 'reluctor', 'ring'],
  corner: ['fillet', 'radius', 'chamfer'],
  clocking: ['phase', 'rotation', 'twist'],
  missing: ['gap', 'missingteeth'],
  wide: ['widetooth', 'longtooth', 'filled'],
  extra: ['extratooth', 'addedtooth', 'synctooth'],
};

/** One sentence or two about a key that is not known in the section at `steps`. */
export function unknownKeySentence(
  steps: readonly PathStep[],
  key: string,
  value: unknown,
): { message: string; allowed: string } {
  const allowed = legalKeys(steps);
  const where = steps.length === 0 ? 'a job' : pathText(steps);
  const list = { allowed: allowed.join(', ') };
  if (steps.length === 0 && reservedKeys.includes(key)) {
    return {
      message: `"${key}" belongs to the format but is not read by this version of the program; delete the section.`,
      ...list,
    };
  }
  if (/^\d+$/.test(key) && value === null) {
    return {
      message: `"${key}" is not a key. Was a decimal comma typed before it? Decimals take a point: 57.5, not 57,5.`,
      ...list,
    };
  }
  if (value === null && /\s/.test(key)) {
    return {
      message: `"${printable(key, 40)}" is not a key of ${where}. Is a colon missing? Write key: value.`,
      ...list,
    };
  }
  const shown = printable(key, 40);
  const synonym = synonymOf(key, allowed);
  if (synonym !== undefined)
    return { message: `"${shown}" is not a key of ${where}; here it is called ${synonym}.`, ...list };
  const near = didYouMean(key, allowed);
  if (near !== '') return { message: `"${shown}" is not a key of ${where}.${near}`, ...list };
  const nearBelow = allowed.flatMap((section) => legalKeys([...steps, section]).map((word) => ({ section, word })));
  const below = nearestWord(
    key,
    nearBelow.map(({ word }) => word),
  );
  const home = homeOf(steps, key);
  if (home !== null) return { message: `"${shown}" is not a key of ${where}; it belongs under ${home}.`, ...list };
  if (below !== null) {
    const section = nearBelow.find(({ word }) => word === below)?.section ?? '';
    return {
      message: `"${shown}" is not a key of ${where}. Did you mean ${below}, under ${pathText([...steps, section])}?`,
      ...list,
    };
  }
  return { message: `"${shown}" is not a key of ${where}; its keys are ${allowed.join(', ')}.`, ...list };
}

function synonymOf(key: string, allowed: readonly string[]): string | undefined {
  const plain = key.toLowerCase().replace(/[\s_-]+/g, '');
  return allowed.find((name) => otherNames[name]?.some((other) => other.replace(/_/g, '') === plain) === true);
}

/** A section under this one, beside it or at the top that has the key. */
function homeOf(steps: readonly PathStep[], key: string): string | null {
  for (let up = steps.length; up >= 0; up--) {
    const base = steps.slice(0, up);
    for (const section of legalKeys(base)) {
      if (legalKeys([...base, section]).includes(key)) return pathText([...base, section]);
    }
    if (up < steps.length && legalKeys(base).includes(key))
      return up === 0 ? 'no section: move it to the left margin' : pathText(base);
  }
  return null;
}
