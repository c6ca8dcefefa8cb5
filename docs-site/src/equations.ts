interface Node {
  readonly type: string;
  readonly properties?: Record<string, unknown>;
  readonly children?: readonly Node[];
}

/** Equations of a page: the TeX behind them stays out of the search, and a wide one can be scrolled by keyboard. */
export const equations = () => (root: object) => {
  const visit = ({ properties, children = [] }: Node): void => {
    const names = properties?.className;
    if (properties && Array.isArray(names)) {
      if (names.includes('katex-mathml')) properties['data-pagefind-ignore'] = '';
      if (names.includes('katex-display')) properties.tabIndex = 0;
    }
    children.forEach(visit);
  };
  visit(root as Node);
};
