/** Keys in sentences, the plan of the sheet and its words, steps as they are kept: what the page works out without a browser. */
import { describe, expect, it } from 'vitest';
import { jobJsonSchema } from '../../src/core.ts';
import { type JsonSchema, schemaAt } from '../../src/model/json-schema.ts';
import { hangsOnUnits, keyPieces, partsOf } from '../../src/model/key-pieces.ts';
import type { Called } from '../../src/page/job/job-name.ts';
import { mostKept, mostText, noSteps, readSteps, written } from '../../src/page/job/kept-steps.ts';
import { benchLabel, benchOption } from '../../src/page/sheet/bench-words.ts';
import { choices, fieldPath, wordForm } from '../../src/page/sheet/sheet-plan.ts';

const schema = jobJsonSchema() as JsonSchema;
const pieces = (text: string) => keyPieces(text, schema);
const keys = (text: string) => pieces(text).filter((piece) => typeof piece !== 'string');
const joined = (text: string) =>
  pieces(text)
    .map((piece) =>
      typeof piece === 'string' ? piece : piece.key + (piece.value === undefined ? '' : `: ${piece.value}`),
    )
    .join('');

describe('keys in a sentence', () => {
  it('are found wherever they stand, and nothing else is', () => {
    expect(pieces('Nothing to do here.')).toEqual(['Nothing to do here.']);
    expect(pieces('')).toEqual([]);
    expect(keys('Give duty.speed, or wheel.fit; see driven.runout.face. Then adapter.driving.screw')).toEqual([
      { key: 'duty.speed' },
      { key: 'wheel.fit' },
      { key: 'driven.runout.face' },
      { key: 'adapter.driving.screw' },
    ]);
    // Units, files, words of prose, keys that no job has, and what every object has by itself.
    for (const text of [
      'unbalance 1155 g.mm at the wheel, of 900 N.m',
      'the sensor. bearing play',
      'wheel.fits, wheel.constructor, wheel.__proto__, sensor.toString',
      'my-wheel.fit.dxf and x.wheel.fit',
      'wheel',
    ])
      expect(keys(text), text).toEqual([]);
  });

  it('lose backticks about them, and no other letter', () => {
    expect(pieces('counted as nothing: `sensor.bearing_play`, `sensor.travel`.')).toEqual([
      'counted as nothing: ',
      { key: 'sensor.bearing_play' },
      ', ',
      { key: 'sensor.travel' },
      '.',
    ]);
    expect(pieces('(`wheel.fit: H8`)')).toEqual(['(', { key: 'wheel.fit', value: 'H8' }, ')']);
    for (const text of [
      'turned (wheel.fit: H8), or set true (wheel.set_true: 0.1 mm).',
      'one ` alone before `wheel.fit and shaft.angles.joints[1].most: 3 deg',
      '(adapter.driven.dowels: { reamed: together }) (wheel.fit: {',
    ])
      expect(joined(text)).toBe(text);
  });

  it('carry the value that a remedy gives within its brackets', () => {
    const value = (text: string) => keys(text)[0]?.value;
    expect(value('the bore turned (wheel.fit: H8), or')).toBe('H8');
    expect(value('(adapter.setup: one chucking)')).toBe('one chucking');
    expect(value('(adapter.driven.register: { depth: 2.37 }), or auto')).toBe('{ depth: 2.37 }');
    expect(value('(wheel.fit: { clearance: 0.01 mm }; up to 0.03)')).toBe('{ clearance: 0.01 mm }');
    expect(value('(adapter.driving.class: 8.8)')).toBe('8.8');
    expect(value('(wheel.screws.first: auto, another count or a larger circle)')).toBe('auto');
    // Braces and brackets of its own around it; but what is asked of the joint is never lowered by a click.
    expect(value('a closer fit (see (wheel.fit: H7))')).toBe('H7');
    expect(value('a better grade (see (duty.grade: G40))')).toBeUndefined();
  });

  it('carry none outside of brackets, unclosed, of a wrong kind, or where it would be measured', () => {
    for (const text of [
      'By the readings the best is adapter.bolt_up: { driving: 60 deg, driven: 90 deg }.',
      '(closed) wheel.fit: H8)',
      '(wheel.fit: H8 without an end',
      '(wheel.fit: { clearance: 0.01 mm)',
      '(adapter.thickness: 24 mm or more)',
      '(adapter.washer: yes), (adapter.driving.washer: perhaps)',
      '(wheel.teeth: sixty)',
      '(adapter.driving.hole: huge)',
      '(wheel.fit: )',
      `(wheel.name: ${'x'.repeat(200)})`,
      // Examples of what somebody else has measured, or must carry.
      '(shaft.measured.value: [1294, 1293.5, 1294])',
      '(driving.holes.circle: 84)',
      '(duty.torque: 320 N.m)',
      '(built.adapter.thickness: 16.4)',
      '(sensor.bearing_play: 0.1 mm)',
    ])
      expect(
        keys(text)
          .map(({ value }) => value)
          .filter(Boolean),
        text,
      ).toEqual([]);
  });

  it('stay text where the text is hostile, and do not take long', () => {
    const text = '(wheel.name: <img src=x onerror=alert(1)>) <b>wheel.fit</b>';
    expect(joined(text)).toBe(text);
    expect(keys(text)).toEqual([{ key: 'wheel.name' }, { key: 'wheel.fit' }]);
    const long = `${'('.repeat(2000)}${'wheel.fit: {'.repeat(500)}`;
    expect(joined(long)).toBe(long);
  });

  it('are set part by part, and never in other units than they were given in', () => {
    expect(partsOf('{ reamed: together, bed: [200, 200], fit: { clearance: 0.01 mm } }')).toEqual([
      { key: 'reamed', value: 'together' },
      { key: 'bed', value: '[200, 200]' },
      { key: 'fit', value: '{ clearance: 0.01 mm }' },
    ]);
    expect(partsOf('{}')).toEqual([]);
    const hangs = (key: string, value: string) => hangsOnUnits(schemaAt(schema, key.split('.')) as JsonSchema, value);
    expect(hangs('adapter.driven.register', '{ depth: 2.37 }')).toBe(true);
    expect(hangs('wheel.set_true', '0.1')).toBe(true);
    for (const [key, value] of [
      ['wheel.set_true', '0.1 mm'],
      ['wheel.teeth', '60'],
      ['wheel.fit', 'H8'],
      ['adapter.driving.class', '8.8'],
      ['adapter.driving.dowels', '{ count: 3, reamed: together }'],
    ] as const)
      expect(hangs(key, value), key).toBe(false);
  });
});

describe('the plan of the sheet', () => {
  it('knows which field holds a key', () => {
    const at = (key: string) => fieldPath(schema, key.split('.')).join('.');
    expect(at('wheel.fit')).toBe('wheel.fit');
    expect(at('wheel.fit.clearance')).toBe('wheel.fit');
    expect(at('driving.holes.circle.readings')).toBe('driving.holes.circle');
    expect(at('adapter.driven.dowels.size')).toBe('adapter.driven.dowels.size');
    expect(at('driving')).toBe('driving');
    expect(at('wheel.nothing')).toBe('wheel');
  });

  it('knows legal words from free text, each word once', () => {
    const form = (key: string) => wordForm(schemaAt(schema, key.split('.')) ?? {});
    expect(form('driving.register')?.words).toEqual(['none']);
    expect(form('adapter.driven.register')?.words).toEqual(['auto', 'none']);
    expect(form('sensor.tyre')).toEqual({ words: [], example: 'such as 205/65R16' });
    expect(form('driving.holes')).toBeUndefined();
    expect(choices(schemaAt(schema, ['adapter', 'driving', 'class']) ?? {})).toEqual(['8.8', '10.9', '12.9']);
    expect(choices(schemaAt(schema, ['adapter', 'drawing', 'scale']) ?? {})).not.toContain('null');
  });

  it('speaks as the bench does, for labels only', () => {
    expect(benchLabel(['driving', 'register', 'gender'])).toBe('spigot or recess');
    expect(benchLabel(['driven', 'behind'])).toBe('free room behind');
    expect(benchLabel(['adapter', 'bolt_up'])).toBe('bolt up');
    expect(benchLabel(['wheel', 'constructor'])).toBe('constructor');
    expect(benchOption(['sensor', 'kind'], 'differential_hall')).toBe('differential Hall');
    expect(benchOption(['driving', 'register', 'gender'], 'male')).toBe('male: spigot, stands out');
  });
});

describe('kept steps', () => {
  const now: Called = { name: 'kart', title: 'Kart' };
  const step = (text: string, called = now) => ({ text, called });

  it('come back nearest first, and of one job with one name', () => {
    const other = { name: 'mine', title: null };
    const past = [step('a', other), step('b', other), step('c')];
    const read = readSteps(written({ past, future: [step('z')] }, 'm'), 'm', now);
    expect(read).toEqual({ past, future: [step('z')] });
    expect(read.past[2]?.called).toBe(now);
    expect(read.past[0]?.called).toBe(read.past[1]?.called);
  });

  it('are as many as find room, without a gap', () => {
    const many = Array.from({ length: 200 }, (_, i) => step(`${i}`));
    const kept = readSteps(written({ past: many, future: many.slice(0, 3) }, 'm'), 'm', now);
    expect(kept.past.length + kept.future.length).toBe(mostKept);
    expect(kept.future.length).toBe(3);
    expect(kept.past.at(-1)?.text).toBe('199');
    const large = Array.from({ length: 10 }, (_, i) => step(`${i}`.padEnd(mostText / 4, 'x')));
    expect(readSteps(written({ past: large, future: [] }, 'm'), 'm', now).past.map(({ text }) => text[0])).toEqual([
      '6',
      '7',
      '8',
      '9',
    ]);
    expect(
      readSteps(written({ past: [step('a'), step('x'.repeat(mostText + 1))], future: [] }, 'm'), 'm', now),
    ).toEqual(noSteps);
  });

  it('of another tab, or broken ones, are none', () => {
    const good = { text: 'a', name: 'n', title: null };
    expect(readSteps(written({ past: [step('a')], future: [] }, 'm'), 'other', now)).toEqual(noSteps);
    for (const kept of [null, '', '{', '[]', '7', '"x"', '{"mark":"m","past":5}', '{"mark":"m","past":[null,3,{}]}'])
      expect(readSteps(kept, 'm', now), String(kept)).toEqual(noSteps);
    const mixed = { mark: 'm', past: [{ ...good, text: 5 }, good, { ...good, title: 4 }], future: 'x' };
    expect(readSteps(JSON.stringify(mixed), 'm', now).past.map(({ text }) => text)).toEqual(['a']);
  });
});
