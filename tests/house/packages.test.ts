/** What the program rests on: few packages, each with its reason, each under a licence that goes with ours, none that runs anything when installed. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8')) as Record<string, unknown>;
const own = read('package.json');
const needed = Object.keys(own.dependencies as Record<string, string>);
const forWork = Object.keys(own.devDependencies as Record<string, string>);

interface Locked {
  readonly version?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly hasInstallScript?: boolean;
}
const lock = read('package-lock.json') as { packages: Record<string, Locked> };
/** Every package that a user gets, direct or not, by its folder. */
const shipped = Object.entries(lock.packages).filter(([path, { dev }]) => path !== '' && dev !== true);

/** Licences that let the program be given away under MIT. */
const compatible = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'MIT AND Zlib',
];

/**
 * Packages under the LGPL: they stand beside the program as they came, loaded when asked for and replaceable by whoever has it, which is
 * what that licence asks. The geometry kernel is ours to use; the picture library comes with the boolean kernel's tools for other formats and is
 * never loaded.
 */
const besideOnly = /^replicad-opencascadejs$|^@img\/sharp-libvips-/;

function licenceOf(path: string): string {
  const { license, licenses } = read(join(path, 'package.json')) as {
    license?: unknown;
    licenses?: { type: string }[];
  };
  if (typeof license === 'string') return license.replace(/^\((.*)\)$/, '$1');
  if (typeof license === 'object' && license !== null && 'type' in license) return String(license.type);
  if (licenses) return licenses.map(({ type }) => type).join(' OR ');
  // A package that does not state it holds its text.
  const text = ['LICENSE', 'LICENSE.md'].map((name) => join(root, path, name)).find(existsSync);
  return text !== undefined && /^\s*(The )?MIT License/i.test(readFileSync(text, 'utf8')) ? 'MIT' : 'none stated';
}

/** An expression holds where every part joined by AND does, and one of those joined by OR. */
const isCompatible = (licence: string): boolean =>
  compatible.includes(licence) ||
  (licence.includes(' AND ')
    ? licence.split(' AND ').every(isCompatible)
    : licence.includes(' OR ') && licence.split(' OR ').some(isCompatible));

describe('packages', () => {
  it('that are named directly stand in DEVELOPERS.md with their reason, and none stands there that is gone', () => {
    const text = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const table = /### Dependencies, each with its reason\n([\s\S]*?)\n(?:#|$)/.exec(text)?.[1] ?? '';
    const rows = table.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| package'));
    const named = rows.flatMap((row) => (row.split('|')[1] ?? '').split(',').map((name) => name.trim()));
    const known = (name: string) =>
      named.includes(name) || named.includes(name.replace(/^@biomejs\//, '').replace(/^@vitest\/.*/, 'vitest'));
    const types = (name: string) => name.startsWith('@types/');
    expect([...needed, ...forWork].filter((name) => !types(name) && !known(name))).toEqual([]);
    const packages = [...needed, ...forWork].map((name) => name.replace(/^@biomejs\//, ''));
    expect(named.filter((name) => !packages.includes(name))).toEqual([]);
    for (const row of rows) expect((row.split('|')[2] ?? '').trim().length, row).toBeGreaterThan(8);
  });

  it('are few', () => {
    expect(needed.length).toBeLessThanOrEqual(16);
  });

  it('are all locked to a version and to the hash of what was fetched', () => {
    const open = Object.entries(lock.packages).filter(
      ([path, { version, integrity }]) => path !== '' && !(version && /^sha\d+-/.test(integrity ?? '')),
    );
    expect(open.map(([path]) => path)).toEqual([]);
    expect(shipped.length).toBeGreaterThan(needed.length);
  });

  it('that a user gets run nothing when they are installed', () => {
    expect(shipped.filter(([, { hasInstallScript }]) => hasInstallScript === true).map(([path]) => path)).toEqual([]);
    const hooks = ['preinstall', 'install', 'postinstall', 'prepare'];
    expect(Object.keys(own.scripts as object).filter((name) => hooks.includes(name))).toEqual([]);
    for (const [path] of shipped.filter(([path]) => existsSync(join(root, path)))) {
      const scripts = Object.keys((read(join(path, 'package.json')).scripts as object | undefined) ?? {});
      expect(
        scripts.filter((name) => hooks.slice(0, 3).includes(name)),
        path,
      ).toEqual([]);
    }
  });

  it('that a user gets are under a licence that goes with ours', () => {
    const there = shipped.filter(([path]) => existsSync(join(root, path, 'package.json')));
    const odd = there
      .map(([path]) => [path.replace(/^.*node_modules\//, ''), licenceOf(path)] as const)
      .filter(([name, licence]) => !isCompatible(licence) && !(licence.startsWith('LGPL-') && besideOnly.test(name)));
    expect(odd).toEqual([]);
    // A package that is not there can be only one that is optional on this machine.
    for (const [path, { optional }] of shipped) if (!existsSync(join(root, path))) expect(optional, path).toBe(true);
    expect(own.license).toBe('MIT');
    expect(readFileSync(join(root, 'LICENSE'), 'utf8')).toMatch(/MIT License/);
  });
});
