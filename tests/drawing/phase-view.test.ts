/** The picture to mark both flanges by: it shows what it was told, and nothing that is read is written over. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FlangeToPhase, type PhaseViewInput, phaseView, phaseWords } from '../../src/drawing/phase-view.ts';
import { overlap, passesThrough, textBox } from '../../src/drawing/text-size.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { ring } from '../report/fixture.ts';
import { judge, type Patch } from '../validate/help.ts';

const flange = (
  count: number,
  circle: number,
  first: number,
  high: number,
  faceHigh: number | null,
): FlangeToPhase => ({
  name: 'flange',
  outside: circle + 26,
  holes: ring(count, circle, first).map((at) => ({ ...at, diameter: 9 })),
  rim: { high, size: 0.05 },
  faceHigh,
});
const input: PhaseViewInput = {
  id: 'phasing',
  driving: flange(6, 84, 0, 127, 9.5),
  driven: flange(4, 108, 195, 115, null),
  index: 0,
  turn: { driving: 0, driven: 90 },
  before: 0.0871,
  after: 0.0342,
  doubt: 0.018,
  ways: 12,
};

const textsOf = (d: Drawing) => d.shapes.flatMap((s) => (s.kind === 'text' ? [{ text: s.text, box: textBox(s) }] : []));

function expectReadable(d: Drawing): void {
  const texts = textsOf(d);
  const leaders = d.shapes.flatMap((s) => (s.kind === 'line' && s.pen === 'dimension' ? [s] : []));
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) expect(overlap(a.box, b.box), `${a.text} over ${b.text}`).toBe(false);
    for (const { from, to } of leaders)
      expect(passesThrough(from, to, a.box), `a leader through ${a.text}`).toBe(false);
    expect(a.box.xMin).toBeGreaterThanOrEqual(d.box.xMin);
    expect(a.box.xMax).toBeLessThanOrEqual(d.box.xMax);
    expect(a.box.yMin).toBeGreaterThanOrEqual(d.box.yMin);
  });
}

describe('phaseView', () => {
  it('shows both high spots, both match marks, every hole by its number, and what the turn brings', () => {
    const words = textsOf(phaseView(input)).map(({ text }) => text);
    for (const text of [
      'driving high spot 127\u00b0',
      'driven high spot 115\u00b0',
      'face high at 9.5\u00b0',
      'index mark 0\u00b0',
    ])
      expect(words).toContain(text);
    expect(words.filter((text) => text === 'match mark 195\u00b0')).toHaveLength(2);
    expect(words.filter((text) => /^\d+$/.test(text))).toEqual(['1', '2', '3', '4', '5', '6', '1', '2', '3', '4']);
    const said = words.join(' ');
    expect(said).toContain('Turn the driven flange 90\u00b0 on the adapter: 0.087 mm off centre becomes 0.034 mm');
    expect(said).toContain('the best of 12 ways round.');
  });

  it('puts both match marks at one angle, at hole 1 of the driven flange', () => {
    const marks = phaseView(input).shapes.flatMap((s) => (s.kind === 'line' && s.pen === 'mark' ? [s] : []));
    expect(marks).toHaveLength(2);
    for (const { from, to } of marks)
      expect((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI).toBeCloseTo(195 - 360, 9);
  });

  it('says when it is bolted up the best way, and when the readings do not tell', () => {
    expect(phaseWords({ ...input, turn: { driving: 0, driven: 0 }, before: 0.0342 })[0]).toBe(
      'As bolted up: 0.034 mm off centre, the best of 12 ways round.',
    );
    expect(phaseWords({ ...input, before: 0.05 })[1]).toBe(
      'The readings leave 0.018 mm in doubt: it was as good before.',
    );
    expect(phaseWords({ ...input, turn: { driving: 60, driven: 0 } })[0]).toMatch(/^Turn the adapter 60\u00b0 on/);
  });

  it('stays readable wherever the marks fall', () => {
    const angle = fc.integer({ min: 0, max: 359 });
    const count = fc.integer({ min: 3, max: 12 });
    fc.assert(
      fc.property(count, count, angle, angle, angle, angle, angle, (one, two, a, b, c, d, index) => {
        expectReadable(
          phaseView({
            ...input,
            driving: flange(one, 84, 0, a, b),
            driven: flange(two, 108, c, d, (a + d) % 360),
            index,
          }),
        );
      }),
    );
  });
});

describe('the picture of a joint', () => {
  const wave = (size: number, angle: number) =>
    Array.from({ length: 8 }, (_, k) => size * Math.cos(((45 * k - angle) * Math.PI) / 180));

  it('is drawn only where both directions are known', () => {
    const of = (...patches: Patch[]) => pictures(judge(...patches).joint).filter(({ name }) => name === 'phasing');
    const driving = { runout: { rim: wave(0.05, 127) } };
    const [picture] = of({ driving, driven: { runout: { rim: wave(0.04, 200) } } });
    expect(picture?.caption).toMatch(
      /^How to bolt it up, seen from the driven side\. Turn .* the best of 12 ways round\./,
    );
    expectReadable(picture?.drawing as Drawing);
    expect(of()).toEqual([]);
    expect(of({ driving })).toEqual([]);
  });
});
