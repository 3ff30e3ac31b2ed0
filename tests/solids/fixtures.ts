/**
 * Parts written down by hand, so that no generator stands between a test and the solid it tests. All
 * invented.
 */
import type { Drilling, Profile, TurnedPart } from '../../src/model/part.ts';
import type { Contour, SheetPart } from '../../src/model/sheet.ts';

export const steel = { id: 'steel', name: 'steel', density: 0.00785 } as const;

/** Profile from [z, r] pairs. */
export function profile(...corners: readonly (readonly [number, number])[]): Profile {
  return corners.map(([z, r]) => ({ z, r }));
}

export function drilling(
  id: string,
  x: number,
  y: number,
  ...corners: readonly (readonly [number, number])[]
): Drilling {
  return { id, feature: id, x, y, profile: profile(...corners) };
}

/** Equal drillings round a circle, the first at `start` degrees. */
export function ringOf(
  id: string,
  count: number,
  radius: number,
  start: number,
  ...corners: readonly (readonly [number, number])[]
): Drilling[] {
  return Array.from({ length: count }, (_, i) => {
    const a = ((start + (360 * i) / count) * Math.PI) / 180;
    return drilling(`${id}-${i + 1}`, radius * Math.cos(a), radius * Math.sin(a), ...corners);
  });
}

export function turned(
  id: string,
  outer: Profile,
  drillings: readonly Drilling[] = [],
  more: Partial<TurnedPart> = {},
): TurnedPart {
  return {
    kind: 'turned',
    id,
    name: id,
    material: steel,
    outer,
    drillings,
    features: [],
    engravings: [],
    ...more,
  };
}

/**
 * An adapter of 120 x 23: spigot of 57 below the driving face with foot undercut and lead chamfer, recess of
 * 60 in the driven face with mouth chamfer, centre bore of 40, six countersunk holes, six blind tapped holes
 * with drill points that open in the driven face, two flats of 114, chamfered rim.
 */
export function adapter(): TurnedPart {
  const tip = 23 - 15 - 4.25 / Math.tan((59 * Math.PI) / 180);
  return turned(
    'adapter',
    profile([-3, 27.7], [-2.2, 28.5], [-0.8, 28.5], [-0.8, 28], [0, 28], [0, 59], [1, 60], [22, 60], [23, 59]),
    [
      drilling('bore', 0, 0, [-3, 20], [23, 20]),
      drilling('recess', 0, 0, [19, 30], [22.5, 30], [23, 30.5]),
      ...ringOf('screw', 6, 44, 0, [0, 5.25], [18, 5.25], [23, 10.25]),
      ...ringOf('tapped', 6, 44, 30, [tip, 0], [8, 4.25], [23, 4.25]),
    ],
    { flats: { feature: 'flats', across: 114, angle: 90 } },
  );
}

/**
 * A toothed wheel of 24 teeth, 160 outside and 148 at the root, radial flanks, 5 thick, bore of 60 and six
 * holes.
 */
export function wheel(): SheetPart {
  const teeth = 24;
  const pitch = (2 * Math.PI) / teeth;
  const vertices = Array.from({ length: teeth }, (_, i) => {
    const a = i * pitch;
    const at = (r: number, angle: number, bulge: number) => ({
      x: r * Math.cos(angle),
      y: r * Math.sin(angle),
      bulge,
    });
    // Half a pitch of tip arc, a flank inwards, half a pitch of root arc, a flank outwards.
    const quarter = Math.tan(pitch / 8);
    return [at(80, a, quarter), at(80, a + pitch / 2, 0), at(74, a + pitch / 2, quarter), at(74, a + pitch, 0)];
  }).flat();
  const holes: Contour[] = Array.from({ length: 6 }, (_, i) => {
    const a = (i * Math.PI) / 3;
    return { kind: 'circle', feature: `screw-${i + 1}`, x: 45 * Math.cos(a), y: 45 * Math.sin(a), r: 4.25 };
  });
  return {
    kind: 'sheet',
    id: 'wheel',
    name: 'wheel',
    material: steel,
    thickness: 5,
    outside: { kind: 'path', feature: 'teeth', vertices },
    holes: [{ kind: 'circle', feature: 'bore', x: 0, y: 0, r: 30 }, ...holes],
    features: [],
    engravings: [],
  };
}
