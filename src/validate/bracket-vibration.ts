/** Is the bracket stiff enough, and does it swing in step with anything that shakes it? */
import { type FrameFrequencies, frameFrequencies } from '../formulas/frame-vibration.ts';
import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import { thickestBracket } from '../job/schema-bracket.ts';
import { toothWords, wordsOf } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged, notAssessed, stated } from './check.ts';
import { mm, plain } from './words.ts';

const source =
  'Euler-Bernoulli beam with Dunkerley\u2019s rule (textbook); 25 % away from what shakes it is common practice, a stricter school asks twice';

/** How far above the highest shaking frequency the bracket must lie: common practice. */
const apart = 1.25;
/** Shocks that parts on an axle or engine see, mm/s2: ten times gravity. Common practice, from memory. */
const shock = 10 * 9806.65;
/** A flat tab longer than this many thicknesses is a reed. Common practice, from memory. */
const longestTab = 20;

type Held = NonNullable<Joint['job']['bracket']>;

const hertz = (f: number): string => `${plain(f, 0)} Hz`;

/** The lowest frequency of the bracket, its foot held at the bolts only. */
export function bracketFrequencies(bracket: Bracket, { sensor }: Held): FrameFrequencies {
  const { material, spec, plane } = bracket;
  const strip = { ...material, width: spec.arm.width, thickness: spec.thickness };
  return frameFrequencies(plane.centreLine, strip, sensor.mass);
}

/**
 * Sheet, to the next half millimetre, that lifts a frequency by a factor: a strip's own grows as its thickness. Where none may be that thick, only
 * the other ways are left.
 */
function stiffer({ spec }: Bracket, factor: number, ...others: readonly string[]): string {
  const thickness = Math.ceil(spec.thickness * factor * 2 - 1e-6) / 2;
  const sheet = mm(thickness, 1);
  return thickness > thickestBracket
    ? `No sheet alone is stiff enough: ${others.join(', or ')}.`
    : `${[`Use sheet of ${sheet} (bracket.thickness: ${sheet})`, ...others].join(', or ')}.`;
}

function shaken(bracket: Bracket, f: number, by: { code: string; title: string; top: number; why: string }): Finding {
  const limit = apart * by.top;
  return judged(
    {
      code: by.code,
      feature: 'bracket-outline',
      title: by.title,
      unit: 'Hz',
      why: `${by.why} A bracket that swings in step breaks and lets the gap flutter.`,
      cure: stiffer(bracket, limit / f, 'bolt it nearer to the sensor', 'use a lighter sensor'),
      source,
    },
    f,
    { limit, sense: 'at least', hard: by.top },
  );
}

function orders(joint: Joint, bracket: Bracket, f: number): Finding[] {
  const speed = joint.job.duty?.speed;
  const missing = { feature: 'bracket-outline', source };
  if (speed === undefined)
    return [
      notAssessed({
        ...missing,
        code: 'bracket-shaft-orders',
        title: 'bracket against the shaft',
        why: `The bracket swings at ${hertz(f)} or more; what shakes it is not known.`,
        missing: 'Give duty.speed.',
      }),
    ];
  const turns = speed / 60;
  const shaft = shaken(bracket, f, {
    code: 'bracket-shaft-orders',
    title: 'lowest frequency of the bracket against twice the shaft speed',
    top: 2 * turns,
    why: `The shaft shakes once a turn by its unbalance and twice a turn by its joints: up to ${hertz(2 * turns)} at ${plain(speed, 0)} rpm.`,
  });
  return [shaft, ...toothRate(joint, f, speed)];
}

/** Teeth tug at a sensor's magnet, faintly: a coil is tugged hardest. The rate sweeps past the bracket as the shaft runs up. */
function toothRate({ wheelSpec, job }: Joint, f: number, speed: number): Finding[] {
  if (!wheelSpec) return [];
  const { teeth } = toothWords(wheelSpec);
  const top = (wheelSpec.teeth * speed) / 60;
  const crossing = (60 * f) / wheelSpec.teeth;
  const crawl = job.sensor?.crawl ?? 0;
  const coil = job.sensor?.kind === undefined || job.sensor.kind === 'coil';
  const pull = coil ? "They tug at a coil's magnet." : 'They hardly tug at a Hall sensor.';
  const statement = {
    code: 'bracket-tooth-rate',
    feature: 'bracket-outline',
    title: `lowest frequency of the bracket against the ${teeth}`,
    unit: 'Hz',
    why: `${capital(teeth)} pass at up to ${hertz(top)}; they are in step with the bracket near ${plain(crossing, 0)} rpm${crossing < crawl ? `, slower than the slowest speed that counts (${plain(crawl, 0)} rpm)` : ''}. ${pull}`,
    cure: `Do not dwell near ${plain(crossing, 0)} rpm, and look at the signal there; a stiffer bracket moves it up (bracket.thickness).`,
    source: `${source}; that the pull of ${teeth} is small is common practice`,
  };
  // Swept through quickly or hardly pulled at: nothing to hold a number against.
  if (f < top && (crossing < crawl || !coil)) return [stated(statement, 'pass')];
  return [judged(statement, f, { limit: top, sense: 'at least', worst: 'caution' })];
}

function firing(bracket: Bracket, { firing: engine }: Held, f: number): Finding {
  if (!engine)
    return notAssessed({
      code: 'bracket-firing',
      feature: 'bracket-outline',
      title: 'bracket against the firing of the engine',
      why: `An engine shakes what is bolted to it once a firing; the bracket swings at ${hertz(f)} or more.`,
      missing: 'Give bracket.firing: { cylinders: 4, speed: 6000 rpm }; without an engine there is nothing to give.',
      source,
    });
  const { cylinders, strokes, speed } = engine;
  const top = (cylinders * speed * 2) / (60 * strokes);
  return shaken(bracket, f, {
    code: 'bracket-firing',
    title: 'lowest frequency of the bracket against the firing of the engine',
    top,
    why: `${cylinders} cylinders fire ${plain((2 * cylinders) / strokes, 1)} times a turn: up to ${hertz(top)} at ${plain(speed, 0)} rpm.`,
  });
}

function stiffness(bracket: Bracket, f: number, teeth: string): Finding[] {
  const sag = shock / (2 * Math.PI * f) ** 2;
  const { gap, spec } = bracket;
  const common = { feature: 'bracket-outline', unit: 'mm' };
  const tab = Math.max(...(spec.bends.length > 0 ? spec.straights.slice(-1) : [])) || 0;
  const held = spec.bends.length > 0 ? tab : (spec.straights[0] ?? 0) - spec.foot.edge;
  return [
    judged(
      {
        ...common,
        code: 'bracket-sag',
        title: 'how far the sensor swings under a shock of ten times gravity',
        why: `More than ${mm(gap.tolerance)} takes the gap out of its limits for a moment; more than ${mm(gap.nominal)} strikes the ${teeth}.`,
        cure: stiffer(bracket, Math.sqrt(sag / gap.tolerance), 'bolt it nearer to the sensor'),
        source: 'g / w^2, textbook; ten times gravity is common practice (from memory)',
      },
      sag,
      { limit: gap.tolerance, sense: 'at most', hard: gap.nominal },
    ),
    judged(
      {
        ...common,
        code: 'bracket-tab',
        title: 'length of the flat tab that carries the sensor',
        why: `A flat tab longer than ${longestTab} thicknesses is a reed.`,
        cure: 'Use thicker sheet (bracket.thickness), or a form with a bend.',
        source: 'common practice (from memory)',
      },
      held,
      { limit: longestTab * spec.thickness, sense: 'at most', worst: 'caution' },
    ),
  ];
}

export const bracketVibration: Check = {
  id: 'bracket-vibration',
  title: 'Bracket: stiffness and frequency',
  source,
  run(joint) {
    const { bracket, job } = joint;
    if (!bracket || !job.bracket) return [];
    const { lowest } = bracketFrequencies(bracket, job.bracket);
    return [
      ...stiffness(bracket, lowest, wordsOf(job.wheel).teeth),
      ...orders(joint, bracket, lowest),
      firing(bracket, job.bracket, lowest),
    ];
  },
};
