/** The mark of a position on the job's wheel: its keys, and what it is called. */
import { markOf, pulseCount, type ToneWheelSpec, type ToothPlaces } from '../parts/tone-wheel.ts';
import type { WheelInput } from './schema-wheel.ts';
import { type ToothWords, toothWords } from './wheel-form.ts';

/** The keys of the mark, those that are not used left out. */
export const marksOf = ({ missing, wide = 0, extra = 0 }: Pick<WheelInput, 'missing' | 'wide' | 'extra'>) => ({
  missing,
  ...(wide > 0 ? { wide } : {}),
  ...(extra > 0 ? { extra } : {}),
});

/** Places and pulses of a turn, for a note: empty where they are alike. */
export function countedBy(spec: ToothPlaces): string {
  const pulses = pulseCount(spec);
  return pulses === spec.teeth ? '' : `; counted by its ${spec.teeth} places, ${pulses} pulses come a turn`;
}

/** "a gap of 2", "a wide tooth over 3 places", "an extra tooth"; empty where all teeth are alike. */
export function markNoun(spec: Pick<ToneWheelSpec, 'missing' | 'wide' | 'extra' | 'rim'>): string {
  const mark = markOf(spec);
  const { tooth } = toothWords(spec);
  if (!mark) return '';
  if (mark.kind === 'missing') return `a gap of ${mark.count}`;
  return mark.kind === 'wide' ? `a wide ${tooth} over ${mark.count + 1} places` : `an extra ${tooth}`;
}

/** What the mark does to the times, as sentences that follow another; empty without one. `ratios`: its periods over the mean one. */
export function markPeriods(
  mark: ReturnType<typeof markOf>,
  { tooth, teeth }: Pick<ToothWords, 'tooth' | 'teeth'>,
  ratios: readonly number[],
): string {
  if (!mark || ratios.length === 0) return '';
  const of = ratios.map((ratio) => ratio.toFixed(2));
  if (mark.kind === 'missing')
    return `the gap of the missing ${teeth} is ${Math.max(...ratios).toFixed(2)} periods long`;
  const what = mark.kind === 'wide' ? `the wide ${tooth}` : `the extra ${tooth}`;
  if (of.length === 1) return `${what} makes one period ${of[0]} times as long as the others`;
  return `${what} makes ${of.length} periods, ${of.slice(0, -1).join(', ')} and ${of.at(-1)} times as long as the others`;
}
