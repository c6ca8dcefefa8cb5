import { readdirSync } from 'node:fs';

/** How the message begins, by which a build knows that another try is worth it. */
export const LOST = 'These texts have no page';

/**
 * Throws where a text has no page. Astro keeps texts in a store that it saves now and then; a save that is asked for while another one
 * is being written is lost. On a busy machine that may be the last one, and the pages of what came after the one before are missing.
 */
export function refuseLostTexts(folder: string, pages: readonly { readonly pathname: string }[]): void {
  const there = new Set(pages.map(({ pathname }) => pathname.replace(/\/$/, '')));
  const missing = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.mdx?$/.test(file))
    .map((file) => file.replace(/\.mdx?$/, '').replace(/(^|\/)index$/, ''))
    .filter((path) => !there.has(path))
    .sort();
  if (missing.length > 0) throw new Error(`${LOST}: ${missing.join(', ')}.`);
}
