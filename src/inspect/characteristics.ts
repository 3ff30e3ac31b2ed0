/**
 * What is measured on the finished parts: each size with its limits, how it is measured, and what was found. One list, read by the
 * inspection record and by the verdict. mm and g.
 */

import { builtFacts } from '../job/built-facts.ts';
import type { Joint } from '../job/joint.ts';
import { seatRunout } from '../rotor/wheel-links.ts';
import { generalTolerance } from '../standards/general-tolerances.ts';
import { faceParallelism, machiningRule } from '../standards/machining-practice.ts';
import { must } from '../standards/table.ts';
import { type Characteristic, type Found, foundOf, massRow, type Row } from './size-row.ts';
import { limitsByWalls } from './wall-limits.ts';
import { wheelRows } from './wheel-rows.ts';

export { type Characteristic, type Found, massShare } from './size-row.ts';

/** Doubt of half a dial's reading, mm: two readings of a dial. Common practice. */
const dialDoubt = 0.005;

/** A general tolerance on a size that carries no limits of its own. */
function general(nominal: number) {
  const tolerance = must(generalTolerance(Math.max(nominal, 0.5), 'm'));
  return { lower: nominal - tolerance.plusMinus, upper: nominal + tolerance.plusMinus, from: tolerance.designation };
}

/**
 * Limits of the adapter's thickness, mm: the general tolerance, but never below the least that works, which every demand on it has its part
 * in. Drawing, record, bench sheet, order and STEP take it from here. A thickness that is too small as it is drawn keeps the general one: it
 * fails anyway.
 */
export function thicknessLimits({ adapterSpec: { thickness }, thickness: { least } }: Joint) {
  const { lower, upper, from } = general(thickness);
  const raised = least > lower + 1e-6 && least <= thickness + 1e-9;
  return raised
    ? { lower: Math.min(least, thickness), upper, from: `${from}, not below the least that works`, raised }
    : { lower, upper, from, raised };
}

function sideRows(joint: Joint, side: 'driving' | 'driven'): Row[] {
  const register = joint.adapterSpec.registers[side];
  if (!register) return [];
  const built = joint.job.built?.adapter?.[side];
  const isRecess = register.gender === 'female';
  const shape = isRecess ? 'recess' : 'spigot';
  const depth = general(register.depth);
  const common = { feature: `${side}-register`, part: 'adapter' as const, unit: 'mm' as const };
  return [
    {
      ...common,
      id: `${side}-register`,
      what: `${side} register, ${shape}`,
      nominal: register.diameter,
      lower: register.limits.lower,
      upper: register.limits.upper,
      from: register.limits.zone,
      gauge: joint.fits?.[side]?.gauge ?? 'micrometer',
      mend: isRecess ? 'too small' : 'too large',
      verb: isRecess ? 'bore' : 'turn',
      found: foundOf(built?.register),
    },
    {
      ...common,
      id: `${side}-depth`,
      what: isRecess ? `depth of the ${side} recess` : `height of the ${side} spigot`,
      nominal: register.depth,
      ...depth,
      gauge: 'depth gauge',
      mend: isRecess ? 'too small' : 'too large',
      verb: isRecess ? 'deepen' : 'face off',
      found: foundOf(built?.depth),
    },
  ];
}

/** Farthest that a drilled hole stands from its place, and which one it is; null where nothing was measured. */
export function worstPlace(
  joint: Joint,
  side: 'driving' | 'driven',
): { off: number; hole: number; count: number } | null {
  const found = joint.job.built?.adapter?.[side]?.holes;
  const group = joint.screws.find((screws) => screws.side === side) ?? joint.screws[0];
  if (!found || !group) return null;
  const offs = found.map(({ x, y }) => Math.min(...group.positions.map((p) => Math.hypot(p.x - x, p.y - y))));
  const off = Math.max(...offs);
  return { off, hole: offs.indexOf(off) + 1, count: found.length };
}

function placeRow(joint: Joint, side: 'driving' | 'driven'): Row[] {
  const group = joint.screws.find((screws) => screws.side === side);
  if (!group) return [];
  const worst = worstPlace(joint, side);
  return [
    {
      id: `${side}-holes`,
      feature: `${side}-screws`,
      part: 'adapter',
      what: `${side} holes, farthest from its place${worst ? ` (hole ${worst.hole})` : ''}`,
      nominal: 0,
      lower: 0,
      upper: must(machiningRule('hole_position', group.major)).value,
      unit: 'mm',
      from: 'drilled position, common practice',
      gauge: 'mill readout from the indicated bore',
      mend: 'never',
      verb: 'drill',
      found: worst && { value: worst.off, doubt: 0.01, with: 'coordinates' },
    },
  ];
}

/** The two sides against each other: run-out of the register, of the wheel's seat, and of the face. */
function turnOverRows(joint: Joint): Row[] {
  const seen = builtFacts(joint.job.built);
  const dial = (tir: number | null | undefined): Found | null =>
    tir === null || tir === undefined ? null : { value: tir, doubt: 2 * dialDoubt, with: 'dial' };
  const common = { part: 'adapter' as const, nominal: 0, lower: 0, unit: 'mm' as const, mend: 'never' as const };
  // A side without a register has none to run out; its face still does.
  const { registers, bore } = joint.adapterSpec;
  const { setup } = joint.job.adapter;
  const seat = seatRunout(joint);
  return [
    ...(registers.driven
      ? [
          {
            ...common,
            id: 'register-runout',
            feature: 'driven-register',
            what: 'run-out of the driven register, driving one true',
            upper: joint.turnOver.tir,
            from: joint.turnOver.from,
            gauge: 'dial indicator',
            verb: 'turn true',
            found: dial(seen?.register?.tir),
          },
        ]
      : []),
    ...(seat
      ? [
          {
            ...common,
            id: 'wheel-seat-runout',
            feature: 'wheel-seat',
            what: `run-out of the shoulder for the wheel, ${registers.driving ? 'driving register' : bore === null ? 'outside' : 'bore'} true`,
            upper: seat.tir,
            from: seat.from,
            gauge: 'dial indicator',
            verb: 'turn true',
            found: null,
          },
        ]
      : []),
    {
      ...common,
      id: 'face-parallel',
      feature: 'body',
      what: 'run-out of the driven face, driving one true',
      upper: faceParallelism(setup).value,
      from:
        setup === 'one chucking' ? 'both faces in one chucking, common practice' : 'face parallelism, common practice',
      gauge: 'dial indicator',
      verb: 'face true',
      found: dial(seen?.face?.tir),
    },
  ];
}

/** A general tolerance that leaves the holes beside it their wall. */
function walled(joint: Joint, size: 'outside' | 'bore', nominal: number) {
  const { from, ...limits } = general(nominal);
  const own = limitsByWalls(joint, size, limits);
  const isCloser = own.upper - own.lower < limits.upper - limits.lower - 1e-6;
  return { ...own, from: isCloser ? `${from}, and the least wall beside the holes` : from };
}

function adapterRows(joint: Joint): Row[] {
  const { raised: _, ...faces } = thicknessLimits(joint);
  const { thickness, outside, bore, wheelSeat } = joint.adapterSpec;
  const built = joint.job.built?.adapter;
  const common = { part: 'adapter' as const, unit: 'mm' as const };
  const seat: Row[] = wheelSeat
    ? [
        {
          ...common,
          id: 'wheel-seat',
          feature: 'wheel-seat',
          what: 'shoulder for the wheel',
          nominal: wheelSeat.diameter,
          lower: wheelSeat.limits.lower,
          upper: wheelSeat.limits.upper,
          from: wheelSeat.limits.zone,
          gauge: 'micrometer',
          mend: 'too large',
          verb: 'turn',
          found: null,
        },
      ]
    : [];
  return [
    {
      ...common,
      id: 'thickness',
      feature: 'body',
      what: 'thickness between the faces',
      nominal: thickness,
      ...faces,
      gauge: 'micrometer',
      mend: 'too large',
      verb: 'face off',
      found: foundOf(built?.thickness),
    },
    {
      ...common,
      id: 'outside',
      feature: 'body',
      what: 'outside diameter',
      nominal: outside,
      ...walled(joint, 'outside', outside),
      gauge: 'caliper',
      mend: 'too large',
      verb: 'turn',
      found: foundOf(built?.outside),
    },
    ...(bore === null
      ? []
      : [
          {
            ...common,
            id: 'bore',
            feature: 'bore',
            what: 'centre bore',
            nominal: bore,
            ...walled(joint, 'bore', bore),
            gauge: 'caliper',
            mend: 'too small' as const,
            verb: 'bore',
            found: foundOf(built?.bore),
          },
        ]),
    ...seat,
  ];
}

/** Every size worth measuring on a joint's new parts, with what was found. The joint is the one that was designed. */
export function characteristicsOf(joint: Joint): Characteristic[] {
  const rows = [
    ...sideRows(joint, 'driving'),
    ...sideRows(joint, 'driven'),
    ...turnOverRows(joint),
    ...adapterRows(joint),
    ...placeRow(joint, 'driving'),
    ...placeRow(joint, 'driven'),
    massRow('adapter', joint.adapterMass.mass, joint.job.built?.adapter?.mass),
    ...wheelRows(joint),
  ];
  return rows.map((row, index) => ({ ...row, number: index + 1 }));
}
