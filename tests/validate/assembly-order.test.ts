/** Which screws go in first. Expected: key sizes of ISO 4762 (M8: 6 mm, M10: 8 mm across flats) and plane geometry, worked out beside each case. */
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { coveringFlange } from '../../src/job/tool-access.ts';
import { assemblyOrder } from '../../src/validate/assembly-order.ts';

const patterns = { flanges: [], nearMisses: [] };

/** Two flanges on unlike circles, invented. */
function orderOf(driving: string, driven: string, adapter = '{}') {
  const text = `job: 1
driving: ${driving}
driven: ${driven}
adapter: ${adapter}
`;
  const judged = judgeJob(text, 'order', patterns);
  if (!judged.ok) throw new Error(JSON.stringify(judged));
  return { joint: judged.joint, findings: assemblyOrder.run(judged.joint), all: judged.findings };
}

const register = (gender: string, diameter: number) => `{ gender: ${gender}, diameter: ${diameter}, depth: 4 }`;
const flange = (outside: number, holes: string, its = register('male', 60)) =>
  `{ outside: ${outside}, thickness: 14, behind: 60, register: ${its}, holes: ${holes} }`;

const tapped = (circle: number, count = 4) => `{ count: ${count}, circle: ${circle}, thread: M10x1.5, depth: 20 }`;
const clear = (circle: number, count = 4) => `{ count: ${count}, circle: ${circle}, diameter: 10.5 }`;

describe('the order of putting it together', () => {
  it('fails where each flange lies over the heads of the other side', () => {
    // Both tapped, circles of 90 and 120 mm, flanges of 150 mm: no head can be turned under a flange.
    const { findings } = orderOf(flange(150, tapped(90)), flange(150, tapped(120), register('female', 70)));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'assembly-order', verdict: 'fail' });
    expect(findings[0]?.why).toContain('cannot be put in any more');
    expect(findings[0]?.remedy).toContain('drill the');
  });

  it('fails for bolts whose heads nothing holds, and names the way that is open', () => {
    const { findings } = orderOf(
      flange(150, tapped(90)),
      flange(150, clear(120), register('female', 70)),
      '{ driven: { fastening: through } }',
    );
    expect(findings[0]).toMatchObject({ verdict: 'fail', feature: 'driven-screws' });
    expect(findings[0]?.remedy).toContain('adapter.driven.fastening: into_adapter');
  });

  it('is never broken by the way that is chosen where another is open', () => {
    const { findings } = orderOf(flange(150, tapped(90)), flange(150, clear(120), register('female', 70)));
    expect(findings.map(({ verdict, title }) => [verdict, title])).toEqual([['pass', 'driving screws first']]);
  });

  it('tells that what is covered cannot be tightened again as it stands', () => {
    const { joint } = orderOf(flange(150, tapped(90)), flange(150, clear(120), register('female', 70)));
    const [driving, driven] = ['driving', 'driven'].map((side) => joint.screws.find((group) => group.side === side));
    expect(driving?.tightening.note).toContain('again after the first run, for which the driven flange comes off');
    expect(driven?.tightening.note).toMatch(/again after the first run \(common practice\)/);
  });

  it.each([
    // Key of an M10 socket screw: 8 / cos 30 = 9.238 across corners, 4.619 about the axis. Heads on 60 mm, so the rim may reach to 55.381.
    ['socket', 110.7, null],
    ['socket', 110.8, 'driven'],
    // Socket for an M10 hexagon of 16 mm: 1.5 x 16 + 1 = 25 outside; the rim may reach to 47.5.
    ['hex', 94.9, null],
    ['hex', 95.1, 'driven'],
  ] as const)('a %s head on a radius of 60 mm under a flange of %s mm', (kind, outside, covered) => {
    const head = { kind, diameter: 16, height: 10, standard: '' };
    const screws = { side: 'driving', seat: 'sunk', thread: 'M10', head, positions: [{ x: 0, y: 60 }] } as const;
    expect(coveringFlange(screws, () => outside)).toBe(covered);
    expect(coveringFlange({ ...screws, seat: 'outside' }, () => outside)).toBe(null);
  });
});
