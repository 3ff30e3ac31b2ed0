/** Bolt circles on the views: diameter, count and start where holes are evenly spaced; nothing where they are not. */
import { describe, expect, it } from 'vitest';
import { ringOf } from '../../../src/drawing/shop/bolt-circles.ts';
import { shopPaperNames } from '../../../src/drawing/shop/paper-sizes.ts';
import { textBox } from '../../../src/drawing/text-size.ts';
import { characteristicsOf } from '../../../src/inspect/characteristics.ts';
import type { Drawing } from '../../../src/model/drawing.ts';
import { placedPositions } from '../../../src/parts/adapter-holes.ts';
import { shipped, shippedJob } from '../../presets/shipped.ts';
import { laidOut, sheetsOf, texts } from './help.ts';

const round = (r: number, degrees: readonly number[]) =>
  degrees.map((a) => ({ x: r * Math.cos((a * Math.PI) / 180), y: r * Math.sin((a * Math.PI) / 180) }));

/** Sizes as a drawing writes them: three decimals of a mm without zeros at the end, four of an inch. */
const shown = (mm: number, units: 'mm' | 'in') =>
  `\u00d8${units === 'in' ? (mm / 25.4).toFixed(4) : String(Number(mm.toFixed(3)))}`;

/** Texts of a sheet that stand in a rectangle hardly larger than they are. */
function framedTexts(sheet: Drawing): string[] {
  const frames = sheet.shapes.flatMap((s) => {
    const [loop] = s.kind === 'path' && s.closed && s.loops.length === 1 ? s.loops : [];
    if (loop?.length !== 4) return [];
    const [xs, ys] = [loop.map(({ x }) => x), loop.map(({ y }) => y)];
    return [{ xMin: Math.min(...xs), xMax: Math.max(...xs), yMin: Math.min(...ys), yMax: Math.max(...ys) }];
  });
  return texts(sheet).flatMap((t) => {
    const box = textBox(t);
    const isIn = frames.some(
      (f) =>
        f.xMin < box.xMin &&
        f.xMax > box.xMax &&
        f.yMin < box.yMin &&
        f.yMax > box.yMax &&
        f.xMax - f.xMin < box.xMax - box.xMin + 3,
    );
    return isIn ? [t.text] : [];
  });
}

describe('a ring of holes', () => {
  it('is told with the angle of its first hole, counter-clockwise seen from the driven side, whichever side lies up', () => {
    expect(ringOf(round(54, [15, 105, 195, 285]), 0)).toMatchObject({ count: 4, first: expect.closeTo(15, 9) });
    expect(ringOf(round(54, [80, 200, 320]), 0)?.first).toBeCloseTo(80, 9);
    expect(ringOf(round(54, [37.5, 97.5, 157.5, 217.5, 277.5, 337.5]), 0)?.first).toBeCloseTo(37.5, 9);
    expect(ringOf(round(40, [22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5]), 0)?.first).toBeCloseTo(22.5, 9);
    expect(ringOf(round(40, [36, 108, 180, 252, 324]), 180)?.first).toBe(0);
    expect(ringOf(round(40, [0, 120, 240]), 1e-9)?.first).toBe(0);
    expect(ringOf(round(40, [64, 244]), 0)).toMatchObject({ count: 2, radius: expect.closeTo(40, 9) });
    // Holes at 80, 200 and 320 turned over like the page of a book: the mark lies on the left, a hole at a is seen at 180 - a.
    const over = [80, 200, 320].map((a) => 180 - a);
    expect(ringOf(round(54, over), 180, -1)).toMatchObject({ first: expect.closeTo(80, 9), way: -1 });
  });

  it('is none where holes stand unevenly, on two circles, off the axis or alone', () => {
    expect(ringOf(round(40, [35, 145, 215, 325]), 0)).toBeNull();
    expect(ringOf([...round(40, [0, 180]), ...round(41, [90, 270])], 0)).toBeNull();
    expect(ringOf(round(40, [0, 60.01, 120, 180, 240, 300]), 0)).toBeNull();
    expect(ringOf(round(40, [10]), 0)).toBeNull();
    expect(
      ringOf(
        round(20, [0, 120, 240]).map(({ x, y }) => ({ x: x + 1, y })),
        0,
      ),
    ).toBeNull();
  });
});

/** Each group of the adapter whose holes are even, with its circle and where its first hole stands counter-clockwise from the mark, from the part itself. */
function evenGroups(joint: (typeof shipped)[number]['joint']) {
  return joint.adapterSpec.groups.flatMap((group) => {
    const places = placedPositions(joint.adapterSpec, group);
    const radii = places.map(({ x, y }) => Math.hypot(x, y));
    const angles = places.map(({ x, y }) => ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360).sort((a, b) => a - b);
    const pitch = 360 / places.length;
    const gaps = angles.map((a, i) => (angles[i + 1] ?? (angles[0] as number) + 360) - a);
    const isEven = gaps.every((gap) => Math.abs(gap - pitch) < 1e-3) && Math.max(...radii) - Math.min(...radii) < 5e-4;
    const turn = angles.some((a) => a > 360 - 1e-3) ? 0 : Math.min(...angles);
    return isEven ? [{ group, count: places.length, circle: 2 * (radii[0] as number), turn }] : [];
  });
}

describe.each(shipped.map((job) => [job.base, job.joint] as const))('%s', (base, joint) => {
  const { units } = joint.job;
  const every = shopPaperNames.flatMap((paper) =>
    (['first', 'third'] as const).map((angle) => ({ at: `${paper}, ${angle} angle`, choice: { paper, angle } })),
  );

  it.each(every)('has each even circle in a frame, its holes counted, and its start, on $at', ({ choice }) => {
    const sheets = sheetsOf(laidOut(joint, choice), 'adapter');
    const framed = sheets.flatMap(framedTexts);
    const said = sheets.flatMap(texts).map(({ text }) => text);
    const even = evenGroups(joint);
    expect(even.length).toBeGreaterThan(0);
    for (const size of new Set(even.map(({ circle }) => shown(circle, units))))
      expect(
        framed.filter((text) => text === size),
        size,
      ).toHaveLength(1);
    for (const { group, count, turn } of even) {
      const { shape } = group;
      const size =
        shape.kind === 'tapped'
          ? shape.thread
          : shown(shape.diameter, units) + (shape.kind === 'dowel' ? ` ${shape.limits.zone}` : '');
      expect(said.filter((text) => text === `${count} x ${size} equally spaced`).length, group.id).toBeGreaterThan(0);
      if (turn > 1e-3) expect(framed).toContain(`${Number(turn.toFixed(3))}\u00b0`);
    }
    const onMark = even.filter(({ turn }) => turn < 1e-3).length;
    expect(said.filter((text) => text === 'one on the index mark')).toHaveLength(onMark);
    // A set that is not even has its places in the table only.
    expect(said.filter((text) => text.endsWith('equally spaced'))).toHaveLength(even.length);
    expect(even.length === joint.adapterSpec.groups.length).toBe(base !== 'river-launch');
  });

  it.skipIf(!joint.wheelSpec?.screwHoles)(
    'has the circle of the wheel without a frame: the cut has no position tolerance',
    () => {
      const holes = joint.wheelSpec?.screwHoles;
      const sheets = sheetsOf(joint, 'wheel');
      const size = shown(2 * Math.hypot(holes?.positions[0]?.x ?? 0, holes?.positions[0]?.y ?? 0), units);
      const said = sheets.flatMap(texts).map(({ text }) => text);
      expect(said.filter((text) => text === size)).toHaveLength(1);
      expect(sheets.flatMap(framedTexts)).not.toContain(size);
      expect(said).toContain(`${holes?.positions.length} x ${shown(holes?.diameter ?? 0, units)} equally spaced`);
    },
  );
});

describe('the run-out of the wheel seat', () => {
  const numbersAt = (base: string) => {
    const { joint } = shippedJob(base);
    const row = characteristicsOf(joint).find(({ id }) => id === 'wheel-seat-runout');
    const [sheet] = sheetsOf(joint, 'adapter');
    const there = texts(sheet as Drawing);
    // The balloon beside a frame: same height, and the value between it and the datum letter.
    const balloon = there.find(({ text }) => text === String(row?.number));
    const beside = there.filter(
      (t) => balloon && Math.abs(t.at.y - balloon.at.y) < 1 && Math.abs(t.at.x - balloon.at.x) < 30,
    );
    return { row, beside: beside.map(({ text }) => text) };
  };

  it.each([
    // A seat on the driven face is turned over with it: what dialling in on the bore holds, 0.02 (common practice).
    ['orchard-truck', 0.02],
    // A seat on the driving face is turned with the driving register: one chucking, 0.01 (common practice).
    ['test-stand', 0.01],
  ])('stands in a frame to datum A beside the number of its line: %s', (base, limit) => {
    const { row, beside } = numbersAt(base);
    expect(row).toMatchObject({ part: 'adapter', lower: 0, upper: limit, gauge: 'dial indicator' });
    expect(beside).toEqual(expect.arrayContaining([String(limit), 'A']));
  });

  it('is none where no wheel sits on the adapter', () => {
    for (const base of ['kart', 'river-launch']) expect(numbersAt(base).row).toBeUndefined();
  });
});
