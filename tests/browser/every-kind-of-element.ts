/** Elements that have no end. */
const VOID = /^(area|base|br|col|embed|hr|img|input|link|meta|source|track|wbr)$/;

/**
 * What stands in what: opening tags of a page with that of their parent, without what differs from element to element of a kind: their
 * texts, targets, sizes and places. Within equations and drawings it is the tags alone. The build leaves no end out.
 */
function kindsOf(page: string): ReadonlySet<string> {
  const kinds = new Set<string>();
  const parents: string[] = [];
  const text = page.replace(/<(script|style)\b[^>]*>[\s\S]*?<\/\1>/g, '');
  for (const [, tag = '', attributes = '', isEmpty, end] of text.matchAll(
    /<([a-zA-Z][\w-]*)((?:\s+[\w:-]+(?:=(?:"[^"]*"|'[^']*'|[^\s"'>]+))?)*)\s*(\/?)>|<\/([a-zA-Z][\w-]*)>/g,
  )) {
    if (end) {
      if (parents.pop() !== end) throw new Error(`an element has no end before </${end}>`);
      continue;
    }
    const names = [...attributes.matchAll(/([\w:-]+)(?:=(?:"([^"]*)"|'([^']*)'|([^\s>]+)))?/g)].map(
      ([, name, ...values]) =>
        /^(class|role|scope|type|rel|lang|dir)$/.test(name as string)
          ? `${name}=${values.find((value) => value !== undefined)}`
          : name,
    );
    const isDrawn = parents.some((parent) => parent === 'math' || parent === 'svg');
    kinds.add([isDrawn ? '' : parents.at(-1), tag, ...names.sort()].join(' '));
    if (!isEmpty && !VOID.test(tag)) parents.push(tag);
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
