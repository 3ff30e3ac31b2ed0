/**
 * The program's own modules as a few files: hundreds of small ones cost more to find and read than a job costs to judge. Packages stay as
 * they are installed, and what is imported late stays a file of its own. tsc has already made dist/ for those who import the core.
 */
import { resolve } from 'node:path';
import { defineConfig } from 'vite';

const cli = (name: string) => resolve(import.meta.dirname, 'src/cli', name);

export default defineConfig({
  build: {
    ssr: true,
    outDir: resolve(import.meta.dirname, 'dist/cli'),
    emptyOutDir: true,
    target: 'node20',
    sourcemap: true,
    rollupOptions: {
      input: { bin: cli('bin.ts'), 'sweep-worker': cli('sweep-worker.ts') },
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
