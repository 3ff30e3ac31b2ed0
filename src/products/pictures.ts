/** The pictures of a joint: both faces, the section, the wheel. Preview files and the report show the same ones. */
import { bracketView } from '../drawing/bracket-view.ts';
import { faceView } from '../drawing/face-view.ts';
import type { FlangeToDraw, JointToDraw } from '../drawing/joint-to-draw.ts';
import { lineView } from '../drawing/line-view.ts';
import { orderChart } from '../drawing/order-chart.ts';
import { phaseView, phaseWords } from '../drawing/phase-view.ts';
import { sectionView } from '../drawing/section-view.ts';
import { shaftView } from '../drawing/shaft-view.ts';
import { signalView } from '../drawing/signal-view.ts';
import { wheelView } from '../drawing/wheel-view.ts';
import type { Joint } from '../job/joint.ts';
import type { ResolvedFlange } from '../job/resolve-flange.ts';
import type { Drawing } from '../model/drawing.ts';
import { turned } from '../parts/adapter-holes.ts';
import { registerClearance } from '../rotor/plays.ts';
import { bracketToDraw } from './bracket-to-draw.ts';
import { ordersToDraw } from './orders-to-draw.ts';
import { phaseToDraw } from './phase-to-draw.ts';
import { lineToDraw, shaftToDraw } from './shaft-to-draw.ts';
import { signalToDraw } from './signal-to-draw.ts';

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
    holes: holes.positions.map((position) => ({
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
    | 'bracket'
    | 'phasing'
    | 'shaft'
    | 'shaft-line'
    | 'orders'
    | 'signal';
  readonly caption: string;
  readonly drawing: Drawing;
}

/** All pictures of a joint, the section first. */
export function pictures(joint: Joint): Picture[] {
  const toDraw = jointToDraw(joint);
  const { adapter, clocking, units } = toDraw;
  const face = (from: 'driving' | 'driven'): Drawing =>
    faceView({ id: `${from}-face`, adapter, from, clocking, mate: joint[from].outside.value, units });
  const section = sectionView(toDraw, 'section');
  const list: Picture[] = [
    { name: 'section', caption: section.description, drawing: section },
    {
      name: 'driving-face',
      caption: 'Driving face of the adapter, seen from the driving flange.',
      drawing: face('driving'),
    },
    {
      name: 'driven-face',
      caption: 'Driven face of the adapter, seen from the driven flange.',
      drawing: face('driven'),
    },
  ];
  const { wheel, wheelSpec } = joint;
  if (wheel && wheelSpec) {
    const { teeth, missing, outside, root, toothAngle } = wheelSpec;
    const gap = joint.job.sensor?.gap ?? null;
    list.push({
      name: 'wheel',
      caption: 'The wheel as it is cut.',
      drawing: wheelView({ id: 'wheel', wheel, teeth, missing, outside, root, toothAngle, gap, units }),
    });
  }
  const bracket = bracketToDraw(joint);
  if (bracket) {
    const caption = 'The bracket: the blank as it is cut, and folded over the wheel.';
    list.push({ name: 'bracket', caption, drawing: bracketView(bracket) });
  }
  const signal = signalToDraw(joint);
  if (signal) {
    const caption = `What the sensor will see over one turn. ${signal.words.join(' ')}`;
    list.push({ name: 'signal', caption, drawing: signalView(signal) });
  }
  const phase = phaseToDraw(joint);
  if (phase) {
    const drawing = phaseView(phase);
    const caption = `How to bolt it up, seen from the driven side. ${phaseWords(phase).join(' ')}`;
    list.push({ name: 'phasing', caption, drawing });
  }
  const shaft = shaftToDraw(joint);
  if (shaft) {
    const caption = 'The shaft to be made. A is the face that bolts to the adapter, B the face at the far end.';
    list.push({ name: 'shaft', caption, drawing: shaftView(shaft) });
  }
  const line = lineToDraw(joint);
  if (line) {
    const caption =
      'How the shafts lie by the readings. Does each lie as drawn? A wrong sign shows here. Plus from the side: the far end is lower.';
    list.push({ name: 'shaft-line', caption, drawing: lineView(line) });
  }
  const orders = ordersToDraw(joint);
  if (orders) {
    const drawing = orderChart(orders);
    list.push({ name: 'orders', caption: `What shakes the shaft, and what answers. ${drawing.description}`, drawing });
  }
  return list;
}
