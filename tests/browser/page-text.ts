/** What the text of a built page tells without a browser. */
import { existsSync } from 'node:fs';
import { built, textOf } from './browser.js';

/** Blanks between a number or a link and the comma after it. */
export const blanksBeforeCommas = (text: string): readonly string[] =>
  text.match(/[^>]{0,30}<\/(?:scrub-number|output|a|button|em|strong)>\s+[.,;:](?=[\s<])/g) ?? [];

const known = new Map<string, ReadonlySet<string>>();
function anchorsOf(path: string): ReadonlySet<string> {
  const found =
    known.get(path) ?? new Set([...textOf(path).matchAll(/\sid="?([^"\s>]+)/g)].map(([, id]) => id as string));
  known.set(path, found);
  return found;
}

/** The links to this site that no page, file or anchor of it answers. */
export const leadNowhere = (links: readonly string[], address: string): readonly string[] =>
  [...new Set(links)].filter((href) => {
    if (!href.startsWith(address)) return false;
    const { pathname, hash } = new URL(href);
    if (!pathname.endsWith('/')) return !existsSync(built(pathname));
    if (!existsSync(built(`${pathname}index.html`))) return true;
    return hash !== '' && !anchorsOf(pathname).has(decodeURIComponent(hash.slice(1)));
  });
