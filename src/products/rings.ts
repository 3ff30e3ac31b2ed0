/** Checks to print in minutes: fit rings and plugs for the flanges' registers, and a hole-pattern disc for each flange. Binary STL. */
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { Mesh } from '../model/mesh.ts';
import { type FitGauge, fitGauges, type GaugedRegister } from '../parts/fit-ring.ts';
import { platePlaces, usualBed } from '../parts/fit-ring-plate.ts';
import { buildHoleDisc, type HoleDiscSpec } from '../parts/hole-disc.ts';
import { plainName } from '../parts/mock-up.ts';
import { engrave, textWidth } from '../solids/engrave.ts';
import { seat } from '../solids/seat.ts';
import { meshTurned } from '../solids/turned-mesh.ts';
import { writeStl } from '../write/stl.ts';
import type { MadeFile, Making, Product } from './product.ts';

type Side = 'driving' | 'driven';

const sides: readonly Side[] = ['driving', 'driven'];
/** A gauge's facets must not eat into its steps, mm. */
const gaugeChordError = 0.001;

function wordsFor(joint: Joint, side: Side): string[] {
  const name = joint.job.print.text ? plainName(joint[side].name) : '';
  return name === '' ? [side.toUpperCase()] : [name];
}

/** The register as a gauge tests it; null where there is none. */
export function gaugedRegister({ register }: ResolvedFlange): GaugedRegister | null {
  if (!register) return null;
  const { gender, limits, depth, corner } = register;
  return { gender, limits, depth: Math.max(0, depth.value - depth.doubt), corner };
}

function gaugesOf(joint: Joint, side: Side): FitGauge[] {
  const register = gaugedRegister(joint[side]);
  if (!register) return [];
  const { rings, registers } = joint.job.print;
  const settings = { steps: rings?.steps ?? 5, step: rings?.step ?? ('auto' as const), allowance: registers };
  return fitGauges(register, settings, { id: side, words: wordsFor(joint, side), measure: textWidth });
}

/** Gauges of a side, plate by plate, each with its place. */
function platesOf(joint: Joint, side: Side): { gauge: FitGauge; x: number; y: number }[][] {
  const gauges = gaugesOf(joint, side);
  const widest = 2 * Math.max(0, ...gauges.flatMap(({ part }) => part.outer.map((p) => p.r)));
  const bed = joint.job.print.bed;
  const places = platePlaces(gauges.length, widest, bed ? [bed[0] ?? usualBed[0], bed[1] ?? usualBed[1]] : usualBed);
  let next = 0;
  return places.map((plate) => plate.map((place) => ({ gauge: gauges[next++] as FitGauge, ...place })));
}

/** A flange as its disc needs it: its own face, looked at. The driven face was mirrored when it was read, and is mirrored back. */
export function discSpec(flange: ResolvedFlange): HoleDiscSpec {
  const { side, register, holes } = flange;
  return {
    id: side,
    name: flange.name,
    outside: flange.outside.value,
    register: register && {
      gender: register.gender,
      at: holes.circle !== null && register.diameter.value > holes.circle ? 'rim' : 'inner',
      diameter: (register.limits.lower + register.limits.upper) / 2,
      doubt: (register.limits.upper - register.limits.lower) / 2,
      depth: Math.max(0, register.depth.value - register.depth.doubt),
    },
    bore: flange.bore,
    holes: {
      positions: holesThere(holes).map(({ x, y }) => ({ x: side === 'driven' ? 0 - x : x, y })),
      diameter: holes.diameter.value,
      tapped: holes.kind === 'tapped',
      doubt: holes.doubt,
    },
  };
}

/** Meshes that do not touch, as one. */
function together(meshes: readonly Mesh[]): Mesh {
  const positions = new Float64Array(meshes.reduce((sum, mesh) => sum + mesh.positions.length, 0));
  const triangles = new Uint32Array(meshes.reduce((sum, mesh) => sum + mesh.triangles.length, 0));
  let [corner, at] = [0, 0];
  for (const mesh of meshes) {
    positions.set(mesh.positions, corner);
    triangles.set(
      mesh.triangles.map((vertex) => vertex + corner / 3),
      at,
    );
    corner += mesh.positions.length;
    at += mesh.triangles.length;
  }
  return { positions, triangles };
}

const moved = ({ positions, triangles }: Mesh, x: number, y: number): Mesh => ({
  positions: positions.map((value, i) => (i % 3 === 0 ? value + x : i % 3 === 1 ? value + y : value)),
  triangles,
});

function plateNames(joint: Joint, side: Side, base: string): string[] {
  const { register } = joint[side];
  const word = register?.gender === 'male' ? 'ring' : 'plug';
  const plates = platesOf(joint, side);
  return plates.map((_, i) => `${base}-${side}-${word}${plates.length > 1 ? `-${i + 1}` : ''}.stl`);
}

const discName = (side: Side, base: string) => `${base}-${side}-disc.stl`;
const header = (what: string, revision: string) => `flangewright ${what} ${revision}, mm, FIT CHECK`;

async function plateFiles({ joint, base, revision }: Making, side: Side): Promise<MadeFile[]> {
  const names = plateNames(joint, side, base);
  const files: MadeFile[] = [];
  for (const [i, plate] of platesOf(joint, side).entries()) {
    const meshes: Mesh[] = [];
    for (const { gauge, x, y } of plate) {
      const mesh = await engrave(await meshTurned(gauge.part, { chordError: gaugeChordError }), gauge.part.engravings);
      meshes.push(moved(seat(mesh), x, y));
    }
    files.push({
      kind: 'rings',
      name: names[i] as string,
      bytes: await writeStl(together(meshes), header(`${side} fit gauges`, revision)),
    });
  }
  return files;
}

async function discFile({ joint, base, revision }: Making, side: Side): Promise<MadeFile> {
  const { holes, registers } = joint.job.print;
  const marks = { words: wordsFor(joint, side), measure: textWidth };
  const { part, upsideDown } = buildHoleDisc(discSpec(joint[side]), { holes, registers }, marks);
  const mesh = await engrave(await meshTurned(part), part.engravings);
  return {
    kind: 'rings',
    name: discName(side, base),
    bytes: await writeStl(seat(mesh, upsideDown), header(`${side} hole-pattern disc`, revision)),
  };
}

export const ringFiles: Product = {
  kind: 'rings',
  about: 'fit rings or plugs of the registers and hole-pattern discs to print, binary STL in mm',
  metal: false,
  applies: () => true,
  asked: ({ job }) => job.print.rings !== undefined,
  names: ({ joint, base }) => sides.flatMap((side) => [...plateNames(joint, side, base), discName(side, base)]),
  async make(making) {
    const files: MadeFile[] = [];
    for (const side of sides) files.push(...(await plateFiles(making, side)), await discFile(making, side));
    return files;
  },
};
