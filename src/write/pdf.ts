/**
 * PDF of one or more pages, each a stack of drawings at true size: one drawing mm is one mm of paper.
 *
 * Arcs are cubic Beziers of at most 30 degrees, so a circle of 150 mm radius is off by less than 0.00002 mm. Viewers are told not to
 * scale when they print. The same pages give the same bytes: the date is fixed, nothing is compressed, no ids come from the clock.
 * The only file that names pdfkit, which is loaded when a PDF is written and not before.
 */
import type { Drawing, Fill, Pen, Point, Shape } from '../model/drawing.ts';
import { atan, atan2, cos, sin, tan } from '../units/trig.ts';

/** A box on paper, mm from the lower left corner. */
export interface PaperBox {
  readonly xMin: number;
  readonly yMin: number;
  readonly xMax: number;
  readonly yMax: number;
}

/** One page, lower left corner at the origin, y up, mm. Later layers lie on earlier ones. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  /** Strokes this many times as wide as usual; 1 where it is left out. */
  readonly weight?: number;
  readonly layers: readonly {
    readonly drawing: Drawing;
    /** Where the drawing's origin lies on the page. */
    readonly at: Point;
    /** Nothing of this layer shows outside it; null for the whole page. */
    readonly clip: PaperBox | null;
  }[];
}

export interface PdfAbout {
  readonly title: string;
  readonly subject?: string;
}

type Document = PDFKit.PDFDocument;

/** Stroke of each pen on paper: width in mm, grey (0 black), dashes in mm. */
const pens: Readonly<Record<Pen, { width: number; grey: number; dashes?: readonly number[] }>> = {
  outline: { width: 0.3, grey: 0 },
  thin: { width: 0.12, grey: 0.15 },
  hidden: { width: 0.18, grey: 0.3, dashes: [2, 1] },
  centre: { width: 0.12, grey: 0.25, dashes: [6, 1, 1, 1] },
  hatch: { width: 0.1, grey: 0.5 },
  dimension: { width: 0.15, grey: 0.1 },
  cut: { width: 0.3, grey: 0 },
  mark: { width: 0.5, grey: 0 },
};

/** Tint of each fill: a grey on paper. */
const tints: Readonly<Record<Exclude<Fill, 'none'>, number>> = {
  adapter: 0.9,
  driving: 0.95,
  driven: 0.95,
  wheel: 0.9,
  screw: 0.83,
  ink: 0.25,
  void: 1,
  paper: 1,
  good: 0.97,
  doubtful: 0.88,
  bad: 0.78,
};

/** Cap height of Helvetica as a share of its size (Adobe font metrics: 718 of 1000). */
const capHeight = 0.718;
/** Longest stretch of an arc that one Bezier draws, degrees. */
const longestArc = 30;
const radians = Math.PI / 180;
const pointsPerMm = 72 / 25.4;
const grey = (share: number): [number, number, number] => [255 * share, 255 * share, 255 * share];

/** What the built-in fonts can show: Windows code page 1252. Accents of other letters are dropped, the rest becomes a question mark. */
export function winAnsi(text: string): string {
  const shown = (c: string) =>
    /[\x20-\x7e\xa0-\xff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u20ac\u2122]/.test(c);
  return [...text.replace(/\s/g, ' ').replaceAll('\u2300', '\u00d8').replaceAll('\u2212', '-').normalize('NFC')]
    .map((c) => (shown(c) ? c : [...c.normalize('NFKD')].filter(shown).join('') || '?'))
    .join('');
}

/** A title without the signs that would break the XML copy of it, into which pdfkit puts it as it is. */
const plainTitle = (title: string): string =>
  title.replaceAll('&', '+').replaceAll('<', '\u2039').replaceAll('>', '\u203a');

/** Draws on one page. Drawing coordinates have y up, the page's own y down. */
class PageWriter {
  private readonly doc: Document;
  private readonly left: number;
  private readonly base: number;
  private readonly weight: number;

  constructor(doc: Document, at: Point, height: number, weight: number) {
    this.doc = doc;
    this.weight = weight;
    this.left = at.x;
    this.base = height - at.y;
  }

  private place(p: Point): [number, number] {
    const placed: [number, number] = [this.left + p.x, this.base - p.y];
    if (!placed.every(Number.isFinite)) throw new Error(`drawing holds a length that is not a number: ${p.x}, ${p.y}`);
    return placed;
  }

  private arc(centre: Point, r: number, start: number, sweep: number): void {
    const count = Math.max(1, Math.ceil(Math.abs(sweep) / longestArc - 1e-9));
    const step = (sweep / count) * radians;
    const reach = (4 / 3) * tan(step / 4) * r;
    for (let i = 0; i < count; i++) {
      const [a, b] = [start * radians + i * step, start * radians + (i + 1) * step];
      const p = { x: centre.x + r * cos(a), y: centre.y + r * sin(a) };
      const q = { x: centre.x + r * cos(b), y: centre.y + r * sin(b) };
      const [x1, y1] = this.place({ x: p.x - reach * sin(a), y: p.y + reach * cos(a) });
      const [x2, y2] = this.place({ x: q.x + reach * sin(b), y: q.y - reach * cos(b) });
      const [x, y] = this.place(q);
      this.doc.bezierCurveTo(x1, y1, x2, y2, x, y);
    }
  }

  private moveOnto(centre: Point, r: number, degrees: number): void {
    const on = { x: centre.x + r * cos(degrees * radians), y: centre.y + r * sin(degrees * radians) };
    this.doc.moveTo(...this.place(on));
  }

  /** The stretch from one corner to the next of a path: a line, or an arc by its bulge (tan(sweep / 4)). */
  private stretch(from: Point & { readonly bulge: number }, to: Point): void {
    if (from.bulge === 0) {
      this.doc.lineTo(...this.place(to));
      return;
    }
    const { bulge } = from;
    // The centre stands off the middle of the chord, to the left of it for a bulge between 0 and 1.
    const off = (1 - bulge * bulge) / (4 * bulge);
    const centre = {
      x: (from.x + to.x) / 2 - off * (to.y - from.y),
      y: (from.y + to.y) / 2 + off * (to.x - from.x),
    };
    const r = Math.hypot(from.x - centre.x, from.y - centre.y);
    const start = atan2(from.y - centre.y, from.x - centre.x) / radians;
    this.arc(centre, r, start, (4 * atan(bulge)) / radians);
  }

  private ink(pen: Pen, fill: Fill = 'none'): void {
    const { doc } = this;
    const { width, grey: shade, dashes } = pens[pen];
    doc.lineWidth(width * this.weight).strokeColor(grey(shade));
    if (dashes) doc.addContent(`[${dashes.join(' ')}] 0 d`);
    if (fill === 'none') doc.stroke();
    else doc.fillAndStroke(grey(tints[fill]), grey(shade), 'even-odd');
    if (dashes) doc.undash();
  }

  private text(shape: Extract<Shape, { kind: 'text' }>): void {
    const { doc } = this;
    const text = winAnsi(shape.text);
    if (text.trim() === '') return;
    const [x, y] = this.place(shape.at);
    const size = shape.size / capHeight;
    doc
      .save()
      .font(shape.bold ? 'Helvetica-Bold' : 'Helvetica')
      .fontSize(size)
      .fillColor(grey(0));
    if (shape.angle !== 0) doc.rotate(-shape.angle, { origin: [x, y] });
    const width = doc.widthOfString(text);
    const from = shape.align === 'start' ? x : shape.align === 'middle' ? x - width / 2 : x - width;
    doc.text(text, from, y, { lineBreak: false, baseline: 'alphabetic' });
    doc.restore();
  }

  draw(shape: Shape): void {
    switch (shape.kind) {
      case 'line':
        this.doc.moveTo(...this.place(shape.from)).lineTo(...this.place(shape.to));
        this.ink(shape.pen);
        return;
      case 'circle':
        this.moveOnto(shape.centre, shape.r, 0);
        this.arc(shape.centre, shape.r, 0, 360);
        this.doc.closePath();
        this.ink(shape.pen, shape.fill);
        return;
      case 'arc': {
        let sweep = shape.end - shape.start;
        while (sweep <= 0) sweep += 360;
        this.moveOnto(shape.centre, shape.r, shape.start);
        this.arc(shape.centre, shape.r, shape.start, sweep);
        this.ink(shape.pen);
        return;
      }
      case 'path':
        for (const loop of shape.loops) {
          const first = loop[0];
          if (first === undefined) continue;
          this.doc.moveTo(...this.place(first));
          loop.forEach((corner, i) => {
            const next = loop[i + 1] ?? (shape.closed ? first : undefined);
            if (next) this.stretch(corner, next);
          });
          if (shape.closed) this.doc.closePath();
        }
        this.ink(shape.pen, shape.fill);
        return;
      case 'text':
        this.text(shape);
    }
  }
}

/** The package's document. In a browser it has to be handed the two fonts that are used; on node it finds them by itself. */
async function loadPdfkit() {
  const pdfkit = await import('pdfkit');
  const { registerStdFonts } = pdfkit as { readonly registerStdFonts?: (...fonts: unknown[]) => void };
  if (registerStdFonts) {
    const fonts = [import('pdfkit/standard-fonts/Helvetica'), import('pdfkit/standard-fonts/HelveticaBold')];
    registerStdFonts(...(await Promise.all(fonts)).map((font) => font.default));
  }
  return pdfkit.default;
}

/**
 * Writes pages as a PDF.
 * @throws an Error when a coordinate is not finite: a bug of the caller
 */
export async function writePdf(pages: readonly PdfPage[], about: PdfAbout): Promise<Uint8Array> {
  const PDFDocument = await loadPdfkit();
  const doc = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    pdfVersion: '1.7',
    info: {
      Title: plainTitle(about.title),
      ...(about.subject === undefined ? {} : { Subject: plainTitle(about.subject) }),
      Producer: 'flangewright',
      Creator: 'flangewright',
      CreationDate: new Date(0),
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve());
    doc.on('error', reject);
  });
  // pdfkit has no setting for this; it ends the reference by itself when the document ends.
  const root = (doc as unknown as { readonly _root: { readonly data: Record<string, unknown> } })._root;
  root.data.ViewerPreferences = doc.ref({ PrintScaling: 'None', DisplayDocTitle: true });
  for (const { width, height, weight = 1, layers } of pages) {
    doc.addPage({ size: [width * pointsPerMm, height * pointsPerMm], margin: 0 });
    doc.scale(pointsPerMm);
    doc.lineCap('round').lineJoin('round');
    for (const { drawing, at, clip } of layers) {
      doc.save();
      if (clip) doc.rect(clip.xMin, height - clip.yMax, clip.xMax - clip.xMin, clip.yMax - clip.yMin).clip();
      const writer = new PageWriter(doc, at, height, weight);
      for (const shape of drawing.shapes) writer.draw(shape);
      doc.restore();
    }
  }
  doc.end();
  await done;
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let length = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, length);
    length += chunk.length;
  }
  return bytes;
}
