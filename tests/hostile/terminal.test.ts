/** No sign of a file's name, an argument or a job's text moves the reader's cursor: what is printed is text. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { failingJob, folder, presets, run } from '../cli/terminal.ts';
import { hostileStrings } from './strings.ts';

const good = readFileSync(join(presets, 'kart.job.yaml'), 'utf8');
/** Signs that a terminal may obey; line ends and tabs are text. */
const obeyed = /[^\P{Cc}\t\n]|\p{Bidi_Control}/u;

/** Names that a file may have here: anything but a slash and a zero. */
const names = Object.entries(hostileStrings)
  .map(([about, text]) => [about, text.replace(/[/\0]/g, '_').replace(/\ud800/g, '')] as const)
  .filter(([, text]) => text !== '__proto__');

describe('what is printed of', () => {
  it.each(names)('%s in a file name', async (_, name) => {
    const cwd = folder();
    writeFileSync(join(cwd, `${name}.job.yaml`), good);
    writeFileSync(join(cwd, `${name} bad.job.yaml`), `job: 1\n"${JSON.stringify(name).slice(1, -1)}": 1\n`);
    writeFileSync(join(cwd, `${name} failing.job.yaml`), failingJob);
    writeFileSync(join(cwd, `${name}.dxf`), 'nothing');
    writeFileSync(join(cwd, `${name}.csv`), `${name}\n1,2\n`);
    mkdirSync(join(cwd, `${name} folder`));
    const file = (ending: string) => `./${name}${ending}`;
    const commands = [
      ['check', file('.job.yaml')],
      ['check', file('.job.yaml'), '--json'],
      ['check', file(' bad.job.yaml')],
      ['check', file(' bad.job.yaml'), '--json'],
      ['check', file(' none.job.yaml')],
      ['check', file(' folder')],
      ['check', file('.dxf')],
      ['check', file('.dxf'), '--json'],
      ['check', file(' none.dxf')],
      ['make', file('.job.yaml'), '-o', file(' out'), '--only', 'outline,report'],
      ['make', file('.job.yaml'), '-o', file('.csv'), '--only', 'report'],
      ['make', file('.job.yaml'), '-o', file(' out'), '--only', name],
      ['make', file(' failing.job.yaml'), '-o', file(' out'), '--only', 'outline', '--json'],
      ['measure', 'pattern', file('.csv')],
      ['measure', 'pattern', file('.dxf')],
      ['measure', name],
      ['measure', 'sensor', '--resistance', 'open', '--supply', 'needed', '--leads', name],
      ['measure', 'sensor', '--resistance', 'open', '--leads', name, '--json'],
      ['sweep', file('.job.yaml'), '--vary', `adapter.name=A,${JSON.stringify(name)}`, '-o', file(' swept')],
      ['flanges', name],
      ['flanges', '--circle', name],
      ['new', file(' bad.job.yaml')],
      ['new', file(' new.job.yaml')],
      [name],
      ['check', file('.job.yaml'), `--${name}`],
    ];
    for (const argv of commands) {
      const { code, out, err } = await run(cwd, argv);
      expect(code, `${argv.join(' ')}: ${err}`).toBeLessThan(70);
      expect(obeyed.exec(err), `${argv.join(' ')}: ${JSON.stringify(err)}`).toBeNull();
      expect(obeyed.exec(out), `${argv.join(' ')}: ${JSON.stringify(out.slice(0, 3000))}`).toBeNull();
    }
    for (const rows of readdirSync(join(cwd, `${name} swept`)).filter((row) => /\.(csv|jsonl)$/.test(row))) {
      const text = readFileSync(join(cwd, `${name} swept`, rows), 'utf8').replaceAll('\r\n', '\n');
      expect(obeyed.exec(text), `${rows}: ${JSON.stringify(text.slice(0, 600))}`).toBeNull();
    }
  });

  it('a path in the base name of a job stays inside the folder', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, '..secret.job.yaml'), good);
    const { code, out } = await run(cwd, ['make', '..secret.job.yaml', '-o', 'out', '--only', 'report', '--json']);
    expect(code).toBeLessThan(2);
    const { files } = JSON.parse(out) as { files: { path: string }[] };
    for (const { path } of files) expect(path).toMatch(/^out\/secret-/);
  });
});
