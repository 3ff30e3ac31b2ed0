/** Threads deeper than the metal that they are cut in: in a flange, where a boss may stand behind, and in the adapter. Values by hand. */
import { describe, expect, it } from 'vitest';
import { errorsOf, expectSaid, findingOf, judge, type Patch } from './help.ts';

describe('a thread in a flange', () => {
  const said = (driving: Patch, about = 'driving') => findingOf(judge({ driving }), 'thread-in-flange', about);

  it('is no deeper than the flange is thick, as far as that was measured', () => {
    // One caliper reading is good to 0.03: 16 and 16.03 are allowed to be the same, 16.04 are not.
    expectSaid(said({ thickness: 16 }), { verdict: 'pass', value: 16, limit: 16.03 });
    expectSaid(said({ holes: { depth: 16.03 } }), { verdict: 'pass', value: 16.03, limit: 16.03 });
    expectSaid(said({ holes: { depth: 16.04 } }), { verdict: 'caution', value: 16.04, limit: 16.03 });
    // A ruler is good to half a millimetre.
    expectSaid(said({ thickness: '15.6 ruler' }), { verdict: 'pass', value: 16, limit: 16.1 });
  });

  it('asks which of the two was misread, with what to write where it goes right through or a boss stands behind', () => {
    const { remedy, why } = said({ thickness: 14 });
    expect(why).toContain('driving.thickness is 14.00 mm +-0.03 mm at the holes');
    expect(remedy).toContain('(driving.holes: { depth: 14.0, through: true })');
    expect(remedy).toMatch(/boss or the hub .*driving\.thickness/);
    expect(remedy).toContain('not that of the drill');
  });

  it('goes away when the remedy is done', () => {
    expect(said({ thickness: 14, holes: { depth: 14, through: true } }).verdict).toBe('pass');
    expect(said({ thickness: 20 }).verdict).toBe('pass');
  });

  it('is not asked of clear holes, nor where the thickness was not measured', () => {
    const { findings } = judge();
    expect(findings.filter(({ code }) => code === 'thread-in-flange').map(({ feature }) => feature)).toEqual([
      'driving-screws',
    ]);
    const bare = judge({ driving: { thickness: undefined } });
    expect(bare.findings.filter(({ code }) => code === 'thread-in-flange')).toEqual([]);
  });
});

describe("the adapter's own thread for the wheel", () => {
  const errors = (depth: number, more: Patch = {}) =>
    errorsOf({ adapter: { thickness: 22, ...more }, wheel: { screws: { depth } } });

  it('is refused where it is deeper than the metal under the wheel, with the place and the likely slip', () => {
    // 22 thick; the wheel sits on a shoulder as high as its sheet is thick, 3 less what the seat leaves.
    const seat = judge({ adapter: { thickness: 22 } }).joint.adapterSpec.wheelSeat?.height ?? 0;
    const room = 22 - seat;
    expect(room).toBeLessThan(22);
    expect(errors(room)).toEqual([]);
    expect(errors(room + 0.1)).toMatchObject([{ path: 'wheel.screws.depth' }]);
    const [error] = errors(40);
    expect(error?.path).toBe('wheel.screws.depth');
    expect(error?.message).toContain(`A thread 40 mm deep does not go into an adapter that has ${room} mm of metal`);
    expect(error?.message).toContain('Was 4 mm meant?');
  });

  it('is drawn as asked where it goes in', () => {
    const { adapterSpec } = judge({ adapter: { thickness: 22 }, wheel: { screws: { depth: 8 } } }).joint;
    const shape = adapterSpec.groups.find(({ id }) => id === 'wheel-screws')?.shape;
    expect(shape).toMatchObject({ kind: 'tapped', threadDepth: 8 });
  });
});
