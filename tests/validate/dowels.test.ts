/** What is said of dowels: every verdict, against hand sums. */
import { describe, expect, it } from 'vitest';
import { dowelPlay } from '../../src/job/joint-dowels.ts';
import { reportData } from '../../src/report/report-data.ts';
import { expectSaid, findingOf, type Judged, judge, type Patch } from './help.ts';

type Side = 'driving' | 'driven';

/** The sound joint with dowels on one side. */
const dowelled = (side: Side, dowels: unknown, more: Patch = {}): Judged =>
  judge(more, { adapter: { [side]: { dowels } } });
const about = (found: Judged, code: string, part: string) => findingOf(found, code, part);

// 8 m6 is +6 to +15 micrometres, 8 H7 is 0 to +15 (ISO 286). M8 on 84 mm in a flange 14 mm thick; 1045 and S355 yield at 310 and 355 MPa.
describe('the fit', () => {
  it('H7 on m6 passes in both halves: at most 9 micrometres of clearance, 15 of interference', () => {
    const found = dowelled('driving', 'auto');
    expectSaid(about(found, 'dowel-fit-driving', 'adapter'), { verdict: 'pass', value: 0.009, limit: 0.05 });
    expectSaid(about(found, 'dowel-fit-driving', 'driving flange'), { verdict: 'pass', value: 0.009, limit: 0.05 });
    expectSaid(findingOf(found, 'dowel-press-driving'), { verdict: 'pass', value: 0.015, limit: 0.03 });
    expect(about(found, 'dowel-fit-driving', 'adapter').why).toContain('8.000 mm to 8.015 mm');
  });

  it('a loose zone is a caution, a looser one fails', () => {
    // 8 F9 is +13 to +49: 43 micrometres over the thinnest pin. 8 E9 is +25 to +61: 55. 8 D11 is +40 to +130: 124 (ISO 286-2).
    const loose = (fit: string) => about(dowelled('driving', { fit }), 'dowel-fit-driving', 'adapter');
    expectSaid(loose('F9'), { verdict: 'pass', value: 0.043, limit: 0.05 });
    expectSaid(loose('E9'), { verdict: 'caution', value: 0.055, limit: 0.05 });
    expectSaid(loose('D11'), { verdict: 'fail', value: 0.124, limit: 0.05 });
  });

  it('a tight one likewise', () => {
    // 8 P7 is -24 to -9: 39 micrometres under the thickest pin. 8 S7 is -32 to -17: 47; made to squeeze by 70: fails.
    const tight = (fit: unknown) => findingOf(dowelled('driving', { fit }), 'dowel-press-driving');
    expectSaid(tight('P7'), { verdict: 'caution', value: 0.039, limit: 0.03 });
    expectSaid(tight({ interference: 0.07, tolerance: 0.015 }), { verdict: 'fail', value: 0.07, limit: 0.03 });
  });

  it('says what is played by both halves together, and nothing where there are none', () => {
    const found = dowelled('driving', 'auto');
    expect(dowelPlay(found.joint, 'driving')).toBeCloseTo(0.018, 9);
    expect(dowelPlay(found.joint, 'driven')).toBeNull();
    const apart = dowelled('driving', { reamed: 'separately' });
    // 9 in the adapter; the flange's holes are 8.020 to 8.035, 29 over the thinnest pin.
    expect(dowelPlay(apart.joint, 'driving')).toBeCloseTo(0.038, 9);
    expect(dowelPlay(judge().joint, 'driving')).toBeNull();
  });

  it('speaks of holes that are there as measured', () => {
    const flange = { value: 8.12, doubt: 0.01 };
    const found = dowelled('driving', { size: 8, circle: 84, first: 30, reamed: 'separately', flange });
    const said = about(found, 'dowel-fit-driving', 'driving flange');
    // 8.13 over 8.006.
    expectSaid(said, { verdict: 'fail', value: 0.124, limit: 0.05 });
    expect(said.remedy).toContain('adapter.driving.dowels.size');
  });
});

describe('length and room', () => {
  it('counts full pin only: 24 mm, half in each, less 1.6 of chamfer', () => {
    expectSaid(findingOf(dowelled('driving', 'auto'), 'dowel-length-driving'), {
      verdict: 'pass',
      value: 10.4,
      limit: 8,
    });
  });

  it('a short pin is a caution, a stub fails; a length that nobody sells is said', () => {
    expectSaid(findingOf(dowelled('driving', { length: '18 mm' }), 'dowel-length-driving'), {
      verdict: 'caution',
      value: 7.4,
      limit: 8,
    });
    const stub = findingOf(dowelled('driving', { length: '10 mm' }), 'dowel-length-driving');
    expectSaid(stub, { verdict: 'fail', value: 3.4, limit: 8 });
    expect(stub.why).toContain('no length of ISO 8734');
  });

  it('a pin longer than both parts sticks out behind the flange', () => {
    // 40 mm: 16.5 - 0.5 in the adapter at most, so 24 in a flange of 16 +- 0.03.
    const found = dowelled('driving', { length: '40 mm', first: 30 }, { adapter: { thickness: 16.5 } });
    expectSaid(about(found, 'dowel-room-driving', 'flange'), { verdict: 'caution', value: -8.03, limit: 0 });
    expectSaid(about(found, 'dowel-room-driving', 'adapter'), { verdict: 'pass', value: 0.5, limit: 0 });
  });

  it('is not assessed where nobody measured the flange', () => {
    const found = dowelled('driving', 'auto', { driving: { thickness: undefined } });
    expect(about(found, 'dowel-room-driving', 'flange')).toMatchObject({
      verdict: 'not assessed',
      remedy: 'Give driving.thickness.',
    });
  });
});

describe('metal in the flange', () => {
  it('half way between M8 on 84 the nearest is the register, or the rim where there is none', () => {
    // The recess on 62.01 and its 0.8 mm mouth: 42 - 4 - 31.005 - 0.8. The rim: 56 - 42 - 4.
    const near = (more: Patch) => findingOf(dowelled('driving', 'auto', more), 'dowel-web-driving');
    expectSaid(near({}), { verdict: 'pass', value: 6.195, limit: 3 });
    expectSaid(near({ driving: { register: 'none' } }), { verdict: 'pass', value: 10, limit: 3 });
  });

  it('too near the rim, and into a hole', () => {
    const at = (circle: number, first: number) =>
      findingOf(dowelled('driving', { circle, first }), 'dowel-web-driving');
    expectSaid(at(99, 30), { verdict: 'caution', value: 56 - 49.5 - 4, limit: 3 });
    // On a screw: the whole of both radii, M8 and 8 mm.
    expectSaid(at(84, 0), { verdict: 'fail', value: -8, limit: 3 });
  });

  it('too near the register: 84 / 2 less 4 less 31 and more when the circle shrinks', () => {
    const said = findingOf(dowelled('driving', { circle: 72, first: 30 }), 'dowel-web-driving');
    expect(said.verdict).not.toBe('pass');
    expect(said.why).toContain('register');
  });

  it('in the adapter the webs name the dowels and their keys', () => {
    // On the driven circle, under one of its threads.
    const clash = { driving: { outside: 150 }, adapter: { clocking: 0 } };
    const found = dowelled('driving', { count: 1, first: 0, circle: 108, size: 8 }, clash);
    const web = findingOf(found, 'web-between-holes');
    expect(web.verdict).toBe('fail');
    expect(web.why).toMatch(/driving dowel hole 1/);
    expect(web.remedy).toContain('adapter.driving.dowels.circle');
  });
});

describe('work on the flange', () => {
  it('is told where nobody measured holes that are there', () => {
    const said = findingOf(dowelled('driving', 'auto'), 'dowel-work-driving');
    expectSaid(said, { verdict: 'not assessed' });
    expect(said.why).toContain('2 holes of 8 mm on 84.00 mm');
    const measured = dowelled('driving', {
      size: 8,
      circle: 84,
      first: 30,
      reamed: 'separately',
      flange: { value: 8.005, doubt: 0.005 },
    });
    expect(measured.findings.some(({ code }) => code === 'dowel-work-driving')).toBe(false);
  });
});

describe('setting', () => {
  it('reamed together passes, and says that two positions are possible', () => {
    const said = findingOf(dowelled('driving', 'auto'), 'dowel-setting-driving');
    expectSaid(said, { verdict: 'pass' });
    expect(said.why).toContain('2 positions');
    // Five holes do not come back after half a turn.
    const five = findingOf(dowelled('driving', 'auto', { driving: { holes: { count: 5 } } }), 'dowel-setting-driving');
    expect(five.why).not.toContain('positions');
  });

  it('reamed apart is a caution, twice located where there is a register', () => {
    const said = findingOf(dowelled('driving', { reamed: 'separately' }), 'dowel-setting-driving');
    expectSaid(said, { verdict: 'caution' });
    // 9 micrometres in the adapter and 5 in the flange at least.
    expect(said.why).toContain('0.014 mm');
    expect(said.why).toContain('register');
  });

  it('stands in for a missing register', () => {
    const bare = { driving: { register: 'none' } };
    expectSaid(findingOf(judge(bare), 'register-missing'), { verdict: 'caution' });
    expectSaid(findingOf(dowelled('driving', 'auto', bare), 'register-missing'), { verdict: 'pass' });
  });
});

describe('torque that the dowels carry alone', () => {
  /** Two seats of depth t in S355 and 1045, N: the root of EN 1995-1-1, 8.6 (c) written out for this pair. */
  const tilting = (t: number, d: number) => {
    const [f1, f2] = [1.5 * 355, 1.5 * 310];
    const beta = f2 / f1;
    return ((f1 * t * d) / (1 + beta)) * (Math.sqrt(beta + 6 * beta ** 2 + beta ** 3) - 2 * beta);
  };

  it('two pins 8 x 24 on 84 mm carry 1443 N.m against 320', () => {
    const said = findingOf(dowelled('driving', 'auto'), 'dowel-shear-driving');
    expectSaid(said, { verdict: 'pass', value: (2 * tilting(10.4, 8) * 42) / 1000, limit: 320, digits: 3 });
  });

  it('reamed apart one pin is counted; short of the torque it is a caution that names how many would do', () => {
    const said = findingOf(
      dowelled('driving', { reamed: 'separately' }, { duty: { torque: '1000 N.m' } }),
      'dowel-shear-driving',
    );
    expectSaid(said, { verdict: 'caution', value: (tilting(10.4, 8) * 42) / 1000, limit: 1000, digits: 3 });
    expect(said.remedy).toContain('{ count: 2, reamed: together }');
  });

  it('advises nothing that is done: reamed together, two of them do what 1000 N.m ask for', () => {
    const load = { duty: { torque: '1000 N.m' } };
    const grip = (dowels: unknown) => findingOf(dowelled('driving', dowels, load), 'grip-driving');
    expect(grip({ reamed: 'separately' })).toMatchObject({ verdict: 'fail' });
    expect(grip({ reamed: 'separately' }).remedy).toContain('2 of them reamed together');
    const done = grip({ count: 2, reamed: 'together' });
    expect(done.verdict).toBe('caution');
    expect(done.remedy).not.toMatch(/dowels|pins/);
    // What would widen the margin of those that carry it.
    const improve = (dowels: unknown) => findingOf(dowelled('driving', dowels), 'dowel-shear-driving').improve;
    expect(improve({ reamed: 'separately' })).toContain('adapter.driving.dowels.reamed: together');
    expect(improve('auto')).toBe(
      'Thicker pins (adapter.driving.dowels.size), or more of them (adapter.driving.dowels.count).',
    );
  });

  it('are no cure where the torque reverses, and no advice for the screws in shear', () => {
    const reversing = { duty: { torque: '1600 N.m', reversing: true } };
    const said = findingOf(dowelled('driving', 'auto', reversing), 'dowel-shear-driving');
    expect(said.remedy).toBe("The screws' friction has to carry all of it: see grip-driving.");
    expect(said.why).toContain('They save no face that slips');
    const remedies = judge(reversing).findings.filter(({ code }) => /^(grip|bolt-shear|bearing)-/.test(code));
    expect(remedies.some(({ remedy }) => remedy !== '')).toBe(true);
    for (const { remedy } of remedies) expect(remedy).not.toContain('dowels: auto');
  });

  it('is held against the torque with its shock', () => {
    const said = findingOf(
      dowelled('driving', 'auto', { duty: { torque: '1000 N.m', shock: 1.5 } }),
      'dowel-shear-driving',
    );
    expectSaid(said, { verdict: 'caution', value: (2 * tilting(10.4, 8) * 42) / 1000, limit: 1500, digits: 3 });
  });

  it('is not assessed without a torque', () => {
    const said = findingOf(dowelled('driving', 'auto', { duty: { torque: undefined } }), 'dowel-shear-driving');
    expect(said).toMatchObject({ verdict: 'not assessed', remedy: expect.stringContaining('duty.torque') });
    expect(said.why).toContain('1443 N.m');
  });
});

describe('in the report', () => {
  it('gives limits, way and place, and the pins to buy', () => {
    const { joint, findings } = dowelled('driving', 'auto', { adapter: { driven: { dowels: { size: 8 } } } });
    const data = reportData(joint, findings);
    const line = data.keyNumbers.find(({ label }) => label === 'Dowel holes, driving');
    expect(line?.value).toBe('2 x 8.00 mm');
    expect(line?.note).toMatch(/on 84\.00 mm.*8\.000 to 8\.015 mm \(H7\).*reamed H7/);
    const pins = data.screws.filter(({ what }) => what.startsWith('parallel pin'));
    expect(pins.map(({ count }) => count).reduce((a, b) => a + b)).toBe(4);
    expect(pins[0]).toMatchObject({
      what: expect.stringMatching(/^parallel pin 8 x \d+, m6, hardened$/),
      detail: 'ISO 8734',
    });
  });

  it('has inches beside in a job in inches', () => {
    const { joint, findings } = dowelled('driving', 'auto');
    const data = reportData({ ...joint, job: { ...joint.job, units: 'in' } }, findings);
    // 8.000 to 8.015 mm rounded inwards to a tenth of a thou: 0.3150 to 0.3155 in.
    expect(data.keyNumbers.find(({ label }) => label === 'Dowel holes, driving')?.note).toContain(
      '0.3150 to 0.3155 in',
    );
  });
});
