/** `check FILE.dxf`, the order note, and the service's limits in a job. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFiles, preflightDxf } from '../../src/core.ts';
import { readJob } from '../../src/job/read.ts';
import { serviceTolerance } from '../../src/job/schema-sheet.ts';
import { folder, run } from '../cli/terminal.ts';
import { shipped } from '../presets/shipped.ts';
import { judge } from '../validate/help.ts';
import { circle, dxf, line, plate } from './dxf-script.ts';

const presets = resolve(import.meta.dirname, '../../presets');

function drawing(name: string, text: string): string {
  const path = folder('dxf');
  writeFileSync(join(path, name), text);
  return path;
}

describe('check FILE.dxf', () => {
  it('passes a sound plate: 0, with its numbers', async () => {
    const cwd = drawing('Plate.DXF', dxf({ entities: plate }));
    const { code, out, err } = await run(cwd, [
      'check',
      'Plate.DXF',
      '--thickness',
      '3',
      '--material',
      'DC01',
      '--json',
    ]);
    expect([code, err]).toEqual([0, '']);
    const said = JSON.parse(out);
    expect([said.file, said.verdict]).toEqual(['Plate.DXF', 'pass']);
    const value = (wanted: string) => said.findings.find((f: { code: string }) => f.code === wanted).value;
    // By hand: 80 x 50 less two circles of 10; cuts 260 + 2 x 31.416; steel of 7.85 g/cm3 (the table's), 3 mm thick.
    expect(value('dxf-area')).toBeCloseTo(4000 - 50 * Math.PI, 5);
    expect(value('dxf-cut-length')).toBeCloseTo(260 + 20 * Math.PI, 5);
    expect(value('dxf-mass') / ((4000 - 50 * Math.PI) * 3 * 0.00785)).toBeCloseTo(1, 2);
    expect(value('dxf-pierces')).toBe(3);
    // The narrowest web: 20 - 5 from the left edge.
    expect(value('dxf-web')).toBeCloseTo(15, 9);
    expect(value('dxf-scale-proof')).toBe(10);
  });

  it('fails an open one: 1, with the place in the file', async () => {
    const text = dxf({ entities: [...plate, line(30, 30, 40, 35)] });
    const { code, out } = await run(drawing('open.dxf', text), ['check', 'open.dxf', '--json']);
    expect(code).toBe(1);
    const [worst] = JSON.parse(out).findings;
    expect(worst.code).toBe('dxf-open-contour');
    const [place] = worst.places;
    expect(place).toMatchObject({ entity: 4, type: 'LINE', x: 30, y: 30 });
    expect(text.split('\n').slice(place.line - 1, place.line + 1)).toEqual(['0', 'LINE']);
  });

  it('says what a file is that cannot be read: 2', async () => {
    for (const [name, text, word] of [
      ['a.dxf', 'AC1027\0\0', 'DWG'],
      ['b.dxf', 'Dear shop', 'sound DXF'],
      ['c.dxf', '', 'empty'],
    ] as const) {
      const { code, out } = await run(drawing(name, text), ['check', name]);
      expect([name, code]).toEqual([name, 2]);
      expect(out).toContain(word);
    }
  });

  it('takes the service and the part from a job', async () => {
    const cwd = drawing('w.dxf', dxf({ entities: plate }));
    writeFileSync(join(cwd, 'orchard.job.yaml'), readFileSync(join(presets, 'orchard-truck.job.yaml')));
    const { code, out } = await run(cwd, ['check', 'w.dxf', '--job', 'orchard.job.yaml', '--json']);
    expect(code).toBe(0);
    const mass = JSON.parse(out).findings.find((f: { code: string }) => f.code === 'dxf-mass');
    expect(mass.why).toContain('3 mm');
    expect(mass.why).toContain('DC01');
  });

  it.each([
    [['check', 'no.dxf'], 'There is no file no.dxf'],
    [['check', 'p.dxf', '--thickness', 'thick'], '--thickness'],
    [['check', 'p.dxf', '--thickness', '-1'], '--thickness'],
    [['check', 'p.dxf', '--material', 'cheese'], '--material'],
    [['check', 'p.dxf', '--units', 'feet'], '--units'],
    [['check', 'p.dxf', '--job', 'none.job.yaml'], 'none.job.yaml'],
    [['check', 'x.job.yaml', '--thickness', '3'], '--thickness is for drawings'],
  ])('%j: a plain sentence, 2', async (argv, sentence) => {
    const { code, err } = await run(drawing('p.dxf', dxf({ entities: plate })), argv);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });

  it('takes the unit that is said', async () => {
    const cwd = drawing('i.dxf', dxf({ units: null, entities: [circle(0, 0, 3), circle(0, 0, 1)] }));
    const { code, out } = await run(cwd, ['check', 'i.dxf', '--units', 'in', '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out).facts).toMatchObject({
      units: 'inches',
      unitsFrom: 'given',
      width: 152.4,
      largestHole: 50.8,
    });
  });
});

describe('the order note', () => {
  const options = { base: 'x', jobName: 'x.job.yaml', only: ['order', 'outline', 'bracket'], force: false };
  const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

  it.each(shipped.filter(({ joint }) => joint.wheelSpec).map((job) => [job.base, job] as const))(
    '%s',
    async (_, job) => {
      const { files, held } = await makeFiles(job.joint, job.findings, options);
      const failing = job.findings.some(({ verdict }) => verdict === 'fail');
      expect(held.map(({ kind }) => kind).includes('order')).toBe(failing);
      if (failing) return;
      const note = decode(files.find(({ name }) => name === 'x-wheel-order.txt')?.bytes ?? new Uint8Array());
      const drawings = files.filter(({ name }) => name.endsWith('.dxf'));
      expect(drawings.length).toBeGreaterThan(0);
      for (const { name, bytes } of drawings) {
        // Each part's drawings stand in the note of that part.
        const of = name.startsWith('x-bracket') ? 'x-bracket-order.txt' : 'x-wheel-order.txt';
        expect(decode(files.find((file) => file.name === of)?.bytes ?? new Uint8Array())).toContain(name);
        const part = of === 'x-bracket-order.txt' ? job.joint.bracket?.part : job.joint.wheel;
        const read = preflightDxf(bytes, {
          thickness: part?.thickness,
          material: of === 'x-wheel-order.txt' ? (job.joint.wheelMaterial ?? undefined) : undefined,
          profile: job.joint.job.sheet,
        });
        // The bracket's material is not told here, so its mass alone is not assessed.
        const open = read.findings.filter(({ verdict }) => verdict !== 'pass').map(({ code }) => code);
        expect(open).toEqual(of === 'x-bracket-order.txt' ? ['dxf-mass'] : []);
      }
      // The bore as it is cut, by the joint's own decision: the scale proof is what a reader of the file measures.
      const { wheelSpec, wheelBore, job: asked } = job.joint;
      const kerf = asked.sheet.kerf === 'service' ? 0 : asked.sheet.kerf;
      const cut = (wheelSpec?.bore ?? 0) - (wheelBore?.stock ?? 0) - kerf;
      const flat = note.replace(/\s+/g, ' ');
      expect(flat).toContain(`largest hole is ${cut.toFixed(3)} mm`);
      expect(flat).toContain('Read back before sending: clean.');
      expect(flat.includes('Cut small on purpose')).toBe(Boolean(wheelBore));
      expect(note.split('\n').every((row) => row.length <= 78 && /^[ -~]*$/.test(row))).toBe(true);
    },
  );

  it('has one for the bracket, whose bend lines are no cuts', async () => {
    const { joint, findings } = judge({
      sensor: { gap: 1 },
      sheet: { quantity: 4, flavour: ['standard', 'r12', 'polyline'] },
      bracket: {
        bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
        sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
        firing: { cylinders: 4, speed: '4000 rpm' },
      },
    });
    const { files } = await makeFiles(joint, findings, { ...options, force: true });
    const note = decode(files.find(({ name }) => name === 'x-bracket-order.txt')?.bytes ?? new Uint8Array());
    expect(note).toMatch(/Quantity +4\n/);
    expect(note).toContain('Layer CUT alone is cut');
    expect(note).toContain('x-bracket-bends.txt');
    expect(note).not.toMatch(/FAIL,|CAUTION,/);
    expect(files.filter(({ name }) => /bracket.*\.dxf$/.test(name))).toHaveLength(3);
  });
});

describe('sheet, the service as the job has it', () => {
  const job = (sheet: string) =>
    readJob(
      `job: 1\ndriving: { outside: 100, thickness: 10, holes: { count: 4, circle: 80, diameter: 8.4 } }\ndriven: { outside: 100, thickness: 10, holes: { count: 4, circle: 80, diameter: 8.4 } }\nsheet: ${sheet}\n`,
      'x.job.yaml',
    );

  it('reads limits, quantity and tolerances by thickness', () => {
    const read = job(
      '{ service: plate laser 1, quantity: 12, part: { least: 20, most: [2 m, 1000] }, tolerances: [{ up_to: 3, tolerance: 0.1 }, { up_to: 8 mm, tolerance: 0.2 mm }] }',
    );
    if (!read.ok) throw new Error(JSON.stringify(read.errors));
    const { sheet } = read.job;
    expect(sheet).toMatchObject({ quantity: 12, part: { least: 20, most: [2000, 1000] } });
    expect([2, 3, 3.1, 8, 9].map((t) => serviceTolerance(sheet, t))).toEqual([0.1, 0.1, 0.2, 0.2, null]);
    expect(serviceTolerance({ ...sheet, tolerance: 0.05 }, 9)).toBe(0.05);
  });

  it.each([
    ['{ quantity: 0 }', 'sheet.quantity'],
    ['{ quantity: some }', 'sheet.quantity'],
    ['{ part: { most: [2000] } }', 'sheet.part.most'],
    ['{ tolerances: [3] }', 'sheet.tolerances[0]'],
    ['{ tolerances: [{ up_to: 3 }] }', 'sheet.tolerances[0].tolerance'],
    ['{ tolerances: [{ up_to: 3, tolerance: 0.1, more: 1 }] }', 'sheet.tolerances[0]'],
  ])('%s is refused at its place', (sheet, path) => {
    const read = job(sheet);
    expect(read.ok ? [] : read.errors.map((error) => error.path)).toEqual([path]);
  });
});
