/** Spans of screw lengths, against sums by hand and against random fixings. Lengths in mm. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blindTip, leastThreadRoom, mouthOf, tappedDepth, threadWanted } from '../../src/design/adapter-thread.ts';
import { standardLengthIn } from '../../src/design/screw-length.ts';
import { standardLengths } from '../../src/standards/screw-lengths.ts';
import { must } from '../../src/standards/table.ts';
import { findThread } from '../../src/standards/threads.ts';
import { judge, type Patch } from '../validate/help.ts';

const noWheel: Patch = { wheel: undefined, sensor: undefined };
const screws = (side: string, ...patches: Patch[]) => {
  const group = judge(noWheel, ...patches).joint.screws.find((candidate) => candidate.side === side);
  if (!group) throw new Error(`no ${side} screws`);
  return group;
};
const at20: Patch = { adapter: { thickness: 20 } };

describe('spans of screw lengths', () => {
  it('runs from the seat in the adapter into the flange: 20 - 8.6 + 8, to 11.4 + 16 - 1.25', () => {
    expect(screws('driving', at20).lengths).toMatchObject({ least: 19.4, most: 26.15 });
  });

  it('counts a flat head from its top, 0.19 below the face (ISO 10642)', () => {
    const { lengths } = screws('driving', at20, { adapter: { driving: { head: 'flat' } } });
    expect(lengths.least).toBeCloseTo(20 - 0.19 + 8, 9);
    expect(lengths.most).toBeCloseTo(20 - 0.19 + 16 - 1.25, 9);
  });

  it('lets a washer lie in a pocket that is deeper by it: the same span', () => {
    expect(screws('driving', at20, { adapter: { driving: { washer: true } } }).lengths).toMatchObject({
      least: 19.4,
      most: 26.15,
    });
  });

  it('counts the whole thickness where heads stand on the face', () => {
    const surface = { adapter: { driving: { seat: 'surface' } } };
    expect(screws('driving', at20, surface).lengths).toMatchObject({ least: 28, most: 34.75 });
  });

  it('runs through a flange whose thread goes through: as far as there is room behind', () => {
    const open = { driving: { holes: { depth: undefined, through: true }, behind: 10 } };
    // 11.4 + 16 of flange and 10 of room, half a millimetre kept.
    expect(screws('driving', at20, open).lengths.most).toBeCloseTo(11.4 + 16 + 9.5, 9);
    // Without a word about the room: flush.
    expect(screws('driving', at20, open, { driving: { behind: undefined } }).lengths.most).toBeCloseTo(27.4, 9);
  });

  it('runs through the flange and the mouth into the adapter: 9 + 0.75 + 12.5; through: to half a millimetre inside', () => {
    expect(screws('driven', at20).lengths).toMatchObject({ least: 22.25, most: 28.5 });
    expect(screws('driven', at20, { adapter: { driven: { washer: true } } }).lengths).toMatchObject({
      least: 24.25,
      most: 30.5,
    });
  });

  it('stops a pitch short in a blind thread, which is cut for the screw: M10 x 25 reaches 16', () => {
    const { lengths, length } = screws('driven', { adapter: { thickness: 40 } });
    expect(length).toBe(25);
    expect(lengths).toMatchObject({ least: 22.25, most: 25 });
  });

  it('cuts a blind thread as deep as the screw that is in the drawer asks for', () => {
    const { joint } = judge(noWheel, { adapter: { thickness: 60, driven: { length: 40 } } });
    const shape = joint.adapterSpec.groups.find(({ side }) => side === 'driven')?.shape;
    // 40 - 9 and a pitch of 1.5.
    expect(shape).toMatchObject({ kind: 'tapped', threadDepth: 32.5 });
    expect(joint.screws.find(({ side }) => side === 'driven')).toMatchObject({ length: 40, lengths: { most: 40 } });
  });
});

describe('tapped holes in the adapter', () => {
  const m10 = must(findThread('M10'));
  const need = { thread: m10, head: 'hex', engagement: 12.5, grip: 9, length: null } as const;

  it('chamfers the mouth to the major diameter: (10 - 8.5) / 2', () => expect(mouthOf(m10)).toBe(0.75));
  it('needs the mouth, the engagement and half a millimetre', () => expect(leastThreadRoom(need)).toBe(13.75));
  it('cuts full thread for the screw and a pitch', () => expect(threadWanted(need)).toBe(17.5));
  it('keeps 5 mm in hand while the flange is not measured', () =>
    expect(threadWanted({ ...need, grip: null })).toBe(0.75 + 12.5 + 5 + 1.5));

  it('is blind where the point of the drill leaves a floor of the least web (DIN 76-1 run-out 7.3; point 4.25 / tan 59)', () => {
    const tip = 17.5 + 7.3 + 4.25 / Math.tan((59 * Math.PI) / 180);
    expect(blindTip(need)).toBeCloseTo(tip, 9);
    expect(tappedDepth(need, tip + 3.01, 3)).toMatchObject({ threadDepth: 17.5, drillDepth: 24.8 });
    expect(tappedDepth(need, tip + 2.99, 3)).toEqual({ threadDepth: tip + 2.99, drillDepth: null });
  });
});

describe('standard lengths', () => {
  const sizes = ['M5', 'M6', 'M8', 'M10', 'M12', '5/16-24', '3/8-24'];

  it('takes the shortest that is made inside any span, and none where none is', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('socket', 'flat', 'button', 'hex'),
        fc.constantFrom(...sizes),
        fc.double({ min: 1, max: 120, noNaN: true }),
        fc.option(fc.double({ min: -10, max: 30, noNaN: true })),
        (head, size, least, width) => {
          const most = width === null ? null : least + width;
          const table = standardLengths(head, size);
          const fitting = table.ok
            ? table.value.lengths.filter((l) => l >= least - 1e-9 && (most === null || l <= most + 1e-9))
            : [];
          expect(standardLengthIn(head, size, { least, most })).toBe(fitting[0] ?? null);
        },
      ),
    );
  });
});
