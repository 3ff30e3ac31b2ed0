/** Mesh of a printed gap card: a stair drawn out across, with words cut into its grip. */
import type { Mesh } from '../model/mesh.ts';
import type { SheetPart } from '../model/sheet.ts';
import { widened } from './engrave.ts';
import { meshSheet } from './sheet-mesh.ts';
import { strokeText } from './stroke-text.ts';

/** A card's side view (x, z) counter-clockwise, its width along y, and the words of its grip. mm */
export interface CardShape {
  readonly corners: readonly (readonly [number, number])[];
  readonly width: number;
  readonly grip: { readonly x: number; readonly top: number; readonly length: number };
  readonly words: readonly string[];
}

/** Depth of the letters, mm, and the share of a line's height that they take. */
const depth = 0.5;
const letterShare = 0.62;
/** How far the letters' tool starts above the grip, mm. */
const clear = 0.2;

/** The card without its words: closed, foot on z = 0, y from 0 to the width. */
export function cardBody({ corners, width }: Pick<CardShape, 'corners' | 'width'>): Mesh {
  const side: SheetPart = {
    kind: 'sheet',
    id: 'gap-card',
    name: 'gap card',
    material: { id: '', name: '', density: 1 },
    thickness: width,
    outside: { kind: 'path', feature: 'gap-card', vertices: corners.map(([x, y]) => ({ x, y, bulge: 0 })) },
    holes: [],
    features: [],
    engravings: [],
  };
  const { positions, triangles } = meshSheet(side);
  // Turned a quarter about x: what was up in the side view is up on the bed.
  const turned = Float64Array.from(positions, (_, i) => {
    const k = i - (i % 3);
    if (i % 3 === 0) return positions[k] as number;
    return i % 3 === 1 ? width - (positions[k + 2] as number) : (positions[k + 1] as number);
  });
  return { positions: turned, triangles };
}

/** The card with its words, lines spread over the grip. Closed; single precision. */
export async function meshGapCard(card: CardShape): Promise<Mesh> {
  const { width, grip, words } = card;
  const pitch = width / words.length;
  const lines = words.map((text, i) => {
    const usual = letterShare * pitch;
    const widest = strokeText(text, usual).width;
    const height = usual * Math.min(1, (0.92 * grip.length) / widest);
    return { text: strokeText(text, height), y: width - (i + 0.5) * pitch };
  });
  const { cutPrisms } = await import('./manifold.ts');
  return cutPrisms(
    cardBody(card),
    lines.map(({ text, y }) => ({
      outlines: text.strokes.flatMap((stroke) => widened(stroke, text.pen / 2)),
      from: -depth,
      to: clear,
      longestEdge: Infinity,
      place: (u: number, v: number, w: number): [number, number, number] => [grip.x + u, y + v, grip.top + w],
    })),
  );
}
