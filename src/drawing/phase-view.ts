/**
 * A picture to mark both flanges by: the driving flange above, the driven one below it as it comes to stand when the joint is bolted
 * up the best way round, so that both match marks stand one above the other. Both are seen from the driven side, looking along -z: the driving
 * flange's own face, the driven flange's back. Angles from the adapter's index mark, which points to the right. Lengths in mm; not a drawing to
 * measure from.
 */
import type { Drawing, Point, Shape } from '../model/drawing.ts';
import { atan2, cos, sin } from '../units/trig.ts';
import { withinTurn } from '../units/turn.ts';
import { type Caption, drawCaptions, shortLines } from './captions.ts';
import { arrowHead, centreCross } from './dimension.ts';
import { frame } from './frame.ts';
import { boltCircle } from './spacing-text.ts';

/** One flange, turned as it stands in the joint. */
export interface FlangeToPhase {
  readonly name: string;
  readonly outside: number;
  /** Where each hole stands, hole 1 first. */
  readonly holes: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
  /** Where its rim stands farthest out, degrees, how far its middle is off, mm, and where that was read looking at the flange's own face. */
  readonly rim: { readonly high: number; readonly size: number; readonly own: number };
  /** Where its face stands highest; null when its face was not read. */
  readonly faceHigh: number | null;
}

export interface PhaseViewInput {
  readonly id: string;
  readonly driving: FlangeToPhase;
  readonly driven: FlangeToPhase;
  /** Turns against what was chosen, degrees: the adapter on the driving flange, the driven flange on the adapter. */
  readonly turn: { readonly driving: number; readonly driven: number };
  /** How far off centre the driven shaft runs, mm: as chosen, and as drawn here; and what the readings leave open. */
  readonly before: number;
  readonly after: number;
  readonly doubt: number;
  /** How many ways round there are, and whether they differ by more than the readings leave in doubt. */
  readonly ways: number;
  readonly matters: boolean;
}

const polar = (centre: Point, r: number, degrees: number): Point => ({
  x: centre.x + r * cos((degrees * Math.PI) / 180),
  y: centre.y + r * sin((degrees * Math.PI) / 180),
});
/** An angle to a tenth of a degree, as fine as a rim can be marked; a whole turn is none. */
const shown = (degrees: number): string => `${(Math.round(withinTurn(degrees) * 10) % 3600) / 10}\u00b0`;

interface Panel {
  readonly flange: FlangeToPhase;
  readonly side: 'driving' | 'driven';
  readonly centre: Point;
  /** Where both flanges are marked. */
  readonly match: number;
  readonly size: number;
}

/** How far outside the rim the arrows at high spots start, in letter heights. */
const rimReach = 2.2;
const faceReach = 3.6;

/** An arrow from outside that points at the rim. */
function pointer({ centre, flange, size }: Panel, degrees: number, reach: number): Shape[] {
  const rim = flange.outside / 2;
  const tip = polar(centre, rim + 0.3 * size, degrees);
  return [
    { kind: 'line', pen: 'thin', from: polar(centre, rim + reach * size, degrees), to: tip },
    arrowHead(tip, degrees + 180, size),
  ];
}

/** A hole with its number in it. */
function numberedHole({ centre, size }: Panel, hole: FlangeToPhase['holes'][number], number: number): Shape[] {
  const at = { x: centre.x + hole.x, y: centre.y + hole.y };
  const r = hole.diameter / 2;
  const cap = Math.max(0.5 * size, Math.min(size, 0.8 * r));
  return [
    { kind: 'circle', pen: 'outline', fill: 'void', centre: at, r },
    {
      kind: 'text',
      at: { x: at.x, y: at.y - cap / 2 },
      text: String(number),
      size: cap,
      align: 'middle',
      angle: 0,
      bold: true,
    },
  ];
}

function panelShapes(panel: Panel): Shape[] {
  const { flange, centre, size, match } = panel;
  const rim = flange.outside / 2;
  const on = boltCircle(flange.holes);
  return [
    ...centreCross(centre, rim + 1.2 * size),
    ...(on === null ? [] : [{ kind: 'circle', pen: 'centre', fill: 'none', centre, r: on / 2 } satisfies Shape]),
    { kind: 'circle', pen: 'outline', fill: 'none', centre, r: rim },
    ...flange.holes.flatMap((hole, i) => numberedHole(panel, hole, i + 1)),
    { kind: 'line', pen: 'mark', from: polar(centre, rim - 1.1 * size, match), to: polar(centre, rim, match) },
    { kind: 'circle', pen: 'outline', fill: 'screw', centre: polar(centre, rim, flange.rim.high), r: 0.5 * size },
    ...pointer(panel, flange.rim.high, rimReach),
    ...(flange.faceHigh === null ? [] : pointer(panel, flange.faceHigh, faceReach)),
  ];
}

/** Labels of a panel, and the directions in which they lie. */
function captionsOf({ flange, side, centre, size, match }: Panel): { at: number; caption: Caption }[] {
  const rim = flange.outside / 2;
  const label = (at: number, out: number, ...lines: string[]) => ({
    at,
    caption: { lines, anchors: [polar(centre, rim + out * size, at)] },
  });
  const { high, size: off, own } = flange.rim;
  const comes = side === 'driven' ? 'at its hole 1' : "where the driven flange's hole 1 comes";
  return [
    label(
      high,
      rimReach,
      `${side} high spot ${shown(high)}`,
      `rim, ${off.toFixed(3)} off centre`,
      `${shown(own)} on its own face`,
    ),
    ...(flange.faceHigh === null ? [] : [label(flange.faceHigh, faceReach, `face high at ${shown(flange.faceHigh)}`)]),
    label(match, 0, `match mark ${shown(match)}`, ...shortLines(comes, 22)),
    ...(side === 'driving' ? [label(0, 0, `index mark ${shown(0)}`, 'of the adapter')] : []),
  ];
}

/** Labels in a column on each side, each on the side on which its mark lies. */
function labels(panel: Panel): Shape[] {
  const { centre, flange, size } = panel;
  const rim = flange.outside / 2;
  const out = rim + 7 * size;
  const all = captionsOf(panel);
  const column = (side: 'left' | 'right'): Shape[] => {
    const own = all.filter(({ at }) => cos((at * Math.PI) / 180) < 0 === (side === 'left'));
    if (own.length === 0) return [];
    return drawCaptions(
      own.map(({ caption }) => caption),
      {
        x: centre.x + (side === 'left' ? -out : out),
        side,
        yMin: centre.y - rim,
        yMax: centre.y + rim,
        size,
        obstacles: [],
      },
    );
  };
  return [...column('left'), ...column('right')];
}

const mm = (value: number): string => `${value.toFixed(3)} mm`;

/** What to do, and what it brings. */
export function phaseWords({ turn, before, after, doubt, ways, matters }: PhaseViewInput): string[] {
  const parts = [
    ...(withinTurn(turn.driving) === 0 ? [] : [`the adapter ${shown(turn.driving)} on the driving flange`]),
    ...(withinTurn(turn.driven) === 0 ? [] : [`the driven flange ${shown(turn.driven)} on the adapter`]),
  ];
  const left = `The readings leave ${mm(doubt)} in doubt`;
  if (!matters) {
    return [
      `Bolt it up as it is, or any other way round: it makes no difference that can be told.`,
      `${left}, and the ${ways} ways round differ by less.`,
    ];
  }
  const same = `Leave it as it is bolted up: ${mm(after)} off centre, and none of ${ways} ways round is better by more than can be told.`;
  const turned = `Turn ${parts.join(' and ')}, counter-clockwise: ${mm(before)} off centre becomes ${mm(after)}, the best of ${ways} ways round.`;
  return [
    parts.length === 0 ? same : turned,
    `${left}. Rims cancel with their high spots together, faces with theirs opposite.`,
  ];
}

/** Draws both flanges with their high spots and the match marks. */
export function phaseView(input: PhaseViewInput): Drawing {
  const { driving, driven, turn, id } = input;
  const widest = Math.max(driving.outside, driven.outside);
  const size = Math.max(1, widest / 32);
  const [first] = driven.holes;
  const match = first ? (atan2(first.y, first.x) * 180) / Math.PI : 0;
  const step = widest + 12 * size;
  const panels: Panel[] = [
    { flange: driving, side: 'driving', centre: { x: 0, y: 0 }, match, size },
    { flange: driven, side: 'driven', centre: { x: 0, y: -step }, match, size },
  ];
  const words = phaseWords(input);
  const line = (text: string, y: number, bold: boolean): Shape => ({
    kind: 'text',
    at: { x: 0, y },
    text,
    size: bold ? 1.1 * size : 0.95 * size,
    align: 'middle',
    angle: 0,
    bold,
  });
  const isTurned = withinTurn(turn.driving) !== 0 || withinTurn(turn.driven) !== 0;
  const titles = [
    'driving flange, its face',
    `driven flange, its back, ${isTurned ? 'bolted up the best way' : 'as it is bolted up'}`,
  ];
  const under = (y: number): number => y - widest / 2 - 6.5 * size;
  const last = under(-step);
  const said = words.flatMap((text, i) => shortLines(text, 72).map((part) => ({ part, bold: i === 0 })));
  return frame(
    {
      id,
      title: 'bolt-up position',
      description: `Both flanges seen from the driven side, with their high spots and match marks; angles counter-clockwise from the adapter's index mark. ${words.join(' ')}`,
    },
    [
      ...panels.flatMap(panelShapes),
      ...panels.flatMap((panel) => labels(panel)),
      ...panels.map(({ centre }, i) => line(titles[i] as string, under(centre.y), true)),
      line(
        'both seen from the driven side; angles counter-clockwise from the index mark, sizes in mm',
        last - 2 * size,
        false,
      ),
      ...said.map(({ part, bold }, i) => line(part, last - (5 + 2 * i) * size, bold)),
    ],
    size,
  );
}
