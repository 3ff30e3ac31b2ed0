/** Commas as people type them: read where they can mean one thing, kept whole where not. Expected values are what was typed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJobText } from '../../src/job/document.ts';
import { editJob } from '../../src/job/edit.ts';
import { readJob } from '../../src/job/read.ts';
import { commaInDoubt, listedNumbers } from '../../src/job/typed-commas.ts';
import { typedValues } from '../../src/job/typed-values.ts';

const job = `job: 1
driving:
  outside: 112
  register: { gender: male, diameter: 62, depth: 4 }
  holes: { count: 6, circle: 84, thread: M8 }  # as read
  runout:
    rim: 0.02
driven: {}
duty:
  speed: 900 rpm
  engine: { torque: 180 N.m, ratios: [3.9] }
`;

function edited(path: readonly string[], typed: string | null, text = job): string {
  const result = editJob(text, path, typed);
  if (!result.ok) throw new Error(result.why);
  return result.text;
}

const valueAt = (text: string, path: readonly string[]) =>
  path.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], parseJobText(text).data);

describe('lists', () => {
  it.each([
    ['84.02, 83.98, 84.00', ['84.02', '83.98', '84.00']],
    ['84.02,  83.98', ['84.02', '83.98']],
    ['84.02; 83.98;84', ['84.02', '83.98', '84']],
    ['84.02 83.98', ['84.02', '83.98']],
    ['84.02,83.98', ['84.02', '83.98']],
    ['0, -0.01, +.02', ['0', '-0.01', '+.02']],
    ['84.02 mm, 3.31 in', ['84.02 mm', '3.31 in']],
    ['62,05', null],
    ['10,20,30', null],
    ['84,02; 83,98', null],
    ['84,02, 83,98', null],
    ['2 1/4 in', null],
    ['12 mm', null],
    ['84.02,', null],
    ['84.02, x', null],
    ['[84.02, 83.98]', null],
    ['winch, drum', null],
    ['60.02, 60.01 micrometer', null],
    ['60.02 60.01 Caliper', null],
  ])('%s', (typed, wanted) => expect(listedNumbers(typed)).toEqual(wanted));

  it('become a list where readings may be repeated, with every decimal that was typed', () => {
    const circle = ['driving', 'holes', 'circle'];
    expect(edited(circle, '84.02, 83.98, 84.00')).toBe(job.replace('circle: 84,', 'circle: [84.02, 83.98, 84.00],'));
    expect(edited(['driving', 'runout', 'rim'], '0 0.01 -0.01')).toContain('rim: [0, 0.01, -0.01]\n');
    expect(edited(['duty', 'engine', 'ratios'], '3.6; 2.0')).toContain('ratios: [3.6, 2.0]');
  });

  it('stay words in a title', () => {
    expect(valueAt(edited(['title'], '10, 12'), ['title'])).toBe('10, 12');
  });
});

describe('what cannot be read is kept whole, with a sentence', () => {
  it.each([
    [['driving', 'register', 'diameter'], '62,05', /point for decimals, not a comma: 62\.05/],
    [['driving', 'outside'], '112,4', /point for decimals, not a comma: 112\.4/],
    [['driving', 'register', 'diameter'], '62,', /missing behind the comma/],
    [['driving', 'register', 'diameter'], '62,05; 62,07', /point for decimals/],
    [['duty', 'speed'], '1,500', /nothing between thousands: 1500/],
    [['duty', 'speed'], '900, 950', /more than one number/],
    [['driving', 'holes', 'count'], '6, 8', /whole number|Must be|Expected/i],
  ] as const)('%j = %s', (path, typed, why) => {
    const text = edited(path, typed);
    expect(valueAt(text, path)).toBe(typed);
    expect(typedValues(text)[path.join('.')]).toBe(typed);
    const read = readJob(text, 'job');
    if (read.ok) throw new Error('read');
    expect(read.errors.find((error) => error.path === path.join('.'))?.message).toMatch(why);
  });

  it('typed letter by letter, no part of the way is another value than what stands in the field', () => {
    const path = ['driving', 'register', 'diameter'];
    for (const whole of ['62,05', '84.02, 83.98', '62.05; 62.04', '61.99 62.01', '{ a', '[1, 2', 'a: b, c', '# 1']) {
      for (let end = 1; end <= whole.length; end++) {
        const typed = whole.slice(0, end).trim();
        const value = valueAt(edited(path, typed), path);
        const list = listedNumbers(typed);
        if (list) expect(value).toEqual(list.map(Number));
        else expect([typed, Number(typed)]).toContainEqual(value);
      }
    }
  });

  it('whatever mixture of digits and signs is typed: all of it is there, or there is a sentence', () => {
    const signs = fc.array(fc.constantFrom(...'0123456789.,; -+'), { minLength: 1, maxLength: 16 });
    fc.assert(
      fc.property(signs, fc.constantFrom('diameter', 'depth'), (letters, key) => {
        const typed = letters.join('');
        const path = ['driving', 'register', key];
        const result = editJob(job, path, typed);
        if (!result.ok) throw new Error(result.why);
        if (typed.trim() === '') return;
        const kept = typedValues(result.text)[path.join('.')] ?? '';
        // Every digit that was typed is there, in its order.
        expect(kept.replace(/\D/g, '')).toBe(typed.replace(/\D/g, ''));
      }),
    );
  });
});

describe('readings in the measuring pictures', () => {
  it.each([
    ['49,37', /write 49\.37 .* or 49, 37/],
    ['62.02, 62,03', /62\.03/],
    ['10,20,30', /write 10, 20, 30/i],
    ['1,234.56', /takes a point/],
  ])('%s is asked about', (typed, why) => expect(commaInDoubt(typed)).toMatch(why));

  it.each(['49.37', '49.37, 49.38', '49.37,49.38', '49.37; 49', '0 deg, 45 deg', '', 'farthest'])(
    '%s is not',
    (typed) => expect(commaInDoubt(typed)).toBeNull(),
  );
});

describe('a section that is empty', () => {
  const tyre = `job: 1
driving: { outside: 112 }
driven: {}
sensor:
  # the axle's own
  axle: 4.1
  tyre:
    rolled: 2050 mm
  was: { teeth: 44, tyre: { radius: 320 mm } }
wheel: { teeth: 60 }
print: { holes: 0.2 }
`;

  it('goes with its last key where it may not stand empty', () => {
    expect(edited(['sensor', 'tyre', 'rolled'], null, tyre)).toBe(tyre.replace('  tyre:\n    rolled: 2050 mm\n', ''));
    expect(edited(['sensor', 'was', 'tyre', 'radius'], '', tyre)).toBe(
      tyre.replace('{ teeth: 44, tyre: { radius: 320 mm } }', '{ teeth: 44 }'),
    );
    const nested = 'job: 1\ndriving: {}\ndriven: {}\nsensor:\n  axle: 4.1\n  was: { tyre: { radius: 320 mm } }\n';
    expect(edited(['sensor', 'was', 'tyre', 'radius'], null, nested)).toBe(
      'job: 1\ndriving: {}\ndriven: {}\nsensor:\n  axle: 4.1\n',
    );
  });

  it('stays where the job cannot do without it, or where it says that a part is wanted', () => {
    expect(edited(['driving', 'outside'], null, tyre)).toContain('driving: {}\n');
    expect(edited(['print', 'holes'], null, tyre)).toContain('print: {}\n');
  });

  it('keeps comments that stand on lines of their own', () => {
    const text = 'job: 1\ndriving: {}\ndriven: {}\nsensor:\n  axle: 4.1\n  tyre:\n    # laden\n    rolled: 2050 mm\n';
    expect(edited(['sensor', 'tyre', 'rolled'], null, text)).toContain('# laden');
  });

  it('a tyre may be typed as its size in place of its keys', () => {
    const text = edited(['sensor', 'tyre'], '205/65R16', tyre);
    expect(text).toBe(tyre.replace('tyre:\n    rolled: 2050 mm', 'tyre: 205/65R16'));
  });
});
