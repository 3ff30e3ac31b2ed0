/** The bracket folded, in the plane of its bends, and what turns there. */
import type { FramePoint } from '../formulas/frame-vibration.ts';
import { bendZones, foldOf } from '../geometry/fold.ts';
import type { BracketPlane, TurningBox } from '../job/joint-bracket.ts';
import type { BracketInput } from '../job/schema-bracket.ts';
import { type BracketSpec, blankLength, buildBracket, sensorAt } from '../parts/bracket.ts';
import { axialRadius } from '../parts/tone-wheel.ts';
import type { Chain } from './bracket-chain.ts';
import type { BracketPlace } from './bracket-turning.ts';

/** Farther than anything on a joint, mm: where a turning part has no end towards the axis. */
const farAway = 10_000;

type Direction = 'radial' | 'axial';

/** Points on each bend of the profile. */
const pointsOfBend = 12;

/** Where the folded bracket lies in its plane. */
export function bracketPlane(
  spec: BracketSpec,
  chain: Chain,
  input: BracketInput,
  direction: Direction,
  place: BracketPlace,
): BracketPlane {
  const part = buildBracket(spec);
  const fold = foldOf(part);
  const at = (x: number, z: number): FramePoint => {
    const [fx, , fz] = fold(x, 0, z);
    const { origin, e, n } = chain;
    return { p: origin.p + fx * e.p + fz * n.p, q: origin.q + fx * e.q + fz * n.q };
  };
  const zones = bendZones(part);
  const length = blankLength(spec);
  const along = [
    0,
    ...zones.flatMap(({ from, to }) =>
      Array.from({ length: pointsOfBend + 1 }, (_, i) => from + ((to - from) * i) / pointsOfBend),
    ),
    length,
  ];
  const { thickness: t } = spec;
  // At the far end of its slots the foot is held by its edge: the strip is then longest.
  const clamp = spec.foot.edge - spec.foot.travel / 2;
  const line = [clamp, ...along.filter((x) => x > clamp && x < sensorAt(spec)), sensorAt(spec)];
  return {
    origin: chain.origin,
    e: chain.e,
    n: chain.n,
    profile: [...along.map((x) => at(x, 0)), ...along.toReversed().map((x) => at(x, t))],
    centreLine: line.map((x) => at(x, t / 2)),
    turning: turningBoxes(input.towards, direction, place),
  };
}

/** Turning bodies as boxes in the plane, both ways from the axis left open. */
function turningBoxes(
  towards: BracketInput['towards'],
  direction: Direction,
  { wheel, bodies }: BracketPlace,
): TurningBox[] {
  const way = towards === 'driving' ? -1 : 1;
  const from =
    direction === 'radial'
      ? wheel.z + wheel.thickness / 2
      : towards === 'driving'
        ? wheel.z
        : wheel.z + wheel.thickness;
  return bodies.map(({ name, zMin, zMax, radius }) => {
    const ends = [way * (zMin - from), way * (zMax - from)] as const;
    const along = { min: Math.min(...ends), max: Math.max(...ends) };
    return direction === 'radial'
      ? { name, pMin: along.min, pMax: along.max, qMin: -farAway, qMax: radius - wheel.outside / 2 }
      : { name, pMin: -farAway, pMax: radius - axialRadius(wheel), qMin: along.min, qMax: along.max };
  });
}
