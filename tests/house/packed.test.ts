/** The package as a user gets it: packed, installed in another folder, run there. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folder } from '../cli/terminal.ts';
import { program, root } from '../program.ts';

function told(cwd: string, command: string, argv: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(command, argv, { cwd, encoding: 'utf8' });
  if (status === null || status > 1)
    throw new Error(`${command} ${argv.join(' ')} ended with ${status}: ${stdout}${stderr}`);
  return stdout;
}

interface Locked {
  readonly dev?: boolean;
}

describe('the packed program', () => {
  it('installs elsewhere and runs: its version, a check, a make', () => {
    // Packed from a copy, so that what others build meanwhile is left alone.
    const copy = folder('pack');
    const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string; files: string[] };
    told(copy, 'cp', [
      '-r',
      ...own.files.filter((name) => name !== 'dist').map((name) => join(root, name)),
      join(root, 'package.json'),
      copy,
    ]);
    told(root, process.execPath, [
      join(root, 'node_modules/typescript/bin/tsc'),
      '-p',
      'tsconfig.build.json',
      '--outDir',
      join(copy, 'dist'),
    ]);
    told(copy, 'cp', ['-r', dirname(program), 'dist/cli']);
    const [tarball] = JSON.parse(told(copy, 'npm', ['pack', '--json', '--ignore-scripts', '--offline'])) as [
      { filename: string; files: { path: string }[] },
    ];
    const paths = tarball.files.map(({ path }) => path);
    for (const path of [
      'dist/cli/bin.js',
      'dist/core.js',
      'dist/core.d.ts',
      'LICENSE',
      'README.md',
      'presets/kart.job.yaml',
    ])
      expect(paths).toContain(path);
    expect(
      paths.filter((path) => !/^(dist|presets)\/|^(package\.json|README\.md|CHANGELOG\.md|LICENSE)$/.test(path)),
    ).toEqual([]);

    // Installed as npm lays it out: the unpacked tarball, and beside it what the lock file names for users, and nothing else.
    const elsewhere = folder('installed');
    const home = join(elsewhere, 'node_modules/flangewright');
    mkdirSync(home, { recursive: true });
    told(elsewhere, 'tar', ['-xzf', join(copy, tarball.filename), '-C', home, '--strip-components=1']);
    const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, Locked>;
    };
    for (const [path, { dev }] of Object.entries(packages)) {
      if (path === '' || dev === true || path.slice(13).includes('node_modules/') || !existsSync(join(root, path)))
        continue;
      mkdirSync(dirname(join(elsewhere, path)), { recursive: true });
      symlinkSync(join(root, path), join(elsewhere, path));
    }
    const bin = join(home, 'dist/cli/bin.js');
    expect(told(elsewhere, process.execPath, [bin, '--version']).trim()).toBe(own.version);
    copyFileSync(join(home, 'presets/kart.job.yaml'), join(elsewhere, 'my.job.yaml'));
    expect(told(elsewhere, process.execPath, [bin, 'check', 'my.job.yaml'])).toMatch(/concentric|off centre/);
    told(elsewhere, process.execPath, [
      bin,
      'make',
      'my.job.yaml',
      '-o',
      'out',
      '--only',
      'report,mockup,outline,preview,paper',
    ]);
    expect(readdirSync(join(elsewhere, 'out')).some((name) => name.endsWith('.stl'))).toBe(true);
    writeFileSync(
      join(elsewhere, 'use.mjs'),
      "import { readJob } from 'flangewright'; console.log(readJob('job: 2', 'x').ok);",
    );
    expect(told(elsewhere, process.execPath, ['use.mjs']).trim()).toBe('false');
  }, 240_000);
});
