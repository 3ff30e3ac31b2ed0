/** What one unit of a drawing is, by its header or by who sends it, and whether its sizes belie that. */
import { dxfUnits } from '../measure/dxf-groups.ts';
import type { DrawingFacts, PlacedFinding } from '../model/preflight.ts';
import { usualSheet } from '../standards/sheet-parts.ts';
import { short } from './fault-log.ts';
import { told } from './held.ts';

export interface DrawingUnit {
  readonly name: string;
  /** mm in one. */
  readonly mm: number;
  readonly from: DrawingFacts['unitsFrom'];
  readonly findings: readonly PlacedFinding[];
}

const stateIt = 'Set the unit of the drawing (INSUNITS 4 for millimetres) and save again; state it in the order too.';

/** The unit by $INSUNITS; `given` goes before it, and stands in where the file says nothing. Else millimetres. */
export function unitOf(header: ReadonlyMap<string, string>, given: 'mm' | 'in' | undefined): DrawingUnit {
  const code = Number(header.get('$INSUNITS') ?? 0);
  const stated = dxfUnits[code];
  const chosen = given === undefined ? stated : dxfUnits[given === 'in' ? 1 : 4];
  const { name, mm } = chosen ?? { name: 'millimetres', mm: 1 };
  const from = given !== undefined ? 'given' : stated !== undefined ? 'file' : 'assumed';
  const says = (verdict: 'pass' | 'caution', why: string, cure = stateIt): PlacedFinding =>
    told({ code: 'dxf-units', title: 'unit of the drawing', why, cure }, verdict);
  const findings: PlacedFinding[] = [];
  if (given !== undefined && stated !== undefined && stated.mm !== mm) {
    findings.push(says('caution', `The file says ${stated.name}, you say ${name}: it was read in ${name}.`));
  } else if (from === 'given')
    findings.push(says('pass', `Read in ${name}, as you said; the file itself is silent or agrees.`));
  else if (stated === undefined) {
    const odd = code > 0 ? `gives a unit that no part is drawn in (INSUNITS ${code})` : 'does not say its unit';
    findings.push(says('caution', `The file ${odd}. It was read in millimetres; another reader may take inches.`));
  } else if (code === 1 || code === 4) findings.push(says('pass', `The file says ${name}.`));
  else
    findings.push(
      says('caution', `The file says ${name}: services read millimetres or inches, and pass over the rest.`),
    );
  const system = header.get('$MEASUREMENT');
  const isImperial = [1, 2, 8, 9].includes(code);
  if (stated !== undefined && (system === '0' || system === '1') && (system === '0') !== isImperial) {
    findings.push(
      told(
        {
          code: 'dxf-units-disagree',
          title: 'two statements of the unit',
          why: `INSUNITS says ${stated.name}, MEASUREMENT says ${system === '0' ? 'inches' : 'metric'}: readers go by one or the other.`,
          cure: stateIt,
        },
        'caution',
      ),
    );
  }
  return { name, mm, from, findings };
}

/** Multiples of `step`, as a draughtsman types them. */
const isMultiple = (value: number, step: number, slack: number): boolean =>
  Math.abs(value / step - Math.round(value / step)) * step <= slack;

const sixtyFourth = (inches: number): boolean => isMultiple(inches, 1 / 64, 1e-5);
const tenth = (mm: number): boolean => isMultiple(mm, 0.1, 1e-5);
/** A tenth of a millimetre that was divided by 25.4 and rounded to four decimals. */
const tenthInInches = (inches: number): boolean => isMultiple(inches * 25.4, 0.1, 0.0015);

/**
 * Doubts about the scale, by the size of the drawing and its round holes, all in drawing units.
 * Inch figures read as mm give holes of 0.25 and 2.25; mm figures read as inches give parts of metres.
 */
export function scaleDoubts(unit: DrawingUnit, size: number, holes: readonly number[]): PlacedFinding[] {
  const sample =
    holes.length === 0 ? 'no round hole' : `round holes of ${[...new Set(holes.map(short))].slice(0, 4).join(', ')}`;
  const doubt = (code: string, title: string, why: string, cure: string) =>
    told({ code, title, why: `${why} (Extents ${short(size)}, ${sample}, in the numbers of the file.)`, cure }, 'fail');
  const all = (test: (d: number) => boolean) => holes.length > 0 && holes.every(test);
  const isMm = unit.mm === 1;
  if (isMm && size < 25 && holes.some((d) => !tenth(d)) && (all(sixtyFourth) || all(tenthInInches))) {
    return [
      doubt(
        'dxf-inch-read-as-mm',
        'inches read as millimetres',
        'The part is tiny and its holes are fractions of an inch: these look like inches, read as millimetres.',
        'Set the unit to inches, or scale by 25.4, and save again. If it truly is that small, say so in the order.',
      ),
    ];
  }
  if (isMm && size < 15 && holes.some((d) => d < 1)) {
    return [
      doubt(
        'dxf-inch-read-as-mm',
        'inches read as millimetres',
        'The part is smaller than any service cuts, with holes that none can make: the numbers are probably inches.',
        'Set the unit to inches, or scale by 25.4, and save again.',
      ),
    ];
  }
  const isLarge = size * unit.mm > usualSheet.long;
  if (unit.mm === 25.4 && (isLarge || (size > 40 && all(tenth) && holes.some((d) => !sixtyFourth(d))))) {
    return [
      doubt(
        'dxf-mm-read-as-inch',
        'millimetres read as inches',
        `The part would be ${short((size * 25.4) / 1000)} m long, or its holes are round figures in millimetres: these look like millimetres, declared as inches.`,
        'Set the unit to millimetres and save again.',
      ),
    ];
  }
  const twice = (d: number) => tenth(d / 25.4) || isMultiple(d / 25.4, 0.1, 1e-4);
  const isTwice =
    isMm && size > 500 && all(twice) && holes.some((d) => !tenth(d)) && holes.some((d) => !sixtyFourth(d / 25.4));
  if (isTwice || (isMm && size < 1 && size > 0)) {
    return [
      doubt(
        'dxf-scale',
        'scale of the drawing',
        isTwice
          ? 'Every hole is a round figure of millimetres times 25.4: it was converted once too often.'
          : 'The whole drawing is smaller than a millimetre: it is in another unit, metres perhaps.',
        'Scale the drawing to its true size in millimetres and save again.',
      ),
    ];
  }
  return [];
}
