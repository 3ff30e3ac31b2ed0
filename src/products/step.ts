/** Exact solids for the machine shop: STEP AP242 of the adapter, the wheel, the bracket, and the whole joint as an assembly. */
import type { Joint } from '../job/joint.ts';
import type { Feature } from '../model/part.ts';
import type { Assembly, PlacedSolid } from '../model/solid.ts';
import type { HoleGroupSpec } from '../parts/adapter-spec.ts';
import { stepOf } from '../solids/step.ts';
import { findThread } from '../standards/threads.ts';
import { finishStep, type StepPart } from '../write/step.ts';
import { bracketName, bracketSolid } from './bracket-solids.ts';
import { adapterSolid, jointSolids, wheelSolid } from './joint-solids.ts';
import { type MadeFile, type Making, type Product, utf8, verdictWords } from './product.ts';

const kind = 'step';

/** "driven register spigot: diameter 59.971 to 59.990 mm (h6)"; nothing for what has no limits. */
const limitsLine = ({ label, limits }: Feature): string[] =>
  limits ? [`${label}: diameter ${limits.lower.toFixed(3)} to ${limits.upper.toFixed(3)} mm (${limits.zone})`] : [];

/** The thread table: "thread 4 x M10 x 1.5, drill 8.5 mm through, from the driven face: driven flange holes". */
function threadLine({ shape, positions, label }: HoleGroupSpec): string[] {
  if (shape.kind !== 'tapped') return [];
  const { thread, tapDrill, threadDepth, drillDepth, face } = shape;
  const known = findThread(thread);
  const size = known.ok && known.value.system === 'metric' ? `M${known.value.d} x ${known.value.pitch}` : thread;
  const depth =
    drillDepth === null ? 'through' : `${drillDepth.toFixed(1)} mm deep, full thread ${threadDepth.toFixed(1)} mm`;
  const drill = `modelled at its drill of ${Number(tapDrill.toFixed(3))} mm, ${depth}`;
  return [`thread ${positions.length} x ${size}, ${drill}, from the ${face} face: ${label}`];
}

const adapterTable = ({ adapter, adapterSpec }: Joint): string[] => [
  ...adapterSpec.groups.flatMap(threadLine),
  ...adapter.features.flatMap(limitsLine),
];

type Made = Pick<Making, 'joint' | 'base' | 'revision' | 'verdict' | 'forced'>;

/** What the file says of itself at its head. */
function description({ joint, revision, verdict, forced }: Made, what: string, table: readonly string[]): string[] {
  const failed = verdictWords(verdict, forced);
  return [
    ...(failed === '' ? [] : [failed]),
    `${joint.job.title}: ${what}`,
    `revision ${revision}`,
    'lengths in millimetres',
    ...table,
  ];
}

/** What is said of the parts that are made; everything else is bought or was there before. */
function stepParts({ joint, base, revision }: Made, parts: readonly PlacedSolid[]): StepPart[] {
  const own: Readonly<Record<string, string>> = {
    adapter: joint.adapter.material.name,
    ...(joint.wheel ? { wheel: joint.wheel.material.name } : {}),
    ...(joint.bracket ? { [bracketName]: joint.bracket.part.material.name } : {}),
  };
  return parts.map(({ name, colour }) => {
    const material = own[name];
    return material === undefined
      ? { name, number: name, description: '', revision: '', colour }
      : {
          name,
          number: `${base}-${name}`,
          description: `material ${material}; revision ${revision}`,
          revision,
          colour,
        };
  });
}

async function partFile(making: Making, part: PlacedSolid, table: readonly string[]): Promise<MadeFile> {
  const name = `${making.base}-${part.name}.step`;
  const [told] = stepParts(making, [part]) as [StepPart];
  const text = await stepOf({ name: part.name, parts: [part] }, false);
  const head = description(making, `${part.name}, ${told.description}`, table);
  return { kind, name, bytes: utf8(finishStep(text, { fileName: name, description: head, parts: [told] })) };
}

async function jointFile(making: Making, assembly: Assembly): Promise<MadeFile> {
  const name = `${making.base}-joint.step`;
  const { revision } = making;
  const text = await stepOf(assembly, true);
  const root: StepPart = {
    name: assembly.name,
    number: `${making.base}-joint`,
    description: `revision ${revision}`,
    revision,
    colour: null,
  };
  const head = description(making, 'assembly with screws; both flanges are context only', []);
  const parts = [root, ...stepParts(making, assembly.parts)];
  return { kind, name, bytes: utf8(finishStep(text, { fileName: name, description: head, parts })) };
}

export const stepFiles: Product = {
  kind,
  about: 'exact solids of adapter, wheel, bracket and whole joint for the machine shop, STEP AP242 in mm',
  metal: true,
  applies: () => true,
  // The modeller takes seconds and a large piece of memory, and who only prints or reads the verdict does not want to wait for it.
  asked: () => false,
  names: ({ joint, base }) =>
    ['adapter', ...(joint.wheel ? ['wheel'] : []), ...(joint.bracket ? [bracketName] : []), 'joint'].map(
      (part) => `${base}-${part}.step`,
    ),
  async make(making) {
    const { joint } = making;
    const wheel = wheelSolid(joint);
    making.tell?.('loading the solid modeller (23 MB, once), then the exact adapter', 0);
    const files = [await partFile(making, adapterSolid(joint), adapterTable(joint))];
    making.tell?.('exact solids of the other parts', 0.4);
    if (wheel && joint.wheel) files.push(await partFile(making, wheel, joint.wheel.features.flatMap(limitsLine)));
    const bracket = bracketSolid(joint);
    if (bracket && joint.bracket) {
      files.push(await partFile(making, bracket, joint.bracket.part.features.flatMap(limitsLine)));
    }
    making.tell?.('the whole joint as an assembly', 0.6);
    files.push(await jointFile(making, jointSolids(joint)));
    return files;
  },
};
