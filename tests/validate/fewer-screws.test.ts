/** Fewer screws as the cure of a thin web: named only where it cures, with the web that it leaves. Lengths in mm, by plane geometry. */
import { describe, expect, it } from 'vitest';
import { findingOf, judge, type Patch } from './help.ts';

const noWheel = { wheel: undefined, sensor: undefined };
const web = (...patches: Patch[]) => findingOf(judge(noWheel, ...patches), 'web-between-holes');

describe('two patterns that leave too little metal at any angle', () => {
  const clash = { driven: { holes: { count: 8, circle: 104 } } };
  // Heads of 15 on 84 and mouths of 10 on 104. Six and eight stand 7.5 degrees apart at best; six and four 15.
  const apart = (degrees: number) =>
    Math.sqrt(42 ** 2 + 52 ** 2 - 2 * 42 * 52 * Math.cos((degrees * Math.PI) / 180)) - 7.5 - 5;

  it('names the number of screws that leaves enough, and how much', () => {
    const found = web(clash);
    expect(found.value).toBeCloseTo(apart(7.5), 5);
    expect(apart(15).toFixed(2)).toBe('3.27');
    expect(found.remedy).toMatch(
      /, or put screws in only 4 of the 8 driven holes \(driven\.holes\.use: 4; 3\.27 mm\), if they carry the torque\.$/,
    );
  });

  it('is cured by it', () => {
    const cured = web(clash, { driven: { holes: { use: 4 } } });
    expect([cured.verdict, cured.value]).toEqual(['pass', expect.closeTo(apart(15), 5)]);
  });

  it('names none where none leaves enough', () => {
    // 3.27 is less than 4; six cut to three stand 7.5 degrees from eight all the same.
    expect(web(clash, { adapter: { web: 4 } }).remedy).not.toContain('holes.use');
  });

  it('names none for holes that were typed one by one', () => {
    const at = (count: number, radius: number) =>
      Array.from({ length: count }, (_, i) => [
        radius * Math.cos((2 * Math.PI * i) / count),
        radius * Math.sin((2 * Math.PI * i) / count),
      ]);
    const typed = { driven: { holes: { count: undefined, circle: undefined, at: at(8, 52) } } };
    expect(web(typed).verdict).toBe('fail');
    expect(web(typed).remedy).not.toContain('driven.holes.use');
  });

  it('at a given angle counts that angle', () => {
    // Turned to 22.5 degrees the eight stand 7.5 from the six, and so do the four that are left.
    const given = { ...clash, adapter: { clocking: 22.5 } };
    expect(web(given).value).toBeCloseTo(apart(7.5), 5);
    expect(web(given).remedy).not.toContain('holes.use');
  });
});

describe('neighbours of one pattern that leave too little metal', () => {
  const crowded = { driven: { holes: { circle: 116 } }, driving: { holes: { count: 16 } } };

  it('name every second hole, and are cured by it', () => {
    const left = 84 * Math.sin(Math.PI / 8) - 15;
    const found = web(crowded);
    expect(found.remedy).toContain(`(driving.holes.use: 8; ${left.toFixed(2)} mm)`);
    const cured = judge(noWheel, crowded, { driving: { holes: { use: 8 } } });
    expect(cured.joint.screws.find(({ side }) => side === 'driving')?.count).toBe(8);
    expect(findingOf(cured, 'web-between-holes').verdict).toBe('pass');
  });
});
