/** Jobs that nothing can make, made by hand: the facts that stand in the way, and the nearest change that works. */
import { describe, expect, it } from 'vitest';
import { judgeJob, reportData, reportJson, reportText } from '../../src/core.ts';
import { smallestReason } from '../../src/design/why-impossible.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { shippedJob } from '../presets/shipped.ts';
import { type Patch, patched, patterns, soundJob } from '../validate/help.ts';

const bare: Patch = { wheel: undefined, sensor: undefined };

function impossible(...patches: readonly Patch[]) {
  const made = judgeJob(JSON.stringify(patched(soundJob, bare, ...patches)), 'test.job.yaml', patterns);
  if (!made.ok) throw new Error(made.errors.map(({ message }) => message).join('\n'));
  const why = made.joint.alternatives?.impossible;
  if (!why) throw new Error('something passes');
  return why;
}

/** The job with the change that the sentence names passes. */
function expectCured(...patches: readonly Patch[]): void {
  const made = judgeJob(JSON.stringify(patched(soundJob, bare, ...patches)), 'test.job.yaml', patterns);
  if (!made.ok) throw new Error(made.errors.map(({ message }) => message).join('\n'));
  expect(made.findings.filter(({ verdict }) => verdict === 'fail').map(({ code }) => code)).toEqual([]);
}

describe('one fact in the way', () => {
  // Six M10 on 93: 46.5 less half a counterbore of 18 is 37.5. A recess of 70 with its mouth broken 0.5 reaches 35.5: 2.0 is left.
  const crowded: Patch = {
    driving: {
      outside: 124,
      holes: { count: 6, circle: 93, thread: 'M10', depth: 20 },
    },
    driven: {
      outside: 150,
      register: { gender: 'male', diameter: 70, depth: 3, fit: 'h6', corner: 0.3 },
      holes: { count: 4, circle: 130, diameter: 10.4 },
    },
  };

  it('heads that come too near a recess: the web that would do', () => {
    const why = impossible(crowded);
    expect(why.together).toBe(false);
    expect(why.facts).toEqual([expect.any(String)]);
    expect(why.facts[0]).toMatch(
      /^Six M10 socket heads on 93 mm cannot clear the 70 mm recess of the driven side by 3 mm; /,
    );
    expect(why.facts[0]).toContain('2 mm is left');
    expect(why.nearest).toBe('The nearest that works is a web of 2 mm (adapter.web: 2 mm).');
    expectCured(crowded, { adapter: { web: '2 mm' } });
  });

  it('an angle that was typed', () => {
    // At 0 a hole of each pattern stands at 0: 54 - 42 - 7.5 - 5 is 0.5 of overlap.
    const typed = { adapter: { clocking: 0 } };
    const why = impossible(typed);
    expect(why.facts[0]).toContain('at the 0 degrees that are typed');
    expect(why.nearest).toBe('The nearest that works is the clocking left open (adapter.clocking: auto).');
    expectCured();
  });

  it('a thread that is too shallow for any screw', () => {
    // M8 of class 10.9 in 1045 needs more than 6 mm by any rule, and a class 8.8 screw still needs about 1 d.
    const shallow = { driving: { holes: { depth: 6 } } };
    const why = impossible(shallow);
    expect(why.facts.join(' ')).toMatch(/M8/);
    const depth = /driving\.holes\.depth: (\d+) mm/.exec(why.nearest ?? '')?.[1];
    expect(Number(depth)).toBeGreaterThan(8);
    expectCured({ driving: { holes: { depth: Number(depth) } } });
  });

  it('a thickness that was typed', () => {
    const thin = { adapter: { thickness: 10 } };
    const why = impossible(thin);
    expect(why.facts.join(' ')).toContain('10 mm at best against');
    expect(why.nearest).toContain('adapter.thickness: auto');
    expectCured();
  });
});

describe('a face that slips', () => {
  const pinned = (side: string, why: ReturnType<typeof impossible>) =>
    new RegExp(`adapter\\.${side}\\.dowels: \\{ count: (\\d), reamed: together \\}`).exec(why.nearest ?? '')?.[1];

  it('is held by more dowels, where two are too few and the torque works one way', () => {
    const torque = { duty: { torque: '1300 N.m' } };
    const why = impossible(torque);
    const count = Number(pinned('driven', why));
    expect(count).toBeGreaterThan(2);
    expectCured(torque, { adapter: { driven: { dowels: { count, reamed: 'together' } } } });
  });

  it('is held on both sides, each by as many as it takes; never where the torque goes to and fro', () => {
    const torque = { duty: { torque: '1800 N.m' } };
    const why = impossible(torque);
    const [driving, driven] = [Number(pinned('driving', why)), Number(pinned('driven', why))];
    const dowels = (count: number) => ({ dowels: { count, reamed: 'together' } });
    expectCured(torque, { adapter: { driving: dowels(driving), driven: dowels(driven) } });
    expect(impossible(torque, { duty: { reversing: true } }).nearest ?? '').not.toContain('dowels:');
  });

  it('is held by them against a job that said none: that is told, and left to the shop', () => {
    const why = impossible({ duty: { torque: '1300 N.m' }, adapter: { driven: { dowels: 'none' } } });
    expect(pinned('driven', why)).toBeDefined();
  });
});

describe('more than one fact', () => {
  it('the winch: two facts, each enough, and nothing that was tried helps', () => {
    const why = shippedJob('near-miss').joint.alternatives?.impossible;
    expect(why?.together).toBe(false);
    expect(why?.facts).toHaveLength(2);
    // Six and eight on 102 and 101.5 stand 6.66 apart at best; a head of 9 and an M8 thread of 4 want 13: 6.34 of overlap.
    expect(why?.facts.join(' ')).toMatch(
      /Six M10 socket heads on 102 mm cannot clear eight M8 threads on 101.51 mm by 3 mm at any angle; .* 6.34 mm into each other/,
    );
    expect(why?.facts.join(' ')).toMatch(/spigot/i);
    expect(why?.nearest).toBeNull();
  });

  it('the smallest set: alone where one is enough, else the fewest together', () => {
    const sets = (...list: string[][]) => list.map((codes) => new Set(codes));
    expect(smallestReason(sets(['a', 'b'], ['b', 'c'], ['b']))).toEqual({ codes: ['b'], together: false });
    expect(smallestReason(sets(['a', 'b', 'c'], ['b', 'c']))).toEqual({ codes: ['b', 'c'], together: false });
    expect(smallestReason(sets(['a'], ['b'], ['a', 'b']))).toEqual({ codes: ['a', 'b'], together: true });
    expect(smallestReason(sets(['a', 'x'], ['b', 'x'], ['c', 'a'], ['c', 'x']))).toEqual({
      codes: ['a', 'x'],
      together: true,
    });
  });
});

describe('the report', () => {
  it('says why nothing passes, and leaves the published JSON as it is', () => {
    const { joint, findings } = shippedJob('near-miss');
    const data = reportData(joint, findings);
    expect(reportText(data)).toContain(
      'Why nothing passes\n    10 ways were tried, and each of these facts alone fails them all:',
    );
    expect(reportHtml(data)).toContain('<h2>Why nothing passes</h2>');
    expect(reportText(data)).not.toContain('Other ways');
    expect(Object.keys(reportJson(data, 'a.job.yaml'))).toEqual(['job', 'title', 'verdict', 'findings', 'assumed']);
  });

  it('tells the other ways with what they trade, in the units of the job', () => {
    const metric = shippedJob('orchard-truck');
    const data = reportData(metric.joint, metric.findings);
    expect(reportText(data)).toMatch(
      /Other ways\n[\s\S]*M8 screws with flat heads into the driving flange[\s\S]*g heavier/,
    );
    expect(reportHtml(data)).toContain('<h2>Other ways</h2>');
    const inches = reportData({ ...metric.joint, job: { ...metric.joint.job, units: 'in' } }, metric.findings);
    expect(inches.alternatives?.others[0]?.trades).toMatch(/oz heavier/);
  });
});
