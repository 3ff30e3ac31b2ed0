/** The verdict on a joint of which the things that matter most are not known, and words that never say yes past a limit. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgeJob, reportData } from '../../src/core.ts';
import { presets } from '../cli/terminal.ts';
import { patterns } from '../validate/help.ts';

const truck = readFileSync(join(presets, 'orchard-truck.job.yaml'), 'utf8');

function told(text: string) {
  const judged = judgeJob(text, 'a.job.yaml', patterns);
  if (!judged.ok) throw new Error(JSON.stringify(judged.errors));
  return { ...judged, report: reportData(judged.joint, judged.findings) };
}

const without = (section: string) => truck.replace(new RegExp(`^${section}:\\n(?:  .*\\n)+`, 'm'), '');

describe('two flanges without a torque and a speed', () => {
  const { report, findings } = told(without('duty'));

  it('are not known to be good, although nothing fails', () => {
    expect(findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'caution')).toEqual([]);
    expect(report.verdict).toBe('not assessed');
    for (const question of ['stay centred', 'stay balanced', 'stay tight', 'strong enough'])
      expect(report.headline).toContain(question);
  });

  it('pass once both are given', () => {
    expect(told(truck).report.verdict).toBe('pass');
    expect(told(truck.replace('  torque: 320 N.m\n', '')).report.headline).toMatch(
      /not known yet: Does it stay tight\?/,
    );
  });
});

describe('a joint that slips and has dowels', () => {
  it('is no yes: it says that the dowels carry it', () => {
    const { report, joint } = told(truck.replace('torque: 320 N.m', 'torque: 1000 N.m'));
    const answer = report.answers.find(({ question }) => question === 'Does it stay tight?');
    expect(joint.dowels?.driving).toBeDefined();
    expect(answer?.word).toBe('Doubtful');
    expect(answer?.text).toContain('Not by friction: its dowels carry it.');
  });
});

it('what was chosen is not assumed at its default as well', () => {
  const { joint } = told(truck);
  const paths = joint.assumptions.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  const driving = joint.screws.find(({ side }) => side === 'driving');
  expect(joint.assumptions.find(({ path }) => path === 'adapter.driving.class')?.value).toBe(driving?.class);
});

it('the doubt of a dial is told as assumed wherever none was typed', () => {
  const paths = told(truck).report.assumptions.filter(({ from }) => from.startsWith('doubt of a dial'));
  // Both rims of the truck were read at eight places without a doubt; both faces as one total with one.
  expect(paths.map(({ path, value }) => `${path}: ${value}`)).toEqual([
    'driving.runout.rim: each reading good to +-0.01 mm',
    'driven.runout.rim: each reading good to +-0.01 mm',
  ]);
  const totals = truck.replace(/rim: \[.*?\]/g, 'rim: 0.02').replace(/face: 0\.02 \+-0\.005/g, 'face: 0.02');
  const assumed = told(totals).report.assumptions.filter(({ from }) => from.startsWith('doubt of a dial'));
  expect(assumed.map(({ path, value }) => `${path}: ${value}`)).toEqual([
    'driving.runout.rim: total reading good to +-0.01 mm',
    'driving.runout.face: total reading good to +-0.01 mm',
    'driven.runout.rim: total reading good to +-0.01 mm',
    'driven.runout.face: total reading good to +-0.01 mm',
  ]);
  const given = totals.replace(/(rim|face): 0\.02/g, '$1: 0.02 +-0.004');
  expect(told(given).report.assumptions.filter(({ from }) => from.startsWith('doubt of a dial'))).toEqual([]);
});

/**
 * Tension that brings a screw to its yield point while it is also twisted by the thread: VDI 2230-1, F = R A / sqrt(1 + 3 (3/2 d2/d0 (P / (pi d2)
 * + 1.155 mu))^2), d0 = (d2 + d3) / 2. M8: d2 7.188, d3 6.466 (ISO 724, ISO 68-1), A 36.6 mm2 (ISO 898-1); class 12.9: 1100 MPa (ISO 898-1).
 */
it('a torque that stretches a screw with slippery threads says so beside it', () => {
  const [d2, d3, pitch, area, yieldPoint, mu] = [7.188, 6.466, 1.25, 36.6, 1100, 0.08];
  const twist = ((1.5 * d2) / ((d2 + d3) / 2)) * (pitch / (Math.PI * d2) + 1.155 * mu);
  const most = (yieldPoint * area) / Math.sqrt(1 + 3 * twist ** 2) / 1000;
  const { report, joint } = told(truck);
  const driving = joint.screws.find(({ side }) => side === 'driving');
  expect(driving).toMatchObject({ thread: 'M8', class: '12.9' });
  expect(driving?.tightening.spread?.from).toBe(mu);
  expect(driving?.tightening.spread?.most).toBeGreaterThan(most);
  expect(report.screws[0]?.tighten).toMatch(/past the yield point: no paste and no grease/);
});
