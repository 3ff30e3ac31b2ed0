/** Which thread, as typed: diameter and pitch, or threads per inch, or the length of ten pitches. */
import type { Lookup } from '../standards/table.ts';
import { found, missing } from '../standards/table.ts';
import { parseQuantity } from '../units/quantity.ts';
import type { Answer, Asked } from './answer.ts';
import { flangeBlock } from './flange-block.ts';
import { instrumentDoubt } from './measured.ts';
import { gaugeDoubt, identifyThread, threadTwins } from './thread-id.ts';
import { optional, typedCount, typedLength, typedSize } from './typed.ts';
import { mm, tidy } from './words.ts';

export interface ThreadTyped extends Asked {
  readonly diameter: string;
  readonly pitch?: string | undefined;
  readonly tpi?: string | undefined;
  /** Length over ten pitches. */
  readonly ten?: string | undefined;
  /** True when a tapped hole was read across its crests, not a screw. */
  readonly tapped?: boolean | undefined;
  /** Number of holes, for the section of the job. */
  readonly holes?: string | undefined;
}

export function answerThread(typed: ThreadTyped): Lookup<Answer> {
  const size = typedSize(typed.diameter, 'Diameter', typed);
  if (!size.ok) return size;
  const pitch = pitchOf(typed);
  if (!pitch.ok) return pitch;
  const of = typed.tapped === true ? 'hole' : 'screw';
  const candidates = identifyThread({
    diameter: size.value.value,
    doubt: size.value.doubt,
    of,
    pitch: pitch.value?.size,
    pitchDoubt: pitch.value?.doubt,
  });
  if (!candidates.ok) return candidates;
  const [best, ...others] = candidates.value;
  if (best === undefined) return missing('No thread is tabled here.');
  const twins = threadTwins(best.thread);
  const alsoFits = others.filter(({ fits }) => fits);
  const sure = best.fits && alsoFits.length === 0 && pitch.value !== undefined;
  return found({
    title: best.fits
      ? `${sure ? '' : 'Perhaps '}${best.thread.designation}.`
      : `No tabled thread fits; the nearest is ${best.thread.designation}.`,
    lines: candidates.value.map(({ thread, expected, diameterMiss, pitchMiss, fits }) => {
      const across = `${of === 'screw' ? 'a screw measures' : 'the hole measures'} ${tidy(expected.min)} to ${tidy(expected.max)} mm`;
      const miss = diameterMiss > 0 ? `, read ${mm(diameterMiss)} outside of that` : '';
      const pitchWords =
        pitchMiss === null
          ? ''
          : `; pitch ${tidy(thread.pitch, 4)} mm, ${Math.abs(pitchMiss) < 5e-4 ? 'as read' : `read ${mm(Math.abs(pitchMiss))} ${pitchMiss > 0 ? 'more' : 'less'}`}`;
      return `${fits ? 'fits ' : 'no   '}${thread.designation.padEnd(12)} ${across}${miss}${pitchWords}`;
    }),
    notes: [
      ...twins.map(({ sentence }) => sentence),
      ...(alsoFits.length > 0
        ? [
            `${[best, ...alsoFits].map(({ thread }) => thread.designation).join(' and ')} both fit these readings: measure over ten pitches, or run a known nut on by hand its whole length.`,
          ]
        : []),
      ...(pitch.value === undefined
        ? ['Measure the pitch too: lay the caliper over ten pitches, or use a thread gauge.']
        : []),
      ...(best.thread.memory ? [`${best.thread.designation} rests on memory in the tables.`] : []),
    ],
    result: {
      reading: { diameter: size.value, pitch: pitch.value?.size ?? null, of },
      candidates: candidates.value.map(({ thread, expected, diameterMiss, pitchMiss, fits, distance }) => ({
        thread: thread.designation,
        expected,
        diameterMiss,
        pitchMiss,
        fits,
        distance,
      })),
      twins: twins.map(({ b, diameter, overTen }) => ({ thread: b.designation, diameter, overTen })),
    },
    search: {},
    block: best.fits ? flangeBlock(typed.side, { holes: { thread: best.thread.designation } }) : null,
  });
}

function pitchOf(typed: ThreadTyped): Lookup<{ size: number; doubt: number } | undefined> {
  const given = [typed.pitch, typed.tpi, typed.ten].filter((text) => text !== undefined && text.trim() !== '');
  if (given.length > 1)
    return missing('Give the pitch once: as pitch, as threads per inch, or as the length of ten pitches.');
  const tpi = optional(typed.tpi, (text) => typedCount(text, 'Threads per inch', 4, 80));
  if (!tpi.ok) return tpi;
  if (tpi.value !== undefined) {
    const inch = parseQuantity(`1/${tpi.value} in`, 'length');
    return inch.ok ? found({ size: inch.value, doubt: gaugeDoubt }) : missing(inch.why);
  }
  const ten = optional(typed.ten, (text) => typedLength(text, 'Ten pitches', typed));
  if (!ten.ok) return ten;
  // Two crests by eye, each to about the instrument's doubt: a tenth of both is the pitch's. Common practice.
  if (ten.value !== undefined)
    return found({ size: ten.value / 10, doubt: Math.max(0.01, (4 * instrumentDoubt[typed.instrument]) / 10) });
  const pitch = optional(typed.pitch, (text) => typedLength(text, 'Pitch', typed));
  if (!pitch.ok) return pitch;
  return found(pitch.value === undefined ? undefined : { size: pitch.value, doubt: gaugeDoubt });
}
