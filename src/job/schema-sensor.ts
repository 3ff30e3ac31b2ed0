/** The keys of `sensor`: what senses the teeth. */
import { z } from 'zod';
import type { Fields } from './quantity-fields.ts';
import { choice } from './word-fields.ts';

/** Kinds of sensor the wheel may be read by. */
export const sensorKinds = ['coil', 'hall', 'differential_hall', 'active_wheel_speed'] as const;

/** Schema of `sensor`. */
export function sensorSchema(fields: Fields) {
  return z
    .strictObject({
      kind: choice(sensorKinds, 'What senses the teeth.').optional(),
      gap: fields.length({ least: 0.05, most: 10 }, 'Air gap between sensor and tooth.').optional(),
      pole: fields.length({ least: 0.1, most: 50 }, 'Width of the pole or sensing element.').optional(),
    })
    .describe('The sensor that reads the wheel.');
}
