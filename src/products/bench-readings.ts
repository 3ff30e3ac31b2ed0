/** What was measured of both flanges, as it was typed, with its doubt and its instrument. */
import { sizeText } from '../drawing/shop/size-text.ts';
import { asTyped } from '../job/as-typed.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { Measured } from '../job/measured.ts';
import type { FlangeInput } from '../job/schema.ts';
import { type DialTyped, isAround, totalOf } from '../job/schema-readings.ts';
import type { BenchSheet, ReadingLine } from '../report/bench-sheet.ts';

type Side = 'driving' | 'driven';

/** What a size was read with, where nobody named an instrument: the question mark says so. */
const toolWords: Readonly<Record<Measured['basis'], string>> = {
  given: 'caliper?',
  repeated: 'caliper?',
  catalogue: 'catalogue',
  stated: 'as stated',
  proven: 'fit ring',
};

/** More dial readings than these are told by how many they are. */
const mostDial = 8;

/** A size as it counts: with the decimals that it was typed with where it counts as it was typed, in mm. */
function countsAs(size: Measured, words: string, units: Joint['job']['units']): string {
  const [first] = /^\d+\.\d+/.exec(words) ?? [];
  const isSame = first !== undefined && units === 'mm' && Number(first) === size.value;
  return `${isSame ? first : sizeText(size.value, units)} \u00b1${sizeText(size.doubt, units)}`;
}

/** A size of a known pattern that nobody measured says so. */
function sizeLine(what: string, typed: Measured | undefined, resolved: Measured | null, joint: Joint): ReadingLine[] {
  const { units } = joint.job;
  const size = typed ?? resolved;
  if (!size) return [];
  const words = typed ? asTyped(typed) : null;
  return [
    {
      what,
      typed: typed ? (words?.words ?? '') : 'pattern, not measured',
      counts: countsAs(size, words?.words ?? '', units),
      tool: typed ? (words?.instrument ?? toolWords[size.basis]) : toolWords.catalogue,
    },
  ];
}

const plain = (what: string, typed: string, counts = '', tool = ''): ReadingLine => ({ what, typed, counts, tool });

function dialLine(what: string, read: DialTyped | undefined, tir: number | null, joint: Joint): ReadingLine[] {
  const { units } = joint.job;
  const size = (mm: number) => sizeText(mm, units);
  if (read === undefined) return [plain(what, tir === null ? 'not read' : `pattern: ${size(tir)}`)];
  if (isAround(read)) {
    const { readings } = read;
    const typed =
      readings.length <= mostDial
        ? readings.map(size).join(', ')
        : `${readings.length} places, ${size(Math.min(...readings))} to ${size(Math.max(...readings))}`;
    return [plain(what, typed, tir === null ? '' : `${size(tir)} in all`, 'dial')];
  }
  const total = totalOf(read);
  if (!total) return [];
  return [plain(what, size(total.value), `${size(total.value)} \u00b1${size(total.doubt)}`, 'dial')];
}

/** The bolt circle as it was found: typed, from chords, or from the place of each hole. */
function circleLines(holes: FlangeInput['holes'], side: Side, joint: Joint): ReadingLine[] {
  const { units } = joint.job;
  const { circle, doubt } = joint[side].holes;
  const counts = circle === null ? '' : `\u00d8${sizeText(circle, units)}`;
  const count = `${holesThere(joint[side].holes).length} holes`;
  if (holes?.circle) {
    return sizeLine('bolt circle', holes.circle, null, joint).map((line) => ({
      ...line,
      typed: `${count}: ${line.typed}`,
    }));
  }
  if (holes?.chord) return sizeLine(`${count}, chord`, holes.chord, null, joint);
  const known = `${counts} \u00b1${sizeText(2 * doubt, units)}`.trim();
  if (holes?.chords) return [plain('bolt circle', `${count}, ${holes.chords.length} chords`, known)];
  if (holes?.at) return [plain('holes', `${count} by X and Y`, `each \u00b1${sizeText(doubt, units)}`)];
  return [plain('bolt circle', `${count}: pattern, not measured`, known)];
}

function linesOf(joint: Joint, side: Side): ReadingLine[] {
  const typed: FlangeInput = joint.job[side];
  const flange = joint[side];
  const { units } = joint.job;
  const own = typeof typed.register === 'object' ? typed.register : undefined;
  const { register, holes } = flange;
  const shape = register?.gender === 'male' ? 'spigot' : 'recess';
  return [
    ...sizeLine('outside', typed.outside, flange.outside, joint),
    ...sizeLine('thickness', typed.thickness, flange.thickness, joint),
    ...(register
      ? [
          ...sizeLine(shape, own?.diameter, register.diameter, joint),
          ...sizeLine(shape === 'spigot' ? 'its height' : 'its depth', own?.depth, register.depth, joint),
        ]
      : [plain('register', 'none')]),
    ...circleLines(typed.holes, side, joint),
    ...(holes.thread === null
      ? sizeLine('hole', typed.holes?.diameter, holes.diameter, joint)
      : [
          plain(
            'thread',
            holes.thread,
            holes.depth === null ? (holes.through ? 'through' : '') : `${sizeText(holes.depth, units)} deep`,
          ),
        ]),
    ...dialLine('run-out, rim', typed.runout?.rim, flange.runout.rim, joint),
    ...dialLine('run-out, face', typed.runout?.face, flange.runout.face, joint),
  ];
}

/** Both flanges' readings. */
export const readingsOf = (joint: Joint): BenchSheet['measured'] =>
  (['driving', 'driven'] as const).map((side) => ({
    name: `${side}: ${joint[side].name}`,
    lines: linesOf(joint, side),
  }));
