/** What the buy list and the key numbers say of torque, locking and drills. */
import { describe, expect, it } from 'vitest';

import type { Joint } from '../../src/job/joint.ts';
import { keyNumbers } from '../../src/report/key-numbers.ts';
import { screwsToBuy } from '../../src/report/screw-list.ts';
import { judge, type Patch } from './help.ts';

const made = (...patches: readonly Patch[]): Joint => judge(...patches).joint;
const tighten = (joint: Joint, what: RegExp) => screwsToBuy(joint).find((line) => what.test(line.what))?.tighten;
const note = (joint: Joint, label: string, units: 'mm' | 'in' = 'mm') =>
  keyNumbers(joint, units).find((line) => line.label === label);

describe('the buy list', () => {
  it('gives the torque with what it rests on', () => {
    const text = tighten(made({ driven: { holes: { diameter: 11 } } }), /^M10 x 25/);
    // 71 N.m and 43.4 kN by the published tables; 71 / 1.3558 = 52.4 lbf.ft.
    expect(text).toMatch(
      /^71 N\.m at friction 0\.12, preload 43\.\d kN; .*; the same is 52\.\d lbf\.ft; count on 21\.\d kN when just tightened, less what settles away;/,
    );
    for (const part of [
      'friction decides: at 0.08',
      'lightly oiled',
      'oil or thread lock, never both: with lock the same torque pulls less (VDI 2230 class C, 0.14 to 0.24, adapter.driven.friction)',
      'driven face: steel on steel, both faces wiped clean with solvent; by friction 0.15 it carries the torque; oil on them would leave 0.12',
      'no spring washers under class 10.9',
    ])
      expect(text).toContain(part);
  });

  it('says why there is none, and still how to lock', () => {
    // The thread is in aluminium, and without the flange's thickness nobody knows how much of it holds.
    const text = tighten(made({ adapter: { material: '6061-T6' }, driven: { thickness: undefined } }), /^M10/);
    expect(text).toMatch(/^no torque given: the thread is in aluminium 6061-T6, .*not known; .*thread lock/);
  });
});

describe('holes in the adapter, among the key numbers', () => {
  it('name drill and thread of every group', () => {
    // ISO 2306: M10 is drilled 8.5, M5 4.2. ISO 273 medium for M8: 9.
    expect(note(made(), 'Tapped holes, driven')).toMatchObject({
      value: '4 x M10',
      note: expect.stringMatching(/^drill 8\.5/),
    });
    expect(note(made(), 'Tapped holes, wheel')).toMatchObject({
      value: '6 x M5',
      note: expect.stringMatching(/^drill 4\.2/),
    });
    expect(note(made(), 'Clear holes, driving')).toMatchObject({
      value: '6 x 9.00 mm',
      note: expect.stringMatching(/^drill 9.*, for M8$/),
    });
    expect(keyNumbers(made(), 'mm').filter(({ label }) => label.includes('holes'))).toHaveLength(3);
  });

  it('say how deep to drill and to tap: a blind M10 runs out by 7.3 (DIN 76-1, from memory)', () => {
    const text = note(made({ adapter: { thickness: 45 } }), 'Tapped holes, driven')?.note ?? '';
    const [, drill = '', thread = ''] =
      /([\d.]+) mm deep at full diameter, full thread ([\d.]+) mm deep$/.exec(text) ?? [];
    expect(Number(drill) - Number(thread)).toBeCloseTo(7.3, 6);
    const through = made({ adapter: { thickness: 16.5 } });
    expect(note(through, 'Tapped holes, driven')?.note).toMatch(/right through, thread right through$/);
  });
});

describe('drills by their shop names', () => {
  it('M10 takes 8.5 (ISO 2306), or letter Q, 0.332 in; both within 8.376 to 8.676', () => {
    expect(note(made(), 'Tapped holes, driven')?.note).toMatch(/^drill 8\.5 mm \(or letter Q, 8\.43 mm\) /);
    expect(note(made(), 'Clear holes, driving')?.note).toMatch(/^drill 9 mm \(or .*\), for M8$/);
  });

  it('inch threads by fraction and letter, a metric drill beside it', () => {
    // ASME tap drill of 5/16-24: letter I, 0.272 in = 6.909 mm; 13/32 clears 3/8.
    const joint = made({
      driven: { holes: { diameter: '0.3281 in' } },
      adapter: { driven: { screw: '5/16-24 UNF', class: '8.8' } },
    });
    expect(note(joint, 'Tapped holes, driven', 'in')?.note).toMatch(/^drill letter I, 6\.91 mm \(or 6\.9 mm\) /);
    const bolts = made({
      driven: { holes: { diameter: '0.4062 in' } },
      adapter: { driven: { fastening: 'through', screw: '3/8-24 UNF', class: '8.8' } },
    });
    expect(note(bolts, 'Clear holes, driven', 'in')?.note).toMatch(
      /^drill 13\/32, 10\.32 mm \(or 10\.4 mm\), for 3\/8-24/,
    );
  });
});
