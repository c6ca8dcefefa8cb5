/** Docstrings and records as Markdown of a page. */

/** Where things stand that a text may name. */
export interface Links {
  /** Name of a function → address of its formula; names that two floors export are left out. */
  readonly formulas: ReadonlyMap<string, string>;
  readonly references: ReadonlySet<string>;
}

/** Front matter and text. JSON is YAML. */
export const page = (front: Readonly<Record<string, unknown>>, ...parts: readonly string[]): string => {
  const head = Object.entries(front).map(([name, value]) => `${name}: ${JSON.stringify(value)}`);
  return `---\n${head.join('\n')}\n---\n\n${parts.filter(Boolean).map(raised).join('\n\n')}\n`;
};

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
/** Powers of ten as markup: fonts draw the superscript digits of Unicode in different sizes. */
export const raised = (text: string): string =>
  text.replace(
    /(?<=\u00a0×\u00a010)[⁻⁰¹²³⁴-⁹]+/g,
    (power) => `<sup>${power.replace('⁻', '−').replace(/[^−]/g, (digit) => String(superscripts.indexOf(digit)))}</sup>`,
  );

/** Markdown of a docstring: equations on lines of their own, links to formulas, `<` that opens no tag. */
export const prose = (text: string, { formulas }: Links): string =>
  text
    .split(/(`[^`]*`|\$\$[^$]*\$\$|\$[^$]*\$)/)
    .map((part, i) => {
      if (part.startsWith('$$')) return `\n\n$$\n${part.slice(2, -2).trim()}\n$$\n\n`;
      if (i % 2 === 1) return part;
      return part.replace(/</g, '&lt;').replace(/\{@link\s+([\w.]+)[^}]*\}/g, (_, name: string) => {
        const address = formulas.get(name);
        return address ? `[\`${name}\`](${address})` : `\`${name}\``;
      });
    })
    .join('')
    .replace(
      // An equation may begin with a bar as well: a table has two rows at least, and each ends with one.
      /(^|\n)((?:\|.*\|(?:\n|$)){2,})/g,
      (_, before: string, rows: string) => `${before}<div class="table">\n\n${rows.trimEnd()}\n\n</div>\n`,
    )
    .replace(/\n{3,}/g, '\n\n')
    .trim();

const KEY = /[A-Za-z][\w-]*/g;

/** Keys of the bibliography that a text names. */
export const keysIn = (text: string, references: ReadonlySet<string>): readonly string[] =>
  [...new Set(text.match(KEY) ?? [])].filter((key) => references.has(key));

/** A `@source`, its keys leading to the bibliography. */
export const sourceText = (text: string, links: Links): string =>
  prose(text, links).replace(KEY, (key) =>
    links.references.has(key) ? `<a class="cite" href="/bibliography/#${key}">[${key}]</a>` : key,
  );
