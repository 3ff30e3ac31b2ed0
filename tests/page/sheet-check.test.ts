/** A drawing of one's own on the page: chosen, dropped, refused in words, its faults marked; edits go on meanwhile. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { circle, dxf, line, plate, polyline } from '../preflight/dxf-script.ts';
import { type Bench, blamedByAxe, openBench } from './browser.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 180_000);
afterAll(() => bench?.close());

const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

async function opened() {
  const { page, complaints, requests } = await bench.open();
  await page.locator('.sheet-check > summary').click();
  const choose = (path: string) => page.locator('.sheet-check input[type=file]').setInputFiles(path);
  const said = page.locator('.sheet-check [role=status]');
  return { page, complaints, requests, choose, said };
}

it('names what is wrong, marks it in the picture, and passes the mended file', async () => {
  const { page, complaints, requests, choose, said } = await opened();
  await page.locator('.sheet-check').getByLabel('thickness, mm').fill('3');
  await page.locator('.sheet-check').getByLabel('thickness, mm').press('Tab');
  await choose(fileOf('broken.dxf', dxf({ entities: [...plate, line(30, 30, 40, 35)] })));
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('Do not send this file.');
  expect(await said.textContent()).toContain('open contours');
  // The stray line is marked where it begins, with a ring and a numbered disc.
  expect(await said.locator('svg circle[data-feature="dxf-open-contour"]').count()).toBe(2);
  expect(await said.locator('b.mark').first().textContent()).toBe('1');
  await choose(fileOf('sound.dxf', dxf({ entities: plate })));
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('Ready to send.');
  expect(await said.locator('b.mark').count()).toBe(0);
  // By hand: the narrowest web is 20 - 5 from the left edge.
  await said.locator('details > summary').click();
  expect(await said.textContent()).toContain('narrowest web between two cuts: 15 mm, limit 3 mm');
  expect(await blamedByAxe(page, '.sheet-check')).toEqual([]);
  expect(complaints).toEqual([]);
  expect(requests.filter((url) => !url.startsWith(bench.address) && !url.startsWith('blob:'))).toEqual([]);
}, 120_000);

it('takes a file that is dropped, with a neck too thin for the sheet', async () => {
  const { page, said } = await opened();
  await page.locator('.sheet-check').getByLabel('thickness, mm').fill('3 mm');
  await page.locator('.sheet-check').getByLabel('thickness, mm').press('Tab');
  const neck = dxf({
    entities: [
      polyline([
        [0, 0],
        [30, 0],
        [30, 9],
        [50, 9],
        [50, 0],
        [80, 0],
        [80, 30],
        [50, 30],
        [50, 11],
        [30, 11],
        [30, 30],
        [0, 30],
      ]),
      circle(15, 15, 4),
    ],
  });
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'neck.dxf'));
    return transfer;
  }, neck);
  await page.dispatchEvent('.sheet-check .drop', 'drop', { dataTransfer: data });
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('neck.dxf: fail');
  expect(await said.textContent()).toContain('narrowest neck of metal within one contour: 2 mm, limit 3 mm');
  // Thinner sheet is looked at anew by itself.
  await page.locator('.sheet-check').getByLabel('thickness, mm').fill('2');
  await page.locator('.sheet-check').getByLabel('thickness, mm').press('Tab');
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).not.toContain('fail');
}, 120_000);

it('refuses in words what is no drawing, too large, or typed wrongly', async () => {
  const { page, choose, said, complaints } = await opened();
  await choose(fileOf('letter.dxf', 'Dear shop'));
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('It could not be read.');
  await choose(fileOf('huge.dxf', '0'.repeat(33 * 1024 * 1024)));
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('at most 32 MB');
  await choose(fileOf('sound.dxf', dxf({ entities: plate })));
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toContain('sound.dxf');
  await page.locator('.sheet-check').getByLabel('material').fill('cheese');
  await page.locator('.sheet-check').getByLabel('material').press('Tab');
  await expect.poll(() => said.textContent(), { timeout: 20_000 }).toMatch(/cheese/);
  expect(complaints).toEqual([]);
}, 120_000);
