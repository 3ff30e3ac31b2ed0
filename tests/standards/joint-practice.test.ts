/** Friction by the pair of materials, and how far the thread of a screw runs. */
import { describe, expect, it } from 'vitest';
import { frictionBetween } from '../../src/standards/face-pairs.ts';
import { designFriction } from '../../src/standards/friction.ts';
import { findMaterial } from '../../src/standards/materials.ts';
import { shankOf } from '../../src/standards/shank-lengths.ts';
import { must } from '../../src/standards/table.ts';
import { findThread } from '../../src/standards/threads.ts';

const between = (a: string, b: string, oiled = false) =>
  frictionBetween(must(findMaterial(a)), must(findMaterial(b)), oiled);

describe('friction between two materials', () => {
  it('goes by what they are, either way round', () => {
    expect(between('S355', '1045')).toEqual(designFriction('steel on steel', false));
    expect(between('S355', 'EN-GJS-500-7', true)).toEqual(designFriction('steel on steel', true));
    expect(between('304', '6061-T6')).toEqual(designFriction('steel on aluminium', false));
    expect(between('6061-T6', '304')).toEqual(between('304', '6061-T6'));
  });

  it('is not known for aluminium on aluminium, nor for plastic', () => {
    expect(between('6061-T6', '7075-T6')).toEqual({
      ok: false,
      why: expect.stringContaining('aluminium on aluminium'),
    });
    expect(between('PLA', 'S355')).toEqual({ ok: false, why: expect.stringContaining('plastic') });
  });
});

describe('plain shank', () => {
  const shank = (kind: 'socket' | 'flat' | 'hex' | 'button', thread: string, length: number) =>
    shankOf(kind, must(findThread(thread)), length).length;

  it('is what thread and run-out leave of a socket screw', () => {
    // ISO 4762 M10 x 100: b 32, lg 68, ls 68 - 5 x 1.5 = 60.5 (the standard's own table, from memory).
    expect(shank('socket', 'M10', 100)).toBeCloseTo(60.5, 9);
    // M8 x 60: b 28, lg 32, ls 25.75.
    expect(shank('socket', 'M8', 60)).toBeCloseTo(25.75, 9);
    expect(shank('flat', 'M8', 60)).toBeCloseTo(25.75, 9);
    // 3/8-16 x 3 in: 3 - 1.25 in of thread, less five pitches of 1/16 in.
    expect(shank('socket', '3/8-16 UNC', 76.2)).toBeCloseTo((3 - 1.25 - 5 / 16) * 25.4, 6);
  });

  it('is nothing on a short screw, and on those threaded to the head', () => {
    expect(shank('socket', 'M10', 30)).toBe(0);
    for (const kind of ['hex', 'button'] as const) expect(shank(kind, 'M10', 100)).toBe(0);
  });
});
