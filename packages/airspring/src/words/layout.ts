/** Widest line of a printed report. */
const COLUMNS = 80;

const width = (text: string): number => [...text].length;
const repeat = (text: string, count: number): string => text.repeat(Math.max(0, count));

/** Keeps a number and its unit on one line. */
const glued = (text: string): string => text.replace(/(\d) (?=\S{1,3}(?!\w))/g, '$1\u00a0');

/** A word that is longer than a line, cut into pieces. */
function cut(word: string, columns: number): string[] {
  const letters = [...word];
  const count = Math.ceil(letters.length / columns);
  return Array.from({ length: count }, (_, i) => letters.slice(i * columns, (i + 1) * columns).join(''));
}

/** Breaks words into lines of at most a number of columns. */
function lines(text: string, columns: number): string[] {
  const words = glued(text)
    .split(/[ \t\r\n]+/)
    .filter((word) => word !== '')
    .flatMap((word) => cut(word, columns));
  const out: string[] = [];
  for (const word of words) {
    const last = out.at(-1);
    if (last !== undefined && width(last) + 1 + width(word) <= columns) out[out.length - 1] = `${last} ${word}`;
    else out.push(word);
  }
  if (out.length === 0) return [''];
  return out.map((line) => line.replaceAll('\u00a0', ' '));
}

/** Plain words, broken into lines. */
export const paragraph = (text: string): string => lines(text, COLUMNS).join('\n');

/** Plain words, broken into lines and set in by two blanks. */
export const indented = (text: string): string =>
  lines(text, COLUMNS - 2)
    .map((line) => `  ${line}`)
    .join('\n');

/** A heading with its rule. */
export function heading(text: string, rule: '=' | '-'): string {
  const head = lines(text, COLUMNS);
  return [...head, repeat(rule, Math.max(...head.map(width)))].join('\n');
}

/** A caution, marked at its left edge. */
export const caution = (text: string): string =>
  lines(text, COLUMNS - 2)
    .map((line) => `! ${line}`)
    .join('\n');

/**
 * Aligned columns: each is 'l' or 'r' in `align`, and the last one wraps at the edge of the page. The first row may be a head.
 *
 * @example table('lr', [['drive', '7.9 V'], ['current', '1 A']])
 */
export function table(align: string, rows: readonly (readonly string[])[]): string {
  const last = align.length - 1;
  const widths = [...align].map((_, column) => Math.max(...rows.map((row) => width(row[column] ?? ''))));
  const before = widths.slice(0, last).reduce((sum, one) => sum + one + 2, 2);
  const room = Math.max(8, Math.min(widths[last]!, COLUMNS - before));
  return rows
    .map((row) => {
      const cells = [...align.slice(0, last)].map((side, column) => {
        const text = row[column] ?? '';
        const pad = repeat(' ', widths[column]! - width(text));
        return side === 'r' ? pad + text : text + pad;
      });
      return lines(row[last] ?? '', room)
        .map((text, i) => {
          const start = i === 0 ? `  ${cells.map((cell) => `${cell}  `).join('')}` : repeat(' ', before);
          return (start + (align[last] === 'r' ? repeat(' ', room - width(text)) : '') + text).trimEnd();
        })
        .join('\n');
    })
    .join('\n');
}
