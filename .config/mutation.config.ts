import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { instrument } from './instrument.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const conditions = ['@airspring/source', 'module', 'node', 'development|production'];

/** Apart from the other tests, since it changes the formulas that they run. */
export default defineConfig({
  root,
  cacheDir: '.cache/vite-mutation',
  plugins: [instrument(root)],
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: { name: 'mutation', include: ['tests/mutation/*.mutants.ts'] },
});
