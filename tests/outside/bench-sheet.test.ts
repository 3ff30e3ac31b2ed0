/** The bench sheet as Chromium prints it: one page of A4 for every shipped job and for a crowded one, and poppler reads on it what it should. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { judgeJob, makeFiles } from '../../src/core.ts';
import { run } from '../paper/pixels.ts';
import { patterns, type Shipped, shipped } from '../presets/shipped.ts';

const folder = mkdtempSync(join(tmpdir(), 'bench-'));
let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const six = (size: number) => `[${[2, 0, 1, 2, -1, 0].map((d) => (size + d / 100).toFixed(2)).join(', ')}]`;
const around = '[0.008, 0.010, 0.006, -0.001, -0.008, -0.010, -0.006, 0.001]';

/** Windows, dowels on both sides, twelve screws a side, long names, six readings a size, and checks that fail. */
const crowded = `
job: 1
title: ${'A title as long as any title may be, which nobody writes but for a test of it'.padEnd(80, 's')}
duty: { torque: 2200 N.m, speed: 6600 rpm, grade: G6.3, temperature: { cold: -20 degC, hot: 120 degC } }
driving:
  name: ${'output flange of the drive unit with a name of sixty signs'.padEnd(60, 's')}
  outside: { readings: ${six(152)}, instrument: caliper }
  thickness: ${six(14)}
  register: { gender: male, diameter: { readings: ${six(62)}, instrument: caliper }, depth: ${six(4)}, corner: 0.6 }
  holes: { count: 12, circle: ${six(118)}, diameter: ${six(10.4)} }
  runout: { rim: ${around}, face: ${around} }
driven:
  name: ${'flange of the propeller shaft with a name of sixty signs'.padEnd(60, 's')}
  outside: ${six(128)}
  thickness: ${six(9)}
  register: { gender: female, diameter: ${six(60.01)}, depth: ${six(3)}, corner: 0.5 }
  holes: { count: 12, circle: ${six(108)}, diameter: ${six(10.4)} }
  runout: { rim: ${around}, face: ${around} }
adapter: { driving: { dowels: { count: 6 } }, driven: { dowels: { count: 6 } } }
wheel: { form: windows, teeth: 48, missing: 2, outside: 210, height: 8, thickness: 3, set_true: 0.15 }
sensor:
  kind: hall
  direction: axial
  gap: 1.2
  gap_range: { least: 0.5, most: 2.5 }
  axle: 4.1
  tyre: 205/65R16
  was: { teeth: 44, ratio: 5.125 }
`;

/** Every length in inches, readings with their doubt, angles of a shaft, and checks that fail. Invented. */
const inches = `
job: 1
title: Bench saw carriage, motor gear to feed shaft
units: in
duty:
  torque: 190 lbf.ft
  speed: 2100 rpm
  shock: light
  grade: G40
driving:
  name: motor gear flange
  outside: 4.75
  thickness: 0.75
  register: { gender: female, diameter: { value: 2.3755, doubt: 0.0003, instrument: micrometer }, depth: 0.125, corner: 0.02 }
  holes: { count: 6, circle: 3.75, thread: 3/8-16 UNC, depth: 0.70 }
  runout: { rim: 0.001 +-0.0003, face: 0.001 +-0.0003 }
  material: 1045
driven:
  name: feed shaft flange
  outside: 6.00
  thickness: 0.40
  register: { gender: male, diameter: { value: 2.5000, doubt: 0.0003, instrument: micrometer }, depth: 0.09, corner: 0.02 }
  holes: { count: 4, circle: 5.00, diameter: 0.4531 }
  runout: { rim: 0.0015 +-0.0003, face: 0.001 +-0.0003 }
  material: 1045
  behind: 2.5
adapter:
  name: CARRIAGE 2
  material: 1045
  driven: { fastening: through, screw: 7/16-20 UNF, class: 10.9, washer: true }
wheel:
  name: 44 TOOTH
  teeth: 44
  ratio: 0.45
  outside: auto
  thickness: 0.25
  root_radius: 0.03
  material: A36
  screws: { count: 6, size: 1/4-28 UNF }
sensor:
  kind: coil
  gap: 0.035
  crawl: 120 rpm
shaft:
  mass: 22 lb
  cruise: 1500 rpm
  bolts_to: driven
  measured: { from: flange, value: [50.02, 49.98, 50.00], at: ride height }
  ends: { adapter: 2.5, far: 2.375 }
  slip: { stroke: 3.5, engaged: 5 }
  tube: { outside: 2.5, wall: 0.083, length: 43.5, material: 1018-CD }
  angles:
    line:
      - { name: motor gear, side: 1.0 deg }
      - { name: feed shaft, side: 4.0 deg }
      - { name: saw box, side: 1.3 deg }
`;

const crowdedJob = (): Shipped => {
  // The usual way at once: what is printed is looked at here, not the search.
  const judged = judgeJob(crowded, 'crowded.job.yaml', patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return { base: 'crowded', file: 'crowded.job.yaml', text: crowded, ...judged };
};

async function printed({ base, file, joint, findings }: Shipped, change = (html: string) => html): Promise<string> {
  const only = ['bench-sheet'];
  const { files } = await makeFiles(joint, findings, { base, jobName: file, only, force: false });
  const [html, pdf] = ['html', 'pdf'].map((end) => join(folder, `${base}.${end}`)) as [string, string];
  writeFileSync(html, change(new TextDecoder().decode(files[0]?.bytes)));
  const page = await browser.newPage();
  await page.goto(`file://${html}`);
  await page.pdf({ path: pdf, preferCSSPageSize: true });
  await page.close();
  return pdf;
}

const limits = (text: string) => text.replace(/\s+/g, ' ');

describe('printed from a browser', () => {
  it.each(shipped.map((job) => [job.base, job] as const))('%s is one sheet of A4', async (_, job) => {
    const pdf = await printed(job);
    const info = run('pdfinfo', [pdf]);
    expect(info).toMatch(/^Pages:\s+1$/m);
    // ISO 216: 210 x 297 mm are 595.3 x 841.9 points; a browser cuts to its own pixels.
    const [, wide, high] = /^Page size:\s+([\d.]+) x ([\d.]+) pts/m.exec(info) ?? [];
    expect(Math.abs(Number(wide) - 595.28)).toBeLessThan(0.6);
    expect(Math.abs(Number(high) - 841.89)).toBeLessThan(0.6);
    const words = limits(run('pdftotext', ['-layout', pdf, '-']));
    expect(words).toContain('What was measured');
    for (const { tightening } of job.joint.screws) {
      const { torque } = tightening;
      if (torque !== null) expect(words).toContain(`${torque < 20 ? torque.toFixed(1) : torque.toFixed(0)} N.m`);
    }
    // The last line of the sheet is on it.
    expect(words).toContain('adapter marked R');
  });

  it('a crowded one too, in smaller letters, none of them under 5 points', async () => {
    const job = crowdedJob();
    const pdf = await printed(job);
    expect(run('pdfinfo', [pdf])).toMatch(/^Pages:\s+1$/m);
    const words = limits(run('pdftotext', ['-layout', pdf, '-']));
    expect(words).toContain('adapter marked R');
    expect(words).toContain('CHECKS FAILED');
    expect(words).toContain('more: see the report');
    const page = await browser.newPage();
    await page.goto(`file://${join(folder, 'crowded.html')}`);
    const sizes: number[] = await page.evaluate(
      "[...document.querySelectorAll('th,td,li,p')].map((one) => Number.parseFloat(getComputedStyle(one).fontSize))",
    );
    const least = Math.min(...sizes);
    await page.close();
    // A browser counts 96 pixels to the inch, a point is a 72nd.
    expect((least * 72) / 96).toBeGreaterThan(5);
  });

  it('an inch job too, whose sizes stand in both units, in the widest of the letters that are named', async () => {
    const judged = judgeJob(inches, 'inches.job.yaml', patterns, { search: false });
    if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
    const job = { base: 'inches', file: 'inches.job.yaml', text: inches, ...judged };
    const pdf = await printed(job, (html) => html.replace('Arial,"Liberation Sans",', ''));
    expect(run('pdffonts', [pdf])).toMatch(/DejaVu/);
    expect(run('pdfinfo', [pdf])).toMatch(/^Pages:\s+1$/m);
    const words = limits(run('pdftotext', ['-layout', pdf, '-']));
    expect(words).toContain('adapter marked R');
    expect(words).toContain('lbf.ft');
  });
});
