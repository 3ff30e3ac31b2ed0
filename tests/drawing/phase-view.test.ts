/** The picture to mark both flanges by: it shows what it was told, and nothing that is read is written over. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FlangeToPhase, type PhaseViewInput, phaseView, phaseWords } from '../../src/drawing/phase-view.ts';
import { overlap, passesThrough, textBox } from '../../src/drawing/text-size.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { chainsToDraw } from '../../src/products/chain-to-draw.ts';
import { pictures } from '../../src/products/pictures.ts';
import { ring } from '../report/fixture.ts';
import { findingOf, judge, type Patch } from '../validate/help.ts';

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
  rim: { high, size: 0.05, own: 360 - high },
  faceHigh,
});
const input: PhaseViewInput = {
  id: 'phasing',
  driving: flange(6, 84, 0, 127, 9.5),
  driven: flange(4, 108, 195, 115, null),
  turn: { driving: 0, driven: 90 },
  before: 0.0871,
  after: 0.0342,
  doubt: 0.018,
  ways: 12,
  matters: true,
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
    expect(said).toContain(
      'Turn the driven flange 90\u00b0 on the adapter, counter-clockwise: 0.087 mm off centre becomes 0.034 mm',
    );
    expect(said).toContain('the best of 12 ways round.');
  });

  it('puts both match marks at one angle, at hole 1 of the driven flange', () => {
    const marks = phaseView(input).shapes.flatMap((s) => (s.kind === 'line' && s.pen === 'mark' ? [s] : []));
    expect(marks).toHaveLength(2);
    for (const { from, to } of marks)
      expect((Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI).toBeCloseTo(195 - 360, 9);
  });

  it('says when it is bolted up the best way, and when the readings do not tell', () => {
    const still = { driving: 0, driven: 0 };
    expect(phaseWords({ ...input, turn: still, before: 0.0342 })[0]).toBe(
      'Leave it as it is bolted up: 0.034 mm off centre, and none of 12 ways round is better by more than can be told.',
    );
    // Where no difference can be told there is no gain to tell of, and nothing to turn.
    const alike = phaseWords({ ...input, turn: still, before: 0.0342, matters: false }).join(' ');
    expect(alike).toBe(
      'Bolt it up as it is, or any other way round: it makes no difference that can be told. ' +
        'The readings leave 0.018 mm in doubt, and the 12 ways round differ by less.',
    );
    expect(phaseWords({ ...input, turn: { driving: 60, driven: 0 } })[0]).toMatch(/^Turn the adapter 60\u00b0 on/);
  });

  it('stays readable wherever the marks fall', () => {
    const angle = fc.integer({ min: 0, max: 359 });
    const count = fc.integer({ min: 3, max: 12 });
    fc.assert(
      fc.property(count, count, angle, angle, angle, angle, (one, two, a, b, c, d) => {
        expectReadable(
          phaseView({
            ...input,
            driving: flange(one, 84, 0, a, b),
            driven: flange(two, 108, c, d, (a + d) % 360),
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

  // Read looking at each flange's own face: the driving rim high at 40 degrees, the driven one at 100. Seen from the driven side, from the index
  // mark, with the adapter turned by a and the driven flange by b: 40 - a, and 180 - 100 + 20 (clocking) + b. Together where a + b = 300: the first
  // turns of sixths and quarters that do it are 120 and 180, and both high spots then stand at 280.
  const read: Patch = {
    driving: { runout: { rim: wave(0.05, 40) } },
    driven: { runout: { rim: wave(0.03, 100) } },
    adapter: { clocking: '20 deg', bolt_up: { driving: '60 deg', driven: '90 deg' } },
  };

  it('has its marks where the words say, from the index mark, and tells where that was read', () => {
    const made = judge(read);
    const { remedy } = findingOf(made, 'phasing');
    expect(remedy).toContain(
      "The rims' high spots then stand at 280 degrees (driving) and 280 degrees (driven); looking at each flange's own face that is at 40 degrees and 100 degrees from its x axis.",
    );
    // Hole 1 of the driving flange is typed at 0: 0 - 120. The driven one's at 180 + 20 + 180.
    expect(remedy).toContain("until the driving flange's hole 1 stands at 240 degrees.");
    expect(remedy).toContain('Turn the driven flange until its hole 1 stands at 20 degrees.');
    expect(remedy).toContain("from the adapter's index mark, counter-clockwise seen from the driven side");
    const drawing = pictures(made.joint).find(({ name }) => name === 'phasing')?.drawing as Drawing;
    const words = textsOf(drawing).map(({ text }) => text);
    for (const text of [
      'driving high spot 280\u00b0',
      'driven high spot 280\u00b0',
      '40\u00b0 on its own face',
      '100\u00b0 on its own face',
      'index mark 0\u00b0',
    ])
      expect(words).toContain(text);
    expect(words.filter((text) => text === 'match mark 20\u00b0')).toHaveLength(2);
    // The marks themselves: on rims of 112 and 128, at 280 degrees round each middle.
    const spots = drawing.shapes.flatMap((s) => (s.kind === 'circle' && s.fill === 'screw' ? [s.centre] : []));
    const rims = drawing.shapes.flatMap((s) =>
      s.kind === 'circle' && s.pen === 'outline' && (s.r === 56 || s.r === 64) ? [s] : [],
    );
    expect(spots).toHaveLength(2);
    for (const [i, { centre, r }] of rims.entries()) {
      const radians = (280 * Math.PI) / 180;
      expect(spots[i]?.x).toBeCloseTo(centre.x + r * Math.cos(radians), 9);
      expect(spots[i]?.y).toBeCloseTo(centre.y + r * Math.sin(radians), 9);
    }
  });

  it('and the chain of centring tells the same spots, of the joint as it is bolted up', () => {
    const as = judge(read, { adapter: { bolt_up: { driving: '120 deg', driven: '180 deg' } } });
    const { why } = findingOf(as, 'concentricity');
    expect(why).toMatch(/run-out of the driving flange [^,(]*\([^)]*high at 280 degrees/);
    expect(why).toMatch(/run-out of the driven flange [^,(]*\([^)]*high at 280 degrees/);
    expect(why).toMatch(/Angles: from the adapter's index mark, counter-clockwise seen from the driven side\.$/);
    // The driven flange's register is held: its high spot pushes the shaft to the other side. 0.05 - 0.03 is left, whichever way it is told.
    const drawn = chainsToDraw(as.joint).find(({ name }) => name === 'chain-shaft');
    const rows = drawn?.input.rows.flatMap(({ read: one }) => (one === null ? [] : [one])) ?? [];
    expect(rows).toHaveLength(2);
    for (const row of rows) expect(row).toContain('high at 280\u00b0');
  });
});
