/** A heading leads to itself, so that its address can be copied. */
export function anchorHeadings(part: ParentNode): void {
  for (const heading of part.querySelectorAll<HTMLElement>(':is(h2, h3)[id]')) {
    const anchor = document.createElement('a');
    anchor.className = 'anchor';
    anchor.href = `#${heading.id}`;
    anchor.setAttribute('aria-label', `Address of: ${heading.textContent}`);
    heading.append(anchor);
  }
}

const article = document.querySelector('article');
if (article) anchorHeadings(article);
