/** The section as it stands on the sheet: hatched, with its diameters, its thickness, the datum and what runs true to it. */
import type { Shape } from '../../model/drawing.ts';
import type { Profile } from '../../model/part.ts';
import { arrowHead } from '../dimension.ts';
import type { CuttingLine } from './cutting-line.ts';
import { type ColumnPlace, framed, hungUnder } from './hung.ts';
import { columnWidth, type DiameterToSet, diameterColumn, levelLength } from './lengths.ts';
import { cutAdapter, drawCut } from './section.ts';
import { boxOf, cap, labelNear, line, text } from './shapes.ts';
import { diameter, limitTexts, sizeText } from './size-text.ts';
import { frameHeight } from './symbols.ts';
import type { AdapterToDraw, Face, RegisterToDraw, SizeToDraw } from './to-draw.ts';

/** A place on the section that is shown larger elsewhere: mm of the part, and its letter. */
export interface Enlarged {
  readonly letter: string;
  readonly z: number;
  readonly r: number;
  /** Radius of the ring round it, mm of the part. */
  readonly reach: number;
}

/** Letters that no set of holes and no datum carries. */
export const sectionLetter = 'S';
export const detailLetters = ['P', 'Q', 'R', 'T', 'U', 'V', 'W', 'Z'] as const;

/** From the part's end to the first column, and from its rim to the thickness. */
const first = 11;
const above = 7;

const numberOf = (sizes: readonly SizeToDraw[], id: string): number | null =>
  sizes.find((size) => size.id === id)?.number ?? null;

/** The feature that is datum A: what centres the part on its driving flange, else the bore it is indicated on, else the outside. */
export function datumOf({ registers, bore }: AdapterToDraw): { id: string; what: string } {
  if (registers.driving) return { id: 'driving-register', what: 'axis of the driving register' };
  return bore === null ? { id: 'outside', what: 'axis of the outside' } : { id: 'bore', what: 'axis of the bore' };
}

/** Height along the shaft to which a register reaches out of its face. */
function endOf(drawn: AdapterToDraw, face: Face, of: RegisterToDraw | null): number {
  const out = of && (of.gender === 'male') === (of.at === 'inner') ? of.depth : 0;
  return face === 'driving' ? -out : drawn.thickness + out;
}

interface Wanted extends Omit<DiameterToSet, 'across' | 'from'> {
  readonly side: Face;
  readonly size: number;
  /** Where its extension lines start, along the shaft. */
  readonly z: number;
}

/** The thickness; its limits of size instead where the lower one is raised, as a register has them. */
function thicknessText({ thickness, sizes, title: { units } }: AdapterToDraw): string {
  const size = sizes.find(({ id }) => id === 'thickness');
  if (!size || thickness - size.lower > size.upper - thickness - 1e-6) return sizeText(thickness, units);
  const [high, low] = limitTexts(size.lower, size.upper, units);
  return `${low} to ${high}`;
}

function wantedDiameters(drawn: AdapterToDraw): Wanted[] {
  const { registers, wheelSeat, bore, outside, thickness, sizes, title } = drawn;
  const { units } = title;
  const limits = ({ lower, upper }: { lower: number; upper: number }) => {
    const [high, low] = limitTexts(lower, upper, units);
    return [`\u00d8${high}`, `\u00d8${low}`];
  };
  const plain = (id: string, size: number) => {
    const row = sizes.find((one) => one.id === id);
    const isClose = row !== undefined && Math.abs(size - row.lower - (row.upper - size)) > 1e-6;
    return {
      id,
      size,
      // The general tolerance needs no words; limits that are closer on one side stand there.
      lines: isClose ? limits(row) : [diameter(size, units)],
      number: numberOf(sizes, id),
    };
  };
  const out: Wanted[] = [];
  for (const side of ['driving', 'driven'] as const) {
    const register = registers[side];
    if (!register) continue;
    const id = `${side}-register`;
    out.push({
      id,
      side,
      size: register.diameter,
      z: endOf(drawn, side, register.at === 'rim' && register.gender === 'male' ? null : register),
      lines: limits(register.limits),
      number: numberOf(sizes, id),
    });
  }
  if (wheelSeat) {
    const z = wheelSeat.face === 'driving' ? 0 : thickness;
    out.push({
      id: 'wheel-seat',
      side: wheelSeat.face,
      size: wheelSeat.diameter,
      z,
      lines: limits(wheelSeat.limits),
      number: numberOf(sizes, 'wheel-seat'),
    });
  }
  const fewer = (): Face => {
    const count = (side: Face) => out.filter((d) => d.side === side).length;
    return count('driving') < count('driven') ? 'driving' : 'driven';
  };
  const outer = fewer();
  // The rim may be stepped: the outside is taken where it is full.
  const full = drawn.adapter.outer.filter(({ r }) => r > outside / 2 - 1e-6).map(({ z }) => z);
  const rim = outer === 'driving' ? Math.min(...full, thickness / 2) : Math.max(...full, thickness / 2);
  out.push({ ...plain('outside', outside), side: outer, z: rim });
  if (bore !== null) {
    const side = fewer();
    out.push({
      ...plain('bore', bore),
      side,
      z: endOf(
        drawn,
        side,
        registers[side]?.at === 'inner' && registers[side]?.gender === 'male' ? registers[side] : null,
      ),
    });
  }
  return out;
}

/** Where an extension line of a face starts: the outermost edge that lies in it. */
function edgeAt(outer: Profile, z: number, otherwise: number): number {
  const edges = outer.filter((p) => Math.abs(p.z - z) < 1e-6).map(({ r }) => r);
  return edges.length > 0 ? Math.max(...edges) : otherwise;
}

/** Draws the section about the point where the axis meets the driving face. mm of paper. */
export function sectionOnSheet(
  drawn: AdapterToDraw,
  cutting: CuttingLine,
  scale: number,
  enlarged: readonly Enlarged[],
): Shape[] {
  const { thickness, sizes, adapter, registers } = drawn;
  const shapes = drawCut(cutAdapter(drawn, cutting), scale);
  const body = boxOf(shapes);
  const rim = Math.max(...adapter.outer.map(({ r }) => r)) * scale;
  const out: Shape[] = [...shapes, line({ x: body.xMin - 4, y: 0 }, { x: body.xMax + 4, y: 0 }, 'centre')];
  const columnOf = new Map<string, ColumnPlace>();
  const all = wantedDiameters(drawn);
  for (const side of ['driving', 'driven'] as const) {
    const way = side === 'driving' ? -1 : 1;
    const columns = all.filter((d) => d.side === side).sort((a, b) => a.size - b.size);
    columns.forEach((column, i) => {
      const x = (way === -1 ? body.xMin : body.xMax) + way * (first + i * columnWidth);
      const set = { ...column, across: column.size * scale, from: column.z * scale };
      // The text must stay between the extension lines of the next larger diameter, which pass it by.
      const next = columns[i + 1];
      const past = next ? (next.size * scale) / 2 : Number.POSITIVE_INFINITY;
      out.push(...diameterColumn(set, x, way, past));
      columnOf.set(column.id, { x, across: set.across, way });
    });
  }

  // Thickness above, and over it the face that must run true.
  const depthOf = (side: Face) => (registers[side]?.diameter ?? 0) / 2;
  const starts = [
    edgeAt(adapter.outer, 0, depthOf('driving')),
    edgeAt(adapter.outer, thickness, depthOf('driven')),
  ].map((r) => r * scale) as [number, number];
  out.push(
    ...levelLength([0, thickness * scale], rim + above, starts, thicknessText(drawn), numberOf(sizes, 'thickness'), -1),
  );
  const face = sizes.find(({ id }) => id === 'face-parallel');
  const right = thickness * scale;
  if (face) {
    const y = rim + above + 8.5;
    out.push(
      line({ x: right, y: rim + above + 1 }, { x: right, y: y + 1 }),
      line({ x: right, y }, { x: right + 7, y }),
      arrowHead({ x: right, y }, 180, 2.2),
      ...framed('run-out', face, 'A', { x: right + 7, y: y - frameHeight / 2 }, drawn),
    );
  }

  // The datum hangs from its diameter, and each run-out to it from its own.
  const hung = hungUnder(drawn, columnOf, datumOf(drawn).id, -rim - 7.5);
  out.push(...hung.shapes);

  for (const { z, r, reach } of enlarged) {
    const centre = { x: z * scale, y: r * scale };
    const ring = Math.max(2.2, reach * scale);
    out.push({ kind: 'circle', pen: 'thin', fill: 'none', centre, r: ring });
  }
  for (const { letter, z, r, reach } of enlarged) {
    const towards = z < thickness / 2 ? 135 : 45;
    out.push(
      ...labelNear(letter, { x: z * scale, y: r * scale }, Math.max(2.2, reach * scale), out, {
        size: 3,
        bold: true,
        towards,
      }),
    );
  }
  out.push(...lookingAt((thickness * scale) / 2, hung.end - 7.5));
  return out;
}

/** The section's name, and an arrow from either side with the name of that side. */
function lookingAt(x: number, y: number): Shape[] {
  const side = (way: -1 | 1, words: string): Shape[] => [
    line({ x: x + way * 17, y: y + 1.7 }, { x: x + way * 9, y: y + 1.7 }),
    arrowHead({ x: x + way * 9, y: y + 1.7 }, way === 1 ? 180 : 0, 2.2),
    text(words, { x: x + way * 18.2, y: y + 0.6 }, cap.table, { align: way === 1 ? 'start' : 'end' }),
  ];
  return [
    text(`${sectionLetter}-${sectionLetter}`, { x, y }, cap.heading, { align: 'middle', bold: true }),
    ...side(-1, 'driving side'),
    ...side(1, 'driven side'),
  ];
}
