/** The wheel's bore turned to its register where the bore as cut puts the centring of the teeth in doubt, and nowhere else. mm. */
import { describe, expect, it } from 'vitest';
import { judgeInSteps, judgeJob, revisionOf } from '../../src/core.ts';
import { findingOf, type Patch, patched, patterns, soundJob } from '../validate/help.ts';

/** No run-out of the flange, one chucking, and the clearance left to the program: what is left is play, registers, and the cut. */
const open: Patch = {
  driving: { runout: { rim: '0 +-0' } },
  adapter: { setup: 'one chucking' },
  wheel: { clearance: undefined },
};
function searched(...patches: Patch[]) {
  const made = judgeJob(JSON.stringify(patched(soundJob, open, ...patches)), 'test.job.yaml', patterns);
  if (!made.ok) throw new Error(made.errors.map(({ message }) => message).join('\n'));
  return made;
}
const assumed = ({ joint }: ReturnType<typeof searched>, path: string) =>
  joint.assumptions.find((one) => one.path === path);

/** Shoulder 129 h7 is 0.040 wide, the cut +-0.03, the usual clearance 0.05 (ISO 286-2: 129 H8 is 0.063 wide). Diameters. */
const asCut = 0.05 + 0.03 + 0.04;
const turned = 0.063 + 0.04;
/** The driving register's play 0.05 (62 -0.01 against +0.03 +0.01), one chucking 0.01, teeth about the bore 0.03. */
const others = 0.05 + 0.01 + 0.03;

describe('a wheel whose bore nobody asked for', () => {
  it('is turned to H8 where that brings the teeth within their limit, and the reason is told', () => {
    // As cut 0.21, turned 0.193, against 0.2.
    const typed = findingOf(searched({ wheel: { fit: 'auto' } }), 'wheel-runout');
    expect([typed.verdict, typed.value]).toEqual(['caution', expect.closeTo(asCut + others, 3)]);
    const made = searched();
    const found = findingOf(made, 'wheel-runout');
    expect([found.verdict, found.value]).toEqual(['pass', expect.closeTo(turned + others, 3)]);
    expect(made.joint.wheelBore?.limits).toEqual({ lower: 129, upper: 129.063, zone: 'H8' });
    expect(assumed(made, 'wheel.fit')?.from).toContain('run-out of the teeth 0.21 mm, at most 0.2 mm');
    expect(assumed(made, 'wheel.clearance')).toBeUndefined();
  });

  it('is the same wheel as one with wheel.fit: H8 written down, and the job stays as typed', () => {
    const written = searched({ wheel: { fit: 'H8' } });
    const made = searched();
    expect(made.joint.wheelSpec).toEqual(written.joint.wheelSpec);
    expect(made.joint.wheelBore).toEqual(written.joint.wheelBore);
    // The job stays as it was typed; the part is another one than the part as cut, and its mark says so.
    expect(made.joint.job.wheel?.fit).toBe('auto');
    expect(revisionOf(made.joint)).not.toBe(revisionOf(searched({ wheel: { fit: 'auto' } }).joint));
  });

  it.each<[string, Patch]>([
    ['what was typed stays: as cut', { wheel: { fit: 'auto' } }],
    ['what was typed stays: a clearance', { wheel: { clearance: 0.05 } }],
    ['a wheel set true has no need of it', { wheel: { set_true: 0.1 } }],
    ['it is not enough: the flange runs out by 0.05', { driving: { runout: { rim: '0.05 +-0' } } }],
    ['as cut is good enough: the service holds 0.02', { sheet: { tolerance: 0.02 } }],
  ])('%s', (_, patch) => {
    const made = searched(patch);
    expect(made.joint.wheelBore).toBeNull();
    expect(assumed(made, 'wheel.fit')).toBeUndefined();
  });

  it('is shown first where the last search took it, until something else is typed', () => {
    const text = (patch: Patch) => JSON.stringify(patched(soundJob, open, patch));
    const last = (job: string, choice?: Parameters<typeof judgeInSteps>[3]) => {
      const steps = judgeInSteps(job, 'test.job.yaml', patterns, choice);
      for (;;) {
        const step = steps.next();
        if (step.done) return step.value;
      }
    };
    const first = last(text({}));
    if (!first.ok) throw new Error('the job is sound');
    expect(first.choice.wheel).toEqual({ fit: 'H8' });
    expect(last(text({}), first.choice).isAsShown).toBe(true);
    const typed = last(text({ wheel: { fit: 'auto' } }), first.choice);
    expect(typed.ok && typed.joint.wheelBore).toBeNull();
    expect(typed.isAsShown).toBe(true);
  });
});
