/** A joint as exact solids: each part alone, and the whole with its screws and both neighbouring flanges in place. */
import { flangeInJoint } from '../drawing/section-flange.ts';
import { solidOfSheet, solidOfTurned } from '../geometry/solid-of-part.ts';
import type { Joint, ScrewGroup } from '../job/joint.ts';
import type { DowelSet } from '../job/joint-dowels.ts';
import type { TurnedPart } from '../model/part.ts';
import type { Assembly, Place, PlacedSolid, Solid } from '../model/solid.ts';
import { dowelSolid, nutSolid, screwSolid, washerSolid } from '../parts/fastener-solids.ts';
import { screwsToBuy } from '../report/screw-list.ts';
import { findThread } from '../standards/threads.ts';
import { bracketInJoint } from './bracket-solids.ts';
import { jointToDraw } from './pictures.ts';

/** Colours of parts as they show on a screen: what is made stands out, what was there is grey. */
const colours = {
  adapter: '#6f93b8',
  wheel: '#c8a24a',
  flange: '#b4b4b4',
  screw: '#4a4a4a',
  nut: '#5c5c5c',
  dowel: '#d8d8d8',
};

const origin = (name: string, z = 0): Place => ({ name, x: 0, y: 0, z, turnedOver: false });

/** A solid that stands where it was drawn. */
const standing = (name: string, solid: Solid, colour: string, z = 0): PlacedSolid => {
  return { name, solid, colour, places: [origin(name, z)] };
};

export const adapterName = 'adapter';
export const wheelName = 'wheel';

/** The adapter in its own coordinates. */
const adapterSolid = ({ adapter }: Joint): PlacedSolid =>
  standing(adapterName, solidOfTurned(adapter), colours.adapter);

/** The wheel, its lower face at height z. Null where there is none. */
const wheelSolid = ({ wheel }: Joint, z: number): PlacedSolid | null =>
  wheel && standing(wheelName, solidOfSheet(wheel), colours.wheel, z);

/** A neighbouring flange as far as it was measured; its tapped holes at the size of their drills, dowel holes at the pin's. */
export function flangePart(joint: Joint, side: 'driving' | 'driven'): TurnedPart {
  const drawn = jointToDraw(joint)[side];
  const { thread } = joint[side].holes;
  const known = thread === null ? null : findThread(thread);
  const drill = known?.ok ? known.value.tapDrill : null;
  const holes = drawn.holes.map((hole) =>
    hole.major === null || drill === null ? hole : { ...hole, diameter: drill, major: null },
  );
  const { body } = flangeInJoint({ ...drawn, holes }, side, joint.adapterSpec.thickness);
  const pins = joint.dowels?.[side] ?? null;
  const name = `${side} flange, context only${drawn.thickness === null ? ', thickness not measured' : ''}`;
  return {
    kind: 'turned',
    id: `${side} flange`,
    name,
    material: { id: 'flange', name: 'flange', density: 0 },
    outer: body.outer,
    drillings: [
      ...body.drillings.map((d, i) => ({ ...d, id: `${side}-flange-${i + 1}`, feature: 'hole' })),
      ...(pins?.positions ?? []).map(({ x, y }, i) => {
        const { from, to } = pinHeights(pins as DowelSet, joint.adapterSpec.thickness);
        const r = (pins as DowelSet).pin.d / 2;
        const [low, high] = side === 'driving' ? [from, 0] : [joint.adapterSpec.thickness, to];
        return {
          id: `${side}-dowel-${i + 1}`,
          feature: 'dowel',
          x,
          y,
          profile: [
            { z: low, r },
            { z: high, r },
          ],
        };
      }),
    ],
    features: [],
    engravings: [],
  };
}

function flangeSolid(joint: Joint, side: 'driving' | 'driven'): PlacedSolid {
  const part = flangePart(joint, side);
  return standing(part.name, solidOfTurned(part), colours.flange);
}

/** Where a side's pins begin and end along the shaft. */
function pinHeights({ side, inside }: DowelSet, thickness: number): { from: number; to: number } {
  return side === 'driving'
    ? { from: -inside.flange, to: inside.adapter }
    : { from: thickness - inside.adapter, to: thickness + inside.flange };
}

function dowelSolids(set: DowelSet | null | undefined, thickness: number): PlacedSolid[] {
  if (!set) return [];
  const { from, to } = pinHeights(set, thickness);
  const name = `dowel pin ${set.pin.d} m6 x ${set.length}, ${set.side} side`;
  const solid = dowelSolid(`${set.side}-dowels`, set.pin.d, to - from, set.pin.chamfer);
  const places = set.positions.map(({ x, y }, i) => ({ name: `${name} ${i + 1}`, x, y, z: from, turnedOver: false }));
  return [{ name, solid, colour: colours.dowel, places }];
}

/** Screws of a group with their washers and nuts, named as the screw list names them, at every place. */
function fasteners(joint: Joint, group: ScrewGroup): PlacedSolid[] {
  const { headZ, points, washer, nut, grip, positions, id } = group;
  const listed = screwsToBuy(joint, [group]).map(({ what }) => what);
  const made = (
    kind: 'screw' | 'washer' | 'nut',
    solid: Solid,
    colour: string,
    below: readonly number[],
  ): PlacedSolid => {
    const name = `${kind === 'screw' ? listed[0] : (listed.find((what) => what.includes(` ${kind},`)) ?? kind)}, ${id}`;
    const places = below.flatMap((depth) => positions.map(({ x, y }) => ({ x, y, z: headZ + points * depth })));
    const turnedOver = points === -1;
    return { name, solid, colour, places: places.map((at, i) => ({ ...at, name: `${name} ${i + 1}`, turnedOver })) };
  };
  const parts = [made('screw', screwSolid(group), colours.screw, [0])];
  if (washer) {
    const ring = washerSolid(`${id}-washer`, washer.outside, washer.thickness, group);
    // A bolt with a nut has a washer at both ends.
    parts.push(made('washer', ring, colours.nut, nut ? [0, grip - washer.thickness] : [0]));
  }
  if (nut) {
    parts.push(made('nut', nutSolid(`${id}-nut`, nut.acrossFlats, nut.height, group), colours.nut, [grip]));
  }
  return parts;
}

/** The whole joint in the adapter's coordinates. */
export function jointSolids(joint: Joint): Assembly {
  const { thickness } = joint.adapterSpec;
  const wheel = wheelSolid(joint, joint.wheelZ ?? 0);
  return {
    name: `${joint.job.title}, joint`,
    parts: [
      adapterSolid(joint),
      ...(wheel ? [wheel] : []),
      ...joint.screws.flatMap((group) => fasteners(joint, group)),
      ...dowelSolids(joint.dowels?.driving, thickness),
      ...dowelSolids(joint.dowels?.driven, thickness),
      ...bracketInJoint(joint),
      flangeSolid(joint, 'driving'),
      flangeSolid(joint, 'driven'),
    ],
  };
}
