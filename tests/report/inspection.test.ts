/** The inspection record, blank and filled in: what a machinist reads, and its JSON. */
import { describe, expect, it } from 'vitest';
import { makeFiles } from '../../src/core.ts';
import { inspectionFiles } from '../../src/products/inspection.ts';
import { parseXml } from '../drawing/svg-help.ts';
import { type Judged, judge, type Patch } from '../validate/help.ts';

interface Row {
  readonly number: number;
  readonly what: string;
  readonly lower: number;
  readonly upper: number;
  readonly measured: number | null;
  readonly disposition: string;
  readonly takeOff: { readonly from: number; readonly to: number } | null;
}
interface Record {
  readonly verdict: string;
  readonly todo: string;
  readonly by: string;
  readonly sizes: readonly Row[];
}

const named = { base: 'test', jobName: 'test.job.yaml', force: false };

async function recordOf({ joint, findings }: Judged): Promise<{ page: string; record: Record }> {
  const { files } = await makeFiles(joint, findings, { ...named, only: ['inspection'] });
  const text = (end: string) => new TextDecoder().decode(files.find(({ name }) => name.endsWith(end))?.bytes);
  return { page: text('.html'), record: JSON.parse(text('.json')) as Record };
}

/** The sound joint: a recess H7 on 62.01 (62.010 to 62.040) and a spigot h6 on 60 (59.981 to 60.000); ISO 286-2. */
const size = (value: number) => ({ value, doubt: 0.002 });
const built = (given: Patch): Patch => ({ built: given });

describe('a blank record', () => {
  it('lists every size once, numbered from 1, with room to write', async () => {
    const { page, record } = await recordOf(judge());
    expect(record.sizes.map(({ number }) => number)).toEqual(record.sizes.map((_, i) => i + 1));
    expect(new Set(record.sizes.map(({ what }) => what)).size).toBe(record.sizes.length);
    expect(record.sizes[0]).toMatchObject({
      what: 'driving register, recess',
      lower: 62.01,
      upper: 62.04,
      measured: null,
    });
    expect(record.verdict).toBe('not measured');
    expect(page).toContain('<td class="number">62.010 to 62.040</td>');
    expect(page).toContain('up to 0.020');
    expect(page.match(/<td class="fill"><\/td><td class="fill"><\/td>/g)?.length).toBe(record.sizes.length);
    expect(page).toContain('Fill in what you find');
    expect(page).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it('is made when it is asked for, or when something was measured', () => {
    const [plain, measured] = [judge(), judge(built({ adapter: { thickness: 16 } }))];
    expect(inspectionFiles.metal).toBe(false);
    expect(inspectionFiles.asked?.(plain.joint)).toBe(false);
    expect(inspectionFiles.asked?.(measured.joint)).toBe(true);
  });

  it('is well-formed, whatever the title holds', async () => {
    const { page } = await recordOf(judge({ title: 'A <b> & "c"' }));
    // HTML leaves columns open; all else is closed.
    const body = page.slice(page.indexOf('<body>'), page.indexOf('</html>')).replace(/<col ([^>]*)>/g, '<col $1/>');
    expect(() => parseXml(body)).not.toThrow();
    expect(page).toContain('A &lt;b&gt; &amp; &quot;c&quot;');
  });
});

describe('a filled record', () => {
  it('says what to take off, what to measure again, and the verdict of the report', async () => {
    const made = judge(
      built({
        by: 'bench 2',
        adapter: { driving: { register: size(62.005) }, driven: { register: size(59.999) } },
      }),
    );
    const { page, record } = await recordOf(made);
    const [recess] = record.sizes;
    const spigot = record.sizes.find(({ what }) => what === 'driven register, spigot');
    expect(recess).toMatchObject({ measured: 62.005, disposition: 'rework', takeOff: { from: 0.005, to: 0.035 } });
    expect(spigot).toMatchObject({ measured: 59.999, disposition: 'measure again', takeOff: null });
    expect(page).toContain('rework: bore 0.005 to 0.035 more');
    expect(page).toContain('<td class="fill">measure again</td>');
    expect(page).toContain('Measured by: bench 2');
    const verdict = made.findings.find(({ code }) => code === 'built-verdict');
    expect(record.verdict.toLowerCase()).toBe(verdict?.title.toLowerCase());
    expect(record.todo).toBe(verdict?.remedy);
  });

  it('judges each size as the check does, also where one is reworked so that another may stay', async () => {
    const made = judge(built({ adapter: { driving: { register: size(62.05) }, driven: { register: size(60.06) } } }));
    const { record } = await recordOf(made);
    const judged = record.sizes.filter(({ measured }) => measured !== null).map(({ disposition }) => disposition);
    const said = made.findings
      .filter(({ code }) => code === 'built-size')
      .map(({ why }) => /Verdict: (.*)\.$/.exec(why)?.[1]);
    expect(judged).toEqual(said);
    expect(judged).toEqual(['use as it is', 'rework']);
  });
});
