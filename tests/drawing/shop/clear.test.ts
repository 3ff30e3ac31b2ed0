/** Every sheet of every shipped job on every paper, both projections: nothing that is read is written or drawn over. */
import { describe, expect, it } from 'vitest';
import { frameOf, shopPaperNames } from '../../../src/drawing/shop/paper-sizes.ts';
import { overlap, textBox } from '../../../src/drawing/text-size.ts';
import { shipped } from '../../presets/shipped.ts';
import { corners, inkIn, laidOut, sheetsOf, texts } from './help.ts';

const cases = shipped.flatMap(({ base, joint }) =>
  shopPaperNames.flatMap((paper) =>
    (['first', 'third'] as const).flatMap((angle) =>
      (['adapter', 'wheel'] as const).flatMap((part) =>
        sheetsOf(laidOut(joint, { paper, angle }), part).map(
          (sheet, i) => [`${base} ${part}, ${paper}, ${angle} angle, sheet ${i + 1}`, paper, sheet] as const,
        ),
      ),
    ),
  ),
);

describe.each(cases)('%s', (_, paper, sheet) => {
  const boxes = texts(sheet).map((shape) => ({ text: shape.text, box: textBox(shape) }));

  it('has no two texts over each other', () => {
    expect(boxes.length).toBeGreaterThan(20);
    const over = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [`${a.text} over ${b.text}`] : [])),
    );
    expect(over).toEqual([]);
  });

  it('has no line of any kind through a text', () => {
    const through = boxes.flatMap(({ text, box }) =>
      inkIn(sheet, box).map((shape) => `${'pen' in shape ? shape.pen : ''} ${shape.kind} through "${text}"`),
    );
    expect(through).toEqual([]);
  });

  it('keeps within its frame', () => {
    const frame = frameOf(paper);
    const out = boxes.filter(
      ({ box }) => box.xMin < frame.xMin || box.xMax > frame.xMax || box.yMin < frame.yMin || box.yMax > frame.yMax,
    );
    expect(out.map(({ text }) => text)).toEqual([]);
    // Only the four marks at the middle of each side reach out of it.
    const beyond = corners(sheet).filter(
      ({ x, y }) => x < frame.xMin - 1e-6 || x > frame.xMax + 1e-6 || y < frame.yMin - 1e-6 || y > frame.yMax + 1e-6,
    );
    expect(beyond).toHaveLength(4);
  });
});
