/**
 * Remedies that are tried: what is told of a change is what comes of typing it into the job. The other way round here: the file's text is
 * edited as the page does it and the whole job judged anew, and verdicts are compared by hand. No formula, no unit.
 */
import { describe, expect, it } from 'vitest';
import {
  editJob,
  type Finding,
  judgeInSteps,
  judgeJob,
  reportData,
  reportJson,
  withTriedRemedies,
} from '../../src/core.ts';
import { remedyChanges } from '../../src/job/remedy-changes.ts';
import { type Patch, patched, patterns, soundJob } from '../validate/help.ts';

/** Jobs with something to cure, each in another way. */
const sick: readonly (readonly [string, Patch])[] = [
  ['soft metal under hard screws', { adapter: { material: '6061-T6', driven: { class: '10.9', washer: false } } }],
  ['too much torque', { duty: { torque: '900 N.m' } }],
  ['a thin adapter', { adapter: { thickness: 14 } }],
  ['too tight a root', { wheel: { root_radius: 0.1 } }],
  ['a clocking that was typed', { adapter: { clocking: 10 } }],
  ['no register where there may be one', { adapter: { driving: { register: 'none' } } }],
  ['a wheel that does not go on', { wheel: { clearance: 0.02 } }],
  ['a gap for position on a wheel for speed', { wheel: { missing: 1 } }],
  ['thick sheet', { wheel: { thickness: 8 } }],
];

const rank = { pass: 0, 'not assessed': 1, caution: 2, fail: 3 } as const;
type Verdict = keyof typeof rank;

function worst(findings: readonly Finding[], code: string): Verdict {
  return findings
    .filter((finding) => finding.code === code)
    .reduce<Verdict>((found, { verdict }) => (rank[verdict] > rank[found] ? verdict : found), 'pass');
}

/** All findings of a text with one way of holding it together, before any search. */
function asShown(text: string, choice: Parameters<typeof judgeInSteps>[3]): readonly Finding[] | null {
  const steps = judgeInSteps(text, 'test.job.yaml', patterns, choice);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return null;
    if (value?.open.length === 1) return value.findings;
  }
}

function judgedAndTried(text: string) {
  const judged = judgeJob(text, 'test.job.yaml', patterns);
  if (!judged.ok) throw new Error(judged.errors.map(({ message }) => message).join('\n'));
  const joint = withTriedRemedies(text, 'test.job.yaml', patterns, judged);
  return { ...judged, joint, tried: joint.tried ?? [] };
}

describe('a remedy that was tried', () => {
  const seen = { cured: 0, spoilt: 0, notEnough: 0, changes: 0 };

  it.each(sick)('comes to the same as when it is typed: %s', (_, patch) => {
    const text = JSON.stringify(patched(soundJob, patch), null, 1);
    const { findings, choice, tried, joint } = judgedAndTried(text);
    expect(
      tried.length,
      findings.map(({ verdict, remedy }) => (verdict === 'pass' ? '' : remedy)).join('\n'),
    ).toBeGreaterThan(0);
    for (const { words, asked, worse, better, stopped } of tried) {
      const [change] = remedyChanges(`(${words})`, joint.job.units);
      expect(change?.words).toBe(words);
      let typed = text;
      for (const { path, data } of change?.puts ?? []) {
        const edited = editJob(typed, path, typeof data === 'string' ? data : JSON.stringify(data));
        if (!edited.ok) throw new Error(`${words}: ${edited.why}`);
        typed = edited.text;
      }
      const after = asShown(typed, choice);
      expect(after === null, words).toBe(stopped !== null);
      if (after === null) continue;
      seen.changes += 1;
      for (const one of asked)
        expect([words, one.code, one.after?.verdict ?? 'pass']).toEqual([words, one.code, worst(after, one.code)]);
      const codes = new Set([...findings, ...after].map(({ code }) => code));
      const moved = [...codes].map((code) => ({ code, by: rank[worst(after, code)] - rank[worst(findings, code)] }));
      const told = worse.map(({ code }) => code);
      // Where the quick checks see something spoilt the slow ones are not asked: what is told is so, and nothing is told to be well.
      for (const code of told)
        expect(moved.find((one) => one.code === code)?.by, `${words}: ${code}`).toBeGreaterThan(0);
      if (told.length === 0)
        expect(
          moved.filter(({ by }) => by > 0),
          words,
        ).toEqual([]);
      for (const { code } of better)
        expect(moved.find((one) => one.code === code)?.by, `${words}: ${code}`).toBeLessThan(0);
      seen.cured += asked.filter((one) => worst(after, one.code) === 'pass').length;
      seen.notEnough += asked.filter((one) => worst(after, one.code) !== 'pass').length;
      seen.spoilt += told.length > 0 ? 1 : 0;
    }
  });

  it('cures, falls short and spoils, each somewhere: the comparison above compares something', () => {
    expect(seen.changes).toBeGreaterThan(12);
    for (const count of [seen.cured, seen.notEnough, seen.spoilt]) expect(count).toBeGreaterThan(0);
  });
});

describe('what is told of it', () => {
  it('stands below its step in words, and beside the findings as data', () => {
    const { joint, findings } = judgedAndTried(JSON.stringify(patched(soundJob, { wheel: { root_radius: 0.1 } })));
    const data = reportData(joint, findings);
    const step = data.next.find(({ code }) => code === 'sheet-inside-radius');
    expect(step?.tried).toEqual(['Tried (wheel.root_radius: 0.50 mm): cures this; no other check gets worse.']);
    expect(reportJson(data, 'test.job.yaml').tried).toContainEqual({
      write: 'wheel.root_radius: 0.50 mm',
      asked_by: ['sheet-inside-radius'],
      cures: ['sheet-inside-radius'],
      eases: [],
      worsens: [],
      stopped: null,
    });
  });

  it('is nothing where nothing asks for it, nor where the parts are made', () => {
    const sound = judgedAndTried(JSON.stringify(patched(soundJob, { wheel: { set_true: 0.1 } })));
    expect(sound.findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'caution')).toEqual([]);
    expect(sound.tried).toEqual([]);
    expect(reportJson(reportData(sound.joint, sound.findings), 'x').tried).toBeUndefined();
    const made = { wheel: { root_radius: 0.1 }, built: { adapter: { thickness: 20 } } };
    const text = JSON.stringify(patched(soundJob, made));
    const judged = judgeJob(text, 'test.job.yaml', patterns);
    if (!judged.ok) throw new Error(judged.errors[0]?.message);
    expect(withTriedRemedies(text, 'test.job.yaml', patterns, judged).tried).toBeUndefined();
  });
});
