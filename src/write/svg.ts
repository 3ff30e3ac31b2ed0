/**
 * SVG of one drawing: true arcs, pens as classes, print-safe colours, readable by a screen reader.
 * The same drawing gives the same bytes: no clock, no random ids.
 */
import type { Drawing, Fill, Pen, Point, Shape } from '../model/drawing.ts';
import { escaped } from '../units/markup.ts';
import { steadyFixed } from '../units/steady.ts';
import { atan, cos, sin } from '../units/trig.ts';

export interface SvgOptions {
  /** Paper mm for one drawing mm; 1 is true size. > 0. */
  readonly scale?: number;
  /** True: a file of its own, with an XML declaration. False: an element to set into an HTML page. */
  readonly standalone?: boolean;
  /** Strokes this many times as wide as on a sheet of 230 mm; left out: by the drawing's width. */
  readonly weight?: number;
}

type Loop = Extract<Shape, { kind: 'path' }>['loops'][number];

/** Cap height of the named fonts, as a share of the font size. */
const capHeight = 0.72;

const ink = '#1a1d21';

/** Stroke of each pen: colour, width in mm on a sheet about 230 mm wide, and dashes. */
const pens: Readonly<Record<Pen, { colour: string; width: number; dashes?: readonly number[] }>> = {
  outline: { colour: ink, width: 0.5 },
  thin: { colour: '#3d444c', width: 0.22 },
  hidden: { colour: '#4a525b', width: 0.28, dashes: [2.2, 1.3] },
  centre: { colour: '#6b747d', width: 0.2, dashes: [7, 1.3, 1.3, 1.3] },
  hatch: { colour: '#7d8791', width: 0.16 },
  dimension: { colour: '#30363d', width: 0.2 },
  cut: { colour: ink, width: 0.5 },
  mark: { colour: ink, width: 0.9 },
};

/** Tint of each body in section, and the hatch over it: direction in degrees, spacing in mm. */
const fills: Readonly<Record<Exclude<Fill, 'none'>, { tint: string; hatch?: { angle: number; spacing: number } }>> = {
  adapter: { tint: '#dfe7ef', hatch: { angle: 45, spacing: 1.7 } },
  driving: { tint: '#f3ede0', hatch: { angle: -45, spacing: 3.4 } },
  driven: { tint: '#e6f0e4', hatch: { angle: -45, spacing: 3.4 } },
  wheel: { tint: '#f0e3e0', hatch: { angle: -60, spacing: 1.2 } },
  screw: { tint: '#d5d8db' },
  ink: { tint: '#3d444c' },
  void: { tint: '#ffffff' },
  paper: { tint: '#ffffff' },
  good: { tint: '#c9e6cf' },
  doubtful: { tint: '#f6e2a8' },
  bad: { tint: '#f0c4bd' },
};

const zero = '0'.charCodeAt(0);
const point = '.'.charCodeAt(0);

/** A length with at most three decimals, never `-0` and never an exponent. */
function num(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`drawing holds a length that is not a number: ${value}`);
  const text = steadyFixed(value, 3);
  let end = text.length;
  while (text.charCodeAt(end - 1) === zero) end--;
  if (text.charCodeAt(end - 1) === point) end--;
  const short = text.slice(0, end);
  return short === '-0' ? '0' : short;
}

/** y points up in a drawing and down in SVG. */
const at = (p: Point): string => `${num(p.x)} ${num(-p.y)}`;

/** One arc stretch of a path, to `to`. Counter-clockwise in the drawing is sweep flag 0 here, because y is turned over. */
const arcTo = (r: number, sweepDegrees: number, to: Point): string =>
  `A${num(r)} ${num(r)} 0 ${Math.abs(sweepDegrees) > 180 ? 1 : 0} ${sweepDegrees > 0 ? 0 : 1} ${at(to)}`;

function arcPath(shape: Extract<Shape, { kind: 'arc' }>): string {
  let sweep = shape.end - shape.start;
  while (sweep <= 0) sweep += 360;
  const on = (degrees: number): Point => ({
    x: shape.centre.x + shape.r * cos((degrees * Math.PI) / 180),
    y: shape.centre.y + shape.r * sin((degrees * Math.PI) / 180),
  });
  // Two halves: an arc close to a full turn would otherwise end where it starts and vanish.
  const half = sweep / 2;
  const first = arcTo(shape.r, half, on(shape.start + half));
  return `M${at(on(shape.start))}${first}${arcTo(shape.r, half, on(shape.start + sweep))}`;
}

function loopPath(loop: Loop, closed: boolean): string {
  const start = loop[0];
  if (start === undefined) return '';
  let d = `M${at(start)}`;
  const last = closed ? loop.length : loop.length - 1;
  for (let i = 0; i < last; i++) {
    const from = loop[i] as Loop[number];
    const to = loop[(i + 1) % loop.length] as Loop[number];
    if (from.bulge === 0) {
      if (!closed || i < loop.length - 1) d += `L${at(to)}`;
      continue;
    }
    const chord = Math.hypot(to.x - from.x, to.y - from.y);
    const r = (chord * (1 + from.bulge * from.bulge)) / (4 * Math.abs(from.bulge));
    d += arcTo(r, (4 * atan(from.bulge) * 180) / Math.PI, to);
  }
  return closed ? `${d}Z` : d;
}

const fillAttribute = (fill: Fill, prefix: string): string => {
  if (fill === 'none') return '';
  const { tint, hatch } = fills[fill];
  return ` fill="${hatch ? `url(#${prefix}-${fill})` : tint}"`;
};

function shapeElement(shape: Shape, prefix: string): string {
  const feature = shape.feature === undefined ? '' : ` data-feature="${escaped(shape.feature)}"`;
  switch (shape.kind) {
    case 'line':
      return `<path class="fw-${shape.pen}"${feature} d="M${at(shape.from)}L${at(shape.to)}"/>`;
    case 'circle':
      return `<circle class="fw-${shape.pen}"${feature}${fillAttribute(shape.fill, prefix)} cx="${num(shape.centre.x)}" cy="${num(-shape.centre.y)}" r="${num(shape.r)}"/>`;
    case 'arc':
      return `<path class="fw-${shape.pen}"${feature} d="${arcPath(shape)}"/>`;
    case 'path': {
      const d = shape.loops.map((loop) => loopPath(loop, shape.closed)).join('');
      return `<path class="fw-${shape.pen}"${feature}${fillAttribute(shape.fill, prefix)} fill-rule="evenodd" d="${d}"/>`;
    }
    case 'text': {
      const x = num(shape.at.x);
      const y = num(-shape.at.y);
      const turn = shape.angle === 0 ? '' : ` transform="rotate(${num(-shape.angle)} ${x} ${y})"`;
      const bold = shape.bold ? ' font-weight="700"' : '';
      return `<text${feature} x="${x}" y="${y}" font-size="${num(shape.size / capHeight)}" text-anchor="${shape.align}"${bold}${turn}>${escaped(shape.text)}</text>`;
    }
  }
}

/** Line weights follow the sheet, so that a small part and a big wheel look alike at the same width on paper. */
const weightOf = (width: number): number => Math.min(4, Math.max(0.25, width / 230));

function style(prefix: string, weight: number): string {
  const rules = Object.entries(pens).map(([pen, { colour, width, dashes }]) => {
    const dash = dashes ? `;stroke-dasharray:${dashes.map((d) => num(d * weight)).join(' ')}` : '';
    return `#${prefix} .fw-${pen}{stroke:${colour};stroke-width:${num(width * weight)}${dash}}`;
  });
  const halo = `paint-order:stroke;stroke:#fff;stroke-width:${num(0.9 * weight)};stroke-linejoin:round`;
  return [
    `#${prefix}{fill:none;stroke-linecap:round;stroke-linejoin:round}`,
    ...rules,
    `#${prefix} text{font-family:Arial,"Liberation Sans","DejaVu Sans",sans-serif;fill:${ink};${halo}}`,
  ].join('');
}

function patterns(drawing: Drawing, prefix: string, weight: number): string {
  const used = new Set(drawing.shapes.map((s) => (s.kind === 'circle' || s.kind === 'path' ? s.fill : 'none')));
  const out: string[] = [];
  for (const [fill, { tint, hatch }] of Object.entries(fills)) {
    if (!hatch || !used.has(fill as Fill)) continue;
    const s = num(hatch.spacing * weight);
    const { colour, width } = pens.hatch;
    out.push(
      `<pattern id="${prefix}-${fill}" width="${s}" height="${s}" patternUnits="userSpaceOnUse" patternTransform="rotate(${num(-hatch.angle)})">` +
        `<rect width="${s}" height="${s}" fill="${tint}"/><path d="M0 0H${s}" stroke="${colour}" stroke-width="${num(width * 2 * weight)}"/></pattern>`,
    );
  }
  return out.length > 0 ? `<defs>${out.join('')}</defs>` : '';
}

/**
 * Writes a drawing as SVG 1.1 text. Width and height are in mm (drawing mm times `scale`); every id starts with the drawing's
 * own id, so several drawings can stand in one page as long as their ids differ.
 * Throws when a number is not finite or the box is empty: both are bugs of the caller.
 */
export function writeSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const { scale = 1, standalone = true } = options;
  const { xMin, yMin, xMax, yMax } = drawing.box;
  const width = xMax - xMin;
  const height = yMax - yMin;
  if (!(width > 0 && height > 0 && scale > 0)) throw new Error(`drawing ${drawing.id} has an empty box`);
  const prefix = `fw-${drawing.id.replace(/[^A-Za-z0-9-]+/g, '-')}`;
  const weight = options.weight ?? weightOf(width);
  const lines = [
    `<svg${standalone ? ' xmlns="http://www.w3.org/2000/svg"' : ''} id="${prefix}" role="img" aria-labelledby="${prefix}-title ${prefix}-desc" ` +
      `width="${num(width * scale)}mm" height="${num(height * scale)}mm" viewBox="${num(xMin)} ${num(-yMax)} ${num(width)} ${num(height)}">`,
    `<title id="${prefix}-title">${escaped(drawing.title)}</title>`,
    `<desc id="${prefix}-desc">${escaped(drawing.description)}</desc>`,
    `<style>${style(prefix, weight)}</style>`,
    patterns(drawing, prefix, weight),
    // A sheet of paper, so that dark ink is readable wherever the picture is shown.
    `<rect x="${num(xMin)}" y="${num(-yMax)}" width="${num(width)}" height="${num(height)}" fill="#ffffff"/>`,
    ...drawing.shapes.map((shape) => shapeElement(shape, prefix)),
    '</svg>',
  ].filter((line) => line !== '');
  const head = standalone ? '<?xml version="1.0" encoding="UTF-8"?>\n' : '';
  return `${head}${lines.join('\n')}\n`;
}
