/** Stripping against breaking, and room for the tool, by hand. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import { expectSaid, findingOf, judge, type Patch } from './help.ts';

const about = (patch: Patch, code: string, text = ''): Finding => findingOf(judge(patch), code, text);

// ISO 965-1 M10-6g in 6H, as published: d 9.732 least, d2 8.862 least, D1 8.676 and D2 9.206 at most.
const parentArea = (Le: number) => Math.PI * (Le / 1.5) * 9.732 * (0.75 + (9.732 - 9.206) / Math.sqrt(3));
const screwArea = (Le: number) => Math.PI * (Le / 1.5) * 8.676 * (0.75 + (8.862 - 8.676) / Math.sqrt(3));
// ISO 898-1: M10 10.9 breaks at 60.3 kN.
const breaks = 60.3;
const long = (length: number, more: Patch = {}): Patch => ({ adapter: { driven: { length, ...more } } });

describe('stripping against breaking', () => {
  // 9 of flange and 0.75 of countersunk mouth before the thread. S355: 470 MPa, 0.6 of it in shear (textbook rule).
  const load = (length: number) => (parentArea(length - 9.75) * 0.6 * 470) / 1000;

  it('is far away with the engagement that is usual', () => {
    expectSaid(about({}, 'thread-stripping', 'driven'), { verdict: 'pass', value: load(25), limit: breaks, digits: 1 });
    expect(load(25)).toBeLessThan((screwArea(15.25) * 0.6 * 1040) / 1000);
  });

  it('comes before breaking with 9.25 of thread: a caution', () => {
    const finding = about(long(19), 'thread-stripping', 'driven');
    expectSaid(finding, { verdict: 'caution', value: load(19), limit: breaks, digits: 1 });
    // 9.25 x 60.32 / 56.0 = 9.96 of thread.
    expect(finding.remedy).toMatch(/^Let 9\.9\d mm of thread engage, .*weaker screws \(adapter\.driven\.class: 8\.8\)/);
    expect(finding.why).not.toContain('DO NOT');
    expect(about(long(20), 'thread-stripping', 'driven').verdict).toBe('pass');
    expect(about(long(19, { class: '8.8' }), 'thread-stripping', 'driven').verdict).toBe('pass');
  });

  it('comes before the screw is tight with 6.25 of thread: a failure that forbids the torque', () => {
    const finding = about(long(16), 'thread-stripping', 'driven');
    expectSaid(finding, { verdict: 'fail', value: load(16), limit: breaks, digits: 1 });
    // 43.4 kN is the printed preload of M10 10.9 at 0.12.
    expect(finding.why).toMatch(/strips at 37\.9 kN .* Tightening pulls 43\.\d kN: DO NOT use that torque\.$/);
  });

  it('counts no more than 2.5 d, and the printed shear strength of an alloy', () => {
    // 207 MPa is printed for 6061-T6; 40 - 9.75 is more than 25. Steel of class 10.9 is far stronger.
    const soft: Patch = { adapter: { material: '6061-T6', thickness: 60, driven: { length: 40 } } };
    const deep = about(soft, 'thread-stripping', 'driven');
    expect(deep.value).toBeCloseTo((parentArea(25) * 207) / 1000, 1);
    expect(deep.why).toContain('25.00 mm engaged');
  });

  it('asks no weaker screws than the weakest, and no engagement that adds nothing', () => {
    const none = about({ adapter: { driven: { length: 12, class: '8.8' } } }, 'thread-stripping', 'driven');
    expect(none.verdict).toBe('fail');
    expect(none.remedy).not.toContain('8.8');
  });

  it('is left open where the engagement is not known, and no matter with a nut', () => {
    expect(about({ driven: { thickness: undefined } }, 'thread-stripping', 'driven').verdict).toBe('not assessed');
    const { findings } = judge({ adapter: { driven: { fastening: 'through' } } });
    const found = findings.filter(({ code, feature }) => code === 'thread-stripping' && feature === 'driven-screws');
    expect(found).toEqual([]);
  });
});

describe('room for the tool', () => {
  // A socket of 1.5 x 16 + 1 = 25 (common practice), and a head of 16 / cos 30 beside it.
  const next = (chord: number, flats: number) => chord - (1.5 * flats + 1) / 2 - flats / 2 / Math.cos(Math.PI / 6);

  it('between hexagons: four on 108', () => {
    expectSaid(about({}, 'tool-room'), { verdict: 'pass', value: next(108 * Math.SQRT1_2, 16), limit: 0.5 });
  });

  it('sixteen on 108 are too near for M10, not for M8', () => {
    const many: Patch = { driven: { holes: { count: 16 } } };
    const chord = 108 * Math.sin(Math.PI / 16);
    expectSaid(about(many, 'tool-room'), { verdict: 'caution', value: next(chord, 16), limit: 0.5 });
    const thin: Patch = { ...many, adapter: { driven: { screw: 'M8' } } };
    expectSaid(about(thin, 'tool-room'), { verdict: 'pass', value: next(chord, 13), limit: 0.5 });
  });

  it('beside a spigot on the face that the heads stand on', () => {
    // M8 on 84, socket 20.5; the driven spigot is 60.
    const faced: Patch = { adapter: { driving: { head: 'hex', seat: 'surface' } } };
    expectSaid(about(faced, 'tool-room', 'driving'), { verdict: 'pass', value: 42 - 10.25 - 30, limit: 0.5 });
    const near: Patch = { ...faced, driving: { holes: { circle: 81 } } };
    expectSaid(about(near, 'tool-room', 'driving'), { verdict: 'caution', value: 40.5 - 10.25 - 30, limit: 0.5 });
  });

  it('asks nothing of socket screws, and asks for nuts', () => {
    const bolts: Patch = { adapter: { driven: { fastening: 'through', head: 'socket' } } };
    expectSaid(about(bolts, 'tool-room', 'nuts'), { verdict: 'pass', value: next(108 * Math.SQRT1_2, 16), limit: 0.5 });
  });
});
