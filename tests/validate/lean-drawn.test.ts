/** How far the joint leans and runs out, at its limits and just past them. mm */
import { describe, expect, it } from 'vitest';
import { concentricity } from '../../src/validate/concentricity.ts';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

describe('a joint that leans', () => {
  /** Face run-outs at radii of 56 and 64, total readings over the driven flange of 128; no doubt of the dial. */
  const faces = (driving: number, driven: number): Patch => ({
    driving: { runout: { face: { readings: [driving, 0, driving, 0], radius: 56 } } },
    driven: { runout: { face: { readings: [driven, 0, driven, 0], radius: 64 } } },
  });
  const lean = (patch: Patch) => findingOf({ findings: concentricity.run(judge(patch).joint) }, 'face-runout');

  it('is told in total over the driven flange, against a tenth (a workshop manual for light trucks)', () => {
    const finding = lean({});
    expect(finding.limit).toBe(0.1);
    expect(finding.unit).toBe('mm');
    expect(finding.why).toContain('128.00 mm');
  });

  it('fails where not even the likely sum keeps it: one face that runs out by far more than all else', () => {
    const wide = lean({ driving: { runout: { face: { readings: [0.3, 0.15, 0, 0.15], radius: 56 } } } });
    expect(wide.verdict).toBe('fail');
    // 0.3 read on 112 is 0.343 on 128; more than that only by what else leans and what the dial may be out.
    expect(wide.value ?? 0).toBeGreaterThan((0.3 * 128) / 112 - 0.001);
    expect(lean(faces(0, 0)).verdict).not.toBe('fail');
  });

  it('how far off is too far hangs on the speed', () => {
    const open = findingOf(
      { findings: concentricity.run(judge({ duty: { speed: undefined } }).joint) },
      'concentricity',
    );
    expectSaid(open, { verdict: 'not assessed' });
    expect(open.remedy).toMatch(/^Give duty\.speed/);
  });
});
