/** The sheet order in the report: the pre-flight of our own files, with margins against the service, in all three ways of writing. */
import { describe, expect, it } from 'vitest';
import { makeFiles } from '../../src/core.ts';
import { shipped } from '../presets/shipped.ts';
import { judge, type Patch } from '../validate/help.ts';

const decode = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);
const options = { base: 'x', jobName: 'x.job.yaml', only: ['report'], force: false };

async function reportOf(of: Parameters<typeof makeFiles>[0], findings: Parameters<typeof makeFiles>[1]) {
  const { files } = await makeFiles(of, findings, options);
  const named = (end: string) => decode(files.find(({ name }) => name.endsWith(end))?.bytes);
  return { text: named('.txt'), html: named('.html'), json: JSON.parse(named('.json')) };
}

interface Line {
  readonly label: string;
  readonly value: string;
}

describe('the sheet order', () => {
  it('shows a wheel and a bracket with margins that are worked out by hand', async () => {
    const bracket: Patch = {
      bolts: { size: 'M6', spacing: 60, from_axis: 82, along: 32 },
      sensor: { bore: 18.2, reach: 25, mass: '70 g', ear: { distance: 22, size: 'M6' } },
    };
    const { joint, findings } = judge({ sensor: { gap: 1 }, bracket, sheet: { quantity: 4, web: 1.2 } });
    const { text, html, json } = await reportOf(joint, findings);
    const [wheel, held] = json.sheet as { file: string; lines: Line[]; quantity: number }[];
    const line = (of: { lines: Line[] } | undefined, label: string) =>
      of?.lines.find((one) => one.label === label)?.value ?? '';
    expect([wheel?.file, held?.file, held?.quantity]).toEqual(['x-wheel.dxf', 'x-bracket.dxf', 4]);
    // Wheel of 178 mm: 178 / 25.4 = 7.0079 in. Its bore is the largest hole: the proof of the scale.
    expect(line(wheel, 'Over all')).toBe('178.000 x 178.000 mm');
    expect(line(wheel, 'Scale proof')).toContain(`largest hole ${(joint.wheelSpec?.bore ?? 0).toFixed(3)} mm`);
    expect(text).toContain('7.0079 x 7.0079 in');
    // Bracket of 3 mm: bolt slots 6.6 wide against a hole of 3; 6 mm of metal beside them against 1.2 x 3.
    expect(line(held, 'Smallest hole')).toBe('6.6 mm, limit 3 mm, 3.6 mm to spare');
    expect(line(held, 'Narrowest web')).toBe('6 mm, limit 3.6 mm, 2.4 mm to spare');
    // Relief cuts are one thickness wide; a shoulder beside them is left of 78.6 / 2 less 31.1 and 3.
    expect(line(held, 'Narrowest slot')).toContain('3 mm, limit 3 mm');
    expect(html).toContain('<h2>Sheet order: sensor bracket</h2>');
    expect(html.match(/<h2>Sheet order/g)).toHaveLength(2);
  });

  it('names what is cut small on purpose, and what the pre-flight blames', async () => {
    const { joint, findings } = judge({ wheel: { fit: 'H8', stock: 1 }, sheet: { web: 5 } });
    const { text, json } = await reportOf(joint, findings);
    const [wheel] = json.sheet as { verdict: string; undersize: string[]; lines: Line[] }[];
    expect(wheel?.undersize[0]).toContain('1.00 mm left in it');
    expect(text).toContain('Cut small on purpose: Bore');
    // Webs of five thicknesses: 15 mm, which no screw circle of this wheel leaves.
    expect(wheel?.verdict).not.toBe('pass');
    expect(text).toMatch(/Narrowest web \[(FAIL|CAUTION)\]: .* limit 15 mm, .* short/);
  });

  it('is in no report without a flat part, and in no bare check', async () => {
    const kart = shipped.find(({ base }) => base === 'kart');
    if (!kart) throw new Error('no kart');
    const { text, json } = await reportOf(kart.joint, kart.findings);
    expect(text).not.toContain('Sheet order');
    expect('sheet' in json).toBe(false);
  });

  it.each(shipped.filter(({ joint }) => joint.wheelSpec).map((job) => [job.base, job] as const))(
    'of %s holds every narrow place against a limit, and blames none',
    async (_, { joint, findings }) => {
      const { json } = await reportOf(joint, findings);
      for (const { lines } of json.sheet as { lines: (Line & { verdict: string | null })[] }[]) {
        expect(lines.map(({ label }) => label)).toEqual(
          expect.arrayContaining(['Narrowest web', 'Narrowest neck', 'Narrowest slot']),
        );
        expect(lines.filter(({ verdict }) => verdict !== null && verdict !== 'pass')).toEqual([]);
      }
    },
  );
});
