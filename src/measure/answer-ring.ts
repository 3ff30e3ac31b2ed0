/**
 * What a printed fit ring or plug said: a size between two steps for the job, or, beside a size that is trusted, what the printer
 * really prints.
 *
 * A ring marked S that goes on while the next smaller one does not: the spigot lies between S - step and S. A plug marked S that goes in
 * while the next larger one does not: the recess lies between S and S + step. Source: geometry. One answer cannot tell both the
 * flange's size and the printer's error, so either the printer or a size must be trusted.
 */
import type { Lookup } from '../standards/table.ts';
import { andThen, found, missing } from '../standards/table.ts';
import { type Answer, type Asked, told } from './answer.ts';
import { optional, typedLength, typedSize } from './typed.ts';
import { mm } from './words.ts';

/** Which gauge gave the answer: a ring goes over a spigot, a plug into a recess. */
export type Gauge = 'ring' | 'plug';

/**
 * Size of the register by a gauge, mm: the middle of the step that the answer leaves, and half a step of doubt.
 * @param marked the smallest ring that went on, or the largest plug that went in, > 0
 * @param step from one marked size to the next, > 0
 */
export function sizeByGauge(gauge: Gauge, marked: number, step: number): { value: number; doubt: number } {
  return { value: gauge === 'ring' ? marked - step / 2 : marked + step / 2, doubt: step / 2 };
}

/**
 * The printer's allowance on register diameters that would have made the gauge tell the trusted size, mm.
 * @param allowance `print.registers` that the gauge was made with
 */
export function learnedAllowance(
  gauge: Gauge,
  told: number,
  trusted: number,
  allowance: number,
): { value: number; printedSmaller: number } {
  // A ring that seems to tell too large a size was printed too small by as much; a plug that does was printed too small as well.
  const off = told - trusted;
  return gauge === 'ring'
    ? { value: allowance + off, printedSmaller: off }
    : { value: allowance - off, printedSmaller: off };
}

export interface RingTyped extends Asked {
  /** Marked size of the smallest ring that went on, or of the largest plug that went in. One of the two. */
  readonly ring?: string | undefined;
  readonly plug?: string | undefined;
  readonly step?: string | undefined;
  /** A size that is trusted more than the printer: a micrometer's. */
  readonly trusted?: string | undefined;
  readonly allowance?: string | undefined;
}

/** Two decimals without noise, as a job is written. */
const tidy = (value: number) => String(Math.round(value * 1000) / 1000);

export function answerRing(typed: RingTyped): Lookup<Answer> {
  if ((typed.ring === undefined) === (typed.plug === undefined))
    return missing('Give --ring (the smallest that went on) or --plug (the largest that went in), one of the two.');
  const gauge: Gauge = typed.ring === undefined ? 'plug' : 'ring';
  const text = typed.ring ?? typed.plug ?? '';
  return andThen(typedLength(text, gauge === 'ring' ? 'Ring' : 'Plug', typed), (marked) =>
    andThen(typedLength(typed.step ?? '0.1 mm', 'Step', typed), (step) =>
      andThen(typedLength(typed.allowance ?? '0.3 mm', 'Allowance', typed), (allowance) =>
        andThen(
          optional(typed.trusted, (one) => typedSize(one, 'Trusted size', typed)),
          (trusted): Lookup<Answer> => {
            if (!(marked > 0)) return missing(`A marked size is above 0; got ${mm(marked)}.`);
            if (!(step > 0 && step <= 2)) return missing(`A step is above 0 and at most 2 mm; got ${mm(step)}.`);
            const size = sizeByGauge(gauge, marked, step);
            const gender = gauge === 'ring' ? 'male' : 'female';
            const which =
              gauge === 'ring' ? 'the next smaller ring did not go on' : 'the next larger plug did not go in';
            if (trusted === undefined) {
              return found({
                title: `Register by ${gauge}: ${told(size, typed)}.`,
                lines: [`marked ${mm(marked)}, and ${which} (step ${mm(step)})`],
                notes: [
                  'This trusts the printer. If a micrometer size is at hand, give it as --trusted and learn the printer instead.',
                ],
                result: { gauge, gender, size },
                search: { register: size.value },
                block: [
                  `${typed.side}:`,
                  '  register:',
                  `    gender: ${gender}`,
                  `    diameter: { value: ${tidy(size.value)}, doubt: ${tidy(size.doubt)}, proven: true }`,
                  '',
                ].join('\n'),
              });
            }
            if (Math.abs(size.value - trusted.value) > 2)
              return missing(
                `The ${gauge} tells ${mm(size.value)} and the trusted size is ${mm(trusted.value)}: more than a printer can be off. Was a radius typed, or another gauge's mark?`,
              );
            const learned = learnedAllowance(gauge, size.value, trusted.value, allowance);
            const way = learned.printedSmaller >= 0 ? 'small' : 'large';
            return found({
              title: `Printer's allowance on registers: ${mm(learned.value)} on the diameter, good to ${mm(size.doubt)}.`,
              lines: [
                `the ${gauge} told ${mm(size.value)}, the trusted size is ${mm(trusted.value)}: it was printed ${mm(Math.abs(learned.printedSmaller))} too ${way} beyond the ${mm(allowance)} allowed`,
              ],
              notes: [
                'It holds for this printer, this material and this size of ring. Print the gauges again to see it settle.',
              ],
              result: { gauge, allowance: learned.value, doubt: size.doubt },
              search: {},
              block: ['print:', `  registers: ${tidy(learned.value)} mm`, ''].join('\n'),
            });
          },
        ),
      ),
    ),
  );
}
