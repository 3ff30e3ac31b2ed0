/**
 * Everything that pulls the joint to one side, as one chain of unbalances in g.mm: the parts' own shapes, what rides off centre, and
 * screws that do not weigh alike. Angles in the adapter's frame.
 */

import { type Arrow, angleOf, sizeOf, sumOf } from '../formulas/arrows.ts';
import type { Link } from '../formulas/chain.ts';
import { type SignedBody, together } from '../formulas/rigid-bodies.ts';
import type { Joint } from '../job/joint.ts';
import type { MassProperties } from '../model/mass.ts';
import { hypot } from '../units/hypot.ts';
import { linksTo, type Station } from './links.ts';
import { screwBodies, screwMasses } from './screw-body.ts';

/** One body of the joint, or a set of screws with their nuts and washers. */
export interface Body {
  readonly id: string;
  readonly what: string;
  readonly mass: MassProperties;
  /** Whose axis it rides on. */
  readonly on: Station;
}

/** Everything that spins and is known: the adapter, the wheel, the screws. The shaft is not: only its mass is given. */
export function bodiesOf(joint: Joint): readonly Body[] {
  const bodies = knownBodies.get(joint) ?? weighedBodies(joint);
  knownBodies.set(joint, bodies);
  return bodies;
}

/** A joint never changes, and several checks ask for the same. */
const knownBodies = new WeakMap<Joint, readonly Body[]>();
const knownLinks = new WeakMap<Joint, readonly Link[]>();

function weighedBodies(joint: Joint): Body[] {
  const adapter: Body = { id: 'adapter', what: 'adapter', mass: joint.adapterMass, on: 'adapter' };
  const wheel: Body[] = joint.wheelMass ? [{ id: 'wheel', what: 'wheel', mass: joint.wheelMass, on: 'wheel' }] : [];
  const screws = joint.screws.map((group): Body => {
    const mass = together(screwBodies(group));
    return { id: group.id, what: `${group.side} screws`, mass, on: 'adapter' };
  });
  return [adapter, ...wheel, ...screws];
}

/** Mass properties of the whole joint, about the adapter's own axes. */
export function wholeOf(joint: Joint): MassProperties {
  return together(bodiesOf(joint).map(({ mass }): SignedBody => ({ mass })));
}

/** First moment across the axis, g.mm. */
export const pullOf = ({ mass, centre }: MassProperties): Arrow => ({ x: mass * centre[0], y: mass * centre[1] });

/** An arrow below this is rounding, g.mm. */
const nothing = 1e-6;

function shapeLinks(joint: Joint): Link[] {
  return bodiesOf(joint).flatMap(({ id, what, mass }) => {
    const pull = pullOf(mass);
    const size = sizeOf(pull);
    if (size < nothing) return [];
    return [
      {
        id: `shape-${id}`,
        what: `shape of the ${what}`,
        least: size,
        most: size,
        angle: angleOf(pull),
        doubt: 0,
        source: 'first moment of the drawn shape',
        memory: false,
        cure: `an even pattern, or a correction drilled on the heavy side (see balance-${id === 'wheel' ? 'wheel' : 'adapter'})`,
      },
    ];
  });
}

/** Half of the shaft hangs on each end, g; 0 when its mass is not given. Statics. */
export const shaftShare = (joint: Joint): number => (joint.job.shaft?.mass ?? 0) / 2;

/** Mass of everything that spins here, g: the bodies, and half the shaft. */
export const spinningMass = (joint: Joint): number =>
  bodiesOf(joint).reduce((sum, { mass }) => sum + mass.mass, shaftShare(joint));

/**
 * A link that pushes an axis aside pushes everything that rides on it: U = m e, with the mass of all that comes after. The same
 * link is counted once with the mass of all its riders, so that they move together as they really do.
 */
function ridingLinks(joint: Joint): Link[] {
  const riders: { readonly on: Station; readonly mass: number }[] = [
    ...bodiesOf(joint).map(({ on, mass }) => ({ on, mass: mass.mass })),
    { on: 'shaft', mass: shaftShare(joint) },
  ];
  const links = new Map<string, { link: Link; mass: number }>();
  for (const { on, mass } of riders) {
    for (const link of linksTo(joint, on)) {
      const known = links.get(link.id);
      links.set(link.id, { link, mass: (known?.mass ?? 0) + mass });
    }
  }
  return [...links.values()]
    .filter(({ link, mass }) => mass > 0 && link.most > 0)
    .map(({ link, mass }) =>
      Object.assign({}, link, { least: link.least * mass, most: link.most * mass, doubt: link.doubt * mass }),
    );
}

/** Screws of one box differ in mass by up to this share either way. Common practice: length and head tolerances allow more. */
export const screwScatterShare = 0.01;

/** Screws that were weighed pull to a known side: what each has more or less than the drawn one, at its own place. */
function weighedScrews(joint: Joint): { readonly link: Link | null; readonly sides: readonly string[] } {
  const weights = joint.job.built?.screws ?? {};
  const sides = joint.screws.filter(({ side, positions }) => weights[side]?.length === positions.length);
  const pulls = sides.flatMap((group) => {
    const { screw, nut, washer } = screwMasses(group);
    const each = screw + (nut ?? 0) + (washer ?? 0);
    return group.positions.map(({ x, y }, i) => {
      const more = (weights[group.side]?.[i] ?? each) - each;
      return { x: more * x, y: more * y };
    });
  });
  const pull = sumOf(pulls);
  const size = sizeOf(pull);
  return {
    sides: sides.map(({ side }) => side),
    link:
      size < nothing
        ? null
        : {
            id: 'weighed-screws',
            what: 'screws as weighed',
            least: size,
            most: size,
            angle: angleOf(pull),
            doubt: 0,
            source: 'weighed one by one (built.screws)',
            memory: false,
            cure: 'like screws set opposite each other',
          },
  };
}

/** The most that screws of unlike mass pull to one side: the heavy ones on one half of the circle, the light ones on the other. */
function scatterLink(joint: Joint): Link[] {
  const weighed = weighedScrews(joint);
  let [most, squares] = [0, 0];
  for (const group of joint.screws) {
    if (weighed.sides.includes(group.side)) continue;
    const { screw, nut, washer } = screwMasses(group);
    const each = screw + (nut ?? 0) + (washer ?? 0);
    most += screwScatterShare * each * mostOneSided(group.positions);
    // An even spread of plus or minus a has the variance a^2/3.
    for (const { x, y } of group.positions) squares += (screwScatterShare * each * hypot(x, y)) ** 2 / 3;
  }
  const known = weighed.link ? [weighed.link] : [];
  if (most === 0) return known;
  return [
    ...known,
    {
      id: 'screw-scatter',
      what: 'screws that do not weigh alike',
      least: 0,
      most,
      usual: Math.sqrt(squares),
      angle: null,
      doubt: 0,
      source: `plus or minus ${100 * screwScatterShare} % in mass, common practice`,
      memory: true,
      cure: 'screws, nuts and washers weighed, and like ones set opposite each other',
    },
  ];
}

/** Greatest over all directions of the sum of |r cos|: half the width of the pattern's zonotope. mm */
export function mostOneSided(positions: readonly { readonly x: number; readonly y: number }[]): number {
  // The sum is greatest along one of the sums that a line through the axis parts into two sides; every point gives two such lines.
  return positions.reduce((most, p) => {
    const length = hypot(p.x, p.y);
    if (length === 0) return most;
    for (const tilt of [1e-9, -1e-9]) {
      // A line just beside the point decides the side of every point.
      const normal = { x: -p.y / length + tilt * p.x, y: p.x / length + tilt * p.y };
      let [x, y] = [0, 0];
      for (const q of positions) {
        const side = q.x * normal.x + q.y * normal.y >= 0 ? 1 : -1;
        x += side * q.x;
        y += side * q.y;
      }
      most = Math.max(most, hypot(x, y));
    }
    return most;
  }, 0);
}

/** Every pull to one side, g.mm. */
export function unbalanceLinks(joint: Joint): readonly Link[] {
  const links = knownLinks.get(joint) ?? [...shapeLinks(joint), ...ridingLinks(joint), ...scatterLink(joint)];
  knownLinks.set(joint, links);
  return links;
}
