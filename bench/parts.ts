/** The parts that are measured: a disc with many counterbored holes, and a wheel with many teeth. Invented. */

import { sheetMass } from '../src/geometry/contour.ts';
import { turnedMass } from '../src/geometry/turned-mass.ts';
import type { TurnedPart } from '../src/model/part.ts';
import type { SheetPart } from '../src/model/sheet.ts';
import { buildToneWheel } from '../src/parts/tone-wheel.ts';

const steel = { id: 'steel', name: 'steel', density: 0.00785 };

/** First `count` places on rings 30 mm apart, holes on a ring 22 mm apart or more. */
function places(count: number): { x: number; y: number }[] {
  const found: { x: number; y: number }[] = [];
  for (let radius = 160; found.length < count; radius += 30) {
    const fits = Math.floor((2 * Math.PI * radius) / 22);
    const here = Math.min(fits, count - found.length);
    for (let i = 0; i < here; i++) {
      const angle = (2 * Math.PI * i) / here;
      found.push({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
    }
  }
  return found;
}

/** A disc of 900 mm with a spigot, a bore and counterbored holes. @param holes 1 to 600 */
export function adapterWith(holes: number): TurnedPart {
  return {
    kind: 'turned',
    id: 'bench-adapter',
    name: 'bench adapter',
    material: steel,
    outer: [
      { z: -5, r: 60 },
      { z: 0, r: 60 },
      { z: 0, r: 450 },
      { z: 20, r: 450 },
    ],
    drillings: [
      {
        id: 'bore',
        feature: 'bore',
        x: 0,
        y: 0,
        profile: [
          { z: -5, r: 25 },
          { z: 20, r: 25 },
        ],
      },
      ...places(holes).map(({ x, y }, i) => ({
        id: `hole-${i + 1}`,
        feature: 'holes',
        x,
        y,
        profile: [
          { z: 0, r: 4.5 },
          { z: 11, r: 4.5 },
          { z: 11, r: 7.5 },
          { z: 20, r: 7.5 },
        ],
      })),
    ],
    features: [],
    engravings: [],
  };
}

/** A wheel whose teeth are of one size, so that its diameter grows with their number; a bore and six holes. @param teeth 10 or more */
export function wheelWith(teeth: number): SheetPart {
  const outside = Math.max(90, 3 * teeth);
  const radius = outside / 2 - 18;
  return buildToneWheel({
    id: 'bench-wheel',
    name: 'bench wheel',
    material: steel,
    thickness: 3,
    teeth,
    missing: 0,
    outside,
    root: outside - 9,
    ratio: 0.5,
    flanks: 'straight',
    rootRadius: 0.8,
    tipBreak: 0.2,
    bore: outside / 3,
    screwHoles: {
      diameter: 5.5,
      positions: Array.from({ length: 6 }, (_, i) => ({
        x: radius * Math.cos((Math.PI * i) / 3),
        y: radius * Math.sin((Math.PI * i) / 3),
      })),
    },
    toothAngle: 0,
    kerf: 0,
  });
}

/** Closed-form volume, mm3. */
export const volumeOf = (part: TurnedPart | SheetPart): number =>
  (part.kind === 'turned' ? turnedMass(part) : sheetMass(part)).mass / steel.density;
