/** Key numbers of the signal: how fast the teeth come. */
import { toothWords } from '../job/wheel-form.ts';
import { countedBy } from '../job/wheel-mark.ts';
import { type JointWithSpeeds, signalSpeeds, speedRange } from '../rotor/signal-speeds.ts';
import type { KeyNumber } from './key-numbers.ts';

const short = (value: number): string => String(Number(value.toPrecision(4)));

/** Frequency at crawl and at top speed; a thousand turns a minute where no speed is given. Empty without a wheel. */
export function signalLines(joint: JointWithSpeeds): KeyNumber[] {
  const speeds = signalSpeeds(joint);
  const [crawl, top] = [speeds[0], speeds.at(-1)];
  if (!crawl || !top || !joint.wheelSpec) return [];
  const range = speedRange(joint);
  const { teeth: things } = toothWords(joint.wheelSpec);
  const left = countedBy(joint.wheelSpec);
  const slow = range.isCrawlGiven ? `${short(crawl.hertz)} Hz at ${short(crawl.rpm)} rpm (crawl); ` : '';
  const note = range.isTopGiven
    ? `${slow}${things} a second: ${things} x rpm / 60${left}`
    : `${slow}give duty.speed for the top speed${left}`;
  return [{ label: 'Signal', value: `${short(top.hertz)} Hz at ${short(top.rpm)} rpm`, note }];
}
