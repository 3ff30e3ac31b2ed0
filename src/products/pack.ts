/** Order packs: one archive for each supplier, all from one revision of the job, each with a list of its files and their hashes. */
import type { Joint } from '../job/joint.ts';
import { machineOrderText } from '../report/machine-order.ts';
import { screwCsv, screwText } from '../report/screw-order.ts';
import { sha256 } from '../write/sha256.ts';
import { zip } from '../write/zip.ts';
import { type MadeFile, type Making, type Product, utf8, verdictWords } from './product.ts';

const kind = 'pack';

/** A file of a pack and what it is. */
interface Packed {
  readonly name: string;
  readonly about: string;
  readonly bytes: Uint8Array;
}

interface Pack {
  readonly id: 'cutting' | 'machine-shop' | 'shaft' | 'screws';
  readonly about: string;
  readonly applies: (joint: Joint) => boolean;
  readonly files: (making: Making, other: Other) => Promise<Packed[]>;
}

/** What a file is to who gets it. */
function aboutFile(name: string): string {
  if (name.endsWith('-order.txt') || name.endsWith('-order.html')) return 'the order';
  if (name.endsWith('.step')) return 'exact solid, STEP AP242, mm';
  if (name.endsWith('-drawing.pdf')) return 'workshop drawing, to scale';
  if (name.endsWith('-inspection.html')) return 'inspection record to fill in';
  if (name.endsWith('.dxf')) return 'outline to cut, DXF, mm, 1:1';
  if (name.endsWith('.svg')) return 'sketch';
  return 'goes with the drawing';
}

/** Files that another product makes, by its kind; none where the job has no such part. */
type Other = (kind: string, wanted?: (name: string) => boolean) => Promise<Packed[]>;

const cutting: Pack = {
  id: 'cutting',
  about: 'for the sheet-cutting service',
  applies: ({ wheelSpec, bracket }) => wheelSpec !== null || bracket !== undefined,
  files: async (_making, other) => [
    ...(await other('order')),
    ...(await other('outline')),
    ...(await other('bracket')),
  ],
};

const machineShop: Pack = {
  id: 'machine-shop',
  about: 'for the machine shop',
  applies: () => true,
  async files(making, other) {
    const { joint, base, revision, verdict, forced } = making;
    // A wheel's bore that is turned after cutting is this shop's work too.
    const turnsWheel = joint.wheelBore !== null && joint.wheelBore !== undefined;
    const mine = (name: string) => name.includes('-adapter') || (turnsWheel && name.includes('-wheel'));
    const parts = [
      ...(await other('step', mine)),
      ...(await other('drawing', (name) => name.endsWith('.pdf') && mine(name))),
      ...(await other('inspection', (name) => name.endsWith('.html'))),
    ];
    const text = machineOrderText(joint, {
      title: joint.job.title,
      revision,
      warning: verdictWords(verdict, forced),
      files: parts,
    });
    return [{ name: `${base}-adapter-order.txt`, about: 'the order', bytes: utf8(text) }, ...parts];
  },
};

const shaft: Pack = {
  id: 'shaft',
  about: 'for the shaft shop',
  applies: () => true,
  files: (_making, other) => other('shaft', (name) => name.includes('-shaft-order')),
};

const screws: Pack = {
  id: 'screws',
  about: 'for the screw dealer',
  applies: ({ screws: groups }) => groups.length > 0,
  async files({ joint, base, revision, verdict, forced }) {
    const warning = verdictWords(verdict, forced);
    return [
      { name: `${base}-screws.txt`, about: 'the list', bytes: utf8(screwText(joint, revision, warning)) },
      { name: `${base}-screws.csv`, about: 'the list for a spreadsheet', bytes: utf8(screwCsv(joint)) },
    ];
  },
};

const packs: readonly Pack[] = [cutting, machineShop, shaft, screws];

async function manifest(making: Making, pack: Pack, files: readonly Packed[]): Promise<Packed> {
  const { joint, revision, verdict, forced } = making;
  const list = await Promise.all(
    files.map(async ({ name, about, bytes }) => ({ name, about, bytes: bytes.length, sha256: await sha256(bytes) })),
  );
  const content = {
    made_by: 'flangewright',
    pack: pack.id,
    about: pack.about,
    title: joint.job.title,
    revision,
    quantity: joint.job.sheet.quantity,
    verdict,
    forced,
    files: list,
  };
  return { name: 'manifest.json', about: 'this list', bytes: utf8(`${JSON.stringify(content, null, 2)}\n`) };
}

/**
 * The packs, of what the other products make.
 * @param products every product that a pack may hold; packs themselves are none of them
 */
export function packFiles(products: readonly Product[]): Product {
  const nameOf = (base: string, { id }: Pack): string => `${base}-pack-${id}.zip`;
  const hasShaftOrder = (making: Pick<Making, 'joint' | 'base'>): boolean =>
    products.some(
      (p) => p.kind === 'shaft' && p.applies(making.joint) && p.names(making).some((n) => n.includes('-shaft-order')),
    );
  const wanted = (making: Pick<Making, 'joint' | 'base'>): Pack[] =>
    packs.filter((pack) => pack.applies(making.joint) && (pack !== shaft || hasShaftOrder(making)));
  return {
    kind,
    about:
      'order packs: one zip a supplier (sheet cutting, machine shop, shaft shop, screws) with a manifest and hashes',
    metal: true,
    applies: () => true,
    asked: () => false,
    names: (making) => wanted(making).map((pack) => nameOf(making.base, pack)),
    async make(making) {
      const done = new Map<string, Promise<readonly MadeFile[]>>();
      const other: Other = async (wantedKind, isWanted = () => true) => {
        const product = products.find((p) => p.kind === wantedKind && p.applies(making.joint));
        if (!product) return [];
        const files = done.get(wantedKind) ?? product.make(making);
        done.set(wantedKind, files);
        return (await files)
          .filter(({ name }) => isWanted(name))
          .map(({ name, bytes }) => ({ name, about: aboutFile(name), bytes }));
      };
      const made: MadeFile[] = [];
      for (const pack of wanted(making)) {
        const files = await pack.files(making, other);
        const entries = [await manifest(making, pack, files), ...files];
        made.push({ kind, name: nameOf(making.base, pack), bytes: zip(entries) });
      }
      return made;
    },
  };
}
