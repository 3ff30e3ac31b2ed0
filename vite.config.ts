/** The page as a static folder: everything is worked out in the visitor's browser, nothing is sent anywhere. */
import { resolve } from 'node:path';
import { defineConfig } from 'vite';

export default defineConfig({
  root: resolve(import.meta.dirname, 'src/page'),
  base: './',
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
