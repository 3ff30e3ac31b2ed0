/** A joint as bodies to show in space: as it is bolted up, the finished parts alone, or the mock-ups as they lie on the printer's bed. */
import type { Joint } from '../job/joint.ts';
import { revisionOf } from '../job/revision.ts';
import type { Finding } from '../model/finding.ts';
import type { Mesh } from '../model/mesh.ts';
import type { Place, PlacedSolid } from '../model/solid.ts';
import { jointVerdict } from '../report/joint-verdict.ts';
import { meshFolded } from '../solids/folded-mesh.ts';
import { meshSheet } from '../solids/sheet-mesh.ts';
import { shownMeshes } from '../solids/shown-mesh.ts';
import { meshTurned } from '../solids/turned-mesh.ts';
import { bracketName } from './bracket-solids.ts';
import { adapterName, flangePart, jointSolids, wheelName } from './joint-solids.ts';
import { adapterMockUpMesh, wheelMockUpMesh } from './mock-up.ts';
import { pictures } from './pictures.ts';

/** What is shown: everything in its place, the parts that are made, or what is printed. */
export type ShownAs = 'assembled' | 'finished' | 'printed';

/** One body, once or several times, in the adapter's coordinates, mm. */
export interface LiveBody {
  readonly name: string;
  /** Made new, bought, or there before: the last is shown as a ghost. */
  readonly role: 'made' | 'bought' | 'there';
  /** As seen on a screen: `#8899aa`. */
  readonly colour: string;
  readonly meshes: readonly Mesh[];
  readonly places: readonly LivePlace[];
}

export interface LivePlace extends Place {
  /** Which way it goes when the joint is pulled apart, and how far beside the others: below 0 towards the driving side. */
  readonly apart: number;
}

/** How far bodies go when they are pulled apart, of the distance asked for. */
const goes = { flange: 1, screw: 1.6, dowel: 0.5, wheel: 0.45 };

/** Facets of a picture may be coarser than those of a file, mm. */
const shownError = 0.05;

/** Which way a body leaves the adapter: a screw the way it was put in, all others away from its middle. */
function apartOf({ name, places }: PlacedSolid, { z, turnedOver }: Place, joint: Joint): number {
  if (name === adapterName || name === bracketName || name.startsWith('sensor')) return 0;
  if (name.startsWith('driving flange')) return -goes.flange;
  if (name.startsWith('driven flange')) return goes.flange;
  const middle = joint.adapterSpec.thickness / 2;
  if (name === wheelName) return (joint.wheelZ ?? 0) < middle ? -goes.wheel : goes.wheel;
  if (name.startsWith('dowel')) return z < 0 ? -goes.dowel : goes.dowel;
  // What stands at the other end of a bolt goes the other way.
  const isFar = name.includes(' nut,') || (name.includes(' washer,') && z !== places[0]?.z);
  return turnedOver === isFar ? -goes.screw : goes.screw;
}

async function meshesOf({ name, solid }: PlacedSolid, joint: Joint, chordError: number): Promise<readonly Mesh[]> {
  if (name === adapterName) return [await meshTurned(joint.adapter, { chordError })];
  if (name === wheelName && joint.wheel) return [meshSheet(joint.wheel, { chordError })];
  if (name === bracketName && joint.bracket) return [meshFolded(joint.bracket.part, { chordError })];
  if (name.startsWith('driving flange')) return [await meshTurned(flangePart(joint, 'driving'), { chordError })];
  if (name.startsWith('driven flange')) return [await meshTurned(flangePart(joint, 'driven'), { chordError })];
  return shownMeshes(solid, chordError);
}

const made: readonly string[] = [adapterName, wheelName, bracketName];

function roleOf({ name }: PlacedSolid): LiveBody['role'] {
  if (made.includes(name)) return 'made';
  return name.includes('flange, context only') ? 'there' : 'bought';
}

/** The mock-ups side by side on the bed, engraved, with the printer's allowances. */
async function printed(joint: Joint, findings: readonly Finding[]): Promise<LiveBody[]> {
  const making = {
    joint,
    findings,
    verdict: jointVerdict(findings),
    revision: revisionOf(joint),
    base: '',
    pictures: () => pictures(joint),
    forced: false,
  };
  const beside = joint.adapterSpec.outside / 2 + (joint.wheelSpec?.outside ?? 0) / 2 + 10;
  const body = (name: string, mesh: Mesh, x: number): LiveBody => ({
    name: `${name} mock-up`,
    role: 'made',
    colour: '#b9c7a6',
    meshes: [mesh],
    places: [{ name, x, y: 0, z: 0, turnedOver: false, apart: 0 }],
  });
  const adapter = body(adapterName, await adapterMockUpMesh(making), 0);
  if (!joint.wheelSpec) return [adapter];
  return [adapter, body(wheelName, await wheelMockUpMesh(making, joint.wheelSpec), beside)];
}

/**
 * Bodies of a joint for a view in space.
 * @param findings what the checks say: a mock-up of a failing job says so on its rim
 * @param chordError mm; mock-ups are shown as they are printed
 */
export async function liveBodies(
  joint: Joint,
  findings: readonly Finding[],
  as: ShownAs = 'assembled',
  chordError = shownError,
): Promise<LiveBody[]> {
  if (as === 'printed') return printed(joint, findings);
  const parts = jointSolids(joint).parts.filter(({ name }) => as === 'assembled' || made.includes(name));
  return Promise.all(
    parts.map(async (part) => {
      const role = roleOf(part);
      const meshes = meshesOf(part, joint, chordError);
      return {
        name: part.name,
        role,
        colour: part.colour,
        // What was measured need not close to a body (a hole over the rim, say): the new parts are shown all the same.
        meshes: await (role === 'made' ? meshes : meshes.catch(() => [])),
        places: part.places.map((place) => ({ ...place, apart: apartOf(part, place, joint) })),
      };
    }),
  );
}
