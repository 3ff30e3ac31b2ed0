/** The sensor's bracket, folded, and the sensor in it, where the job puts them: over the wheel at the clocking zero. */
import { tiltAt } from '../geometry/folded-pieces.ts';
import { solidOfSheet } from '../geometry/solid-of-part.ts';
import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { ContourVertex } from '../model/sheet.ts';
import type { Axes, Place, PlacedSolid, Solid, SolidPiece } from '../model/solid.ts';
import { earAt, sensorAt } from '../parts/bracket.ts';
import { axialRadius } from '../parts/tone-wheel.ts';

const colours = { bracket: '#8fae8b', sensor: '#33383d' };

export const bracketName = 'bracket';

type Vector = readonly [number, number, number];

/** Where the bracket's blank goes: the plane of its bends stands on the wheel's teeth at angle 0. */
function placeOf({ plane }: Bracket, joint: Joint, name: string): Place | null {
  const { wheelSpec, wheelZ, job } = joint;
  if (!wheelSpec || wheelZ === null || !job.bracket) return null;
  const way = job.bracket.towards === 'driving' ? -1 : 1;
  const radial = (job.sensor?.direction ?? 'radial') === 'radial';
  // p and q of the plane as directions in the joint, and where both are 0: on the rim, or on the face in the middle of teeth or windows.
  const [p, q]: readonly [Vector, Vector] = radial
    ? [
        [0, 0, way],
        [1, 0, 0],
      ]
    : [
        [1, 0, 0],
        [0, 0, way],
      ];
  const face = way === 1 ? wheelZ + wheelSpec.thickness : wheelZ;
  const teeth: Vector = radial
    ? [wheelSpec.outside / 2, 0, wheelZ + wheelSpec.thickness / 2]
    : [axialRadius(wheelSpec), 0, face];
  const along = (point: { readonly p: number; readonly q: number }): Vector => [
    point.p * p[0] + point.q * q[0],
    point.p * p[1] + point.q * q[1],
    point.p * p[2] + point.q * q[2],
  ];
  const [dx, dy, dz] = along(plane.origin);
  const axes: Axes = { x: along(plane.e), z: along(plane.n) };
  return { name, x: teeth[0] + dx, y: teeth[1] + dy, z: teeth[2] + dz, turnedOver: false, axes };
}

/** How far the sensor stands out behind its ear where the job does not tell, and how thick the ear is, mm: only shown. */
const shown = { behind: 20, ear: 4 };

/** The sensor as far as the job tells: its nose from the ear to the tip, and the ear, in the blank's coordinates. */
function sensorSolid({ spec, part }: Bracket, reach: number, behind: number): Solid {
  const x = sensorAt(spec);
  const r = spec.sensor.bore / 2;
  const nose: SolidPiece = {
    kind: 'extruded',
    outside: { kind: 'circle', feature: 'nose', x, y: 0, r },
    holes: [],
    from: -behind,
    to: reach,
    tilt: tiltAt(part, x),
  };
  const ear = earAt(spec);
  if (!ear) return { id: 'sensor', body: [nose], cuts: [] };
  const wide = Math.max(r + 1, spec.sensor.ear ? spec.sensor.ear.hole / 2 + 3 : 0);
  const length = Math.hypot(ear.x - x, ear.y);
  const [ux, uy] = [(ear.x - x) / length, ear.y / length];
  const corner = (at: { x: number; y: number }, side: number, bulge: number): ContourVertex => {
    return { x: at.x - side * wide * uy, y: at.y + side * wide * ux, bulge };
  };
  const vertices = [corner({ x, y: 0 }, -1, 0), corner(ear, -1, 1), corner(ear, 1, 0), corner({ x, y: 0 }, 1, 1)];
  const plate: SolidPiece = {
    kind: 'extruded',
    outside: { kind: 'path', feature: 'ear', vertices },
    holes: [],
    from: -shown.ear,
    to: 0,
    tilt: tiltAt(part, x),
  };
  return { id: 'sensor', body: [nose, plate], cuts: [] };
}

/** The bracket alone, where its foot lies flat. Null where the job has none. */
export function bracketSolid({ bracket }: Joint): PlacedSolid | null {
  if (!bracket) return null;
  const places = [{ name: bracketName, x: 0, y: 0, z: 0, turnedOver: false }];
  return { name: bracketName, solid: solidOfSheet(bracket.part), colour: colours.bracket, places };
}

/** Bracket and sensor in the joint; nothing where the job has none. */
export function bracketInJoint(joint: Joint): PlacedSolid[] {
  const { bracket, job } = joint;
  const own = bracketSolid(joint);
  if (!bracket || !own || !job.bracket) return [];
  const place = placeOf(bracket, joint, bracketName);
  if (!place) return [];
  const name = 'sensor, as far as the job tells';
  const sensor = sensorSolid(bracket, job.bracket.sensor.reach, job.bracket.sensor.behind || shown.behind);
  return [
    { ...own, places: [place] },
    { name, solid: sensor, colour: colours.sensor, places: [{ ...place, name }] },
  ];
}
