/** Beginning a job on the page: the known pattern that comes near, a sketch from the first size on, and what was done stays in sight on a telephone. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type Bench, blamedByAxe, fill, jobText, openBench, settled } from './browser.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 240_000);
afterAll(() => bench?.close());

/** A record of the list itself: what the page finds must be what stands there. */
const record = (
  parse(readFileSync(resolve(import.meta.dirname, '../../presets/flanges/din-type-a.yaml'), 'utf8')) as {
    id: string;
    outside: number;
    holes: { circle: number; count: number };
    register: { diameter: number };
  }[]
).find(({ id }) => id === 'DIN100-companion');

describe('which known pattern is it', () => {
  it.each([1400, 380])('is found by what the sheet says, and started from, at %i px', async (width) => {
    const { page, complaints } = await bench.open({ width, height: 900 });
    await fill(page, 'driving.holes.circle', String(record?.holes.circle));
    await fill(page, 'driving.holes.count', String(record?.holes.count));
    await fill(page, 'driving.outside', String(record?.outside));
    await fill(page, 'driving.register.diameter', String(record?.register.diameter));
    await settled(page);
    await page.getByRole('button', { name: 'which pattern is it? driving flange' }).click();
    const first = page.locator('.pattern').first();
    await expect.poll(() => first.locator('strong').first().textContent()).toMatch(/^DIN100-/);
    expect(await page.locator('[data-panel="patterns"] [role="status"]').textContent()).toBe('Nearest first.');
    expect(await blamedByAxe(page, '[data-panel="patterns"]')).toEqual([]);
    const id = (await first.locator('strong').first().textContent()) ?? '';
    await page.getByRole('button', { name: `start from it: ${id}`, exact: true }).click();
    await expect.poll(() => page.locator('.notice').textContent()).toContain(`starts from ${id} now`);
    const notice = await page.locator('.notice').boundingBox();
    if (width < 720) {
      expect(notice && notice.y >= 0 && notice.y + notice.height <= 900).toBe(true);
      await page.getByRole('button', { name: 'seen', exact: true }).click();
      expect(await page.locator('.notice').textContent()).not.toContain('starts from');
    }
    await settled(page);
    expect(await jobText(page)).toContain(`from: ${id}`);
    expect(complaints).toEqual([]);
  });

  it('says when none of them is it, and which field it cannot read', async () => {
    const { page } = await bench.open();
    const panel = page.locator('[data-panel="patterns"]');
    await panel.locator('summary').first().click();
    const field = panel.getByLabel('bolt circle');
    await field.fill('301');
    await expect
      .poll(() => panel.locator('[role="status"]').textContent(), { timeout: 20_000 })
      .toContain('None of them is your flange');
    await field.fill('84,02');
    await expect
      .poll(() => panel.locator('[role="status"]').textContent(), { timeout: 20_000 })
      .toContain('bolt circle: "84,02"');
  });
});

describe('a job that is not whole', () => {
  it('shows its flanges from the first size on, until there is a joint', async () => {
    const { page, complaints } = await bench.open();
    await page.getByRole('button', { name: 'new job', exact: true }).click();
    await settled(page);
    expect(await page.locator('.pictures svg').count()).toBe(0);
    await fill(page, 'driven.outside', '110');
    await settled(page);
    const sketch = page.locator('#picture-driven-so-far svg');
    await sketch.waitFor();
    expect(await page.locator('#picture-driving-so-far').count()).toBe(0);
    expect(await sketch.textContent()).toContain('110.00');
    await fill(page, 'driven.holes.count', '8');
    await fill(page, 'driven.holes.circle', '95');
    await settled(page);
    await expect.poll(() => sketch.textContent()).toContain('8 holes');
    expect(await blamedByAxe(page, '.pictures')).toEqual([]);
    // The example is a whole joint: its own pictures take the sketch's place.
    await page.getByLabel('start from').selectOption('kart');
    await settled(page);
    await page.locator('#picture-section svg').waitFor();
    expect(await page.locator('#picture-driven-so-far').count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

describe('what nobody measured', () => {
  it('stands under the verdict, each value with its reason and the way to its field', async () => {
    const { page } = await bench.open();
    await settled(page);
    const list = page.locator('.assumed');
    await list.locator('summary').click();
    // The example names no material for its driven flange.
    const material = list.locator('li', { hasText: 'driven.material' });
    expect(await material.textContent()).toMatch(/S355: default: .*give the real one if you know it/);
    expect(await blamedByAxe(page, '.assumed')).toEqual([]);
    await material.getByRole('button').first().click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('driven.material');
  });
});
