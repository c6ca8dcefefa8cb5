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

/** The texts of page and worker with all that they import, by their addresses. */
async function bundled(): Promise<ReadonlyMap<string, string>> {
  const inputs = ['page', 'worker'].map((name) => [
    name,
    fileURLToPath(new URL(`workers/${name}.ts`, import.meta.url)),
  ]);
  const made = await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['@airspring/source'] },
    build: {
      write: false,
      minify: false,
      modulePreload: false,
      rollupOptions: {
        input: Object.fromEntries(inputs),
        output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
      },
    },
  });
  const { output } = made as Rollup.RollupOutput;
  return new Map(output.flatMap((one) => (one.type === 'chunk' ? [[`/${one.fileName}`, one.code] as const] : [])));
}

test.skipIf(!hasBrowser)('two workers of a page', async () => {
  const texts = await bundled();
  const browser = await chromium.launch({ ...(executablePath && { executablePath }), args: flags });
  try {
    const page = await browser.newPage();
    await page.route('http://page.test/**', (route) => {
      const { pathname } = new URL(route.request().url());
      return pathname === '/'
        ? route.fulfill({ contentType: 'text/html', body: '<script type="module" src="/page.js"></script>' })
        : route.fulfill({ contentType: 'text/javascript', body: texts.get(pathname) ?? '' });
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
