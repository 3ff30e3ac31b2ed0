import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { resolveFlange } from '../../src/job/resolve-flange.ts';
import type { StarterAnswers } from '../../src/job/starter.ts';
import { schemaFileName, starterJob } from '../../src/job/starter.ts';

function read(answers: StarterAnswers = {}) {
  const answer = readJob(starterJob(answers), 'starter.job.yaml');
  if (!answer.ok)
    throw new Error(answer.errors.map((error) => `${error.line} ${error.path}: ${error.message}`).join('\n'));
  return answer;
}

describe('the starter job', () => {
  it('points editors at the schema, reads as it stands, and its flanges resolve', () => {
    expect(starterJob().split('\n')[0]).toBe(`# yaml-language-server: $schema=./${schemaFileName}`);
    const { job, errorAt } = read();
    for (const side of ['driving', 'driven'] as const)
      expect(resolveFlange(side, job[side], [], errorAt).ok).toBe(true);
    expect(job.wheel).toMatchObject({ teeth: 60, outside: 'auto' });
  });

  it('marks every invented value, and no answered one', () => {
    const measured = /^\s+(outside|thickness|diameter|depth|count|circle|gender|torque|speed|teeth): (?!auto)/;
    const lines = starterJob().split('\n');
    const values = lines.filter((line) => measured.test(line) && !/^\s*#/.test(line));
    expect(values.length).toBeGreaterThan(15);
    for (const line of values.filter((value) => !/^ {2}thickness: 3 +# of the sheet/.test(value)))
      expect(line).toContain('INVENTED');
    const answered = starterJob({ driving: { outside: 99 } });
    expect(answered.split('\n').find((line) => line.includes('outside: 99'))).not.toContain('INVENTED');
  });

  it('explains the usual keys in one line each', () => {
    const text = starterJob();
    for (const key of [
      'title',
      'units',
      'torque',
      'speed',
      'grade',
      'outside',
      'thickness',
      'register',
      'holes',
      'clocking',
      'bore',
      'flats',
      'web',
      'setup',
      'teeth',
      'missing',
      'ratio',
      'gap',
      'runout',
      'behind',
    ]) {
      expect(text, key).toMatch(new RegExp(`^[ #]*${key}:.*# .+`, 'm'));
    }
  });

  it('is filled by answers, in their own units and words', () => {
    const { job } = read({
      title: 'Orchard "truck": front # 2',
      units: 'in',
      torque: '350 lbf.ft',
      speed: 4200,
      driving: {
        name: 'drive unit',
        outside: '4 1/2',
        register: 'none',
        holes: { count: 6, circle: '3.75 in', diameter: '7/16"' },
      },
      driven: {
        outside: '128 mm',
        thickness: '10 mm',
        register: { gender: 'male', diameter: '70 mm', depth: '2 mm' },
        holes: { count: 4, circle: '104 mm', thread: 'M10', depth: '14 mm' },
      },
      withoutWheel: true,
    } as const satisfies StarterAnswers & { driven: object });
    // 1 in = 25.4 mm exactly.
    expect(job).toMatchObject({
      title: 'Orchard "truck": front # 2',
      units: 'in',
      driving: {
        outside: { value: 114.3 },
        register: 'none',
        holes: { count: 6, circle: { value: 95.25 }, diameter: { value: 11.1125 } },
      },
      driven: { register: { gender: 'male', diameter: { value: 70 } }, holes: { thread: 'M10', depth: 14 } },
    });
    expect(job.wheel).toBeUndefined();
  });

  it('starts from a known pattern when one is named', () => {
    expect(read({ driving: { from: 'DIN100-companion' } }).job.driving).toEqual({
      name: 'drive unit flange',
      from: 'DIN100-companion',
    });
  });
});
