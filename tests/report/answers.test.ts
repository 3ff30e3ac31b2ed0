/** The short answers on the first page: what they must say of findings made up for the purpose. */
import { describe, expect, it } from 'vitest';
import type { Finding, Verdict } from '../../src/model/finding.ts';
import { usedUp } from '../../src/model/limit-use.ts';
import { answersOf } from '../../src/report/answers.ts';

/** A finding held against a limit; a negative margin is on the wrong side. */
function found(
  code: string,
  verdict: Verdict,
  value: number,
  limit: number,
  sense: 'most' | 'least',
  more = {},
): Finding {
  return {
    code,
    feature: 'body',
    title: `title of ${code}`,
    verdict,
    value,
    limit,
    unit: 'mm',
    margin: sense === 'most' ? limit - value : value - limit,
    why: `why of ${code}`,
    remedy: verdict === 'pass' ? '' : `Cure of ${code}.`,
    source: 'made up',
    ...more,
  };
}

const open = (code: string): Finding => ({
  ...found(code, 'not assessed', 0, 0, 'most'),
  value: null,
  limit: null,
  margin: null,
  why: `Why ${code} is open.`,
  remedy: `Give what ${code} wants.`,
});

const centred = found('concentricity', 'pass', 0.05, 0.1, 'most');
const balanced = found('joint-unbalance', 'pass', 30, 100, 'most');
const tight = found('grip-driving', 'pass', 2, 1.25, 'least');
const strong = found('torsion', 'pass', 10, 100, 'most');
const chance = found('centring-chance', 'pass', 98.7, 95, 'least');
const sound = [centred, balanced, tight, strong, chance];
const answer = (findings: readonly Finding[], about: string) => {
  const found = answersOf(findings, 'mm').find(({ question }) => question.includes(about));
  if (!found) throw new Error(`no answer about ${about}`);
  return found;
};

describe('a chance beside a worst case', () => {
  const said = (worst: number, percent: number, verdict: Verdict = 'caution') =>
    answer(
      [found('concentricity', verdict, worst, 0.1, 'most'), found('centring-chance', 'pass', percent, 95, 'least')],
      'centred',
    );

  it('says why what nearly all joints keep is doubtful all the same', () => {
    const { word, text } = said(0.12, 100);
    expect(word).toBe('Doubtful');
    expect(text).toContain('That is the worst case: every link off as far as it may be');
    expect(text).toContain('Few come near it: of a hundred joints made this way 100 stay within.');
    expect(text).toContain('Only the finished joint, measured, tells of this one.');
  });

  it('does not call few what is one in five', () => {
    expect(said(0.12, 80.4).text).toMatch(/same way\. Of a hundred joints made this way 80 stay within\./);
  });

  it('stands alone where the worst case is within, or where it fails', () => {
    const plain = /mm\. Of a hundred joints made this way \d+ stay within\.$/;
    expect(said(0.08, 100, 'pass').text).toMatch(plain);
    expect(said(0.3, 12, 'fail').text).toMatch(plain);
  });
});

describe('a question', () => {
  it('is answered by its own check, with its number and the chance of it', () => {
    expect(answersOf(sound, 'mm').map(({ question, word }) => `${question} ${word}`)).toEqual([
      'Does it stay centred? Yes',
      'Does it stay balanced? Yes',
      'Does it stay tight? Yes',
      'Is the metal strong enough? Yes',
      // 1.25 of 2: the most that is used up of anything.
      'What is the weakest link? 63 % used',
    ]);
    expect(answer(sound, 'centred').text).toBe(
      'Title of concentricity: 0.05 mm, at most 0.1 mm. Of a hundred joints made this way 98 stay within.',
    );
  });

  it('takes the worst verdict of all that speak to it, and no chance that speaks of something else', () => {
    const seat = found('faces-seat-first', 'fail', -0.7, 0.1, 'least');
    expect(answer([...sound, seat], 'centred')).toEqual({
      question: 'Does it stay centred?',
      verdict: 'fail',
      word: 'No',
      text: 'Title of faces-seat-first: -0.7 mm, at least 0.1 mm.',
    });
  });

  it('names the pass that is nearer to its limit than its own check', () => {
    const pressed = found('nut-pressure-driven', 'pass', 90, 100, 'most');
    expect(answer([...sound, pressed], 'tight').text).toMatch(
      /^Title of grip-driving: 2 mm.* Nearest to its limit: title of nut-pressure-driven: 90 mm/,
    );
  });

  it('is not answered by lesser passes while its own check is open, unless one of them fails', () => {
    const bending = found('plate-bending-driven', 'pass', 10, 100, 'most');
    const unknown = answer([open('torsion'), bending], 'strong');
    expect(unknown.word).toBe('Not known');
    expect(unknown.text).toBe('Why torsion is open. Give what torsion wants.');
    const bad = found('plate-bending-driven', 'fail', 300, 100, 'most');
    expect(answer([open('torsion'), bad], 'strong')).toMatchObject({ word: 'No', verdict: 'fail' });
  });

  it('says what was not looked at, and what was not given and counts as nothing, each once', () => {
    const keys = { notGiven: ['driving.runout.rim', 'driven.runout.rim'] };
    const leaning = found('face-runout', 'pass', 0.02, 0.1, 'most', { notGiven: ['driven.runout.face'] });
    const { text } = answer([{ ...centred, ...keys }, leaning, open('register-corner')], 'centred');
    expect(text).toContain('Not given, counted as nothing: driving.runout.rim, driven.runout.rim, driven.runout.face.');
    expect(text).toContain('Not looked at: title of register-corner.');
  });

  it('gives the reason where there is no number to give', () => {
    const missing: Finding = { ...open('register-missing'), verdict: 'caution', why: 'Only the screws centre it.' };
    expect(answer([centred, missing], 'centred')).toMatchObject({
      word: 'Yes, with care',
      text: 'Title of register-missing: Only the screws centre it.',
    });
  });

  it('is left out where no check speaks to it', () => {
    expect(answersOf([], 'mm')).toEqual([]);
    expect(answersOf([strong], 'mm').map(({ question }) => question)).toEqual([
      'Is the metal strong enough?',
      'What is the weakest link?',
      'What would make it better?',
    ]);
  });
});

describe('the weakest link', () => {
  it('is what fails, even where the number has no share: an overlap of holes counts before a fit that is tight', () => {
    const overlap = found('web-between-holes', 'fail', -3.4, 3, 'least');
    const off = found('concentricity', 'caution', 0.14, 0.1, 'most');
    const findings = [off, balanced, tight, strong, overlap];
    expect(answer(findings, 'weakest')).toMatchObject({
      verdict: 'fail',
      word: 'It fails',
      text: 'Title of web-between-holes: -3.4 mm, at least 3 mm.',
    });
    expect(answer(findings, 'better').text).toBe('Cure of web-between-holes.');
  });

  it('is the worst verdict first, then the most used up', () => {
    const off = found('concentricity', 'caution', 0.11, 0.1, 'most');
    const near = found('torsion', 'pass', 99, 100, 'most');
    expect(answer([off, near, tight], 'weakest')).toMatchObject({ verdict: 'caution', word: '110 % used' });
    expect(answer([off, near, tight], 'better').text).toBe('Cure of concentricity.');
    expect(answer([centred, near, tight], 'weakest').word).toBe('99 % used');
  });

  it('is made better by the check itself where it knows how, else by what widens such a margin, with the right key', () => {
    const grip = found('grip-driven', 'pass', 1.3, 1.25, 'least', { improve: 'Thicker screws.' });
    expect(answer([grip], 'better').text).toBe('Thicker screws.');
    const pressed = found('head-pressure-driven', 'pass', 95, 100, 'most');
    expect(answer([pressed], 'better').text).toBe('Hardened washers (adapter.driven.washer: true).');
    const fit = found('register-centres', 'pass', 0.099, 0.1, 'most', { feature: 'driving-register' });
    expect(answer([fit], 'better').text).toContain('(adapter.driving.fit)');
    // What the check has nothing left to advise is said to be done, and nothing general stands in for it.
    const done = found('register-centres', 'pass', 0.099, 0.1, 'most', { improve: '' });
    expect(answer([done], 'better')).toMatchObject({
      word: 'Nothing is left',
      text: expect.stringContaining('done already'),
    });
    // A fit does nothing for a corner or a height.
    const corner = found('register-corner', 'pass', 0.5, 0.49, 'least');
    expect(answer([corner], 'better').text).not.toContain('fit');
  });
});

describe('how much is used up', () => {
  it('is value over limit for what may be at most, limit over value for what must be at least', () => {
    expect(usedUp(found('a', 'pass', 60, 80, 'most'))).toBe(0.75);
    expect(usedUp(found('a', 'fail', 100, 80, 'most'))).toBe(1.25);
    expect(usedUp(found('a', 'pass', 80, 60, 'least'))).toBe(0.75);
    expect(usedUp(found('a', 'fail', 48, 60, 'least'))).toBe(1.25);
    expect(usedUp(found('a', 'pass', 60, 60, 'least'))).toBe(1);
  });

  it('is nothing for an overlap, a limit of zero, or a plain statement', () => {
    expect(usedUp(found('a', 'fail', -1, 3, 'least'))).toBeNull();
    expect(usedUp(found('a', 'pass', 0.1, 0, 'least'))).toBeNull();
    expect(usedUp(open('a'))).toBeNull();
  });
});
