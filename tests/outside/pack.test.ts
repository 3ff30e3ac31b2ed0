/** Order packs opened by Python's zipfile: every member sound, named once in the manifest, with the hash that hashlib finds. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { type Finding, makeFiles, revisionOf } from '../../src/core.ts';
import { screwsToBuy } from '../../src/report/screw-list.ts';
import { shipped, shippedJob } from '../presets/shipped.ts';

vi.setConfig({ testTimeout: 120_000 });

const folder = mkdtempSync(join(tmpdir(), 'pack-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const script = fileURLToPath(new URL('./read_zip.py', import.meta.url));

interface Member {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly time: readonly number[];
  readonly text: string;
}

function opened(name: string, bytes: Uint8Array): Member[] {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  const run = spawnSync('/usr/bin/python3', [script, path], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (run.status !== 0) throw new Error(run.stderr || String(run.error));
  const answer = JSON.parse(run.stdout) as { broken: string | null; members: Member[] };
  expect(answer.broken).toBeNull();
  return answer.members;
}

const packsOf = (base: string, only: readonly string[] = ['pack'], force = true) => {
  const { joint, findings, file } = shippedJob(base);
  return makeFiles(joint, findings, { base, jobName: file, only, force });
};

describe.each(shipped.map(({ base }) => base))('%s', (base) => {
  it('has packs whose manifests tell the truth', async () => {
    const { joint } = shippedJob(base);
    const revision = revisionOf(joint);
    const { files } = await packsOf(base);
    const ids = files.map(({ name }) => name.replace(`${base}-pack-`, '').replace('.zip', ''));
    expect(ids).toContain('machine-shop');
    expect(ids).toContain('screws');
    expect(ids.includes('cutting')).toBe(joint.wheelSpec !== null || joint.bracket !== undefined);
    for (const { name, bytes } of files) {
      const [manifest, ...members] = opened(name, bytes);
      expect(manifest?.name).toBe('manifest.json');
      const told = JSON.parse(manifest?.text ?? '');
      expect(told.revision).toBe(revision);
      expect(told.files.map(({ name: n, bytes: b, sha256 }: Member) => [n, b, sha256])).toEqual(
        members.map(({ name: n, bytes: b, sha256 }) => [n, b, sha256]),
      );
      expect(members.length).toBeGreaterThan(0);
      for (const { name: n, text, time } of members) {
        expect(n).toMatch(/^[\w.-]+$/);
        expect(time).toEqual([1980, 1, 1, 0, 0, 0]);
        // What is made for this part carries the revision inside; a PDF's text is packed, and read where the drawing is tested. The
        // bracket's blank and the shaft's sheet go by the manifest.
        const isTold = /-(adapter|wheel|screws)[-.]|-order\.txt$|-inspection\.html$/.test(n) && !/\.(pdf|csv)$/.test(n);
        if (isTold && !n.includes('-shaft-')) expect(text, n).toContain(revision);
      }
    }
  });
});

it("gives each supplier what he needs, and not what is another one's", async () => {
  const { files } = await packsOf('test-stand');
  const namesIn = (id: string) => {
    const pack = files.find(({ name }) => name.endsWith(`-pack-${id}.zip`));
    return opened(`${id}.zip`, pack?.bytes ?? new Uint8Array()).map(({ name }) => name);
  };
  const cutting = namesIn('cutting');
  expect(cutting.some((name) => name.endsWith('.dxf'))).toBe(true);
  expect(cutting.some((name) => name.endsWith('-order.txt'))).toBe(true);
  expect(cutting.some((name) => name.endsWith('.step'))).toBe(false);
  const shop = namesIn('machine-shop');
  for (const ending of ['-adapter.step', '-adapter-drawing.pdf', '-adapter-order.txt', '-inspection.html'])
    expect(
      shop.some((name) => name.endsWith(ending)),
      ending,
    ).toBe(true);
  expect(shop.some((name) => name.endsWith('.dxf') || name.endsWith('.ngc'))).toBe(false);
});

it('lists every screw to buy in the table, as often as it is needed', async () => {
  const { joint } = shippedJob('river-launch');
  const { files } = await packsOf('river-launch');
  const pack = files.find(({ name }) => name.endsWith('-pack-screws.zip'));
  const csv =
    opened('screws.zip', pack?.bytes ?? new Uint8Array()).find(({ name }) => name.endsWith('.csv'))?.text ?? '';
  for (const { count, what } of screwsToBuy(joint)) expect(csv).toContain(`${count},${count},"${what}"`);
});

it('is held while a check fails, with set-up sheets and programs, and says so inside when forced', async () => {
  const { joint, findings, file } = shippedJob('test-stand');
  const failing: Finding[] = findings.map((finding, i) => (i === 0 ? { ...finding, verdict: 'fail' } : finding));
  const only = ['pack', 'setup', 'program'];
  const held = await makeFiles(joint, failing, { base: 'x', jobName: file, only, force: false });
  expect(held.files).toEqual([]);
  expect(held.held.map(({ kind }) => kind).sort()).toEqual(['pack', 'program', 'setup']);
  const forced = await makeFiles(joint, failing, {
    base: 'x',
    jobName: file,
    only: ['setup', 'program', 'pack'],
    force: true,
  });
  for (const { name, bytes } of forced.files) {
    const texts = name.endsWith('.zip')
      ? opened(name, bytes)
          .filter((m) => m.name.endsWith('.txt'))
          .map((m) => m.text)
      : [new TextDecoder().decode(bytes)];
    for (const text of texts) expect(text, name).toContain('CHECKS FAILED - FORCED');
  }
  expect(forced.held).toEqual([]);
});
