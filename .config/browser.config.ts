import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const timeouts = { testTimeout: 60_000, hookTimeout: 60_000 };
/** Files that measure times on the wall run one after the other, when nothing else does. Times of the processor may be shared. */
const timed = ['brief', 'code', 'desk', 'music', 'retrofit'].map((name) => `tests/browser/${name}.test.ts`);

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
          // Drags wait for the screen most of the time.
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
