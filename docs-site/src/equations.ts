interface Node {
  readonly type: string;
  readonly properties?: Record<string, unknown>;
  readonly children?: readonly Node[];
  readonly value?: string;
}

/**
 * Equations of a page: the TeX behind them stays out of the search, and a wide one can be scrolled by keyboard. One that cannot
 * be set, or that was left in its dollars, or into which markup came, ends the build: a reader would see raw TeX.
 */
export const equations = () => (root: object, file?: { readonly path?: string }) => {
  const visit = ({ properties, children = [], value, type }: Node, inCode: boolean, isTeX: boolean): void => {
    const names = properties?.className;
    if (properties && Array.isArray(names)) {
      if (names.includes('katex-error'))
        throw new Error(`${file?.path ?? 'page'}: an equation cannot be set. ${String(properties.title)}`);
      if (names.includes('katex')) properties['data-pagefind-ignore'] = '';
      if (names.includes('katex-display')) properties.tabIndex = 0;
    }
    if (type === 'text' && !inCode && value?.includes('$$'))
      throw new Error(`${file?.path ?? 'page'}: an equation is left as text: ${value.slice(0, 120)}`);
    if (type === 'text' && inCode && isTeX && /<\/?[a-z]+[ >]/.test(value ?? ''))
      throw new Error(`${file?.path ?? 'page'}: an equation holds markup: ${value?.slice(0, 120)}`);
    for (const child of children) visit(child, inCode || isCode(child), isTeX || named(child) === 'annotation');
  };
  visit(root as Node, false, false);
};

/** Code shows dollars as they are; so does the TeX that stands beside a set equation. */
const isCode = (node: Node): boolean => ['code', 'pre', 'annotation'].includes(named(node));
const named = (node: Node): string => ('tagName' in node ? String(node.tagName) : '');
