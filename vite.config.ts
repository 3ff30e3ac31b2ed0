/** The page as a static folder: everything is worked out in the visitor's browser, nothing is sent anywhere. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import { parsePatterns } from './src/core.ts';
import { openedWith, wholeAnswer } from './src/page/answer/opened.ts';

/** Texts of a folder's files of one ending, by their names without it. */
function textsIn(folder: string, ending: string): Record<string, string> {
  const home = resolve(import.meta.dirname, folder);
  const names = readdirSync(home).filter((name) => name.endsWith(ending));
  return Object.fromEntries(
    names.sort().map((name) => [name.slice(0, -ending.length), readFileSync(join(home, name), 'utf8')]),
  );
}

/** What the page knows before its worker is loaded; see `opened.ts`. */
const made: Plugin = {
  name: 'made',
  resolveId: (id) => (id.startsWith('made:') ? id : null),
  async load(id) {
    const opened = openedWith(textsIn('presets', '.job.yaml'), 'orchard-truck');
    const read = (of: unknown) => `JSON.parse(${JSON.stringify(JSON.stringify(of))})`;
    if (id === 'made:opened') return `export default ${read(opened)}`;
    if (id !== 'made:first') return null;
    const first = opened.jobs[opened.first] ?? '';
    const answer = await wholeAnswer(first, parsePatterns(textsIn('presets/flanges', '.yaml')));
    return `export default () => ${read(answer)}`;
  },
};

/** Licences of what the page carries with it; the solid modeller's asks for its text beside it. */
const notices: Plugin = {
  name: 'notices',
  generateBundle() {
    const licence = (name: string) =>
      readFileSync(resolve(import.meta.dirname, 'node_modules', name, 'LICENSE'), 'utf8');
    const about = [
      'This page is flangewright (MIT). It carries these packages, each under its own licence.',
      'replicad-opencascadejs (the solid modeller in the largest .wasm file) is LGPL-2.1: it is a file of its own and may be replaced by',
      'another build of the same name. Its source is published with that package.',
      '',
    ].join('\n');
    const names = [
      'replicad-opencascadejs',
      'manifold-3d',
      'pdfkit',
      'yaml',
      'zod',
      'preact',
      'three',
      'makerjs',
      'earcut',
      'fflate',
    ];
    const texts = names.flatMap((name) => {
      try {
        return [`\n==== ${name} ====\n${licence(name)}`];
      } catch {
        return [`\n==== ${name} ====\nSee the package's own licence.\n`];
      }
    });
    this.emitFile({ type: 'asset', fileName: 'LICENCES.txt', source: about + texts.join('') });
  },
};

export default defineConfig({
  root: resolve(import.meta.dirname, 'src/page'),
  base: './',
  plugins: [made, notices],
  build: {
    outDir: resolve(import.meta.dirname, 'dist/page'),
    emptyOutDir: true,
    target: 'es2022',
    // Kernels and fonts stay files of their own: the first picture needs none of them.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
  },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
