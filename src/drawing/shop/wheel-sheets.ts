/** The workshop drawing of a wheel: its outline to an exact scale, and the sizes that the outline file carries. */
import type { Drawing, Shape } from '../../model/drawing.ts';
import type { Contour } from '../../model/sheet.ts';
import { atan2 } from '../../units/trig.ts';
import { arrowHead, centreCross, holeCentre } from '../dimension.ts';
import { polar } from '../face-scene.ts';
import { textWidth } from '../text-size.ts';
import { markCell, markClause } from '../wheel-mark.ts';
import type { WindowsToDraw } from '../wheel-view.ts';
import { balloonNumbers, stacked } from './adapter-sheets.ts';
import { type RingToSet, ringAngles, ringCallouts, ringOf } from './bolt-circles.ts';
import { flowed } from './flow.ts';
import type { Block } from './hole-list.ts';
import { furtherSizes, paragraphs } from './notes.ts';
import { frameOf, scaleText, shopPapers, standardScales } from './paper-sizes.ts';
import { boxOf, cap, fitted, labelNear, line, moved, onPaper, rectangle, text } from './shapes.ts';
import { angleText, degreesText, diameter, limitTexts, placeText, sizeText } from './size-text.ts';
import { balloon, balloonRadius } from './symbols.ts';
import { sheetFace, titleHeight } from './title-block.ts';
import type { SheetChoice, WheelToDraw } from './to-draw.ts';

const contour = (one: Contour): Shape =>
  one.kind === 'circle'
    ? { kind: 'circle', pen: 'outline', fill: 'none', centre: { x: one.x, y: one.y }, r: one.r }
    : { kind: 'path', pen: 'outline', fill: 'none', closed: true, loops: [one.vertices] };

/** The outline about its axis, tooth 1 and the holes named. mm of paper. */
function wheelView({ title, wheel, outside, toothAngle, holes, windows }: WheelToDraw, scale: number): Shape[] {
  const rim = (outside / 2) * scale;
  const out: Shape[] = [
    ...onPaper(
      [
        ...centreCross({ x: 0, y: 0 }, outside / 2 + 3 / scale),
        ...(holes?.positions ?? []).flatMap((p) => holeCentre(p, (holes?.diameter ?? 0) / 2 + 1 / scale)),
        ...[...wheel.holes, wheel.outside].map(contour),
      ],
      scale,
      { x: 0, y: 0 },
    ),
  ];
  const ring = holes && ringOf(holes.positions, 0);
  // What is cut has the tolerance of the cut, no position tolerance: nothing is theoretically exact.
  const rings: RingToSet[] = ring
    ? [
        {
          ring,
          words: `${ring.count} x ${diameter(holes.diameter, title.units)}`,
          datum: '+X',
          wide: holes.diameter / 2,
          exact: false,
        },
      ]
    : [];
  if (ring) out.push({ kind: 'circle', pen: 'centre', fill: 'none', centre: { x: 0, y: 0 }, r: ring.radius * scale });
  const angles = ringAngles(rings, 0, scale, rim, out);
  out.push(...angles.lines);
  holes?.positions.forEach((p, i) => {
    const place = { x: p.x * scale, y: p.y * scale };
    const towards = (atan2(p.y, p.x) * 180) / Math.PI + 180;
    out.push(...labelNear(`H${i + 1}`, place, (holes.diameter / 2) * scale, out, { towards }));
  });
  const tip = polar(rim + 1, toothAngle);
  out.push(line(polar(rim + 8, toothAngle), tip), arrowHead(tip, toothAngle + 180, 2.2));
  out.push(
    ...labelNear(windows ? 'bar 1' : 'tooth 1', polar(rim + 8, toothAngle), 0.6, out, { towards: toothAngle + 45 }),
  );
  out.push(text('SEEN FROM THE DRIVEN SIDE', { x: 0, y: -rim - 12 }, 3, { align: 'middle', bold: true }));
  for (const label of angles.labels) out.push(...label(out));
  const blocked = (holes?.positions ?? []).map((p) => ({
    centre: { x: p.x * scale, y: p.y * scale },
    r: ((holes?.diameter ?? 0) / 2) * scale,
  }));
  return [...out, ...ringCallouts(rings, title.units, scale, rim, blocked, out)];
}

interface Row {
  readonly what: string;
  readonly words: string;
  readonly number: number | null;
}

const plain = (what: string, words: string): Row => ({ what, words, number: null });

/** How many teeth, and the mark among them. */
function toothCount(drawn: WheelToDraw): Row[] {
  const { teeth } = drawn;
  const cell = markCell(drawn);
  if (cell !== '') return [plain('teeth', `${teeth} places`), plain('mark before tooth 1', cell)];
  const clause = markClause(drawn, 'tooth');
  return [plain('teeth', clause === '' ? `${teeth}` : `${teeth} places, ${clause}`)];
}

/** How many windows, and how many bars stand between them. */
function windowCount(drawn: WheelToDraw): Row[] {
  const { teeth, missing, wide = 0, extra = 0 } = drawn;
  if (wide > 0 || extra > 0) {
    const windows = extra > 0 ? `${teeth - 1}, and 2 beside the extra bar` : `${teeth - wide}, all alike`;
    return [plain('bars', `${teeth} places`), plain('mark before bar 1', markCell(drawn)), plain('windows', windows)];
  }
  if (missing === 0) return [plain('windows', `${teeth}, a bar between each two`)];
  return [
    plain('bars', `${teeth} places, ${missing} left out before bar 1`),
    plain('windows', `${teeth - missing - 1}, and 1 over ${missing + 1} places`),
  ];
}

/** Where the windows lie, how high and wide they are, and their corners. */
function windowRows(
  { title, outside, root, toothWidth, flanks, rootRadius, sizes }: WheelToDraw,
  windows: WindowsToDraw,
): Row[] {
  const { units } = title;
  /** A size with the limits that the inspection record has. */
  const inspected = (what: string, id: string, nominal: string): Row => {
    const size = sizes.find((one) => one.id === id);
    if (!size) return plain(what, nominal);
    const [high, low] = limitTexts(size.lower, size.upper, units);
    return { what, words: `${nominal}  (${low} to ${high})`, number: size.number };
  };
  const inside = outside - 2 * windows.rim;
  const middle = diameter((inside + root) / 2, units);
  return [
    inspected('rim outside of the windows', 'wheel-rim', sizeText(windows.rim, units)),
    plain('outside of the windows', diameter(inside, units)),
    inspected('inside of the windows', 'wheel-window-inside', diameter(root, units)),
    inspected('height of a window', 'wheel-window-height', sizeText((inside - root) / 2, units)),
    inspected(`bar across, on ${middle}`, 'wheel-bar', sizeText(toothWidth, units)),
    plain(`window across, on ${middle}`, sizeText(windows.window, units)),
    plain('flanks of a bar', flanks),
    inspected('round in all four corners', 'wheel-window-corner', `R${sizeText(rootRadius, units)}`),
  ];
}

function rows(drawn: WheelToDraw): Row[] {
  const {
    title,
    teeth,
    outside,
    root,
    bore,
    boreLimits,
    cutBore,
    toothAngle,
    toothWidth,
    holes,
    wheel,
    sizes,
    windows,
  } = drawn;
  const { units } = title;
  const numberOf = (id: string) => sizes.find((size) => size.id === id)?.number ?? null;
  const over = sizes.find(({ id }) => id === 'wheel-outside');
  const limits = over ? limitTexts(over.lower, over.upper, units) : null;
  const hole = boreLimits ? limitTexts(boreLimits.lower, boreLimits.upper, units) : null;
  return [
    plain('thickness', sizeText(wheel.thickness, units)),
    ...(windows ? windowCount(drawn) : toothCount(drawn)),
    plain('one place', angleText(360 / teeth)),
    {
      what: windows ? 'outside of the rim' : 'over the teeth',
      words: limits ? `${diameter(outside, units)}  (${limits[1]} to ${limits[0]})` : diameter(outside, units),
      number: numberOf('wheel-outside'),
    },
    ...(windows
      ? windowRows(drawn, windows)
      : [
          plain('at the roots', diameter(root, units)),
          plain('tooth across its tip', sizeText(toothWidth, units)),
          plain('flanks', drawn.flanks),
          plain('round at the root', `R${sizeText(drawn.rootRadius, units)}`),
        ]),
    ...(drawn.tipBreak > 0 ? [plain('round at the tip', `R${sizeText(drawn.tipBreak, units)}`)] : []),
    plain(`middle of ${windows ? 'bar' : 'tooth'} 1 at`, angleText(toothAngle)),
    {
      what: 'bore',
      words: hole ? `${diameter(bore, units)}  (${hole[1]} to ${hole[0]})` : diameter(bore, units),
      number: numberOf('wheel-bore'),
    },
    ...(cutBore === null ? [] : [plain('bore as cut, turned afterwards', diameter(cutBore, units))]),
    ...(holes ? [plain('screw holes', `${holes.positions.length} x ${diameter(holes.diameter, units)} through`)] : []),
  ];
}

const pitch = 5.8;
const tableWidth = 96;

function dataBlock(list: readonly Row[], width: number): Block {
  const height = list.length * pitch;
  return {
    width,
    height,
    shapes: [
      rectangle({ xMin: 0, yMin: 0, xMax: width, yMax: height }, 'dimension'),
      line({ x: 44, y: 0 }, { x: 44, y: height }, 'thin'),
      ...list.flatMap(({ what, words, number }, i): Shape[] => {
        const y = height - (i + 1) * pitch;
        return [
          ...(i === 0 ? [] : [line({ x: 0, y: y + pitch }, { x: width, y: y + pitch }, 'thin')]),
          fitted(what, { x: 1.4, y: y + 1.7 }, cap.table, 41),
          fitted(words, { x: 45.6, y: y + 1.7 }, cap.size, width - 47 - (number === null ? 0 : 7)),
          ...(number === null ? [] : balloon(number, { x: width - balloonRadius - 0.8, y: y + pitch / 2 })),
        ];
      }),
    ],
  };
}

function holeBlock({ holes, title }: WheelToDraw): Block {
  const { units } = title;
  if (!holes) return { width: 0, height: 0, shapes: [] };
  const heads = ['hole', `X ${units}`, `Y ${units}`, 'angle \u00b0'];
  const rights = [12, 36, 60, 84];
  const row = 4.2;
  const cells = [
    heads,
    ...holes.positions.map(({ x, y }, i) => [
      `H${i + 1}`,
      placeText(x, units),
      placeText(y, units),
      degreesText(((atan2(y, x) * 180) / Math.PI + 360) % 360),
    ]),
  ];
  const height = cells.length * row;
  return {
    width: 84,
    height,
    shapes: [
      rectangle({ xMin: 0, yMin: 0, xMax: 84, yMax: height }, 'dimension'),
      ...rights.slice(0, -1).map((x) => line({ x, y: 0 }, { x, y: height }, 'thin')),
      ...cells.flatMap((words, i) => {
        const y = height - (i + 1) * row;
        return [
          ...(i === 0 ? [] : [line({ x: 0, y: y + row }, { x: 84, y: y + row }, 'thin')]),
          ...words.map((one, k) => {
            const size = i === 0 ? 1.9 : Math.min(cap.table, 20 / Math.max(1e-6, textWidth(one, 1)));
            return text(one, { x: (rights[k] as number) - 1.4, y: y + 1.1 }, size, { align: 'end', bold: i === 0 });
          }),
        ];
      }),
    ],
  };
}

/** The sheets of a wheel's drawing, in mm of paper from the sheet's lower left corner: one, or two where the paper is small. */
export function wheelSheets(drawn: WheelToDraw, choice: SheetChoice): Drawing[] {
  const { title } = drawn;
  const frame = frameOf(choice.paper);
  const head = title.warning === '' ? 0 : 7;
  const notes = paragraphs(
    [
      `The outline file rules: ${drawn.outlines.join(', ')}. This sheet shows it and says what it must measure.`,
      'Datum: axis of the bore. +X runs to the right, seen from the driven side; angles run counter-clockwise from it.',
      `Burrs taken off on both faces; ${drawn.windows ? 'edges of the windows' : 'teeth'} must stay sharp where no round is given. Flat, not bent or hammered.`,
      `Numbers in circles are the lines of the inspection record. Revision ${title.revision}.`,
    ],
    tableWidth,
  );
  const data = dataBlock(rows(drawn), tableWidth);
  const shown = new Set([...balloonNumbers(data.shapes), title.massBalloon]);
  const rest = drawn.sizes.filter(({ part, number }) => part === 'wheel' && !shown.has(number));
  const further = [holeBlock(drawn), notes, furtherSizes(rest, title.units, tableWidth)];
  const [top, low] = [frame.yMax - 6 - head, frame.yMin + titleHeight + 4];
  const whole = stacked([data, ...further], 6);
  const fitsWhole = whole.height <= top - low;
  const column = fitsWhole ? whole : data;
  const span = frame.xMax - frame.xMin - column.width - 20;
  const fits = (scale: number) => {
    const box = boxOf(wheelView(drawn, scale));
    return box.xMax - box.xMin <= span && box.yMax - box.yMin <= top - low;
  };
  const scales = standardScales.filter((one) => one <= (choice.scale ?? 2));
  const scale = scales.find(fits) ?? (standardScales.at(-1) as number);
  const view = wheelView(drawn, scale);
  const box = boxOf(view);
  const at = {
    x: frame.xMin + 6 + (span - (box.xMax - box.xMin)) / 2 - box.xMin,
    y: (top + low) / 2 - (box.yMax + box.yMin) / 2,
  };
  const first = [
    ...moved(view, at),
    ...moved(column.shapes, { x: frame.xMax - 6 - column.width, y: top - column.height }),
  ];
  const bodies = [first, ...(fitsWhole ? [] : flowed(further, choice.paper, head))];
  const { width, height } = shopPapers[choice.paper];
  return bodies.map((body, i) => ({
    id: `wheel-drawing-${i + 1}`,
    title: `${title.number}, sheet ${i + 1} of ${bodies.length}`,
    description: `Workshop drawing of ${title.part} for ${title.job}, revision ${title.revision}, scale ${scaleText(scale)}.`,
    box: { xMin: 0, yMin: 0, xMax: width, yMax: height },
    shapes: [...sheetFace(title, { choice, scale, sheet: i + 1, of: bodies.length }), ...body],
  }));
}
