import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The built site in a real browser; apart from the other tests, which need neither. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: '.cache/vite',
  test: {
    include: ['tests/browser/**/*.test.ts'],
    // Times are measured: one thing at a time.
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
