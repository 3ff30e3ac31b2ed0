/** The bracket of a joint as its picture needs it. */
import type { BracketViewInput } from '../drawing/bracket-view.ts';
import type { Joint } from '../job/joint.ts';
import { wordsOf } from '../job/wheel-form.ts';

/** How much of the wheel is drawn, mm. */
const shownWheel = 20;

/** Null where the job has no bracket. */
export function bracketToDraw({ bracket, job }: Joint): BracketViewInput | null {
  if (!bracket || !job.bracket) return null;
  const { plane, spec, part, gap } = bracket;
  const wheel = plane.turning.find(({ name }) => name === 'wheel');
  if (!wheel) return null;
  const { origin, e, n } = plane;
  const at = (x: number, z: number) => ({ p: origin.p + x * e.p + z * n.p, q: origin.q + x * e.q + z * n.q });
  const out = 3 * spec.thickness;
  return {
    id: 'bracket',
    part,
    profile: plane.profile,
    bolt: { from: at(spec.foot.edge, -out), to: at(spec.foot.edge, spec.thickness + out) },
    sensor: { bore: spec.sensor.bore, reach: job.bracket.sensor.reach, behind: job.bracket.sensor.behind ?? null },
    gap: gap.nominal,
    teeth: wordsOf(job.wheel).teeth,
    wheel: {
      pMin: Math.max(wheel.pMin, -shownWheel),
      pMax: wheel.pMax,
      qMin: Math.max(wheel.qMin, -shownWheel),
      qMax: wheel.qMax,
    },
    units: job.units,
  };
}
