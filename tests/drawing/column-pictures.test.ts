/** The sheets that are filled from the top down, of any job at all: words keep apart, sizes are numbers, nothing leaves the sheet. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../src/core.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { pictures } from '../../src/products/pictures.ts';
import { writeSvg } from '../../src/write/svg.ts';
import { anyJob } from '../core/any-job.ts';
import { judge, patterns } from '../validate/help.ts';
import { expectApart, texts } from './shape-help.ts';
import { badNumbers } from './svg-help.ts';

/** Width of the sheet, mm, with its margins and what an angle's figures may stand out. */
const widest = 112;

function expectSound(drawing: Drawing): void {
  expectApart(drawing);
  expect(badNumbers(writeSvg(drawing))).toEqual([]);
  expect(drawing.box.xMax - drawing.box.xMin, drawing.id).toBeLessThan(widest);
}

describe('pictures in a column', () => {
  it('are sound for any job', () => {
    let drawn = 0;
    fc.assert(
      fc.property(anyJob, (text) => {
        const judged = judgeJob(text, 'any.job.yaml', patterns, { search: false });
        if (!judged.ok) return;
        for (const { column, drawing } of pictures(judged.joint)) {
          if (!column) continue;
          drawn += 1;
          expectSound(drawing);
        }
      }),
      { numRuns: 60 },
    );
    expect(drawn).toBeGreaterThan(100);
  });

  it('say that no limit is known where nobody gave the speed', () => {
    const list = pictures(judge({ duty: { speed: undefined } }).joint);
    const said = (name: string) => texts(list.find((one) => one.name === name)?.drawing.shapes ?? []).join(' ');
    expect(said('chain-shaft')).toContain('no limit is known');
    expect(said('balance')).toContain('no limit is known');
  });

  it('stay on the sheet where the teeth can touch the sensor', () => {
    const list = pictures(judge({ sensor: { gap: 0.2, bearing_play: 1.5, travel: 0.4 } }).joint);
    const sensor = list.find(({ name }) => name === 'sensor');
    if (!sensor) throw new Error('no sensor is drawn');
    expectSound(sensor.drawing);
    expect(texts(sensor.drawing.shapes).join(' ')).toContain('too near');
  });
});
