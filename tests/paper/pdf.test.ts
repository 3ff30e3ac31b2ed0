/** The PDF writer: what readers find in the file, and that arcs are arcs. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Drawing, Shape } from '../../src/model/drawing.ts';
import { type PdfPage, winAnsi, writePdf } from '../../src/write/pdf.ts';
import { circleNear, darkAlong, paint, run } from './pixels.ts';

const folder = mkdtempSync(join(tmpdir(), 'pdf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const box = { xMin: 0, yMin: 0, xMax: 100, yMax: 80 };
const drawing = (shapes: readonly Shape[]): Drawing => ({ id: 'd', title: 'd', description: '', box, shapes });
const page = (shapes: readonly Shape[], clip: PdfPage['layers'][number]['clip'] = null): PdfPage => ({
  width: 100,
  height: 80,
  layers: [{ drawing: drawing(shapes), at: { x: 10, y: 5 }, clip }],
});

async function file(name: string, pages: readonly PdfPage[]): Promise<string> {
  const path = join(folder, name);
  writeFileSync(path, await writePdf(pages, { title: 'Demo \u2300 \u0416' }));
  return path;
}

const text = (words: string, more: Partial<Extract<Shape, { kind: 'text' }>> = {}): Shape => ({
  kind: 'text',
  at: { x: 0, y: 0 },
  text: words,
  size: 3,
  align: 'start',
  angle: 0,
  ...more,
});

describe('writePdf', () => {
  it('gives pages of the right size, a title, and tells viewers not to scale', async () => {
    const path = await file('a.pdf', [page([]), page([])]);
    const info = run('pdfinfo', [path]);
    expect(info).toMatch(/^Pages:\s+2$/m);
    // 100 x 80 mm at 72 points to 25.4 mm.
    expect(info).toMatch(/^Page size:\s+283\.465 x 226\.772 pts/m);
    expect(info).toMatch(/^Title:\s+Demo \u2300 \u0416$/m);
    const bytes = await writePdf([page([])], { title: 'x' });
    expect(Buffer.from(bytes).toString('latin1')).toMatch(
      /\/ViewerPreferences (\d+) 0 R[\s\S]*\n\1 0 obj\n<<\n\/PrintScaling \/None/,
    );
  });

  it('keeps its XML well formed whatever the title holds', async () => {
    const path = join(folder, 'title.pdf');
    writeFileSync(path, await writePdf([page([])], { title: 'A & B <c>' }));
    const info = run('pdfinfo', ['-meta', path]);
    expect(info).toContain('A + B \u2039c\u203a');
    expect(info).not.toMatch(/&|<c>/);
  });

  it('is the same byte for byte, later and again', async () => {
    const shapes = [
      text('same'),
      { kind: 'circle', pen: 'outline', fill: 'none', centre: { x: 20, y: 20 }, r: 9 } satisfies Shape,
    ];
    const first = await writePdf([page(shapes)], { title: 'same' });
    await new Promise((resolve) => setTimeout(resolve, 1100));
    expect(Buffer.compare(first, await writePdf([page(shapes)], { title: 'same' }))).toBe(0);
    expect(Buffer.from(first).toString('latin1')).toContain('(D:19700101000000Z)');
  });

  it('draws circles, arcs and bulges on the same true circle', async () => {
    const ends = (start: number, end: number) => ({
      a: { x: 40 + 30 * Math.cos(start), y: 35 + 30 * Math.sin(start) },
      b: { x: 40 + 30 * Math.cos(end), y: 35 + 30 * Math.sin(end) },
    });
    const { a, b } = ends(Math.PI / 3, Math.PI * 1.5);
    const bulge = Math.tan((Math.PI * 1.5 - Math.PI / 3) / 4);
    const path = (loop: readonly { x: number; y: number; bulge: number }[], closed: boolean): Shape => ({
      kind: 'path',
      pen: 'thin',
      fill: 'none',
      closed,
      loops: [loop],
    });
    const pages = [
      page([{ kind: 'circle', pen: 'thin', fill: 'none', centre: { x: 40, y: 35 }, r: 30 }]),
      // A full turn written as 90 to 90.
      page([{ kind: 'arc', pen: 'thin', centre: { x: 40, y: 35 }, r: 30, start: 90, end: 90 }]),
      // Two bulges, one more and one less than half a turn, counter-clockwise and clockwise.
      page([
        path(
          [
            { ...a, bulge },
            { ...b, bulge: Math.tan((2 * Math.PI - 4 * Math.atan(bulge)) / 4) },
          ],
          true,
        ),
      ]),
      page([
        path(
          [
            { ...b, bulge: -bulge },
            { ...a, bulge: 0 },
          ],
          false,
        ),
        { kind: 'arc', pen: 'thin', centre: { x: 40, y: 35 }, r: 30, start: -90, end: 60 },
      ]),
    ];
    const name = await file('arcs.pdf', pages);
    for (const number of [1, 2, 3, 4]) {
      const found = circleNear(paint(folder, name, number), 50, 40, 30);
      expect(Math.abs(found.r - 30), `page ${number}`).toBeLessThan(0.01);
      expect(Math.hypot(found.x - 50, found.y - 40), `page ${number}`).toBeLessThan(0.02);
    }
  });

  it('shows nothing outside a clip', async () => {
    const across: Shape = { kind: 'circle', pen: 'mark', fill: 'none', centre: { x: 40, y: 35 }, r: 20 };
    const name = await file('clip.pdf', [page([across], { xMin: 0, yMin: 0, xMax: 50, yMax: 80 })]);
    const painted = paint(folder, name, 1);
    expect(darkAlong(painted, [5, 40], [95, 40]).map(Math.round)).toEqual([25]);
  });

  it('keeps the signs that fitters write, and never fails on others', async () => {
    expect(winAnsi('\u00d857.15 \u00b10.02 90\u00b0 \u2300 \u2212 \u00e9')).toBe(
      '\u00d857.15 \u00b10.02 90\u00b0 \u00d8 - \u00e9',
    );
    expect(winAnsi('\u0159\u0416\u{1f600}')).toBe('r??');
    const name = await file('text.pdf', [
      page([text('\u00d857.15 \u00b10.02 90\u00b0'), text('turned', { angle: 90, at: { x: 50, y: 20 } })]),
    ]);
    const words = run('pdftotext', [name, '-']);
    expect(words).toContain('\u00d857.15 \u00b10.02 90\u00b0');
    expect(words).toContain('turned');
  });

  it('sets text with its base line and its cap height where the drawing has them', async () => {
    // A Helvetica I is a plain upright bar, so its ends are the base line and the cap height: 10 mm here.
    const name = await file('cap.pdf', [page([text('I', { size: 10, at: { x: 40, y: 20 }, align: 'middle' })])]);
    const painted = paint(folder, name, 1);
    const inked = Array.from({ length: 400 }, (_, i) => 20 + i * 0.05).filter(
      (y) => darkAlong(painted, [45, y], [55, y]).length > 0,
    );
    expect(Math.abs((inked[0] as number) - 25)).toBeLessThan(0.15);
    expect(Math.abs((inked.at(-1) as number) - 35)).toBeLessThan(0.15);
    expect(Math.abs((darkAlong(painted, [45, 30], [55, 30])[0] as number) - 5)).toBeLessThan(0.3);
  });

  it('throws on a length that is not a number: that is a bug of the caller', async () => {
    const bad: Shape = { kind: 'line', pen: 'thin', from: { x: Number.NaN, y: 0 }, to: { x: 1, y: 1 } };
    await expect(writePdf([page([bad])], { title: 'x' })).rejects.toThrow(/not a number/);
  });
});
