/**
 * Fit rings and plugs: print-only gauges that tell in minutes what a register measures, or what the printer adds to a hole.
 *
 * A spigot is tested with rings, a recess with plugs. Each says the size it stands for; it is modelled with the printer's stated
 * allowance, as the mock-up is: a ring's bore is the size plus the allowance, a plug's outside the size less the allowance. The smallest
 * ring that goes on, or the largest plug that goes in, is the answer.
 *
 * Shallow registers get one gauge a size. A register deep enough for all sizes gets one stepped gauge: a ring whose mouth is the largest
 * size, or a plug that enters with the smallest; it goes on as far as it fits. All stand on the bed without overhangs.
 *
 * Axis z; the gauge stands from z = 0 to its height. Lengths in mm.
 */
import type { Engraving } from '../model/engraving.ts';
import type { Feature, PartMaterial, ProfilePoint, TurnedPart } from '../model/part.ts';
import {
  fitLadder,
  type GaugedRegister,
  type LadderSettings,
  stepHeight,
  takesSteppedGauge,
} from './fit-ring-sizes.ts';
import { freeArcs, layText, type MeasureText } from './lay-text.ts';

export { fitLadder, type GaugedRegister, type LadderSettings } from './fit-ring-sizes.ts';

export interface GaugeMarks {
  /** Start of the parts' ids: "driving". */
  readonly id: string;
  /** Words after the size and FIT CHECK, most important first: the flange's name. */
  readonly words: readonly string[];
  readonly measure: MeasureText;
}

/** One gauge: its part, and the sizes it tests, in the order in which they meet the register. */
export interface FitGauge {
  readonly part: TurnedPart;
  readonly sizes: readonly number[];
}

/** What gauges are printed of: any filament; the density is common practice. */
export const printed: PartMaterial = { id: 'print', name: 'printed plastic', density: 0.00124 };

/** What every gauge says. */
export const gaugeWords = 'FIT CHECK';

/** Wall of a ring: six lines of a usual nozzle, for what is thin prints in minutes. Width of a plug's rim; a plug below `full` has no hole. */
const wall = { ring: 2.4, plug: 4, full: 8 };
/** Height of a ring of one size. A plug of one size stands out of its recess by `grip`, so that it can be pulled again. */
const height = { ring: 4, plug: 4, grip: 1 };
/** Foot of a stepped plug: handle, stop and place for the letters. */
const foot = { height: 4, beyond: 1.5 };
/** Broken edge at each mouth: the first layer spreads, and must not tell the size. */
const edge = 0.4;
const letters = { least: 2.5, most: 6, share: 0.62, depth: 0.5 };

const sizeText = (size: number): string => size.toFixed(2);

function cylinderEdges(from: number, to: number, r: number, out: 1 | -1): ProfilePoint[] {
  return [
    { z: from, r: r - out * edge },
    { z: from + edge, r },
    { z: to - edge, r },
    { z: to, r: r - out * edge },
  ];
}

/** The radii of a stepped gauge as a profile, lowest step first; the two ends are broken. */
function steppedEdges(from: number, radii: readonly number[], out: 1 | -1): ProfilePoint[] {
  return radii.flatMap((r, i): ProfilePoint[] => {
    const [low, high] = [from + i * stepHeight, from + (i + 1) * stepHeight];
    const first: ProfilePoint[] =
      i === 0 && out === -1
        ? [
            { z: low, r: r + edge },
            { z: low + edge, r },
          ]
        : [{ z: low, r }];
    const last: ProfilePoint[] =
      i === radii.length - 1
        ? [
            { z: high - edge, r },
            { z: high, r: r - out * edge },
          ]
        : [{ z: high, r }];
    return [...first, ...last];
  });
}

function rimText(
  texts: readonly string[],
  radius: number,
  low: number,
  high: number,
  measure: MeasureText,
): Engraving[] {
  const tall = Math.max(letters.least, Math.min(letters.most, letters.share * (high - low)));
  return layText(texts, freeArcs([]), radius, tall, letters.least, measure).map((text) => ({
    kind: 'text',
    surface: 'rim',
    radius,
    z: (low + high) / 2,
    depth: letters.depth,
    ...text,
  }));
}

function gauge(
  marks: GaugeMarks,
  sizes: readonly number[],
  gender: 'male' | 'female',
  body: { outer: readonly ProfilePoint[]; hole: readonly ProfilePoint[] | null; engravings: readonly Engraving[] },
): FitGauge {
  const kind = gender === 'male' ? 'ring' : 'plug';
  const feature: Feature = {
    id: 'gauge',
    purpose: gender === 'male' ? 'recess' : 'spigot',
    label: `fit ${kind} ${sizes.map(sizeText).join(', ')}`,
  };
  const bore: Feature = { id: 'bore', purpose: 'bore', label: 'finger hole' };
  const tested = (points: readonly ProfilePoint[], of: string) => points.map((p) => ({ ...p, of }));
  return {
    sizes,
    part: {
      kind: 'turned',
      id: `${marks.id}-${kind}-${sizes.map(sizeText).join('-')}`,
      name: feature.label,
      material: printed,
      outer: tested(body.outer, gender === 'male' ? 'body' : 'gauge'),
      drillings: body.hole
        ? [
            {
              id: 'hole',
              feature: gender === 'male' ? 'gauge' : 'bore',
              x: 0,
              y: 0,
              profile: tested(body.hole, gender === 'male' ? 'gauge' : 'bore'),
            },
          ]
        : [],
      features: [
        { id: 'body', purpose: 'body', label: `fit ${kind}` },
        feature,
        ...(gender === 'female' && body.hole ? [bore] : []),
      ],
      engravings: body.engravings,
    },
  };
}

function ring(size: number, allowance: number, marks: GaugeMarks): FitGauge {
  const r = (size + allowance) / 2;
  const outside = r + wall.ring;
  const texts = [`${sizeText(size)} MM`, gaugeWords, ...marks.words];
  return gauge(marks, [size], 'male', {
    outer: [
      { z: 0, r: outside },
      { z: height.ring, r: outside },
    ],
    hole: cylinderEdges(0, height.ring, r, -1),
    engravings: rimText(texts, outside, 0, height.ring, marks.measure),
  });
}

/** Sizes from the mouth inwards, largest first; the mouth is up, so that each layer rests on a wider one. */
function steppedRing(sizes: readonly number[], allowance: number, marks: GaugeMarks): FitGauge {
  const radii = sizes.map((size) => (size + allowance) / 2).toReversed();
  const outside = Math.max(...radii) + wall.ring;
  const top = radii.length * stepHeight;
  const texts = [`FROM MOUTH ${sizes.map(sizeText).join(' ')} MM`, gaugeWords, ...marks.words];
  return gauge(marks, sizes, 'male', {
    outer: [
      { z: 0, r: outside },
      { z: top, r: outside },
    ],
    hole: steppedEdges(0, radii, -1),
    engravings: rimText(texts, outside, 0, top, marks.measure),
  });
}

function fingerHole(r: number, top: number): ProfilePoint[] | null {
  return r < wall.full
    ? null
    : [
        { z: 0, r: r - wall.plug },
        { z: top, r: r - wall.plug },
      ];
}

function plug(size: number, allowance: number, depth: number, marks: GaugeMarks): FitGauge {
  const r = (size - allowance) / 2;
  const top = Math.max(height.plug, depth + height.grip);
  const hole = fingerHole(r, top);
  const [inner, outer] = [hole ? r - wall.plug : 0, r - edge];
  const radius = (inner + outer) / 2;
  const texts = [`${sizeText(size)} MM`, gaugeWords, ...marks.words];
  const tall = Math.max(letters.least, letters.share * Math.min(wall.plug, outer - inner));
  const laid = layText(texts, freeArcs([]), radius, tall, letters.least, marks.measure);
  return gauge(marks, [size], 'female', {
    outer: cylinderEdges(0, top, r, 1),
    hole,
    engravings: laid.map((text) => ({ kind: 'text', surface: 'top', radius, z: top, depth: letters.depth, ...text })),
  });
}

/** Sizes from the tip, smallest first; the tip is up, and a foot wider than the recess below it carries the letters. */
function steppedPlug(sizes: readonly number[], allowance: number, marks: GaugeMarks): FitGauge {
  const radii = sizes.map((size) => (size - allowance) / 2);
  const outside = Math.max(...radii) + foot.beyond;
  const inOrder = sizes.toReversed();
  const texts = [`FROM TIP ${inOrder.map(sizeText).join(' ')} MM`, gaugeWords, ...marks.words];
  return gauge(marks, inOrder, 'female', {
    outer: [{ z: 0, r: outside }, { z: foot.height, r: outside }, ...steppedEdges(foot.height, radii, 1)],
    hole: fingerHole(Math.min(...radii), foot.height + radii.length * stepHeight),
    engravings: rimText(texts, outside, 0, foot.height, marks.measure),
  });
}

/**
 * The gauges of one register, largest size first. Sizes are on the parts as they are marked; see `fitLadder` for which.
 * @param register what was measured, diameters above 2 mm
 */
export function fitGauges(register: GaugedRegister, settings: LadderSettings, marks: GaugeMarks): FitGauge[] {
  const { sizes } = fitLadder(register, settings);
  const { allowance } = settings;
  if (takesSteppedGauge(register, sizes.length)) {
    return [register.gender === 'male' ? steppedRing(sizes, allowance, marks) : steppedPlug(sizes, allowance, marks)];
  }
  return sizes.map((size) =>
    register.gender === 'male' ? ring(size, allowance, marks) : plug(size, allowance, register.depth, marks),
  );
}
