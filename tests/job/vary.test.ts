/** Plans of sweeps: what may be typed, in which order the variants come, and that a variant is the job with its values typed in. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editJob } from '../../src/job/edit.ts';
import { readJob } from '../../src/job/read.ts';
import { placesOf, planSweep, readVariant, type SweepPlan, valuesOf } from '../../src/job/vary.ts';
import { readValues } from '../../src/job/vary-values.ts';

const text = readFileSync(resolve(import.meta.dirname, '../../presets/orchard-truck.job.yaml'), 'utf8');

const planned = (...vary: string[]): SweepPlan => {
  const made = planSweep(text, 'a.job.yaml', vary);
  if (!made.ok) throw new Error(made.why);
  return made.plan;
};
const refused = (...vary: string[]): string => {
  const made = planSweep(text, 'a.job.yaml', vary);
  return made.ok ? '' : made.why;
};
const all = (values: string): unknown[] => {
  const read = readValues(values);
  if (!read.ok) throw new Error(read.fault.why);
  return Array.from({ length: read.values.count }, (_, i) => read.values.at(i).data);
};

describe('values of one field', () => {
  it('count through a range, both ends included, without the noise of binary fractions', () => {
    expect(all('14..16/0.5')).toEqual([14, 14.5, 15, 15.5, 16]);
    expect(all('0..0.3/0.1')).toEqual([0, 0.1, 0.2, 0.3]);
    expect(all('-1..1/1')).toEqual([-1, 0, 1]);
    expect(all('5..5/1')).toEqual([5]);
    expect(all('1..2/0.4')).toEqual([1, 1.4, 1.8]);
    expect(all('1e-3..3e-3/1e-3')).toEqual([0.001, 0.002, 0.003]);
  });
  it('keep the unit they were typed with', () => {
    expect(all('10 mm..12 mm/1 mm')).toEqual(['10 mm', '11 mm', '12 mm']);
    expect(all('1/2 in')).toEqual(['1/2 in']);
    expect(all('100..300 N.m/100')).toEqual(['100 N.m', '200 N.m', '300 N.m']);
    expect(all('0 deg..90 deg/45')).toEqual(['0 deg', '45 deg', '90 deg']);
  });
  it('are lists too, of words, numbers and sections, and ranges among them', () => {
    expect(all('48,60, 72')).toEqual([48, 60, 72]);
    expect(all('auto, 20, true')).toEqual(['auto', 20, true]);
    expect(all('10, 20..22/1, 30')).toEqual([10, 20, 21, 22, 30]);
    expect(all('{ diameter: 60, depth: 3 }, none')).toEqual([{ diameter: 60, depth: 3 }, 'none']);
    expect(all('[84.02, 83.98], 84')).toEqual([[84.02, 83.98], 84]);
    expect(all('"a, b", c')).toEqual(['a, b', 'c']);
  });
  it('have as many as the range holds, whatever its ends and step (property)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1000, max: 1000 }),
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 400 }),
        (first, steps, hundredths) => {
          const step = hundredths / 100;
          // The end, rounded as a person would type it: exact in hundredths.
          const last = (100 * first + steps * hundredths) / 100;
          const read = readValues(`${first}..${last}/${step}`);
          expect(read.ok && read.values.count).toBe(steps + 1);
          expect(read.ok && read.values.at(steps).data).toBe(last);
        },
      ),
    );
  });
});

describe('what cannot be swept', () => {
  it.each([
    ['adapter.thicknes=14..22/0.5', /"thicknes" is not a key of adapter\. Did you mean thickness\?/],
    ['wheels.teeth=48,60', /"wheels" is not a key of a job/],
    ['adapter.thickness=14..22', /has no step/],
    ['adapter.thickness=22..14/1', /is empty/],
    ['adapter.thickness=14..22/0', /The step is 0/],
    ['adapter.thickness=14..22/-1', /The step is -1/],
    ['adapter.thickness=14..22/x', /is not a step/],
    ['adapter.thickness=14 ..22 mm/1 in', /mixes mm and in/],
    ['adapter.thickness=', /There are no values/],
    ['adapter.thickness=14,,15', /nothing between two commas/],
    ['adapter.thickness', /no equals sign/],
    ['=4', /no key before the equals sign/],
    ['adapter..thickness=4', /is not a key/],
    ['adapter.thickness.more=4', /has no keys below it/],
    ['adapter.thickness=0..100/0.000001', /at most 10000000/],
    ['driving.holes.at[1]=[1, 2]', /has no list driving\.holes\.at/],
    ['driving.holes.circle[7]=84', /a list of 3/],
    ['__proto__.x=1', /cannot be a key/],
    ['job=1,2', /nothing to vary/],
  ])('%s', (vary, why) => {
    expect(refused(vary)).toMatch(why);
  });
  it('is marked where it stands', () => {
    const [, typed = '', mark = ''] = refused('adapter.thickness=14..22/0').split('\n');
    expect(typed[mark.indexOf('^')]).toBe('0');
    const [, other = '', below = ''] = refused('adapter.thicknes=1').split('\n');
    expect(other.slice(below.indexOf('^'))).toBe('thicknes=1');
  });
  it('is one field twice, or a field and what holds it, or too many variants, or nothing', () => {
    expect(refused('wheel.teeth=48', 'wheel.teeth=60')).toMatch(/varied twice/);
    expect(refused('adapter.driving={}', 'adapter.driving.class=8.8')).toMatch(/one is part of the other/);
    expect(refused('adapter.thickness=1..5000/1', 'adapter.outside=1..5000/1')).toMatch(/2\.50e\+7 variants/);
    expect(refused()).toMatch(/Say what to vary/);
  });
  it('is a job that is no YAML: its own mistakes are told', () => {
    const made = planSweep('job: [', 'a.job.yaml', ['wheel.teeth=48']);
    expect(!made.ok && made.errors?.[0]?.line).toBe(1);
  });
});

describe('variants', () => {
  const plan = planned('adapter.thickness=14..15/0.5', 'wheel.teeth=48,60', 'adapter.material=S355,6082-T6');
  it('are all combinations, the last field turning fastest', () => {
    expect(plan.count).toBe(12);
    const rows = Array.from({ length: plan.count }, (_, i) => valuesOf(plan, i).map(({ data }) => data));
    const wanted = [14, 14.5, 15].flatMap((t) => [48, 60].flatMap((n) => ['S355', '6082-T6'].map((m) => [t, n, m])));
    expect(rows).toEqual(wanted);
  });
  it('each have one place of their own (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 4 }), fc.nat(), (counts, n) => {
        const axes = counts.map((count, k) => ({
          name: `${k}`,
          path: [k],
          count,
          at: () => ({ data: 0, typed: '0' }),
        }));
        const count = counts.reduce((a, b) => a * b, 1);
        const index = n % count;
        const back = placesOf({ axes, count }, index).reduce((sum, place, k) => sum * (counts[k] as number) + place, 0);
        expect(back).toBe(index);
      }),
    );
  });
  it('out of range are refused', () => {
    expect(() => valuesOf(plan, 12)).toThrow(RangeError);
    expect(() => valuesOf(plan, -1)).toThrow(RangeError);
  });
  it.each([
    [['adapter.thickness=14..22/4', 'wheel.teeth=48,60']],
    [['adapter.driving.register={ diameter: 61.9, depth: 3 }, none']],
    [['adapter.driving.dowels=auto', 'duty.torque=200 N.m..300 N.m/100']],
    [['driven.holes.circle=107.9..108.1/0.1', 'adapter.thickness=2, oops']],
    [['driving.holes.circle[1]=84..84.1/0.1']],
    [['bracket={}', 'title="a, b"']],
  ])('read like the job with the same values typed into it: %j', (vary) => {
    const swept = planned(...vary);
    for (let index = 0; index < swept.count; index++) {
      const typed = valuesOf(swept, index).reduce((job, { typed: value }, k) => {
        const edited = editJob(job, swept.axes[k]?.path ?? [], value);
        if (!edited.ok) throw new Error(edited.why);
        return edited.text;
      }, text);
      const [alone, one] = [readJob(typed, 'a.job.yaml'), readVariant(swept, index)];
      expect(one.ok).toBe(alone.ok);
      if (one.ok && alone.ok) {
        expect(one.job).toEqual(alone.job);
        expect([...one.given].sort()).toEqual([...alone.given].sort());
      } else if (!one.ok && !alone.ok) {
        expect(one.errors.map(({ path, message }) => [path, message])).toEqual(
          alone.errors.map(({ path, message }) => [path, message]),
        );
      }
    }
  });
});
