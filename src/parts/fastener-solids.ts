/**
 * Screws, nuts, washers and dowel pins as simple exact bodies, to be seen in an assembly and to be measured against: heads at the sizes
 * of their standards, threads smooth at their outside diameter (in nuts at the core). Left out: knurls, fillets, bevels of hexagons.
 *
 * Each stands on the axis with its bearing face at z = 0, its shank towards +z. mm.
 */
import type { Profile } from '../model/part.ts';
import type { Contour } from '../model/sheet.ts';
import type { Solid, SolidPiece } from '../model/solid.ts';
import { type HeadKind, screwHead } from '../standards/screw-heads.ts';
import { socketCapScrews } from '../standards/socket-cap-screws.ts';
import { lookUp } from '../standards/table.ts';

/** What is known of a screw. */
export interface ScrewToBuild {
  readonly id: string;
  readonly thread: string;
  readonly major: number;
  readonly pitch: number;
  readonly length: number | null;
  readonly grip: number;
  readonly head: { readonly kind: HeadKind; readonly diameter: number; readonly height: number };
}

const onAxis = (...corners: readonly (readonly [z: number, r: number])[]): SolidPiece => {
  const profile: Profile = corners.map(([z, r]) => ({ z, r }));
  return { kind: 'revolved', x: 0, y: 0, profile };
};

/** A hexagon about the axis by its width across flats. Without sines: their last bit differs from engine to engine, a root's does not. */
function hexagon(across: number): Contour {
  const [corner, flat] = [across / Math.sqrt(3), across / 2];
  const at = (x: number, y: number) => ({ x, y, bulge: 0 });
  const half = corner / 2;
  const vertices = [at(corner, 0), at(half, flat), at(-half, flat), at(-corner, 0), at(-half, -flat), at(half, -flat)];
  return { kind: 'path', feature: 'hexagon', vertices };
}

const prism = (across: number, from: number, to: number): SolidPiece => {
  return { kind: 'extruded', outside: hexagon(across), holes: [], from, to };
};

/** Core of an external thread, radius: d - 1.2269 P (ISO 724, ISO 68-1). */
const coreRadius = (major: number, pitch: number) => (major - 1.2269 * pitch) / 2;

/** Key of a hexagon socket and its depth. Where no table gives them: 0.4 of the head wide, half of it deep, common practice. */
function socketOf({ thread, head }: ScrewToBuild): { across: number; depth: number } {
  const size = thread.split('x')[0] ?? thread;
  const cap = head.kind === 'socket' ? lookUp(socketCapScrews, 'size', size) : null;
  if (cap?.ok) return { across: cap.value.s, depth: cap.value.t };
  const known = screwHead(head.kind, size);
  return { across: (known.ok ? known.value.s : undefined) ?? 0.4 * head.diameter, depth: 0.5 * head.height };
}

/** Shank from `from` to its end, the point bevelled to the core. */
function shank(screw: ScrewToBuild, from: number): (readonly [number, number])[] {
  const { major, pitch, length, grip } = screw;
  // A joint whose screw length is not found still has a screw of about its grip and one diameter.
  const end = Math.max(length ?? (Number.isFinite(grip) ? grip : 2 * major) + major, from + pitch);
  const core = coreRadius(major, pitch);
  const bevel = Math.min(major / 2 - core, (end - from) / 2);
  return [
    [from, major / 2],
    [end - bevel, major / 2],
    [end, core],
  ];
}

/** A screw; a flat head has the plane of its top at z = 0. */
export function screwSolid(screw: ScrewToBuild): Solid {
  const { id, head, major } = screw;
  const r = head.diameter / 2;
  const { height } = head;
  if (head.kind === 'hex') {
    const across = (head.diameter * Math.sqrt(3)) / 2;
    return { id, body: [prism(across, -height, 0), onAxis(...shank(screw, 0))], cuts: [] };
  }
  const { across, depth } = socketOf(screw);
  if (head.kind === 'flat') {
    const cone = Math.max(0.5, r - major / 2);
    return { id, body: [onAxis([0, r], ...shank(screw, cone))], cuts: [prism(across, 0, Math.min(depth, cone))] };
  }
  // A button is a dome in truth; a cone and a rim come near enough to see what it needs.
  const [top, rim] = head.kind === 'button' ? [0.6 * r, -0.4 * height] : [r - 0.06 * major, 0.06 * major - height];
  return {
    id,
    body: [onAxis([-height, Math.max(top, across / Math.sqrt(3) + 0.1)], [rim, r], [0, r], ...shank(screw, 0))],
    cuts: [prism(across, -height, depth - height)],
  };
}

/** A plain hexagon nut on the z side of its bearing face. */
export function nutSolid(id: string, acrossFlats: number, height: number, screw: ScrewToBuild): Solid {
  const core = coreRadius(screw.major, screw.pitch);
  return { id, body: [prism(acrossFlats, 0, height)], cuts: [onAxis([0, core], [height, core])] };
}

/** A washer on the z side of the head; its hole takes the screw with a little room. */
export function washerSolid(id: string, outside: number, thickness: number, screw: ScrewToBuild): Solid {
  const hole = screw.major / 2 + 0.5;
  return {
    id,
    body: [onAxis([0, outside / 2], [thickness, outside / 2])],
    cuts: [onAxis([0, hole], [thickness, hole])],
  };
}

/** A dowel pin from z = 0 to its length, both ends bevelled. */
export function dowelSolid(id: string, diameter: number, length: number, chamfer: number): Solid {
  const r = diameter / 2;
  const bevel = Math.min(chamfer, length / 3, r / 2);
  // The bevel is about 15 degrees: as long as the table says, a quarter as high.
  return {
    id,
    body: [onAxis([0, r - bevel / 4], [bevel, r], [length - bevel, r], [length, r - bevel / 4])],
    cuts: [],
  };
}
