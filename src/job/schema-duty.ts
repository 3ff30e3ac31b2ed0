/** The keys of `duty`: what the joint must carry. */
import { z } from 'zod';
import { applicationFactors, shockWords } from '../standards/service-factors.ts';
import { balanceGrade } from './codes.ts';
import type { Fields } from './quantity-fields.ts';
import { readQuantity } from './quantity-fields.ts';
import { listOf, yesNo } from './word-fields.ts';

/** Widest ratio of one step of a driveline. */
const ratioRange = { least: 0.05, most: 200 };

/** Schema of `duty`. */
export function dutySchema(fields: Fields) {
  return z
    .strictObject({
      torque: fields
        .quantity(
          'torque',
          { above: 0, most: 200_000 },
          'Peak torque at this shaft. It stands before what engine and tyre come to.',
        )
        .optional(),
      speed: fields.quantity('speed', { above: 0, most: 100_000 }, 'Highest speed this shaft ever turns.').optional(),
      grade: balanceGrade('How finely the joint is to be balanced.').prefault('G16'),
      engine: engineSchema(fields).optional(),
      tyre: tyreSchema(fields).optional(),
      shock: fields
        .quantityOr(
          shockWords,
          'ratio',
          { least: 1, most: 5 },
          `How roughly the load comes: ${applicationFactors.rows.map(({ shock, KA }) => `${shock} (${KA})`).join(', ')} by the gear standards' application factor, or a factor of your own. Left out: 1, the torque is a peak already.`,
        )
        .optional(),
      reversing: yesNo(
        'Whether the torque also works the other way at full strength; a face that slips then fails, dowels or not. Left out: false.',
      ).optional(),
      slip_safety: fields
        .quantity(
          'ratio',
          { least: 1, most: 5 },
          'Safety that the clamped faces must have against slipping; typed, less of it fails. Left out: 1.25 is asked for (EN 1993-1-8), 1.8 when reversing (VDI 2230, from memory); then less than 1 fails, when reversing less than 1.25.',
        )
        .optional(),
      temperature: temperatureSchema(fields).optional(),
    })
    .describe('What the joint must carry.');
}

function engineSchema(fields: Fields) {
  return z
    .strictObject({
      torque: fields.quantity('torque', { above: 0, most: 200_000 }, 'Greatest torque of the engine or motor.'),
      ratios: listOf(
        (ratio) => readQuantity(ratio, 'ratio', ratioRange, fields.units),
        1,
        8,
        'Ratios between engine and this shaft in the lowest gear, each more than 1 where the shaft turns slower: [3.6] or [3.6, 2.0].',
        { type: ['number', 'string'] },
      ).optional(),
      converter: fields
        .quantity(
          'ratio',
          { least: 1, most: 5 },
          'Torque ratio of a torque converter at stall; 1.8 to 2.8 is usual. Left out: none.',
        )
        .optional(),
      efficiency: fields
        .quantity(
          'ratio',
          { above: 0, most: 1 },
          'Share of the torque that reaches this shaft; 0.95 is usual. Left out: all of it, the safe side.',
        )
        .optional(),
    })
    .describe('What turns the shaft, from the engine down.');
}

function tyreSchema(fields: Fields) {
  return z
    .strictObject({
      load: fields.quantity(
        'mass',
        { above: 0, most: 100_000_000 },
        'Mass that rests on the driven axle, fully laden.',
      ),
      radius: fields.length({ least: 30, most: 2000 }, 'Rolling radius: hub to ground, laden.'),
      grip: fields
        .quantity(
          'ratio',
          { least: 0.1, most: 3 },
          'Friction of the tyres on the best ground (common practice: 1.0 for a good tyre on dry road).',
        )
        .prefault(1),
      ratio: fields.quantity('ratio', ratioRange, 'Ratio from this shaft to the wheels (the final drive).').prefault(1),
    })
    .describe('The tyres that slip before the engine can give more.');
}

function temperatureSchema(fields: Fields) {
  return z
    .strictObject({
      cold: fields.quantity(
        'temperature',
        { least: -80, most: 60 },
        'Coldest the joint gets when it must still go round.',
      ),
      hot: fields.quantity('temperature', { least: -20, most: 250 }, 'Hottest the joint gets at work.'),
    })
    .superRefine(({ cold, hot }, context) => {
      if (cold <= hot) return;
      const message = `The coldest (${Number(cold.toFixed(2))} degC) is warmer than the hottest (${Number(hot.toFixed(2))} degC).`;
      context.addIssue({ code: 'custom', path: ['cold'], message, params: { allowed: 'cold at most hot' } });
    })
    .describe('Coldest and hottest the joint gets: registers of unlike materials open or bind.');
}
