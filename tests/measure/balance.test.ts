/** Balancing in place: what is said at the bench, and every slip a sentence. */
import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { subjects } from '../../src/cli/commands/measure-flags.ts';
import { type Arrow, angleOf, apart, arrow, minus, noArrow, plus, sizeOf, times } from '../../src/formulas/arrows.ts';
import { answerBalance } from '../../src/measure/answer-balance.ts';
import { balanceSafety } from '../../src/measure/balance-safety.ts';
import { speedCap } from '../../src/measure/balance-speeds.ts';
import type { BalanceTyped } from '../../src/measure/balance-typed.ts';
import { must } from '../../src/standards/table.ts';
import { folder, run } from '../cli/terminal.ts';
import { program, root } from '../program.ts';
import '../seed.ts';

const answer = (typed: Partial<BalanceTyped>) =>
  must(answerBalance({ units: 'mm', instrument: 'caliper', side: 'driving', ...typed }));
const why = (typed: Partial<BalanceTyped>) => {
  const told = answerBalance({ units: 'mm', instrument: 'caliper', side: 'driving', ...typed });
  return told.ok ? `answered: ${told.value.title}` : told.why;
};

interface Told {
  readonly correction: { readonly mass: number; readonly angle: number; readonly massDoubt: number };
  readonly sense: { readonly used: string; readonly known: string } | null;
  readonly trim: { readonly next: { readonly mass: number; readonly angle: number }; readonly left: number } | null;
  readonly clamps: { readonly angles: readonly [number, number] | null } | null;
}
const numbers = (typed: Partial<BalanceTyped>) => answer(typed).result as unknown as Told;

const angle = fc.double({ min: 0, max: 360, noNaN: true });

describe('the answer with phase', () => {
  const base = { first: '4.2 at 130', trial: '10 g at 90', with: '6.1 at 70' };

  it('tells the weight, where it belongs if the phase counts the other way, and all of the safety text', () => {
    const told = answer({ ...base, sense: undefined });
    // By hand: V1 - V0 is 5.409 at 27.7 degrees; 10 x 4.2 / 5.409 = 7.76 g at 90 + 180 + 130 - 27.7 = 12.3 degrees.
    expect(told.title).toMatch(/^Correction: 7\.8 g at 12 degrees/);
    // Mirrored about 90 degrees.
    expect(told.notes.join()).toMatch(/belongs at 168 degrees/);
    for (const sentence of balanceSafety) expect(told.notes).toContain(sentence);
    expect(answer({ ...base, sense: 'opposite' }).title).toMatch(/7\.8 g at 168 degrees/);
    expect(answer({ ...base, sense: 'opposite' }).notes.join()).not.toMatch(/Assumed: a weight/);
  });

  it('lets runs in a second place tell which way the phase counts', () => {
    fc.assert(
      fc.property(angle, angle, fc.boolean(), (at, lag, isOpposite) => {
        const unbalance = arrow(9, at);
        const typed = (weight: Arrow) => {
          const reading = times(arrow(0.5, lag), plus(unbalance, weight));
          const phase = isOpposite ? 360 - angleOf(reading) : angleOf(reading);
          return `${sizeOf(reading).toFixed(6)} at ${phase.toFixed(4)}`;
        };
        const told = numbers({
          first: typed(noArrow),
          trial: '8 g',
          runs: `0: ${typed(arrow(8, 0))}, 90: ${typed(arrow(8, 90))}`,
          scatter: '1 %',
        });
        expect(told.sense).toEqual({ used: isOpposite ? 'opposite' : 'same', known: 'told' });
        expect(told.correction.mass).toBeCloseTo(9, 3);
        expect(apart(told.correction.angle, at + 180)).toBeLessThan(0.01);
        const contrary = answer({
          first: typed(noArrow),
          trial: '8 g',
          runs: `0: ${typed(arrow(8, 0))}, 90: ${typed(arrow(8, 90))}`,
          scatter: '1 %',
          sense: isOpposite ? 'same' : 'opposite',
        });
        expect(contrary.notes.join()).toMatch(/only if the phase counts the other way/);
      }),
    );
  });

  it('averages repeats as arrows: 10 at 0 and 10 at 90 are 7.07 at 45', () => {
    const told = answer({ first: '10 at 0, 10 at 90', trial: '10 g at 90', with: '30 at 200' });
    expect(told.lines[0]).toMatch(/7\.071 at 45 degrees/);
    // Repeats that differ so much are worth less than the usual 5 %.
    const steady = numbers({ first: '7.071 at 45', trial: '10 g at 90', with: '30 at 200' });
    const shaky = numbers({ first: '10 at 0, 10 at 90', trial: '10 g at 90', with: '30 at 200' });
    expect(shaky.correction.massDoubt).toBeGreaterThan(2 * steady.correction.massDoubt);
  });

  it('tells what to add after the run with the correction on', () => {
    // A rotor of 10 g at 40 degrees, 0.5 for a gram; 8 g fitted at 225: by arrows, what is missing is what cancels both.
    const unbalance = arrow(10, 40);
    const fitted = arrow(8, 225);
    const typed = (weight: Arrow) => {
      const reading = times(arrow(0.5, 77), plus(unbalance, weight));
      return `${sizeOf(reading).toFixed(6)} at ${angleOf(reading).toFixed(4)}`;
    };
    const told = numbers({
      first: typed(noArrow),
      trial: '12 g at 300',
      with: typed(arrow(12, 300)),
      fitted: '8 g at 225',
      check: typed(fitted),
    });
    const missing = minus(noArrow, plus(unbalance, fitted));
    expect(told.trim?.next.mass).toBeCloseTo(sizeOf(missing), 3);
    expect(apart(told.trim?.next.angle ?? 0, angleOf(missing))).toBeLessThan(0.1);
    expect(told.trim?.left).toBeCloseTo(sizeOf(missing) / 10, 4);
  });

  it('says when the shaft got worse, and when nothing is left to do', () => {
    const perfect = answer({ ...base, check: '0.05 at 40', radius: '45', weight: '9 kg', speed: '1500' });
    expect(perfect.lines.join('\n')).toMatch(/next: nothing/);
    // e_per of ISO 21940-11: 9549.3 x 16 / 1500 = 101.86 um, times 9 kg = 917 g.mm; G 40 two and a half times that.
    expect(perfect.lines.join('\n')).toMatch(/G 16 allows 917, G 40 allows 2292/);
    expect(answer({ ...base, scatter: '40 %', check: '5.5 at 130' }).lines.join('\n')).toMatch(
      /shakes more than as found/,
    );
  });

  it('sets two clamps so that they add up to the correction', () => {
    const told = numbers({ ...base, clamp: '14 g' });
    const [a = 0, b = 0] = told.clamps?.angles ?? [];
    const together = plus(arrow(14, a), arrow(14, b));
    expect(sizeOf(minus(together, arrow(told.correction.mass, told.correction.angle)))).toBeLessThan(1e-9);
    expect(answer({ ...base, clamp: '3 g' }).lines.join()).toMatch(/each head must weigh 3\.9 g or more/);
    expect(answer({ ...base, clamp: '30 g, 10 g' }).lines.join()).toMatch(/take two alike/);
    expect(answer({ ...base, clamp: '60 g' }).notes.join()).toMatch(/a degree counts for much/);
  });

  it('cautions when the trial weight changed too little', () => {
    const told = answer({ first: '4.2 at 130', trial: '10 g at 90', with: '4.8 at 120' });
    expect(told.notes.join()).toMatch(/less than 30 % and less than 30 degrees.*Try a heavier one, about/);
  });
});

describe('speeds', () => {
  it('are capped by duty and by 65 % of the critical speed, and risen to in quarters', () => {
    expect(speedCap({ run: 2000, duty: 3000, critical: 4000 })).toMatchObject({
      cap: 2600,
      steps: [500, 1000, 1500, 2000],
    });
    expect(speedCap({ run: 2900, duty: 3000, critical: 4000 }).words[0]).toMatch(/Do not run at 2900 rpm.*2600 rpm/);
    expect(speedCap({ run: 2900, duty: 3000 }).words.join()).toMatch(/critical speed was not given/);
    expect(speedCap({}).words[0]).toMatch(/not assessed/);
    expect(speedCap({ run: 2000, critical: 4100 }).words.join()).toMatch(/half the critical speed/);
  });
});

describe('balancing slips', () => {
  const phase = { first: '4.2 at 130', trial: '10 g at 90', with: '6.1 at 70' };
  const three = { first: '4.2', trial: '10 g', runs: '0: 7.5, 120: 8.7, 240: 1.6' };
  it.each<[Partial<BalanceTyped>, RegExp]>([
    [{}, /Give the runs/],
    [{ trial: '10 g at 90', with: '6.1 at 70' }, /Give --first/],
    [{ first: '4.2 at 130' }, /Give a run with a trial weight/],
    [{ ...phase, trial: undefined }, /Which weight was on/],
    [{ ...phase, trial: '10 g' }, /its angle from the mark/],
    [{ ...phase, first: '-4.2 at 130' }, /not below 0/],
    [{ ...phase, first: '0 at 130' }, /nothing to balance/],
    [{ ...phase, first: '4,2 at 130' }, /a decimal takes a point/],
    [{ ...phase, first: '4.2 at 130 at 2' }, /is no reading/],
    [{ ...phase, first: 'much' }, /is no reading/],
    [{ ...phase, first: '4.2 dB at 130' }, /decibels/],
    [{ ...phase, first: '4.2 mm/s at 130', with: '6 um at 70' }, /all must be in one unit/],
    [{ ...phase, first: '4.2 at 130 mm' }, /unit of a length/],
    [{ ...phase, with: '6.1' }, /Some readings carry a phase/],
    [{ ...phase, trial: '10 kg at 90' }, /Were grams meant/],
    [{ ...phase, trial: '10 N at 90' }, /not a unit of mass/],
    [{ ...phase, trial: '0 g at 90' }, /a mass is above 0/],
    [{ ...phase, with: '4.21 at 130' }, /nothing can be told from it\. Try a heavier one/],
    [{ ...phase, sense: 'left' }, /--sense is same or opposite/],
    [{ ...phase, scatter: '80 %' }, /at most 50 %/],
    [{ ...phase, clamp: '1, 2, 3' }, /each of the two clamps/],
    [{ ...phase, fitted: '8 g at 20' }, /goes with --check/],
    [{ ...phase, check: '1 at 2', fitted: '8 g' }, /give its angle/],
    [{ ...phase, radius: '-5' }, /radius/],
    [{ ...phase, speed: '0' }, /above 0/],
    [{ first: '4.2', trial: '10 g at 0', with: '5' }, /three places; here is 1/],
    [{ ...three, runs: '0: 5.1, 0: 5.2, 120: 6' }, /three places; here are 2\. Two places leave two answers/],
    [{ ...three, trial: undefined }, /How heavy was the weight/],
    [{ ...three, runs: '0: 5,1, 120: 6' }, /"1" is no run/],
    [{ ...three, runs: '0: 4, 120: 4, 240: 4' }, /shook no more than the first/],
    [{ ...three, runs: '0: 9, 120: 9, 240: 9' }, /contradict each other.*circles do not meet|nothing to act on/],
    [{ first: '4.2 at 130', trial: '10 g', runs: '0: 6 at 70, 120: 15 at 20, 240: 1 at 300' }, /contradict each other/],
  ])('%j', (typed, sentence) => {
    expect(why(typed)).toMatch(sentence);
  });
});

describe('measure balance', () => {
  it('answers flags, gives JSON alone, and knows the subject by its flags', async () => {
    const flags = [
      '--first',
      '4.2',
      '--trial',
      '10 g',
      '--runs',
      '0: 7.5, 120: 8.7',
      '--runs',
      '240: 1.6',
      '--clamp',
      '14 g',
    ];
    const { code, out, err } = await run(folder(), ['measure', 'balance', ...flags]);
    expect([code, err]).toEqual([0, '']);
    // The readings of 8 g at 75 degrees and 0.525 for a gram, to two figures.
    expect(out).toMatch(/^Correction: (7\.9|8|8\.1) g at 25[456] degrees/);
    expect(out).toMatch(/Licensed practice and local rules come first\./);
    const json = JSON.parse((await run(folder(), ['measure', ...flags, '--json'])).out) as {
      subject: string;
      notes: string[];
    };
    expect(json.subject).toBe('balance');
    expect(json.notes).toEqual(expect.arrayContaining([...balanceSafety]));
  });

  it('proposes a first trial weight: a tenth of 9 kg at 45 mm and 1500 rpm is 7.9 g', async () => {
    const { out } = await run(folder(), ['measure', '--weight', '9 kg', '--radius', '45', '--speed', '1500']);
    // 0.1 x 9 x 9.80665 / (0.045 x 157.08 squared) = 7.95 g; G 16 allows 917 g.mm, 20.4 g at 45 mm.
    expect(out).toMatch(/^Start with a trial weight of 7\.9 g/);
    expect(out).toMatch(/no heavier than 20\.4 g/);
  });

  it('asks at a terminal', async () => {
    const answers = ['balance', '4.2 at 130', '10 g at 90', '6.1 at 70', '', '14 g', '45 mm', '1500', '3000', ''];
    const { out } = await run(folder(), ['measure'], answers);
    expect(out).toMatch(/^Correction: 7\.8 g at 12 degrees/m);
    expect(out).toMatch(/heads at 86 degrees/);
    const without = ['4.2', '10 g', '0: 7.5, 120: 8.7, 240: 1.6', '', '', '', '', '', ''];
    expect((await run(folder(), ['measure', 'balance'], without)).out).toMatch(/by 4 runs without phase/);
    const first = await run(folder(), ['measure', 'balance'], ['', '9 kg', '45', '1500', '', '']);
    expect(first.out).toMatch(/^Start with a trial weight/m);
  });

  it('refuses a negative reading and a stray flag with a sentence', async () => {
    const negative = await run(folder(), [
      'measure',
      'balance',
      '--first',
      '-4.2',
      '--trial',
      '10 g',
      '--runs',
      '0: 1',
    ]);
    expect([negative.code, negative.out]).toEqual([2, '']);
    expect(negative.err).toMatch(/not below 0/);
    expect((await run(folder(), ['measure', 'balance', '--first', '4', '--pitch', '1'])).err).toMatch(
      /--pitch does not belong to a balance/,
    );
  });

  it('is offered by the shell completion, like every subject', () => {
    // Completion reads the process's own arguments, so it is asked of a real one.
    const words = ['--get-yargs-completions', 'flangewright', 'measure', ''];
    const offered = execFileSync(process.execPath, [program, ...words], { cwd: root });
    expect(offered.toString().split('\n')).toEqual(expect.arrayContaining([...subjects]));
  });
});
