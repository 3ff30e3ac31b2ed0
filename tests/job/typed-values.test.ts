/** What a field shows is what was typed. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editJob } from '../../src/job/edit.ts';
import { readJob } from '../../src/job/read.ts';
import { typedValues } from '../../src/job/typed-values.ts';

describe('typed values', () => {
  it('keeps numbers, units, lists and words as they were typed', () => {
    const values = typedValues(
      'duty:\n  torque: 350 lbf.ft # peak\ndriving:\n  holes: { circle: [84.02,  84.00], at: [[1, 2], [3, 4]] }\nnote: "a: b"\n',
    );
    expect(values).toMatchObject({
      'duty.torque': '350 lbf.ft',
      'driving.holes.circle': '84.02, 84.00',
      'driving.holes.circle[1]': '84.00',
      'driving.holes.at': '[[1, 2], [3, 4]]',
      note: 'a: b',
    });
    expect(values.duty).toBeUndefined();
    expect(typedValues('a: [')).toEqual({});
  });

  it('says a measured size as the bench does, in braces or on lines of its own', () => {
    const measured = (diameter: string) =>
      typedValues(`driving:\n  register:\n    diameter: ${diameter}\n`)['driving.register.diameter'];
    expect(measured('{ value: 62.00, doubt: 0.01, instrument: micrometer }')).toBe('62.00 ±0.01 micrometer');
    expect(measured('{ value: 2.441 in, doubt: 0.5 thou }')).toBe('2.441 in ±0.5 thou');
    expect(measured('{ instrument: micrometer, readings: [60.02, 60.01] }')).toBe('60.02, 60.01 micrometer');
    expect(measured('\n      value: 62.00\n      instrument: micrometer')).toBe('62.00 micrometer');
    // What says more than a line can stays as it is written.
    expect(measured('{ value: 62.00, proven: true }')).toBe('{ value: 62.00, proven: true }');
    expect(measured('{ value: 60.02, readings: [60.02, 60.01] }')).toBe('{ value: 60.02, readings: [60.02, 60.01] }');
    expect(measured('{ readings: [60.02, 60.01] }')).toBe('{ readings: [60.02, 60.01] }');
    // A list on lines of its own, and one whose items have lines of their own.
    const listed = (items: string) => typedValues(`shaft:\n  angles:\n    line:\n${items}`)['shaft.angles.line'];
    expect(listed('      - { name: a, side: 3 deg } # first\n      - { name: b }\n')).toBe(
      '[{ name: a, side: 3 deg }, { name: b }]',
    );
    expect(listed('      - name: a\n        side: 3 deg\n      - { name: b }\n')).toBeUndefined();
    // Keys of the same names that are no measured value.
    expect(typedValues('adapter: { fit: { value: 1, doubt: 2 } }')['adapter.fit']).toBe('{ value: 1, doubt: 2 }');
  });

  it('typed back into its place, a value means the same', () => {
    const folder = join(import.meta.dirname, '../../presets');
    for (const name of readdirSync(folder).filter((file) => file.endsWith('.job.yaml'))) {
      const text = readFileSync(join(folder, name), 'utf8');
      const before = readJob(text, name);
      const job = before.ok ? before.job : null;
      expect(job, name).not.toBeNull();
      for (const [path, value] of Object.entries(typedValues(text))) {
        if (path.includes('[')) continue;
        const result = editJob(text, path.split('.'), value);
        if (!result.ok) throw new Error(`${name} ${path}: ${result.why}`);
        expect(typedValues(result.text)[path], `${name} ${path}`).toBe(value);
        const after = readJob(result.text, name);
        expect(after.ok && after.job, `${name} ${path}`).toEqual(job);
      }
    }
  }, 60_000);
});
