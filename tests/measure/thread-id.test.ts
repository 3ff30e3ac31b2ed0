/** Threads found again from their own sizes, and twins against pitch arithmetic. */
import { describe, expect, it } from 'vitest';
import { identifyThread, type ThreadReading, threadTwins, twinOf } from '../../src/measure/thread-id.ts';
import { must } from '../../src/standards/table.ts';
import { allThreads, findThread } from '../../src/standards/threads.ts';

const thread = (name: string) => must(findThread(name));
const best = (reading: Partial<ThreadReading> & { diameter: number }) =>
  must(identifyThread({ doubt: 0.03, of: 'screw', ...reading }))[0];

describe('a thread from its readings', () => {
  it.each(allThreads().map((row) => row.designation))(
    'finds %s by a screw a little under size, and by its tapped hole',
    (name) => {
      const row = thread(name);
      const screw = best({ diameter: row.d - 0.1, pitch: row.pitch, pitchDoubt: 0.02 });
      expect(screw).toMatchObject({ thread: { designation: row.designation }, fits: true });
      const hole = best({ diameter: row.D1 + 0.08, pitch: row.pitch, pitchDoubt: 0.02, of: 'hole' });
      expect(hole).toMatchObject({ thread: { designation: row.designation }, fits: true });
    },
  );

  it('says that several fit when the pitch is not known', () => {
    const fits = must(identifyThread({ diameter: 7.85, doubt: 0.03, of: 'screw' }, 10)).filter((one) => one.fits);
    expect(fits.map((one) => one.thread.designation)).toEqual(
      expect.arrayContaining(['M8', 'M8x1', '5/16-18 UNC', '5/16-24 UNF']),
    );
  });

  it('does not force a fit', () => {
    expect(best({ diameter: 8.9, pitch: 1.4 })?.fits).toBe(false);
  });

  it('asks about a pitch that is no pitch', () => {
    const ten = identifyThread({ diameter: 8, doubt: 0.03, of: 'screw', pitch: 12.5 });
    expect(ten.ok ? '' : ten.why).toMatch(/length of ten pitches, or threads per inch/);
    expect(identifyThread({ diameter: -1, doubt: 0.03, of: 'screw' }).ok).toBe(false);
  });
});

describe('twins', () => {
  // Ten pitches by arithmetic: metric 10 P; inch 254 / n.
  it.each([
    ['M8', '5/16-18', 254 / 18 - 12.5, 7.9375 - 8],
    ['M10', '3/8-16', 254 / 16 - 15, 9.525 - 10],
    ['M12', '1/2-13', 254 / 13 - 17.5, 12.7 - 12],
    ['M6', '1/4-20', 254 / 20 - 10, 6.35 - 6],
    ['M8', 'M8x1', -2.5, 0],
  ])('%s and %s', (a, b, overTen, diameter) => {
    const twin = twinOf(thread(a), thread(b));
    expect(twin.overTen).toBeCloseTo(overTen, 9);
    // The tables hold inch diameters to the micrometre.
    expect(twin.diameter).toBeCloseTo(diameter, 2);
    expect(Math.abs(twin.diameter - diameter)).toBeLessThanOrEqual(0.00051);
  });

  it('are listed for the ones that a shop mixes up', () => {
    const names = (name: string) => threadTwins(thread(name)).map(({ b }) => b.designation);
    expect(names('M8')).toContain('5/16-18 UNC');
    expect(names('M10')).toContain('3/8-16 UNC');
    expect(names('M12')).toContain('1/2-13 UNC');
    expect(names('3/8-16')).toContain('M10');
    expect(names('M24')).toEqual([]);
  });

  it('say how far apart they are', () => {
    const [twin] = threadTwins(thread('M8'));
    expect(twin?.sentence).toBe(
      '5/16-18 UNC is not M8: ten pitches are 14.11 against 12.5 mm, 1.61 mm longer; its diameter is 0.062 mm smaller.',
    );
  });
});
