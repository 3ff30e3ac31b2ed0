/** Demands that contradict the facts: each is an error at the key that would cure it, in a sentence that helps. */
import { describe, expect, it } from 'vitest';
import { errorsOf, judge, type Patch } from '../validate/help.ts';

const noWheel: Patch = { wheel: undefined, sensor: undefined };
const through: Patch = { driving: { fastening: 'through' }, driven: { fastening: 'through' } };
const sameHoles: Patch = {
  ...noWheel,
  driving: { holes: { thread: undefined, depth: undefined, diameter: 10.4, count: 4, circle: 108 }, outside: 128 },
};

interface Wrong {
  readonly what: string;
  readonly patch: Patch;
  readonly path: string;
  readonly says: RegExp;
  /** What the sentence advises; the error is then gone. */
  readonly cure: Patch;
}

const adapter = (keys: Patch): Patch => ({ adapter: keys });

const wrong: readonly Wrong[] = [
  {
    what: 'screws into clear holes',
    patch: adapter({ driven: { fastening: 'into_flange' } }),
    path: 'adapter.driven.fastening',
    says: /into_flange needs tapped holes, but the driven flange has clear holes of 10\.4 mm\. Use into_adapter or through/,
    cure: adapter({ driven: { fastening: 'into_adapter' } }),
  },
  {
    what: 'screws through tapped holes',
    patch: adapter({ driving: { fastening: 'into_adapter' } }),
    path: 'adapter.driving.fastening',
    says: /into_adapter needs clear holes, but the driving flange is tapped M8\. Use into_flange\./,
    cure: adapter({ driving: { fastening: 'into_flange' } }),
  },
  {
    what: 'a screw thicker than the hole',
    patch: adapter({ driven: { screw: 'M12' } }),
    path: 'adapter.driven.screw',
    says: /M12 does not go through the driven flange's holes of 10\.4 mm\. The thickest that does is M10\./,
    cure: adapter({ driven: { screw: 'M10' } }),
  },
  {
    what: 'another thread than the flange has',
    patch: adapter({ driving: { screw: 'M10' } }),
    path: 'adapter.driving.screw',
    says: /The driving flange is tapped M8, so a M10 screw does not go in\. Leave screw on auto\./,
    cure: adapter({ driving: { screw: 'auto' } }),
  },
  {
    what: 'flat heads behind a flange',
    patch: adapter({ driven: { head: 'flat' } }),
    path: 'adapter.driven.head',
    says: /A flat head would need a countersunk driven flange\. Use socket, button or hex\./,
    cure: adapter({ driven: { head: 'socket' } }),
  },
  {
    what: 'flat heads on a surface',
    patch: adapter({ driving: { head: 'flat', seat: 'surface' } }),
    path: 'adapter.driving.seat',
    says: /A flat head is always sunk\. Use seat: sunk/,
    cure: adapter({ driving: { seat: 'sunk' } }),
  },
  {
    what: 'a washer under a flat head',
    patch: adapter({ driving: { head: 'flat', washer: true } }),
    path: 'adapter.driving.washer',
    says: /A flat head takes no washer\. Use washer: false/,
    cure: adapter({ driving: { washer: false } }),
  },
  {
    what: 'hexagon heads under the other flange',
    patch: adapter({ driving: { head: 'hex' } }),
    path: 'adapter.driving.head',
    says: /A hex head cannot be sunk.*Use socket \(counterbore\) or flat \(countersink\)\./,
    cure: adapter({ driving: { head: 'socket' } }),
  },
  {
    what: 'sinking heads that sit behind the flange',
    patch: adapter({ driven: { seat: 'sunk' } }),
    path: 'adapter.driven.seat',
    says: /These heads sit behind the driven flange, not in the adapter\. Leave seat on auto\./,
    cure: adapter({ driven: { seat: 'auto' } }),
  },
  {
    what: 'a zone for spigots where the adapter has a recess',
    patch: adapter({ driving: { fit: 'g6' } }),
    path: 'adapter.driving.fit',
    says: /The adapter has a recess here, so its fit is a capital-letter hole zone such as H7, not "g6"\./,
    cure: adapter({ driving: { fit: 'H7' } }),
  },
  {
    what: 'a zone for recesses where the adapter has a spigot, in the register',
    patch: adapter({ driven: { register: { fit: 'H7' } } }),
    path: 'adapter.driven.register.fit',
    says: /The adapter has a spigot here, so its fit is a small-letter shaft zone such as h6, not "H7"\./,
    cure: adapter({ driven: { register: { fit: 'h6' } } }),
  },
  {
    what: 'a zone that no table has',
    patch: adapter({ driving: { fit: 'H25' } }),
    path: 'adapter.driving.fit',
    says: /\S/,
    cure: adapter({ driving: { fit: 'H7' } }),
  },
  {
    what: 'a material that nobody knows',
    patch: adapter({ material: 'unobtainium' }),
    path: 'adapter.material',
    says: /\S/,
    cure: adapter({ material: 'S355' }),
  },
  {
    what: 'threads in plastic',
    patch: adapter({ material: 'PLA' }),
    path: 'adapter.driven.class',
    says: /A plastic thread carries no joint/,
    cure: adapter({ material: '6061-T6' }),
  },
  {
    what: 'a bore smaller than the flange that lies in it',
    patch: { wheel: { thickness: 5, bore: 120 } },
    path: 'wheel.bore',
    says: /The bore \(120 mm\) is smaller than the driven flange \(128 mm\).*Use auto, or 130 mm or more\./,
    cure: { wheel: { bore: 130 } },
  },
  {
    what: 'a bore that does not go over the rim',
    patch: { wheel: { on: 'driven', bore: 127 } },
    path: 'wheel.bore',
    says: /The bore \(127 mm\) does not go over the driven flange's rim \(128 mm\)/,
    cure: { wheel: { bore: 'auto' } },
  },
  {
    what: 'a wheel too small for the flange it goes round',
    patch: { wheel: { outside: 150 } },
    path: 'wheel.outside',
    says: /its screws sit on a circle of 141 mm, so the roots of its teeth \(141 mm\) need at least 152\.5 mm: an outside of 162 mm or more/,
    cure: { wheel: { outside: 162 } },
  },
  {
    what: 'a screw circle through the bore',
    patch: { wheel: { screws: { circle: 132 } } },
    path: 'wheel.screws.circle',
    says: /breaks into the bore/,
    cure: { wheel: { screws: { circle: 'auto' } } },
  },
  {
    what: 'a root radius that does not fit the valley',
    patch: { wheel: { root_radius: 5 } },
    path: 'wheel.root_radius',
    says: /does not fit the valley\. Allowed: up to/,
    cure: { wheel: { root_radius: 0.8 } },
  },
  {
    what: 'wheel screws that nobody makes with a button head',
    patch: { wheel: { screws: { size: 'M20' }, outside: 300 } },
    path: 'wheel.screws.size',
    says: /M20/,
    cure: { wheel: { screws: { size: 'M6' } } },
  },
  {
    what: 'a part thinner than its own pockets',
    patch: adapter({ thickness: 8.5 }),
    path: 'adapter.thickness',
    says: /A part 8\.5 mm thick has no room for the pockets.*8\.6 mm deep\. Leave thickness on auto/,
    cure: adapter({ thickness: 'auto' }),
  },
  {
    what: 'a part thinner than its recesses',
    patch: { ...noWheel, driven: { register: { gender: 'male', depth: 12, fit: 'h7' } }, adapter: { thickness: 15 } },
    path: 'adapter.thickness',
    says: /no room for the register recesses, 16\.6 mm deep/,
    cure: adapter({ thickness: 'auto' }),
  },
  {
    what: 'a shoulder as high as the part is thick',
    patch: { wheel: { shoulder: 20, thickness: 22, outside: 300 }, adapter: { thickness: 15 } },
    path: 'adapter.thickness',
    says: /no room for the wheel seat and its chamfer, 21 mm deep/,
    cure: adapter({ thickness: 40 }),
  },
  {
    what: 'a bore that swallows the recess',
    patch: adapter({ bore: 62 }),
    path: 'adapter.bore',
    says: /The bore \(62 mm\) cuts away the driving register \(62\.01 mm\)\. Use auto, or less than 61\.51 mm\./,
    cure: adapter({ bore: 'auto' }),
  },
  {
    what: 'an outside that leaves no step for the wheel',
    patch: adapter({ outside: 130 }),
    path: 'adapter.outside',
    says: /leaves no step for the wheel to sit on: its seat is 129 mm\. Use auto, or 132 mm or more\./,
    cure: adapter({ outside: 'auto' }),
  },
  {
    what: 'two wishes for the bolts that both flanges share',
    patch: { ...sameHoles, adapter: { ...through, driven: { fastening: 'through', class: '8.8' } } },
    path: 'adapter.driven.class',
    says: /The same bolts run through both flanges, so adapter\.driving\.class speaks for them\. Write class: 8\.8 there/,
    cure: adapter({ driving: { class: '8.8' } }),
  },
];

describe('wrong demands', () => {
  it.each(wrong)('$path: $what', ({ patch, path, says, cure }) => {
    const errors = errorsOf(patch);
    expect(errors.map((error) => error.path)).toContain(path);
    const message = errors.find((error) => error.path === path)?.message ?? '';
    expect(message).toMatch(says);
    expect(message).toMatch(/[.?]$/);
    expect(message).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(errorsOf(patch, cure).map((error) => error.path)).not.toContain(path);
  });

  it('reports wrong demands of both sides at once', () => {
    const errors = errorsOf(adapter({ driving: { screw: 'M10' }, driven: { head: 'flat' } }));
    expect(errors.map(({ path }) => path).sort()).toEqual(['adapter.driven.head', 'adapter.driving.screw']);
  });

  it('bolts run through two flanges with one set of screws when the wishes agree', () => {
    const { joint } = judge(
      sameHoles,
      { adapter: { ...through } },
      { adapter: { driving: { class: '8.8' }, driven: { class: '8.8' } } },
    );
    expect(joint.screws).toHaveLength(1);
    expect(joint.screws[0]?.class).toBe('8.8');
  });
});
