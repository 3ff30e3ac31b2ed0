/** The page in the words of the bench: from a cure to its field, from the sheet to the measuring, what is missing, what comes back. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, blamedByAxe, fill, jobText, openBench, settled } from './browser.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 240_000);
afterAll(() => bench?.close());

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('name'));
const isSeen = (page: Page, key: string) =>
  page.locator(`[name="${key}"]`).evaluate((field) => {
    const { top, bottom } = field.getBoundingClientRect();
    return top >= 0 && bottom <= innerHeight && field.getClientRects().length > 0;
  });

async function example(page: Page, name: string): Promise<void> {
  await page.getByLabel('start from').selectOption(name);
  await settled(page);
  await page.waitForSelector('.banner');
}

describe('from a cure to its field', () => {
  it.each([1400, 380])('opens what hides it, scrolls and focuses, at %i px', async (width) => {
    const { page, complaints } = await bench.open({ width, height: 900 });
    await example(page, 'near-miss');
    // Hidden three ways: the sheet is not shown, its section is shut, the line is one of "more lines".
    await page.locator('#sheet-sensor > summary').click();
    await button(page, 'text').click();
    const finding = page
      .locator('.finding')
      .filter({ has: page.locator('button.key', { hasText: 'sensor.travel' }) })
      .first();
    await finding.evaluate((element: HTMLDetailsElement) => {
      for (let at: HTMLElement | null = element; at; at = at.parentElement)
        if (at instanceof HTMLDetailsElement) at.open = true;
    });
    await finding
      .getByRole('button', { name: /^sensor\.travel: go to Sensor, travel/ })
      .first()
      .click();
    await expect.poll(() => focused(page)).toBe('sensor.travel');
    expect(await isSeen(page, 'sensor.travel')).toBe(true);
    expect(await button(page, 'sheet').getAttribute('aria-pressed')).toBe('true');
    expect(complaints).toEqual([]);
  });

  it('sets what the remedy gives as one step, and looks like words', async () => {
    const { page } = await bench.open();
    await example(page, 'near-miss');
    const before = await jobText(page);
    expect(before).not.toMatch(/^ {2}fit: H8/m);
    const finding = page.locator('.finding', { hasText: 'run-out of the teeth' }).first();
    await finding.locator('summary').click();
    expect(await blamedByAxe(page, '.result')).toEqual([]);
    await finding.getByRole('button', { name: 'set it: wheel.fit to H8' }).click();
    await expect.poll(() => page.locator('[name="wheel.fit"]').inputValue()).toBe('H8');
    expect(await page.locator('.notice').textContent()).toContain('Toothed wheel, fit is H8 now.');
    await settled(page);
    expect(await jobText(page)).toMatch(/fit: H8/);
    await button(page, 'undo').click();
    expect(await jobText(page)).toBe(before);
  });
});

describe('measuring, from the sheet', () => {
  it('opens the right panel for this flange, as its job says', async () => {
    const { page } = await bench.open();
    await example(page, 'kart');
    const panel = (of: string) => page.locator(`details[data-panel="${of}"]`);
    const go = async (words: string, of: string) => {
      await button(page, `measure it by picture: ${words}`).click();
      await expect.poll(() => panel(of).evaluate((element) => element.contains(document.activeElement))).toBe(true);
      expect(await panel(of).evaluate((element) => element.getBoundingClientRect().top < innerHeight)).toBe(true);
    };
    const read = async (side: string, key: string) => page.locator(`[name="${side}.${key}"]`).inputValue();
    for (const side of ['driving', 'driven']) {
      await go(`register of the ${side} flange`, 'register');
      expect(await panel('register').locator('select').first().inputValue()).toBe(side);
      const gender = await read(side, 'register.gender');
      expect(await panel('register').getByLabel('it is a').inputValue()).toBe(gender === 'male' ? 'spigot' : 'bore');
      await go(`holes of the ${side} flange`, 'circle');
      expect(await panel('circle').locator('select').first().inputValue()).toBe(side);
      expect(await panel('circle').getByLabel('how many holes').inputValue()).toBe(await read(side, 'holes.count'));
      await go(`run-out of the ${side} flange`, 'runout');
      expect(await panel('runout').locator('select').first().inputValue()).toBe(side);
    }
    // What was read of one flange does not stand there as if it were read of the other, and is there again.
    await panel('circle')
      .getByLabel(/far edges/)
      .fill('92.05');
    await go('holes of the driving flange', 'circle');
    expect(
      await panel('circle')
        .getByLabel(/far edges/)
        .inputValue(),
    ).toBe('');
    await go('holes of the driven flange', 'circle');
    expect(
      await panel('circle')
        .getByLabel(/far edges/)
        .inputValue(),
    ).toBe('92.05');
    expect(await page.locator('#sheet-adapter .by-picture').count()).toBe(0);
  });
});

describe('a new job', () => {
  it('lists quietly what is missing; what is typed wrong is an error', async () => {
    const { page } = await bench.open();
    await button(page, 'new job').click();
    await settled(page);
    const open = page.locator('[aria-label="Still to fill in"]');
    await open.getByRole('button', { name: /^Driving flange, outside/ }).waitFor();
    expect(await page.locator('.job [role="alert"], .field.wrong').count()).toBe(0);
    expect(await page.locator('[name="driving.outside"]').getAttribute('aria-invalid')).toBe('false');
    expect(await open.textContent()).not.toContain('{');
    expect(await blamedByAxe(page)).toEqual([]);
    await open.getByRole('button', { name: /^Driven flange, holes/ }).click();
    await expect.poll(() => focused(page)).toBe('driven.holes.count');
    await fill(page, 'driving.outside', '112,4');
    await page.locator('.job [role="alert"]').waitFor();
    expect(await page.locator('[name="driving.outside"]').getAttribute('aria-invalid')).toBe('true');
    await fill(page, 'driving.outside', '112');
    expect(await page.locator('.job [role="alert"]').count()).toBe(0);
    expect(await open.textContent()).not.toContain('Driving flange, outside');
  });

  it('can be taken back after a reload, and begun again', async () => {
    const { page, context } = await bench.open();
    await fill(page, 'driving.outside', '113');
    const mine = await jobText(page);
    await button(page, 'new job').click();
    await settled(page);
    const empty = await jobText(page);
    await page.reload();
    await settled(page);
    expect(await jobText(page)).toBe(empty);
    await button(page, 'undo').click();
    await page.waitForSelector('#picture-section svg');
    expect(await jobText(page)).toBe(mine);
    expect(await page.getByLabel('called', { exact: true }).inputValue()).toBe('orchard-truck');
    await page.reload();
    await page.waitForSelector('#picture-section svg');
    await button(page, 'redo').click();
    expect(await jobText(page)).toBe(empty);
    // Broken or foreign steps are none; the job stays.
    await page.evaluate(() => {
      for (const store of [sessionStorage, localStorage])
        store.setItem('flangewright.steps', '{"mark":"x","past":[{"text":"y"}]}');
    });
    await page.reload();
    await settled(page);
    expect(await jobText(page)).toBe(empty);
    expect(await button(page, 'undo').isDisabled()).toBe(true);
    await context.close();
  });
});

describe('words of the sheet', () => {
  it('offer only what may stand there, and the other boxes come back', async () => {
    const { page } = await bench.open();
    const word = page.locator('[name="driving.register"]');
    expect(await word.locator('option').allTextContents()).toEqual(['as measured below', 'none']);
    await fill(page, 'driving.register', 'none');
    expect(await page.locator('[name="driving.register.diameter"]').count()).toBe(0);
    await fill(page, 'driving.register', '');
    expect(await page.locator('[name="driving.register.diameter"]').count()).toBe(1);
    expect(await page.locator('[name="driving.register.gender"] option').allTextContents()).toEqual([
      'not said',
      'male: spigot, stands out',
      'female: recess, goes in',
    ]);
    // A word from a file that may not stand there is shown, so that it can be mended.
    await button(page, 'text').click();
    await page.locator('#job-text').fill('job: 1\ndriving:\n  register: spigot\ndriven: {}\n');
    await button(page, 'sheet').click();
    await settled(page);
    await expect.poll(() => word.inputValue()).toBe('spigot');
  });

  it('say what is chosen where nothing is typed', async () => {
    const { page } = await bench.open();
    await button(page, 'new job').click();
    await settled(page);
    const said = (section: string) => page.locator(`#sheet-${section} > summary`).textContent();
    expect(await said('adapter')).toBe('Adapter (nothing typed: chosen for you)');
    expect(await said('sensor')).toBe('Sensor (not in this job yet)');
    expect(await page.locator('[aria-label="Files"]').textContent()).toContain('nothing is sent anywhere');
  });
});
