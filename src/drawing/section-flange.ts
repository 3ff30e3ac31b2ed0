/** A flange in section, as far as its measurements go. mm; z along the shaft of the joint. */
import type { Profile, ProfilePoint } from '../model/part.ts';
import type { FlangeToDraw } from './joint-to-draw.ts';
import type { RoundBody } from './section-body.ts';
import { turnedOver } from './turned-profile.ts';

/** Depth at which a register of unknown depth is drawn. */
const unknownDepth = 2.5;

/** Core of a tapped hole as a share of its major diameter, close enough for a picture. */
const coreShare = 0.85;

/** How thick a flange of unknown thickness is drawn. */
const shownThickness = (flange: FlangeToDraw): number => flange.thickness ?? Math.max(8, 0.1 * flange.outside);

const holeRadius = (h: FlangeToDraw['holes'][number]): number =>
  (h.major === null ? h.diameter : h.major * coreShare) / 2;

/** The flange with its face at height 0, growing upwards; what stands out of its face has negative heights. */
function upright(flange: FlangeToDraw): RoundBody {
  const { register, outside, bore } = flange;
  const thickness = shownThickness(flange);
  // A step deeper than the flange is thick cannot be; the picture shows it as deep as it can.
  const depth = Math.min(register?.depth ?? unknownDepth, register?.at === 'rim' ? thickness : Infinity);
  const rim = outside / 2;
  const r = register ? register.diameter / 2 : 0;
  const stands = register !== null && (register.gender === 'male' ? register.at === 'inner' : register.at === 'rim');
  const low = stands ? -depth : 0;
  const outer: ProfilePoint[] = [];
  if (register?.gender === 'male' && register.at === 'inner') outer.push({ z: -depth, r }, { z: 0, r });
  if (register?.gender === 'male' && register.at === 'rim' && r < rim)
    outer.push({ z: 0, r }, { z: depth, r }, { z: depth, r: rim });
  else outer.push({ z: register?.gender === 'female' && register.at === 'rim' ? -depth : 0, r: rim });
  outer.push({ z: thickness, r: rim });
  const onAxis: Profile[] = [];
  if (register?.gender === 'female')
    onAxis.push(
      register.at === 'rim'
        ? [
            { z: -depth, r },
            { z: 0, r },
          ]
        : [
            { z: 0, r },
            { z: depth, r },
          ],
    );
  if (bore !== null && bore > 0)
    onAxis.push([
      { z: low, r: bore / 2 },
      { z: thickness, r: bore / 2 },
    ]);
  return {
    outer,
    drillings: [
      ...onAxis.map((profile) => ({ x: 0, y: 0, profile })),
      ...flange.holes.map((h) => ({
        x: h.x,
        y: h.y,
        profile: [
          { z: 0, r: holeRadius(h) },
          { z: Math.min(h.depth ?? thickness, thickness), r: holeRadius(h) },
        ],
      })),
    ],
  };
}

const raised = (profile: Profile, by: number): Profile => profile.map((p) => ({ ...p, z: p.z + by }));

/** The flange in the joint's coordinates, where its far side is, and where its edge is broken off for want of a thickness. */
export function flangeInJoint(
  flange: FlangeToDraw,
  side: 'driving' | 'driven',
  thickness: number,
): { body: RoundBody; far: number; brokenAt: number | null } {
  const body = upright(flange);
  const place = (profile: Profile): Profile => (side === 'driving' ? turnedOver(profile) : raised(profile, thickness));
  const far = side === 'driving' ? -shownThickness(flange) : thickness + shownThickness(flange);
  return {
    body: {
      outer: place(body.outer),
      drillings: body.drillings.map((d) => ({ ...d, profile: place(d.profile) })),
    },
    far,
    brokenAt: flange.thickness === null ? far : null,
  };
}
