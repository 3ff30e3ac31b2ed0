/** Grip of a face at its limits and just past them, and what would make it hold: four screws on 100, sums on paper. kN, N.m */
import { describe, expect, it } from 'vitest';
import { gripCheck, gripOf, grips, nothingLost } from '../../src/validate/grip.ts';
import { drawn } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch, patched } from './help.ts';

/** At 15 kN and 0.2 four screws on 100 hold 0.2 x 4 x 15 x 50 = 600 N.m. */
const face = (torque: number | undefined, duty: Patch = {}): Patch => ({
  adapterMaterial: { id: 'S355', family: 'steel' },
  job: {
    adapter: { driving: { face_friction: 0.2 }, driven: { face_friction: 0.2 } },
    duty: { torque, shock: 1, ...duty },
  },
});
const bolt: Patch = { fastening: 'through', nut: { height: 6.8, acrossFlats: 13 } };
const said = (
  torque: number | undefined,
  patch: Patch = {},
  of: Patch = {},
  lost: (() => number | null) | number = 0,
) =>
  findingOf(
    {
      findings: gripCheck(typeof lost === 'function' ? lost : () => lost).run(
        drawn(patched(bolt, patch), patched(face(torque), of)).joint,
      ),
    },
    'grip-driving',
  );

describe('how surely a face grips', () => {
  it.each([
    // 1.25 (EN 1993-1-8, slip at the ultimate limit); below 1 it slips.
    [480, {}, 1.25, 'pass'],
    [481, {}, 1.25, 'caution'],
    [600, {}, 1.25, 'caution'],
    [601, {}, 1.25, 'fail'],
    // 1.8 where it reverses (VDI 2230, from memory).
    [333.3, { reversing: true }, 1.8, 'pass'],
    [333.4, { reversing: true }, 1.8, 'caution'],
    // To and fro it must at least hold as surely as a steady one should.
    [480, { reversing: true }, 1.8, 'caution'],
    [481, { reversing: true }, 1.8, 'fail'],
    // A safety of one's own leaves no room below it.
    [300, { slip_safety: 2 }, 2, 'pass'],
    [301, { slip_safety: 2 }, 2, 'fail'],
    [300, { slip_safety: 2, reversing: true }, 2, 'pass'],
  ] as const)('%f N.m, %o: %f wanted, %s', (torque, duty, limit, verdict) =>
    expectSaid(said(torque, {}, { job: { duty } }), { verdict, value: 600 / torque, limit }),
  );

  it('counts what is left of the least: scatter of the friction class, settling, or half where that is not known', () => {
    expect(said(400, {}, {}, 5).value).toBeCloseTo(1, 6);
    expect(said(400, {}, {}, () => null).value).toBeCloseTo(0.75, 6);
    expect(said(400, {}, {}, () => null).why).toContain('half of it, 7.5 kN, taken off');
    expect(said(400, { tightening: { spread: { least: 10 } } }).value).toBeCloseTo(1, 6);
    expect(said(400, { tightening: { spread: { least: 20 } } }).value).toBeCloseTo(1.5, 6);
    expect(said(400, {}, {}, 16).value).toBe(0);
    expect(said(400, {}, {}, 5).why).toContain('Without that loss the safety would be 1.50');
    expect(said(400).why).toContain('nothing taken off');
  });

  it('is open without a torque, a preload or a friction that is known', () => {
    expect(said(undefined).remedy).toMatch(/^Give duty\.torque/);
    expect(said(400, { tightening: { leastPreload: null } })).toMatchObject({
      verdict: 'not assessed',
      why: expect.stringContaining('no torque'),
    });
    const open = said(
      400,
      {},
      { adapterMaterial: { family: 'plastic' }, job: { adapter: { driving: { face_friction: undefined } } } },
    );
    expect(open.remedy).toContain('adapter.driving.face_friction');
    const { joint } = drawn({}, face(1));
    expect(grips(joint, 'driving')).toBe(true);
    expect(grips(drawn({ tightening: { leastPreload: null } }, face(1)).joint, 'driving')).toBe(false);
    expect(gripOf({ ...joint, screws: [] }, 'driving', nothingLost)).toMatchObject({
      why: expect.stringContaining('no screws'),
    });
  });
});

describe('what would make it hold', () => {
  const cure = (torque: number, patch: Patch = {}, of: Patch = {}, lost = 0) => said(torque, patch, of, lost).remedy;
  // T needs 1.25 T / (0.2 x 4 x 50) kN a screw, or 1.25 T / (15 x 4 x 50) of friction.
  it('how much is missing, in force and in friction, this rounded up', () => {
    expect(cure(600)).toContain('Needs 3.8 kN more per screw, or friction 0.25:');
    expect(cure(601)).toContain('or friction 0.26:');
  });

  it.each([
    // Yield strengths of ISO 898-1, M8: 640, 940, 1100. 10.9 to 12.9: 1.170 times.
    ['10.9', 560, 'take class 12.9'],
    ['10.9', 562, null],
    ['8.8', 704, 'take class 10.9'],
    ['8.8', 706, 'take class 12.9'],
    ['8.8', 824, 'take class 12.9'],
    ['8.8', 826, null],
    ['12.9', 490, null],
  ] as const)('class %s at %d N.m: %s', (cls, torque, says) => {
    const remedy = cure(torque, { class: cls });
    if (says === null) expect(remedy).not.toContain('take class');
    else expect(remedy).toContain(says);
    expect(cure(torque, { class: cls, tightening: { heldDown: { share: 0.5, by: 'x' } } })).not.toContain('take class');
    expect(cure(torque, { class: cls, thread: 'M8.3' })).not.toContain('take class');
  });

  it('what settles stays the same however hard the screw is pulled', () => {
    // 15 less 3: 480 N.m. 450 needs 14.06, with what settles 17.06 of 15: 1.1375, within 12.9. Without it that would be 1.172 of 12.
    expect(cure(450, {}, {}, 3)).toContain('take class 12.9');
  });

  it('as many screws again up to twice as much, and a circle that the flange has room for', () => {
    // 600 N.m: 1.25 times, a circle of 125 and 16 more of screw.
    expect(cure(600)).toContain('as many again between the 4 that are there');
    expect(cure(960)).toContain('as many again');
    expect(cure(961)).not.toContain('as many again');
    const on = (outside: number) => cure(600, {}, { driving: { outside: { value: outside } } });
    expect(on(141)).toContain('a bolt circle of 125 mm');
    expect(on(140.9)).not.toContain('bolt circle');
    expect(cure(576.1)).not.toContain('bolt circle of 120');
  });

  it('blasted faces up to 0.4 of friction, on steel', () => {
    // 0.4 holds 960 N.m at 1.25; nothing less is read off the classes A and B of EN 1993-1-8.
    expect(cure(960)).toContain('blast both faces');
    expect(cure(961)).not.toContain('blast both faces');
    expect(cure(700, {}, { adapterMaterial: { family: 'aluminium' } })).not.toContain('blast both faces');
  });

  it('where next to nothing is left it says so: below 0.1 kN', () => {
    expect(cure(400, {}, {}, 14.91)).toMatch(/^Needs 12\.5 kN per screw, and settling or heat leaves next to nothing/);
    expect(cure(400, {}, {}, 14.89)).toMatch(/^Needs 12\.4 kN more per screw/);
  });

  it('names no dowels where the torque reverses, and what there is room for', () => {
    const both = { job: { duty: { reversing: true } } };
    // 1.8 x 600 / (0.2 x 4 x 50) = 27 kN, 12 more than 15; 1.8 times: as many screws again would do.
    expect(cure(600, {}, both)).toMatch(/^Needs 12\.0 kN more per screw, or friction 0\.36:/);
    expect(cure(600, {}, both)).toContain('as many again between the 4 that are there');
    expect(cure(600, {}, both)).not.toContain('dowels (adapter');
    expect(cure(600, {}, both)).toContain('Dowels are no cure: the torque reverses');
    expect(said(100, {}, both).improve).not.toContain('dowels');
    expect(cure(600)).toContain('carry the torque by dowels (adapter.driving.dowels: auto)');
    expect(said(400, { tightening: { leastPreload: null } }, both).remedy).toBe(
      'Have the tightening torque worked out.',
    );
  });

  it('no class 12.9 in a hexagon head (ISO 4014 and 4017 list none, from memory): socket heads have it', () => {
    expect(cure(560, { head: { kind: 'hex' } })).toContain(
      'take socket heads of class 12.9 (adapter.driving.head: socket; adapter.driving.class: 12.9)',
    );
    expect(cure(704, { class: '8.8', head: { kind: 'hex' } })).toContain('take class 10.9 (adapter');
  });

  it('improves even a pass: a stronger class, blasted faces, dowels', () => {
    const better = (patch: Patch = {}, of: Patch = {}) => said(100, patch, of).improve ?? '';
    expect(better()).toBe(
      'Class 12.9 screws (adapter.driving.class: 12.9), or thicker or more screws, or blasted faces, or dowels (adapter.driving.dowels: auto).',
    );
    expect(better({ class: '12.9' })).toMatch(/^Thicker or more screws/);
    expect(better({}, { job: { adapter: { driving: { face_friction: 0.4 } } } })).not.toContain('blasted');
    expect(better({}, { job: { adapter: { driving: { face_friction: 0.39 } } } })).toContain('blasted');
  });
});
