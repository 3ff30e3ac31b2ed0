/** Printable mock-ups: binary STL, seated on z = 0. */
import type { Joint } from '../job/joint.ts';
import type { Mesh } from '../model/mesh.ts';
import type { AdapterSpec } from '../parts/adapter-spec.ts';
import { adapterMockUp, type MockUpMarks, type PrintAllowances, plainName, wheelMockUp } from '../parts/mock-up.ts';
import type { ToneWheelSpec } from '../parts/tone-wheel.ts';
import { engrave, textWidth } from '../solids/engrave.ts';
import { seat } from '../solids/seat.ts';
import { meshSheet } from '../solids/sheet-mesh.ts';
import { meshTurned } from '../solids/turned-mesh.ts';
import { writeStl } from '../write/stl.ts';
import { type Making, type Product, verdictWords } from './product.ts';

const allowances = ({ job }: Joint): PrintAllowances => ({ holes: job.print.holes, registers: job.print.registers });

/** Words engraved beside the warning: that checks failed, then the part's name and the job's revision. */
function marks({ joint, verdict, revision }: Making, name: string): MockUpMarks {
  const words = [
    verdict === 'fail' ? 'CHECKS FAILED' : '',
    ...(joint.job.print.text ? [plainName(name), revision] : []),
  ];
  return { words: words.filter((word) => word !== ''), measure: textWidth };
}

/** The STL's header line, at most 80 plain characters. */
function header(making: Making, part: string): string {
  const failed = verdictWords(making.verdict, making.forced);
  return `${part} MOCK-UP ${making.revision}, mm, FIT CHECK - DO NOT DRIVE${failed ? ` - ${failed}` : ''}`.slice(0, 80);
}

/** A face that carries a spigot does not lie flat: the other one goes on the bed when it can. */
export function printsUpsideDown(spec: AdapterSpec): boolean {
  const stands = (register: AdapterSpec['registers']['driving']) =>
    register !== null && (register.gender === 'male') === (register.at === 'inner');
  return stands(spec.registers.driving) && !stands(spec.registers.driven);
}

/** The adapter's mock-up, engraved, seated on z = 0. */
export async function adapterMockUpMesh(making: Making): Promise<Mesh> {
  const { joint } = making;
  const part = adapterMockUp(joint.adapterSpec, allowances(joint), marks(making, joint.adapterSpec.name));
  const mesh = await engrave(await meshTurned(part), part.engravings);
  return seat(mesh, printsUpsideDown(joint.adapterSpec));
}

/** The wheel's mock-up, engraved, seated on z = 0. */
export async function wheelMockUpMesh(making: Making, spec: ToneWheelSpec): Promise<Mesh> {
  const part = wheelMockUp(spec, allowances(making.joint), marks(making, spec.name));
  return seat(await engrave(meshSheet(part), part.engravings));
}

export const adapterMockUpFile: Product = {
  kind: 'mockup',
  about: 'adapter mock-up to print, binary STL in mm',
  metal: false,
  applies: () => true,
  names: ({ base }) => [`${base}-adapter-mockup.stl`],
  async make(making) {
    const bytes = await writeStl(await adapterMockUpMesh(making), header(making, 'adapter'));
    return [{ kind: 'mockup', name: `${making.base}-adapter-mockup.stl`, bytes }];
  },
};

export const wheelMockUpFile: Product = {
  kind: 'wheel-mockup',
  about: 'wheel mock-up to print, binary STL in mm',
  metal: false,
  applies: (joint) => joint.wheelSpec !== null,
  names: ({ base }) => [`${base}-wheel-mockup.stl`],
  async make(making) {
    const { wheelSpec } = making.joint;
    if (!wheelSpec) return [];
    const bytes = await writeStl(await wheelMockUpMesh(making, wheelSpec), header(making, 'wheel'));
    return [{ kind: 'wheel-mockup', name: `${making.base}-wheel-mockup.stl`, bytes }];
  },
};
