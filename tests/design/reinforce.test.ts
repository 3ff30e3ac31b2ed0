/** Designs made better by what nobody typed: dowels where nothing else centres a joint. */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { type Patch, patched, patterns, soundJob } from '../validate/help.ts';

/** Two flanges without registers, 4 clear holes of 9.1 on 76 against 6 tapped M8 on 97; screws in clearance holes leave 1 mm of play. */
const bare: Patch = {
  job: 1,
  duty: { torque: '90 N.m', speed: '1450 rpm', grade: 'G16' },
  driving: {
    outside: 100,
    thickness: 10,
    register: 'none',
    holes: { count: 4, circle: 76, diameter: 9.1 },
    behind: 40,
  },
  driven: { outside: 121, thickness: 11, register: 'none', holes: { count: 6, circle: 97, thread: 'M8', depth: 15 } },
};

const searched = (...patches: readonly Patch[]) => {
  const judged = judgeJob(JSON.stringify(patched(bare, ...patches)), 'test.job.yaml', patterns);
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join(' '));
  const fails = judged.findings.filter(({ verdict }) => verdict === 'fail').map(({ code }) => code);
  return { ...judged, fails: [...new Set(fails)] };
};

/** The sound joint, searched: 320 N.m and more than 6 M8 and 4 M10 of class 10.9 hold by friction. */
const held = (...patches: readonly Patch[]) => {
  const judged = judgeJob(JSON.stringify(patched(soundJob, ...patches)), 'test.job.yaml', patterns);
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join(' '));
  const screws = judged.joint.screws.filter(({ side }) => side !== 'wheel');
  return { ...judged, kinds: screws.map((group) => `${group.side} ${group.class} ${group.head.kind}`) };
};

describe('a face that would slip', () => {
  it('never gets class 12.9 in a hexagon head (ISO 4014 and 4017 list none, from memory): socket heads have it', () => {
    const { kinds, joint } = held({ duty: { torque: '480 N.m' } });
    expect(kinds).toContain('driven 12.9 socket');
    const { path, value } = joint.assumptions.find((one) => one.path === 'adapter.driven.head') ?? {};
    expect([path, value]).toEqual(['adapter.driven.head', 'socket']);
    const typed = held({ duty: { torque: '480 N.m' }, adapter: { driven: { head: 'hex' } } });
    expect(typed.kinds).toContain('driven 10.9 hex');
  });

  it('gets dowels where it slips one way, none where it slips to and fro', () => {
    const one = held({ duty: { torque: '700 N.m' } });
    expect(one.joint.dowels?.driving).not.toBeNull();
    expect(one.findings.some(({ code, verdict }) => code === 'grip-driving' && verdict === 'caution')).toBe(true);
    const both = held({ duty: { torque: '700 N.m', reversing: true } });
    expect(both.joint.dowels).toBeUndefined();
    expect(both.findings.find(({ code }) => code === 'grip-driving')?.verdict).toBe('fail');
  });
});

describe('flanges without registers', () => {
  it('are dowelled where the screws alone leave too much play, and the report says so', () => {
    const { joint, fails } = searched();
    expect(fails).toEqual([]);
    expect(joint.dowels?.driving).not.toBeNull();
    expect(joint.dowels?.driven).not.toBeNull();
    expect(joint.assumptions.map(({ path }) => path)).toContain('adapter.driven.dowels');
  });

  it('are left as typed: no dowels where the job says none', () => {
    const { joint, fails } = searched({ adapter: { driving: { dowels: 'none' }, driven: { dowels: 'none' } } });
    expect(joint.dowels).toBeUndefined();
    expect(fails).toContain('concentricity');
  });

  it('get no dowels where the play does no harm: nobody said how fast it turns', () => {
    const { joint } = searched({ duty: { speed: undefined } });
    expect(joint.dowels).toBeUndefined();
  });

  it('get them on the one side that has no register', () => {
    const { joint, fails } = searched({ driving: { register: { gender: 'female', diameter: 50, depth: 3 } } });
    expect(fails).toEqual([]);
    expect(joint.dowels?.driving ?? null).toBeNull();
    expect(joint.dowels?.driven).not.toBeNull();
  });
});
