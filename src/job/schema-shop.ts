/** The keys of `adapter.shop`: what the bench has, for set-up sheets and drilling programs. No part is decided here. */
import { z } from 'zod';
import type { Fields } from './quantity-fields.ts';
import { choice, yesNo } from './word-fields.ts';

/** Schema of `adapter.shop`. */
export function shopSchema(fields: Fields) {
  return z
    .strictObject({
      tools: choice(
        ['hss', 'carbide'],
        'What the tools are made of: high-speed steel, or carbide. It decides the speeds that are suggested.',
      ).prefault('hss'),
      top_speed: fields
        .quantity(
          'speed',
          { least: 100, most: 60_000 },
          'Highest speed of the spindle; no speed is suggested above it.',
        )
        .prefault('2000 rpm'),
      travel: fields
        .length(
          { least: 5, most: 300 },
          'How far above the highest metal of a side the tool travels from hole to hole; clamps must stand lower.',
        )
        .prefault('25 mm'),
      cycles: choice(
        ['canned', 'spelled'],
        'How a drilling program says a hole: by the canned cycles G81 and G83, or spelled out move by move.',
      ).prefault('canned'),
      tap_cycle: yesNo(
        'Tap by G84 (needs a spindle that reverses and a floating tap holder). false: the program stops, and you tap by hand.',
      ).prefault(false),
    })
    .describe('What the bench has, for set-up sheets and drilling programs. It changes no part.');
}

export type ShopInput = z.output<ReturnType<typeof shopSchema>>;
