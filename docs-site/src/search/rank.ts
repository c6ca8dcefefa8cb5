/** A page as the search sees it. */
export interface Findable {
  readonly address: string;
  readonly title: string;
  readonly summary: string;
  /** What it is about, in the words of the page. */
  readonly keywords: string;
  /** Other words for what it is about, as people say them. */
  readonly words: string;
}

/** Words of a question that name nothing. */
const EMPTY = new Set(
  'a an and are as at be can do does for from get how i if in is it its me my not of on one or should the there this to use want what when where which why will with you your'.split(
    ' ',
  ),
);
/** The title says most, then what the page says that it is about, then other words for that. */
const WEIGHTS = { title: 2, keywords: 1.75, words: 1.5, summary: 1 } as const;
const fields = ['title', 'keywords', 'words', 'summary'] as const;

/** A word without its ending: 'ports' and 'port' are one word, so are 'leaking' and 'leak'. */
const stem = (word: string): string =>
  word.length > 4 ? word.replace(/(?:ing|ed|es|e|s)$/, '').replace(/(.)\1$/, '$1') : word.replace(/(?<=..)s$/, '');

const stems = (text: string): readonly string[] =>
  (text.toLowerCase().match(/[\p{L}\d]+/gu) ?? []).filter((word) => !EMPTY.has(word)).map(stem);

/** The pages that a question may mean, the best first. A word that few pages have says more than one that many have. */
export function rank(question: string, pages: readonly Findable[]): readonly Findable[] {
  const asked = [...new Set(stems(question))];
  const known = pages.map((page) => ({
    page,
    title: new Set(stems(page.title)),
    keywords: new Set(stems(page.keywords)),
    words: new Set(stems(page.words)),
    summary: new Set(stems(page.summary)),
  }));
  const rarity = asked.map((word) => {
    const count = known.filter((one) => fields.some((field) => one[field].has(word))).length;
    return Math.log(1 + pages.length / Math.max(1, count));
  });
  return known
    .map((one) => {
      const parts = asked.map(
        (word, i) => rarity[i]! * Math.max(0, ...fields.map((field) => (one[field].has(word) ? WEIGHTS[field] : 0))),
      );
      return { page: one.page, score: parts.reduce((sum, part) => sum + part, 0) };
    })
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ page }) => page);
}
