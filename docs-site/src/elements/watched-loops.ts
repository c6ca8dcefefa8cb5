import { getFormattedTokens } from 'sucrase';

interface Token {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly label: string;
}

const opening = new Set(['(', '[', '{', '${']);
const closing = new Set([')', ']', '}']);

/**
 * Code whose loops ask, before each round, whether there is time left: the condition of each `for (;;)`, `while` and `do`
 * becomes `__more(line) && (condition)`. Lines stay as they are. A `for … of` ends when what it walks ends.
 */
export function watchedLoops(code: string): string {
  const tokens = tokensOf(code);
  const added: [at: number, text: string][] = [];
  tokens.forEach(({ label, line }, i) => {
    if ((label !== 'for' && label !== 'while') || tokens[i + 1]?.label !== '(') return;
    const open = tokens[i + 1] as Token;
    let depth = 0;
    const semicolons: number[] = [];
    let close = i + 1;
    for (; close < tokens.length; close++) {
      const { label: here } = tokens[close] as Token;
      if (opening.has(here)) depth++;
      if (closing.has(here) && --depth === 0) break;
      if (here === ';' && depth === 1) semicolons.push(close);
    }
    const [first, second] = semicolons.map((at) => tokens[at] as Token);
    const [from, to] =
      label === 'while' ? [open.end, (tokens[close] as Token).start] : [first?.end ?? 0, second?.start ?? 0];
    if (to === 0) return;
    if (code.slice(from, to).trim() === '') added.push([from, `__more(${line})`]);
    else added.push([from, `__more(${line}) && (`], [to, ')']);
  });
  return added
    .sort(([a], [b]) => b - a)
    .reduce((text, [at, words]) => text.slice(0, at) + words + text.slice(at), code);
}

/** Tokens by the transpiler, which is loaded anyway: it tells strings, templates and comments from code. */
function tokensOf(code: string): Token[] {
  const starts = [0];
  for (const { 0: end, index } of code.matchAll(/\r\n|[\n\r]/g)) starts.push(index + end.length);
  return [...getFormattedTokens(code, { transforms: [] }).matchAll(/^(\d+):(\d+)-(\d+):(\d+) +(\S+)/gm)].map(
    ([, line, column, endLine, endColumn, label]) => ({
      line: Number(line),
      start: (starts[Number(line) - 1] ?? 0) + Number(column) - 1,
      end: (starts[Number(endLine) - 1] ?? 0) + Number(endColumn) - 1,
      label: label as string,
    }),
  );
}
