/** One face as it stands on the sheet: what the eye sees, a tag at every hole worked from there, and which way x and y run. */
import type { Shape } from '../../model/drawing.ts';
import { arrowHead } from '../dimension.ts';
import { onAxis, polar, sceneOf, widest } from '../face-scene.ts';
import { centreLines, drillingShapes, outsideShapes } from '../face-view.ts';
import { grown } from '../text-size.ts';
import { holeSize, type RingToSet, ringAngles, ringCallouts, ringOf } from './bolt-circles.ts';
import { type CuttingLine, cuttingLineOn } from './cutting-line.ts';
import { sectionLetter } from './section-on-sheet.ts';
import { boxOf, cap, labelNear, line, onPaper, runsThrough, text } from './shapes.ts';
import { angleText, sizeText } from './size-text.ts';
import type { AdapterToDraw, Face, SetToDraw } from './to-draw.ts';

const seenFirst = (a: Shape, b: Shape) =>
  Number('pen' in a && a.pen === 'outline') - Number('pen' in b && b.pen === 'outline');

/** Two arrows with their letters: the directions of the hole table. */
function axes(x: number, y: number): Shape[] {
  const long = 9;
  return [
    line({ x, y }, { x: x + long, y }),
    arrowHead({ x: x + long, y }, 0, 2.2),
    text('+X', { x: x + long + 1.2, y: y - 1.1 }, cap.table),
    line({ x, y }, { x, y: y + long }),
    arrowHead({ x, y: y + long }, 90, 2.2),
    text('+Y', { x, y: y + long + 1.4 }, cap.table, { align: 'middle' }),
  ];
}

/** The arrows in the lower left corner, further out where something stands there. */
function freeAxes(taken: readonly Shape[], edge: number): Shape[] {
  for (let out = 0; out <= 40; out += 4) {
    const tried = axes(-edge - 6 - out, -edge - 8);
    const box = grown(boxOf(tried), 0.5);
    if (!taken.some((shape) => runsThrough(shape, box))) return tried;
  }
  return axes(-edge - 6, -edge - 8);
}

/** The distance across the flats, level or upright as they stand, outside the rim. */
function flatsNote({ flats, title }: AdapterToDraw): string[] {
  return flats === null
    ? []
    : [`two flats, ${sizeText(flats.across, title.units)} across, at ${angleText(flats.angle)}`];
}

/** What stands under the view. */
function captions(drawn: AdapterToDraw, from: Face, edge: number): Shape[] {
  const words = [`seen from the ${from} side`, ...(from === 'driven' ? flatsNote(drawn) : [])];
  return words.map((one, i) =>
    text(i === 0 ? one.toUpperCase() : one, { x: 6, y: -edge - 14.5 - 4.2 * i }, i === 0 ? cap.size + 0.5 : cap.table, {
      align: 'middle',
      bold: i === 0,
    }),
  );
}

/** Radius of what the eye sees of a set's holes from the side they are worked from. */
function wideOf(drawn: AdapterToDraw, set: SetToDraw): number {
  const profiles = drawn.adapter.drillings.filter(({ feature }) => feature === set.group).map(({ profile }) => profile);
  return Math.max(0, set.thread ? set.thread.major / 2 : 0, ...profiles.flat().map(({ r }) => r));
}

/** Sets of a face that are evenly spaced on a circle. Every set has a position tolerance, so that its circle is exact. */
const ringsOn = (drawn: AdapterToDraw, from: Face, zero: number): RingToSet[] =>
  drawn.sets.flatMap((set) => {
    const ring = set.from === from ? ringOf(set.holes, zero, from === 'driven' ? 1 : -1) : null;
    if (!ring) return [];
    const words = `${ring.count} x ${holeSize(set, drawn.title.units)}`;
    return [{ ring, words, datum: 'the index mark', wide: wideOf(drawn, set), exact: true }];
  });

/** Draws a face about its axis. The cutting line is drawn where it is given: on the driven face. mm of paper. */
export function faceOnSheet(drawn: AdapterToDraw, from: Face, scale: number, cutting: CuttingLine | null): Shape[] {
  const { adapter, clocking, title } = drawn;
  const scene = { ...sceneOf({ id: from, adapter, from, clocking, mate: null, units: title.units }), size: 3 / scale };
  const { rim } = scene;
  const plain = (shapes: readonly Shape[]) => shapes.filter((shape) => !('pen' in shape && shape.pen === 'hidden'));
  // Blind holes of the other side do not show, and their centres would puzzle.
  const drilled = scene.drillings.map((d) => ({ d, shapes: plain(drillingShapes(scene, d)) }));
  const drillings = drilled.flatMap(({ d, shapes }) => (shapes.length > 0 ? [d] : []));
  const inMm = [
    ...centreLines({ ...scene, drillings }),
    ...[...plain(outsideShapes(scene)), ...drilled.flatMap(({ shapes }) => shapes)].sort(seenFirst),
  ];
  const zero = scene.seen(0);
  const edge = rim * scale;
  const mark = line(polar(edge - 3, zero), polar(edge + 1, zero), 'mark');
  const out: Shape[] = [
    ...onPaper(inMm, scale, { x: 0, y: 0 }),
    mark,
    ...(cutting ? cuttingLineOn(cutting, sectionLetter, scale, rim) : []),
  ];
  out.push(...freeAxes(out, edge));
  const words = captions(drawn, from, edge);
  out.push(...words);
  const rings = ringsOn(drawn, from, zero);
  const angles = ringAngles(rings, zero, scale, edge, out);
  out.push(...angles.lines);
  // Tags look outwards, so that they stand in the wider gaps.
  for (const set of drawn.sets.filter((one) => one.from === from)) {
    const wide = wideOf(drawn, set);
    for (const hole of set.holes) {
      const place = { x: hole.x * scale, y: hole.y * scale };
      out.push(...labelNear(hole.tag, place, wide * scale, out, { towards: hole.angle + 30 }));
    }
  }
  out.push(...labelNear('index mark', polar(edge + 1, zero), 0.6, out, { size: cap.table, towards: zero + 40 }));
  for (const label of angles.labels) out.push(...label(out));
  const blocked = drillings.flatMap((d) =>
    onAxis(d) ? [] : [{ centre: { x: d.x * scale, y: d.y * scale }, r: widest(d) * scale }],
  );
  return [...out, ...ringCallouts(rings, title.units, scale, edge, blocked, out)];
}
