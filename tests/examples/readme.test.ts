/** The example of the README runs as it stands there, and prints what stands there. */
import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const block = (language: string): string =>
  (new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(readme)?.[1] ?? '').trim();

test('the example prints what the README says', async () => {
  const printed: string[] = [];
  vi.spyOn(console, 'log').mockImplementation((...parts) => void printed.push(parts.join(' ')));
  // Imports become dynamic ones, so that the very text of the page is what runs.
  const code = block('ts').replaceAll(/^import (\{.*\}) from ('.*');$/gm, 'const $1 = await load($2);');
  const doors: Record<string, () => Promise<unknown>> = {
    '@airspring/core/driver': () => import('@airspring/core/driver'),
    '@airspring/core/enclosure': () => import('@airspring/core/enclosure'),
    '@airspring/core/quantity': () => import('@airspring/core/quantity'),
    '@airspring/core/response': () => import('@airspring/core/response'),
    '@airspring/core/vent': () => import('@airspring/core/vent'),
  };
  const run = Object.getPrototypeOf(async () => {}).constructor('load', code);
  await run((name: string) => (doors[name] as () => Promise<unknown>)());
  vi.restoreAllMocks();
  expect(printed.join('\n')).toBe(block('text'));
});

test('ten lines, as it says', () => {
  expect(
    block('ts')
      .split('\n')
      .filter((line) => line.trim() !== '').length,
  ).toBeLessThanOrEqual(11);
});
