/** The order notes for the cutting service: one a flat part, with the pre-flight of the very files that are sent. */

import { limitTexts } from '../drawing/shop/size-text.ts';
import type { Joint } from '../job/joint.ts';
import { serviceTolerance } from '../job/schema-sheet.ts';
import { markNoun } from '../job/wheel-mark.ts';
import { hasWindows, markOf, pulseCount, type ToneWheelSpec } from '../parts/tone-wheel.ts';
import { preflightDxf } from '../preflight/preflight.ts';
import { orderText, type PartOrder } from '../report/order-text.ts';
import { wheelBoreLimits } from '../rotor/wheel-links.ts';
import type { Material } from '../standards/materials.ts';
import { cutTolerance } from '../standards/sheet-cutting.ts';
import { DXF_FLAVOURS } from '../write/dxf.ts';
import { bracketFiles } from './bracket.ts';
import { outlineFile } from './outline.ts';
import { type MadeFile, type Making, type Product, utf8, verdictWords } from './product.ts';

/** What differs from part to part. */
interface FlatPart {
  readonly id: 'wheel' | 'bracket';
  readonly name: string;
  readonly material: Material;
  readonly thickness: number;
  /** The kerf is taken off in the outline, mm; 0: drawn true. */
  readonly kerf: number;
  readonly files: Product;
  readonly undersize: readonly string[];
  readonly critical: readonly string[];
  readonly finish: readonly string[];
}

const mm = (value: number, decimals = 3): string => `${value.toFixed(decimals)} mm`;

const magnetOnly = (material: Material): string[] =>
  material.magnetic
    ? ['No other steel unless a magnet holds it as well: a sensor reads this part. Most stainless steel will not do.']
    : [];

/** Windows and bars, and where to pierce. */
function windowsToCut(spec: ToneWheelSpec): string {
  const { missing, rootRadius } = spec;
  const other = markNoun(spec) === '' ? ', all alike' : ` beside ${markNoun(spec)}, on purpose`;
  const long = missing > 0 ? `, one of them over ${missing + 1} places, on purpose` : other;
  return `${pulseCount(spec)} windows${long}: a sensor counts the bars between them. Pierce inside a window, away from its flanks; corners R ${mm(rootRadius, 2)}. Windows and bore first, the outside last: the rim is what holds the part (common practice).`;
}

/** Limits of a bore that stays as it is cut, rounded inwards. */
function boreWords(joint: Joint): string {
  const limits = wheelBoreLimits(joint);
  if (!limits) return '';
  const [high, low] = limitTexts(limits.lower, limits.upper, 'mm');
  return ` (${low} to ${high} mm)`;
}

function wheelPart(joint: Joint): FlatPart | null {
  const { wheelSpec: spec, wheelMaterial: material, wheelBore: turned, wheelRegister: register } = joint;
  if (!spec || !material) return null;
  const cut = spec.bore - (turned?.stock ?? 0);
  const kerf = joint.job.sheet.kerf;
  const isOpen = !hasWindows(spec);
  return {
    id: 'wheel',
    name: spec.name,
    material,
    thickness: spec.thickness,
    kerf: kerf === 'service' ? 0 : kerf,
    files: outlineFile,
    undersize: turned
      ? [
          `Bore: cut to ${mm(cut)}. It is turned to ${mm(turned.limits.lower)} to ${mm(turned.limits.upper)} afterwards; the ${mm(turned.stock, 2)} left in it is for that.`,
        ]
      : [],
    critical: [
      ...(turned
        ? []
        : [
            `Bore ${mm(cut)}${boreWords(joint)}: it centres the wheel${register ? ` on ${register.what} of ${mm(register.diameter)}` : ''}. Too small and it does not go on, too large and it runs out of true.`,
          ]),
      `${isOpen ? 'Teeth' : 'Windows'} and bore in one clamping, without moving the sheet in between: the ${isOpen ? 'teeth' : 'windows'} must run true to the bore.`,
      isOpen
        ? `${pulseCount(spec)} teeth${markOf(spec) ? `${spec.missing > 0 ? ' and' : ', one of them'} ${markNoun(spec)}, on purpose` : ', all alike, none left out'}: a sensor counts them. Pierce in a valley or inside corner, never on a tooth tip or at the bore (common practice).`
        : windowsToCut(spec),
      ...magnetOnly(material),
    ],
    finish: [
      'Deliver flat: a warped wheel wobbles past its sensor.',
      `Deburr both faces. Do not round or tumble the ${isOpen ? 'teeth' : 'windows'}: the sensor reads their edges.`,
      ...(turned ? [] : ['No dross, lead-in mark or burr in the bore.']),
    ],
  };
}

function bracketPart(joint: Joint): FlatPart | null {
  const { bracket } = joint;
  if (!bracket) return null;
  const bends = bracket.part.bends ?? [];
  return {
    id: 'bracket',
    name: bracket.spec.name,
    material: bracket.material,
    thickness: bracket.spec.thickness,
    kerf: 0,
    files: bracketFiles,
    undersize: [],
    critical: [
      `Sensor bore ${mm(bracket.spec.sensor.bore)}: the sensor must go in without force.`,
      ...(bends[0]
        ? [
            'Layer CUT alone is cut. BEND_UP and BEND_DOWN are bend lines: not cut, not etched unless asked for.',
            `Bends by the bend table that goes with the files; inside radius ${mm(bends[0].radius, 2)}.`,
          ]
        : []),
    ],
    finish: ['Deburr both faces and break all edges: hands go there.'],
  };
}

/** The flat parts of a joint that a cutting service is asked for. */
export const flatParts = (joint: Joint): FlatPart[] =>
  [wheelPart(joint), bracketPart(joint)].filter((part): part is FlatPart => part !== null);

function toleranceWords(joint: Joint, thickness: number): string {
  const stated = serviceTolerance(joint.job.sheet, thickness);
  const { service } = joint.job.sheet;
  if (stated !== null) {
    return `+-${stated} mm on every contour, as your own limits say${service === undefined ? '' : ` (${service})`}`;
  }
  const published = cutTolerance(thickness);
  return published.ok
    ? `+-${published.value} mm on every contour was assumed, as another service publishes it; tell us if you hold less or cannot hold it`
    : 'none is published for this thickness; tell us what you hold on a contour';
}

/** The pre-flight of each drawing among the files. Remarks are what fails or is doubtful, else that it is clean. */
function looked(joint: Joint, part: FlatPart, files: readonly MadeFile[]) {
  const { thickness, material } = part;
  return files.flatMap(({ name, bytes }) => {
    if (!name.endsWith('.dxf')) return [];
    const read = preflightDxf(bytes, { thickness, material, profile: joint.job.sheet });
    const doubts = read.findings.filter(({ verdict }) => verdict === 'fail' || verdict === 'caution');
    const remarks = doubts.map(({ verdict, title, why }) => `${verdict.toUpperCase()}, ${title}: ${why}`);
    return [{ name, facts: read.facts, remarks: remarks.length > 0 ? remarks : ['Read back before sending: clean.'] }];
  });
}

const flavourAbout = (name: string): string => {
  const own = DXF_FLAVOURS.filter(({ suffix }) => name.endsWith(suffix));
  return own.reduce(
    (best, flavour) => (flavour.suffix.length > best.suffix.length ? flavour : best),
    own[0] ?? { suffix: '', about: 'drawing' },
  ).about;
};

async function order(making: Making, part: FlatPart): Promise<MadeFile> {
  const { joint, base, verdict, forced, revision } = making;
  const files = await part.files.make(making);
  const drawings = looked(joint, part, files);
  const facts = drawings[0]?.facts;
  const others = files
    .filter(({ name }) => !name.endsWith('.dxf'))
    .map(({ name }) => ({ name, about: 'goes with the drawing', remarks: [] }));
  const kerf =
    part.kerf === 0
      ? 'drawn at true size: allow for your own kerf'
      : `${mm(part.kerf, 2)} is allowed for in the drawing already, half of it on each side: cut on the line and add nothing`;
  const text: PartOrder = {
    warning: verdictWords(verdict, forced),
    part: part.name,
    title: joint.job.title,
    revision,
    files: [...drawings.map(({ name, remarks }) => ({ name, about: flavourAbout(name), remarks })), ...others],
    material: part.material.name,
    thickness: part.thickness,
    quantity: joint.job.sheet.quantity,
    size: { width: facts?.width ?? 0, height: facts?.height ?? 0 },
    proof: facts?.largestHole ?? null,
    mass: facts?.mass ?? null,
    cutLength: facts?.cutLength ?? 0,
    pierces: facts?.pierces ?? 0,
    tolerance: toleranceWords(joint, part.thickness),
    kerf,
    undersize: part.undersize,
    critical: part.critical,
    finish: part.finish,
  };
  return { kind: 'order', name: `${base}-${part.id}-order.txt`, bytes: utf8(orderText(text)) };
}

export const orderFiles: Product = {
  kind: 'order',
  about: 'order notes for the cutting service: material, quantity, scale proof, what matters and why',
  metal: true,
  applies: (joint) => flatParts(joint).length > 0,
  names: ({ joint, base }) => flatParts(joint).map(({ id }) => `${base}-${id}-order.txt`),
  async make(making) {
    const notes: MadeFile[] = [];
    for (const part of flatParts(making.joint)) notes.push(await order(making, part));
    return notes;
  },
};
