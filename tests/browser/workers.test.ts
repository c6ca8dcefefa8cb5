/** Workers of a real browser give what the page gives by itself, and end when they are cancelled. */
import { fileURLToPath } from 'node:url';
import type { Brief } from 'airspring';
import { chromium } from 'playwright-core';
import { build, type Rollup } from 'vite';
import { expect, test } from 'vitest';
import whaleBench from '../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import { executablePath, flags, hasBrowser } from './browser.js';
import type { Tried } from './workers/page.js';

declare const tried: (brief: Brief) => Promise<Tried>;

/** The text of a file beside this one with all that it imports, for a browser. */
async function bundled(file: string): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['@airspring/source'] },
    build: { write: false, rollupOptions: { input: fileURLToPath(new URL(file, import.meta.url)) } },
  });
  return (made as Rollup.RollupOutput).output[0].code;
}

test.skipIf(!hasBrowser)('two workers of a page', async () => {
  const texts: Readonly<Record<string, readonly [type: string, text: string]>> = {
    '/': ['text/html', '<script type="module" src="/page.js"></script>'],
    '/page.js': ['text/javascript', await bundled('workers/page.ts')],
    '/worker.js': ['text/javascript', await bundled('workers/worker.ts')],
  };
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: flags });
  try {
    const page = await browser.newPage();
    await page.route('http://page.test/**', (route) => {
      const [contentType, body] = texts[new URL(route.request().url()).pathname] ?? ['text/plain', ''];
      return route.fulfill({ contentType, body });
    });
    await page.goto('http://page.test/');
    const closed = { ...whaleBench, box: { kinds: ['closed'] } } as Brief;
    const { alone, shared, cancelled, faults } = await page.evaluate((brief) => tried(brief), closed);
    expect(shared).toEqual(alone);
    expect(shared.boxes.length).toBeGreaterThan(0);
    expect(cancelled).toBe('enough');
    expect(faults).toEqual([expect.objectContaining({ path: 'title' })]);
    // The page is told a little later that they have ended.
    await expect.poll(() => page.workers().length).toBe(0);
  } finally {
    await browser.close();
  }
});
