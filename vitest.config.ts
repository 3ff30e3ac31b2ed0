import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/seed.ts'],
    globalSetup: ['tests/program.ts'],
    // Left to itself vitest keeps one of two cores free.
    maxWorkers: '100%',
    // Files of one worker share what they import: reading hundreds of modules anew for each file took as long as many of the tests. So a test
    // must leave nothing behind: no mocked module, no changed environment.
    isolate: false,
    // Outside readers (slicers above all) take their time on two cores.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // How long the page takes is measured in the bench; a busy machine must not fail what it shows in the end.
    expect: { poll: { timeout: 20_000 } },
    // What decides a verdict: numbers, tables and checks. Everything else is seen by what it makes.
    coverage: {
      provider: 'v8',
      include: ['src/{formulas,standards,validate}/**'],
      reporter: ['text', 'json-summary'],
      thresholds: {
        'src/formulas/**': { lines: 95 },
        'src/standards/**': { lines: 95 },
        'src/validate/**': { lines: 95 },
      },
    },
  },
});
