/** Links of the centring chain, by hand: what carries the wheel, and what is said to make a fit closer. mm */
import { describe, expect, it } from 'vitest';
import { stackOf } from '../../src/formulas/chain.ts';
import { asBuilt } from '../../src/inspect/as-built.ts';
import { linksTo, type Station, unread } from '../../src/rotor/links.ts';
import { tiltLinks } from '../../src/rotor/tilt.ts';
import { wheelCut } from '../../src/rotor/wheel-links.ts';
import { findingOf, type Judged, judge, type Patch } from '../validate/help.ts';

const ids = ({ joint }: Judged, station: Station) => linksTo(joint, station).map(({ id }) => id);
const cureOf = ({ joint }: Judged, id: string) => linksTo(joint, 'shaft').find((link) => link.id === id)?.cure ?? '';

describe('what carries the wheel', () => {
  // Both flanges run out 0.02 in all, 0.01 off centre; the sound joint's own wheel sits on the driven face of the adapter.
  const on = (flange: string): Judged =>
    judge({
      wheel: { on: flange, bore: undefined, outside: 200 },
      driving: { outside: 112 },
      driven: { outside: 128 },
    });

  it('is the driving flange: it runs out as that flange does', () => {
    expect(ids(on('driving'), 'wheel')).toEqual(['driving-run-out', 'wheel-bore']);
  });

  it('is the driven flange: its rim stands where the register holds it, and its own shaft does not move it', () => {
    const made = on('driven');
    expect(ids(made, 'wheel')).toEqual(['driving-run-out', 'driving-seat', 'turn-over', 'driven-seat', 'wheel-bore']);
    // The shaft is off by its own run-out besides.
    const shaft = stackOf(linksTo(made.joint, 'shaft')).worst;
    const rim = stackOf(linksTo(made.joint, 'wheel').filter(({ id }) => id !== 'wheel-bore')).worst;
    expect(shaft - rim).toBeCloseTo(0.01, 9);
  });

  it('leaves the wheel off by its teeth about its bore where a dial set or read the teeth', () => {
    const asked = judge({ wheel: { set_true: 0.1 } });
    const measured = asBuilt(judge({ built: { wheel: { runout: 0.06 } } }).joint);
    if (!measured) throw new Error('nothing was built');
    const half = wheelCut(asked.joint) / 2;
    expect(stackOf(linksTo(asked.joint, 'teeth')).worst).toBeCloseTo(0.05, 9);
    expect(stackOf(linksTo(asked.joint, 'wheel')).worst).toBeCloseTo(0.05 + half, 9);
    expect(stackOf(linksTo(measured, 'teeth')).worst).toBeCloseTo(0.03, 9);
    expect(stackOf(linksTo(measured, 'wheel')).worst).toBeCloseTo(0.03 + half, 9);
  });
});

describe('what makes a fit closer', () => {
  const caliper: Patch = { driving: { register: { diameter: { value: 62, doubt: 0.03 } } } };

  it('is a closer class where the own half is the wider one, and the micrometer where the mate is', () => {
    // H8 on 62 is 0.046 wide (ISO 286-1), the mate 0.04.
    const rough: Patch = {
      driving: { register: { diameter: { value: 62, doubt: 0.02 } } },
      adapter: { driving: { fit: 'H8' } },
    };
    expect(cureOf(judge(rough), 'driving-seat')).toMatch(
      /^a closer fit \(adapter\.driving\.fit: H6\), or the flange's register measured/,
    );
    expect(cureOf(judge(caliper), 'driving-seat')).toMatch(
      /^the flange's register measured with a micrometer .*\(it is known to \+-0\.030 mm only\), then a closer fit/,
    );
  });

  it.each([
    ['a reading by micrometer', { value: 62, instrument: 'micrometer' }],
    ['three readings, the mean off the middle', { readings: [62, 62, 62.025], instrument: 'micrometer' }],
    ['readings by micrometer, spread as far as one explains', { readings: [62, 62.025], instrument: 'micrometer' }],
    ['a micrometer with a doubt of its own', { value: 62, doubt: 0.01, instrument: 'micrometer' }],
  ])('never asks again for a micrometer after %s, and for nothing once the fit is the closest too', (_, diameter) => {
    const measured: Patch = { driving: { register: { diameter } } };
    expect(cureOf(judge(measured), 'driving-seat')).toBe('a closer fit (adapter.driving.fit: H6)');
    expect(cureOf(judge(measured, { adapter: { driving: { fit: 'H6' } } }), 'driving-seat')).toBe('');
  });

  it('asks for a micrometer, and not for fit rings again, where these proved it', () => {
    const cure = cureOf(
      judge({ driving: { register: { diameter: { value: 62, doubt: undefined, proven: true } } } }),
      'driving-seat',
    );
    expect(cure).toContain('measured with a micrometer');
    expect(cure).not.toContain('fit rings');
  });

  it('is less clearance and then a finer tolerance where it is made to its mate: IT5 of 62 is 0.013 (ISO 286-1)', () => {
    const made = (fit: Patch) => cureOf(judge({ adapter: { driving: { fit } } }), 'driving-seat');
    expect(made({ clearance: '0.02 mm' })).toBe('less clearance (adapter.driving.fit: { clearance: 0 mm })');
    expect(made({ clearance: '0 mm' })).toBe(
      'a finer tolerance (adapter.driving.fit: { clearance: 0 mm, tolerance: 0.013 mm })',
    );
    expect(made({ clearance: '0 mm', tolerance: '0.013 mm' })).toBe('');
  });

  it('leaves one chucking, and a wheel turned to its register, at that', () => {
    expect(cureOf(judge(), 'turn-over')).toMatch(/one chucking/);
    expect(cureOf(judge({ adapter: { setup: 'one chucking' } }), 'turn-over')).toBe('');
    const faces = (patch: Patch) => tiltLinks(judge(patch).joint).find(({ id }) => id === 'parallelism');
    expect(faces({})?.cure).toBe('both faces in one chucking (adapter.setup: one chucking)');
    const one = faces({ adapter: { setup: 'one chucking' } });
    expect(one?.cure).toBe('');
    // 0.02 for 0.05 (common practice, no source): two fifths of the slope.
    expect((one?.most ?? 0) / (faces({})?.most ?? 1)).toBeCloseTo(0.4, 9);
    const bore = (patch: Patch) =>
      linksTo(judge(patch).joint, 'wheel').find(({ id }) => id === 'wheel-bore')?.cure ?? '';
    expect(bore({})).toMatch(/wheel\.fit: H8/);
    expect(bore({ wheel: { fit: 'H8', clearance: undefined } })).toMatch(/^the wheel set true with a dial/);
  });

  it('does not true up what a dial cannot tell from nothing: eight readings of 0.01 either way are good to 4/pi of that', () => {
    const read = (size: number) =>
      judge({ driven: { runout: { rim: [0, 1, 2, 3, 4, 5, 6, 7].map((k) => size * Math.cos((k * Math.PI) / 4)) } } });
    expect(cureOf(read(0.012), 'driven-run-out')).toBe('');
    expect(cureOf(read(0.014), 'driven-run-out')).toBe('the driven flange trued up');
  });

  it('is no finer class than the finest', () => {
    const finest: Patch = { adapter: { driving: { fit: 'H6' } } };
    expect(cureOf(judge(finest), 'driving-seat')).not.toMatch(/closer fit/);
    expect(cureOf(judge(caliper, finest), 'driving-seat')).not.toMatch(/closer fit/);
  });

  it('halves the play, where it is done: the fit alone would not', () => {
    const most = (...patches: Patch[]) =>
      linksTo(judge(...patches).joint, 'shaft').find(({ id }) => id === 'driving-seat')?.most ?? 0;
    // Doubt 0.03 either way and H7 of 0.030: (0.06 + 0.03)/2; a micrometer good to 0.003: (0.006 + 0.03)/2.
    expect(most(caliper)).toBeCloseTo(0.045, 9);
    expect(most(caliper, { driving: { register: { diameter: { value: 62, doubt: 0.003 } } } })).toBeCloseTo(0.018, 9);
    expect(most(caliper, { adapter: { driving: { fit: 'H6' } } })).toBeGreaterThan(0.039);
  });

  it('asks for dowels reamed together only where they are not', () => {
    const pinned = (dowels: unknown): Judged =>
      judge({ driven: { register: 'none' }, adapter: { driven: { dowels } }, wheel: undefined, sensor: undefined });
    expect(cureOf(pinned({ reamed: 'separately' }), 'driven-seat')).toMatch(/reamed together/);
    expect(cureOf(pinned({ reamed: 'together' }), 'driven-seat')).toMatch(/^closer dowel holes/);
  });
});

describe('a dial on the joint as bolted up', () => {
  it('takes the place of all before the driven flange, and of nothing behind it', () => {
    const made = asBuilt(
      judge({ built: { joint: { face: 0.02 } }, driven: { runout: { rim: 0.02, face: 0.03 } } }).joint,
    );
    if (!made) throw new Error('nothing was built');
    expect(tiltLinks(made).map(({ id }) => id)).toEqual(['as-bolted-up', 'driven-face']);
    // Each as read, and one graduation of the dial.
    expect(stackOf(tiltLinks(made)).worst).toBeCloseTo((0.02 + 0.01 + 0.03 + 0.01) / 128, 9);
  });
});

describe('a run-out read as one number', () => {
  const linkOf = (rim: unknown) => {
    const link = linksTo(judge({ driven: { runout: { rim } } }).joint, 'shaft').find(
      ({ id }) => id === 'driven-run-out',
    );
    if (!link) throw new Error('no link');
    return link;
  };

  it('lies half of it off centre, give or take half of the doubt, to a side that nobody knows', () => {
    expect(linkOf('0.03 +-0.01')).toMatchObject({ angle: null, cure: 'the driven flange trued up' });
    expect(linkOf('0.03 +-0.01').least).toBeCloseTo(0.01, 9);
    expect(linkOf('0.03 +-0.01').most).toBeCloseTo(0.02, 9);
    expect(linkOf('0.03 +-0.01').doubt).toBeCloseTo(0.005, 9);
    // One graduation of 0.01 is what is assumed.
    expect(linkOf(0.03)).toEqual(linkOf('0.03 +-0.01'));
    expect(linkOf('0.03 +-0').most).toBeCloseTo(0.015, 9);
  });

  it('is never less than nothing, and nothing is trued up that the dial cannot tell from it', () => {
    expect(linkOf('0.004 +-0.01').least).toBe(0);
    expect(linkOf('0.004 +-0.01').most).toBeCloseTo(0.007, 9);
    expect(linkOf('0.004 +-0.01').cure).toBe('');
  });

  it('is told in two parts, and a limit of a pattern has no dial', () => {
    expect(findingOf(judge({ driven: { runout: { rim: 0.03 } } }), 'concentricity').why).toContain(
      'run-out of the driven flange 0.020 mm (0.015 read, 0.005 doubt of the dial)',
    );
    const { joint } = judge({ driven: { from: 'DIN90-companion', runout: undefined } });
    const link = linksTo(joint, 'shaft').find(({ id }) => id === 'driven-run-out');
    // The pattern's 0.05 in all.
    expect(link).toMatchObject({ least: 0.025, most: 0.025, doubt: 0 });
  });
});

describe('what nobody read', () => {
  it('is not asked for once a dial on the joint has seen it', () => {
    const bare: Patch = { driving: { runout: undefined }, driven: { runout: undefined } };
    expect(unread(judge(bare).joint)).toEqual([
      'driving.runout.rim',
      'driving.runout.face',
      'driven.runout.rim',
      'driven.runout.face',
    ]);
    const seen = asBuilt(judge(bare, { built: { joint: { rim: 0.02, face: 0.02 } } }).joint);
    expect(seen && unread(seen)).toEqual(['driven.runout.rim', 'driven.runout.face']);
  });
});
