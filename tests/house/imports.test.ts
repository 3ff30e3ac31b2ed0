/** The house's plan, held against the code: who may import whom, no circles, each kernel package named in one file. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../../src');

/** The table of DEVELOPERS.md: each room and the rooms it may import from (itself is always allowed). */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  units: [],
  standards: ['units'],
  model: ['units'],
  geometry: ['units', 'model'],
  formulas: ['units', 'model'],
  measure: ['units', 'standards', 'formulas', 'model'],
  parts: ['units', 'standards', 'formulas', 'geometry', 'model'],
  job: ['parts', 'measure', 'standards', 'formulas', 'units', 'model'],
  design: ['job', 'parts', 'geometry', 'formulas', 'standards', 'units', 'model'],
  rotor: ['job', 'parts', 'geometry', 'standards', 'formulas', 'units', 'model'],
  inspect: ['design', 'rotor', 'job', 'parts', 'geometry', 'standards', 'formulas', 'units', 'model'],
  shop: ['rotor', 'job', 'parts', 'geometry', 'standards', 'formulas', 'units', 'model'],
  validate: ['inspect', 'rotor', 'job', 'parts', 'geometry', 'standards', 'formulas', 'units', 'model'],
  preflight: ['job', 'measure', 'geometry', 'standards', 'formulas', 'units', 'model'],
  solids: ['geometry', 'model', 'units', 'types'],
  drawing: ['geometry', 'model', 'units', 'standards'],
  write: ['geometry', 'model', 'units', 'types'],
  report: ['shop', 'inspect', 'rotor', 'job', 'model', 'units'],
  products: [
    'preflight',
    'shop',
    'inspect',
    'rotor',
    'job',
    'parts',
    'validate',
    'solids',
    'drawing',
    'write',
    'report',
    'geometry',
    'standards',
    'model',
    'units',
  ],
  'core.ts': [
    'preflight',
    'inspect',
    'measure',
    'job',
    'design',
    'validate',
    'products',
    'report',
    'parts',
    'standards',
    'units',
    'model',
  ],
  cli: ['core.ts'],
  // A finding's words are taken apart by its model: small enough for the page's first script.
  page: ['core.ts', 'model'],
};

/** Packages that must be named in one file only, so that they can be replaced there. */
const onePlace = [
  'manifold-3d',
  'earcut',
  'makerjs',
  '@tarikjabiri/dxf',
  '@jscad/dxf-serializer',
  'yargs',
  'pdfkit',
  'three',
  'replicad-opencascadejs',
  'fflate',
];

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(path) && !path.endsWith('.d.ts') ? [path] : [];
  });
}

const files = filesIn(root);
const roomOf = (path: string) => relative(root, path).split(/[\\/]/)[0] as string;
const source = (path: string) => readFileSync(path, 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');

interface Import {
  readonly from: string;
  readonly typeOnly: boolean;
}

function importsOf(path: string): Import[] {
  const text = source(path);
  const found = [
    ...text.matchAll(
      /(?:import|export)\s+(type\s+)?[^'";]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)|import\s+'([^']+)'/g,
    ),
  ];
  return found.map((match) => ({
    from: (match[2] ?? match[3] ?? match[4]) as string,
    typeOnly: match[1] !== undefined,
  }));
}

describe('the plan of the house', () => {
  it('knows every room', () => {
    expect([...new Set(files.map(roomOf))].filter((room) => room !== 'types').sort()).toEqual(
      Object.keys(mayImport).sort(),
    );
  });

  it('lets a room import only from the rooms below it', () => {
    const wrong = files.flatMap((path) =>
      importsOf(path)
        .filter(({ from }) => from.startsWith('.'))
        .map(({ from }) => ({ path, room: roomOf(resolve(dirname(path), from)) }))
        .filter(({ room }) => room !== roomOf(path) && !mayImport[roomOf(path)]?.includes(room))
        .map(({ room }) => `${relative(root, path)} imports ${room}`),
    );
    expect(wrong).toEqual([]);
  });

  it('has no circles between files', () => {
    const edges = new Map(
      files.map((path) => [
        path,
        importsOf(path)
          .filter(({ from }) => from.startsWith('.'))
          .map(({ from }) => resolve(dirname(path), from)),
      ]),
    );
    const done = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) {
        circles.push([...trail.slice(trail.indexOf(path)), path].map((p) => relative(root, p)).join(' -> '));
        return;
      }
      if (done.has(path)) return;
      for (const next of edges.get(path) ?? []) walk(next, [...trail, path]);
      done.add(path);
    };
    for (const path of files) walk(path, []);
    expect(circles).toEqual([]);
  });

  it.each(onePlace)('names %s in one file only', (name) => {
    const places = files.filter((path) =>
      importsOf(path).some(({ from }) => from === name || from.startsWith(`${name}/`)),
    );
    expect(places.map((path) => relative(root, path))).toHaveLength(1);
  });

  it('keeps files, clock, console and process out of the core', () => {
    const touching = files
      .filter((path) => roomOf(path) !== 'cli')
      .filter((path) =>
        /\bconsole\.|\bprocess\.|\bDate\.now\b|new Date\(\)|Math\.random|from 'node:/.test(source(path)),
      );
    expect(touching.map((path) => relative(root, path))).toEqual([]);
  });

  it('leaves no last bit of a sine or an angle to the engine', () => {
    const loose = files.filter(
      (path) =>
        roomOf(path) !== 'page' &&
        !path.endsWith('/units/trig.ts') &&
        /Math\.(sin|cos|tan|a(tan2?|sin|cos))\b/.test(source(path)),
    );
    expect(loose.map((path) => relative(root, path))).toEqual([]);
  });

  it('keeps files short enough to be one idea', () => {
    const long = files.filter((path) => readFileSync(path, 'utf8').split('\n').length > 320);
    expect(long.map((path) => relative(root, path))).toEqual([]);
  });
});
