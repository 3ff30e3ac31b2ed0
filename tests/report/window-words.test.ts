/** A wheel with windows has bars and windows: no word of teeth in what is said of it, keys of the job and cited titles aside. */
import { describe, expect, it } from 'vitest';
import { reportData } from '../../src/core.ts';
import { pictures } from '../../src/products/pictures.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportText } from '../../src/report/report-text.ts';
import { judge, type Patch } from '../validate/help.ts';

const windows = (sensor: Patch, wheel: Patch = {}): Patch => ({
  wheel: { form: 'windows', teeth: 'auto', outside: 'auto', height: undefined, missing: 1, ...wheel },
  sensor: {
    kind: 'coil',
    direction: 'axial',
    pole: 3,
    gap: 1,
    crawl: '30 rpm',
    expects: { pulses: 59 },
    ...sensor,
  },
  bracket: {
    form: 'flat',
    bolts: { spacing: 60, from_axis: 135, along: 10 },
    sensor: { bore: 18.2, reach: 25, ear: { distance: 22, size: 'M6' } },
  },
});

/** What is left of the word, without keys (wheel.teeth), codes (tooth-pitch), the wheel before, and the title of a source. */
function teethIn(text: string): string[] {
  const bare = text
    .replace(/wheel\.(teeth|tooth)\b|was: \{ teeth/g, '')
    .replace(
      /gear-tooth sensor|pole no wider than the tooth|-to\s*oth-|[a-z]+-(tooth|teeth)\b[a-z-]*|\b(tooth|teeth)-[a-z-]*/g,
      '',
    );
  return [...bare.matchAll(/.{0,40}\b(teeth|tooth)\b.{0,30}/gi)].map(([found]) => found);
}

describe('the words for a wheel with windows', () => {
  it.each([
    ['a coil', windows({})],
    ['nobody knows what senses it', windows({ kind: undefined, gap: undefined, pole: undefined })],
    ['an input that is too slow', windows({ kind: 'hall', controller: { most: '1000 Hz' } })],
    ['all bars, a float', windows({ float: 1 }, { missing: 0 })],
  ])('%s', (_, patch) => {
    const { joint, findings } = judge(patch);
    const data = reportData(joint, findings, null, 'R00000');
    expect(teethIn(reportText(data).replace(/\s+/g, ' '))).toEqual([]);
    expect(teethIn(reportHtml(data, []).replace(/<[^>]*>/g, ' '))).toEqual([]);
    for (const { caption, drawing } of pictures(joint)) {
      const shown = drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
      expect(teethIn([caption, drawing.title, drawing.description, ...shown].join(' | '))).toEqual([]);
    }
  });

  it('would be noticed', () => {
    const { joint, findings } = judge();
    expect(teethIn(reportText(reportData(joint, findings, null, 'R00000')))).not.toEqual([]);
  });

  it('are bars among the counts, too', () => {
    const { joint, findings } = judge(windows({}));
    const text = reportText(reportData(joint, findings, null, 'R00000'));
    expect(text).toMatch(/Counts of bars that the wheel may have/);
    expect(text).toMatch(/60 bars \(this wheel\): \w+.*bar [\d.]+ mm,\s+window [\d.]+ mm/s);
  });
});
