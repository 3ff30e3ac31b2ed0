/** Every picture of every shipped job: nothing that is read is written or drawn over. */
import { describe, expect, it } from 'vitest';
import { overlap, textBox } from '../../src/drawing/text-size.ts';
import type { Point } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { shipped } from '../presets/shipped.ts';

/** Whether a stretch passes through a box: it does when some of it lies within both of the box's spans. */
function runsThrough(a: Point, b: Point, box: ReturnType<typeof textBox>): boolean {
  let [from, to] = [0, 1];
  for (const [p, q, low, high] of [
    [a.x, b.x, box.xMin, box.xMax],
    [a.y, b.y, box.yMin, box.yMax],
  ] as const) {
    if (p === q) {
      if (p <= low || p >= high) return false;
      continue;
    }
    const [t0, t1] = [(low - p) / (q - p), (high - p) / (q - p)].sort((s, t) => s - t) as [number, number];
    from = Math.max(from, t0);
    to = Math.min(to, t1);
  }
  return to - from > 1e-9;
}

const all = shipped.flatMap(({ base, joint }) => pictures(joint).map((p) => [`${base} ${p.name}`, p] as const));

describe.each(all)('%s', (_, { name, drawing }) => {
  const texts = drawing.shapes.flatMap((s) => (s.kind === 'text' ? [{ text: s.text, box: textBox(s) }] : []));

  it('has no two texts over each other', () => {
    texts.forEach((a, i) => {
      for (const b of texts.slice(i + 1)) expect(overlap(a.box, b.box), `${a.text} over ${b.text}`).toBe(false);
    });
  });

  it('has no leader through a text', () => {
    const leaders = drawing.shapes.flatMap((s) => (s.kind === 'line' && s.pen === 'dimension' ? [s] : []));
    // The line of shafts names its parts where they lie, chains and balance in lines below each other: they have no leaders.
    if (!/^(shaft-line|chain-.*|balance)$/.test(name)) expect(leaders.length).toBeGreaterThan(5);
    for (const { from, to } of leaders)
      for (const { text, box } of texts)
        expect(runsThrough(from, to, box), `(${from.x}, ${from.y}) to (${to.x}, ${to.y}) through ${text}`).toBe(false);
  });

  it('has no two leaders across each other', () => {
    const side = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    // Leaders are the lines that start at a dot.
    const dots = drawing.shapes.flatMap((s) => (s.kind === 'circle' && s.fill === 'paper' ? [s.centre] : []));
    const leaders = drawing.shapes.flatMap((s) =>
      s.kind === 'line' && s.pen === 'dimension' && dots.some((d) => d.x === s.from.x && d.y === s.from.y) ? [s] : [],
    );
    expect(leaders.length).toBe(dots.length);
    leaders.forEach((a, i) => {
      for (const b of leaders.slice(i + 1))
        expect(
          side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < 0 &&
            side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < 0,
          `(${a.from.x}, ${a.from.y}) across (${b.from.x}, ${b.from.y})`,
        ).toBe(false);
    });
  });
});
