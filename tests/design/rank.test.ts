/** Ways that do not pass: which of them is nearest to passing, and what a heavier load makes of it. Values worked out by hand. */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { byShortfall, shortfallOf } from '../../src/design/rank.ts';
import type { Finding, Verdict } from '../../src/model/finding.ts';
import { type Patch, patched, patterns, soundJob } from '../validate/help.ts';

const finding = (
  code: string,
  verdict: Verdict,
  value: number | null,
  limit: number | null,
  isFloor = true,
): Finding => ({
  code,
  feature: 'body',
  title: code,
  verdict,
  value,
  limit,
  ...(limit === null ? {} : { sense: isFloor ? ('at least' as const) : ('at most' as const) }),
  unit: '',
  margin: value === null || limit === null ? null : isFloor ? value - limit : limit - value,
  why: '',
  remedy: '',
  source: '',
});
const way = (...findings: Finding[]) => ({ findings });
const grip = (value: number) => finding('grip-driving', 'fail', value, 1.25);

describe('how far a way is from passing', () => {
  it('is nothing where nothing fails, whatever asks for care', () => {
    expect(shortfallOf(way(finding('grip-driving', 'caution', 1.1, 1.25)))).toEqual({ stuck: 0, short: 0 });
  });

  it('adds the squares of what is over each limit, in shares of it', () => {
    // 1.25 / 0.5 = 2.5 of a safety, 1.5 over; 0.3 / 0.1 = 3 of a run-out, 2 over: 2.25 + 4.
    const both = way(grip(0.5), finding('concentricity', 'fail', 0.3, 0.1, false));
    expect(shortfallOf(both).short).toBeCloseTo(6.25, 9);
  });

  it('counts apart what has no share: holes that run into each other, a plain no', () => {
    const web = finding('web-between-holes', 'fail', -0.5, 3);
    expect(shortfallOf(way(web, finding('register-gender', 'fail', null, null)))).toEqual({ stuck: 2, short: 0 });
  });

  it('takes of friction and dowels what lacks less, because either may carry it alone', () => {
    // Friction 1.25 / 0.25 = 5 times too little, dowels 1000 / 800 = 1.25 times: 0.25 over.
    const pinned = way(grip(0.25), finding('dowel-shear-driving', 'caution', 800, 1000));
    expect(shortfallOf(pinned).short).toBeCloseTo(0.0625, 9);
    // Pins of the other face do not help this one: 4 over.
    const elsewhere = way(grip(0.25), finding('dowel-shear-driven', 'caution', 800, 1000));
    expect(shortfallOf(elsewhere).short).toBeCloseTo(16, 9);
    // Pins that carry less than friction does take nothing away: 10 times too little against 5.
    const thin = way(grip(0.25), finding('dowel-shear-driving', 'caution', 100, 1000));
    expect(shortfallOf(thin).short).toBeCloseTo(16, 9);
  });

  it('takes friction alone where the torque reverses: dowels save no face that slips to and fro', () => {
    const pinned = way(grip(0.25), finding('dowel-shear-driving', 'caution', 800, 1000));
    const joint = { job: { duty: { reversing: true } } };
    expect(shortfallOf({ ...pinned, joint }).short).toBeCloseTo(16, 9);
  });

  it('puts two misses by a little before one by a lot, and a hair of a limit beside nothing', () => {
    const little = way(grip(1.2), finding('head-pressure-driving', 'fail', 105, 100, false));
    const much = way(grip(0.25));
    expect(byShortfall(little, much)).toBeLessThan(0);
    // 0.3001 and 0.3 of 0.1 are both three times: the count is left, and it is the same.
    const hair = (value: number) => way(finding('concentricity', 'fail', value, 0.1, false));
    expect(byShortfall(hair(0.3001), hair(0.3))).toBe(0);
    expect(byShortfall(hair(0.31), hair(0.3))).toBeGreaterThan(0);
  });
});

describe('a heavier load', () => {
  const job = patched(soundJob, { wheel: undefined, sensor: undefined, shaft: undefined });
  const designed = (torque: number, ...more: Patch[]) => {
    const judged = judgeJob(
      JSON.stringify(patched(job, { duty: { torque: `${torque} N.m` } }, ...more)),
      'test',
      patterns,
    );
    if (!judged.ok) throw new Error('the job is sound');
    const { joint, findings } = judged;
    const classes = joint.screws.map((group) => Number(group.class));
    const safety = findings.filter(({ code }) => code.startsWith('grip-')).map(({ value }) => value ?? 0);
    const fails = findings.filter(({ verdict }) => verdict === 'fail').length;
    return { classes, holds: safety.map((times) => times * torque), fails, pins: joint.dowels };
  };

  it('never comes out with weaker screws, nor without the pins, once nothing passes any more', {
    timeout: 60_000,
  }, () => {
    const tried = [1000, 1300, 1700, 3000].map((torque) => designed(torque));
    expect(tried[0]?.fails).toBe(0);
    expect(tried.slice(1).every(({ fails }) => fails > 0)).toBe(true);
    for (const { classes, pins } of tried) {
      expect(classes).toEqual([12.9, 12.9]);
      expect(pins?.driving && pins.driven).toBeTruthy();
    }
  });

  it('without pins: takes the class that holds most, as far as it is from enough', { timeout: 60_000 }, () => {
    const none = { adapter: { driving: { dowels: 'none' }, driven: { dowels: 'none' } } };
    const [light, heavy] = [designed(500, none), designed(3000, none)];
    expect(heavy.fails).toBeGreaterThan(0);
    expect(heavy.classes).toEqual([12.9, 12.9]);
    heavy.holds.forEach((most, face) => {
      expect(most).toBeGreaterThan((light.holds[face] ?? 0) - 0.5);
    });
  });
});
