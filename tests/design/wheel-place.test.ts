/** Where the wheel sits and what holds it, against sums by hand. Lengths in mm. */
import { describe, expect, it } from 'vitest';
import { judge } from '../validate/help.ts';

describe('the wheel on the adapter', () => {
  it('sits on a shoulder round the flange and everything that opens on its face', () => {
    const { joint } = judge();
    // Flange 128 and 1 of room: 129. Threads: 108 + 10 + twice a web of 3 and a chamfer of 1 is 126: less.
    expect(joint.adapterSpec.wheelSeat).toMatchObject({
      face: 'driven',
      diameter: 129,
      height: 3,
      limits: { zone: 'h7', upper: 129 },
    });
    expect(joint.adapterSpec.wheelSeat?.limits.lower).toBeCloseTo(129 - 0.04, 9);
    expect(joint.wheelSpec?.bore).toBeCloseTo(129.12, 9);
    // Sheet 3 thick on a step 3 below the face.
    expect(joint.wheelZ).toBeCloseTo(joint.adapterSpec.thickness - 3, 9);
  });

  it('puts its screws outside the bore by a hole and a web, and the rim outside them', () => {
    const { joint } = judge();
    // 129.12 + 2 (2.75 + 3) = 140.62, up to 141; rim 141 + 5 + 2 (3 + 1).
    for (const { x, y } of joint.wheelSpec?.screwHoles?.positions ?? [])
      expect(2 * Math.hypot(x, y)).toBeCloseTo(141, 9);
    expect(joint.adapterSpec.outside).toBe(154);
  });

  it('drills the same places in wheel and adapter', () => {
    const { joint } = judge();
    const adapter = joint.adapter.drillings
      .filter(({ id }) => id.startsWith('wheel-screws'))
      .map(({ x, y }) => ({ x, y }));
    expect(adapter).toEqual(joint.wheelSpec?.screwHoles?.positions);
    expect(joint.screws.find(({ side }) => side === 'wheel')?.positions).toEqual(adapter);
  });

  it('goes to the driving face when asked, and stands on the other side of its step', () => {
    const { joint } = judge({ wheel: { face: 'driving', thickness: 5, outside: 200 } });
    // Flange 112, heads do not open there; M10 tapped through: 108 + 10 + 8 = 126.
    expect(joint.adapterSpec.wheelSeat).toMatchObject({ face: 'driving', diameter: 126 });
    // The step is 3 above z = 0; a sheet of 5 hangs from there.
    expect(joint.wheelZ).toBeCloseTo(-2, 9);
    const screws = joint.screws.find(({ side }) => side === 'wheel');
    expect(screws).toMatchObject({ points: 1, headZ: -2 });
  });

  it('centres on a flange rim when asked, flat on the face of the adapter', () => {
    const { joint } = judge({ wheel: { on: 'driven' } });
    expect(joint.adapterSpec.wheelSeat).toBeNull();
    expect(joint.wheelRegister).toMatchObject({ diameter: 128, lower: 127.97, upper: 128.03 });
    expect(joint.wheelSpec?.bore).toBeCloseTo(128.12, 9);
    expect(joint.wheelZ).toBeCloseTo(joint.adapterSpec.thickness, 9);
  });

  it('follows a bore that was asked for: the shoulder is smaller by the clearance', () => {
    expect(judge({ wheel: { bore: 135 } }).joint.adapterSpec.wheelSeat?.diameter).toBeCloseTo(134.88, 9);
  });

  it('screws it down with button heads that reach through the sheet, the mouth and 1 d of thread', () => {
    const screws = judge().joint.screws.find(({ side }) => side === 'wheel');
    // 3 + 0.4 + 5 = 8.4, so M5 x 10 (the shortest usual length of ISO 7380-1 M5).
    expect(screws).toMatchObject({
      thread: 'M5',
      length: 10,
      class: '8.8',
      head: { kind: 'button', standard: 'ISO 7380-1' },
    });
    expect(screws?.lengths.least).toBeCloseTo(8.4, 9);
    expect(screws?.engagement.has).toBeCloseTo(6.6, 9);
  });

  it('lays the wheel in its own weight and place on the joint', () => {
    const { joint } = judge();
    expect(joint.wheelMass?.centre[2]).toBeCloseTo(joint.adapterSpec.thickness - 1.5, 9);
  });

  it('turns the wheel screws away from the other holes, or puts them where the job says', () => {
    expect(
      judge({ wheel: { screws: { first: 10 } } }).joint.adapter.drillings.find(({ id }) => id === 'wheel-screws-1'),
    ).toMatchObject({
      x: 70.5 * Math.cos(Math.PI / 18),
      y: 70.5 * Math.sin(Math.PI / 18),
    });
  });
});
