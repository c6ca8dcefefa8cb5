/**
 * Characters that are not read but obeyed, by a terminal or by the order of letters: controls, escapes, bidirectional
 * overrides, separators of lines, halves of a pair. The two joiners stay, since scripts and pictures need them.
 */
const obeyed = /(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

function escaped(character: string): string {
  if (character === '\n') return '\\n';
  const code = (character.codePointAt(0) as number).toString(16);
  return code.length > 4 ? `\\u{${code}}` : `\\u${code.padStart(4, '0')}`;
}

/**
 * A text from outside as one may print it: what would steer the terminal or turn letters round is shown as an escape.
 *
 * @example visible('\u001b[2Jbox') // '\\u001b[2Jbox'
 */
export const visible = (text: string): string => text.replace(obeyed, escaped);

/** The same, and at most so many characters long. */
export function visibleStart(text: string, most: number): string {
  const start = text.slice(0, 2 * most);
  const characters = [...start];
  if (start.length === text.length && characters.length <= most) return visible(text);
  return `${visible(characters.slice(0, most - 3).join(''))}...`;
}
