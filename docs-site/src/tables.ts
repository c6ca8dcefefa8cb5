import { isWide, LONG, numbersOf, tableLook } from './columns.js';

interface Node {
  readonly type: string;
  readonly tagName?: string;
  readonly value?: string;
  properties?: object;
  children?: Node[];
}

const element = (tagName: string, properties: object, children: Node[] = []): Node => ({
  type: 'element',
  tagName,
  properties,
  children,
});

const textOf = ({ type, value = '', children = [] }: Node): string =>
  type === 'text' ? value : children.map(textOf).join('');
const within = (node: Node, ...names: readonly string[]): Node[] =>
  (node.children ?? []).flatMap((child) => (names.includes(child.tagName ?? '') ? [child] : within(child, ...names)));

/** Numbers on their points, and rows that become blocks on a telephone, as in the tables that are no part of a text. */
function set(table: Node): void {
  const rows = within(table, 'tr').map((row) => within(row, 'th', 'td'));
  const columns = (rows[0] ?? []).map((_, k) => rows.flatMap((row) => row[k] ?? []));
  const texts = columns.map((cells) => cells.map(textOf));
  const wide = isWide(texts);
  const numbers = texts.map(([, ...cells]) => numbersOf(cells));
  const { names, style } = tableLook(
    texts.map(([head = '']) => head),
    numbers,
    wide,
  );
  table.properties = {
    ...table.properties,
    ...(names.length > 0 && { className: names }),
    ...(style !== '' && { style }),
  };
  columns.forEach(([, ...cells], k) => {
    cells.forEach((cell, i) => {
      const pad = numbers[k]?.cells[i]?.pad;
      const long = wide && !numbers[k] && textOf(cell).length > LONG;
      cell.properties = { ...cell.properties, ...(long && { className: ['long'] }), ...(pad && { dataPad: pad }) };
    });
  });
}

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
      if (child.tagName === 'table') set(child);
      return child.tagName === 'table' ? [element('div', { className: ['table'] }, [child])] : [child];
    });
    if (children) node.children = children;
  };
  visit(root as Node, false);
};
