/** The revision mark: one job, one mark; another part, another mark; on every file. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeFiles } from '../../src/core.ts';
import { revisionOf } from '../../src/job/revision.ts';
import { shipped } from '../presets/shipped.ts';
import { judge, type Patch } from '../validate/help.ts';

const markOf = (...patches: Patch[]) => revisionOf(judge(...patches).joint);

describe('revision', () => {
  it('is R and five signs that cannot be misread, the same for the same job', () => {
    expect(markOf()).toMatch(/^R[0-9A-HJKMNP-TV-Z]{5}$/);
    expect(markOf()).toBe(markOf());
  });

  it('stays when nothing that decides a part changes: notes, print allowances, what was measured', () => {
    const mark = markOf();
    expect(markOf({ note: 'second thoughts' })).toBe(mark);
    expect(markOf({ print: { holes: 0.4 } })).toBe(mark);
    expect(markOf({ built: { adapter: { mass: '2 kg' } } })).toBe(mark);
  });

  it.each([
    { adapter: { thickness: 17 } },
    { adapter: { material: '1045' } },
    { adapter: { driving: { class: '12.9' } } },
    { driving: { register: { diameter: { value: 62.01, doubt: 0.01 } } } },
    { wheel: { teeth: 59 } },
    { duty: { speed: '2601 rpm' } },
  ])('changes with %j', (patch) => {
    expect(markOf(patch)).not.toBe(markOf());
  });

  it('gives a thousand thicknesses a thousand marks', () => {
    const { joint } = judge();
    const marks = new Set<string>();
    for (let i = 0; i < 1000; i++) {
      marks.add(revisionOf({ ...joint, adapterSpec: { ...joint.adapterSpec, thickness: 10 + i / 100 } }));
    }
    // Two alike among a thousand of 33 million: one chance in seventy.
    expect(marks.size).toBeGreaterThan(998);
    fc.assert(
      fc.property(fc.double({ min: 5, max: 50, noNaN: true }), (thickness) => {
        const of = (t: number) => revisionOf({ ...joint, adapterSpec: { ...joint.adapterSpec, thickness: t } });
        expect(of(thickness)).toBe(of(thickness + 1e-12));
      }),
    );
  });

  it('stands in every file, the whole chain and the bench papers too', async () => {
    const { joint, findings } = shipped.find(({ base }) => base === 'hill-tractor') ?? judge();
    const made = await makeFiles(joint, findings, { base: 'x', jobName: 'x.job.yaml', only: [], force: true });
    const mark = revisionOf(joint);
    const without = made.files.filter(({ bytes }) => !Buffer.from(bytes).toString('latin1').includes(mark));
    // The report's JSON has a fixed shape; a PDF's texts are packed, its subject is looked for below.
    expect(without.map(({ name }) => name).filter((name) => !/\.(pdf|json)$/.test(name))).toEqual([]);
  });
});
