/** The notes of an adapter's drawing: what no view can say. mm of paper. */
import type { Shape } from '../../model/drawing.ts';
import { generalTolerance } from '../../standards/general-tolerances.ts';
import { machiningRule } from '../../standards/machining-practice.ts';
import { gradeOfRoughness } from '../../standards/surface-roughness.ts';
import { must } from '../../standards/table.ts';
import { withinTurn } from '../../units/turn.ts';
import type { LabelUnits } from '../length-text.ts';
import { textWidth } from '../text-size.ts';
import { ringOf } from './bolt-circles.ts';
import type { CuttingLine, CutZone } from './cutting-line.ts';
import type { Block } from './hole-list.ts';
import { datumOf, sectionLetter } from './section-on-sheet.ts';
import { cap, moved, text, wrapped } from './shapes.ts';
import { angleText, limitTexts, sizeText, toleranceText } from './size-text.ts';
import { balloon, balloonRadius, roughness } from './symbols.ts';
import type { AdapterToDraw, SizeToDraw } from './to-draw.ts';

/**
 * Roughness asked for, um Ra. Common practice: what a finishing cut on the lathe leaves on a surface that seats or centres, and what an
 * ordinary cut leaves elsewhere; both well within what turning reaches.
 */
export const asked = { seats: 1.6, elsewhere: 3.2 } as const;

/** "Ra 1.6 (N7)"; in inches "63 uin (N7)". */
export function roughnessText(Ra: number, units: LabelUnits): string {
  const { grade, microinches } = must(gradeOfRoughness(Ra));
  return units === 'in' ? `${microinches} \u00b5in (${grade})` : `Ra ${Ra} (${grade})`;
}

const lineHeight = 3.7;

/** Paragraphs with numbers before them, `width` wide. */
export function paragraphs(list: readonly string[], width: number, size: number = cap.table): Block {
  const lines = list.flatMap((words, i) =>
    wrapped(words, width - 6, size).map((one, k) => ({ number: k === 0 ? String(i + 1) : '', one })),
  );
  const height = lines.length * lineHeight;
  const shapes = lines.flatMap(({ number, one }, i): Shape[] => {
    const y = height - (i + 1) * lineHeight + 0.9;
    return [...(number === '' ? [] : [text(number, { x: 0, y }, size)]), text(one, { x: 6, y }, size)];
  });
  return { width, height, shapes };
}

function metBy(zones: readonly CutZone[]): string[] {
  return zones.flatMap(({ set, drilling }) => {
    const hole = set?.holes.find((one) => one.drilling === drilling?.id);
    return hole ? [hole.tag] : [];
  });
}

/** The steps of the general tolerance in the drawing's unit: a shop need not own the standard. */
function generalNote(units: LabelUnits): string {
  const ends = [3, 6, 30, 120, 400];
  const rows = ends.map((end) => ({ end, value: must(generalTolerance(end, 'm')).plusMinus }));
  // Neighbouring steps with one tolerance are one step.
  const steps = rows.filter(({ value }, i) => rows[i + 1]?.value !== value);
  return steps.map(({ end, value }) => `to ${sizeText(end, units)} \u00b1${toleranceText(value, units)}`).join('; ');
}

/** What the notes say, in order. */
export function noteTexts(drawn: AdapterToDraw, cutting: CuttingLine, more: readonly string[]): string[] {
  const { title, chamfer, clocking, setup, sets } = drawn;
  const { units } = title;
  const edge = must(machiningRule('chamfer', 0)).value;
  const turn = withinTurn(clocking);
  const sides = new Set(sets.map(({ side }) => side));
  const halves = [metBy(cutting.upper), metBy(cutting.lower)];
  const met = halves.flatMap((tags, i) =>
    tags.length > 0 ? [`${tags.join(' and ')} (${i === 0 ? 'above' : 'below'} the axis)`] : [],
  );
  return [
    `Datum A: ${datumOf(drawn).what}. Holes are placed from it; depths run from the face of the side they are seen from. +X runs to the right in each view; seen from the driven side it passes through the index mark.`,
    ...(sets.some(({ holes }) => ringOf(holes, 0) !== null)
      ? ['Circles and angles in frames are exact: how far a hole may stray from them stands over its table.']
      : []),
    'Scribe the index mark on the rim where it is drawn: it is the zero of all angles, counter-clockwise seen from the driven side. Angles in tables run counter-clockwise from +X as each view is seen.',
    ...(turn > 1e-6 && sides.has('driven') && sides.has('driving')
      ? [
          `Driven holes are turned ${angleText(turn)} against the driving ones, counter-clockwise seen from the driven side.`,
        ]
      : []),
    ...(met.length > 0
      ? [`Section ${sectionLetter}-${sectionLetter} runs through ${met.join(', ')}, turned into one plane.`]
      : []),
    `Turning over: ${setup}.`,
    `Sizes without limits: ${generalNote(units)}.`,
    `Rim edges ${sizeText(chamfer, units)} x 45\u00b0; other edges broken, ${sizeText(edge, units)} at most.`,
    `Numbers in circles are the lines of the inspection record. One revision, ${title.revision}, is on all files and parts that belong together.`,
    ...more,
  ];
}

/** Roughness of the seats and of everything else, as symbols with what they hold for; one under the other where it must be. */
export function roughnessBlock(units: LabelUnits, seats: string, width: number): Block {
  const pieces = [
    { value: roughnessText(asked.seats, units), words: seats },
    { value: roughnessText(asked.elsewhere, units), words: 'elsewhere' },
  ].map(({ value, words }) => {
    const start = 8 + textWidth(value, cap.table);
    return {
      width: start + textWidth(words, cap.table),
      shapes: [...roughness(value, { x: 2, y: 1 }), text(words, { x: start, y: 2.6 }, cap.table)],
    };
  });
  const [first, second] = pieces as [(typeof pieces)[number], (typeof pieces)[number]];
  const wide = first.width + 8 + second.width;
  if (wide <= width) {
    return {
      width: wide,
      height: 8,
      shapes: [...first.shapes, ...moved(second.shapes, { x: first.width + 8, y: 0 })],
    };
  }
  return {
    width: Math.max(first.width, second.width),
    height: 17,
    shapes: [...moved(first.shapes, { x: 0, y: 9 }), ...second.shapes],
  };
}

/** Sizes of the record that no view shows, each with its balloon. */
export function furtherSizes(sizes: readonly SizeToDraw[], units: LabelUnits, width: number): Block {
  const pitch = 6.4;
  const height = sizes.length === 0 ? 0 : sizes.length * pitch + 5;
  return {
    width,
    height,
    shapes: sizes.flatMap((size, i) => {
      const y = height - 5 - (i + 1) * pitch + pitch / 2;
      const [high, low] =
        size.unit === 'mm' ? limitTexts(size.lower, size.upper, units) : [size.upper.toFixed(0), size.lower.toFixed(0)];
      const limits = size.lower === 0 ? `at most ${high}` : `${low} to ${high}`;
      return [
        ...(i === 0 ? [text('also inspected', { x: 0, y: height - 3.4 }, cap.size, { bold: true })] : []),
        ...balloon(size.number, { x: balloonRadius + 0.4, y }),
        text(
          `${size.what}: ${limits}`,
          { x: 8, y: y - 1 },
          Math.min(cap.table, (width - 8) / textWidth(`${size.what}: ${limits}`, 1)),
        ),
      ];
    }),
  };
}
