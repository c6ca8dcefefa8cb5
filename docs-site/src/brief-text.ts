/** Characters of a line, unless one pair alone is longer. */
const WIDTH = 74;

const pairsOf = (value: object): (readonly [head: string, value: unknown])[] =>
  Array.isArray(value)
    ? value.map((item) => ['', item] as const)
    : Object.entries(value).map(([name, item]) => [`${JSON.stringify(name)}: `, item] as const);

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

function flat(value: unknown): string {
  if (!isObject(value)) return JSON.stringify(value);
  const items = pairsOf(value).map(([head, item]) => head + flat(item));
  if (Array.isArray(value)) return `[${items.join(', ')}]`;
  return items.length > 0 ? `{ ${items.join(', ')} }` : '{}';
}

function written(value: unknown, indent: number, taken: number): string {
  const one = flat(value);
  if (!isObject(value) || (indent > 0 && taken + one.length <= WIDTH)) return one;
  const inner = indent + 2;
  const lines: string[] = [];
  pairsOf(value).forEach(([head, item], i, all) => {
    const text = head + written(item, inner, inner + head.length + 1) + (i < all.length - 1 ? ',' : '');
    const line = lines.at(-1);
    const joins =
      indent > 0 &&
      line !== undefined &&
      !`${line}${text}`.includes('\n') &&
      inner + line.length + 1 + text.length <= WIDTH;
    if (joins) lines[lines.length - 1] = `${line} ${text}`;
    else lines.push(text);
  });
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${lines.map((line) => ' '.repeat(inner) + line).join('\n')}\n${' '.repeat(indent)}${close}`;
}

/** A brief as text to read and edit: a line for each part, small values beside each other, and no break within a pair. */
export const briefText = (brief: object): string => `${written(brief, 0, 0)}\n`;

/** The title of a brief as text, whole or broken. */
export const titleOf = (text: string): string => /"title"\s*:\s*"((?:[^"\\\n]|\\.)*)"/.exec(text)?.[1] ?? '';

/** The name of a file that belongs to a brief. */
export function fileName(title: string, rest: string): string {
  const name = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return `${name || 'brief'}${rest}`;
}
