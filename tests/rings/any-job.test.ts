/** Rings, discs and paper of any sound job: closed meshes, finite pages, files as they were announced. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { judgeJob, makeFiles, products } from '../../src/core.ts';
import { anyJob } from '../core/any-job.ts';

/** Edges of a binary STL without exactly one partner that runs the other way. */
function openEdges(stl: Uint8Array): number {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const edges = new Map<string, number>();
  for (let t = 0; t < view.getUint32(80, true); t++) {
    const corners = [0, 1, 2].map((k) =>
      [0, 4, 8].map((c) => view.getFloat32(84 + 50 * t + 12 + 12 * k + c, true) + 0).join(),
    );
    for (const [k, a] of corners.entries()) {
      const b = corners[(k + 1) % 3] as string;
      edges.set(`${a}|${b}`, (edges.get(`${a}|${b}`) ?? 0) + 1);
      edges.set(`${b}|${a}`, (edges.get(`${b}|${a}`) ?? 0) - 1);
    }
  }
  return [...edges.values()].filter((sum) => sum !== 0).length;
}

it('makes closed meshes and whole pages', async () => {
  let made = 0;
  await fc.assert(
    fc.asyncProperty(anyJob, async (text) => {
      const judged = judgeJob(text, 'any.job.yaml', { flanges: [], nearMisses: [] }, { search: false });
      if (!judged.ok) return;
      const { joint, findings } = judged;
      const only = ['rings', 'paper'];
      const { files } = await makeFiles(joint, findings, { base: 'any', jobName: 'any.job.yaml', only, force: false });
      const announced = products.filter(({ kind }) => only.includes(kind));
      expect(files.map(({ name }) => name)).toEqual(announced.flatMap(({ names }) => names({ joint, base: 'any' })));
      for (const { name, bytes } of files) {
        if (name.endsWith('.stl')) expect(openEdges(bytes), name).toBe(0);
        else expect(Buffer.from(bytes).toString('latin1')).not.toMatch(/NaN|Infinity/);
      }
      made++;
    }),
    { numRuns: 5 },
  );
  expect(made).toBeGreaterThan(2);
});
