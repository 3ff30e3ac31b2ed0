/** The mock-up: allowances the right way round, lengths untouched, the warning always there and where it can be read. */
import { describe, expect, it } from 'vitest';
import type { EngravedText } from '../../src/model/engraving.ts';
import type { TurnedPart } from '../../src/model/part.ts';
import { adapterMockUp, printedSpec, warning, wheelMockUp } from '../../src/parts/mock-up.ts';
import { textWidth } from '../../src/solids/engrave.ts';
import { plainSpec, steel } from './specs.ts';

const allowances = { holes: 0.3, registers: 0.2 };
const marks = { words: ['ORCHARD 1'], measure: textWidth };
const texts = (part: { engravings: TurnedPart['engravings'] }) =>
  part.engravings.filter((e): e is EngravedText => e.kind === 'text');

/** Stretch of the circle that a text covers, degrees either side of its middle. */
const half = (text: EngravedText) => ((textWidth(text.text, text.height) / 2 / text.radius) * 180) / Math.PI;
const between = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

describe('allowances', () => {
  it('are on the diameter: holes and recesses grow, spigots and seats shrink, lengths stay', () => {
    const seat = { face: 'driven', diameter: 124, height: 3, limits: { lower: 0, upper: 0, zone: '' } } as const;
    const printed = printedSpec({ ...plainSpec, wheelSeat: seat }, allowances);
    expect(printed.registers.driving).toMatchObject({ diameter: 62.2, depth: 4 });
    expect(printed.registers.driven).toMatchObject({ diameter: 55.8, depth: 2.5 });
    expect(printed.wheelSeat).toMatchObject({ diameter: 123.8, height: 3 });
    expect(printed).toMatchObject({ bore: 30.3, thickness: 20, outside: 130 });
    expect(printed.groups[0]?.shape).toMatchObject({ diameter: 9.3, head: { diameter: 15.3, depth: 8.6 } });
    expect(printed.groups[1]?.shape).toMatchObject({ tapDrill: 8.8, drillDepth: 14 });
  });
});

describe.each([
  ['plain', plainSpec],
  ['with flats', { ...plainSpec, flats: { across: 124, angle: 90 } }],
  ['thin', { ...plainSpec, thickness: 6, chamfer: 0.5, groups: [], registers: { driving: null, driven: null } }],
  [
    'small',
    {
      ...plainSpec,
      outside: 50,
      thickness: 10,
      bore: 10,
      groups: [],
      registers: { driving: null, driven: null },
    },
  ],
])('letters on an adapter: %s', (_, spec) => {
  const part = adapterMockUp(spec, allowances, marks);
  const onRim = texts(part).filter((text) => text.surface === 'rim');

  it('say the warning, legibly', () => {
    expect(texts(part).map((text) => text.text)).toContain(warning);
    for (const text of texts(part)) expect(text.height).toBeGreaterThanOrEqual(2.5);
  });

  it('stay inside the plain part of the rim', () => {
    for (const text of onRim) {
      expect(text.z - text.height / 2).toBeGreaterThanOrEqual(spec.chamfer - 1e-9);
      expect(text.z + text.height / 2).toBeLessThanOrEqual(spec.thickness - spec.chamfer + 1e-9);
    }
  });

  it('keep off one another, the index mark and the flats', () => {
    for (const [i, a] of onRim.entries()) {
      expect(between(a.angle, 0)).toBeGreaterThan(half(a));
      for (const b of onRim.slice(0, i)) expect(between(a.angle, b.angle)).toBeGreaterThan(half(a) + half(b));
      if (!spec.flats) continue;
      const flat = (Math.acos(spec.flats.across / spec.outside) * 180) / Math.PI;
      for (const normal of [90, 270]) expect(between(a.angle, normal)).toBeGreaterThan(half(a) + flat);
    }
  });

  it('have the index mark at the clocking zero, from face to face', () => {
    const index = part.engravings.find((e) => e.kind === 'index');
    expect(index).toMatchObject({ angle: 0 });
  });
});

describe('letters on a wheel', () => {
  const screwHoles = {
    diameter: 5.5,
    positions: Array.from({ length: 6 }, (_, i) => ({
      x: 70.5 * Math.cos((i * Math.PI) / 3),
      y: 70.5 * Math.sin((i * Math.PI) / 3),
    })),
  };
  const wheel = {
    id: 'wheel',
    name: '60 TOOTH',
    material: steel,
    thickness: 3,
    teeth: 60,
    missing: 0,
    outside: 178,
    root: 169,
    ratio: 0.4,
    flanks: 'straight',
    rootRadius: 0.8,
    tipBreak: 0,
    bore: 129,
    screwHoles,
    toothAngle: 0,
    kerf: 0,
  } as const;

  it('keep off the screw holes, the bore and the roots', () => {
    const part = wheelMockUp(wheel, allowances, marks);
    expect(texts(part)[0]?.text).toBe(warning);
    for (const text of texts(part)) {
      expect(text.surface).toBe('top');
      expect(text.radius - text.height / 2).toBeGreaterThan(wheel.bore / 2);
      expect(text.radius + text.height / 2).toBeLessThan(wheel.root / 2);
      for (const hole of screwHoles.positions) {
        const beside = between(text.angle, (Math.atan2(hole.y, hole.x) * 180) / Math.PI) > half(text);
        const clear = Math.abs(text.radius - 70.5) > text.height / 2 + 5.8 / 2;
        expect(beside || clear).toBe(true);
      }
    }
  });

  it('widens the holes and the bore, and leaves the teeth', () => {
    const part = wheelMockUp(wheel, allowances, marks);
    const radii = part.holes.map((hole) => (hole.kind === 'circle' ? hole.r : 0));
    expect(Math.max(...radii)).toBeCloseTo(64.6, 9);
    expect(Math.min(...radii)).toBeCloseTo(2.9, 9);
  });
});
