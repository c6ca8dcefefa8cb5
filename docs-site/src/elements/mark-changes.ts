import { changedNumbers } from '../changed-numbers.js';

/** Elements that hold one statement each. */
const statements = 'p, li, td, figcaption';
const textsOf = (part: Element): string[] =>
  [...part.querySelectorAll(statements)].map((item) => item.textContent ?? '');

/** Wraps a stretch of the text below an element, where it lies within one text node. */
function wrap(element: Element, from: number, to: number): void {
  const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
  let start = 0;
  for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null) {
    const end = start + node.data.length;
    if (from >= start && to <= end) {
      const mark = document.createElement('mark');
      const rest = node.splitText(from - start);
      rest.splitText(to - from);
      rest.replaceWith(mark);
      mark.append(rest);
      return;
    }
    start = end;
  }
}

/** Puts another text into a part of the page, and marks the numbers in it that were not there before. */
export function putMarked(part: Element, markup: string): void {
  const before = textsOf(part);
  const whole = part.textContent ?? '';
  part.innerHTML = markup;
  const items = [...part.querySelectorAll(statements)];
  const pairs = items.length > 0 ? items.map((item, i) => [item, before[i] ?? ''] as const) : [[part, whole] as const];
  for (const [item, old] of pairs)
    for (const [from, to] of changedNumbers(old, item.textContent ?? '').reverse()) wrap(item, from, to);
}
