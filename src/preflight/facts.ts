/** What was read from a sound drawing: the numbers that a service quotes by, and the proof of the scale. */
import { contourLength, stretchBox, stretchLength } from '../geometry/contour-stretch.ts';
import type { DrawingFacts, PlacedFinding } from '../model/preflight.ts';
import type { Material } from '../standards/materials.ts';
import type { Drawing, Piece } from './draw.ts';
import type { FaultCode } from './fault-kinds.ts';
import type { FaultLog } from './fault-log.ts';
import { short } from './fault-log.ts';
import { told, unjudged } from './held.ts';
import type { Nested } from './nest.ts';
import { roundDiameter } from './round.ts';
import type { DrawingUnit } from './units.ts';

interface Sheet {
  readonly thickness?: number | undefined;
  readonly material?: Material | undefined;
}

interface Read {
  readonly release: string;
  readonly unit: DrawingUnit;
  readonly contours: readonly Nested[];
  readonly pieces: readonly Piece[];
  readonly options: Sheet;
}

/** Rounded to a millionth: facts are for reading and for comparing. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

export function factsOf({ release, unit, contours, pieces, options }: Read): DrawingFacts {
  const box = { xMin: Infinity, yMin: Infinity, xMax: -Infinity, yMax: -Infinity };
  let loose = 0;
  for (const stretch of pieces.flatMap((piece) => piece.stretches)) {
    const own = stretchBox(stretch);
    loose += stretchLength(stretch);
    box.xMin = Math.min(box.xMin, own.xMin);
    box.yMin = Math.min(box.yMin, own.yMin);
    box.xMax = Math.max(box.xMax, own.xMax);
    box.yMax = Math.max(box.yMax, own.yMax);
  }
  const round = contours.flatMap((nested) => {
    const diameter = nested.depth % 2 === 1 ? roundDiameter(nested) : null;
    return diameter === null ? [] : [diameter];
  });
  const area = contours.reduce((sum, nested) => sum + (nested.depth % 2 === 0 ? nested.area : -nested.area), 0);
  const { thickness, material } = options;
  return {
    release,
    units: unit.name,
    unitsFrom: unit.from,
    width: pieces.length === 0 ? 0 : tidy(box.xMax - box.xMin),
    height: pieces.length === 0 ? 0 : tidy(box.yMax - box.yMin),
    contours: contours.length,
    parts: contours.filter(({ depth }) => depth % 2 === 0).length,
    holes: contours.filter(({ depth }) => depth % 2 === 1).length,
    pierces: contours.length,
    cutLength: tidy(
      contours.length === 0 ? loose : contours.reduce((sum, { loop }) => sum + contourLength(loop.contour), 0),
    ),
    area: tidy(area),
    mass: thickness === undefined || material === undefined ? null : tidy(area * thickness * material.density),
    largestHole: round.length === 0 ? null : tidy(round.reduce((a, b) => Math.max(a, b))),
    smallestHole: round.length === 0 ? null : tidy(round.reduce((a, b) => Math.min(a, b))),
  };
}

interface Looked {
  readonly drawing: Drawing;
  readonly log: FaultLog;
  readonly isWhole: boolean;
  readonly widestJoin: number;
  readonly options: Sheet;
}

const strayKinds: readonly FaultCode[] = [
  'dxf-text',
  'dxf-dimensions',
  'dxf-hatch',
  'dxf-points',
  'dxf-pictures',
  'dxf-construction',
  'dxf-solids',
  'dxf-unknown-entity',
  'dxf-splines',
  'dxf-spline-points',
  'dxf-ellipses',
];

/** Passes: what was looked for and not found, and what was read. */
export function factFindings(
  facts: DrawingFacts,
  { drawing, log, isWhole, widestJoin, options }: Looked,
): PlacedFinding[] {
  const kinds = [...drawing.kinds].map(([kind, count]) => `${count} ${kind.slice(0, 24)}`).join(', ');
  const clean = (code: string, title: string, why: string, ...faults: readonly FaultCode[]): PlacedFinding[] =>
    log.has(...faults) || drawing.pieces.length === 0 ? [] : [told({ code, title, why }, 'pass')];
  const blocks =
    drawing.blocksOpened === 0
      ? ''
      : ` ${drawing.blocksOpened} blocks were opened: explode them if the service asks for it.`;
  const marks =
    drawing.marks === 0
      ? ''
      : ` ${drawing.marks} more lie on layers for bends, marks or engraving and were not counted as cuts: name those layers in the order.`;
  const passes = [
    ...clean('dxf-entities', 'nothing but lines and arcs', `${kinds}.${blocks}${marks}`, ...strayKinds),
    ...clean(
      'dxf-plane',
      'flat, seen from above',
      'Every entity lies in the plane of the sheet, at height 0.',
      'dxf-height',
      'dxf-not-flat',
      'dxf-tilted',
      'dxf-mirrored-plane',
      'dxf-mirrored-block',
    ),
    ...clean(
      'dxf-closed',
      'closed contours',
      `All ${facts.contours} contours close${widestJoin > 1e-6 ? `; the widest gap joined is ${short(widestJoin)} mm` : ''}.`,
      'dxf-open-contour',
      'dxf-branch',
      'dxf-bad-bulge',
      'dxf-bad-number',
    ),
  ];
  if (isWhole) {
    passes.push(
      ...clean(
        'dxf-single',
        'each edge drawn once',
        'Nothing is drawn twice or lies on something else.',
        'dxf-duplicates',
        'dxf-overlap',
      ),
      ...clean(
        'dxf-clear',
        'contours clear of each other',
        'No contour crosses or touches itself or another.',
        'dxf-crossing',
        'dxf-self-crossing',
      ),
    );
  }
  return drawing.pieces.length === 0 ? passes : [...passes, ...numbers(facts, options)];
}

function numbers(facts: DrawingFacts, { thickness, material }: Sheet): PlacedFinding[] {
  const inches = (mm: number) => `${(mm / 25.4).toFixed(4)} in`;
  const { width, height, largestHole } = facts;
  const proof =
    largestHole === null
      ? `The drawing reads ${width.toFixed(3)} x ${height.toFixed(3)} mm (${inches(width)} x ${inches(height)}).`
      : `The largest hole reads ${largestHole.toFixed(3)} mm (${inches(largestHole)}).`;
  const list = [
    told(
      {
        code: 'dxf-scale-proof',
        title: largestHole === null ? 'proof of the scale: width over all' : 'proof of the scale: largest hole',
        unit: 'mm',
        why: `${proof} State it in the order: whoever opens the file can measure it.`,
      },
      'pass',
      largestHole ?? width,
    ),
    told(
      {
        code: 'dxf-width',
        title: 'extents, across',
        unit: 'mm',
        why: `${width.toFixed(3)} x ${height.toFixed(3)} mm over all.`,
      },
      'pass',
      width,
    ),
    told(
      {
        code: 'dxf-height-over-all',
        title: 'extents, up',
        unit: 'mm',
        why: `${width.toFixed(3)} x ${height.toFixed(3)} mm over all.`,
      },
      'pass',
      height,
    ),
    told(
      { code: 'dxf-cut-length', title: 'length of all cuts', unit: 'mm', why: 'The service quotes by it.' },
      'pass',
      facts.cutLength,
    ),
    told(
      { code: 'dxf-pierces', title: 'pierces', why: `One a contour: ${facts.parts} outside, ${facts.holes} holes.` },
      'pass',
      facts.pierces,
    ),
    told({ code: 'dxf-area', title: 'area of metal', unit: 'mm2', why: 'Outsides less holes.' }, 'pass', facts.area),
  ];
  if (facts.mass === null) {
    const missing = [
      thickness === undefined ? 'the thickness (--thickness 3)' : '',
      material === undefined ? 'the material (--material DC01)' : '',
    ];
    list.push(
      unjudged({
        code: 'dxf-mass',
        title: 'mass of the part',
        unit: 'g',
        why: 'Area times thickness times density.',
        missing: `Give ${missing.filter((word) => word !== '').join(' and ')}, or a job with --job.`,
      }),
    );
  } else {
    list.push(
      told(
        {
          code: 'dxf-mass',
          title: 'mass of the part',
          unit: 'g',
          why: `${short(thickness ?? 0)} mm ${material?.name ?? ''}.`,
        },
        'pass',
        facts.mass,
      ),
    );
  }
  return list;
}
