/** The keys of `shaft`: the propeller shaft that hangs on the joint. */
import { z } from 'zod';
import type { Fields } from './quantity-fields.ts';
import { anglesSchema } from './schema-shaft-angles.ts';
import { shaftFitKeys } from './schema-shaft-fit.ts';
import { tubeKeys } from './schema-shaft-tube.ts';

/** Schema of `shaft`. */
export function shaftSchema(fields: Fields) {
  return z
    .strictObject({
      mass: fields.quantity('mass', { above: 0, most: 500_000 }, 'Mass of the propeller shaft.').optional(),
      ...tubeKeys(fields),
      ...shaftFitKeys(fields),
      angles: anglesSchema(fields).optional(),
    })
    .describe('The propeller shaft that hangs on the joint.');
}

export type ShaftInput = z.output<ReturnType<typeof shaftSchema>>;
