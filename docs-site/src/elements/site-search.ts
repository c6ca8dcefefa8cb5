import { type Findable, rank } from '../search/rank.js';

interface Result {
  readonly url: string;
  readonly excerpt: string;
  readonly meta: { readonly title: string };
  readonly sub_results: readonly { readonly title: string; readonly url: string; readonly excerpt: string }[];
}
interface Pagefind {
  search(words: string): Promise<{ readonly results: readonly { data(): Promise<Result> }[] }>;
}

const SHOWN = 8;
/** The greatest number of pages listed by what a question means; the index of all words gives the others. */
const MEANT = 4;
let known: Promise<readonly Findable[]> | undefined;
const pages = (): Promise<readonly Findable[]> => {
  known ??= fetch('/search.json').then((answer) => answer.json() as Promise<readonly Findable[]>);
  return known;
};

/** The order of hits of one kind: pages to read first, lists last. */
const place = (url: string): number => (/^\/api\//.test(url) ? 2 : /^\/(formulas|bibliography)\//.test(url) ? 1 : 0);
let index: Promise<Pagefind> | undefined;
/** The index is fetched when somebody searches. */
const loaded = (): Promise<Pagefind> => {
  const address = '/pagefind/pagefind.js';
  index ??= import(/* @vite-ignore */ address) as Promise<Pagefind>;
  return index;
};

/** A hit; the excerpt of the index is markup, the words it was found by are marked in it. */
function item(address: string, title: string, text: string, excerpt?: string): HTMLLIElement {
  const [line, link, words] = [document.createElement('li'), document.createElement('a'), document.createElement('p')];
  link.href = address;
  link.textContent = title;
  if (excerpt === undefined) words.textContent = text;
  else words.innerHTML = excerpt;
  line.append(link, words);
  return line;
}

/** A search over words and symbols: one dialog, a list of links. */
class SiteSearch extends HTMLElement {
  connectedCallback(): void {
    this.hidden = false;
    const dialog = document.createElement('dialog');
    dialog.className = 'search';
    dialog.setAttribute('aria-label', 'Search');
    dialog.innerHTML = `<form method="dialog"><label>Search for a word or a symbol, such as <i>f3</i> or <i>Qts</i><input type="search" autocomplete="off" spellcheck="false"></label><button>Close</button></form><p role="status"></p><ol></ol>`;
    document.body.append(dialog);
    const field = dialog.querySelector('input') as HTMLInputElement;
    this.querySelector('button')?.addEventListener('click', () => dialog.showModal());
    document.addEventListener('keydown', (event) => {
      const writing = (event.target as HTMLElement).closest('input, textarea, [contenteditable="true"]');
      if (event.key !== '/' || writing || dialog.open) return;
      event.preventDefault();
      dialog.showModal();
    });
    dialog.addEventListener('click', ({ target }) => {
      if (target === dialog || (target as Element).closest('ol a')) dialog.close();
    });
    field.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      dialog.querySelector<HTMLAnchorElement>('ol a')?.click();
    });
    field.addEventListener('input', () => void this.#find(field.value.trim(), dialog));
  }

  async #find(words: string, dialog: HTMLDialogElement): Promise<void> {
    const [status, list] = [dialog.querySelector('p') as HTMLElement, dialog.querySelector('ol') as HTMLElement];
    const field = dialog.querySelector('input') as HTMLInputElement;
    if (words === '') {
      list.replaceChildren();
      status.textContent = '';
      return;
    }
    let meant: readonly Findable[];
    let results: readonly Result[];
    try {
      const [listed, index] = await Promise.all([pages(), loaded()]);
      meant = rank(words, listed).slice(0, MEANT);
      const found = await index.search(words);
      results = await Promise.all(found.results.slice(0, 3 * SHOWN).map((each) => each.data()));
    } catch {
      status.textContent = 'The search works on the built site only.';
      return;
    }
    if (field.value.trim() !== words) return;
    const taken = new Set(meant.map(({ address }) => address));
    const others = results
      .filter(({ url }) => !taken.has(url))
      .map((result) => ({ result, order: place(result.url) }))
      .sort((a, b) => a.order - b.order)
      .slice(0, SHOWN - meant.length);
    status.textContent = meant.length + others.length === 0 ? `Nothing has “${words}”.` : '';
    list.replaceChildren(
      ...meant.map(({ address, title, summary }) => item(address, title, summary)),
      ...others.map(
        ({
          result: {
            url,
            meta,
            excerpt,
            sub_results: [part],
          },
        }) => {
          const where = part && part.title !== meta.title ? ` · ${part.title}` : '';
          return item(part?.url ?? url, `${meta.title}${where}`, '', part?.excerpt ?? excerpt);
        },
      ),
    );
  }
}

customElements.define('site-search', SiteSearch);
