/** The sheet under the hands of somebody who has never seen it: commas, hints, words for sections, a telephone. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bench, blamedByAxe, fill, jobText, openBench, settled } from './browser.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
}, 240_000);
afterAll(() => bench?.close());

const fieldOf = (page: Page, key: string) => page.locator('.field', { has: page.locator(`[name="${key}"]`) });
const sentence = (page: Page, key: string) => fieldOf(page, key).locator('.about strong').textContent();

async function openText(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'text', exact: true }).click();
  await page.locator('#job-text').fill(text);
  await page.locator('#job-text').press('Tab');
  await page.getByRole('button', { name: 'sheet', exact: true }).click();
  await settled(page);
}

const kart = `job: 1
driving:
  outside: 112
  thickness: 14
  register: { gender: male, diameter: 62, depth: 4 }
  holes: { count: 6, circle: 84, thread: M8, depth: 16 }
driven:
  outside: 138
  thickness: 9
  register: { gender: female, diameter: 57.00, depth: 3 }
  holes: { count: 4, circle: 120, diameter: 10.4 }
duty: { torque: 150 N.m, speed: 900 rpm }
sensor:
  axle: 4.1
  tyre: { rolled: 2050 mm }
`;

describe('commas in a field', () => {
  it('a decimal comma stands as typed, red, with the cure beside it, until it is right', async () => {
    const { page } = await bench.open();
    await openText(page, kart);
    for (const key of ['driving.register.diameter', 'driven.holes.diameter']) {
      const field = page.locator(`[name="${key}"]`);
      await field.focus();
      await page.keyboard.press('Control+a');
      await page.keyboard.type('62,05', { delay: 30 });
      await page.keyboard.press('Tab');
      await settled(page);
      expect(await field.inputValue()).toBe('62,05');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      await expect.poll(() => sentence(page, key)).toContain('62.05');
    }
    expect(await jobText(page)).toBe(
      kart.replace('diameter: 62,', 'diameter: "62,05",').replace('diameter: 10.4', 'diameter: "62,05"'),
    );
    await fill(page, 'driving.register.diameter', '62.05');
    await expect
      .poll(() => page.locator('[name="driving.register.diameter"]').getAttribute('aria-invalid'))
      .toBe('false');
  });

  it('a plain list becomes a list, typed or pasted as a column', async () => {
    const { page, context } = await bench.open();
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await openText(page, kart);
    const field = page.locator('[name="driving.holes.circle"]');
    await field.focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('84.02, 83.98, 84.00', { delay: 20 });
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await field.inputValue()).toBe('84.02, 83.98, 84.00');
    await page.evaluate(() => navigator.clipboard.writeText('119.98\n120.02\n120.00\n'));
    await page.locator('[name="driven.holes.circle"]').focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Control+v');
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await jobText(page)).toBe(
      kart
        .replace('circle: 84,', 'circle: [84.02, 83.98, 84.00],')
        .replace('circle: 120,', 'circle: [119.98, 120.02, 120.00],'),
    );
    expect(await page.locator('.errors').count()).toBe(0);
  });

  it('an edit that the job refuses stays in its field with the reason', async () => {
    const { page } = await bench.open();
    await openText(page, `${kart}note: [1\n`);
    const field = page.locator('[name="title"]');
    await field.fill('Winch');
    await field.press('Tab');
    await settled(page);
    expect(await field.inputValue()).toBe('Winch');
    await expect.poll(() => sentence(page, 'title')).toContain('cannot be read');
  });

  it('the measuring pictures ask what a comma means', async () => {
    const { page } = await bench.open();
    const panel = page.locator('details', { has: page.getByText('Measure a bolt circle by picture') });
    await panel.locator('summary').click();
    await panel.getByLabel(/between them/).fill('49,37');
    await panel.getByRole('button', { name: 'work it out' }).click();
    await expect.poll(() => panel.locator('[role="status"]').textContent()).toMatch(/49\.37 if .*49, 37 if/);
    const register = page.locator('details', { has: page.getByText('Measure a register by picture') });
    await register.locator('summary').click();
    await register.getByLabel(/across at 0/).fill('62,05');
    await register.getByRole('button', { name: 'work it out' }).click();
    await expect.poll(() => register.locator('[role="status"]').textContent()).toContain('62.05');
  });
});

/** Controls of the sheet that another thing lies over, at their middle. Those out of sight are not asked. */
const covered = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.job input, .job select, .job button, .job summary')]
      .filter((control) => {
        const { left, top, width, height } = control.getBoundingClientRect();
        const [x, y] = [left + width / 2, top + height / 2];
        if (width === 0 || y < 0 || y > innerHeight || x < 0 || x > innerWidth) return false;
        const over = document.elementFromPoint(x, y);
        return over !== null && over.closest('.about') !== null;
      })
      .map((control) => control.getAttribute('name') ?? control.textContent),
  );

describe('hints', () => {
  it.each([1400, 380])('cover no control and are whole at %i px', async (width) => {
    const { page } = await bench.open({ width, height: 900 });
    await openText(page, kart);
    await fill(page, 'driving.outside', '112,4');
    for (const key of ['driving.thickness', 'driving.register.diameter', 'driving.holes.count', 'driven.name']) {
      await page.locator(`[name="${key}"]`).focus();
      const hint = fieldOf(page, key).locator('.about');
      await hint.waitFor({ state: 'visible' });
      expect(await covered(page), key).toEqual([]);
      const [box, column] = [await hint.boundingBox(), await page.locator('.sheet').boundingBox()];
      if (!box || !column) throw new Error(key);
      expect(box.x).toBeGreaterThanOrEqual(column.x);
      expect(box.x + box.width).toBeLessThanOrEqual(column.x + column.width + 1);
      expect(await hint.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
      if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/hint-${width}-${key}.png` });
    }
    expect(await page.locator('.about:visible').count()).toBe(2);
  });

  it('the next field takes a plain click at once, and nothing moves between press and release', async () => {
    const { page } = await bench.open();
    await openText(page, kart);
    await page.locator('[name="driving.outside"]').click();
    await fieldOf(page, 'driving.outside').locator('.about').waitFor({ state: 'visible' });
    const next = page.locator('[name="driving.thickness"]');
    const at = await next.boundingBox();
    if (!at) throw new Error('no field');
    await page.mouse.move(at.x + 20, at.y + at.height / 2);
    await page.mouse.down();
    await page.waitForTimeout(120);
    expect(await next.boundingBox()).toEqual(at);
    await page.mouse.up();
    expect(await next.evaluate((field) => field === document.activeElement)).toBe(true);
    await fieldOf(page, 'driving.thickness').locator('.about').waitFor({ state: 'visible' });
    expect(await fieldOf(page, 'driving.outside').locator('.about').isVisible()).toBe(false);
  });
});

describe('a key that is words or a section', () => {
  it('takes a tyre as its size, and back as keys; an emptied section goes', async () => {
    const { page } = await bench.open();
    await openText(page, kart);
    await page.locator('#sheet-sensor button.more', { hasText: 'more lines' }).first().click();
    const word = page.locator('[name="sensor.tyre"]');
    expect(await word.inputValue()).toBe('');
    await word.focus();
    await page.keyboard.type('205/65R16', { delay: 20 });
    // The field is the same one all the while.
    expect(await word.inputValue()).toBe('205/65R16');
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await jobText(page)).toBe(kart.replace('{ rolled: 2050 mm }', '205/65R16'));
    expect(await page.locator('[name="sensor.tyre.rolled"]').count()).toBe(0);
    await fill(page, 'sensor.tyre', '');
    expect(await jobText(page)).toBe(kart.replace('  tyre: { rolled: 2050 mm }\n', ''));
    await fill(page, 'sensor.tyre.rolled', '2040');
    await fill(page, 'sensor.tyre.rolled', '');
    expect(await jobText(page)).toBe(kart.replace('  tyre: { rolled: 2050 mm }\n', ''));
  });
});

describe('the bolt circle by picture', () => {
  it('takes the diameter of the holes where one chord was read over edges', async () => {
    const { page } = await bench.open();
    const panel = page.locator('details', { has: page.getByText('Measure a bolt circle by picture') });
    await panel.locator('summary').click();
    const second = panel.getByLabel(/second hole/);
    await second.fill('1');
    expect(await panel.getByText(/second hole/).textContent()).toContain('the next hole');
    await panel.getByLabel('how many holes').fill('4');
    await second.fill('2');
    await panel.getByLabel(/over the outside/).fill('92.05');
    await panel.getByLabel(/diameter of the holes/).fill('8.05');
    await panel.getByRole('button', { name: 'work it out' }).click();
    // Opposite holes: the circle is the chord, far edges less one diameter: 92.05 - 8.05 = 84.00. Geometry.
    await expect.poll(() => panel.locator('[role="status"]').textContent()).toContain('Bolt circle 84 ');
    expect(await blamedByAxe(page, '.measure')).toEqual([]);
  });

  it('shows the whole caliper for every chord, and in every direction of a register', async () => {
    const { page } = await bench.open();
    const panel = page.locator('details', { has: page.getByText('Measure a bolt circle by picture') });
    await panel.locator('summary').click();
    const outside = (within: string) =>
      page.evaluate((of) => {
        const svg = document.querySelector<SVGSVGElement>(`${of} svg`);
        if (!svg) return ['no picture'];
        const room = svg.viewBox.baseVal;
        return [...svg.querySelectorAll<SVGGraphicsElement>('polygon, text')]
          .map((shape) => shape.getBBox())
          .filter(
            (box) =>
              box.x < room.x ||
              box.y < room.y ||
              box.x + box.width > room.x + room.width ||
              box.y + box.height > room.y + room.height,
          )
          .map((box) => `${box.x} ${box.y} ${box.width} ${box.height}`);
      }, within);
    for (const count of [2, 3, 4, 5, 6, 7, 8, 12, 24, 36]) {
      await panel.getByLabel('how many holes').fill(String(count));
      for (let span = 1; span <= Math.floor(count / 2); span++) {
        await panel.getByLabel(/second hole/).fill(String(span));
        expect(await outside('.measure'), `${count} ${span}`).toEqual([]);
      }
    }
    const register = page.locator('details', { has: page.getByText('Measure a register by picture') });
    await register.locator('summary').click();
    await register.evaluate((element) => {
      element.id = 'register';
    });
    for (const kind of ['bore', 'spigot']) {
      await register.getByLabel('it is a').selectOption(kind);
      for (let i = 0; i < 4; i++) {
        await register.locator('.reading input').nth(i).focus();
        expect(await outside('#register'), `${kind} ${i}`).toEqual([]);
      }
    }
  });
});

describe('words', () => {
  it('do not run together', async () => {
    const { page } = await bench.open();
    await openText(page, kart.replace('sensor:\n  axle: 4.1\n  tyre: { rolled: 2050 mm }\n', ''));
    expect(await page.locator('#sheet-wheel summary').textContent()).toBe('Toothed wheel (not in this job yet)');
    await page.locator('#sheet-duty button.more').first().click();
    expect(await page.locator('#sheet-duty').textContent()).toMatch(/fewer lines take what/);
    expect(await page.locator('nav[aria-label="Pictures"]').textContent()).toMatch(/section \w/);
    expect(await page.locator('.finding summary').first().textContent()).toMatch(/^\S+ \S/);
  });
});

describe('a telephone, 380 px wide', () => {
  it('tells the verdict at the top, with a way down to it', async () => {
    const { page } = await bench.open({ width: 380, height: 800 });
    await settled(page);
    const strip = page.locator('.strip');
    expect((await strip.boundingBox())?.y).toBeLessThan(800);
    const banner = page.locator('.banner');
    expect(await strip.textContent()).toContain((await banner.locator('p').first().textContent()) ?? 'none');
    expect(await strip.textContent()).toContain((await banner.locator('h2').textContent())?.trim() ?? 'none');
    if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/phone-top.png` });
    await strip.getByRole('link').click();
    await expect.poll(async () => (await banner.boundingBox())?.y ?? -1).toBeLessThan(400);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(380);
    expect(await blamedByAxe(page)).toEqual([]);
  }, 60_000);

  it('enlarges a drawing until its smallest letter is 9 px, to be moved sideways', async () => {
    const { page } = await bench.open({ width: 380, height: 800 });
    await settled(page);
    const figure = page.locator('#picture-section');
    await figure.getByRole('button', { name: /^enlarge/ }).click();
    const least = await figure.evaluate((element) => {
      const svg = element.querySelector('svg') as SVGSVGElement;
      const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      return Math.min(
        ...[...svg.querySelectorAll('text')].map((text) => scale * Number.parseFloat(getComputedStyle(text).fontSize)),
      );
    });
    expect(least).toBeGreaterThan(8.99);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(380);
    if (process.env.PICTURES) await figure.screenshot({ path: `${process.env.PICTURES}/phone-large.png` });
    expect(await blamedByAxe(page, '#picture-section')).toEqual([]);
    await figure.getByRole('button', { name: /^fit/ }).click();
    expect(
      await figure.evaluate((element) => element.querySelector('svg')?.getBoundingClientRect().width),
    ).toBeLessThan(381);
  }, 60_000);

  it('keeps each label beside its control in the view in space', async () => {
    const { page } = await bench.open({ width: 380, height: 800 });
    await page.locator('.space summary').click();
    await page.getByLabel('cut open').check();
    for (const label of await page.locator('.space label').all()) {
      const control = await label.locator('input, select').boundingBox();
      const box = await label.boundingBox();
      if (!control || !box) throw new Error('no label');
      // One line high: nothing has wrapped away under its control.
      expect(box.height).toBeLessThan(control.height + 24);
      expect(box.x + box.width).toBeLessThanOrEqual(380);
    }
    if (process.env.PICTURES)
      await page.locator('.space').screenshot({ path: `${process.env.PICTURES}/phone-space.png` });
  }, 60_000);
});
