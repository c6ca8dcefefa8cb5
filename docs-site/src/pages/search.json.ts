/** What the search knows of the pages written by hand: fetched when somebody searches. */
import { getCollection } from 'astro:content';
import type { Findable } from '../search/rank.js';
import words from '../search/words.json';

interface Entry {
  readonly id: string;
  readonly data: { readonly title: string; readonly summary?: string; readonly keywords: readonly string[] };
}

const more: Readonly<Record<string, string>> = words;

export async function GET(): Promise<Response> {
  const entries: readonly Entry[] = await getCollection('docs', ({ id }: Entry) => !/^(api|formulas|404)/.test(id));
  const pages = entries.map(({ id, data }): Findable => {
    const address = id === 'index' ? '/' : `/${id}/`;
    const { title, summary = '', keywords } = data;
    return { address, title, summary, keywords: keywords.join(' '), words: more[address] ?? '' };
  });
  return Response.json(pages);
}
