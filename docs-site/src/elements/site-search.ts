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
let index: Promise<Pagefind> | undefined;
/** The index is fetched when somebody searches. */
const loaded = (): Promise<Pagefind> => {
  const address = '/pagefind/pagefind.js';
  index ??= import(/* @vite-ignore */ address) as Promise<Pagefind>;
  return index;
};

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
    let results: readonly Result[];
    try {
      const found = await (await loaded()).search(words);
      results = await Promise.all(found.results.slice(0, SHOWN).map((each) => each.data()));
    } catch {
      status.textContent = 'The search works on the built site only.';
      return;
    }
    if (field.value.trim() !== words) return;
    status.textContent = results.length === 0 ? `Nothing has “${words}”.` : '';
    list.innerHTML = results
      .map(({ url, meta, excerpt, sub_results: [part] }) => {
        const place = part && part.title !== meta.title ? ` · ${part.title}` : '';
        return `<li><a href="${part?.url ?? url}">${meta.title}${place}</a><p>${part?.excerpt ?? excerpt}</p></li>`;
      })
      .join('');
  }
}

customElements.define('site-search', SiteSearch);
