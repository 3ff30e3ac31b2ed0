import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/seed.ts'],
    // Outside readers (slicers above all) take their time on two cores.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    coverage: { provider: 'v8', include: ['src/**'], exclude: ['src/cli/bin.ts'] },
  },
});
