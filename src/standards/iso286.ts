import { holeDeviationsJ, shaftDeviations } from './iso286-deviations.ts';
import { gradeNames, holeDeltas, standardTolerances } from './iso286-grades.ts';
import type { Lookup } from './table.ts';
import { andThen, found, lookUpStep, missing } from './table.ts';

/** Limit deviations of one tolerance zone, mm from the nominal size: lower is EI or ei, upper is ES or es. */
export interface ToleranceLimits {
  readonly lower: number;
  readonly upper: number;
}

/** A tolerance zone taken apart: 'H7' is the hole letter H in grade 7. */
export interface ToleranceZone {
  readonly kind: 'hole' | 'shaft';
  readonly letter: string;
  readonly grade: string;
}

const lettersByRule = 'c d e f g h js j k m n p r s t u';

/**
 * Limit deviations of a tolerance zone, mm.
 *
 * Capital letters are holes (H7, K6, JS7), small letters are shafts (h6, g6, js6). Sizes over 0 up to 500 mm,
 * letters C to U and c to u without the rare ones (a b cd ef fg), grades IT01 to IT18 where the letter allows.
 * js and JS are exactly +-IT/2: for an odd IT in grades 7 to 11 the standard also allows +-(IT - 1)/2, which some
 * tables print; that choice is not made here.
 * Source: ISO 286-1:2010 rules as in Machine Drawing (Narayana et al.), table 15.3; figures from the tables beside.
 * Errors: a sentence for a bad zone, a size outside the tables, or a letter that is not used there.
 */
export function toleranceLimits(nominal: number, zone: string): Lookup<ToleranceLimits> {
  return andThen(parseZone(zone), (parsed) =>
    andThen(toleranceInMicrometres(nominal, parsed.grade), (IT) => {
      const limits = parsed.kind === 'hole' ? holeLimits(nominal, parsed, IT) : shaftLimits(nominal, parsed, IT);
      return andThen(limits, ([lower, upper]) => found({ lower: inMillimetres(lower), upper: inMillimetres(upper) }));
    }),
  );
}

/** Standard tolerance IT of a size, mm; grade '01', '0', '1' ... '18' or the number. Source: ISO 286-1:2010 table 1. */
export function standardTolerance(nominal: number, grade: string | number): Lookup<number> {
  return andThen(toleranceInMicrometres(nominal, String(grade)), (IT) => found(inMillimetres(IT)));
}

/** Take a zone such as 'H7' or 'js6' apart, or say what a zone looks like. */
export function parseZone(zone: string): Lookup<ToleranceZone> {
  const match = /^\s*([A-Za-z]{1,2})\s*(\d{1,2})\s*$/.exec(zone);
  const letter = match?.[1] ?? '';
  const grade = match?.[2] ?? '';
  if (match === null) return missing(`"${zone}" is not a tolerance zone; write a letter and a grade, as in H7 or g6.`);
  if (!gradeNames.includes(grade)) {
    return missing(`"${zone}" has no tolerance grade; ISO 286 grades are ${gradeNames.join(', ')}.`);
  }
  const isHole = letter === letter.toUpperCase();
  const isShaft = letter === letter.toLowerCase();
  if (!isHole && !isShaft) return missing(`"${zone}" mixes capitals: holes are written JS7, shafts js7.`);
  if (!lettersByRule.split(' ').includes(letter.toLowerCase())) {
    return missing(
      `The letter of "${zone}" is not in the tables here; they hold ${lettersByRule} and the same in capitals.`,
    );
  }
  return found({ kind: isHole ? 'hole' : 'shaft', letter, grade });
}

type Pair = readonly [lower: number, upper: number];

function shaftLimits(nominal: number, zone: ToleranceZone, IT: number): Lookup<Pair> {
  const { letter } = zone;
  if (letter === 'js') return found([-IT / 2, IT / 2]);
  return andThen(shaftDeviation(nominal, zone), (deviation) =>
    found('cdefgh'.includes(letter) ? [deviation - IT, deviation] : [deviation, deviation + IT]),
  );
}

function holeLimits(nominal: number, zone: ToleranceZone, IT: number): Lookup<Pair> {
  const { letter } = zone;
  if (letter === 'JS') return found([-IT / 2, IT / 2]);
  if ('CDEFGH'.includes(letter)) {
    // Clearance holes mirror the shaft of the same letter: EI = -es.
    return andThen(shaftDeviation(nominal, zone), (es) => found([-es, -es + IT]));
  }
  return andThen(upperDeviationOfHole(nominal, zone), (ES) => found([ES - IT, ES]));
}

/** es for c to h, ei for j to u, micrometres; holes ask with their own letter and get the shaft's figure. */
function shaftDeviation(nominal: number, zone: ToleranceZone): Lookup<number> {
  const letter = zone.letter.toLowerCase();
  const grade = Number(zone.grade);
  if (letter === 'k' && zone.kind === 'shaft' && (grade < 4 || grade > 7 || zone.grade === '01')) return found(0);
  const column = letter === 'j' ? jColumn(nominal, zone) : found(letter);
  return andThen(column, (name) => {
    if (name === 'j8') return found(-6);
    return andThen(lookUpStep(shaftDeviations, nominal), (row) => {
      const deviation = row.deviation[name] ?? null;
      if (deviation !== null) return found(deviation);
      return missing(`ISO 286 does not use the letter ${zone.letter} for sizes over ${row.over} up to ${row.upTo} mm.`);
    });
  });
}

/** Which column of the shaft table holds this j zone. */
function jColumn(nominal: number, zone: ToleranceZone): Lookup<string> {
  if (zone.grade === '5' || zone.grade === '6') return found('j5');
  if (zone.grade === '7') return found('j7');
  if (zone.grade === '8' && nominal <= 3) return found('j8');
  return missing(
    `ISO 286 has j5, j6 and j7 (and j8 up to 3 mm), not ${zone.letter}${zone.grade} at ${nominal} mm; js takes any grade.`,
  );
}

/** ES of the holes J to U, micrometres, by the rules of ISO 286-1. */
function upperDeviationOfHole(nominal: number, zone: ToleranceZone): Lookup<number> {
  const { letter } = zone;
  const grade = Number(zone.grade);
  if (letter === 'J') {
    if (grade < 6 || grade > 8)
      return missing(`ISO 286 has the holes J6, J7 and J8, not J${zone.grade}; JS takes any grade.`);
    return andThen(lookUpStep(holeDeviationsJ, nominal), (row) => found(row.deviation[`J${grade}`] ?? 0));
  }
  // The one exception in the table: M6 over 250 up to 315 mm has -9 where the rule gives -11.
  if (letter === 'M' && grade === 6 && nominal > 250 && nominal <= 315) return found(-9);
  if (letter === 'N' && grade > 8) return found(nominal <= 3 ? -4 : 0);
  if (letter === 'K' && grade > 8)
    return missing(`ISO 286 has no hole K coarser than K8; K${zone.grade} was asked for.`);
  const lastGradeWithDelta = 'KMN'.includes(letter) ? 8 : 7;
  return andThen(shaftDeviation(nominal, zone), (mirrored) => {
    if (grade > lastGradeWithDelta) return found(-mirrored);
    return andThen(deltaOf(nominal, zone), (delta) => found(-mirrored + delta));
  });
}

function deltaOf(nominal: number, zone: ToleranceZone): Lookup<number> {
  return andThen(lookUpStep(holeDeltas, nominal), (row) => {
    const delta = row.delta[zone.grade];
    if (delta !== undefined) return found(delta);
    return missing(`ISO 286 gives no ${zone.letter}${zone.grade}: holes K to U start at grade 3.`);
  });
}

function toleranceInMicrometres(nominal: number, grade: string): Lookup<number> {
  return andThen(lookUpStep(standardTolerances, nominal), (row) => {
    const IT = row.IT[grade];
    if (IT === undefined) return missing(`ISO 286 has no grade IT${grade}; the grades are ${gradeNames.join(', ')}.`);
    if (Number(grade) >= 14 && nominal <= 1)
      return missing(`ISO 286 does not use IT14 to IT18 up to 1 mm; ${nominal} mm was asked for.`);
    return found(IT);
  });
}

/** Micrometres to millimetres without a tail of binary noise, and never minus zero. */
function inMillimetres(micrometres: number): number {
  return Math.round(micrometres * 10) / 10_000 + 0;
}
