/** Does a head, nut or washer lie partly over another hole? Holes without a screw, dowel holes, the next screw's hole. */

import { bearingArea, ringUnderWasher } from '../formulas/head-pressure.ts';
import { type HoleBeside, roomBeside } from '../formulas/ring-cut.ts';
import type { Joint, PressedSeat, ScrewGroup } from '../job/joint.ts';
import type { Finding } from '../model/finding.ts';
import type { Drilling } from '../model/part.ts';
import { passingHole } from '../rotor/plays.ts';
import { screwHead } from '../standards/screw-heads.ts';
import { washerFor } from '../standards/washers.ts';
import { hypot } from '../units/hypot.ts';
import { capital } from '../units/sentence.ts';
import { type Check, judged } from './check.ts';
import { openingOn } from './outside-of-holes.ts';
import { mm, plain } from './words.ts';

/**
 * A bearing face that keeps less than this share of itself fails. The clamp force stays on the screw's axis, so a ring cut on one side
 * presses harder beside the cut: of a ring of 10 by 20 mm, 1.4 times the mean with a tenth gone, 3 times with a quarter (statics of a
 * plane under an eccentric force). The share itself is a choice of this program.
 */
const leastLeft = 0.9;

type Kind = 'empty hole' | "next screw's hole" | 'dowel hole' | 'hole' | 'bore';

/** A hole that may lie under a bearing face. */
interface Hole extends HoleBeside {
  readonly what: Kind;
}

interface Place {
  readonly x: number;
  readonly y: number;
}

const apart = (a: Place, b: Place) => hypot(a.x - b.x, a.y - b.y);

/** Holes of a flange round each of its screws, dowel holes that are drilled through it among them. */
function inFlange(joint: Joint, side: 'driving' | 'driven'): Hole[][] {
  const { holes } = joint[side];
  const radius = holes.diameter.value / 2;
  const pins = dowelHoles(joint, side);
  return holes.positions.map((screw) => [
    ...(holes.unused ?? []).map((hole): Hole => ({ what: 'empty hole', radius, distance: apart(hole, screw) })),
    ...holes.positions.flatMap((hole): Hole[] =>
      hole === screw ? [] : [{ what: "next screw's hole", radius, distance: apart(hole, screw) }],
    ),
    ...pins.map((pin): Hole => ({ what: 'dowel hole', radius: pin.radius, distance: apart(pin, screw) })),
  ]);
}

/** A side's dowel holes in the flange's own pattern, in which the driven one stands before it is clocked. */
function dowelHoles(
  { dowels, adapterSpec }: Joint,
  side: 'driving' | 'driven',
): (Place & { readonly radius: number })[] {
  const set = dowels?.[side];
  if (!set) return [];
  const group = adapterSpec.groups.find(({ id }) => id === `${side}-dowels`);
  return (group?.positions ?? []).map(({ x, y }) => ({ x, y, radius: set.pin.d / 2 }));
}

/** What opens in the adapter's face under heads that stand on it, round each of their screws. */
function inAdapter(joint: Joint, screws: ScrewGroup): Hole[][] {
  const face = passingHole(joint, screws)?.headFace;
  if (screws.seat !== 'surface' || face === undefined) return [];
  const { adapter, adapterSpec } = joint;
  const features = new Map(adapter.features.map((feature) => [feature.id, feature]));
  const open = adapter.drillings.flatMap((drilling) => {
    const radius = openingOn(face, adapterSpec.thickness, drilling);
    return radius === null ? [] : [{ x: drilling.x, y: drilling.y, radius, what: kindOf(drilling, screws) }];
  });
  function kindOf({ feature }: Drilling, { side }: ScrewGroup): Kind {
    const { purpose, side: owner } = features.get(feature) ?? {};
    if (purpose === 'dowel hole') return 'dowel hole';
    if (purpose === 'bore' || purpose === 'recess') return 'bore';
    return owner === side ? "next screw's hole" : 'hole';
  }
  return screws.positions.map((screw) =>
    open.flatMap(({ radius, what, ...at }) => {
      const distance = apart(at, screw);
      return distance < 1e-6 ? [] : [{ radius, what, distance }];
    }),
  );
}

/** The screw whose bearing face lies nearest to, or farthest over, another hole. */
function worst(rings: readonly (readonly Hole[])[], outer: number): readonly Hole[] {
  return rings.reduce((a, b) => (roomBeside(outer, b) < roomBeside(outer, a) ? b : a), rings[0] ?? []);
}

/** Ways out that leave more of the bearing face, with what each leaves. */
function cureOf(screws: ScrewGroup, seat: PressedSeat, holes: readonly Hole[], play: number): string {
  const { side, thread, head, washer } = screws;
  const under = seat.under === 'head' ? 'heads' : 'nuts';
  const clears = (face: number) => roomBeside(face, holes) >= play - 1e-9;
  const bareArea = bearingArea({ outer: seat.face, inner: seat.inner, beside: holes });
  const found = washerFor(thread);
  const ring = !washer && found.ok ? ringUnderWasher(seat.face, found.value, seat.inner) : null;
  const washed = ring ? bearingArea({ ...ring, beside: holes }) : 0;
  const smaller = (['socket', 'hex'] as const).filter((kind) => kind !== head.kind && !washer && seat.under === 'head');
  const faceOf = (kind: 'socket' | 'hex') => {
    const other = screwHead(kind, thread);
    return other.ok ? (other.value.dw ?? other.value.dk) : Number.POSITIVE_INFINITY;
  };
  const cures = [
    ...(washer && clears(seat.face)
      ? [`leave the washers out (adapter.${side}.washer: false): the ${under} alone clear it`]
      : []),
    ...smaller.flatMap((kind) =>
      clears(faceOf(kind)) ? [`take smaller heads (adapter.${side}.head: ${kind}), which clear it`] : [],
    ),
    ...(washed > 1.05 * bareArea
      ? [
          `put thick hardened washers under them that bridge the hole (adapter.${side}.washer: true gives ${plain(washed, 0)} mm2 in place of ${plain(bareArea, 0)})`,
        ]
      : []),
    `take thinner screws (adapter.${side}.screw)`,
  ].join(', or ');
  const use =
    holes.some(({ what }) => what === 'empty hole') && !seat.part.startsWith('adapter')
      ? ` A hole is there with a screw or without: another number in ${seat.part.split(' ')[0]}.holes.use does not take it away.`
      : '';
  return `${capital(cures)}.${use}`;
}

/** One kind of bearing face of a group on one part. */
function judgeSeat(joint: Joint, screws: ScrewGroup, seat: PressedSeat): Finding[] {
  const side = seat.part === 'driving flange' ? 'driving' : seat.part === 'driven flange' ? 'driven' : null;
  const rings = side ? inFlange(joint, side) : seat.part === 'adapter' ? inAdapter(joint, screws) : [];
  const holes = worst(rings, seat.outer);
  const nearest = holes.reduce<Hole | null>(
    (a, b) => (a === null || b.distance - b.radius < a.distance - a.radius ? b : a),
    null,
  );
  const room = roomBeside(seat.outer, holes);
  const hasEmpty = side !== null && (joint[side].holes.unused ?? []).length > 0;
  // Where every hole has its screw, heads stand farther apart than a head is from the next hole: nothing to tell until it is so.
  if (nearest === null || (!hasEmpty && room >= 0)) return [];
  const whole = bearingArea({ outer: seat.outer, inner: seat.inner });
  const left = whole > 0 ? bearingArea({ outer: seat.outer, inner: seat.inner, beside: holes }) / whole : 0;
  const play = Math.max(0, seat.inner - screws.major) / 2;
  const cut = Math.max(0, -room);
  const what = `${seat.under}s${screws.washer ? ', on washers,' : ''}`;
  const said =
    cut > 0
      ? `The bearing face, ${mm(seat.outer, 1)}, lies ${mm(cut)} over the edge of the ${nearest.what}: ${Math.floor(100 * left)} % of it is left to bear, and it presses hardest beside the cut.`
      : `The bearing face is ${mm(seat.outer, 1)}; the nearest other hole is the ${nearest.what}, ${mm(nearest.distance, 1)} from the screw and ${mm(2 * nearest.radius, 1)} wide.`;
  const collides = nearest.what === "next screw's hole" && cut > 0;
  return [
    judged(
      {
        code: `${seat.under}s-clear-holes-${screws.side}`,
        feature: screws.id,
        title: `${screws.thread} ${what} clear of other holes in the ${seat.part}`,
        unit: 'mm',
        why: `${said} The screw may stand off by ${mm(play)} in its own hole.${collides ? ` The ${seat.under}s come into each other too.` : ''}`,
        cure: cureOf(screws, seat, holes, play),
        source: 'geometry: area common to two discs; a tenth of the face at most, choice of this program',
      },
      room,
      {
        limit: hasEmpty ? play : 0,
        sense: 'at least',
        hard: collides || left < leastLeft ? 0 : Math.min(room, 0),
        // A pin in its hole fills most of it.
        worst: nearest.what === 'dowel hole' ? 'caution' : 'fail',
      },
    ),
  ];
}

export const headsOverHoles: Check = {
  id: 'heads-over-holes',
  title: 'Heads over other holes',
  source: 'geometry; choice of this program',
  run: (joint) =>
    joint.screws.flatMap((screws) =>
      screws.side === 'wheel' ? [] : (screws.tightening.seats ?? []).flatMap((seat) => judgeSeat(joint, screws, seat)),
    ),
};
