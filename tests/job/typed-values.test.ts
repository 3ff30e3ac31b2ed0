/** What a field shows is what was typed. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editJob } from '../../src/job/edit.ts';
import { typedValues } from '../../src/job/typed-values.ts';

describe('typed values', () => {
  it('keeps numbers, units, lists and words as they were typed', () => {
    const values = typedValues(
      'duty:\n  torque: 350 lbf.ft # peak\nholes: { circle: [84.02,  84.00], at: [[1, 2], [3, 4]] }\nnote: "a: b"\n',
    );
    expect(values).toMatchObject({
      'duty.torque': '350 lbf.ft',
      'holes.circle': '[84.02,  84.00]',
      'holes.circle[1]': '84.00',
      'holes.at': '[[1, 2], [3, 4]]',
      note: 'a: b',
    });
    expect(values.duty).toBeUndefined();
    expect(typedValues('a: [')).toEqual({});
  });

  it('typed back into its place, a value changes nothing', () => {
    const folder = join(import.meta.dirname, '../../presets');
    for (const name of readdirSync(folder).filter((file) => file.endsWith('.job.yaml'))) {
      const text = readFileSync(join(folder, name), 'utf8');
      for (const [path, value] of Object.entries(typedValues(text))) {
        if (path.includes('[')) continue;
        const result = editJob(text, path.split('.'), value);
        expect(result.ok, `${name} ${path}`).toBe(true);
        if (result.ok) expect(typedValues(result.text)[path]).toBe(value);
      }
    }
  });
});
