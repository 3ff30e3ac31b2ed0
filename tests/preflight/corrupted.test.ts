/** Every kind of corrupted drawing is named by its code, at its place, and by nothing else. */
import { describe, expect, it } from 'vitest';
import { preflightDxf } from '../../src/preflight/preflight.ts';
import { overallVerdict } from '../../src/report/rank.ts';
import { corrupted } from './corrupted.ts';

const bytesOf = (text: string | Uint8Array): Uint8Array =>
  typeof text === 'string' ? new TextEncoder().encode(text) : text;

describe('corrupted drawings', () => {
  it('are forty kinds and more', () => {
    expect(corrupted.length).toBeGreaterThanOrEqual(40);
    expect(new Set(corrupted.map(({ code }) => code)).size).toBeGreaterThanOrEqual(40);
  });

  it.each(corrupted.map((c) => [c.what, c] as const))('%s', (_, { code, text, also = [], thickness }) => {
    const { findings, isReadable } = preflightDxf(bytesOf(text), { thickness });
    const blamed = findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'caution');
    const codes = blamed.map((finding) => finding.code);
    expect(codes).toContain(code);
    expect(codes.filter((other) => other !== code && !also.includes(other))).toEqual([]);
    const named = blamed.find((finding) => finding.code === code);
    expect(named?.remedy.length).toBeGreaterThan(5);
    expect(named?.why.length).toBeGreaterThan(20);
    expect(overallVerdict(findings)).not.toBe('pass');
    const lines = typeof text === 'string' ? text.split('\n').length : 0;
    for (const place of named?.places ?? []) expect(place.line).toBeLessThanOrEqual(lines);
    if (!isReadable) expect(findings).toHaveLength(1);
  });
});
