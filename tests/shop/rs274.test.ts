/** The words of a program: what old and simple controls stumble over. */
import { describe, expect, it } from 'vitest';
import type { Program } from '../../src/model/program.ts';
import { comment, writeRs274 } from '../../src/write/rs274.ts';

const program: Program = {
  header: ['Title (of a joint) 50 % \u00d8 8; end'],
  tools: [{ number: 1, name: 'drill 8 mm', diameter: 8, rpm: 900 }],
  cuts: [
    {
      tool: 1,
      title: 'A',
      stroke: 'peck',
      feed: 100,
      peck: 8,
      holes: [
        { tag: 'A1', x: 42, y: -1e-9, z: -30 },
        { tag: 'A2', x: -21, y: 36.37306, z: -30 },
      ],
    },
  ],
  safe: 2,
  travel: 25,
  start: ['LOOK'],
  stops: ['TAP M8'],
  canned: false,
};

describe('a program', () => {
  it('gives every coordinate its decimal point, four decimals at most, and no minus zero', () => {
    const words = writeRs274(program).match(/(?<![A-Z(])[XYZRQF]-?[\d.]+/g) ?? [];
    expect(words.length).toBeGreaterThan(10);
    for (const word of words) expect(word).toMatch(/^[XYZRQF]-?\d+\.\d{1,4}$/);
    expect(writeRs274(program)).not.toMatch(/-0\.0+\b/);
  });

  it('keeps comments within their brackets, in capital ASCII, and short', () => {
    const lines = writeRs274({ ...program, header: ['long '.repeat(60)] }).split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    for (const line of comment('Title (of a joint) 50 % \u00d8 8; end')) expect(line).toMatch(/^\([^()%;a-z]*\)$/);
  });

  it('spells a deep hole out in equal pecks, each from above the work', () => {
    const lines = writeRs274(program).split('\n');
    const from = lines.indexOf('G0 X42.0 Y0.0');
    // 30 mm in pecks of 8 at most: four of 7.5.
    expect(lines.slice(from, from + 9)).toEqual([
      'G0 X42.0 Y0.0',
      'G0 Z2.0',
      'G1 Z-7.5 F100.0',
      'G0 Z2.0',
      'G1 Z-15.0 F100.0',
      'G0 Z2.0',
      'G1 Z-22.5 F100.0',
      'G0 Z2.0',
      'G1 Z-30.0 F100.0',
    ]);
  });

  it('stops over its zero before the spindle first turns', () => {
    const text = writeRs274(program);
    expect(text.indexOf('M0')).toBeLessThan(text.indexOf('M3'));
    expect(text.indexOf('X0.0 Y0.0')).toBeLessThan(text.indexOf('M0'));
  });
});
