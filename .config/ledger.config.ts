import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { ledgerReporter } from './ledger-reporter.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const conditions = ['@airspring/source', 'module', 'node', 'development|production'];

/** The checks against something outside alone: all that the ledger is made of, without the other tests. */
export default defineConfig({
  root,
  cacheDir: '.cache/vite',
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    name: 'ledger',
    include: ['tests/literature/**/*.test.ts', 'tests/circuit/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    isolate: false,
    testTimeout: 60_000,
    reporters: ['dot', ledgerReporter(root)],
  },
});
