import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { nativeSource } from './native-source.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const conditions = ['@airspring/source', 'module', 'node', 'development|production'];
const counted = join(root, '.cache', 'fuzz-cases');

/** About a million cases together; the environment asks for more or fewer. */
process.env.FUZZ_RUNS ??= '19000';
/** Other cases each time: a red one prints its seed, and FUZZ_SEED draws it again. */
process.env.FUZZ_SEED ??= String(Date.now() % 2 ** 31);

/** The files that draw as many cases as they are asked for. */
const files = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts') && !file.includes('node_modules'))
  .map((file) => join('tests', file))
  .filter((file) => /\bfuzzRuns\b/.test(readFileSync(join(root, file), 'utf8')));

export default defineConfig({
  root,
  cacheDir: '.cache/vite',
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    name: 'fuzz',
    ...nativeSource,
    maxWorkers: '100%',
    include: files,
    setupFiles: ['tests/setup.ts', 'tests/arbitrary/count-cases.ts'],
    testTimeout: 900_000,
    reporters: [
      'default',
      {
        onInit() {
          mkdirSync(join(root, '.cache'), { recursive: true });
          writeFileSync(counted, '');
        },
        onTestRunEnd() {
          const runs = readFileSync(counted, 'utf8').trim().split('\n').map(Number);
          const cases = runs.reduce((sum, count) => sum + count, 0);
          console.log(`fuzz: ${cases} cases in ${runs.length} properties, seed ${process.env.FUZZ_SEED}`);
        },
      },
    ],
  },
});
