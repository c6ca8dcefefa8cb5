/**
 * Pages that differ only by their contents: what contents decide is judged of each, in a window in which one of them was loaded whole and
 * the bodies of the others take its place, which takes a fifth of the time of a load.
 */
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, site, textOf } from './browser.js';
import { blanksBeforeCommas, leadNowhere } from './page-text.js';

/** What a head asks for. */
const asked = (text: string): ReadonlySet<string> =>
  new Set(text.slice(0, text.indexOf('<body')).match(/<(?:link(?! rel="canonical")|script|style)[^>]*>/g));

/** The tests of these pages beside one that is loaded: the one whose head asks for the most. */
export function judgeAlike(name: string, paths: readonly string[]): void {
  describe.skipIf(!hasBrowser)(name, () => {
    const { visit, address } = site();
    const texts = new Map(paths.map((path) => [path, textOf(path)]));
    const whole = paths.reduce((most, path) =>
      asked(texts.get(path) as string).size > asked(texts.get(most) as string).size ? path : most,
    );
    let page: Page;
    let complaints: readonly string[];
    /** Bytes of what the whole page asks for besides its text. */
    let shared: number;
    beforeAll(async () => {
      ({ page, complaints } = await visit(whole, { viewport: { width: 320, height: 800 } }));
      shared = await page.evaluate(() =>
        performance
          .getEntriesByType('resource')
          .reduce((sum, entry) => sum + (entry as PerformanceResourceTiming).decodedBodySize, 0),
      );
    });

    test('there are pages, and a page asks for something', () => {
      expect(paths.length).toBeGreaterThan(20);
      expect(shared).toBeGreaterThan(10_000);
    });

    test.each(paths)(
      '/%s asks for nothing else, is not wider than 320 px, and leads only where something is',
      async (path) => {
        const text = texts.get(path) as string;
        expect([...asked(text)].filter((tag) => !asked(texts.get(whole) as string).has(tag))).toEqual([]);
        expect(text.match(/<[^>]*\s(?:src|srcset|poster)="?(?:https?:)?\/\//g)).toBeNull();
        expect(Buffer.byteLength(text) + shared).toBeLessThan(350_000);
        expect(blanksBeforeCommas(text)).toEqual([]);
        const { width, words, links } = await page.evaluate(
          ({ markup, base }) => {
            const { body } = new DOMParser().parseFromString(markup, 'text/html');
            document.body.replaceWith(body);
            history.replaceState(null, '', base);
            return {
              width: document.documentElement.scrollWidth,
              words: body.querySelector('main')?.innerText.length ?? 0,
              links: Array.from(document.links, ({ href }) => href),
            };
          },
          { markup: text, base: `/${path}` },
        );
        expect(words).toBeGreaterThan(100);
        expect(width).toBeLessThanOrEqual(320);
        expect(leadNowhere(links, address())).toEqual([]);
        expect(complaints).toEqual([]);
      },
    );
  });
}
