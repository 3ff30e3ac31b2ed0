/** The report says one thing once: headline and weakest link, every finding under a question, which way numbers run and limits lie. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Finding, judgeJob, reportData, type Verdict } from '../../src/core.ts';
import { pressing, senseOf, usedUp } from '../../src/model/limit-use.ts';
import { isChance, questions, speaksTo } from '../../src/report/questions.ts';
import { leading } from '../../src/report/rank.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportText } from '../../src/report/report-text.ts';
import { presets } from '../cli/terminal.ts';
import { shipped } from '../presets/shipped.ts';
import { judge, patterns } from '../validate/help.ts';
import { findings as demoFindings, joint as demoJoint } from './fixture.ts';

const truck = readFileSync(join(presets, 'orchard-truck.job.yaml'), 'utf8');

function told(text: string) {
  const judged = judgeJob(text, 'a.job.yaml', patterns);
  if (!judged.ok) throw new Error(JSON.stringify(judged.errors));
  return { ...judged, report: reportData(judged.joint, judged.findings) };
}

const made = (
  code: string,
  verdict: Verdict,
  value: number,
  limit: number,
  sense: 'at least' | 'at most',
): Finding => ({
  code,
  feature: 'body',
  title: `title of ${code}`,
  verdict,
  value,
  limit,
  sense,
  unit: 'mm',
  margin: sense === 'at most' ? limit - value : value - limit,
  why: 'why',
  remedy: verdict === 'pass' ? '' : 'Mend it.',
  source: 'made up',
});

describe('the headline and the weakest link', () => {
  const weakest = (findings: readonly Finding[]) =>
    reportData(demoJoint, findings).answers.find(({ question }) => question === 'What is the weakest link?');

  it('are the same finding: of the joint itself before a sensor, and of those the one that uses most of its limit', () => {
    // 0.112 of 0.064 is 175 %, 0.14 of 0.1 is 140 %, 0.402 of 0.2 is 201 %.
    const centred = made('concentricity', 'caution', 0.112, 0.064, 'at most');
    const balanced = made('joint-unbalance', 'caution', 0.14, 0.1, 'at most');
    const teeth = made('wheel-runout', 'caution', 0.402, 0.2, 'at most');
    const both = [teeth, balanced, centred];
    expect(reportData(demoJoint, both).headline).toContain('First: title of concentricity');
    expect(weakest(both)).toMatchObject({ word: '175 % used', text: expect.stringContaining('concentricity') });
    expect(reportData(demoJoint, [teeth]).headline).toContain('First: title of wheel-runout');
    expect(weakest([teeth])).toMatchObject({ word: '201 % used', text: expect.stringContaining('wheel-runout') });
    // A failure anywhere goes before a caution of the joint.
    expect(leading([...both, made('reading-error', 'fail', 20, 1, 'at most')])?.code).toBe('reading-error');
  });

  it('are no clearance that may be nothing, and no sheet as thick as it must be, on a pass', () => {
    const findings = [
      made('register-goes-together', 'pass', 0, 0, 'at least'),
      made('wheel-thickness', 'pass', 3, 3, 'at least'),
      // 1.25 of 1.446 is 86 %.
      made('grip-driving', 'pass', 1.446, 1.25, 'at least'),
    ];
    expect(reportData(demoJoint, findings).headline).toContain('Nothing fails');
    expect(leading(findings)?.code).toBe('grip-driving');
    expect(weakest(findings)?.word).toBe('86 % used');
  });

  it('are a failure without a share before one with any, and a chance only where nothing else is as bad', () => {
    const overlap = made('web-between-holes', 'fail', -3, 3, 'at least');
    const chance = made('centring-chance', 'fail', 10, 95, 'at least');
    const off = made('concentricity', 'fail', 0.3, 0.1, 'at most');
    expect(leading([chance, off, overlap])?.code).toBe('web-between-holes');
    expect(leading([chance, off])?.code).toBe('concentricity');
    expect(leading([chance])?.code).toBe('centring-chance');
    expect(pressing(overlap)).toBe(Number.POSITIVE_INFINITY);
  });

  it.each(shipped.map((job) => [job.base, job] as const))('agree in %s', (_, { joint, findings }) => {
    const { headline, answers } = reportData(joint, findings);
    const first = leading(findings);
    const weak = answers.find(({ question }) => question === 'What is the weakest link?');
    // A title that begins its sentence begins with a capital.
    expect(headline.toLowerCase()).toContain(first?.title.toLowerCase());
    expect(weak?.text.toLowerCase().startsWith(`${first?.title}: `.toLowerCase())).toBe(true);
    expect(weak?.text).toMatch(/^[A-Z]/);
    // Nothing of the same verdict that has a share uses more.
    const others = findings.filter(
      (one) =>
        one.verdict === first?.verdict &&
        !isChance(one) &&
        questions.some(
          (question) =>
            speaksTo(question, one) && !question.isBesides && (one.verdict !== 'pass' || !question.isChosen),
        ),
    );
    expect(others.length).toBeGreaterThan(0);
    expect(others).toContain(first);
    for (const one of others) expect(usedUp(one) ?? 0).toBeLessThanOrEqual(usedUp(first as Finding) ?? Infinity);
  });
});

/** Findings that need no question, and why. */
const unasked: Readonly<Record<string, string>> = {
  'joint-strength': 'says what no sum covers; it has no number and is never more than not assessed',
  'rests-on-memory': 'says where numbers come from; it has no number',
  'pattern-not-measured': 'says where numbers come from; it has no number',
  'fits-the-bed': "of the printed mock-up: nothing of the joint hangs on a printer's bed",
};

describe('every finding', () => {
  const harder = [
    judge({ duty: { speed: '12000 rpm', temperature: { cold: -20, hot: 90 } } }),
    judge({ wheel: { form: 'windows' }, sensor: { direction: 'axial', float: 0.2, pole: 2 } }),
    judge({ wheel: { missing: 2 }, driven: { register: 'none' }, adapter: { driven: { dowels: 'auto' } } }),
    judge({ sensor: { gap: 1.2, pole: 2, float: 1, expects: { pulses: 60, per: 'shaft' } }, wheel: { room: 4 } }),
  ];
  const all = [...shipped, ...harder].flatMap(({ findings }) => findings);
  const isAsked = (finding: Finding) => isChance(finding) || questions.some((question) => speaksTo(question, finding));

  it('belongs to a question, but for those that need none', () => {
    const without = [...new Set(all.filter((finding) => !isAsked(finding)).map(({ code }) => code))];
    expect(without.filter((code) => !(code in unasked))).toEqual([]);
    // Those that need none are no hiding place: none that is past a limit, and none that is asked for after all.
    for (const one of all.filter(({ code }) => code in unasked && code !== 'fits-the-bed'))
      expect(one.value).toBeNull();
    for (const code of Object.keys(unasked)) expect(questions.some((q) => speaksTo(q, { code }))).toBe(false);
  });

  it('that is past its limit keeps its question from a plain yes', () => {
    for (const { joint, findings } of [...shipped, ...harder]) {
      const { answers } = reportData(joint, findings);
      for (const question of questions) {
        const isPast = findings.some(
          (one) => speaksTo(question, one) && one.verdict === 'caution' && (one.margin ?? 0) < 0,
        );
        if (isPast) expect(answers.find((one) => one.question === question.question)?.word).not.toBe('Yes');
      }
    }
  });

  it('is doubtful for the sensor where the teeth run out by 0.315 against 0.2', () => {
    const runout = made('wheel-runout', 'caution', 0.315, 0.2, 'at most');
    const { answers } = reportData(demoJoint, [made('tooth-width', 'pass', 4, 3, 'at least'), runout]);
    expect(answers.find(({ question }) => question === 'Can the sensor read the wheel?')).toMatchObject({
      word: 'Doubtful',
      text: expect.stringContaining('Title of wheel-runout: 0.315 mm, at most 0.2 mm'),
    });
  });
});

describe('a limit', () => {
  const [first] = demoFindings as [Finding];
  const row = (value: number, limit: number, margin: number) => ({ ...first, sense: undefined, value, limit, margin });

  it('says which way it runs: by itself, or by which side its margin is on', () => {
    expect(senseOf(made('a', 'pass', 3, 3, 'at least'))).toBe('at least');
    expect(senseOf(row(20, 22.65, 2.65) as unknown as Finding)).toBe('at most');
    expect(senseOf(row(20, 22.65, -2.65) as unknown as Finding)).toBe('at least');
    expect(senseOf(row(25, 22.65, -2.35) as unknown as Finding)).toBe('at most');
    expect(senseOf(row(3, 3, 0) as unknown as Finding)).toBeNull();
  });

  it('says so in both reports', () => {
    const findings = [made('a', 'fail', 20, 22.65, 'at least'), made('b', 'caution', 0.3, 0.2, 'at most')];
    const data = reportData(demoJoint, findings);
    expect(reportText(data)).toContain('20 mm, at least 22.65 mm, 2.65 mm short');
    expect(reportText(data)).toContain('0.3 mm, at most 0.2 mm, 0.1 mm over');
    expect(reportHtml(data)).toContain('<td class="number">at least 22.65 mm</td>');
  });
});

describe('the number in the controller', () => {
  const note = (was: string) =>
    told(truck.replace('teeth: 60', 'teeth: 48').replace(/was: \{.*\}/, was)).report.controller?.lines.find(
      ({ label }) => label === 'Correction',
    )?.note;

  // 48 x 5.125 = 246 before, 48 x 4.1 = 196.8 now: shown = truth x 0.8.
  it('falls from 246 to 197 where 48 teeth turn 4.1 times instead of 5.125', () => {
    expect(note('was: { teeth: 48, ratio: 5.125 }')).toBe(
      'the other way round, shown = truth x 0.8000: by that the number in the controller falls, from 246 to 197',
    );
  });

  // 30 x 4.1 = 123 before.
  it('grows from 123 to 197 where they were 30 teeth', () => {
    expect(note('was: { teeth: 30, ratio: 4.1 }')).toBe(
      'the other way round, shown = truth x 1.6000: by that the number in the controller grows, from 123 to 197',
    );
  });
});

describe('a register among the key numbers', () => {
  it('is told by its limits, as its drawing has them: H7 on 62.01 is 62.010 to 62.040 (ISO 286-1)', () => {
    const { keyNumbers } = told(truck).report;
    const { joint } = told(truck);
    const { limits } = joint.adapterSpec.registers.driving ?? { limits: { lower: 0, upper: 0 } };
    expect(keyNumbers.find(({ label }) => label === 'Register, driving side')?.value).toBe(
      'recess 62.010 to 62.040 mm',
    );
    expect([limits.lower, limits.upper]).toEqual([62.01, 62.04]);
  });
});
