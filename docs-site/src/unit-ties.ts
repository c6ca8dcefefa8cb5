interface Node {
  readonly type: string;
  readonly tagName?: string;
  readonly children?: readonly Node[];
  value?: string;
}

const UNITS = 'Hz|kHz|dB|mm|cm|m|m/s|cm²|L|ms|s|V|A|W|Ω|kg|g|kB|%|minutes';
const apart = new RegExp(`(\\d) (?=(?:${UNITS})(?![\\p{L}\\d]))`, 'gu');

/** No line break of a text tears a number from its unit; code and equations stay as they are. */
export const unitTies = () => (root: object) => {
  const visit = (node: Node): void => {
    if (['code', 'pre', 'math', 'svg'].includes(node.tagName ?? '')) return;
    if (node.type === 'text' && node.value) node.value = node.value.replace(apart, '$1\u00a0');
    for (const child of node.children ?? []) visit(child);
  };
  visit(root as Node);
};
