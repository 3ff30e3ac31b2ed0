/** Random pairs of used flanges as a caliper finds them: readings only, no size of the adapter. Invented; lengths in mm. */
import fc from 'fast-check';
import type { Patch } from '../validate/help.ts';

/** Ordinary flanges carry screws of these sizes on circles of at least so many diameters of screw. Common practice. */
const screws = [
  { thread: 'M8', clear: 8.4, least: 8.5 },
  { thread: 'M8', clear: 9, least: 8.5 },
  { thread: 'M10', clear: 10.1, least: 8.5 },
  { thread: 'M10', clear: 11, least: 8.5 },
  { thread: 'M12', clear: 13.5, least: 8.5 },
] as const;
const majors = { M8: 8, M10: 10, M12: 12 } as const;

const tenths = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 10), max: Math.round(max * 10) }).map((n) => n / 10);

/** Three caliper readings of one size, some hundredths apart. */
const readings = (size: number, noise: readonly number[]) => noise.map((n) => Number((size + n / 100).toFixed(2)));
const noise = fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 3, maxLength: 3 });

/** One flange: the rim a screw and a half outside the circle, the register inside it by at least as much. */
export const usedFlange = fc
  .record({
    screw: fc.constantFrom(...screws),
    isTapped: fc.boolean(),
    count: fc.constantFrom(4, 6, 8),
    over: tenths(0, 45),
    gender: fc.constantFrom('male', 'female'),
    depth: tenths(2, 4),
    wall: tenths(0, 8),
    corner: fc.constantFrom(0.3, 0.5, 0.8),
    thickness: tenths(8, 14),
    noise: fc.tuple(noise, noise),
    first: fc.constantFrom(0, 22.5, 30, 45),
  })
  .map((f): Patch => {
    const { thread, clear, least } = f.screw;
    const d = majors[thread];
    const circle = Number((least * d + f.over).toFixed(1));
    // An M-screw's usual head is 1.6 to 1.8 d wide: the register stays inside it.
    const register = Number((circle - 2 * (1.25 * d + f.wall)).toFixed(1));
    return {
      outside: Number((circle + 3 * d).toFixed(1)),
      thickness: f.isTapped ? 2 * d + 2 : f.thickness,
      register: {
        gender: f.gender,
        diameter: readings(register, f.noise[0]),
        depth: f.depth,
        corner: f.corner,
      },
      holes: {
        count: f.count,
        circle: readings(circle, f.noise[1]),
        first: `${f.first} deg`,
        ...(f.isTapped ? { thread, depth: 2 * d } : { diameter: clear }),
      },
      runout: { rim: 0.02 },
      behind: 60,
    };
  });

/** Two of them, and nothing else. */
export const usedPair = fc
  .record({ driving: usedFlange, driven: usedFlange })
  .map(({ driving, driven }): Patch => ({ job: 1, driving, driven }));
