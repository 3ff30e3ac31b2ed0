/** The drilling plan over random joints: every hole of the adapter is drilled exactly once, with the right final size, in a sane order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../src/core.ts';
import { buildAdapter } from '../../src/parts/adapter.ts';
import type { AdapterSpec } from '../../src/parts/adapter-spec.ts';
import { drillingPlan, type PlanStep } from '../../src/shop/drilling-plan.ts';
import { routeOf } from '../../src/shop/operations.ts';
import { drillingProgram } from '../../src/shop/program.ts';
import { turnsFor } from '../../src/standards/cutting-speeds.ts';
import { anyAdapter } from '../geometry/random-adapters.ts';
import { judge } from '../validate/help.ts';

const base = judge().joint;

/** The sound joint with another adapter in it; its threads are M8, whatever they were called. */
function withAdapter(spec: AdapterSpec): Joint {
  const groups = spec.groups.map((group) => ({
    ...group,
    shape: group.shape.kind === 'tapped' ? { ...group.shape, thread: 'M8' } : group.shape,
  }));
  const adapterSpec = { ...spec, groups };
  return { ...base, adapterSpec, adapter: buildAdapter(adapterSpec), screws: [] };
}

const anyJoint = anyAdapter.map(withAdapter);
const faces = ['driving', 'driven'] as const;
const plansOf = (joint: Joint) => faces.flatMap((face) => drillingPlan(joint, face) ?? []);

/** What decides the size that a hole is left with: the last of these that is made. */
const sizing = ['drill', 'ream'] as const;

describe('the drilling plan', () => {
  it('drills every hole once, to the size that the part has', () => {
    fc.assert(
      fc.property(anyJoint, (joint) => {
        const steps: PlanStep[] = plansOf(joint).flatMap((plan) => [...plan.steps]);
        for (const drilling of joint.adapter.drillings.filter(({ x, y }) => Math.hypot(x, y) > 0)) {
          const own = steps.filter(({ holes }) => holes.some((hole) => hole.drilling === drilling.id));
          expect(own.filter(({ cut }) => cut.op === 'drill')).toHaveLength(1);
          expect(own.filter(({ cut }) => cut.op === 'spot')).toHaveLength(1);
          const last = own.filter(({ cut }) => (sizing as readonly string[]).includes(cut.op)).at(-1)?.cut;
          const narrowest = 2 * Math.min(...drilling.profile.map(({ r }) => r).filter((r) => r > 0));
          const size = last && last.op !== 'tap' ? last.diameter : Number.NaN;
          // A pocket or a cone that reaches right through leaves no straight hole; nothing narrower than the drill can be left.
          const isOpened = own.some(({ cut }) => cut.op === 'counterbore' || cut.op === 'countersink');
          if (isOpened) expect(narrowest).toBeGreaterThanOrEqual(size - 1e-9);
          else expect(narrowest).toBeCloseTo(size, 9);
          expect(own.map(({ tool }) => tool)).toEqual(own.map(({ tool }) => tool).sort((a, b) => a - b));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('starts above all metal, ends below the surface, and never stops in a thread', () => {
    fc.assert(
      fc.property(anyJoint, (joint) => {
        for (const plan of plansOf(joint)) {
          expect(plan.safe).toBeGreaterThan(plan.highest);
          expect(plan.travel).toBeGreaterThan(plan.safe);
          for (const { holes, cut } of plan.steps) {
            for (const { surface, tip } of holes) {
              expect(surface).toBeLessThanOrEqual(plan.highest + 1e-9);
              if (cut.op !== 'counterbore' && cut.op !== 'countersink') expect(tip).toBeLessThan(surface);
            }
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it('taps no deeper than the hole is drilled', () => {
    const { joint } = judge({ adapter: { driven: { fastening: 'into_adapter' }, thickness: 40 } });
    const steps = plansOf(joint).flatMap((plan) => [...plan.steps]);
    const taps = steps.filter(({ cut }) => cut.op === 'tap');
    expect(taps.length).toBeGreaterThan(0);
    for (const tap of taps) {
      const drill = steps.find(({ letter, cut }) => letter === tap.letter && cut.op === 'drill');
      expect(tap.holes[0]?.tip).toBeGreaterThan(drill?.holes[0]?.tip ?? 0);
    }
  });

  it('suggests speeds by 1000 v / (pi d), and never above the machine', () => {
    // A 10 mm drill at 22 m/min: 1000 x 22 / 31.416 = 700.3 rpm.
    expect(turnsFor(22, 10)).toBeCloseTo(700.28, 2);
    for (const plan of plansOf(base)) {
      for (const { cut, diameter } of plan.tools) {
        expect(cut.rpm).toBeLessThanOrEqual(
          Math.min(base.job.adapter.shop.top_speed, (1000 * cut.speed) / (Math.PI * diameter)),
        );
      }
    }
  });
});

describe('the route', () => {
  it('tells how every set-up finds the axis again', () => {
    const dialled = {
      'one chucking': /one chucking/,
      indicated: /Dial on/,
      'edge finder': /Edge finder/,
      'three jaw': /Dial on/,
    };
    for (const [setup, word] of Object.entries(dialled)) {
      const { joint } = judge({ adapter: { setup } });
      const text = routeOf(joint, [])
        .operations.flatMap(({ indicate }) => indicate)
        .join(' ');
      expect(text, setup).toMatch(word);
      const turns = routeOf(joint, []).operations.filter(({ title }) => /turn over, finish/i.test(title));
      expect(turns.length).toBe(setup === 'one chucking' ? 0 : 1);
    }
  });

  it('cuts the register last on each side, and rests between roughing and finishing', () => {
    const { operations } = routeOf(judge().joint, []);
    const finish = operations.filter(({ title }) => /finish/i.test(title));
    expect(finish).toHaveLength(2);
    for (const { steps } of finish) {
      const at = steps.findIndex((step) => step.startsWith('Last of all'));
      expect(at).toBeGreaterThan(steps.findIndex((step) => step.startsWith('Face')));
      expect(at).toBeGreaterThanOrEqual(steps.length - 2);
    }
    const rest = operations.findIndex(({ steps }) => steps.some((step) => step.startsWith('Rest')));
    expect(operations[rest]?.title).toMatch(/^Rough/);
    expect(operations[rest + 1]?.title).toMatch(/^Finish/);
  });

  it('finishes first the side out of which less stands', () => {
    // The sound joint: a spigot of its own on the driven side, a recess on the driving one (trade rule: lie it on the flat side).
    const { first } = routeOf(judge().joint, []);
    expect(first).toBe('driving');
  });
});

it('a program names its zero, its safe height, its revision, and that it is a starting point', () => {
  for (const plan of plansOf(base)) {
    const { header } = drillingProgram(base, plan, { title: 'T', revision: 'RTEST1', warning: '', dry: false });
    const text = header.join(' ');
    for (const word of [/ZERO/, /SAFE HEIGHT/, /REVISION RTEST1/, /STARTING POINT/, /INDEX MARK/])
      expect(text).toMatch(word);
  }
});
