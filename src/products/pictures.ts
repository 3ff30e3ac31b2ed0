/** The pictures of a joint: both faces, the section, the wheel. Preview files and the report show the same ones. */
import { balanceView } from '../drawing/balance-view.ts';
import { bracketView } from '../drawing/bracket-view.ts';
import { chainView } from '../drawing/chain-view.ts';
import { faceView } from '../drawing/face-view.ts';
import type { FlangeToDraw, JointToDraw } from '../drawing/joint-to-draw.ts';
import { lineView } from '../drawing/line-view.ts';
import { orderChart } from '../drawing/order-chart.ts';
import { phaseView, phaseWords } from '../drawing/phase-view.ts';
import { sectionView } from '../drawing/section-view.ts';
import { sensorView } from '../drawing/sensor-view.ts';
import { shaftView } from '../drawing/shaft-view.ts';
import { signalView } from '../drawing/signal-view.ts';
import { wheelView } from '../drawing/wheel-view.ts';
import { holesThere } from '../job/hole-pattern.ts';
import type { Joint } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import { wordsOf } from '../job/wheel-form.ts';
import type { Drawing } from '../model/drawing.ts';
import { turned } from '../parts/adapter-holes.ts';
import { registerClearance } from '../rotor/plays.ts';
import { balanceToDraw } from './balance-to-draw.ts';
import { bracketToDraw } from './bracket-to-draw.ts';
import { chainsToDraw } from './chain-to-draw.ts';
import { ordersToDraw } from './orders-to-draw.ts';
import { phaseToDraw } from './phase-to-draw.ts';
import { sensorToDraw } from './sensor-to-draw.ts';
import { lineToDraw, shaftToDraw } from './shaft-to-draw.ts';
import { signalToDraw } from './signal-to-draw.ts';
import { windowsToDraw } from './windows-to-draw.ts';

function flangeToDraw(flange: ResolvedFlange, joint: Joint): FlangeToDraw {
  const { register, holes } = flange;
  const clocked = (p: { x: number; y: number }) =>
    flange.side === 'driven' ? turned(p, joint.adapterSpec.clocking) : p;
  const tapped = holes.kind === 'tapped';
  return {
    name: flange.name,
    outside: flange.outside.value,
    thickness: flange.thickness?.value ?? null,
    register: register && {
      gender: register.gender,
      at: holes.circle !== null && register.diameter.value > holes.circle ? 'rim' : 'inner',
      diameter: register.diameter.value,
      depth: register.depth.value,
    },
    bore: flange.bore,
    holes: holesThere(holes).map((position) => ({
      ...clocked(position),
      diameter: holes.diameter.value,
      major: tapped ? holes.diameter.value : null,
      depth: tapped && !holes.through ? holes.depth : null,
    })),
  };
}

/** A joint as the views need it. */
export function jointToDraw(joint: Joint): JointToDraw {
  const room = (side: 'driving' | 'driven') => {
    const play = registerClearance(joint, side);
    return play && { least: play.least, most: play.greatest };
  };
  return {
    title: joint.job.title,
    units: joint.job.units,
    adapter: joint.adapter,
    thickness: joint.adapterSpec.thickness,
    clocking: joint.adapterSpec.clocking,
    driving: flangeToDraw(joint.driving, joint),
    driven: flangeToDraw(joint.driven, joint),
    screws: joint.screws,
    wheel: joint.wheel && joint.wheelZ !== null ? { part: joint.wheel, z: joint.wheelZ } : null,
    clearances: { driving: room('driving'), driven: room('driven') },
  };
}

/** A drawing and what stands under it. */
export interface Picture {
  readonly name:
    | 'section'
    | 'driving-face'
    | 'driven-face'
    | 'wheel'
    | 'sensor'
    | 'bracket'
    | 'chain-shaft'
    | 'chain-lean'
    | 'chain-teeth'
    | 'balance'
    | 'phasing'
    | 'shaft'
    | 'shaft-line'
    | 'orders'
    | 'signal';
  readonly caption: string;
  readonly drawing: Drawing;
  /** A narrow sheet that is filled from the top down: two of them stand side by side on paper. */
  readonly column?: true;
}

/** All pictures of a joint, the section first. */
export const pictures = (joint: Joint): Picture[] =>
  [...picturesInSteps(joint)].filter((picture): picture is Picture => picture !== null);

/** The same one by one, drawn when asked for. Null is a pause: before the first stand the parts, after it studies that take longer. */
export function* picturesInSteps(joint: Joint): Generator<Picture | null, void, void> {
  const toDraw = jointToDraw(joint);
  const { adapter, clocking, units } = toDraw;
  const face = (from: 'driving' | 'driven'): Drawing =>
    faceView({ id: `${from}-face`, adapter, from, clocking, mate: joint[from].outside.value, units });
  const section = sectionView(toDraw, 'section');
  yield { name: 'section', caption: section.description, drawing: section };
  yield {
    name: 'driving-face',
    caption: 'Driving face of the adapter, seen from the driving flange.',
    drawing: face('driving'),
  };
  yield {
    name: 'driven-face',
    caption: 'Driven face of the adapter, seen from the driven flange.',
    drawing: face('driven'),
  };
  const { wheel, wheelSpec } = joint;
  if (wheel && wheelSpec) {
    const { teeth, missing, wide, extra, outside, root, toothAngle } = wheelSpec;
    const gap = joint.job.sensor?.gap ?? null;
    const { pole = null, direction } = joint.job.sensor ?? {};
    const windows = windowsToDraw(wheelSpec, pole);
    const axial = windows === undefined && direction === 'axial' ? { pole } : undefined;
    const places = { teeth, missing, wide, extra };
    yield {
      name: 'wheel',
      caption: 'The wheel as it is cut.',
      drawing: wheelView({ id: 'wheel', wheel, ...places, outside, root, toothAngle, gap, units, windows, axial }),
    };
  }
  const sensor = sensorToDraw(joint);
  if (sensor) {
    const over = wordsOf(joint.job.wheel).teeth;
    const caption = `The sensor over the ${over}, near to: its elements against the pitch, and the gap at its high and low spot.`;
    yield { name: 'sensor', caption, drawing: sensorView(sensor), column: true };
  }
  const bracket = bracketToDraw(joint);
  if (bracket) {
    const caption = 'The bracket: the blank as it is cut, and folded over the wheel.';
    yield { name: 'bracket', caption, drawing: bracketView(bracket) };
  }
  yield null;
  const signal = signalToDraw(joint);
  if (signal) {
    const caption = `What the sensor will see over one turn. ${signal.words.join(' ')}`;
    yield { name: 'signal', caption, drawing: signalView(signal) };
  }
  yield null;
  for (const { name, input, caption } of chainsToDraw(joint)) {
    yield { name, caption, drawing: chainView(input), column: true };
    yield null;
  }
  yield null;
  const pulls = balanceToDraw(joint);
  if (pulls) {
    const caption =
      'What pulls the joint to one side, seen from the driven side; angles counter-clockwise from the index mark.';
    yield { name: 'balance', caption, drawing: balanceView(pulls), column: true };
  }
  yield null;
  const phase = phaseToDraw(joint);
  if (phase) {
    const drawing = phaseView(phase);
    const caption = `How to bolt it up, seen from the driven side. ${phaseWords(phase).join(' ')}`;
    yield { name: 'phasing', caption, drawing };
  }
  yield null;
  const shaft = shaftToDraw(joint);
  if (shaft) {
    const caption = 'The shaft to be made. A is the face that bolts to the adapter, B the face at the far end.';
    yield { name: 'shaft', caption, drawing: shaftView(shaft) };
  }
  yield null;
  const line = lineToDraw(joint);
  if (line) {
    const caption =
      'How the shafts lie by the readings. Does each lie as drawn? A wrong sign shows here. Plus from the side: the far end is lower.';
    yield { name: 'shaft-line', caption, drawing: lineView(line) };
  }
  yield null;
  const orders = ordersToDraw(joint);
  if (orders) {
    const drawing = orderChart(orders);
    yield { name: 'orders', caption: `What shakes the shaft, and what answers. ${drawing.description}`, drawing };
  }
}
