/** How large a wheel has to be where its size is left open: the least outside at which nothing that is known stands against it. mm. */
import { rpmAtTipSpeed } from '../formulas/pulses.ts';
import {
  type ToneWheelSpec,
  type ToothBand,
  type ToothMeasures,
  toneWheelFaults,
  toothMeasures,
  widthRadius,
} from '../parts/tone-wheel.ts';
import { sheetLimit } from '../standards/sheet-cutting.ts';
import { must } from '../standards/table.ts';
import { outsideRange, type WheelInput } from './schema-wheel.ts';
import { sensorNeeds } from './sensor-needs.ts';
import { outlineOf } from './tooth-count.ts';
import { demandVerdict, narrowestCut, phaseSafe, toothDemands } from './tooth-demands.ts';
import { bandOf, type SizedWheel, wordsOf } from './wheel-form.ts';
import { cutInHand, type Judges } from './wheel-height.ts';

/** The wheel with its size. */
export const sizedAs = (wheel: WheelInput, outside: number): SizedWheel => ({ ...wheel, outside });

/** Something inside of the teeth, by the least root diameter that it asks for. */
export interface RootNeed {
  /** What is then so: "the screw heads lie 3 mm below the tooth roots". */
  readonly what: string;
  readonly root: number;
}

/** One thing that sets the size, and the least outside that it asks for: a whole mm, or null where none up to the greatest does. */
export interface OutsideNeed {
  readonly what: string;
  readonly least: number | null;
  /** Whether it is that the teeth can be drawn at all: what stands against that is told by their faults. */
  readonly isDrawing?: boolean;
}

/** A yes or no about the teeth: no below some outside, yes from there on. */
interface ToothNeed {
  readonly what: string;
  readonly isDrawing?: boolean;
  readonly holds: (spec: ToneWheelSpec, sizes: ToothMeasures) => boolean;
}

/** Below this, a difference is rounding and not a fault, mm. */
const rounding = 1e-6;
const mm = (value: number) => `${Number(value.toFixed(2))} mm`;

/** What sensor and cutting service ask of the teeth that a larger wheel can give; what the sensor asks with so much in hand for the cut. */
function toothNeeds(wheel: WheelInput, { sensor, sheet }: Judges, inHand: number): ToothNeed[] {
  const windows = wheel.form === 'windows';
  const words = wordsOf(wheel);
  const found: ToothNeed[] = [];
  const spare = inHand > 0 ? `, with ${mm(inHand)} in hand for the cut` : '';
  /** The teeth as the sensor finds them when the cut takes all it may. */
  const asCut = (sizes: ToothMeasures): ToothMeasures => ({
    ...sizes,
    toothChord: sizes.toothChord - inHand,
    leastValleyChord: sizes.leastValleyChord - inHand,
  });
  const atLeast = (what: string, least: number, size: (sizes: ToothMeasures) => number) =>
    found.push({ what: `${what} ${mm(least)}`, holds: (_, sizes) => size(sizes) >= least - rounding });
  if (sensor) {
    const needs = sensorNeeds(sensor);
    const demanded = [
      ['tooth-width', 'tooth', `the sensor finds ${words.teeth} of`],
      ['valley-width', 'valley', `the sensor finds ${words.valleys} of`],
      ['tooth-pitch', 'pitch', 'the sensor finds a pitch of'],
    ] as const;
    for (const [code, figure, title] of demanded) {
      const need = needs.of(figure);
      if (need === null) continue;
      found.push({
        // A pitch runs from one edge to the next of its kind: the cut moves both the same way.
        what: `${title} ${mm(need.value)}${figure === 'pitch' ? '' : spare}`,
        holds: (spec, sizes) =>
          toothDemands(asCut(sizes), spec, needs).every(
            (demand) => demand.code !== code || demandVerdict(demand) === 'pass',
          ),
      });
    }
    if (sensor.pole !== undefined)
      atLeast(
        `the ${words.teeth}${windows ? ' and windows' : ''} cover the pole${spare === '' ? '' : ` with ${mm(inHand)} in hand for the cut`}, which is`,
        sensor.pole,
        (sizes) => {
          const { toothChord, leastValleyChord } = asCut(sizes);
          return windows ? Math.min(toothChord, leastValleyChord) : toothChord;
        },
      );
    // A larger wheel has a larger pitch, and so brings the channels nearer to a quarter of it: 360 spacing / pitch.
    if (sensor.kind === 'two_channel_hall' && sensor.spacing !== undefined)
      atLeast(
        'the two channels keep their phase, with a pitch of',
        (360 * sensor.spacing) / (90 + phaseSafe),
        ({ pitch }) => pitch,
      );
  }
  const slot = must(sheetLimit('slot', wheel.thickness)).usual;
  atLeast(`${words.teeth} and ${words.valleys} can be cut, none narrower than`, slot, narrowestCut);
  if (windows && sheet !== undefined)
    atLeast('the bars keep the web of the cutting service (sheet.web),', sheet.web * wheel.thickness, (sizes) =>
      Math.min(sizes.toothRootChord, sizes.toothChord),
    );
  found.push({
    what: `the ${words.teeth} can be drawn`,
    isDrawing: true,
    holds: (spec) => toneWheelFaults(spec).length === 0,
  });
  return found;
}

/** A wheel grows by no more than this for the slowest speed: beyond it another sensor is the cure. Common practice. */
const mostForCrawl = 1.5;

/** The slowest speed that must be read, where a wheel not much larger than `start` reads it. */
function crawlNeed(wheel: WheelInput, { sensor }: Judges, start: number): ToothNeed[] {
  const passing = sensor ? sensorNeeds(sensor).of('surfaceSpeed') : null;
  const crawl = sensor?.crawl;
  if (passing === null || crawl === undefined) return [];
  const reads = (band: ToothBand) => rpmAtTipSpeed(2 * widthRadius(band), passing.value) <= crawl + rounding;
  if (!reads(bandOf(sizedAs(wheel, Math.min(outsideRange.most, Math.floor(mostForCrawl * start)))))) return [];
  const where = wordsOf(wheel).tips === 'tips' ? 'tips' : 'windows';
  return [
    { what: `${crawl} rpm (sensor.crawl) is read, which takes ${passing.value} m/s at the ${where}`, holds: reads },
  ];
}

/** Least whole number from `from` up at which a yes or no that only ever turns to yes holds; null where none up to the greatest does. */
function leastWhole(from: number, holds: (outside: number) => boolean): number | null {
  const most = outsideRange.most;
  if (from > most) return null;
  if (holds(from)) return from;
  if (!holds(most)) return null;
  let no = from;
  let yes: number = most;
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

const up = (value: number) => Math.max(outsideRange.least, Math.ceil(value - rounding));

/** What the size of one wheel hangs on; made once, asked for many counts. */
export interface WheelSizing {
  /** Least outside for a count, a whole mm; null where none up to the greatest does. */
  readonly least: (teeth: number) => number | null;
  /** Least outside that clears what lies inside of the teeth, whatever they ask for themselves, a whole mm. */
  readonly start: number;
  /** What sets it, the greatest first; what no outside meets stands before all. */
  readonly needs: (teeth: number) => readonly OutsideNeed[];
}

/**
 * Sizing of a wheel whose height is known. Every need only ever turns from no to yes as the wheel grows with its height kept: widths
 * grow in proportion at the tips, and at the roots faster than that. So the least outside is found by halving.
 * @param wheel with a height and without a root
 * @param roots what lies inside of the teeth
 */
export function wheelSizing(wheel: WheelInput, judges: Judges, roots: readonly RootNeed[]): WheelSizing {
  const band = bandOf(sizedAs(wheel, outsideRange.most));
  const overRoot = band.outside - band.root;
  const inside = roots.map(({ what, root }) => ({ what, least: up(root + overRoot) }));
  const start = Math.max(outsideRange.least, ...inside.map(({ least }) => least));
  const crawl = crawlNeed(wheel, judges, start);
  const asked = (hand: number) => [...toothNeeds(wheel, judges, hand), ...crawl];
  // Where no wheel is large enough to have something in hand, one that just does is better than none.
  const [withHand, bare] = [asked(cutInHand(wheel, judges)), asked(0)];
  const specAt = (teeth: number, outside: number) => outlineOf(sizedAs(wheel, outside), teeth);
  const leastFrom = (from: number, teeth: number, needs: readonly ToothNeed[]) =>
    leastWhole(from, (outside) => {
      const spec = specAt(teeth, outside);
      const sizes = toothMeasures(spec);
      return needs.every(({ holds }) => holds(spec, sizes));
    });
  return {
    start,
    least: (teeth) => leastFrom(start, teeth, withHand) ?? leastFrom(start, teeth, bare),
    needs: (teeth) =>
      [
        ...inside.map(({ what, least }) => ({ what, least: least > outsideRange.most ? null : least })),
        ...(leastFrom(start, teeth, withHand) === null ? bare : withHand).map((need) => ({
          what: need.what,
          ...(need.isDrawing ? { isDrawing: need.isDrawing } : {}),
          least: leastFrom(outsideRange.least, teeth, [need]),
        })),
      ].sort((a, b) => (b.least ?? Number.POSITIVE_INFINITY) - (a.least ?? Number.POSITIVE_INFINITY)),
  };
}

/** What speaks against a wheel of this size that its height can change: who finds no room inside of it, and whose widths are missed. */
export function againstHeight(
  wheel: SizedWheel,
  judges: Judges,
  roots: readonly RootNeed[],
  teeth: number | null,
): Set<string> {
  const { root } = bandOf(wheel);
  const inside = roots.filter((need) => root < need.root - rounding).map(({ what }) => what);
  if (teeth === null) return new Set(inside);
  const spec = outlineOf(wheel, teeth);
  const sizes = toothMeasures(spec);
  const missed = toothNeeds(wheel, judges, 0).filter(({ holds }) => !holds(spec, sizes));
  return new Set([...inside, ...missed.map(({ what }) => what)]);
}
