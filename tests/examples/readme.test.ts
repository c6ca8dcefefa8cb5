/** The example of each README runs as it stands there, and prints what stands there. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';

const doors: Record<string, () => Promise<unknown>> = {
  '@airspring/core/driver': () => import('@airspring/core/driver'),
  '@airspring/core/enclosure': () => import('@airspring/core/enclosure'),
  '@airspring/core/quantity': () => import('@airspring/core/quantity'),
  '@airspring/core/response': () => import('@airspring/core/response'),
  '@airspring/core/vent': () => import('@airspring/core/vent'),
  '@airspring/transient/simulation': () => import('@airspring/transient/simulation'),
  '@airspring/workshop/mesh': () => import('@airspring/workshop/mesh'),
  '@airspring/workshop/shape': () => import('@airspring/workshop/shape'),
  '@airspring/workshop/solid': () => import('@airspring/workshop/solid'),
  airspring: () => import('airspring'),
};
const top = new URL('../../', import.meta.url);
const textOf = (readme: string): string => readFileSync(new URL(readme, top), 'utf8');
const block = (readme: string, language: string): string =>
  (new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(textOf(readme))?.[1] ?? '').trim();

const readmes = [
  'README.md',
  'packages/core/README.md',
  'packages/transient/README.md',
  'packages/workshop/README.md',
  'packages/airspring/README.md',
];

test.each(readmes)('the example prints what %s says', async (readme) => {
  const printed: string[] = [];
  vi.spyOn(console, 'log').mockImplementation((...parts) => void printed.push(parts.join(' ')));
  // Imports become dynamic ones, so that the very text of the page is what runs.
  const code = block(readme, 'ts')
    .replaceAll(/^import (\{.*\}) from ('.*');$/gm, 'const $1 = await load($2);')
    .replaceAll(' as const', '');
  const run = Object.getPrototypeOf(async () => {}).constructor('load', code);
  await run((name: string) => (doors[name] as () => Promise<unknown>)());
  vi.restoreAllMocks();
  expect(printed).not.toEqual([]);
  expect(printed.join('\n')).toBe(block(readme, 'text'));
});

test.each(readmes)('about ten lines in %s', (readme) => {
  const lines = block(readme, 'ts').split('\n');
  expect(lines.filter((line) => line.trim() !== '').length).toBeLessThanOrEqual(11);
});

test.each(['core', 'transient', 'workshop'])('the table of subpaths is that of the folders: %s', (name) => {
  const rows = [...textOf(`packages/${name}/README.md`).matchAll(/^\| `([a-z]+)` +\|/gm)].map(([, row]) => row);
  const source = new URL(`packages/${name}/src/`, top);
  // A floor without an index is for the others alone.
  const published = readdirSync(source).filter((folder) => existsSync(new URL(`${folder}/index.ts`, source)));
  expect(rows.sort()).toEqual(published.sort());
});
