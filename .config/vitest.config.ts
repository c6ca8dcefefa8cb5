import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
// The bytes of the kernel are those of its source, however the tests are started.
import './kernel.mjs';
import { ledgerReporter } from './ledger-reporter.js';
import { nativeSource } from './native-source.js';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Packages are read as source: no test waits for a build. */
const conditions = ['@airspring/source', 'module', 'node', 'development|production'];
const source = { resolve: { conditions }, ssr: { resolve: { conditions } } };

/** Files that take longer than a second by themselves, a quarter of them: most ask for whole jobs. */
const long = 'tests/**/*.long.test.ts';
const ofNode = {
  setupFiles: ['tests/setup.ts'],
  ...nativeSource,
  testTimeout: 60_000,
  hookTimeout: 60_000,
  maxWorkers: '100%',
};
const apart = ['**/node_modules/**', 'tests/browser/**', 'tests/release/**'];

export default defineConfig({
  root,
  cacheDir: '.cache/vite',
  test: {
    reporters: ['default', ledgerReporter(root)],
    projects: [
      {
        ...source,
        root,
        test: { name: 'numbers', ...ofNode, include: ['tests/**/*.test.ts'], exclude: [...apart, long] },
      },
      {
        ...source,
        root,
        test: { name: 'long', ...ofNode, include: [long], exclude: apart },
      },
      {
        ...source,
        root,
        test: {
          name: 'types',
          include: [],
          typecheck: {
            enabled: true,
            only: true,
            checker: fileURLToPath(new URL('type-tests.mjs', import.meta.url)),
            include: ['tests/types/**/*.test-d.ts'],
            // Its own, so that no other test is compiled for these.
            tsconfig: 'tests/types/tsconfig.json',
            // The errors of other files are for `npm run types`: one place reports each.
            ignoreSourceErrors: true,
          },
        },
      },
    ],
  },
});
