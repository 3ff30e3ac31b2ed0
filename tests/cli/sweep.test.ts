/** `sweep` as a command: its files, that it goes on where it was stopped, and that a variant comes out as it does alone. */
import { execFileSync, spawn } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { barText, timeText } from '../../src/cli/progress.ts';
import { isRunning, takeUp } from '../../src/cli/sweep-files.ts';
import type { VariantRow } from '../../src/core.ts';
import { program, root } from '../program.ts';
import { failingJob, folder, presets, run } from './terminal.ts';

const job = join(presets, 'orchard-truck.job.yaml');
const vary = ['--vary', 'adapter.thickness=15..20/2.5', '--vary', 'wheel.teeth=48,60'];

const rowsOf = (path: string): VariantRow[] =>
  readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as VariantRow);
const at = (where: string, ending: string) => join(where, 'out', `orchard-truck.sweep${ending}`);

describe('a sweep', () => {
  const where = folder('sweep');
  it('judges every variant and writes rows, CSV, picture and summary', async () => {
    const { code, out, err } = await run(where, ['sweep', job, ...vary, '--workers', '2', '--json']);
    expect(err).toBe('');
    expect(code).toBe(0);
    const said = JSON.parse(out) as { variants: number; done: number; verdicts: Record<string, number> };
    expect(said).toMatchObject({ variants: 6, done: 6 });
    const rows = rowsOf(at(where, '.jsonl'));
    expect(rows.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(rows.map(({ values }) => Object.values(values))).toEqual(
      [15, 17.5, 20].flatMap((t) => [48, 60].map((n) => [t, n])),
    );
    for (const [verdict, count] of Object.entries(said.verdicts))
      expect(rows.filter((row) => row.verdict === verdict).length).toBe(count);
    expect(readFileSync(at(where, '.svg'), 'utf8')).toMatch(/^<\?xml[\s\S]*adapter\.thickness[\s\S]*<\/svg>\s*$/);
    expect(existsSync(at(where, '.part.jsonl'))).toBe(false);
  });

  it('gives each variant what check gives the job with the same values typed in', async () => {
    const text = readFileSync(job, 'utf8');
    const rows = rowsOf(at(where, '.jsonl'));
    for (const row of [rows[1], rows[4]] as VariantRow[]) {
      const [thickness, teeth] = Object.values(row.values);
      const typed = text
        .replace('  flats: auto\n', `  flats: auto\n  thickness: ${thickness}\n`)
        .replace('\n  teeth: 60\n', `\n  teeth: ${teeth}\n`);
      writeFileSync(join(where, 'alone.job.yaml'), typed);
      // The usual way is what a sweep judges; check searches, so only a job that is settled is compared.
      const { out } = await run(where, ['check', 'alone.job.yaml', '--json']);
      const alone = JSON.parse(out) as {
        verdict: string;
        findings: { code: string; verdict: string; value: number }[];
      };
      const counts = { fail: 0, caution: 0, 'not assessed': 0, pass: 0 } as Record<string, number>;
      for (const { verdict } of alone.findings) counts[verdict] = (counts[verdict] ?? 0) + 1;
      const { code } = await run(where, [
        ...['sweep', 'alone.job.yaml', '--vary', `adapter.thickness=${thickness}`, '--search', '--workers', '1'],
      ]);
      expect([0, 1]).toContain(code);
      const [searched] = rowsOf(join(where, 'out', 'alone.sweep.jsonl'));
      expect(searched?.verdict).toBe(alone.verdict);
      expect(searched?.counts).toEqual(counts);
      if (searched?.revision === row.revision) expect(row.counts).toEqual(counts);
    }
  });

  it('writes CSV that Python reads, one line a variant, numbers as numbers', () => {
    const script =
      'import csv,json,sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1], newline="", encoding="utf-8"))), ensure_ascii=True))';
    const read = JSON.parse(execFileSync('python3', ['-c', script, at(where, '.csv')], { encoding: 'utf8' })) as Record<
      string,
      string
    >[];
    const rows = rowsOf(at(where, '.jsonl'));
    expect(read.length).toBe(rows.length);
    for (const [i, row] of rows.entries()) {
      expect(Number(read[i]?.index)).toBe(row.index);
      expect(read[i]?.verdict).toBe(row.verdict);
      expect(Number(read[i]?.['adapter.thickness'])).toBe(row.values['adapter.thickness']);
      expect(Number(read[i]?.adapter_g)).toBe(row.numbers?.adapter_g);
    }
  });

  it('comes out the same with one thread as with three', async () => {
    const other = folder('sweep');
    await run(other, ['sweep', job, ...vary, '--workers', '1']);
    for (const ending of ['.jsonl', '.csv', '.svg'])
      expect(readFileSync(at(other, ending), 'utf8')).toBe(readFileSync(at(where, ending), 'utf8'));
  });

  it('goes on after a torn end, and gives the same bytes as a whole run', async () => {
    const other = folder('sweep');
    const argv = ['sweep', job, ...vary, '--workers', '1'];
    await run(other, argv);
    const whole = readFileSync(at(other, '.jsonl'), 'utf8');
    const lines = whole.split('\n');
    const torn = `${lines.slice(0, 2).join('\n')}\n${(lines[2] ?? '').slice(0, 100)}`;
    const key = (JSON.parse(readFileSync(at(other, '.json'), 'utf8')) as { key: string }).key;
    writeFileSync(at(other, '.part.jsonl'), torn);
    writeFileSync(at(other, '.part.json'), JSON.stringify({ key, process: 0 }));
    const refused = await run(other, argv);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/A part of this sweep is there already: go on with --resume/);
    const { code } = await run(other, [...argv, '--resume']);
    expect(code).toBe(0);
    expect(readFileSync(at(other, '.jsonl'), 'utf8')).toBe(whole);
    expect(existsSync(at(other, '.part.jsonl'))).toBe(false);
    // All is done: going on once more changes nothing.
    await run(other, [...argv, '--resume']);
    expect(readFileSync(at(other, '.jsonl'), 'utf8')).toBe(whole);
    // Other values are another sweep.
    const changed = await run(other, ['sweep', job, '--vary', 'wheel.teeth=48', '--resume']);
    expect(changed.code).toBe(2);
    expect(changed.err).toMatch(/belongs to another sweep/);
    expect(readFileSync(at(other, '.jsonl'), 'utf8')).toBe(whole);
  });

  it('keeps whole lines when it is told to stop, says so, and goes on from there', async () => {
    const other = folder('sweep');
    const argv = ['sweep', job, '--vary', 'adapter.thickness=14..24/0.01', '--workers', '1'];
    const child = spawn(process.execPath, [program, ...argv, '-o', join(other, 'out')], { cwd: root });
    let err = '';
    child.stderr.on('data', (chunk) => {
      err += String(chunk);
    });
    const part = at(other, '.part.jsonl');
    const ended = new Promise<number | null>((done) => child.on('exit', (code) => done(code)));
    const deadline = Date.now() + 60_000;
    while (Date.now() < deadline && !(existsSync(part) && statSync(part).size > 0))
      await new Promise((done) => setTimeout(done, 20));
    child.kill('SIGINT');
    expect(await ended).toBe(130);
    expect(err).toMatch(/Stopped after \d+ of 1001 variants: the same command with --resume goes on\./);
    const text = readFileSync(at(other, '.jsonl'), 'utf8');
    expect(text.endsWith('\n')).toBe(true);
    const rows = rowsOf(at(other, '.jsonl'));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.length).toBeLessThan(1001);
    expect(rows.map(({ index }) => index)).toEqual(rows.map((_, i) => i));
    expect(readFileSync(at(other, '.csv'), 'utf8').trimEnd().split('\r\n').length).toBe(rows.length + 1);
  });

  it('exits 1 when nothing passes, and says what is wrong with values that make no job', async () => {
    const other = folder('sweep');
    writeFileSync(join(other, 'fails.job.yaml'), failingJob);
    const { code, err } = await run(other, ['sweep', 'fails.job.yaml', '--vary', 'adapter.thickness=1,2']);
    expect(code).toBe(1);
    expect(err).toMatch(
      /Some values make no job; the first of them, variant 0: adapter\.thickness: Must be 3 to 300 mm/,
    );
    expect(rowsOf(join(other, 'out', 'fails.sweep.jsonl')).map(({ verdict }) => verdict)).toEqual([
      'bad job',
      'bad job',
    ]);
  });

  it('tells a bad plan in a sentence, exit 2', async () => {
    const { code, err } = await run(where, ['sweep', job, '--vary', 'adapter.thicknes=1']);
    expect(code).toBe(2);
    expect(err).toMatch(/Did you mean thickness\?/);
    expect((await run(where, ['sweep', job, ...vary, '--workers', '0'])).err).toMatch(/--workers wants a whole number/);
  });

  it('will not write where another sweep is writing', async () => {
    const other = folder('sweep');
    await run(other, ['sweep', job, '--vary', 'wheel.teeth=60']);
    writeFileSync(at(other, '.part.json'), JSON.stringify({ key: 'x', process: process.ppid }));
    const { code, err } = await run(other, ['sweep', job, '--vary', 'wheel.teeth=60']);
    expect(code).toBe(2);
    expect(err).toMatch(/Another sweep of this job is being written there/);
    expect(isRunning({ key: 'x', process: 2 ** 30 })).toBe(false);
  });

  it('holds no more memory for six times the variants', () => {
    const peak = (count: number): number => {
      const other = folder('sweep');
      const hook = "process.on('exit', () => process.stderr.write('peak ' + process.resourceUsage().maxRSS + ' end'));";
      const argv = ['sweep', job, '--vary', `note=1..${count}/1`, '--vary', 'adapter.thickness=1', '--workers', '1'];
      const { stderr } = spawnNode(['--import', `data:text/javascript,${encodeURIComponent(hook)}`], argv, other);
      expect(rowsOf(at(other, '.jsonl')).length).toBe(count);
      return Number(/peak (\d+) end/.exec(stderr)?.[1]) / 1024;
    };
    const [few, many] = [peak(500), peak(3_000)];
    expect(few).toBeGreaterThan(20);
    // A joint that is kept for each variant, some 100 kB, would come to far more than this.
    expect(many).toBeLessThan(1.35 * few + 40);
  });
});

function spawnNode(options: readonly string[], argv: readonly string[], where: string): { stderr: string } {
  const script = `${JSON.stringify(process.execPath)} ${[...options, program, ...argv, '-o', join(where, 'out')].map((word) => JSON.stringify(word)).join(' ')} 2>&1 >/dev/null || true`;
  return { stderr: execFileSync('sh', ['-c', script], { cwd: root, encoding: 'utf8' }) };
}

describe('what was written before', () => {
  it('is taken up to its last whole line', async () => {
    const path = join(folder('rows'), 'a.jsonl');
    // The line separator within a text is no line end of the file.
    const rows = [0, 1].map((index) => JSON.stringify({ index, values: { note: 'a\u2028b' }, verdict: 'pass' }));
    writeFileSync(path, `${rows.join('\n')}\n`);
    appendFileSync(path, '{"index":2,"values":{},"verdict":"pass"}');
    const taken: number[] = [];
    expect(await takeUp(path, ({ index }) => taken.push(index))).toBe(2);
    expect(taken).toEqual([0, 1]);
    expect(readFileSync(path, 'utf8')).toBe(`${rows.join('\n')}\n`);
  });
});

describe('the progress bar', () => {
  it('tells share, count and time left', () => {
    expect(barText(25, 100, 5)).toBe('[######..................] 25 % 25 of 100, 15 s left');
    expect(barText(0, 100, 0)).toBe('[........................] 0 % 0 of 100');
    expect(barText(100, 100, 5)).toBe('[########################] 100 % 100 of 100');
    expect([timeText(59.6), timeText(130), timeText(3 * 3600 + 300)]).toEqual([
      '1 min 00 s',
      '2 min 10 s',
      '3 h 05 min',
    ]);
  });
});
