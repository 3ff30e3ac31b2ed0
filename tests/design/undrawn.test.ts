/** Ways that cannot be drawn are told when nothing passes: the bracket, and not the joint, may be what stands in the way. */
import { expect, it } from 'vitest';
import { judgeJob, reportData } from '../../src/core.ts';
import { patterns } from '../validate/help.ts';

const joint = `job: 1
duty: { torque: 300 N.m, speed: 2600 rpm }
driving:
  outside: 112
  thickness: 14
  register: { gender: male, diameter: { value: 62.00, doubt: 0.01 }, depth: 4.0, corner: 0.6 }
  holes: { count: 6, circle: 84, thread: M8, depth: 16 }
driven:
  outside: 128
  thickness: 9
  register: { gender: female, diameter: 60.02, depth: 3.0, corner: 0.5 }
  holes: { count: 4, circle: 108, diameter: 10.4 }
  behind: 45
wheel: { teeth: auto, outside: auto, height: 2, ratio: 0.4, thickness: 3, fit: H8 }
sensor: { kind: differential_hall, was: { teeth: 44, ratio: 4.1 }, axle: 4.1, tyre: 205/65R16 }
`;
/** Its slots lie so near to the bend that the relief cuts of the drawable ways run into them. */
const bracket =
  'bracket: { form: angle, towards: driving, bolts: { size: M6, spacing: 60, from_axis: 90, along: 32 }, sensor: { bore: 18.2, reach: 25, ear: { distance: 22, size: M6 } } }\n';

const told = (text: string) => {
  const judged = judgeJob(text, 'a.job.yaml', patterns);
  if (!judged.ok) throw new Error(JSON.stringify(judged.errors));
  return reportData(judged.joint, judged.findings);
};

it('names the bracket that keeps the passing ways from being drawn', () => {
  const alone = told(joint);
  expect(alone.counts.fail).toBe(0);
  expect(alone.alternatives?.impossible).toEqual([]);

  const held = told(joint + bracket);
  expect(held.counts.fail).toBeGreaterThan(0);
  const words = held.alternatives?.impossible.join('\n');
  expect(words).toMatch(
    /\d+ more ways cannot be drawn.*bracket: The bracket cannot be drawn: The relief cuts run into/,
  );
});
