/** `measure` as a function: flags, questions, JSON, files, and a sentence for every slip. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { folder, run } from '../cli/terminal.ts';

const measure = (...argv: string[]) => run(folder(), ['measure', ...argv]);

describe('measure', () => {
  it('gives a bolt circle, the best chord, near patterns and a section that a job reads', async () => {
    const { code, out, err } = await measure(
      'circle',
      '--holes',
      '6',
      '--span',
      'farthest',
      '--over',
      '92.1,92.12',
      '--between',
      '75.9',
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Bolt circle 84\.005 \+-0\.03 mm, 6 holes/);
    expect(out).toContain('neighbours 2.00, skip one 1.15 and opposite 1.00');
    expect(out).toContain('DIN100-companion');
    expect(out).toMatch(/look alike and are not/);
    const block = out.slice(out.indexOf('driving:'));
    expect(readJob(`job: 1\n${block}\ndriven: { outside: 120 }\n`, 'x').ok).toBe(true);
  });

  it('knows the subject by its flags', async () => {
    expect((await measure('--holes', '5', '--span', 'skip_one', '--over', '103.2', '--hole', '8.1')).out).toMatch(
      /^Bolt circle 99\.99/,
    );
    expect((await measure('--spigot', '56.98,56.99')).out).toMatch(/^Register: spigot 56\.985/);
    expect((await measure('--diameter', '7.85', '--tpi', '18')).out).toMatch(/^5\/16-18 UNC/);
    expect((await measure('--chord', '1-2 centres 42', '--chord', '1-3 centres 72.75', '--holes', '6')).out).toMatch(
      /^6 even holes/,
    );
    expect((await measure('--at', '42,0', '--at', '-42,0')).out).toMatch(/^2 even holes on a circle of 84/);
  });

  it('reads dial readings that start with a minus', async () => {
    const { out } = await measure('runout', '--rim', '-0.02,0,0.02,0', '--side', 'driven');
    expect(out).toMatch(/0\.02 mm off centre towards 180 degrees/);
    expect(out).toContain('driven:\n  runout:\n    rim: [-0.02 mm, 0 mm, 0.02 mm, 0 mm]');
  });

  it('prints JSON alone', async () => {
    const { out, err } = await measure('thread', '--diameter', '9.85', '--ten', '15', '--json');
    const data = JSON.parse(out) as {
      subject: string;
      result: { candidates: { thread: string }[]; twins: { thread: string }[] };
      block: string;
    };
    expect(err).toBe('');
    expect(data.subject).toBe('thread');
    expect(data.result.candidates[0]?.thread).toBe('M10');
    expect(data.result.twins.map(({ thread }) => thread)).toContain('3/8-16 UNC');
    expect(data.block).toContain('thread: M10');
  });

  it('works in inches', async () => {
    const { out } = await measure(
      'circle',
      '--holes',
      '4',
      '--span',
      'farthest',
      '--centres',
      '3 1/8',
      '--units',
      'in',
    );
    expect(out).toMatch(/^Bolt circle 79\.375 \+-0\.03 mm \(3\.1250 in\)/);
    expect(out).toContain('SAE1300');
  });

  it('reads points from a file', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'holes.csv'), 'x,y\n29,24\n-29,24\n-29,-24\n29,-24\n');
    for (const argv of [
      ['measure', 'pattern', 'holes.csv'],
      ['measure', 'holes.csv'],
    ]) {
      expect((await run(cwd, argv)).out).toMatch(/^Four holes in a rectangle of 58 x 48 mm/);
    }
  });

  it('asks at a terminal', async () => {
    const circle = await run(folder(), ['measure'], ['circle', 'driven', '5', 'skip_one', '103.2', '87', '', '']);
    expect(circle.out).toContain('Best chord: skip one');
    expect(circle.out).toMatch(/^Bolt circle 99\.994/m);
    expect(circle.out).toContain('driven:\n  holes:');
    const register = await run(folder(), ['measure', 'register'], ['', 'spigot', '57.02,57.03', '', '', '2.3', '']);
    expect(register.out).toMatch(/^Register: spigot 57\.025/m);
    const thread = await run(folder(), ['measure', 'thread'], ['', '7.85', '12.5']);
    expect(thread.out).toMatch(/^M8\./m);
    const runout = await run(folder(), ['measure', 'runout'], ['', '0,0.05,0,-0.05', '']);
    expect(runout.out).toMatch(/towards 90 degrees/);
    const pattern = await run(folder(), ['measure', 'pattern'], ['', '', '40,0', '0,40', '-40,0', '0,-40', '', '8']);
    expect(pattern.out).toMatch(/^4 even holes on a circle of 80/m);
  });

  it.each([
    [[], /Say what was measured: circle, pattern/],
    [['sideways'], /"sideways" is not measured here/],
    [['circle', '--holes', '5'], /no reading here/],
    [['circle', '--over', '50'], /How many holes/],
    [['circle', '--holes', '5.5', '--over', '50'], /whole number from 2 to 72/],
    [['circle', '--holes', '6', '--over', '50'], /Say the span/],
    [['circle', '--holes', '6', '--span', 'next', '--over', '50'], /"next" is no span/],
    [['circle', '--holes', '6', '--span', '1', '--over', '50'], /needs their diameter/],
    [['circle', '--holes', '6', '--span', '1', '--over', '101,2'], /A comma parts readings; a decimal takes a point/],
    [
      ['circle', '--holes', '6', '--span', '1', '--over', '50.1,51.9', '--hole', '8'],
      /spread over 1\.8 mm, more than a caliper can explain/,
    ],
    [['circle', '--holes', '6', '--span', '1', '--centres', '84', '--outside', '100'], /past the rim of 100 mm/],
    [['circle', '--holes', '6', '--span', '1', '--centres', '42', '--outside', '50'], /radius of the outside typed/],
    [['circle', '--holes', '6', '--chord', 'next'], /"next" is not a chord/],
    [['circle', '--holes', '6', '--rim', '0,1,2'], /--rim does not belong to a circle/],
    [['register', '--bore', '57', '--spigot', '57'], /bore or spigot, not both/],
    [['register', '--bore', '57.0,57.5'], /disagree/],
    [
      ['register', '--bore', '130', '--outside', '120'],
      /not smaller than the rim \(120 mm\)\. Was the radius of the outside typed/,
    ],
    [['runout', '--rim', '0,0.1'], /too few/],
    [['runout', '--rim', '0,20,40'], /more than a dial reads/],
    [['runout', '--face', '0,0.1,0.2'], /How far from the axis/],
    [['runout', '--face', '0,0.1,0.2', '--radius', '90', '--outside', '120'], /diameter typed for the radius/],
    [['thread', '--pitch', '1.25'], /Give --diameter/],
    [['thread', '--diameter', '8', '--pitch', '12.5'], /length of ten pitches/],
    [['thread', '--diameter', '8', '--pitch', '1.25', '--tpi', '20'], /Give the pitch once/],
    [['pattern'], /Say what was measured/],
    [['pattern', '--rectangle', '58x48', '--diagonal', '78'], /75\.286 .* 2\.71 mm apart/],
    [['pattern', '--rectangle', '58'], /is no rectangle/],
    [['pattern', '--rectangle', '58x48', '--at', '1,2'], /Give the holes once/],
    [['pattern', '--at', '1,2,3', '--at', '2,2'], /Point 1 is two numbers/],
    [['pattern', 'nowhere.csv'], /There is no file nowhere\.csv, or it may not be read\.$/m],
    [['circle', '--holes', '6', '--span', '1', '--centres', '42', '--instrument', 'eye'], /--instrument is caliper/],
    [['circle', '--holes', '6', '--span', '1', '--centres', '42', '--units', 'cubits'], /--units is mm or in/],
    [['circle', '--holes', '6', '--span', '1', '--centres', '42', '--side', 'left'], /--side is driving or driven/],
    [['circle', '--holes', '6', '--span', '1', '--centres'], /centres/],
  ])('answers %j with a sentence and exit code 2', async (argv, why) => {
    const { code, err, out } = await measure(...argv);
    expect(err).toMatch(why);
    expect(code).toBe(2);
    expect(out).toBe('');
  });
});
