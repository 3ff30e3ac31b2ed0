/**
 * Speeds and feeds to start from, against ranges that tool makers and teaching shops print, in ft/min. A starting speed may lie at or
 * below the low end of what is printed, never above its high end.
 */
import { describe, expect, it } from 'vitest';
import { cutSpeeds, drillFeeds } from '../../src/standards/cutting-speed-tables.ts';
import { cuttingGroup, startingCut, turnsFor } from '../../src/standards/cutting-speeds.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { must } from '../../src/standards/table.ts';

const metresPerFoot = 0.3048;

/** Highest printed speed of high-speed steel, ft/min: drills and reamers by hardness as a tool maker prints them, taps as a tap maker does. */
const printed: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  aluminium: { drill: 350, ream: 350, tap: 150 },
  steel: { drill: 75, ream: 50, tap: 60 },
  'strong steel': { drill: 50, ream: 30, tap: 32 },
  stainless: { drill: 55, ream: 35, tap: 22 },
  iron: { drill: 70, ream: 45, tap: 40 },
};

describe('starting speeds', () => {
  it.each(Object.entries(printed))('%s: none above what is printed, none below a quarter of it', (group, list) => {
    for (const [operation, feet] of Object.entries(list)) {
      const row = cutSpeeds.rows.find((r) => r.group === group && r.operation === operation);
      expect(row?.hss, operation).toBeLessThanOrEqual(feet * metresPerFoot);
      expect(row?.hss, operation).toBeGreaterThan((feet * metresPerFoot) / 4 - 0.1 * feet * metresPerFoot);
    }
  });

  it('has every cut for every group, and carbide never slower', () => {
    const groups = [...new Set(cutSpeeds.rows.map(({ group }) => group))];
    const cuts = [...new Set(cutSpeeds.rows.map(({ operation }) => operation))];
    expect(cutSpeeds.rows).toHaveLength(groups.length * cuts.length);
    for (const { hss, carbide } of cutSpeeds.rows) if (carbide !== null) expect(carbide).toBeGreaterThan(hss);
  });

  it('feeds drills at the low end of the printed ranges', () => {
    // in/turn: 0.001 to 0.003, 0.002 to 0.006, 0.004 to 0.010, 0.007 to 0.015, 0.010 to 0.025.
    const ranges = [
      [0.001, 0.003],
      [0.002, 0.006],
      [0.004, 0.01],
      [0.007, 0.015],
      [0.01, 0.025],
    ] as const;
    drillFeeds.rows.forEach(({ feed }, i) => {
      const [low, high] = ranges[i] as readonly [number, number];
      expect(feed).toBeGreaterThanOrEqual(low * 25.4 - 0.005);
      expect(feed).toBeLessThan(((low + high) / 2) * 25.4);
    });
  });
});

describe('one cut', () => {
  const steel = must(findMaterial('1045'));
  const at = (operation: 'drill' | 'tap', top: number, pitch?: number) =>
    startingCut(steel, operation, 'hss', 8, top, pitch);

  it('turns by 1000 v / (pi d), in round numbers, and no faster than the machine', () => {
    expect(turnsFor(22, 8)).toBeCloseTo(875.35, 2);
    expect(at('drill', 5000)).toMatchObject({ rpm: 870, capped: false });
    expect(at('drill', 600)).toMatchObject({ rpm: 600, capped: true });
  });

  it('feeds a tap by its pitch to the last digit', () => {
    const { rpm, feed } = at('tap', 5000, 1.25);
    expect(feed).toBe(rpm * 1.25);
    expect(() => at('tap', 5000)).toThrow(/pitch/);
  });

  it('takes heat-treated steel for the tough kind', () => {
    expect(cuttingGroup(must(findMaterial('4140-Q&T')))).toBe('strong steel');
    expect(cuttingGroup(steel)).toBe('steel');
  });
});
