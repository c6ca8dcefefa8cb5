/** Every example of the site runs as it stands there, and prints what stands there. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { lineOf, printedOf } from '../../docs-site/src/example/printed.js';

const folder = new URL('../../docs-site/examples/', import.meta.url);
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => name.replace(/\.ts$/, ''));

describe.each(names)('%s', (name) => {
  test('prints what is pinned', async () => {
    const logged: string[] = [];
    const log = vi.spyOn(console, 'log').mockImplementation((...parts) => void logged.push(lineOf(...parts)));
    const printed = printedOf(await import(new URL(`${name}.ts`, folder).href), logged);
    log.mockRestore();
    expect(printed).not.toMatch(/NaN|Infinity|undefined|\[object/);
    await expect(printed).toMatchFileSnapshot(`../../docs-site/examples/printed/${name}.txt`);
  });

  test('asks for nothing that the page does not have', () => {
    const code = readFileSync(new URL(`${name}.ts`, folder), 'utf8');
    for (const [, from] of code.matchAll(/from '([^']+)'/g))
      expect(from).toMatch(/^(@airspring\/(core|transient|workshop)\/[a-z]+|airspring)$/);
  });
});
