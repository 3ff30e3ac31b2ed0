/** The list of checks run whole, quickly, in steps and over finished parts: what each way must say follows from the others. */
import { describe, expect, it } from 'vitest';
import { asBuilt } from '../../src/inspect/as-built.ts';
import type { Joint } from '../../src/job/joint.ts';
import { checks, validate, validateQuickly, validateWithBuilt } from '../../src/validate/all.ts';
import { type KnownFindings, validateInSteps } from '../../src/validate/in-steps.ts';
import { judge } from './help.ts';

const slow = checks.filter(({ isSlow }) => isSlow);
/** The recess of the sound job is drawn 62.010 to 62.040. */
const measured = judge({ built: { adapter: { driving: { register: { value: 62.05, doubt: 0.002 } } } } }).joint;

/** Every step of a judgement, and what it ends with. */
function stepsOf(joint: Joint, known?: KnownFindings) {
  const run = validateInSteps(joint, known);
  const steps = [];
  for (let step = run.next(); ; step = run.next()) {
    if (step.done) return { steps, end: step.value };
    steps.push(step.value);
  }
}

describe('the list of checks', () => {
  const { joint } = judge({});

  it('quickly leaves out the slow checks, and nothing else', () => {
    expect(slow.length).toBeGreaterThan(0);
    const left = checks.filter((check) => !slow.includes(check)).flatMap((check) => [...check.run(joint)]);
    expect(validateQuickly(joint)).toEqual(left);
    expect(validate(joint).length).toBeGreaterThan(left.length);
  });

  it('what throws dice, meshes a beam, simulates a signal or turns a whole train is slow', () => {
    expect(slow.map(({ id }) => id).sort()).toEqual(['chance', 'joint-angles', 'shaft-speed', 'signal']);
  });

  it('in steps: the quick checks first, a pause before each slow one, and the same end', () => {
    const { steps, end } = stepsOf(joint);
    expect(steps).toEqual([
      { findings: validateQuickly(joint), open: slow.map(({ title }) => title) },
      ...slow.map(() => null),
    ]);
    expect(end).toEqual(validate(joint));
    expect(end).toEqual(validateWithBuilt(joint));
  });

  it('in steps, judged again: slow checks of the same parts are known and need no pause', () => {
    const known: KnownFindings = new Map();
    stepsOf(joint, known);
    expect(known.size).toBe(slow.length);
    const again = stepsOf(joint, known);
    expect(again.steps).toHaveLength(1);
    expect(again.end).toEqual(validate(joint));
  });

  it('of finished parts: every check with the measured sizes, then what to do with each part', () => {
    const real = asBuilt(measured);
    if (!real) throw new Error('nothing measured');
    const whole = validateWithBuilt(measured);
    const ofChecks = validate(real);
    expect(whole.slice(0, ofChecks.length)).toEqual(ofChecks);
    const codes = whole.slice(ofChecks.length).map(({ code }) => code);
    expect(codes.filter((code) => code === 'built-size')).toHaveLength(1);
    expect(codes).toContain('built-verdict');
    // 62.05 is 0.010 over its upper limit: no metal is left to mend it.
    expect(whole.find(({ code }) => code === 'built-size')?.verdict).toBe('caution');
  });

  it('of finished parts in steps: measured sizes are shown first, the drawn ones are judged after', () => {
    const real = asBuilt(measured);
    if (!real) throw new Error('nothing measured');
    const { steps, end } = stepsOf(measured);
    const last = 'What to do with the finished parts';
    const told = steps.filter((step) => step !== null);
    expect(told[0]).toEqual({ findings: validateQuickly(real), open: [...slow.map(({ title }) => title), last] });
    expect(told[1]).toEqual({ findings: validate(real), open: [last] });
    expect(told).toHaveLength(2);
    // A pause before each slow check of both, and one before what is to be done.
    expect(steps.filter((step) => step === null)).toHaveLength(2 * slow.length + 1);
    expect(end).toEqual(validateWithBuilt(measured));
  });

  it('scrap is only what fails with all else reworked', () => {
    // The driven spigot 0.012 over can be turned down; the recess 0.4 too wide cannot, and centres no more (0.1 mm at most is common practice).
    const both = judge({
      built: {
        adapter: {
          driving: { register: { value: 62.45, doubt: 0.002 } },
          driven: { register: { value: 60.012, doubt: 0.002 } },
        },
      },
    });
    const said = both.findings
      .filter(({ code }) => code === 'built-size')
      .map(({ why }) => /Verdict: ([a-z ]+)/.exec(why)?.[1]);
    expect(said.sort()).toEqual(['rework', 'scrap']);
  });
});
