/** Exact solids for the machine shop: STEP AP242 of the adapter, the wheel, the bracket, and the whole joint as an assembly. */
import { thicknessLimits } from '../inspect/characteristics.ts';
import type { Joint } from '../job/joint.ts';
import type { Feature } from '../model/part.ts';
import type { Assembly, PlacedSolid, RawStep } from '../model/solid.ts';
import type { HoleGroupSpec } from '../parts/adapter-spec.ts';
import { limitsText } from '../report/numbers.ts';
import { stepTexts, type WantedStep } from '../solids/step.ts';
import { findThread } from '../standards/threads.ts';
import { finishStep, type StepPart } from '../write/step.ts';
import { bracketName, bracketSolid } from './bracket-solids.ts';
import { adapterName, jointSolids, wheelName } from './joint-solids.ts';
import { type MadeFile, type Making, type Product, utf8, verdictWords } from './product.ts';

const kind = 'step';

/** "driven register spigot: diameter 59.971 to 59.990 mm (h6)"; nothing for what has no limits. */
const limitsLine = ({ label, limits }: Feature): string[] =>
  limits ? [`${label}: diameter ${limitsText(limits.lower, limits.upper, 'mm')} (${limits.zone})`] : [];

/** The thickness where its lower limit is raised; nothing where the general tolerance holds. */
function thicknessLine(joint: Joint): string[] {
  const { lower, upper, raised } = thicknessLimits(joint);
  return raised ? [`thickness between the faces: ${limitsText(lower, upper, 'mm')}`] : [];
}

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

const adapterTable = (joint: Joint): string[] => [
  ...joint.adapterSpec.groups.flatMap(threadLine),
  ...joint.adapter.features.flatMap(limitsLine),
  ...thicknessLine(joint),
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

/** A file that is to be: what the modeller is asked for, and what is made of its answer. */
interface Planned {
  readonly wanted: WantedStep;
  file(text: RawStep): MadeFile;
}

function partFile(making: Making, part: PlacedSolid, table: readonly string[]): Planned {
  const name = `${making.base}-${part.name}.step`;
  const [told] = stepParts(making, [part]) as [StepPart];
  const head = description(making, `${part.name}, ${told.description}`, table);
  return {
    wanted: { assembly: { name: part.name, parts: [part] }, tree: false },
    file: (text) => ({
      kind,
      name,
      bytes: utf8(finishStep(text, { fileName: name, description: head, parts: [told] })),
    }),
  };
}

function jointFile(making: Making, assembly: Assembly): Planned {
  const name = `${making.base}-joint.step`;
  const { revision } = making;
  const root: StepPart = {
    name: assembly.name,
    number: `${making.base}-joint`,
    description: `revision ${revision}`,
    revision,
    colour: null,
  };
  const head = description(making, 'assembly with screws; both flanges are context only', []);
  const parts = [root, ...stepParts(making, assembly.parts)];
  return {
    wanted: { assembly, tree: true },
    file: (text) => ({ kind, name, bytes: utf8(finishStep(text, { fileName: name, description: head, parts })) }),
  };
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
    const whole = jointSolids(joint);
    const bracket = bracketSolid(joint);
    // The parts as they are in the joint: there each solid is built once for both.
    const inJoint = (name: string) => whole.parts.find((part) => part.name === name);
    const own = (name: string, table: readonly string[]): Planned[] => {
      const part = inJoint(name);
      return part ? [partFile(making, part, table)] : [];
    };
    const limits = (features: readonly Feature[] = []) => features.flatMap(limitsLine);
    const planned = [
      ...own(adapterName, adapterTable(joint)),
      ...own(wheelName, limits(joint.wheel?.features)),
      ...(bracket ? [partFile(making, inJoint(bracketName) ?? bracket, limits(joint.bracket?.part.features))] : []),
      jointFile(making, whole),
    ];
    const told = [
      'loading the solid modeller (23 MB, once), then the exact adapter',
      ...planned.slice(2).map(() => 'exact solids of the other parts'),
      'the whole joint as an assembly',
    ];
    const tell = (place: number) => making.tell?.(told[place] ?? '', place / planned.length);
    tell(0);
    const texts = await stepTexts(
      planned.map(({ wanted }) => wanted),
      (place) => place > 0 && tell(place),
    );
    return planned.map(({ file }, i) => file(texts[i] as RawStep));
  },
};
