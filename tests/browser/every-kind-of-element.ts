/** Opening tags of a page, without what differs from element to element of a kind: their texts, targets, sizes and places. */
function kindsOf(text: string): ReadonlySet<string> {
  const kinds = new Set<string>();
  for (const [, tag, attributes = ''] of text.matchAll(
    /<([a-z][\w-]*)((?:\s+[\w:-]+(?:=(?:"[^"]*"|'[^']*'|[^\s>]+))?)*)\s*\/?>/g,
  )) {
    const names = [...attributes.matchAll(/([\w:-]+)(?:=(?:"([^"]*)"|'([^']*)'|([^\s>]+)))?/g)].map(
      ([, name, ...values]) =>
        /^(class|role|scope|type|rel|lang|dir)$/.test(name as string)
          ? `${name}=${values.find((value) => value !== undefined)}`
          : name,
    );
    kinds.add([tag, ...names.sort()].join(' '));
  }
  // And which heading follows which.
  const headings = [...text.matchAll(/<h([1-6])\b/g)].map(([, level]) => level);
  headings.forEach((level, k) => kinds.add(`h${headings[k - 1]} h${level}`));
  return kinds;
}

/** Few pages that together have every kind of element that any of these has: at each step the one with the most kinds not yet seen. */
export function coveringEveryElement(pages: readonly (readonly [path: string, text: string])[]): string[] {
  const left = pages.map(([path, text]) => ({ path, kinds: new Set(kindsOf(text)) }));
  const chosen: string[] = [];
  for (;;) {
    const most = left.reduce((best, page) => (page.kinds.size > best.kinds.size ? page : best), {
      path: '',
      kinds: new Set<string>(),
    });
    if (most.kinds.size === 0) return chosen;
    chosen.push(most.path);
    const seen = [...most.kinds];
    for (const { kinds } of left) for (const kind of seen) kinds.delete(kind);
  }
}
