/** If a face slips, and what heads press on: joints drawn by hand, sums written out after EN 1993-1-8 and VDI 2230. mm, kN, MPa */
import { describe, expect, it } from 'vitest';
import { boltShear } from '../../src/validate/bolt-shear.ts';
import { headPressure } from '../../src/validate/head-pressure.ts';
import { drawn, round } from './drawn-screws.ts';
import { expectSaid, findingOf, type Patch, patched } from './help.ts';

/** 1000 N.m over four M8 on 100, of which half bear: 10 kN each. S355 on a metal that rubs as steel does. */
const loaded = (torque = 1000): Patch => ({
  adapterMaterial: { id: 'S355', family: 'steel', tensileStrength: 500, memory: false },
  driving: { holes: { kind: 'tapped', thread: 'M8', doubt: 0 } },
  driven: { holes: { kind: 'clear', diameter: { value: 9, doubt: 0 }, doubt: 0 } },
  job: { adapter: { driving: {}, driven: {} }, duty: { torque, shock: 1 } },
});
const said = (code: string, patch: Patch = {}, of: Patch = {}, torque = 1000) =>
  findingOf({ findings: boltShear.run(drawn(patch, patched(loaded(torque), of)).joint) }, code);

describe('screws in shear', () => {
  // EN 1993-1-8 table 3.4: 0.5 (10.9, thread) or 0.6 (shank) x 1000 x A / 1.25. M8: 36.6 mm2 (ISO 898-1); shank 50.27 mm2.
  const [thread, shank] = [(0.5 * 1000 * 36.6) / 1250, (0.6 * 1000 * (Math.PI / 4) * 64) / 1250];

  it.each([
    // M8 x 60 has 60 - 28 - 6.25 = 25.75 of shank (ISO 4762, from memory). The driving face is at 0, the driven one at 20.
    ['a shank that reaches through the plane', {}, 'shank'],
    ['a head 25.7 above the plane', { headZ: 25.7 }, 'shank'],
    ['thread that begins in the plane', { headZ: 25.75 }, 'thread'],
    ['a head 25.8 above it', { headZ: 25.8 }, 'thread'],
    ['a head below it', { headZ: -25.7 }, 'shank'],
    ['a length that is not known', { length: null, headZ: -0.1 }, 'thread'],
    ['a hexagon screw, threaded to its head', { head: { kind: 'hex' } }, 'thread'],
  ] as const)('%s', (_, patch, plane) => {
    const finding = said('bolt-shear-driving', patch);
    expectSaid(finding, { verdict: 'pass', value: 10, limit: plane === 'shank' ? shank : thread, digits: 1 });
    expect(finding.why).toContain(`The ${plane} lies in the plane`);
  });

  it('of uneven circles the outermost carries most: T r / sum r2 over half of them', () => {
    const positions = [...round(3, 40), { x: 60, y: 0 }];
    expect(said('bolt-shear-driving', { positions }).value).toBeCloseTo((1000 * 60) / (0.5 * (3 * 1600 + 3600)), 6);
  });

  it('too few are a caution where the face grips, a failure where nothing is known of that; so many would do', () => {
    const short = { head: { kind: 'hex' } };
    const over = said('bolt-shear-driving', short, {}, 1600);
    expectSaid(over, { verdict: 'caution', value: 16, limit: thread, digits: 1 });
    // 4 x 16 / 14.64 = 4.4.
    expect(over.remedy).toContain('(5 of these)');
    const loose = { tightening: { leastPreload: null } };
    expect(said('bolt-shear-driving', { ...short, ...loose }, {}, 1600).verdict).toBe('fail');
    expect(said('bolt-shear-driving', { ...short, ...loose }).verdict).toBe('pass');
  });

  it('class 12.9 is outside of the code and told so; a thread without a table is not assessed', () => {
    const strong = said('bolt-shear-driving', { class: '12.9', head: { kind: 'hex' } });
    expect(strong.limit).toBeCloseTo((0.5 * 1200 * 36.6) / 1250, 1);
    expect(strong.why).toContain('outside that code');
    expect(said('bolt-shear-driving').why).not.toContain('outside that code');
    expect(said('bolt-shear-driving', { thread: 'M8.3' }).verdict).toBe('not assessed');
  });

  it('what rests on memory is marked: thread lengths of socket and flat heads, and class 12.9', () => {
    const marked = (patch: Patch) => said('bolt-shear-driving', patch).source.includes('(from memory)');
    expect(marked({ head: { kind: 'hex' } })).toBe(false);
    expect(marked({ head: { kind: 'button' } })).toBe(false);
    expect(marked({ head: { kind: 'hex' }, class: '12.9' })).toBe(true);
    expect(marked({ head: { kind: 'socket' } })).toBe(true);
    expect(marked({ head: { kind: 'flat' } })).toBe(true);
    const wall = (memory: boolean) =>
      said('bearing-driving', {}, { adapterMaterial: { tensileStrength: 200, memory } }).source;
    expect([wall(true), wall(false)].map((source) => source.includes('(from memory)'))).toEqual([true, false]);
  });
});

describe('walls of the holes', () => {
  /*
   * EN 1993-1-8 table 3.4, 3.6.1(10): min(k1 alpha_b, 1.5) fu d t / 1.25, no more than one d = 8 mm of depth counted. Adapter: 500 MPa,
   * hole 9, 20 mm to its bore and rim: k1 2.5, alpha_b 1, so 1.5. S355 of the table: 470 MPa at the least.
   */
  const wall = (fu: number, t: number, share = 1.5) => (share * fu * 8 * t) / 1250;
  const weak = { adapterMaterial: { tensileStrength: 200 } };
  const bearing = (patch: Patch, of: Patch = {}) => said('bearing-driving', patch, { ...weak, ...of });

  it.each([
    ['a hole right through counts one diameter', {}, {}, 8],
    ['a head 6 above the face', { headZ: 6 }, {}, 6],
    ['below it', { headZ: -6 }, {}, 6],
    ['a washer of 2 under it', { headZ: 6, washer: { outside: 16, thickness: 2 } }, {}, 4],
    ['a flat head of 4', { headZ: 6, head: { kind: 'flat', height: 4 } }, {}, 2],
    [
      'a head outside: the whole adapter, its washer is not in it',
      { headZ: 50, seat: 'outside', washer: { outside: 16, thickness: 2 } },
      { adapterSpec: { thickness: 7 } },
      7,
    ],
    [
      'a thread in the adapter: what engages',
      { fastening: 'into_adapter', engagement: { has: 5 } },
      { adapterSpec: { groups: [] } },
      5,
    ],
  ] as const)('adapter: %s', (_, patch, of, depth) => {
    const finding = bearing(patch, of);
    expect(finding.limit).toBeCloseTo(wall(200, depth), 6);
    expect(finding.value).toBeCloseTo(10, 6);
    expect(finding.why).toContain('The adapter (metal A');
    expect(finding.verdict).toBe(wall(200, depth) >= 10 ? 'pass' : 'caution');
  });

  it('the driven face lies a thickness higher', () => {
    const finding = said(
      'bearing-driven',
      { side: 'driven', headZ: 26, points: -1 },
      { ...weak, driven: { thickness: { value: 30 } } },
    );
    expect(finding.limit).toBeCloseTo(wall(200, 6), 6);
  });

  it('a hole of the flange, and a thread in it: what engages of it', () => {
    // Clear holes: its own thickness; a thread: what engages; the S355 of the flange is then the weaker.
    const strong = { adapterMaterial: { tensileStrength: 2000 } };
    const limit = (side: string, patch: Patch, of: Patch = {}) =>
      said(`bearing-${side}`, { side, ...patch }, { ...strong, ...of });
    const one = limit('driving', { engagement: { has: 4 } });
    const two = limit('driving', { engagement: { has: 6 } });
    expect((two.limit ?? 0) / (one.limit ?? 1)).toBeCloseTo(1.5, 6);
    expect(one.why).toContain('holes of 8.00 mm');
    const clear = limit('driven', { headZ: 0, engagement: { has: 4 } }, { driven: { thickness: { value: 6 } } });
    expect(clear.limit).toBeCloseTo(two.limit ?? 0, 6);
    expect(clear.why).toContain('holes of 9.00 mm');
    const open = limit('driven', { headZ: 0 }, { driven: { thickness: null } });
    expect(open.remedy).toBe('Give driven.thickness.');
    expect(limit('driving', { engagement: { has: null } }).remedy).toBe('Give driving.holes.depth.');
  });

  it('an edge or a neighbour that is near takes its share', () => {
    // 8 to the bore of 84 (42 off): k1 = 2.8 x 8 / 9 - 1.7 = 0.789.
    expect(bearing({}, { adapterSpec: { bore: 84 } }).limit).toBeCloseTo(wall(200, 8, (2.8 * 8) / 9 - 1.7), 6);
    // The same to a rim of 116; nearer than nothing there is none.
    expect(bearing({}, { adapterSpec: { outside: 116 } }).limit).toBeCloseTo(wall(200, 8, (2.8 * 8) / 9 - 1.7), 6);
    expect(bearing({}, { adapterSpec: { outside: 90 } }).limit).toBe(0);
    // Two that stand 15 apart: alpha_b = 15 / 27 - 1/4 = 0.3056, k1 2.5.
    const near = [...round(3, 50), { x: 50 * Math.cos(0.3003), y: 50 * Math.sin(0.3003) }];
    const apart = 100 * Math.sin(0.3003 / 2);
    expect(bearing({ positions: near }).limit).toBeCloseTo(wall(200, 8, 2.5 * (apart / 27 - 0.25)), 6);
  });

  it('gives way: a caution where the face grips, else a failure', () => {
    expect(bearing({ headZ: 4 }).verdict).toBe('caution');
    expect(bearing({ headZ: 4, tightening: { leastPreload: null } }).verdict).toBe('fail');
  });

  it('is not told where nothing holds the face', () =>
    expect(boltShear.run(drawn({ side: 'wheel' }, loaded()).joint)).toEqual([]));
});

describe('what a head presses on', () => {
  const seat = {
    under: 'head',
    part: 'adapter',
    material: 'metal A',
    soft: false,
    face: 13,
    outer: 13,
    inner: 9,
    limit: 500,
    how: 'table',
    source: 'table',
  };
  const press = (patch: Patch, group: Patch = {}, of: Patch = {}) => {
    const findings = headPressure.run(drawn({ ...group, tightening: { seats: [{ ...seat, ...patch }] } }, of).joint);
    const [finding] = findings;
    if (!finding || findings.length !== 1) throw new Error(`${findings.length} findings`);
    return finding;
  };

  it.each([
    // A hard seat settles a little up to 1.2 of its pressure; a soft one may cost half of the preload. Choice of this program.
    [false, 500, 'pass'],
    [false, 501, 'caution'],
    [false, 600, 'caution'],
    [false, 601, 'fail'],
    [true, 500, 'pass'],
    [true, 601, 'caution'],
    [true, 1000, 'caution'],
    [true, 1001, 'fail'],
  ] as const)('soft %s, %d MPa on 500: %s', (soft, usual, verdict) => {
    const finding = press({ soft, usual });
    expectSaid(finding, { verdict, value: usual, limit: 500 });
    expect(finding.code).toBe('head-pressure-driving');
  });

  it('cures: a washer under it, weaker screws, a harder metal, each with its pressure', () => {
    // ISO 7089 M8: 16 x 1.6, hole 8.4. Under it 13 + 1.6 x 1.6 = 15.56, hole 9. 10.9 to 8.8: 640 over 940 (M8).
    const washer = (600 * (13 ** 2 - 9 ** 2)) / (15.56 ** 2 - 9 ** 2);
    expect(press({ usual: 600 }).remedy).toBe(
      `Put hardened washers (300 HV) under them (adapter.driving.washer: true): ${washer.toFixed(0)} MPa, or take weaker screws (adapter.driving.class: 8.8): ${((600 * 640) / 940).toFixed(0)} MPa, or use a metal that bears 600 MPa.`,
    );
    expect(press({ usual: 600 }, { class: '8.8' }).remedy).not.toContain('weaker screws');
    for (const patch of [{ washer: { outside: 16, thickness: 1.6 } }, { head: { kind: 'flat' } }])
      expect(press({ usual: 600 }, patch).remedy).toMatch(/^Take weaker screws/);
    // A wide hole leaves a washer nothing to spread on: 15.56 on 15 presses more than 17 on 15.
    expect(press({ usual: 600, outer: 17, inner: 15 }).remedy).toMatch(/^Take weaker screws/);
    expect(press({ usual: 600 }, { side: 'wheel' }).remedy).toBe('Use a metal that bears 600 MPa.');
    // Nobody is sent to look for a metal ten times as hard.
    expect(press({ usual: 9000 }).remedy).toContain('use a metal that bears 5000 MPa');
  });

  it('a hole as wide as the head leaves nothing to press on', () => {
    const wide = { usual: Number.POSITIVE_INFINITY, inner: 13 };
    expectSaid(press(wide), { verdict: 'fail' });
    expect(press(wide).remedy).toBe(
      'Take a larger screw (adapter.driving.screw), or put hardened washers under them (adapter.driving.washer: true).',
    );
    expect(press(wide, { side: 'wheel' }).remedy).toBe('Put wide washers under them, or have smaller holes drilled.');
  });

  it('under nuts, and on what bears nothing that is known', () => {
    expect(press({ usual: 400, under: 'nut' }).code).toBe('nut-pressure-driving');
    expect(press({ usual: 400, limit: null })).toMatchObject({
      verdict: 'not assessed',
      remedy: expect.stringMatching(/^Put metal under the heads/),
    });
  });

  it('says which flange was taken for S355, and what holds the torque down', () => {
    const silent = { driven: { material: null } };
    expect(press({ usual: 400, part: 'driven flange' }, {}, silent).why).toContain('(taken');
    expect(press({ usual: 400, part: 'driving flange' }, {}, { driving: { material: null } }).why).toContain('(taken');
    for (const part of ['driving flange', 'adapter'])
      expect(press({ usual: 400, part }, {}, silent).why).not.toContain('(taken');
    const held = drawn({
      tightening: { heldDown: { share: 0.739, by: 'the adapter' }, seats: [{ ...seat, usual: 400 }] },
    });
    expect(headPressure.run(held.joint)[0]?.why).toContain('held down to 73 % by the adapter');
  });

  it('nothing is said of a screw without a table, or without seats', () => {
    expect(headPressure.run(drawn({ thread: 'M8.3', tightening: { seats: [{ ...seat, usual: 400 }] } }).joint)).toEqual(
      [],
    );
    expect(headPressure.run(drawn({ tightening: { seats: undefined } }).joint)).toEqual([]);
  });
});
