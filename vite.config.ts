/** The page as a static folder: everything is worked out in the visitor's browser, nothing is sent anywhere. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

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
  plugins: [notices],
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
