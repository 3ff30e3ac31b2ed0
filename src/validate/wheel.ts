/** The wheel on the joint: the bore that centres it, the ring that carries its teeth, and steel that must stay out of the sensor's way. */

import { leastGap } from '../geometry/contour.ts';
import type { Joint } from '../job/joint.ts';
import { belowRoots, leastRootWeb, toothWords } from '../job/wheel-form.ts';
import type { Finding } from '../model/finding.ts';
import { hasWindows, toothHeight, windowsBeside } from '../parts/tone-wheel.ts';
import { wheelCut, wheelPlay } from '../rotor/wheel-links.ts';
import { hypot } from '../units/hypot.ts';
import { type Check, judged } from './check.ts';
import { headRadius } from './heads.ts';
import { lightTap } from './registers.ts';
import { atLeast, mm } from './words.ts';

type Wheeled = Joint & {
  readonly wheel: NonNullable<Joint['wheel']>;
  readonly wheelSpec: NonNullable<Joint['wheelSpec']>;
  readonly wheelRegister: NonNullable<Joint['wheelRegister']>;
  readonly job: Joint['job'] & { readonly wheel: NonNullable<Joint['job']['wheel']> };
};

function isWheeled(joint: Joint): joint is Wheeled {
  return (
    joint.wheel !== null && joint.wheelSpec !== null && joint.wheelRegister !== null && joint.job.wheel !== undefined
  );
}

/** Room between a flange's rim and the wheel's seat, mm on the diameter. Common practice. */
const besideSeat = 0.2;

/** The flange that lies on the wheel's face. */
function flangeBeside(joint: Wheeled) {
  const { on, face } = joint.job.wheel;
  return joint[on === 'adapter' ? face : on];
}

function goesOn(joint: Wheeled): Finding[] {
  const play = wheelPlay(joint);
  if (!play) return [];
  const register = joint.wheelRegister;
  const { bore } = joint.wheelSpec;
  const drawn = bore - register.diameter;
  const common = {
    code: 'wheel-goes-on',
    feature: 'wheel-bore',
    title: `wheel bore over ${register.what}`,
    unit: 'mm',
  };
  const turned = joint.wheelBore;
  if (turned) {
    const { lower, upper, zone } = turned.limits;
    return [
      judged(
        {
          ...common,
          why: `Turned to ${mm(lower, 3)} to ${mm(upper, 3)} (${zone}) over a register of ${mm(register.lower, 3)} to ${mm(register.upper, 3)}: clearance ${mm(play.least, 3)} to ${mm(play.greatest, 3)}.`,
          cure: `Ask for clearance (wheel.fit: { clearance: 0.01 mm }). Up to ${mm(lightTap)} of interference goes on with a light tap.`,
          source: 'limits of both halves (ISO 286-1)',
        },
        play.least,
        { limit: 0, sense: 'at least', hard: -lightTap },
      ),
    ];
  }
  const cut = wheelCut(joint);
  const looser = mm(Math.ceil((drawn - play.least) * 100 - 1e-6) / 100);
  return [
    judged(
      {
        ...common,
        why: `Bore ${mm(bore)} as drawn, register ${mm(register.diameter)}: ${mm(drawn)} clearance; the service may cut it ${mm(cut)} smaller or larger, so that the smallest is ${mm(bore - cut, 3)} over at most ${mm(register.upper, 3)}.`,
        cure: `Have the bore cut undersize and turn it to the register (wheel.fit: H8), or make the clearance ${looser} (wheel.clearance: ${looser}): looser, but it goes on as cut.`,
        source: 'published cutting tolerances; common practice',
      },
      play.least,
      // As long as the largest cut goes on, filing or turning makes it fit.
      { limit: 0, sense: 'at least', hard: Math.min(0, -2 * cut) },
    ),
  ];
}

/** A flange lies inside the wheel where the wheel stands above the face that the flange is on. */
function clearsFlange(joint: Wheeled): Finding[] {
  const { on, shoulder } = joint.job.wheel;
  const clearance = joint.wheelSpec.bore - joint.wheelRegister.diameter;
  if (on !== 'adapter') return [];
  const flange = flangeBeside(joint);
  const proud = joint.wheelSpec.thickness - shoulder;
  const common = {
    code: 'wheel-clears-flange',
    feature: 'wheel-bore',
    unit: 'mm',
    source: 'geometry; 0.2 mm of room is common practice',
  };
  if (proud <= 0) {
    const why = `The wheel lies ${mm(-proud)} below the face, so the ${flange.side} flange may lie over it.`;
    return [
      judged({ ...common, title: 'wheel below the face', why, cure: '' }, -proud, { limit: 0, sense: 'at least' }),
    ];
  }
  const room = joint.wheelRegister.diameter - flange.outside.value - flange.outside.doubt;
  const least = joint.wheelRegister.diameter + clearance + besideSeat - room;
  return [
    judged(
      {
        ...common,
        title: `wheel seat clear of the ${flange.side} flange's rim`,
        why: `The wheel stands ${mm(proud)} above the face, round the ${flange.side} flange (${mm(flange.outside.value)}); its seat is ${mm(joint.wheelRegister.diameter)}.`,
        cure: `Make the bore ${atLeast(least)} or more (wheel.bore: ${atLeast(least)}), or leave it on auto.`,
      },
      room,
      { limit: besideSeat, sense: 'at least' },
    ),
  ];
}

/** The ring between the screw holes and the roots carries the teeth. */
function rootWeb({ wheel, wheelSpec }: Wheeled): Finding[] {
  const edges = ({ x, y }: { readonly x: number; readonly y: number }) =>
    hasWindows(wheelSpec) ? windowsBeside(wheelSpec, wheel.holes, x, y) : [wheel.outside];
  const roots = wheel.holes
    .flatMap((hole) => (hole.kind === 'circle' && hole.feature !== 'wheel-bore' ? [hole] : []))
    .flatMap((hole) => edges(hole).map((edge) => leastGap(hole, edge).gap));
  if (roots.length === 0) return [];
  const web = Math.min(...roots);
  const words = toothWords(wheelSpec);
  const limit = leastRootWeb(wheelSpec.thickness);
  return [
    judged(
      {
        code: 'root-web',
        feature: 'wheel-outline',
        title: `web between the ${words.roots} and the screw holes`,
        unit: 'mm',
        why: hasWindows(wheelSpec) ? 'This ring carries bars and rim.' : 'This ring carries the teeth.',
        cure: `Make the root at least ${atLeast(2 * (limit - web))} larger (wheel.outside: ${atLeast(wheelSpec.outside + 2 * (limit - web))}, with the same height), or the screw circle smaller.`,
        source: 'common practice: at least the sheet thickness, and 3 mm',
      },
      web,
      { limit, sense: 'at least', hard: 0.5 * wheelSpec.thickness },
    ),
  ];
}

/** The rim outside of the windows is narrow, and it is what a hand or a dial meets first. */
function rimWidth({ wheelSpec: { rim, thickness, missing, teeth: places } }: Wheeled): Finding[] {
  if (rim === undefined) return [];
  const limit = Math.max(thickness, 3);
  const span = missing > 0 ? ` Where bars are missing it spans ${missing + 1} of ${places} places alone.` : '';
  return [
    judged(
      {
        code: 'window-rim',
        feature: 'wheel-outline',
        title: 'rim outside of the windows',
        unit: 'mm',
        why: `A narrow rim springs while it is cut, and bends when the wheel is handled.${span}`,
        cure: `Make the rim ${mm(limit)} wide (wheel.rim: ${mm(limit)}), with an outside as much larger or windows as much lower.`,
        source: 'common practice: at least the sheet thickness, and 3 mm',
      },
      rim,
      { limit, sense: 'at least', hard: 0.5 * thickness },
    ),
  ];
}

/** Other steel near the path of the sensor is read as a tooth, or stands in its way. */
function steelBelowRoots(joint: Wheeled): Finding[] {
  const root = joint.wheelSpec.root / 2;
  const height = toothHeight(joint.wheelSpec);
  const isOpen = !hasWindows(joint.wheelSpec);
  const words = toothWords(joint.wheelSpec);
  const source = 'common practice: other steel several millimetres below the roots';
  const cure = (room: number) =>
    `Make the root at least ${atLeast(2 * (belowRoots - room))} larger (wheel.outside: ${atLeast(joint.wheelSpec.outside + 2 * (belowRoots - room))}, with the same height).`;
  const screws = joint.screws.find((group) => group.side === 'wheel');
  const heads = screws
    ? root - Math.max(...screws.positions.map(({ x, y }) => hypot(x, y))) - headRadius(screws)
    : null;
  const round = [
    { name: 'adapter', diameter: joint.adapterSpec.outside },
    ...[joint.driving, joint.driven].map(({ side, outside }) => ({ name: `${side} flange`, diameter: outside.value })),
  ].reduce((a, b) => (b.diameter > a.diameter ? b : a));
  const below = root - round.diameter / 2;
  return [
    ...(heads === null
      ? []
      : [
          judged(
            {
              code: 'heads-below-roots',
              feature: 'wheel-screws',
              title: `screw heads below the ${words.roots}`,
              unit: 'mm',
              why: `A steel head near the path of the sensor is read as a ${words.tooth}.`,
              cure: cure(heads),
              source,
            },
            heads,
            { limit: belowRoots, sense: 'at least', hard: 0 },
          ),
        ]),
    judged(
      {
        code: 'rim-below-roots',
        feature: 'wheel-outline',
        title: `${round.name} below the ${words.roots}`,
        unit: 'mm',
        why: `The ${round.name} is ${mm(round.diameter)} across; ${isOpen ? 'above the roots it fills the valleys for the sensor, above the tips it keeps the sensor away' : 'steel behind the windows fills them for the sensor, the more so from their middle on'}.`,
        cure: cure(below),
        source,
      },
      below,
      // A sensor that looks through windows looks at their middle.
      { limit: belowRoots, sense: 'at least', hard: isOpen ? -height : -height / 2 },
    ),
  ];
}

export const wheel: Check = {
  id: 'wheel',
  title: 'Wheel on the joint',
  source: 'published cutting tolerances; common practice',
  run: (joint) =>
    isWheeled(joint)
      ? [...rootWeb(joint), ...rimWidth(joint), ...steelBelowRoots(joint), ...goesOn(joint), ...clearsFlange(joint)]
      : [],
};
