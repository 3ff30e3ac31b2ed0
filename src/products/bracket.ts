/** The bracket's files: the blank to cut with its bend lines, the bend table, a folded mock-up, a card to set the gap by. */

import type { Joint } from '../job/joint.ts';
import type { Bracket } from '../job/joint-bracket.ts';
import type { EngravedText } from '../model/engraving.ts';
import type { Mesh } from '../model/mesh.ts';
import { bendTable } from '../parts/bend-table.ts';
import { type BracketSpec, buildBracket } from '../parts/bracket.ts';
import { bracketMockUp, footText } from '../parts/bracket-mock-up.ts';
import { cardSizes, gapCardProfile, gapCardWords, gapSteps } from '../parts/gap-card.ts';
import { engrave, textWidth } from '../solids/engrave.ts';
import { meshFolded } from '../solids/folded-mesh.ts';
import { meshGapCard } from '../solids/gap-card-mesh.ts';
import { seat } from '../solids/seat.ts';
import { dxfFlavour } from '../write/dxf.ts';
import { writeStl } from '../write/stl.ts';
import { type MadeFile, type Making, type Product, utf8, verdictWords } from './product.ts';

const applies = (joint: Joint): boolean => joint.bracket !== undefined;
/** What every mock-up says, in two lines: a foot is narrow. */
const bracketWarning = ['FIT CHECK', 'DO NOT DRIVE'];

const tableName = (base: string): string => `${base}-bracket-bends.txt`;

/** The bend table as a page of plain text. */
export function bendTableText(
  { spec, die, kFrom, radiusFrom, material }: Bracket,
  title: string,
  failed: string,
): string {
  const { blank, rows, legs } = bendTable(spec);
  const mm = (value: number) => value.toFixed(2);
  const head = ['bend', 'line at', 'way', 'angle', 'inside radius', 'K', 'allowance', 'deduction'];
  const body = rows.map((row) => [
    row.id.replace('bend ', ''),
    mm(row.at),
    row.direction,
    `${Number(row.angle.toFixed(3))}`,
    mm(row.radius),
    row.k.toFixed(3),
    mm(row.allowance),
    mm(row.deduction),
  ]);
  const widths = head.map((text, i) => Math.max(text.length, ...body.map((cells) => (cells[i] ?? '').length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd();
  return [
    ...(failed ? [failed, ''] : []),
    `${title}: ${spec.name}, bend table`,
    `${material.name}, ${spec.thickness} mm; blank ${mm(blank.length)} x ${mm(blank.width)} mm. All lengths in mm, angles in degrees from flat.`,
    'Line at: from the free end of the foot (the end with the two bolts) along the blank.',
    'Way: seen on the face that is up in the drawing file, up folds towards you.',
    '',
    line(head),
    ...body.map(line),
    '',
    `Legs to the outside after bending, from the foot: ${legs.map(mm).join(', ')}`,
    `Inside radius: ${radiusFrom}.`,
    `K-factor: ${kFrom}. Bend a strip of the same sheet first and give it as bracket.trial_bend: it beats every table.`,
    ...(die ? [`Die taken: ${die.opening} mm wide; shortest flange ${die.leastFlange} mm.`] : []),
    'Bend across the rolling direction. Layers of the drawing: CUT is cut, BEND_UP and BEND_DOWN are not.',
    '',
  ].join('\n');
}

export const bracketFiles: Product = {
  kind: 'bracket',
  about: 'bracket blank for laser cutting, DXF in mm with bend lines on layers of their own, and its bend table',
  metal: true,
  applies,
  names: ({ joint, base }) => [
    ...joint.job.sheet.flavour.map((id) => `${base}-bracket${dxfFlavour(id).suffix}`),
    ...(joint.bracket?.part.bends ? [tableName(base)] : []),
  ],
  async make({ joint, base, verdict, forced, revision }) {
    const { bracket, job } = joint;
    if (!bracket) return [];
    const failed = verdictWords(verdict, forced);
    const files: MadeFile[] = [];
    const kerf = job.sheet.kerf === 'service' ? 0 : job.sheet.kerf;
    const part = buildBracket({ ...bracket.spec, kerf });
    for (const id of job.sheet.flavour) {
      const flavour = dxfFlavour(id);
      const text = await flavour.write(part);
      const bytes = utf8(`${failed ? `999\n${failed}\n` : ''}999\nrevision ${revision}\n${text}`);
      files.push({ kind: 'bracket', name: `${base}-bracket${flavour.suffix}`, bytes });
    }
    if (bracket.part.bends) {
      const bytes = utf8(bendTableText(bracket, `${job.title} (revision ${revision})`, failed));
      files.push({ kind: 'bracket', name: tableName(base), bytes });
    }
    return files;
  },
};

/** The STL's header line, at most 80 plain characters. */
const header = ({ verdict, forced, revision }: Making, what: string): string => {
  const failed = verdictWords(verdict, forced);
  return `${revision} ${what}, mm${failed ? ` - ${failed}` : ''}`.slice(0, 80);
};

/** Engraved lines run round an axis; so far from it they rise by a third of a millimetre over a foot of 50. mm */
const farOut = 1000;

/** The bracket's mock-up, folded, engraved on its foot, seated on z = 0. The foot keeps its place in the fold. */
export async function bracketMockUpMesh({ joint, verdict, revision }: Making, drawn: BracketSpec): Promise<Mesh> {
  const spec = bracketMockUp(drawn, joint.job.print.holes);
  const lines = [
    ...(verdict === 'fail' ? ['CHECKS FAILED'] : []),
    ...bracketWarning,
    ...(joint.job.print.text ? [revision] : []),
  ];
  const text = footText(spec, lines, textWidth);
  const mesh = meshFolded(buildBracket(spec));
  // Too little room for the revision as well: the warning alone.
  const laid = text.length > 0 ? text : footText(spec, bracketWarning, textWidth);
  if (laid.length === 0) return seat(mesh);
  const marks = laid.map(({ text: words, x, height, depth }): EngravedText => {
    return {
      kind: 'text',
      text: words,
      surface: 'top',
      angle: 0,
      radius: farOut + x,
      z: spec.thickness,
      height,
      depth,
    };
  });
  return seat(movedAlongX(await engrave(movedAlongX(mesh, farOut), marks), -farOut));
}

const movedAlongX = (mesh: Mesh, by: number): Mesh => ({
  ...mesh,
  positions: mesh.positions.map((value, i) => (i % 3 === 0 ? value + by : value)),
});

export const bracketMockUpFile: Product = {
  kind: 'bracket-mockup',
  about: 'bracket as folded, to print and hold in place, binary STL in mm',
  metal: false,
  applies,
  names: ({ base }) => [`${base}-bracket-mockup.stl`],
  async make(making) {
    const { joint, base } = making;
    if (!joint.bracket) return [];
    const bytes = await writeStl(
      await bracketMockUpMesh(making, joint.bracket.spec),
      header(making, 'bracket MOCK-UP, FIT CHECK - DO NOT DRIVE'),
    );
    return [{ kind: 'bracket-mockup', name: `${base}-bracket-mockup.stl`, bytes }];
  },
};

export const gapCardFile: Product = {
  kind: 'gap-card',
  about: 'card to set the air gap by, thin, right and thick step, binary STL in mm',
  metal: false,
  applies: (joint) => joint.bracket !== undefined && cardSteps(joint).length > 0,
  names: ({ base }) => [`${base}-gap-card.stl`],
  async make(making) {
    const { joint, base } = making;
    const steps = cardSteps(joint);
    const { corners, grip } = gapCardProfile(steps);
    const mesh = await meshGapCard({
      corners,
      width: cardSizes.width,
      grip: { ...grip, length: cardSizes.grip },
      words: gapCardWords(steps),
    });
    return [
      { kind: 'gap-card', name: `${base}-gap-card.stl`, bytes: await writeStl(seat(mesh), header(making, 'gap card')) },
    ];
  },
};

const cardSteps = ({ bracket }: Joint) => (bracket ? gapSteps(bracket.gap.nominal, bracket.gap.tolerance) : []);
