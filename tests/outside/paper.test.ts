/**
 * True size proven from outside: the PDFs painted by poppler at 600 dots an inch, and lengths measured in the pixels. One pixel is
 * 0.042 mm; middles of lines are found to a fraction of that. Expected lengths are the job's own figures and the two bars' names.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { flangePattern } from '../../src/drawing/paper.ts';
import { type PaperName, paperSizes, sheetsOfPaper, windowOf } from '../../src/drawing/sheet-of-paper.ts';
import { writePdf } from '../../src/write/pdf.ts';
import { circleNear, darkAlong, type Page, paint, run } from '../paper/pixels.ts';
import { demoJob, fileOf, makeDemo } from '../rings/demo.ts';

const folder = mkdtempSync(join(tmpdir(), 'paper-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const papers: readonly PaperName[] = ['a4', 'letter'];
const pdf = (paper: PaperName) => join(folder, `demo-${paper}.pdf`);

beforeAll(async () => {
  const made = await makeDemo(['paper']);
  for (const paper of papers) writeFileSync(pdf(paper), fileOf(made, `demo-paper-${paper}.pdf`));
});

/** Length of the bar across: the outermost of the long ticks, met above the short ones. */
function barAcross(page: Page): number {
  const ticks = darkAlong(page, [15, 20], [180, 20]);
  return (ticks.at(-1) as number) - (ticks[0] as number);
}

/** Length of the bar up, in mm: the same, met to the right of its short ticks. */
function barUp(page: Page): number {
  const ticks = darkAlong(page, [18.2, 20], [18.2, 180]);
  return (ticks.at(-1) as number) - (ticks[0] as number);
}

describe.each(papers)('%s', (paper) => {
  it('has a page for each face, of the right size', () => {
    const info = run('pdfinfo', [pdf(paper)]);
    expect(info).toMatch(/^Pages:\s+4$/m);
    // ISO 216: A4 is 210 x 297 mm. US Letter is 8.5 x 11 in.
    expect(info).toMatch(paper === 'a4' ? /595\.276 x 841\.89 pts/ : /612 x 792 pts/);
  });

  it('says what is seen, page by page', () => {
    const words = [1, 2, 3, 4].map((n) =>
      run('pdftotext', ['-layout', '-f', String(n), '-l', String(n), pdf(paper), '-']),
    );
    const [driving, onDriving, onDriven, driven] = words as [string, string, string, string];
    expect(driving).toContain("demo hub: seen looking at the driving flange's own face.");
    expect(driving).toContain('4 x M8 on \u00d884.00');
    expect(onDriving).toContain("seen looking at the adapter's driving face");
    expect(onDriven).toContain("seen looking at the adapter's driven face");
    expect(driven).toContain("demo companion: seen looking at the driven flange's own face.");
    expect(driven).toContain('register recess \u00d836.00');
    for (const [i, page] of words.entries()) {
      expect(page).toContain('100 mm between the long ticks');
      expect(page).toContain('4 in (101.6 mm) between the long ticks');
      expect(page).toContain(`Sheet ${i + 1} of 4`);
      expect(page).toContain('0\u00b0');
      // Neither a day nor a clock time nor a revision.
      expect(page).not.toMatch(/\b(19|20)\d\d\b|\d\d:\d\d|\brev/i);
    }
  });

  it.each([1, 2, 3, 4])('page %i: both bars are true within 0.02 mm', (number) => {
    const page = paint(folder, pdf(paper), number);
    expect(Math.abs(barAcross(page) - 100)).toBeLessThan(0.02);
    expect(Math.abs(barUp(page) - 4 * 25.4)).toBeLessThan(0.02);
  });

  it('holes of both flanges stand where the job says, seen looking at each own face, within 0.02 mm', () => {
    const frame = windowOf(paper);
    for (const { number, outside, circle, angles, hole } of [
      { number: 1, outside: 112, circle: 84, angles: [10, 100, 170, 290], hole: 8 },
      { number: 4, outside: 128, circle: 108, angles: [0, 80, 200], hole: 10.4 },
    ]) {
      const page = paint(folder, pdf(paper), number);
      // Near the middle of the window: the mark and its figure move it by a few mm at most.
      const rough = roughCentre(page, (frame.xMin + frame.xMax) / 2, (frame.yMin + frame.yMax) / 2, outside / 2);
      const rim = circleNear(page, rough.x, rough.y, outside / 2);
      expect(Math.abs(2 * rim.r - outside)).toBeLessThan(0.02);
      for (const angle of angles) {
        const a = (angle * Math.PI) / 180;
        const at = { x: (circle / 2) * Math.cos(a), y: (circle / 2) * Math.sin(a) };
        const found = circleNear(page, rim.x + at.x, rim.y + at.y, hole / 2);
        expect(Math.hypot(found.x - rim.x - at.x, found.y - rim.y - at.y), `hole at ${angle}`).toBeLessThan(0.02);
        expect(Math.abs(2 * found.r - hole)).toBeLessThan(0.03);
      }
    }
  });
});

/** Middle of a big circle: half way between its crossings of two lines through a point near the middle. */
function roughCentre(page: Page, x: number, y: number, r: number): { x: number; y: number } {
  // Off the centre lines, so that only lines across are met; the outermost ones are the rim's.
  const across = darkAlong(page, [x - r - 8, y + 9], [x + r + 8, y + 9]);
  const up = darkAlong(page, [x + 9, y - r - 8], [x + 9, y + r + 8]);
  const middle = (found: number[]) => ((found[0] as number) + (found.at(-1) as number)) / 2;
  return { x: x - r - 8 + middle(across), y: y - r - 8 + middle(up) };
}

describe('a pattern too large for the sheet', () => {
  // An invented flange of 300 mm with twelve holes on 260: two by two tiles on either paper.
  const holes = Array.from({ length: 12 }, (_, i) => (Math.PI * (i + 0.5)) / 6).map((a) => ({
    x: 130 * Math.cos(a),
    y: 130 * Math.sin(a),
  }));
  const pattern = flangePattern(
    {
      side: 'driving',
      name: 'demo wheel hub',
      outside: 300,
      register: null,
      bore: 60,
      holes: { positions: holes, diameter: 12, thread: null },
      zero: 45,
    },
    'mm',
  );

  it.each(papers)(
    '%s: four tiles, each with both bars, laid cross on cross give the bolt circle within 0.03 mm',
    async (paper) => {
      const sheets = sheetsOfPaper([pattern], paper, { title: 'Demo', warning: 'CHECKS FAILED' });
      const path = join(folder, `tiles-${paper}.pdf`);
      writeFileSync(path, await writePdf(sheets, { title: 'Demo' }));
      expect(run('pdfinfo', [path])).toMatch(/^Pages:\s+4$/m);
      for (const tile of ['A1', 'A2', 'B1', 'B2']) expect(run('pdftotext', [path, '-'])).toContain(`Tile ${tile}`);
      expect(run('pdftotext', [path, '-'])).toContain('CHECKS FAILED');

      const frame = windowOf(paper);
      const pages = sheets.map((_, i) => paint(folder, path, i + 1));
      const isInside = (x: number, y: number, r: number) =>
        x - r > frame.xMin && x + r < frame.xMax && y - r > frame.yMin && y + r < frame.yMax;
      const crosses = sheets[0]?.layers[0]?.drawing.shapes.flatMap((s) =>
        s.kind === 'circle' && s.feature === 'alignment' ? [s.centre] : [],
      );
      const found = sheets.map(({ layers }, i) => {
        const page = pages[i] as Page;
        expect(Math.abs(barAcross(page) - 100)).toBeLessThan(0.02);
        expect(Math.abs(barUp(page) - 4 * 25.4)).toBeLessThan(0.02);
        const at = layers[0]?.at ?? { x: 0, y: 0 };
        const look = (p: { x: number; y: number }, r: number) => {
          const [x, y] = [p.x + at.x, p.y + at.y];
          return isInside(x, y, r + 1) ? circleNear(page, x, y, r) : null;
        };
        return { crosses: (crosses ?? []).map((p) => look(p, 2)), holes: holes.map((p) => look(p, 6)) };
      });
      // Each tile is laid on the first by a chain of crosses that both show: the mean shift of those.
      const shifts: ({ x: number; y: number } | null)[] = [{ x: 0, y: 0 }, null, null, null];
      for (const [from, to] of [
        [0, 1],
        [0, 2],
        [1, 3],
      ] as const) {
        const pairs = (crosses ?? []).flatMap((_, k) => {
          const [a, b] = [found[from]?.crosses[k], found[to]?.crosses[k]];
          return a && b ? [{ x: a.x - b.x, y: a.y - b.y }] : [];
        });
        expect(pairs.length).toBeGreaterThanOrEqual(2);
        const base = shifts[from] ?? { x: 0, y: 0 };
        const mean = (pick: (p: { x: number; y: number }) => number) =>
          pairs.reduce((sum, p) => sum + pick(p), 0) / pairs.length;
        shifts[to] = { x: base.x + mean((p) => p.x), y: base.y + mean((p) => p.y) };
      }
      const placed = holes.map((_, k) => {
        const seen = found.flatMap((tile, i) => {
          const hole = tile.holes[k];
          const shift = shifts[i];
          return hole && shift ? [{ x: hole.x + shift.x, y: hole.y + shift.y }] : [];
        });
        expect(seen.length, `hole ${k + 1} is whole on some tile`).toBeGreaterThan(0);
        return seen[0] as { x: number; y: number };
      });
      const distance = (i: number, j: number) => {
        const [a, b] = [placed[i], placed[j]] as [{ x: number; y: number }, { x: number; y: number }];
        return Math.hypot(a.x - b.x, a.y - b.y);
      };
      for (let k = 0; k < 6; k++)
        expect(Math.abs(distance(k, k + 6) - 260), `holes ${k + 1} and ${k + 7}`).toBeLessThan(0.03);
      // Neighbours: chord of a twelfth of the circle.
      for (let k = 0; k < 12; k++)
        expect(Math.abs(distance(k, (k + 1) % 12) - 260 * Math.sin(Math.PI / 12))).toBeLessThan(0.03);
    },
  );

  it('tiles share 10 mm and none reaches into the edge of the paper', () => {
    for (const paper of papers) {
      const sheets = sheetsOfPaper([pattern], paper, { title: 'Demo', warning: '' });
      const frame = windowOf(paper);
      expect(frame.xMin).toBeGreaterThanOrEqual(10);
      expect(frame.xMax).toBeLessThanOrEqual(paperSizes[paper].width - 10);
      const [first, second] = sheets.map(({ layers }) => layers[0]?.at.x ?? Number.NaN) as [number, number];
      expect(frame.xMax - frame.xMin - (first - second)).toBeCloseTo(10, 9);
    }
  });
});

it('the measuring does find fault with a print that is one per cent small', () => {
  const page = paint(folder, pdf('a4'), 1, 594);
  expect(Math.abs(barAcross(page) - 99)).toBeLessThan(0.05);
});

it('is byte for byte the same again, and made on the papers that the job names', async () => {
  const again = await makeDemo(['paper']);
  const first = await makeDemo(['paper']);
  for (const { name, bytes } of first.files) expect(Buffer.compare(fileOf(again, name), bytes)).toBe(0);
  const letter = await makeDemo(['paper'], `${demoJob}print:\n  paper: [letter]\n`);
  expect(letter.files.map((f) => f.name)).toEqual(['demo-paper-letter.pdf']);
});
