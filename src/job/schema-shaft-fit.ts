/** The keys of `shaft` that say how long it must be: readings with the mock-up in place, ends, slip, travel, the shaft at hand. */
import { z } from 'zod';
import { shaftRule } from '../standards/shaft-practice.ts';
import { accept, field } from './field.ts';
import type { Fields, Range } from './quantity-fields.ts';
import { quantityPattern, rangeInWords, readQuantity } from './quantity-fields.ts';
import { choice, listOf } from './word-fields.ts';

const gap: Range = { above: 0, most: 10_000 };

/** One reading between the faces, or several of the same. */
function faceReading(fields: Fields, about: string) {
  const one = { type: ['number', 'string'] };
  const list = listOf((typed) => readQuantity(typed, 'length', gap, fields.units), 1, 20, about, one);
  return field(
    (typed) => {
      if (!Array.isArray(typed)) {
        const single = readQuantity(typed, 'length', gap, fields.units);
        return single.ok ? accept([single.value]) : single;
      }
      const read = list.safeParse(typed);
      if (read.success) return accept(read.data);
      const faults = read.error.issues.map(({ path, message }) => ({ path: path as (string | number)[], message }));
      return { ok: false as const, faults };
    },
    {
      description: `${about} One reading, or a list of repeats. A bare number is in the job's units (mm or in); units that may be written: mm, in, thou, um, cm, m, ft. Range: ${rangeInWords(gap, 'length')}.`,
      anyOf: [
        { type: 'number', exclusiveMinimum: 0 },
        { type: 'string', pattern: quantityPattern },
        { type: 'array', minItems: 1, maxItems: 20, items: one },
      ],
    },
  );
}

function measuredSection(fields: Fields) {
  return z
    .strictObject({
      from: choice(
        ['mock-up', 'flange'],
        "The face the reading starts from. mock-up: the mock-up's free face, where the shaft will be bolted on. flange: the bare flange, no mock-up on it; the adapter is then taken off.",
      ),
      value: faceReading(
        fields,
        'From that face to the face of the flange at the far end, middle to middle, shaft taken out.',
      ),
      at: choice(
        ['ride height', 'hanging'],
        'How the vehicle stood: ride height, wheels loaded; hanging, axle drooping.',
      ),
      doubt: fields
        .length(
          { least: 0, most: 20 },
          `Half-width of the doubt of one reading. Left out: ${shaftRule('tape').limit} mm, a tape.`,
        )
        .optional(),
      mock_up: fields
        .length({ above: 0, most: 500 }, 'Thickness of the mock-up as measured. Left out: as thick as the adapter.')
        .optional(),
      at_bump: faceReading(fields, 'The same reading with the axle pushed up to its stop.').optional(),
      at_droop: faceReading(fields, 'The same reading with the axle hanging.').optional(),
    })
    .describe('What was measured between the faces, with the shaft taken out.');
}

function slipSection(fields: Fields) {
  return z
    .strictObject({
      stroke: fields.length({ above: 0, most: 1000 }, 'Travel of the slip, from pushed home to pulled out.'),
      engaged: fields
        .length({ above: 0, most: 1000 }, 'Length of spline engaged when pushed home. Left out: not looked at.')
        .optional(),
      least_engaged: fields
        .length(
          { above: 0, most: 1000 },
          `Spline that must stay engaged at the longest. Left out: ${shaftRule('engagement').limit} mm, common practice.`,
        )
        .optional(),
      reserve: fields
        .length(
          { least: 0, most: 200 },
          `Slip that must be left at either end. Left out: ${shaftRule('reserve').limit} mm, common practice.`,
        )
        .optional(),
    })
    .describe('The slip: sliding spline or plunging joint.');
}

function travelSection(fields: Fields) {
  return z
    .strictObject({
      bump: fields.length({ least: 0, most: 1000 }, 'How far the axle can go up from ride height.'),
      droop: fields.length({ least: 0, most: 1000 }, 'How far the axle can go down from ride height.'),
      arm: fields
        .length(
          { least: 0, most: 2000 },
          'From the last joint centre on to the middle of the axle: the axle turns about its middle. Left out: 0, the joint then stays where it is when the axle is wedged.',
        )
        .optional(),
      pivot: z
        .strictObject({
          ahead: fields.length(
            { least: -5000, most: 5000 },
            'How far ahead of the last joint centre, towards the driving end.',
          ),
          above: fields
            .length({ least: -2000, most: 2000 }, 'How far above the last joint centre; minus: below.')
            .prefault('0 mm'),
        })
        .describe('The place about which the axle swings, in the side view. Left out: straight up and down.')
        .optional(),
    })
    .describe('How the axle at the far end goes up and down.');
}

function givenSection(fields: Fields) {
  return z
    .strictObject({
      length: fields.length(gap, 'Its length as it lies on the bench.'),
      between: choice(
        ['faces', 'centres'],
        'What that length runs between: the outer faces of its flanges, or its joint centres.',
      ).prefault('faces'),
      pulled_out: fields
        .length({ least: 0, most: 1000 }, 'How far its slip was drawn out when it was measured; 0: pushed home.')
        .prefault('0 mm'),
      tube: fields.length(gap, 'Length of its tube, weld to weld.').optional(),
    })
    .describe('A shaft that is at hand and is to be cut to length.');
}

/** Keys of `shaft` about its length. */
export function shaftFitKeys(fields: Fields) {
  const end: Range = { least: 0, most: 500 };
  return {
    bolts_to: choice(
      ['driven', 'driving'],
      'Which face of the adapter the shaft is bolted to. driven: the adapter turns the shaft (it sits on the gearbox). driving: the shaft turns the adapter (it sits on the axle).',
    ).prefault('driven'),
    measured: measuredSection(fields).optional(),
    spacers: fields
      .length(
        { least: 0, most: 200 },
        'Thickness of anything else that will be clamped between the faces and was not there when they were read. The adapter and the wheel are not to be counted here.',
      )
      .optional(),
    ends: z
      .strictObject({
        adapter: fields.length(end, "From the shaft's face at the adapter to the joint centre behind it."),
        far: fields.length(end, "From the shaft's face at the far end to the joint centre before it."),
      })
      .describe("How far the shaft's joint centres lie from its faces; 0 where it is measured to the joint centre.")
      .optional(),
    slip: slipSection(fields).optional(),
    travel: travelSection(fields).optional(),
    at_hand: givenSection(fields).optional(),
  };
}
