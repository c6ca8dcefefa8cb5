import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
/** How long a test waits for what must come, beside others: how soon it comes is for those that measure it. */
const timeouts = { testTimeout: 240_000, hookTimeout: 60_000, expect: { poll: { timeout: 20_000 } } };
/** Files that measure times on the wall, or where a page does, run one after the other, when nothing else does. Times of the processor may be shared. */
const timed = ['music', 'times'].map((name) => `tests/browser/${name}.test.ts`);

/** The built site in a real browser; apart from the other tests, which need neither. */
export default defineConfig({
  root,
  cacheDir: '.cache/vite',
  test: {
    projects: [
      {
        root,
        test: {
          ...timeouts,
          name: 'looks',
          include: ['tests/browser/**/*.test.ts'],
          exclude: timed,
          // Each paints on processors of its own. Two would be enough if they did not wait half a second after each drag.
          maxWorkers: 3,
          sequence: { groupOrder: 0 },
        },
      },
      {
        root,
        test: { ...timeouts, name: 'times', include: timed, fileParallelism: false, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
