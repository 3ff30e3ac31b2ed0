/**
 * Workshop drawings as poppler reads them (Debian: poppler-utils): painted at 600 dots an inch and measured, and their text taken out.
 * Nothing here asks the program how it drew: sizes come from the job, places from the pixels.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type Joint, makeFiles } from '../../src/core.ts';
import { revisionOf } from '../../src/job/revision.ts';
import type { Drawing, Shape } from '../../src/model/drawing.ts';
import { drawingSheets } from '../../src/products/drawing.ts';
import { verdictWords } from '../../src/products/product.ts';
import { laidOut, sheetsOf, texts } from '../drawing/shop/help.ts';
import { circleNear, dpi, paint, run } from '../paper/pixels.ts';
import { type Shipped, shipped, shippedJob } from '../presets/shipped.ts';

const folder = mkdtempSync(join(tmpdir(), 'drawing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The PDF of one part's drawing, written to a file. */
async function pdfOf(job: Shipped, part: 'adapter' | 'wheel', joint: Joint = job.joint): Promise<string> {
  const options = { base: job.base, jobName: job.file, only: ['drawing'], force: true };
  const { files } = await makeFiles(joint, job.findings, options);
  const file = files.find(({ name }) => name === `${job.base}-${part}-drawing.pdf`);
  if (!file) throw new Error(`no drawing of the ${part}`);
  const path = join(folder, file.name);
  writeFileSync(path, file.bytes);
  return path;
}

/** Where the outline's centre lies on a sheet: the middle of its largest drawn circle. */
function largest(sheet: Drawing): { x: number; y: number; r: number } {
  const circles = sheet.shapes.flatMap((s: Shape) => (s.kind === 'circle' && s.pen === 'outline' ? [s] : []));
  const first = circles.sort((a, b) => b.r - a.r)[0];
  if (!first) throw new Error('no circle on the sheet');
  return { ...first.centre, r: first.r };
}

describe('scale', () => {
  // Round adapters only: flats would cut the circle. A search of 0.3 mm leaves out the inner edge of the chamfer.
  it.each([
    ['test-stand', 'a3', 1],
    ['test-stand', 'a4', 2],
    ['river-launch', 'tabloid', 1],
    ['river-launch', 'letter', 2],
  ] as const)('of %s on %s is exact to a pixel at 600 dpi', async (base, paper, shrunk) => {
    const job = shippedJob(base);
    const joint = laidOut(job.joint, { paper });
    const pdf = await pdfOf(job, 'adapter', joint);
    const page = paint(folder, pdf, 1);
    const [sheet] = sheetsOf(joint, 'adapter');
    const guess = largest(sheet as Drawing);
    const found = circleNear(page, guess.x, guess.y, joint.adapterSpec.outside / 2 / shrunk, 0.3);
    const pixel = 25.4 / dpi;
    expect(Math.abs(2 * found.r - joint.adapterSpec.outside / shrunk)).toBeLessThan(pixel);
    // The page itself is as large as the paper: two sizes of ISO 216, two of ASME Y14.1.
    const [wide, high] = { a3: [420, 297], a4: [297, 210], tabloid: [431.8, 279.4], letter: [279.4, 215.9] }[paper] as [
      number,
      number,
    ];
    expect(Math.abs(page.columns * pixel - wide)).toBeLessThan(1.1 * pixel);
    expect(Math.abs(page.rows * pixel - high)).toBeLessThan(1.1 * pixel);
  });
});

/** Words of a text, in alphabetical order. */
const sorted = (text: string) =>
  text
    .split(/\s+/)
    .filter((word) => word !== '')
    .sort();

describe.each(shipped.map((job) => [job.base, job] as const))('%s', (_, job) => {
  const { joint } = job;
  const failing = job.findings.some(({ verdict }) => verdict === 'fail');
  const words = {
    base: job.base,
    revision: revisionOf(joint),
    warning: verdictWords(failing ? 'fail' : 'pass', true),
  };

  it('carries every word of its sheets as text, once each', async () => {
    for (const { part, sheets } of drawingSheets(joint, words)) {
      const pdf = await pdfOf(job, part);
      const read = run('pdftotext', ['-enc', 'UTF-8', '-raw', pdf, '-']);
      const written = sheets
        .flatMap(texts)
        .map(({ text }) => text)
        .join(' ');
      // Without the spaces: a reader joins and parts words by their distance. Letters and figures must be the same, each as often.
      const letters = (text: string) => [...sorted(text).join('')].sort().join('');
      expect(letters(read)).toBe(letters(written));
    }
  });

  it('has each hole of its table in one row of the extracted text', async () => {
    const pdf = await pdfOf(job, 'adapter');
    const read = run('pdftotext', ['-enc', 'UTF-8', '-layout', pdf, '-']);
    const inch = joint.job.units === 'in';
    const shown = (mm: number) => {
      const text = inch ? (mm / 25.4).toFixed(4) : mm.toFixed(3);
      return Number(text) === 0 ? text.replace('-', '') : text;
    };
    for (const { x, y } of joint.adapter.drillings.filter((d) => Math.hypot(d.x, d.y) > 1e-6)) {
      const [r, degrees] = [Math.hypot(x, y), (Math.atan2(y, x) * 180) / Math.PI];
      // From either side: left and right change places, and so does the sense of turning.
      const rows = [
        { x, angle: degrees },
        { x: -x, angle: 180 - degrees },
      ].map((seen) => {
        const angle = ((seen.angle % 360) + 360) % 360;
        const turn = (angle > 359.9995 ? 0 : angle).toFixed(3);
        const cells = [shown(seen.x), shown(y), shown(r), turn].map((cell) => cell.replaceAll('.', '\\.'));
        return new RegExp(`[A-Z]\\d+\\s+${cells.join('\\s+')}(?!\\d)`, 'g');
      });
      const found = rows.map((row) => read.match(row)?.length ?? 0);
      expect(
        found.reduce((sum, n) => sum + n, 0),
        `hole at ${x}, ${y}: ${rows}`,
      ).toBeGreaterThan(0);
    }
  });
});

describe('the product', () => {
  it('is held while a check fails, and named all the same', async () => {
    const { base, file, joint, findings } = shippedJob('near-miss');
    const made = await makeFiles(joint, findings, { base, jobName: file, only: ['drawing'], force: false });
    expect(made.files.filter(({ kind }) => kind === 'drawing')).toEqual([]);
    expect(made.held.find(({ kind }) => kind === 'drawing')?.names).toEqual([
      'near-miss-adapter-drawing.pdf',
      'near-miss-adapter-drawing.svg',
      'near-miss-wheel-drawing.pdf',
      'near-miss-wheel-drawing.svg',
    ]);
  });

  it('is made when it is asked for, by word or by key, and its SVG is as large as its sheets', async () => {
    const { base, file, joint, findings } = shippedJob('kart');
    const kinds = async (of: Joint) =>
      (await makeFiles(of, findings, { base, jobName: file, only: [], force: false })).files.filter(
        ({ kind }) => kind === 'drawing',
      );
    expect(await kinds(joint)).toEqual([]);
    const asked = laidOut(joint, { paper: 'a4' });
    const files = await kinds(asked);
    expect(files.map(({ name }) => name)).toEqual(['kart-adapter-drawing.pdf', 'kart-adapter-drawing.svg']);
    const svg = Buffer.from(files[1]?.bytes ?? new Uint8Array()).toString('utf8');
    const count = sheetsOf(asked, 'adapter').length;
    expect(svg).toContain(`width="297mm" height="${210 * count + 10 * (count - 1)}mm"`);
    // The paper is no part of the part: the mark stays.
    expect(revisionOf(asked)).toBe(revisionOf(joint));
  });
});
