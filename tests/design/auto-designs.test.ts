/** What is left on auto comes out sound, and no number that can be typed makes the design throw. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import { standardLengths } from '../../src/standards/screw-lengths.ts';
import { type Patch, patched, patterns } from '../validate/help.ts';
import { randomJoint } from './random-joint.ts';

const judged = (job: Patch) => judgeJob(JSON.stringify(job), 'random.job.yaml', patterns, { search: false });

/** What an adapter left on auto must never fail. Screws are judged apart: a flange's own thread may be too short for any. */
const never = [
  'web-between-holes',
  'wall-to-bore',
  'wall-to-rim',
  'wall-to-flats',
  'wall-bore-to-outside',
  'web-between-recesses',
  'clocking',
  'thickness',
  'web-under-head',
  'head-below-face',
  'head-in-pocket',
  'heads-clear-flange',
  'heads-clear-wheel',
  'wheel-heads-clear-flange',
  'register-gender',
  'register-goes-together',
  'faces-seat-first',
  'register-corner',
  'wheel-clears-flange',
];

describe('designs left on auto', () => {
  it('never fail a web, wall, head or register', () => {
    fc.assert(
      fc.property(randomJoint, (job) => {
        const made = judged(job);
        if (!made.ok) throw new Error(made.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
        const failing = made.findings.filter(({ code, verdict }) => never.includes(code) && verdict === 'fail');
        expect(failing.map(({ code, why }) => `${code}: ${why}`)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('take a standard screw that neither bottoms nor pokes out, wherever one is made', () => {
    fc.assert(
      fc.property(randomJoint, (job) => {
        const made = judged(job);
        if (!made.ok) return;
        for (const { id, head, thread, length, lengths } of made.joint.screws) {
          if (lengths.least === 0) continue;
          const list = standardLengths(head.kind, thread);
          const fitting = (list.ok ? list.value.lengths : []).filter(
            (l) => l >= lengths.least - 1e-9 && (lengths.most === null || l <= lengths.most + 1e-9),
          );
          // The shortest that fits, or nothing where nothing does.
          expect(length, `${id} ${JSON.stringify(lengths)}`).toBe(fitting[0] ?? null);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('thread their screws as deep as the material asks for wherever the adapter holds the thread', () => {
    fc.assert(
      fc.property(randomJoint, (job) => {
        const made = judged(job);
        if (!made.ok) return;
        for (const { fastening, engagement, length } of made.joint.screws) {
          if (fastening === 'into_adapter' && length !== null)
            expect(engagement.has ?? 0).toBeGreaterThanOrEqual(engagement.needs - 1e-9);
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('sizes that are typed', () => {
  const size = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined });
  const typed = fc.record({
    thickness: size(3, 60),
    outside: size(20, 300),
    bore: size(1, 200),
    flats: size(10, 300),
    chamfer: size(0, 10),
    web: size(0.2, 20),
    clocking: size(-360, 360),
  });
  const side = fc.record({
    length: size(3, 100),
    head: fc.constantFrom(undefined, 'auto', 'socket', 'flat', 'button', 'hex'),
    seat: fc.constantFrom(undefined, 'auto', 'sunk', 'surface'),
    fastening: fc.constantFrom(undefined, 'auto', 'through'),
    register: fc.option(fc.record({ depth: size(0.2, 30), diameter: size(5, 200) }), { nil: undefined }),
  });

  it('give errors with a path and a sentence, or a joint with finite numbers: never a crash', () => {
    fc.assert(
      fc.property(randomJoint, typed, side, side, fc.boolean(), (job, adapter, driving, driven, tidy) => {
        const sizes = tidy ? Object.fromEntries(Object.entries(adapter).slice(0, 1)) : adapter;
        const made = judged(patched(job, { adapter: { ...sizes, driving, driven } }));
        if (!made.ok) {
          for (const { path, message } of made.errors) {
            expect(path).not.toBe('');
            expect(message).toMatch(/[.?)]$/);
            expect(message).not.toMatch(/NaN|undefined|Infinity/);
          }
          return;
        }
        for (const finding of made.findings) {
          for (const number of [finding.value, finding.limit, finding.margin])
            expect(number === null || Number.isFinite(number), finding.code).toBe(true);
          expect(`${finding.title} ${finding.why} ${finding.remedy}`, finding.code).not.toMatch(
            /NaN|undefined|Infinity/,
          );
        }
      }),
      { numRuns: 400 },
    );
  });
});
