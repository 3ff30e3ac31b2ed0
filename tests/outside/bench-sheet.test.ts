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

const crowdedJob = (): Shipped => {
  // The usual way at once: what is printed is looked at here, not the search.
  const judged = judgeJob(crowded, 'crowded.job.yaml', patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return { base: 'crowded', file: 'crowded.job.yaml', text: crowded, ...judged };
};

async function printed({ base, file, joint, findings }: Shipped): Promise<string> {
  const only = ['bench-sheet'];
  const { files } = await makeFiles(joint, findings, { base, jobName: file, only, force: false });
  const [html, pdf] = ['html', 'pdf'].map((end) => join(folder, `${base}.${end}`)) as [string, string];
  writeFileSync(html, files[0]?.bytes ?? '');
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
});
