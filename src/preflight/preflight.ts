/**
 * Pre-flight of a drawing that goes to a cutting service: is it one clean flat part, at its true scale, that can be cut?
 *
 * Bytes in, findings out. Nothing throws, whatever the bytes; what is too large or too tangled is said to be so. The file is read
 * by the published DXF reference, blocks are opened, curves followed, and everything is judged in mm.
 */
import type { DrawingFacts, PlacedFinding, Preflight } from '../model/preflight.ts';
import type { Material } from '../standards/materials.ts';
import { type Chains, chainsOf } from './chain.ts';
import { crossingsOf, type Track } from './crossings.ts';
import { type Drawing, drawDocument, type Piece } from './draw.ts';
import { drawnCuts } from './drawn-cuts.ts';
import { factFindings, factsOf } from './facts.ts';
import { type FaultLog, faultLog } from './fault-log.ts';
import { told, unjudged } from './held.ts';
import { fullBudget } from './limits.ts';
import { type Nested, nestingOf } from './nest.ts';
import { noteNesting } from './nest-faults.ts';
import { readDxf } from './read-dxf.ts';
import { readFileText, unreadable } from './read-file.ts';
import { roundDiameter } from './round.ts';
import { type ServiceProfile, serviceFindings, usualProfile } from './service-limits.ts';
import { singlesOf } from './singles.ts';
import { noteSmall, type Sized } from './small.ts';
import { type DrawingUnit, scaleDoubts, unitOf } from './units.ts';

export interface PreflightOptions {
  /** Thickness of the sheet, mm. */
  readonly thickness?: number | undefined;
  readonly material?: Material | undefined;
  /** Unit of the drawing; goes before what the file says. */
  readonly units?: 'mm' | 'in' | undefined;
  /** Limits of the cutting service; left out: the usual ones. */
  readonly profile?: ServiceProfile | undefined;
}

/** Looks at a file. `isReadable` is false where it is no DXF that can be read at all. */
export function preflightDxf(bytes: Uint8Array, options: PreflightOptions = {}): Preflight {
  const file = readFileText(bytes);
  if (!file.ok) return { isReadable: false, findings: [file.finding], facts: null, cuts: null };
  const read = readDxf(file.text);
  if (!read.ok || (!read.value.hasEntities && read.value.entities.length === 0 && read.value.header.size === 0)) {
    const why = read.ok ? 'There is no section of a DXF in this file.' : read.why;
    const damaged = unreadable('dxf-damaged', 'file that is no sound DXF', why, 'Save it again as an ASCII DXF.');
    return { isReadable: false, findings: damaged.ok ? [] : [damaged.finding], facts: null, cuts: null };
  }
  const log = faultLog();
  const { header, isEnded, groups } = read.value;
  if (!isEnded || !groups.isWhole) {
    const line = 2 * groups.values.length;
    log.add('dxf-truncated', { entity: 0, type: '', line, layer: '', x: null, y: null });
  }
  const unit = unitOf(header, options.units);
  const drawing = drawDocument(read.value, unit.mm, log);
  return judged(header.get('$ACADVER') ?? '', unit, drawing, log, options);
}

/** Faults with which nobody knows what the contours are, and so how wide a web or a part is. A doubtful scale is another. */
const unsettled = ['dxf-open-contour', 'dxf-branch', 'dxf-overlap', 'dxf-hole-outside'] as const;

const limitsLater = unjudged({
  code: 'dxf-limits',
  title: 'holes, webs, corners and size of the part',
  why: 'They are judged once every contour is closed, clear of the others, in its place and to scale.',
  missing: 'Mend the contours and the scale first.',
});

/** Not a pass: what was not looked at may be wrong. */
const tangled = told(
  {
    code: 'dxf-tangled',
    title: 'more lines side by side than are looked at',
    why: 'The drawing is so large or so tangled that not every line was held against every other: what was not seen may be wrong.',
    cure: 'Send one part a file, as lines and arcs, without copies.',
  },
  'caution',
);

function judged(
  release: string,
  unit: DrawingUnit,
  drawing: Drawing,
  log: FaultLog,
  options: PreflightOptions,
): Preflight {
  const sized = noteSmall(drawing.pieces, unit.mm, log);
  const singles = singlesOf(sized.pieces, unit.mm, log, fullBudget());
  const chains = chainsOf(singles.pieces, singles.overlapping, unit.mm, log);
  const crossings = crossingsOf(tracksOf(chains), unit.mm, log, fullBudget());
  const nesting = nestingOf(chains.loops, fullBudget());
  const contours: readonly Nested[] = nesting ?? [];
  noteNesting(contours, crossings.crossed, unit.mm, log);
  const facts = factsOf({ release, unit, contours, pieces: singles.pieces, options });
  const doubts = doubtsOf(unit, facts, sized, contours);
  const isClear = crossings.crossed.size === 0 && doubts.length === 0 && !log.has(...unsettled);
  const profile = options.profile ?? usualProfile;
  const limits = isClear
    ? serviceFindings({ contours, thickness: options.thickness ?? null, profile, unit: unit.mm, budget: fullBudget() })
    : [limitsLater];
  const isWhole = singles.isWhole && crossings.isWhole && nesting !== null;
  const findings: PlacedFinding[] = [
    ...unit.findings,
    ...doubts,
    ...emptiness(drawing, singles.pieces),
    ...log.findings(),
    ...(isWhole ? [] : [tangled]),
    ...limits,
    ...factFindings(facts, { drawing, log, isWhole, widestJoin: chains.widestJoin, options }),
  ];
  return { isReadable: true, findings, facts, cuts: drawnCuts(chains, unit.mm) };
}

/** Contours and loose lines as tracks, contours first and in their own order. */
function tracksOf({ loops, loose }: Chains): Track[] {
  return [
    ...loops.map(({ stretches, places }) => ({ stretches, places, isClosed: true })),
    ...loose.map(({ stretches, places }) => ({ stretches, places, isClosed: false })),
  ];
}

function doubtsOf(
  unit: DrawingUnit,
  facts: DrawingFacts,
  { far }: Sized,
  contours: readonly Nested[],
): PlacedFinding[] {
  if (far) return [];
  const holes = contours.flatMap((nested) => {
    const diameter = nested.depth % 2 === 1 ? roundDiameter(nested) : null;
    return diameter === null ? [] : [Number((diameter / unit.mm).toFixed(9))];
  });
  return scaleDoubts(unit, Math.max(facts.width, facts.height) / unit.mm, holes);
}

function emptiness({ entities }: Drawing, pieces: readonly Piece[]): PlacedFinding[] {
  if (pieces.length > 0) return [];
  return [
    told(
      {
        code: 'dxf-nothing-to-cut',
        title: 'drawing without a cut',
        why:
          entities === 0
            ? 'There is no entity in the model space of this file that is shown.'
            : 'Nothing in this file is a line or an arc that could be cut.',
        cure: 'Export the outline of the part, in model space, on a layer that is shown.',
      },
      'fail',
    ),
  ];
}
