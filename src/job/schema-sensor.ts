/** The keys of `sensor`: what senses the teeth, what its data sheet asks for, and what the controller expects. */
import { z } from 'zod';
import { sensorKinds } from '../standards/tooth-rules.ts';
import { material } from './codes.ts';
import type { Fields, Range } from './quantity-fields.ts';
import { tyreField } from './tyre-field.ts';
import { choice, whole, yesNo } from './word-fields.ts';

/** Kinds of sensor the wheel may be read by. */
export { sensorKinds };

/** Turns or distance that the controller counts pulses over. */
export const pulsesPer = ['shaft', 'wheel', 'engine', 'km', 'mile'] as const;

const ratioRange: Range = { least: 0.01, most: 200 };
const temperatureRange: Range = { least: -100, most: 400 };

/** Schema of `sensor`. */
export function sensorSchema(fields: Fields) {
  return z
    .strictObject({
      kind: choice(
        sensorKinds,
        'What senses the teeth: coil (makes its own voltage), hall (one element), differential_hall (two elements side by side), two_channel_hall (speed and direction), active_wheel_speed (tells by its supply current). Not known: flangewright measure sensor.',
      ).optional(),
      direction: choice(
        ['radial', 'axial'],
        'radial: the sensor looks at the tips, towards the axis. axial: it looks at the flat side, along the axis.',
      ).prefault('radial'),
      gap: fields
        .length({ least: 0.05, most: 10 }, 'Air gap between sensor and tooth. Left out: the usual one of its kind.')
        .optional(),
      pole: fields.length({ least: 0.1, most: 50 }, 'Width of the pole or sensing element.').optional(),
      ...dataSheetKeys(fields),
      ...surroundingsKeys(fields),
      ...readingKeys(fields),
    })
    .describe('The sensor that reads the wheel.');
}

/** What the sensor's own data sheet says; each stands before the usual figure of its kind. */
function dataSheetKeys(fields: Fields) {
  const sheet = 'From the data sheet; left out: the usual figure of its kind.';
  const size = (what: string) => fields.length({ least: 0.05, most: 100 }, `${what} ${sheet}`).optional();
  return {
    spacing: size('Distance between the two sensing elements, along the path of the teeth.'),
    tooth: size('Least width of a tooth at its tip.'),
    tooth_most: size('Greatest width of a tooth at its tip.'),
    valley: size('Least width of a valley.'),
    height: size('Least height of a tooth.'),
    thickness: size('Least thickness of the wheel.'),
    pitch: size('Least distance from tooth to tooth.'),
    gap_range: z
      .strictObject({
        least: fields.length({ least: 0, most: 20 }, 'Least air gap at which it works.').prefault('0 mm'),
        most: fields.length({ least: 0.05, most: 20 }, 'Greatest air gap at which it works.'),
      })
      .superRefine(inOrder('gap'))
      .describe(`Air gaps at which the sensor works. ${sheet}`)
      .optional(),
    frequency: z
      .strictObject({
        least: fields.quantity('frequency', { least: 0, most: 1e6 }, 'Slowest pulses it reads.').prefault(0),
        most: fields.quantity('frequency', { above: 0, most: 1e6 }, 'Fastest pulses it reads.'),
      })
      .superRefine(inOrder('frequency'))
      .describe(`Pulses a second that the sensor reads. ${sheet}`)
      .optional(),
    controller: z
      .strictObject({
        least: fields.quantity('frequency', { least: 0, most: 1e6 }, 'Slowest pulses it counts.').prefault(0),
        most: fields.quantity('frequency', { above: 0, most: 1e6 }, 'Fastest pulses it counts.'),
      })
      .superRefine(inOrder('frequency'))
      .describe("Pulses a second that the controller's input counts.")
      .optional(),
    surface_speed: fields
      .quantity('velocity', { above: 0, most: 100 }, `Least speed of the tips past the sensor (coils). ${sheet}`)
      .optional(),
    temperature: z
      .strictObject({
        least: fields.quantity('temperature', temperatureRange, 'Coldest the sensor may get.'),
        most: fields.quantity('temperature', temperatureRange, 'Hottest the sensor may get.'),
      })
      .superRefine(inOrder('temperature'))
      .describe(`Temperatures that the sensor bears. ${sheet}`)
      .optional(),
  };
}

/** What moves the teeth towards the sensor and away from it. */
function surroundingsKeys(fields: Fields) {
  const play: Range = { least: 0, most: 50 };
  return {
    bearing_play: fields
      .length(play, 'How far the shaft can be rocked across its axis where the wheel sits, from end to end.')
      .optional(),
    float: fields.length(play, 'How far the shaft can be pushed along its axis, from end to end.').optional(),
    travel: fields
      .length(
        play,
        'How far the wheel moves against what carries the sensor as suspension and mounts work, from end to end; 0 where both sit on one housing. Left out: 0.',
      )
      .optional(),
    carrier: material(
      'What the bracket or housing that carries the sensor is made of; decides what heat does.',
    ).optional(),
    crawl: fields
      .quantity('speed', { above: 0, most: 100_000 }, 'Slowest speed of this shaft that must still be read.')
      .optional(),
    signal: yesNo(
      'Whether to make the files of the simulated signal: one turn as CSV, a WAV for the bench. Left out: false.',
    ).optional(),
  };
}

/** What the controller expects, and what it was used to. */
function readingKeys(fields: Fields) {
  const axle = (about: string) => fields.quantity('ratio', ratioRange, about);
  return {
    axle: axle(
      'Turns of this shaft in one turn of the road wheels (the final drive). Left out: duty.tyre.ratio.',
    ).optional(),
    tyre: tyreField(fields, 'The tyres that are on now. Left out: duty.tyre.radius.').optional(),
    expects: z
      .strictObject({
        pulses: fields.quantity('ratio', { above: 0, most: 1e7 }, 'How many pulses the controller expects.'),
        per: choice(
          pulsesPer,
          'shaft: in a turn of this shaft; wheel: of the road wheels; engine: of the engine; km, mile: on the road.',
        ).prefault('shaft'),
        ratio: axle('per engine: turns of the engine in one turn of this shaft.').optional(),
        adjustable: yesNo('Whether this number can be changed in the controller. Left out: true.').prefault(true),
        whole: yesNo('Whether the controller takes whole numbers only. Left out: true.').prefault(true),
      })
      .describe('What the controller is set up for.')
      .optional(),
    was: z
      .strictObject({
        teeth: whole(1, 3600, 'Teeth of the wheel that was read before.'),
        ratio: axle('Turns of that wheel in one turn of the road wheels, before.').prefault(1),
        tyre: tyreField(fields, 'The tyres before. Left out: those of now.').optional(),
      })
      .describe('How the controller was fed before; tells what it expects when nobody knows the number.')
      .optional(),
    converter: z
      .strictObject({
        largest: whole(2, 65_535, 'Largest whole number that either side of its ratio takes.').prefault(255),
      })
      .describe('A pulse converter box, which makes p pulses out of q.')
      .optional(),
  };
}

/** The lower end of a range stands below its upper end. */
function inOrder(what: string) {
  return ({ least, most }: { least: number; most: number }, context: z.RefinementCtx): void => {
    if (least < most) return;
    const message = `The least ${what} (${least}) is not below the greatest (${most}).`;
    context.addIssue({ code: 'custom', path: ['least'], message, params: { allowed: 'least below most' } });
  };
}
