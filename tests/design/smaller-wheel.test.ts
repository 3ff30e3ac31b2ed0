/** A wheel that was left open and has grown for its teeth: told why, and what makes it smaller, held against judging that change. mm. */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { wheelSize } from '../../src/validate/wheel-size.ts';
import { bent, findingOf, judge, type Patch, patched, patterns, soundJob } from '../validate/help.ts';

const open: Patch = { outside: 'auto', height: undefined };
const grown: readonly (readonly [string, Patch])[] = [
  ['120 narrow teeth', { wheel: { ...open, teeth: 120 } }],
  ['a coil, thick sheet', { wheel: { ...open, teeth: 90, thickness: 5 }, sensor: { kind: 'coil' } }],
  ['a coil with a crawl', { wheel: { ...open, teeth: 30 }, sensor: { kind: 'coil', crawl: '32 rpm' } }],
  ['no sensor, thick sheet', { wheel: { ...open, teeth: 80, thickness: 8 }, sensor: undefined }],
  ['wide valleys for one element', { wheel: { ...open, thickness: 5 }, sensor: { kind: 'hall' } }],
  [
    'a service that holds little',
    { wheel: { ...open, teeth: 90, ratio: 0.5 }, sensor: { kind: 'hall' }, sheet: { tolerance: 0.6 } },
  ],
];

/** What would be smaller is looked for by the search alone: while somebody types it would take too long. */
function searched(...patches: readonly Patch[]) {
  const made = judgeJob(JSON.stringify(patched(soundJob, ...patches)), 'test.job.yaml', patterns);
  if (!made.ok) throw new Error(made.errors.map(({ message }) => message).join('\n'));
  return made;
}

/** "wheel.thickness: 3 mm" as a patch. */
function patchOf(key: string): Patch {
  const [, section = '', name = '', value = ''] = /^(\w+)\.(\w+): (.+)$/.exec(key) ?? [];
  return { [section]: { [name]: /^[\d.]+$/.test(value) ? Number(value) : value } };
}

describe('a wheel that has grown for its teeth', () => {
  it('is told of with the size that screws, adapter and flanges alone ask for', () => {
    const made = judge({ wheel: { ...open, teeth: 120 } });
    const found = findingOf(made, 'wheel-size');
    // Teeth of 0.4 of the pitch no narrower than the 3 mm of the sheet: 3 = D sin(0.4 pi / 120), so D = 286.5.
    expect(found.value).toBe(Math.ceil(3 / Math.sin((0.4 * Math.PI) / 120)));
    // The adapter lies 3 mm below the roots all round.
    const { adapterSpec, job } = made.joint;
    const start = Math.ceil(adapterSpec.outside + 6 + 2 * (job.wheel?.height ?? 0));
    expect(found.limit).toBeCloseTo(1.25 * start, 6);
    expect(found.verdict).toBe('caution');
    expect(found.why).toContain('none narrower than 3 mm');
  });

  it('names the most teeth that keep it quiet, by the same sum', () => {
    const made = searched({ wheel: { ...open, teeth: 120 } });
    const { limit, remedy } = findingOf(made, 'wheel-size');
    const least = (teeth: number) => Math.ceil(3 / Math.sin((0.4 * Math.PI) / teeth));
    let teeth = 119;
    while (least(teeth) > Number(limit)) teeth--;
    expect(remedy).toContain(`(wheel.teeth: ${teeth}): ${least(teeth)} mm, ${least(120) - least(teeth)} mm smaller`);
  });

  it.each(grown)('%s: each change told comes out as told', (_, patch) => {
    const made = searched(patch);
    const growth = made.joint.wheelGrowth;
    expect(findingOf(made, 'wheel-size').verdict).toBe('caution');
    expect(growth?.smaller?.length).toBeGreaterThan(0);
    for (const { key, outside } of growth?.smaller ?? []) {
      const then = searched(patch, patchOf(key));
      expect([key, then.joint.wheelSpec?.outside]).toEqual([key, outside]);
      expect(outside).toBeLessThanOrEqual(0.95 * (growth?.outside ?? 0));
    }
  });

  it('between them they name every key that can help', () => {
    const keys = grown.flatMap(([, patch]) =>
      (searched(patch).joint.wheelGrowth?.smaller ?? []).map(({ key }) => key.split(':')[0]),
    );
    expect([...new Set(keys)].sort()).toEqual([
      'sensor.crawl',
      'sheet.tolerance',
      'wheel.ratio',
      'wheel.teeth',
      'wheel.thickness',
    ]);
  });

  it('is not asked what would be smaller without a search, and does not say that nothing would', () => {
    const { remedy } = findingOf(judge({ wheel: { ...open, teeth: 120 } }), 'wheel-size');
    expect(remedy).toBe('Type wheel.outside, if there is room for it.');
  });

  it('says so where no single change helps', () => {
    const { joint } = judge({ wheel: { ...open, teeth: 120 } });
    const [found] = wheelSize.run(bent(joint, { wheelGrowth: { smaller: [] } }));
    expect(found?.remedy).toMatch(/^No single change/);
  });

  it('is quiet, with its margin, where the teeth ask for no more, and where the outside was typed', () => {
    const found = findingOf(judge({ wheel: open }), 'wheel-size');
    expect([found.verdict, found.remedy]).toEqual(['pass', '']);
    expect(found.margin).toBeGreaterThan(0);
    expect(judge({ wheel: { teeth: 120, outside: 287 } }).findings.some(({ code }) => code === 'wheel-size')).toBe(
      false,
    );
  });
});
