interface Node {
  readonly type: string;
  readonly tagName?: string;
  readonly value?: string;
  readonly properties?: object;
  children?: Node[];
}

const element = (tagName: string, properties: object, children: Node[] = []): Node => ({
  type: 'element',
  tagName,
  properties,
  children,
});

/** Tables of a text: a wide one scrolls by itself, and long names may break where a new word begins, `volume|Before|Vent`. */
export const tables = () => (root: object) => {
  const broken = (text: Node): Node[] =>
    (text.value ?? '')
      .split(/(?<=[a-z0-9])(?=[A-Z])/)
      .flatMap((value, i) => [...(i > 0 ? [element('wbr', {})] : []), { type: 'text', value }]);
  const visit = (node: Node, inCell: boolean): void => {
    const children = node.children?.flatMap((child) => {
      if (inCell && node.tagName === 'code' && child.type === 'text') return broken(child);
      visit(child, inCell || node.tagName === 'td');
      return child.tagName === 'table' ? [element('div', { className: ['table'] }, [child])] : [child];
    });
    if (children) node.children = children;
  };
  visit(root as Node, false);
};
