/** A dial that is better, or worse, than one graduation of 0.01: its doubt typed behind the readings. */
import { describe, expect, it } from 'vitest';
import { answerRunout } from '../../src/measure/answer-runout.ts';

const asked = (text: string) =>
  answerRunout({ side: 'driving', units: 'mm', instrument: 'caliper', rim: text } as Parameters<
    typeof answerRunout
  >[0]);
const answered = (text: string) => {
  const read = asked(text);
  if (!read.ok) throw new Error(read.why);
  const { rim } = read.value.result as { rim: { tirDoubt: number; eccentricity: { size: number; doubt: number } } };
  return { ...rim, block: read.value.block };
};

describe('readings with a doubt behind them', () => {
  const readings = '0, 0.05, 0, -0.05';

  it('carry it into every number, in proportion; the total is off by what its two ends are', () => {
    const [usual, fine] = [answered(readings), answered(`${readings} +-0.002`)];
    expect(usual.tirDoubt).toBeCloseTo(0.02, 9);
    expect(fine.tirDoubt).toBeCloseTo(0.004, 9);
    expect(usual.eccentricity.doubt / fine.eccentricity.doubt).toBeCloseTo(5, 6);
    expect(fine.eccentricity.size).toBeCloseTo(0.05, 9);
  });

  it('hand it on to the job', () => {
    expect(answered(`${readings} +-0.002`).block).toContain(
      'rim: { readings: [0 mm, 0.05 mm, 0 mm, -0.05 mm], doubt: 0.002 mm }',
    );
    expect(answered(readings).block).toContain('rim: [0 mm, 0.05 mm, 0 mm, -0.05 mm]');
    expect(answered(`${readings} \u00b10.1 thou`).block).toContain('doubt: 0.0025 mm');
  });

  it.each([
    ['+-2', /a dial is good to 0 to 1 mm; got \+-2/],
    ['+-0.01 +-0.02', /one doubt holds for all readings/],
    ['+-much', /its doubt: /],
  ])('%s is refused', (doubt, why) => {
    const read = asked(`${readings} ${doubt}`);
    expect(read.ok ? '' : read.why).toMatch(why);
  });
});
