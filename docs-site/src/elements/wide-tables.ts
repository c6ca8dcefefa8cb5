/** A table wider than its page is scrolled by keyboard as well. */
const wide = new ResizeObserver((entries) => {
  for (const { target } of entries) {
    if (target.scrollWidth > target.clientWidth) (target as HTMLElement).tabIndex = 0;
    else target.removeAttribute('tabindex');
  }
});
for (const table of document.querySelectorAll('.table')) wide.observe(table);
