/** The vibration finder: what was felt, ranked; and a sentence for every slip. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerVibration } from '../../src/measure/answer-vibration.ts';
import type { VibrationTyped } from '../../src/measure/vibration-typed.ts';

type Flags = Omit<VibrationTyped, 'units' | 'instrument' | 'side'>;
const asked = (flags: Flags) => answerVibration({ units: 'mm', instrument: 'caliper', side: 'driving', ...flags });

interface Told {
  readonly suspects: readonly { id: string; word: string; score: number; frequency: number | null }[];
  readonly order: { value: number } | null;
  readonly speed: { value: number; doubt: number } | null;
}

function answer(flags: Flags) {
  const read = asked(flags);
  if (!read.ok) throw new Error(read.why);
  return { ...read.value, told: read.value.result as unknown as Told };
}

const ids = (flags: Flags, word = 'fits') =>
  answer(flags)
    .told.suspects.filter((suspect) => suspect.word === word)
    .map(({ id }) => id);
const slip = (flags: Flags): string => {
  const read = asked(flags);
  return read.ok ? '' : read.why;
};

describe('what was felt', () => {
  // The rules are those of workshop manuals: once a turn is balance, twice is joints, a tyre turns with the wheels, an engine fires half
  // as often as it has cylinders.
  it('once a turn and load or not is balance', () => {
    expect(ids({ felt: '2400 rpm', frequency: '40 Hz', when: 'always' })).toEqual(['balance']);
  });

  it('twice a turn under load is the joints', () => {
    expect(ids({ felt: '1800 rpm', frequency: '60 Hz', when: 'load' })).toEqual(['angle', 'stiffness']);
  });

  it('once a turn only under torque points into the axle', () => {
    expect(ids({ felt: '2400 rpm', frequency: '40 Hz', when: 'load' })).toContain('axle');
    expect(ids({ felt: '2400 rpm', frequency: '40 Hz', when: 'neutral' })).not.toContain('axle');
  });

  it('once a turn of the wheels is a tyre', () => {
    // 90 km/h on 2.05 m is 12.2 Hz.
    expect(ids({ felt: '90 km/h', tyre: '326.3 mm', axle: '3.73', frequency: '12.2', when: 'neutral' })).toEqual([
      'tyre',
    ]);
  });

  it('with the engine is the engine, and standing still proves it', () => {
    const flags: Flags = { felt: '2600 rpm engine', gear: '0.7', cylinders: '6', frequency: '130 Hz' };
    expect(ids({ ...flags, when: 'standing' })).toEqual(['firing']);
    expect(ids({ ...flags, when: 'neutral' })).toEqual([]);
  });

  it('near half the critical speed and fading beyond is that', () => {
    const flags: Flags = { felt: '1750 to 1850 rpm', frequency: '60 Hz', when: 'neutral', higher: 'fades' };
    expect(answer({ ...flags, critical: '3600 rpm' }).told.suspects[0]).toMatchObject({ id: 'critical', word: 'fits' });
    expect(answer({ ...flags, critical: '9000 rpm' }).told.suspects[0]?.id).not.toBe('critical');
  });

  it('stops whoever hunts above 65 % of the critical speed', () => {
    expect(answer({ felt: '2800 rpm', order: '1', critical: '4000 rpm' }).notes[0]).toMatch(/^STOP: 2800 rpm is 70 %/);
    expect(answer({ felt: '2500 rpm', order: '1', critical: '4000 rpm' }).notes[0]).toMatch(/stay below 65 %/);
  });

  it('that shakes equally often is told to be so', () => {
    // Four cylinders in direct drive fire twice a turn, as the joints do.
    const { notes } = answer({ felt: '1800 rpm', frequency: '60', when: 'load', gear: '1', cylinders: '4' });
    expect(notes.join(' ')).toMatch(/joint angles.*firing.*another gear parts engine and shaft/);
  });

  it('without a frequency fits nothing for sure, and tells where each would lie', () => {
    const { told, title, lines } = answer({ felt: '1800 rpm', axle: '4' });
    expect(told.suspects.every(({ word }) => word !== 'fits')).toBe(true);
    expect(title).toMatch(/^Speed alone names no cause/);
    expect(lines.join('\n')).toMatch(/twice a turn of the shaft, 60 Hz/);
    expect(lines.join('\n')).toMatch(/once a turn of the wheels, 7.5 Hz/);
    expect(lines.join('\n')).toMatch(/not known: firing.*--gear/);
  });

  it('by none of the usual causes is said to be so', () => {
    expect(answer({ felt: '1800 rpm', order: '7.3', axle: '4', gear: '1', cylinders: '4' }).title).toMatch(
      /^None of the usual/,
    );
  });

  it('ranks the true cause first or level, whatever the driveline and the readings within their doubt', () => {
    const causes = ['balance', 'angle', 'tyre', 'firing', 'misfire'] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...causes),
        fc.integer({ min: 800, max: 5000 }),
        fc.double({ min: 2.5, max: 6, noNaN: true }),
        fc.double({ min: 0.6, max: 3, noNaN: true }),
        fc.constantFrom(3, 4, 5, 6, 8),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (cause, rpm, axle, gear, cylinders, off) => {
          const perTurn = { balance: 1, angle: 2, tyre: 1 / axle, firing: (gear * cylinders) / 2, misfire: gear / 2 }[
            cause
          ];
          // The meter reads within half of its hertz.
          const hertz = (perTurn * rpm) / 60 + 0.5 * off;
          if (hertz < 1) return;
          const { told } = answer({
            felt: `${rpm} rpm`,
            frequency: `${hertz} Hz`,
            axle: String(axle),
            gear: String(gear),
            cylinders: String(cylinders),
          });
          const own = told.suspects.find(({ id }) => id === cause);
          const best = told.suspects[0]?.score ?? 0;
          expect(own?.score).toBeGreaterThan(0.85);
          expect(best - (own?.score ?? 0)).toBeLessThan(0.15);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('slips', () => {
  const cases: readonly [Flags, RegExp][] = [
    [{}, /^Give --felt/],
    [{ frequency: '60 Hz' }, /^Give --felt/],
    [{ felt: '90 km/h' }, /needs --tyre .* and --axle/],
    [{ felt: '2600 rpm engine' }, /needs --gear/],
    [{ felt: 'fast' }, /--felt/],
    [{ felt: '1900 to 1800 rpm' }, /from its lower to its higher/],
    [{ felt: '1800', frequency: '60', order: '2' }, /one of the two/],
    [{ felt: '1800', frequency: '60 dB' }, /in Hz or rpm/],
    [{ felt: '1800', frequency: '60 +-70 Hz' }, /less than the frequency/],
    [{ felt: '1800', when: 'uphill' }, /--when is one of load, coast/],
    [{ felt: '1800', higher: 'more' }, /--higher is one of/],
    [{ felt: '1800', axle: '400' }, /--axle is 0.2 to 60/],
    [{ order: 'two' }, /--order/],
    [{ felt: '80 km/h', tyre: '5 mm', axle: '3' }, /--tyre is a size/],
  ];
  it.each(cases)('%j', (flags, says) => expect(slip(flags)).toMatch(says));

  it('never throws, whatever is typed', () => {
    const any = fc.option(fc.oneof(fc.string(), fc.constantFrom('1800 rpm', '60 Hz', '90 km/h', '205/65R16', '3.7')), {
      nil: undefined,
    });
    const flags = fc.record({
      felt: any,
      frequency: any,
      order: any,
      tyre: any,
      axle: any,
      gear: any,
      cylinders: any,
      critical: any,
    });
    fc.assert(
      fc.property(flags, (typed) => {
        const read = asked(typed);
        if (!read.ok) expect(read.why).toMatch(/\S.*[.?!]$/s);
      }),
      { numRuns: 300 },
    );
  });
});
