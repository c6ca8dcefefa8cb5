/**
 * Characters that control a terminal or the direction of text instead of being shown: control characters, escapes,
 * bidirectional overrides, line separators, lone surrogates. The two joiners stay, because some scripts and emoji need them.
 */
const obeyed = /(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

function escaped(character: string): string {
  if (character === '\n') return '\\n';
  const code = character.codePointAt(0)!.toString(16);
  return code.length > 4 ? `\\u{${code}}` : `\\u${code.padStart(4, '0')}`;
}

/**
 * Makes a text from outside safe to print: characters that would control the terminal or reverse the text become escapes.
 *
 * @example visible('\u001b[2Jbox') // '\\u001b[2Jbox'
 */
export const visible = (text: string): string => text.replace(obeyed, escaped);

/** The same as {@link visible}, cut to at most `most` characters. */
export function visibleStart(text: string, most: number): string {
  const start = text.slice(0, 2 * most);
  const characters = [...start];
  if (start.length === text.length && characters.length <= most) return visible(text);
  return `${visible(characters.slice(0, most - 3).join(''))}...`;
}
