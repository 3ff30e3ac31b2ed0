/** Checks of the wheel's keys against each other, and of its form against the way the sensor looks. */
import { toothHeight } from '../parts/tone-wheel.ts';
import { checkMark } from './cross-check-mark.ts';
import type { Report } from './cross-check-words.ts';
import { radiusQuestion, round, size } from './cross-check-words.ts';
import type { JobInput } from './schema.ts';
import type { WheelInput } from './schema-wheel.ts';
import { bandOf, rimOf, type SizedWheel } from './wheel-form.ts';
import { chosenHeight } from './wheel-height.ts';

/** What reads the wheel. */
type Reader = Pick<Partial<JobInput>, 'sensor' | 'bracket'>;

/** What open teeth or windows cannot have, and how windows are read. */
function checkForm(wheel: WheelInput, { sensor, bracket }: Reader, report: Report): void {
  const { form, rim, tip_break: tipBreak } = wheel;
  if (form !== 'windows') {
    if (rim !== undefined) {
      report('wheel.rim', 'Open teeth have no rim outside of them: leave out wheel.rim, or give wheel.form: windows.');
    }
    return;
  }
  if (sensor === undefined && bracket !== undefined) {
    report(
      'wheel.form',
      'Windows are read from the flat side, and the bracket has to know it: give sensor: { direction: axial }.',
      { value: 'windows' },
    );
  }
  if (sensor?.direction === 'radial') {
    report(
      'wheel.form',
      'Windows have a closed rim round them: a sensor that looks at the rim from outside sees no edge of them. Give sensor.direction: axial for one that looks at the flat side (radial is meant where it is left out), or wheel.form: open.',
      { value: 'windows', allowed: 'open, or sensor.direction: axial' },
    );
  }
  if (tipBreak > 0) {
    report('wheel.tip_break', 'Windows have no tips to break: leave it out. wheel.root_radius rounds their corners.');
  }
}

/** The rim must leave room for windows. */
function checkRim(wheel: SizedWheel, report: Report): void {
  const { form, outside, rim, root } = wheel;
  if (form !== 'windows') return;
  const inside = outside - 2 * rimOf(wheel);
  if (inside <= 0 || (root !== undefined && root < outside && root >= inside)) {
    report(
      rim === undefined ? 'wheel.root' : 'wheel.rim',
      `A rim of ${size(rimOf(wheel))} on ${size(outside)} ends at ${size(inside)} diameter${root === undefined ? '' : `, and the windows begin at ${size(root)}`}: it leaves no window.`,
    );
  }
}

/**
 * Judge the wheel's keys that were read.
 * @param isSizeRead false where an outside was typed that does not read: what hangs on it is not judged
 */
export function checkWheel(wheel: WheelInput, reader: Reader, report: Report, isSizeRead = true): void {
  const { outside, root, height, room } = wheel;
  checkForm(wheel, reader, report);
  if (root !== undefined && height !== undefined)
    report('wheel.height', 'Give root or height, not both: each follows from the other and the outside diameter.');
  checkMark(wheel, report);
  if (outside !== 'auto') {
    checkSizes({ ...wheel, outside }, reader, report);
    return;
  }
  if (!isSizeRead) return;
  if (root !== undefined)
    report(
      'wheel.root',
      'The root follows from an outside that is chosen (wheel.outside: auto, or left out): leave out wheel.root, and give wheel.height if the teeth must have one; or type wheel.outside.',
    );
  if (room !== undefined)
    report(
      'wheel.room',
      'The room is measured from the tips of a wheel whose size is known, and wheel.outside is auto: leave wheel.room out, see which outside is chosen, then type that outside and the room it has left.',
    );
}

/** Judge a wheel whose outside was typed. */
function checkSizes(wheel: SizedWheel, reader: Reader, report: Report): void {
  const { outside, root, teeth, bore, screws } = wheel;
  const isOpen = wheel.form !== 'windows';
  checkRim(wheel, report);
  const height = wheel.height ?? (root === undefined ? chosenHeight(wheel, reader).least : undefined);
  const band = bandOf({ ...wheel, height });
  const foot = band.root;
  const what = isOpen ? 'Teeth' : 'Windows';
  if (root !== undefined && root >= outside) {
    report(
      'wheel.root',
      `The root (${size(root)}) must be smaller than the outside (${size(outside)}): ${isOpen ? 'teeth stand out from it' : 'the windows lie between it and the rim'}.`,
    );
  } else if (root !== undefined && root < 0.6 * outside && 2 * root < outside) {
    report(
      'wheel.root',
      `${what} ${size(toothHeight(band))} high on a wheel ${size(outside)} across: did you type the radius? Twice ${round(root)} is ${size(2 * root)}.`,
    );
  } else if (height !== undefined && foot <= 0.2 * outside) {
    report('wheel.height', `${what} ${size(height)} high leave no wheel of ${size(outside)} across.`);
  }
  const pitch = teeth === 'auto' ? null : (Math.PI * outside) / teeth;
  if (pitch !== null && pitch < 1)
    report(
      'wheel.teeth',
      `${teeth} ${isOpen ? 'teeth' : 'bars'} on ${size(outside)} stand ${size(pitch)} apart; nothing cuts or senses that. Check the count and the diameter.`,
    );
  if (foot <= 0 || foot >= outside) return;
  const roots = isOpen ? 'roots of the teeth lie' : 'windows begin';
  if (typeof bore === 'number' && bore >= foot)
    report('wheel.bore', `The bore (${size(bore)}) leaves no ring: the ${roots} on ${size(foot)}.`);
  if (typeof screws.circle === 'number') {
    if (screws.circle >= foot)
      report(
        'wheel.screws.circle',
        `The screw circle (${size(screws.circle)}) lies outside the ${isOpen ? 'roots of the teeth' : 'inside of the windows'} (${size(foot)}).`,
      );
    if (typeof bore === 'number' && screws.circle <= bore) {
      const hint = 2 * screws.circle > bore && 2 * screws.circle < foot ? ` ${radiusQuestion(screws.circle)}` : '';
      report(
        'wheel.screws.circle',
        `The screw circle (${size(screws.circle)}) lies inside the bore (${size(bore)}).${hint}`,
      );
    }
  }
}
