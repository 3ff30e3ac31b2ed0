/** A joint that passes everything, invented, and ways of changing one thing about it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { type Finding, type Joint, judgeJob, parsePatterns, type Verdict } from '../../src/core.ts';

const folder = join(import.meta.dirname, '../../presets/flanges');
export const patterns = parsePatterns(
  Object.fromEntries(readdirSync(folder).map((file) => [file, readFileSync(join(folder, file), 'utf8')])),
);

/** Keys of a job, as typed; `undefined` deletes a key. */
export interface Patch {
  readonly [key: string]: unknown;
}

/**
 * The joint: six tapped M8 on 84 mm drive four clear 10.4 mm holes on 108 mm; a spigot of 62 mm and a recess of 60 H7; a wheel.
 * Every check of it passes but three: at 320 N.m the driving face grips 1.17 times, the wheel as cut runs out, and nobody knows which way
 * the flanges run out. Their run-outs are typed without a doubt, so that sums by hand stay short.
 */
export const soundJob: Patch = {
  job: 1,
  duty: { torque: '320 N.m', speed: '2600 rpm', grade: 'G40' },
  driving: {
    outside: 112,
    thickness: 16,
    register: { gender: 'male', diameter: { value: 62, doubt: 0.01 }, depth: 4, corner: 0.6 },
    holes: { count: 6, circle: 84, thread: 'M8', depth: 16 },
    runout: { rim: '0.02 +-0' },
    material: '1045',
  },
  driven: {
    outside: 128,
    thickness: 9,
    register: { gender: 'female', diameter: 60, depth: 3, fit: 'H7', corner: 0.5 },
    holes: { count: 4, circle: 108, diameter: 10.4 },
    runout: { rim: '0.02 +-0' },
    behind: 60,
  },
  adapter: { material: 'S355' },
  wheel: { teeth: 60, ratio: 0.4, outside: 178, height: 4.5, thickness: 3, root_radius: 0.8, clearance: 0.12 },
  sensor: { kind: 'differential_hall' },
  shaft: { mass: '9 kg' },
  sheet: { tolerance: 0.03 },
};

const isPatch = (value: unknown): value is Patch =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** One patch laid over a job, level by level. */
function laidOver(base: Patch, patch: Patch): Patch {
  const merged: Record<string, unknown> = { ...base };
  for (const [key, value] of Object.entries(patch)) {
    const old = merged[key];
    if (value === undefined) delete merged[key];
    else merged[key] = isPatch(value) && isPatch(old) ? laidOver(old, value) : value;
  }
  return merged;
}

/** A job with some keys changed, one patch after another. */
export const patched = (base: Patch, ...patches: readonly Patch[]): Patch => patches.reduce(laidOver, base);

/**
 * A joint with some of its data changed, level by level; lists are replaced, `undefined` deletes a key. For what no job makes: a limit met
 * exactly, a part that somebody drew by hand.
 */
export const bent = (joint: Joint, ...patches: readonly Patch[]): Joint =>
  patched(joint as unknown as Patch, ...patches) as unknown as Joint;

export interface Judged {
  readonly joint: Joint;
  readonly findings: readonly Finding[];
}

/** Judge the sound job with changes. Fails when the job has errors. */
export function judge(...patches: readonly Patch[]): Judged {
  const judged = judgeJob(JSON.stringify(patched(soundJob, ...patches)), 'test.job.yaml', patterns, { search: false });
  if (!judged.ok) throw new Error(judged.errors.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return judged;
}

/** Errors of the sound job with changes. */
export function errorsOf(...patches: readonly Patch[]): readonly { readonly path: string; readonly message: string }[] {
  const judged = judgeJob(JSON.stringify(patched(soundJob, ...patches)), 'test.job.yaml', patterns, { search: false });
  return judged.ok ? [] : judged.errors;
}

/** The one finding of a code (about a feature, where several speak with one code). */
export function findingOf({ findings }: Pick<Judged, 'findings'>, code: string, about = ''): Finding {
  const [name, side = ''] = code.split('@');
  const found = findings.filter(
    (f) => f.code === name && (f.feature.includes(side) || f.title.includes(side)) && f.title.includes(about),
  );
  const [only] = found;
  if (!only || found.length !== 1)
    throw new Error(`${found.length} findings ${code} "${about}" among ${findings.map((f) => f.code).join(', ')}`);
  return only;
}

/** What a check must say. `limit` null and `value` null: a plain statement. */
export interface Said {
  readonly verdict: Verdict;
  readonly value?: number | null;
  readonly limit?: number | null;
  /** Digits after the point to which a hand sum is good; 6 unless said otherwise. */
  readonly digits?: number;
}

/** Hold a finding against a hand sum; margin, remedy and units are held against the house's rules. */
export function expectSaid(finding: Finding, { verdict, value = null, limit = null, digits = 6 }: Said): void {
  expect(finding.verdict, `${finding.code}: ${finding.why}`).toBe(verdict);
  if (value === null) expect(finding.value).toBeNull();
  else expect(finding.value, `${finding.code} value`).toBeCloseTo(value, digits);
  if (limit === null) expect(finding.limit).toBeNull();
  else expect(finding.limit, `${finding.code} limit`).toBeCloseTo(limit, digits);
  expect(finding.why).not.toBe('');
  expect(finding.source).not.toBe('');
  if (verdict === 'pass') expect(finding.remedy).toBe('');
  else expect(finding.remedy).toMatch(/[A-Z].*\.$/s);
  if (finding.margin !== null && finding.value !== null && finding.limit !== null) {
    expect(Math.abs(finding.margin)).toBeCloseTo(Math.abs(finding.value - finding.limit), 5);
    if (verdict === 'pass') expect(finding.margin).toBeGreaterThanOrEqual(-1e-6);
    else expect(finding.margin).toBeLessThan(0);
  }
}

/** One change, what a check then says, and the cure that its remedy names. */
export interface Case extends Said {
  readonly what: string;
  readonly code: string;
  readonly about?: string;
  readonly patch: Patch;
  /** What the remedy must say. */
  readonly says?: string | RegExp;
  /** The remedy applied: the check must pass. */
  readonly cure?: Patch;
}

/** Run one case. */
export function prove({ code, about, patch, says, cure, ...said }: Case): void {
  const finding = findingOf(judge(patch), code, about);
  expectSaid(finding, said);
  if (says !== undefined) expect(finding.remedy).toMatch(says);
  if (cure !== undefined) expect(findingOf(judge(patch, cure), code, about).verdict, 'after the cure').toBe('pass');
}
