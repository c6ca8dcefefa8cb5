import { type AnyValues, startsOf } from '../example/input.js';
import type { SlowPart, Worked } from '../example/worked.js';
import { PageWork } from './page-work.js';

/** Ties the numbers of a page to the part that a worker makes. Returns the function to call with every change of them. */
export function slowPart(
  article: HTMLElement,
  { inputs, slow }: Worked,
  write: (answers: SlowPart['answers']) => void,
): (values: AnyValues) => void {
  const work = new PageWork(article.dataset.model as string);
  const author = startsOf(inputs);
  let now = author;
  /** The parts that the worker makes; its first answer names them. */
  let parts: readonly Element[] = [];
  const told = ({ answers, pictures }: SlowPart, values: AnyValues) => {
    write(answers);
    const drawn = Object.entries(pictures).flatMap(([name, markup]) => {
      const element = article.querySelector(`[data-picture="${name}"]`);
      return element ? [{ element, markup }] : [];
    });
    parts = [
      ...drawn.map(({ element }) => element),
      ...Object.keys(answers).flatMap((name) => [...article.querySelectorAll(`[data-answer="${name}"]`)]),
    ];
    // A picture a frame: all at once would hold up the page.
    const place = (k: number) => {
      if (values !== now) return;
      const next = drawn[k];
      if (!next) return stale(false);
      next.element.innerHTML = next.markup;
      requestAnimationFrame(() => place(k + 1));
    };
    place(0);
  };
  const stale = (isStale: boolean) => {
    for (const part of parts) part.classList.toggle('stale', isStale);
  };

  article.addEventListener('click', (event) => {
    const link = (event.target as Element).closest<HTMLAnchorElement>('a[data-made]');
    // For the author's numbers, the file was made with the page.
    if (!link || Object.entries(author).every(([name, value]) => now[name] === value)) return;
    event.preventDefault();
    void save(link.dataset.made as string);
  });
  const save = async (file: string) => {
    const say = (words: string) => article.querySelector('[data-making]')?.replaceChildren(words);
    say(`Making ${file} …`);
    const made = await work.file(file, now);
    if (typeof made === 'string') return say(`${file} could not be made: ${made}`);
    const link = document.createElement('a');
    [link.href, link.download] = [URL.createObjectURL(made), file];
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), KEPT);
    return say(`${file} is made of the numbers as they stand here now.`);
  };

  return (values) => {
    now = values;
    if (!slow) return;
    stale(true);
    work.slow(values, (answers) => told(answers, values));
  };
}

/** A browser may begin to save a little later, ms. */
const KEPT = 60_000;
