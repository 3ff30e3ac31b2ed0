/** A joint's parts as their workshop drawings show them. */
import type {
  AdapterToDraw,
  SetToDraw,
  SheetChoice,
  SizeToDraw,
  TitleToDraw,
  WheelToDraw,
} from '../drawing/shop/to-draw.ts';
import { characteristicsOf } from '../inspect/characteristics.ts';
import type { Joint } from '../job/joint.ts';
import { toothWords } from '../job/wheel-form.ts';
import { toothMeasures } from '../parts/tone-wheel.ts';
import { wheelCut } from '../rotor/wheel-links.ts';
import { holeSets } from '../shop/hole-table.ts';
import { dxfFlavour } from '../write/dxf.ts';
import { windowsToDraw } from './windows-to-draw.ts';

/** How the axis is found again after turning over, as the drawing says it. */
function setupWords({ job, adapterSpec: { bore, registers } }: Joint): string {
  switch (job.adapter.setup) {
    case 'one chucking':
      return 'both registers are finished in one chucking';
    case 'indicated': {
      const on = bore === null ? 'the outside' : 'the bore';
      const first = registers.driving ? 'the driving register' : 'the first face';
      return `turn it over and indicate on ${on}, which is finished in one chucking with ${first}`;
    }
    case 'edge finder':
      return 'turn it over and find the axis with an edge finder';
    case 'three jaw':
      return 'turn it over and grip it again in the three-jaw chuck';
  }
}

export interface DrawingWords {
  readonly base: string;
  readonly revision: string;
  readonly warning: string;
}

/** "ORCHARD 1 adapter"; a name that says what it is says it once. */
const calledOf = (name: string, part: string): string =>
  new RegExp(`\\b${part}$`, 'i').test(name) ? name : `${name} ${part}`.trim();

function titleOf(
  joint: Joint,
  part: 'adapter' | 'wheel',
  words: DrawingWords,
  sizes: readonly SizeToDraw[],
): TitleToDraw {
  const made = part === 'adapter' ? joint.adapter : joint.wheel;
  const mass = part === 'adapter' ? joint.adapterMass.mass : (joint.wheelMass?.mass ?? 0);
  return {
    number: `${words.base}-${part}`,
    part: calledOf(made?.name ?? '', part),
    job: joint.job.title,
    material: made?.material.name ?? '',
    mass,
    massBalloon: sizes.find(({ id }) => id === `${part}-mass`)?.number ?? null,
    revision: words.revision,
    units: joint.job.units,
    plusMinus: part === 'wheel' ? wheelCut(joint) : null,
    warning: words.warning,
  };
}

function setsOf(joint: Joint): SetToDraw[] {
  return holeSets(joint).map((set) => {
    const shape = joint.adapterSpec.groups.find(({ id }) => id === set.group)?.shape;
    return {
      ...set,
      thread:
        shape?.kind === 'tapped'
          ? { major: shape.major, depth: shape.drillDepth === null ? null : shape.threadDepth }
          : null,
      limits: shape?.kind === 'dowel' ? shape.limits : null,
    };
  });
}

/** The adapter with everything its drawing says. */
export function adapterToDraw(joint: Joint, words: DrawingWords): AdapterToDraw {
  const { thickness, outside, chamfer, bore, flats, clocking, registers, wheelSeat } = joint.adapterSpec;
  const sizes = characteristicsOf(joint);
  return {
    title: titleOf(joint, 'adapter', words, sizes),
    adapter: joint.adapter,
    thickness,
    outside,
    chamfer,
    bore,
    flats,
    clocking,
    registers,
    wheelSeat,
    sets: setsOf(joint),
    sizes,
    setup: setupWords(joint),
  };
}

/** The wheel with everything its drawing says; null where there is none. */
export function wheelToDraw(joint: Joint, words: DrawingWords): WheelToDraw | null {
  const { wheel, wheelSpec: spec, wheelBore } = joint;
  if (!wheel || !spec) return null;
  const sizes = characteristicsOf(joint);
  const bore = sizes.find(({ id }) => id === 'wheel-bore');
  const { teeth, missing, wide, extra, outside, root, toothAngle, rootRadius, tipBreak, flanks, screwHoles } = spec;
  return {
    title: titleOf(joint, 'wheel', words, sizes),
    wheel,
    teeth,
    missing,
    wide,
    extra,
    outside,
    root,
    bore: spec.bore,
    cutBore: wheelBore ? spec.bore - wheelBore.stock : null,
    boreLimits: bore ? { lower: bore.lower, upper: bore.upper, zone: bore.from } : null,
    toothAngle,
    toothWidth: toothMeasures(spec).toothChord,
    rootRadius,
    tipBreak,
    flanks: flanks === 'radial' ? 'on rays from the axis' : `parallel to the middle of the ${toothWords(spec).tooth}`,
    windows: windowsToDraw(spec, null),
    holes: screwHoles,
    sizes,
    outlines: joint.job.sheet.flavour.map((id) => `${words.base}-wheel${dxfFlavour(id).suffix}`),
  };
}

/** How the job wants its drawings: A3 and first angle for jobs in mm, Tabloid and third angle for jobs in inches, unless it says else. */
export function sheetChoice({ job }: Joint): SheetChoice {
  const asked = job.adapter.drawing;
  const inch = job.units === 'in';
  const scale = asked?.scale ?? 'auto';
  const [over = 1, under = 1] = scale === 'auto' ? [] : scale.split(':').map(Number);
  return {
    paper: !asked || asked.paper === 'auto' ? (inch ? 'tabloid' : 'a3') : asked.paper,
    angle: !asked || asked.angle === 'auto' ? (inch ? 'third' : 'first') : asked.angle,
    scale: scale === 'auto' ? null : over / under,
  };
}
