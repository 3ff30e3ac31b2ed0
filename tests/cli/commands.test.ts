/** The commands as functions: exit codes, pure JSON, help for slips. The contract is the table of commands in DEVELOPERS.md. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { failingJob, folder, presets, run } from './terminal.ts';

const truck = join(presets, 'orchard-truck.job.yaml');

describe('check', () => {
  it('prints findings, touches no file and exits 0 when nothing fails', async () => {
    const cwd = folder();
    const { code, out, err } = await run(cwd, ['check', truck]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Orchard truck');
    expect(readdirSync(cwd)).toEqual([]);
  });

  it('exits 1 when a check fails', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), failingJob);
    const { code, out } = await run(cwd, ['check', 'a.job.yaml']);
    expect(code).toBe(1);
    expect(out).toMatch(/^FAIL/m);
  });

  it('prints JSON alone with --json, in the fixed shape', async () => {
    const { out } = await run(folder(), ['check', truck, '--json']);
    const data = JSON.parse(out) as Record<string, unknown> & { findings: Record<string, unknown>[] };
    expect(Object.keys(data)).toEqual(['job', 'title', 'verdict', 'findings', 'assumed']);
    for (const finding of data.findings) {
      expect(Object.keys(finding).sort()).toEqual([
        'code',
        'feature',
        'limit',
        'margin',
        'remedy',
        'source',
        'title',
        'unit',
        'value',
        'verdict',
        'why',
      ]);
      expect(finding.code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    }
  });

  it.each([
    ['a missing file', 'nowhere.job.yaml', 'There is no file nowhere.job.yaml'],
    ['a folder', '.', 'is a folder'],
  ])('answers %s with a sentence and exit code 2', async (_, name, sentence) => {
    const { code, err, out } = await run(folder(), ['check', name]);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
    expect(out + err).not.toMatch(/\bat .*\.ts:/);
  });

  it('points at line and column of every error at once', async () => {
    const cwd = folder();
    writeFileSync(
      join(cwd, 'bad.job.yaml'),
      failingJob.replace('outside: 112', 'outside: -112').replace('count: 6, circle: 86', 'cuont: 6, circle: 86'),
    );
    const { code, err } = await run(cwd, ['check', 'bad.job.yaml']);
    expect(code).toBe(2);
    expect(err).toMatch(/^bad\.job\.yaml:4:\d+ driving\.outside/m);
    expect(err).toMatch(/^bad\.job\.yaml:12:\d+ driven\.holes\.cuont.*count/m);
  });
});

describe('make', () => {
  it('writes every file and says so as JSON with true hashes', async () => {
    const cwd = folder();
    const { code, out, err } = await run(cwd, ['make', truck, '-o', 'parts', '--json']);
    expect([code, err]).toEqual([0, '']);
    const { files, held } = JSON.parse(out) as {
      files: { kind: string; path: string; bytes: number; sha256: string }[];
      held: unknown[];
    };
    expect(held).toEqual([]);
    expect(new Set(files.map((file) => file.kind))).toEqual(
      new Set(['mockup', 'wheel-mockup', 'outline', 'order', 'preview', 'bench-sheet', 'report']),
    );
    for (const file of files) {
      const bytes = readFileSync(join(cwd, file.path));
      expect(bytes.length).toBe(file.bytes);
      expect(createHash('sha256').update(bytes).digest('hex')).toBe(file.sha256);
    }
    expect(readdirSync(join(cwd, 'parts')).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('holds the outline back while a check fails, still writes mock-up and report, and exits 1', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), failingJob);
    const { code, out, err } = await run(cwd, ['make', 'a.job.yaml', '--json']);
    expect(err).toContain('--force');
    const { files, held, verdict } = JSON.parse(out) as {
      files: { kind: string }[];
      held: { kind: string; why: string }[];
      verdict: string;
    };
    expect([code, verdict]).toEqual([1, 'fail']);
    expect(held.map((h) => h.kind)).toEqual(['outline', 'order']);
    expect(held[0]?.why).toContain('web between holes');
    expect(files.map((file) => file.kind)).toEqual(expect.arrayContaining(['mockup', 'report']));
    expect(readdirSync(join(cwd, 'out')).some((name) => name.endsWith('.dxf'))).toBe(false);
    const stl = readFileSync(join(cwd, 'out', 'a-adapter-mockup.stl'));
    expect(stl.subarray(0, 80).toString('latin1')).toContain('CHECKS FAILED');
  });

  it('makes held files with --force, each saying so inside, and still exits 1', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'a.job.yaml'), failingJob);
    const { code } = await run(cwd, ['make', 'a.job.yaml', '--force']);
    expect(code).toBe(1);
    expect(readFileSync(join(cwd, 'out', 'a-wheel.dxf'), 'utf8')).toMatch(/^999\nCHECKS FAILED - FORCED\n/);
    expect(readFileSync(join(cwd, 'out', 'a-report.html'), 'utf8')).toContain('FAIL');
  });

  it('puts an outline of an earlier, passing version aside', async () => {
    const cwd = folder();
    const good = readFileSync(truck, 'utf8');
    writeFileSync(join(cwd, 'a.job.yaml'), good);
    await run(cwd, ['make', 'a.job.yaml', '--only', 'outline']);
    expect(existsSync(join(cwd, 'out', 'a-wheel.dxf'))).toBe(true);
    writeFileSync(join(cwd, 'a.job.yaml'), failingJob);
    const { err } = await run(cwd, ['make', 'a.job.yaml']);
    expect(existsSync(join(cwd, 'out', 'a-wheel.dxf'))).toBe(false);
    expect(existsSync(join(cwd, 'out', 'a-wheel.dxf.old'))).toBe(true);
    expect(err).toContain('a-wheel.dxf.old');
  });

  it('makes only what is asked for, and names the kinds on a slip', async () => {
    const cwd = folder();
    await run(cwd, ['make', truck, '--only', 'outline,report']);
    expect(readdirSync(join(cwd, 'out')).sort()).toEqual(
      [
        'orchard-truck-report.html',
        'orchard-truck-report.json',
        'orchard-truck-report.txt',
        'orchard-truck-wheel.dxf',
      ].sort(),
    );
    const { code, err } = await run(cwd, ['make', truck, '--only', 'dxf']);
    expect(code).toBe(2);
    expect(err).toContain('outline');
  });

  it('writes nothing at all for a bad job', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'bad.job.yaml'), 'job: 1\ndriving: {}\n');
    const { code } = await run(cwd, ['make', 'bad.job.yaml']);
    expect(code).toBe(2);
    expect(existsSync(join(cwd, 'out'))).toBe(false);
  });
});

describe('new', () => {
  it('writes a starter job that checks clean of errors, and its schema beside it', async () => {
    const cwd = folder();
    const first = await run(cwd, ['new', 'mine.job.yaml']);
    expect([first.code, first.err]).toEqual([0, '']);
    expect(readdirSync(cwd).sort()).toEqual(['flangewright.schema.json', 'mine.job.yaml']);
    expect((await run(cwd, ['check', 'mine.job.yaml'])).code).toBe(0);
  });

  it('never overwrites', async () => {
    const cwd = folder();
    writeFileSync(join(cwd, 'mine.job.yaml'), 'precious');
    const { code, err } = await run(cwd, ['new', 'mine.job.yaml']);
    expect(code).toBe(2);
    expect(err).toContain('left alone');
    expect(readFileSync(join(cwd, 'mine.job.yaml'), 'utf8')).toBe('precious');
  });

  it('asks at a terminal and puts the answers in', async () => {
    const cwd = folder();
    const answers = [
      'My winch',
      'mm',
      '150 N.m',
      '900 rpm',
      '',
      '100',
      '12',
      'male',
      '50',
      '3',
      '6',
      '80',
      'M8',
      '15',
      '',
      '110',
      '8',
      'female',
      '55',
      '3',
      '4',
      '90',
      '',
      '8.5',
      'no',
    ];
    const { code } = await run(cwd, ['new', 'winch.job.yaml'], answers);
    const text = readFileSync(join(cwd, 'winch.job.yaml'), 'utf8');
    expect(code).toBe(0);
    expect(text).toContain('My winch');
    expect(text).toMatch(/circle: 80\b/);
    expect(text).not.toMatch(/^wheel:/m);
    expect((await run(cwd, ['check', 'winch.job.yaml'])).code).toBeLessThan(2);
  });
});

describe('flanges', () => {
  it('lists, shows one with its source, and searches by measure', async () => {
    expect((await run(folder(), ['flanges'])).out).toContain('DIN100-companion');
    const one = (await run(folder(), ['flanges', 'DIN100-shaft'])).out;
    expect(one).toContain('FROM MEMORY');
    expect(one).toContain('from: DIN100-shaft');
    const near = (await run(folder(), ['flanges', '--circle', '83.6', '--holes', '6'])).out;
    expect(near.split('\n')[1]).toMatch(/^DIN100/);
  });

  it('answers a slip with near names or a plain sentence', async () => {
    const { code, err } = await run(folder(), ['flanges', 'DIN10']);
    expect(code).toBe(2);
    expect(err).toMatch(/DIN100/);
    expect((await run(folder(), ['flanges', '--circle', 'abc'])).err).toContain('--circle wants a number');
  });
});

describe('the rest', () => {
  it('prints a JSON Schema', async () => {
    const { out, code } = await run(folder(), ['schema']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ title: 'flangewright job' });
  });

  it.each([[['chekc', 'x']], [[]], [['check']], [['make', 'x', '--frobnicate']]])(
    'answers %j with a sentence and exit code 2',
    async (argv) => {
      const { code, err } = await run(folder(), argv);
      expect(code).toBe(2);
      expect(err).toMatch(/^flangewright: /);
      expect(err).not.toMatch(/\n\s+at /);
    },
  );

  it('knows --help and --version', async () => {
    expect((await run(folder(), ['--help'])).out).toContain('make <job>');
    expect((await run(folder(), ['--version'])).out).toMatch(/^\d+\.\d+\.\d+/);
  });
});
