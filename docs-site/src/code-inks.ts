/** Three inks for code, as classes of its words: what the language says, what the author says, what is quoted; signs and comments are soft. */

interface Node {
  readonly type: string;
  readonly value?: string;
  readonly properties?: Readonly<Record<string, unknown>>;
  readonly children?: readonly Node[];
}

const inks: Readonly<Record<string, string>> = {
  keyword: 'language',
  constant: 'name',
  string: 'quoted',
  'string-expression': 'quoted',
  comment: 'soft',
  punctuation: 'soft',
};
const COLOUR = /--astro-code-token-([a-z-]+)/;

/** A word in the ink of plain text needs no element: with a style at each word, code is a tenth of its page. */
function inked(word: Node): Node {
  const [, token = ''] = COLOUR.exec(String(word.properties?.style)) ?? [];
  const ink = inks[token];
  const [text] = word.children ?? [];
  return ink === undefined && text ? text : { ...word, properties: { className: [ink] } };
}

/** Each line is set anew; neighbours in the same ink become one. */
export const codeInks = {
  name: 'code-inks',
  line(line: { children: Node[] }): void {
    const words: Node[] = [];
    for (const word of line.children.map(inked)) {
      const before = words.at(-1);
      if (before?.type === 'text' && word.type === 'text')
        words[words.length - 1] = { type: 'text', value: `${before.value}${word.value}` };
      else words.push(word);
    }
    line.children = words;
  },
};
