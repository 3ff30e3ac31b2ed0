/**
 * Numbers of the shipped jobs worked out by hand, from the sizes in the job files and the tables that the standards print; each
 * stands with its sum.
 */
import { describe, expect, it } from 'vitest';
import type { MassProperties } from '../../src/model/mass.ts';
import { chamferOff, cone, corner, cylinder, mouthOff, spigot, strip, tapped } from './hand.ts';
import { shippedJob } from './shipped.ts';

describe('masses added up by hand', () => {
  it('test stand adapter: disc, step, two spigots, less everything drilled', () => {
    const [r, seat, t] = [84, 71.5, 22];
    const solid =
      cylinder(r, t - 3) +
      cylinder(seat, 3) -
      2 * chamferOff(r, 1) -
      chamferOff(seat, 1) +
      spigot(69.998 / 2, 3.9, 0.5, 0.8, 0.3) +
      spigot(57.005 / 2, 2.2, 0.44, 0.55, 0.3);
    const bore = cylinder(20, t + 3.9 + 2.2) + 2 * mouthOff(20, 0.5);
    // ISO 273 medium for M8 is 9; the countersink of 18.3 at 90 degrees is 4.65 deep.
    const sunk = cylinder(4.5, t) + cone(4.5, 9.15, 4.65) - cylinder(4.5, 4.65);
    // M8 through, drill 6.8. M5 blind, drill 4.2: 10 of thread and 4.2 of run-out for its 0.8 pitch.
    const drilled = bore + 8 * sunk + 6 * tapped(8, 6.8, t, false) + 8 * tapped(5, 4.2, 14.2, true);
    // Aluminium 7075: 2.81 g/cm3.
    expect(shippedJob('test-stand').joint.adapterMass.mass).toBeCloseTo((solid - drilled) * 0.00281, 3);
  });

  it('river launch adapter, in inches', () => {
    const inch = 25.4;
    const t = 1.375 * inch;
    const solid = cylinder(81.5, t) - 2 * chamferOff(81.5, 0.04 * inch) + spigot(63.489 / 2, 2.87, 0.5, 0.7175, 0.3);
    const bore = cylinder(14, t + 2.87) + 2 * mouthOff(14, 0.5);
    // 3/8 socket heads: hole 13/32 (0.4062), counterbore 0.405 deep (10.287), and 0.063 (1.6) more for washers 0.734 across, with 1.
    const bolt =
      cylinder((0.4062 * inch) / 2, t) + cylinder(19.644 / 2, 11.887) - cylinder((0.4062 * inch) / 2, 11.887);
    // Two dowel holes of 6 right through.
    const dowels = 2 * cylinder(3, t);
    // 5/16-24: drill 6.909 (letter I, 0.272 in); 1/4-28: drill 5.41 (No. 3, 0.213 in). Depths from the drawing.
    const drilled =
      bore + dowels + 4 * bolt + 4 * tapped(7.9375, 6.909, 21.5458, true) + 4 * tapped(6.35, 5.41, 15.5321, true);
    // Steel 1018: 7.87 g/cm3. The drawing's own rounding leaves some hundredths of a gram.
    const mass = shippedJob('river-launch').joint.adapterMass.mass;
    expect(Math.abs(mass - (solid - drilled) * 0.00787)).toBeLessThan(0.1);
  });

  const wheel = (base: string) => shippedJob(base).joint.wheelMass as MassProperties;

  it('orchard wheel: 60 teeth with parallel flanks, two rounds at each root', () => {
    const half = 89 * Math.sin((0.4 * Math.PI) / 60);
    const ring = cylinder(84.5, 1) - cylinder(129 / 2, 1) - 6 * cylinder(5.5 / 2, 1);
    const area = ring + 60 * (strip(89, 84.5, half) + 2 * corner(0.8));
    expect(Math.abs(wheel('orchard-truck').mass / (area * 3 * 0.00785) - 1)).toBeLessThan(2e-4);
  });

  it('test stand wheel: 72 radial teeth are half of the ring between root and tip', () => {
    const ring = cylinder(101, 1) - cylinder(143.1 / 2, 1) - 8 * cylinder(5.5 / 2, 1);
    const area = ring + 0.5 * (cylinder(105, 1) - cylinder(101, 1)) + 144 * corner(0.6);
    expect(Math.abs(wheel('test-stand').mass / (area * 3 * 0.00785) - 1)).toBeLessThan(1e-4);
  });

  it('river launch wheel: the missing tooth is the unbalance', () => {
    const { mass, centre } = wheel('river-launch');
    const [tip, root] = [95.25, 87.3125];
    const half = tip * Math.sin((0.45 * Math.PI) / 36);
    // Tooth and its two rounds, less two tip breaks of 0.254; its middle is near half height.
    const tooth = strip(tip, root, half) - 0.254 ** 2;
    const rounds = 2 * corner(0.762);
    const pull = (tooth * (tip + root)) / 2 + rounds * (root + 0.2);
    expect(mass * Math.hypot(centre[0], centre[1])).toBeGreaterThan(pull * 6.35 * 0.00785 * 0.99);
    expect(mass * Math.hypot(centre[0], centre[1])).toBeLessThan(pull * 6.35 * 0.00785 * 1.01);
  });
});

describe('decisions worked out by hand', () => {
  const study = (base: string) => shippedJob(base).joint.thickness;
  const demand = (base: string, what: RegExp) => study(base).demands.find((entry) => what.test(entry.what))?.least;
  const screw = (base: string, id: string) => shippedJob(base).joint.screws.find((group) => group.id === id);

  it('thickness is the greatest of its demands', () => {
    // DIN 974-1 counterbore for M8: 8 + 0.6; 0.8 d under the head: 6.4.
    expect(demand('orchard-truck', /M8 head/)).toBeCloseTo(8.6 + 6.4, 9);
    // M10 of class 10.9 in S355: 1.25 d, 0.75 of countersunk mouth, and the tip stays 0.5 inside.
    expect(demand('orchard-truck', /engagement of M10/)).toBeCloseTo(12.5 + 0.75 + 0.5, 9);
    expect(study('orchard-truck').least).toBeCloseTo(15, 9);
    // M8 of class 10.9 in 7075: 2 d, 0.6 of mouth and 0.5; the flat head needs (18.3 - 9) / 2 + 6.4.
    expect(demand('test-stand', /engagement of M8/)).toBeCloseTo(16 + 0.6 + 0.5, 9);
    expect(demand('test-stand', /M8 head/)).toBeCloseTo(4.65 + 6.4, 9);
    // 3/8 socket head and washer: counterbore 0.405 and 0.063 in, and 0.8 of 0.375 in under it.
    expect(demand('river-launch', /3\/8/)).toBeCloseTo((0.405 + 0.063 + 0.8 * 0.375) * 25.4, 1.5);
    // Nothing is sunk or tapped: two rim chamfers of 1 and a land of 3.
    expect(study('kart').least).toBeCloseTo(2 + 3, 9);
    // M10: 10.6 + 8 = 18.6, faced to the next half millimetre.
    expect(study('near-miss')).toMatchObject({ mode: 'auto', thickness: 19 });
    expect(study('near-miss').least).toBeCloseTo(18.6, 9);
  });

  it('an orchard screw decides the last 1.5 mm: M10 x 25 through 9 of flange stops 0.5 inside', () => {
    expect(study('orchard-truck').thickness).toBe(25 - 9 + 0.5);
    expect(screw('orchard-truck', 'driven-screws')).toMatchObject({ thread: 'M10', length: 25, count: 4 });
    // Class 12.9 in 1045 takes 1.2 d of thread, 9.6 (published trials), and 16.5 - 8.6 of grip: 17.5, so M8 x 20.
    expect(screw('orchard-truck', 'driving-screws')).toMatchObject({
      thread: 'M8',
      length: 20,
      count: 6,
      seat: 'sunk',
    });
  });

  it('bolts through all three pieces of the kart: 7.5 + 14 + 8, two washers, nut and two threads', () => {
    const bolts = screw('kart', 'driving-screws');
    // ISO 7089 washer 1.6, one under the head and one under the nut; ISO 4032 nut 6.8; pitch 1.25.
    expect(bolts?.lengths.least).toBeCloseTo(7.5 + 14 + 8 + 2 * 1.6 + 6.8 + 2 * 1.25, 9);
    expect(bolts).toMatchObject({ fastening: 'through', length: 45, count: 6 });
    expect(shippedJob('kart').joint.screws).toHaveLength(1);
  });

  it('clocking of equal holes is half of the least common step: 180 / lcm', () => {
    const angle = (base: string) => shippedJob(base).joint.clocking.angle;
    expect(angle('orchard-truck')).toBeCloseTo(180 / 12, 6);
    expect(angle('near-miss')).toBeCloseTo(180 / 24, 6);
    // Eight from 22.5 and six from 0 already stand 7.5 apart.
    expect(angle('test-stand')).toBeCloseTo(0, 6);
    // One pattern: a driven hole at 30 (150 seen from the driven side) falls on one at 180.
    expect(angle('kart')).toBeCloseTo(30, 6);
    expect(shippedJob('river-launch').joint.clocking).toMatchObject({ mode: 'given', angle: 0 });
  });

  it('the near miss: 7.5 degrees on 102 and 101.5 are 6.66 mm, less a head of 9 and a thread of 5', () => {
    const [r1, r2] = [51, 101.51 / 2];
    const apart = Math.sqrt(r1 ** 2 + r2 ** 2 - 2 * r1 * r2 * Math.cos((7.5 * Math.PI) / 180));
    const found = shippedJob('near-miss').findings.find(({ code }) => code === 'web-between-holes');
    expect(apart).toBeCloseTo(6.66, 2);
    // The mouth of the thread is countersunk to 10; the counterbore is 18.
    expect(found?.value).toBeCloseTo(apart - 9 - 5, 5);
    const seat = shippedJob('near-miss').findings.find(
      ({ code, verdict }) => code === 'faces-seat-first' && verdict === 'fail',
    );
    // Recess 2.5, spigot 3.2, a caliper's doubt of 0.03.
    expect(seat?.value).toBeCloseTo(2.5 - 3.2 - 0.03, 9);
  });

  it('how far the driven flange can be off centre is the sum of what was measured', () => {
    const found = (base: string) => shippedJob(base).findings.find(({ code }) => code === 'concentricity');
    // Half of: H7 of 62 (0.030) over a doubt of 2 x 0.01, turn-over 0.02, h6 of 60 (0.019) under one of 2 x 0.03.
    const fits = (0.03 + 0.02 + 0.02 + 0.019 + 0.06) / 2;
    // The driving face's 0.02, good to 0.005, over 112 leans the axis over the thickness of 16.5.
    const lean = (0.025 / 112) * 16.5;
    // Both rims were read eight times: their arrows are 2/8 of the sums of the readings, the driving one in its own angles, the driven
    // one mirrored, at the clocking of 15, and bolted up with the adapter turned by 300. Each reading is good to 0.01, so each arrow
    // to 2/8 of 0.01 times the sum of |cos| over eight angles, 2 (2 cos 22.5 + 2 cos 67.5) at most.
    const arrowOf = (readings: readonly number[], at: (own: number) => number) => {
      const angles = readings.map((_, i) => (at(45 * i) * Math.PI) / 180);
      const sum = (f: (a: number) => number) => readings.reduce((s, r, i) => s + (r * f(angles[i] as number)) / 4, 0);
      return { x: sum(Math.cos), y: sum(Math.sin) };
    };
    const driving = arrowOf([0.008, 0.01, 0.006, -0.001, -0.008, -0.01, -0.006, 0.001], (own) => own);
    const driven = arrowOf([-0.003, 0.009, 0.015, 0.012, 0.003, -0.009, -0.015, -0.012], (own) => 180 - own + 15 + 300);
    const rims = Math.hypot(driving.x - driven.x, driving.y - driven.y);
    const degrees = Math.PI / 180;
    const doubt = 2 * 0.0025 * 4 * (Math.cos(22.5 * degrees) + Math.cos(67.5 * degrees));
    expect(rims).toBeCloseTo(0.005, 2.8);
    expect(found('orchard-truck')?.value).toBeCloseTo(fits + lean + rims + doubt, 3.7);
    // G 40 at 2600 rpm: e = 40 / omega.
    expect(found('orchard-truck')?.limit).toBeCloseTo(40 / ((2600 * 2 * Math.PI) / 60), 5);
    // Rims 0.02 and 0.03, H7 of 94 (0.035) over 0.02, edge finder 0.05, h6 of 100 (0.022) under 2 x 0.02; the face's 0.02 over 102
    // leans over the thickness of 14.
    // Each of the three totals is read to one graduation of a dial, 0.01.
    const kart = (0.03 + 0.04 + 0.035 + 0.02 + 0.05 + 0.022 + 0.04) / 2 + (0.03 / 102) * 14;
    expect(found('kart')?.value).toBeCloseTo(kart, 6);
    expect(found('kart')?.limit).toBeCloseTo(16 / ((2400 * 2 * Math.PI) / 60), 5);
  });

  it('what rests on memory is named', () => {
    const { joint, findings } = shippedJob('test-stand');
    expect(joint.driven.memory).toEqual(
      expect.arrayContaining(['driven.holes.count', 'driven.holes.circle', 'driven.holes.diameter']),
    );
    const said = findings.find(({ code }) => code === 'rests-on-memory')?.why ?? '';
    for (const path of joint.driven.memory) expect(said).toContain(path);
  });
});
