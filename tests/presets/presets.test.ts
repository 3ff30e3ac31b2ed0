/** Every shipped job: judged as worked out beforehand, and made. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { jobJsonSchema, overallVerdict, type Verdict } from '../../src/core.ts';
import { run } from '../cli/terminal.ts';
import { type Expected, expected } from './expected.ts';
import { makeAll, presetFolder, shipped, shippedJob } from './shipped.ts';

describe('the folder', () => {
  it('holds the jobs that are known here, and no others', () => {
    expect(shipped.map((job) => job.base)).toEqual(Object.keys(expected).sort());
  });

  it('holds the JSON Schema as the program states it', () => {
    const text = readFileSync(new URL('flangewright.schema.json', presetFolder), 'utf8');
    expect(text).toBe(`${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
  });

  it.each(shipped.map((job) => [job.file, job] as const))(
    '%s points editors at the schema and says it is invented',
    (_, job) => {
      const [first, second] = job.text.split('\n');
      expect(first).toBe('# yaml-language-server: $schema=./flangewright.schema.json');
      expect(second).toMatch(/^# Invented example/);
    },
  );
});

/** Key paths of everything that is a number and not a finite one. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}

describe.each(shipped.map((job) => [job.base, job] as const))('%s', (base, job) => {
  const known = expected[base] as Expected;
  const codes = (verdict: Verdict) =>
    [...new Set(job.findings.filter((finding) => finding.verdict === verdict).map((finding) => finding.code))].sort();

  it('is judged as worked out beforehand', () => {
    expect(codes('fail')).toEqual(known.fail);
    expect(codes('caution')).toEqual(known.caution);
    expect(codes('not assessed')).toEqual([...(known.notAssessed ?? []), 'joint-strength'].sort());
    expect(overallVerdict(job.findings)).toBe(known.verdict);
  });

  it('holds only finite numbers, and no finding twice', () => {
    expect(notFinite(job.joint)).toEqual([]);
    expect(notFinite(job.findings)).toEqual([]);
    const names = job.findings.map(({ code, feature, title }) => `${code} | ${feature} | ${title}`);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });

  it('says what to do about everything that does not pass', () => {
    for (const finding of job.findings) {
      if (finding.verdict !== 'pass') expect(finding.remedy, finding.code).not.toBe('');
      expect(finding.why, finding.code).not.toMatch(/undefined|NaN|null/);
    }
  });

  it('makes the same bytes twice, and holds the outline back when a check fails', async () => {
    const [first, second] = [await makeAll(job), await makeAll(job)];
    expect(second.files.map(({ name }) => name)).toEqual(first.files.map(({ name }) => name));
    for (const [index, { name, bytes }] of first.files.entries()) {
      expect(bytes.length, name).toBeGreaterThan(100);
      expect(Buffer.compare(bytes, second.files[index]?.bytes ?? new Uint8Array()), name).toBe(0);
    }
    const outlines = first.files.filter(({ kind }) => kind === 'outline').length;
    const asked = job.joint.wheel ? job.joint.job.sheet.flavour.length : 0;
    expect(outlines).toBe(known.verdict === 'fail' ? 0 : asked);
    expect(first.held.map(({ kind }) => kind)).toEqual(
      known.verdict === 'fail' && asked > 0 ? ['outline', 'order'] : [],
    );
    expect(first.files.filter(({ kind }) => kind === 'report')).toHaveLength(3);
  });
});

it.each(shipped.map(({ base }) => base))('%s: check ends with 1 when a check fails, else with 0', async (base) => {
  const { code, out } = await run(fileURLToPath(presetFolder), ['check', `${base}.job.yaml`]);
  expect(code).toBe((expected[base] as Expected).verdict === 'fail' ? 1 : 0);
  expect(out).toContain(shippedJob(base).joint.job.title);
});

it('a failing job that is forced says so inside every outline', async () => {
  const { files, held } = await makeAll(shippedJob('near-miss'), true);
  const outlines = files.filter(({ kind }) => kind === 'outline');
  expect(held).toEqual([]);
  expect(outlines).toHaveLength(1);
  for (const { bytes } of outlines) expect(new TextDecoder().decode(bytes)).toMatch(/^999\nCHECKS FAILED - FORCED\n/);
});
