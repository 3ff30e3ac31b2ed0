import { describe, expect, it } from 'vitest';
import type { JobRead } from '../../src/job/read.ts';
import { readJob } from '../../src/job/read.ts';
import { goodJob, spoil } from './sample.ts';

function good(text: string): Extract<JobRead, { ok: true }> {
  const read = readJob(text, 'good.job.yaml');
  if (!read.ok) throw new Error(read.errors.map((error) => `${error.path}: ${error.message}`).join('\n'));
  return read;
}

describe('good jobs', () => {
  it('fills in every default', () => {
    const { job } = good('job: 1\ndriving: { outside: 120 }\ndriven: { from: DIN100-shaft }\n');
    expect(job).toEqual({
      job: 1,
      title: 'Untitled joint',
      units: 'mm',
      driving: { outside: { value: 120, doubt: 0.03, basis: 'given' } },
      driven: { from: 'DIN100-shaft' },
      adapter: {
        material: 'S355',
        thickness: 'auto',
        outside: 'auto',
        clocking: 'auto',
        bore: 'auto',
        flats: 'none',
        chamfer: 1,
        web: 3,
        setup: 'indicated',
        shop: { tools: 'hss', top_speed: 2000, travel: 25, cycles: 'canned', tap_cycle: false },
        driving: side,
        driven: side,
      },
      print: { holes: 0.3, registers: 0.3, text: true },
      sheet: { quantity: 1, hole: 1, web: 1, part: {}, kerf: 'service', flavour: ['standard'] },
    });
  });

  const side = {
    fastening: 'auto',
    screw: 'auto',
    class: '10.9',
    head: 'auto',
    seat: 'auto',
    hole: 'medium',
    washer: false,
    length: 'auto',
    register: 'auto',
    fit: 'auto',
  };

  it('keeps defaults in millimetres when the job is in inches', () => {
    const { job } = good(
      'job: 1\nunits: in\ndriving: { outside: 4.5 }\ndriven: { outside: 120 mm }\nwheel: { teeth: 36, outside: 6.5, height: 0.2 }\n',
    );
    // 1 in = 25.4 mm exactly.
    expect(job.driving.outside?.value).toBe(114.3);
    expect(job.driven.outside?.value).toBe(120);
    expect(job.wheel).toMatchObject({
      outside: 165.1,
      height: 5.08,
      thickness: 5,
      root_radius: 0.5,
      clearance: 'auto',
      shoulder: 3,
      material: 'DC01',
    });
    expect(job.wheel?.screws).toEqual({ count: 6, circle: 'auto', size: 'M5', first: 'auto', depth: 'auto' });
    expect(job.adapter).toMatchObject({ chamfer: 1, web: 3 });
    expect(job.print.holes).toBe(0.3);
  });

  const measured: readonly (readonly [string, object])[] = [
    ['120', { value: 120, doubt: 0.03, basis: 'given' }],
    ['4 3/4 in', { value: 120.65, doubt: 0.03, basis: 'given' }],
    ['[120.00, 120.02, 120.04]', { value: 120.02, doubt: 0.03, basis: 'repeated', readings: [120, 120.02, 120.04] }],
    // Farther apart than 0.03 on both sides explains: from 120.00 - 0.03 to 120.10 + 0.03.
    ['[120.00, 120.10]', { value: 120.05, doubt: 0.08, basis: 'repeated', readings: [120, 120.1] }],
    ['{ value: 120 }', { value: 120, doubt: 0.03, basis: 'given' }],
    ['{ value: 120, doubt: 0.2 }', { value: 120, doubt: 0.2, basis: 'stated' }],
    ['{ value: 120, doubt: 10 thou }', { value: 120, doubt: 0.254, basis: 'stated' }],
    ['{ value: 120, instrument: micrometer }', { value: 120, doubt: 0.005, basis: 'stated' }],
    ['{ value: 120, instrument: ruler }', { value: 120, doubt: 0.5, basis: 'stated' }],
    ['{ value: 120, instrument: catalogue }', { value: 120, doubt: 0.05, basis: 'catalogue' }],
    ['120.00 micrometer', { value: 120, doubt: 0.005, basis: 'stated' }],
    ['"4 3/4 in, Micrometer"', { value: 120.65, doubt: 0.005, basis: 'stated' }],
    [
      '120.00 120.02 120.01 micrometer',
      { value: 120.01, doubt: 0.015, basis: 'repeated', readings: [120, 120.02, 120.01] },
    ],
    ['"120.00, 120.002; micrometer"', { value: 120.001, doubt: 0.005, basis: 'repeated', readings: [120, 120.002] }],
    ['120 ± 0.01', { value: 120, doubt: 0.01, basis: 'stated' }],
    ['120 +-0.01 mm', { value: 120, doubt: 0.01, basis: 'stated' }],
    ['120 +/- 10 thou caliper', { value: 120, doubt: 0.254, basis: 'stated' }],
    ['{ value: 120, proven: true }', { value: 120, doubt: 0.02, basis: 'proven' }],
    [
      '{ readings: [120, 120.02], instrument: dial }',
      { value: 120.01, doubt: 0.01, basis: 'repeated', readings: [120, 120.02] },
    ],
    [
      '{ value: 120.01, readings: [120, 120.02], proven: true }',
      { value: 120.01, doubt: 0.02, basis: 'proven', readings: [120, 120.02] },
    ],
  ];
  it.each(measured)('reads the measured value %s', (typed, expected) => {
    expect(good(`job: 1\ndriving: { outside: ${typed} }\ndriven: {}\n`).job.driving.outside).toEqual(expected);
  });

  it('makes codes uniform', () => {
    const text = spoil('thread: M10', 'thread: m10 × 1.25')
      .replace('torque: 480 N.m', 'torque: 350 lb-ft, grade: G 6.3')
      .replace('fit: h7', "fit: ' h 7 '");
    const { job } = good(text);
    expect(job.driven.holes?.thread).toBe('M10x1.25');
    expect(job.duty?.grade).toBe('G6.3');
    expect(job.driving.register).toMatchObject({ fit: 'h7' });
    // 350 x 0.45359237 x 9.80665 x 0.3048
    expect(job.duty?.torque).toBeCloseTo(474.53628191599, 10);
  });

  it('believes an odd number that carries its unit', () => {
    expect(good(spoil('speed: 4200 rpm', 'speed: 4.2 rpm')).job.duty?.speed).toBe(4.2);
    expect(good(spoil('torque: 480 N.m', 'torque: 0.5 N.m')).job.duty?.torque).toBe(0.5);
  });

  it('reads every way of saying where holes are', () => {
    for (const holes of [
      'count: 6, chord: 42',
      'at: [[42, 0], [-21, 36.37], [-21, -36.37]]',
      'angles: [0, 60, 190], circle: 84',
      'count: 3, angles: [0, 60, 190], circle: 84',
    ]) {
      expect(good(spoil('count: 6, circle: 84', holes)).job.driving.holes).toBeDefined();
    }
  });

  it('says which key paths were typed, and where', () => {
    const { given, lines, errorAt } = good(spoil('count: 6, circle: 84', 'at: [[42, 0], [-42, 0]]'));
    expect(given.has('driving.holes.at[1][0]')).toBe(true);
    expect(given.has('adapter.chamfer')).toBe(false);
    expect(lines('driven.outside')).toEqual({ line: 11, column: 12 });
    expect(lines('adapter.chamfer')).toBeUndefined();
    expect(errorAt('driven.bore', 'Why.')).toEqual({
      file: 'good.job.yaml',
      line: 10,
      column: 1,
      path: 'driven.bore',
      message: 'Why.',
    });
  });

  it('lets one section repeat another by an alias', () => {
    const { job } = good(
      `job: 1\ndriving: &flange { outside: 120, holes: { count: 6, circle: 84, diameter: 8.1 } }\ndriven: *flange\n`,
    );
    expect(job.driven).toEqual(job.driving);
  });

  it('reads the same job in one line of JSON', () => {
    const block = good(goodJob).job;
    const json = JSON.stringify({
      job: 1,
      title: 'Test joint',
      units: 'mm',
      duty: { torque: '480 N.m', speed: '4200 rpm' },
      driving: {
        outside: 120,
        thickness: 12,
        register: { gender: 'male', diameter: 57, depth: 2.3, fit: 'h7' },
        holes: { count: 6, circle: 84, diameter: 8.1 },
      },
      driven: {
        outside: 120,
        thickness: 12,
        register: { gender: 'female', diameter: 75, depth: 2.5 },
        holes: { count: 8, circle: 101.5, thread: 'M10', depth: 14 },
      },
      adapter: { material: 'S355', thickness: 'auto', outside: 130 },
      wheel: { teeth: 36, outside: 170, height: 5 },
      print: { holes: 0.3 },
      sheet: { flavour: ['standard'] },
    });
    expect(good(json).job).toEqual(block);
  });
});
