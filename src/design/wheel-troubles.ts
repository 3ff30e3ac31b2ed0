/** Why the wheel cannot be drawn, said at the keys of the job. */

import type { SizedWheel } from '../job/wheel-form.ts';
import { hasWindows, type ToneWheelSpec, toneWheelFaults } from '../parts/tone-wheel.ts';
import type { Trouble } from './trouble.ts';
import type { WheelPlace } from './wheel.ts';

/** Where a measure of the wheel is typed in the job. */
const keys: Readonly<Record<string, string>> = {
  rootRadius: 'wheel.root_radius',
  tipBreak: 'wheel.tip_break',
  toothAngle: 'wheel.tooth',
  screwHoles: 'wheel.screws.circle',
  kerf: 'sheet.kerf',
};

const mm = (value: number) => `${Number(value.toFixed(2))} mm`;

/** A thread for the wheel's screws that is asked to be deeper than the adapter has metal under the wheel's face; none where it is left open. */
export function deepThread({ threadDepth, seat, thread }: WheelPlace, thickness: number): Trouble[] {
  const room = thickness - (seat?.height ?? 0);
  if (threadDepth === null || threadDepth <= room + 1e-9) return [];
  const slip = threadDepth / 10 >= thread.pitch ? ` Was ${mm(threadDepth / 10)} meant?` : '';
  return [
    {
      path: 'wheel.screws.depth',
      message: `A thread ${mm(threadDepth)} deep does not go into an adapter that has ${mm(room)} of metal under the wheel.${slip} Leave it on auto, give ${mm(room)} or less (${mm(room)} is right through), or a thicker adapter (adapter.thickness).`,
    },
  ];
}

/**
 * Troubles of a wheel; none when it can be drawn. A wheel too small for the bore and screws that were chosen for it is one trouble,
 * at its outside; every other fault stands at its own key, the first of each.
 */
export function wheelTroubles(spec: ToneWheelSpec, wheel: SizedWheel, place: WheelPlace): Trouble[] {
  const least = place.circle + place.hole + 2 * Math.max(spec.thickness, 3);
  if (wheel.screws.circle === 'auto' && spec.root < place.circle + place.hole) {
    const height = (spec.outside - spec.root) / 2;
    return [
      {
        path: 'wheel.outside',
        message: `The wheel goes over ${mm(spec.bore)} and its screws sit on a circle of ${mm(place.circle)}, so the ${hasWindows(spec) ? 'inside of its windows' : 'roots of its teeth'} (${mm(spec.root)}) ${hasWindows(spec) ? 'needs' : 'need'} at least ${mm(least)}: an outside of ${mm(Math.ceil(least + 2 * height))} or more.`,
      },
    ];
  }
  const troubles = toneWheelFaults(spec).map((fault) => {
    // A fault starts with the measure that it speaks of.
    const [, measure = '', sentence = fault] = /^(\w+)[^:]*: (.*)$/s.exec(fault) ?? [];
    return { path: measure === '' ? 'wheel' : (keys[measure] ?? `wheel.${measure}`), message: sentence };
  });
  return troubles.filter(({ path }, i) => troubles.findIndex((other) => other.path === path) === i);
}
