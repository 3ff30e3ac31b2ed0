/** Which pattern is it: what a person types of a flange, held against a list of two that were made up for this. */
import { describe, expect, it } from 'vitest';
import { askedPatterns, type TypedFlange } from '../../src/job/asked-patterns.ts';
import { parseFlangePresets, parseNearMisses } from '../../src/job/flange-presets.ts';

const text = `
- id: ONE-companion
  family: invented
  title: first
  outside: 100
  register: { gender: male, diameter: 57, depth: 2, fit: h7 }
  holes: { count: 6, circle: 84, diameter: 8.1 }
  source: "invented for this test"
  memory: [outside]
- id: TWO
  family: invented
  title: second
  holes: { count: 6, circle: 86, thread: M8 }
  source: "invented for this test"
  memory: []
  unsuitable: "It has no face to bolt to."
- { a: ONE, b: TWO, circles: [84, 86], counts: [6, 6], mismatch: 1 }
`;
const texts = [{ file: 'made-up.yaml', text }];
const [presets, nearMisses] = [parseFlangePresets(texts), parseNearMisses(texts)];
const ask = (typed: Partial<TypedFlange>, units: 'mm' | 'in' = 'mm') =>
  askedPatterns({ circle: '', holes: '', outside: '', register: '', ...typed }, units, presets, nearMisses);
const ids = (typed: Partial<TypedFlange>, units: 'mm' | 'in' = 'mm') => {
  const asked = ask(typed, units);
  return asked.ok ? asked.near.map(({ id }) => id) : asked.why;
};

describe('which known pattern is it', () => {
  it('takes a size however a field takes it', () => {
    // Mean of the readings 84.02, 83.98, 84.00; 3.307 in is 83.998 mm.
    for (const circle of ['84', '84.02, 83.98, 84.00', '84.00 ±0.05 caliper', '3.307 in'])
      expect(ids({ circle }), circle).toEqual(['ONE-companion', 'TWO']);
    expect(ids({ circle: '3.386' }, 'in')).toEqual(['TWO', 'ONE-companion']);
  });

  it('says when none of them is it', () => {
    const isOne = (typed: Partial<TypedFlange>) => {
      const asked = ask(typed);
      return asked.ok && asked.isOne;
    };
    expect(isOne({ circle: '84.1', holes: '6' })).toBe(true);
    expect(isOne({ circle: '84', holes: '5' })).toBe(false);
    expect(isOne({ circle: '120', holes: '6' })).toBe(false);
    expect(isOne({})).toBe(true);
  });

  it('lists all of them where nothing was typed', () => {
    expect(ids({})).toEqual(['ONE-companion', 'TWO']);
  });

  it('says what differs, how far it is to be trusted, what looks like it, and what is none', () => {
    const asked = ask({ circle: '84.6', holes: '8', register: '57' });
    if (!asked.ok) throw new Error(asked.why);
    const [one, two] = asked.near;
    expect(one).toMatchObject({
      sizes: 'outside 100; spigot 57 h7 x 2; 6 holes on 84, dia 8.1',
      differences: ['circle 84 mm, measured 84.6: 0.6 mm more', '6 holes, counted 8'],
      unsuitable: null,
    });
    expect(one?.notes).toEqual([
      'FROM MEMORY, measure these: outside',
      'looks like TWO and is not: circles 84 and 86, holes 1 mm out each',
      'source: invented for this test',
    ]);
    expect(two?.unsuitable).toBe('It has no face to bolt to.');
    expect(two?.notes).toContain('looks like ONE and is not: circles 84 and 86, holes 1 mm out each');
    expect(two?.differences).toContain('register not known, measured 57 mm');
  });

  it('names the field that it cannot read', () => {
    expect(ids({ circle: '84,02' })).toMatch(/^bolt circle: .*84\.02/);
    expect(ids({ outside: '5' })).toMatch(/^outside: Must be 20 to 700 mm; got 5 mm\. If that is inches/);
    expect(ids({ register: 'wide' })).toMatch(/^register: /);
    expect(ids({ holes: 'six' })).toBe('holes: count them, 2 to 72; got six.');
    expect(ids({ holes: '1' })).toMatch(/2 to 72; got 1/);
  });
});
