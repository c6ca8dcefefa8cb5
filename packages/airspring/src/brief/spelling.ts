import { type Kind, kinds } from '@airspring/core/quantity';

/** Blanks as people and word processors write them: plain, no-break, narrow no-break, figure, thin. */
const BLANK = '[ \\u00A0\\u202F\\u2007\\u2009]';
const SIGN = '[+\\-\\u2212]';
const DECIMAL = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+\\-\\u2212]?\\d+)?';
/** Inches are written in fractions: '3/4', '10 1/4'. */
const FRACTION = `(?:(\\d+)${BLANK})?(\\d+)/([1-9]\\d*)`;

/** What else may be written for a letter of a unit: a look-alike, or a character that keyboards have. */
const LETTERS: Readonly<Record<string, string>> = {
  '²': '(?:²|\\^?2)',
  '³': '(?:³|\\^?3)',
  '·': `[·⋅∙*]?${BLANK}?`,
  µ: '[\\u00B5\\u03BCu]',
  Ω: '(?:[\\u03A9\\u2126]|[Oo]hms?)',
  '°': `(?:[°º˚]|deg${BLANK}?)`,
};

/** Other names of exactly the same unit. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  L: ['l', 'dm(?:³|\\^?3)', 'litres?', 'liters?'],
  'cm³': ['m[lL]', 'cc'],
  'ft³': ['cu ?ft'],
  'in³': ['cu ?in'],
  'in²': ['sq ?in'],
  in: ['"', '\\u2033', 'inch(?:es)?'],
  ft: ["'", '\\u2032', 'feet'],
  Hz: ['hz'],
  dB: ['db'],
  ohm: ['[Oo]hms?'],
};

const escaped = (letter: string): string => letter.replace(/[.*+?^${}()|[\]\\/]/, '\\$&');
const spellings = (unit: string): string =>
  [[...unit].map((letter) => LETTERS[letter] ?? escaped(letter)).join(''), ...(WORDS[unit] ?? [])].join('|');

/**
 * The texts that a brief may hold for a kind of quantity, as the source of a regular expression. The reader and the JSON
 * Schema for editors share it, so that both accept the same texts. Groups: sign, decimal, whole, numerator, denominator, then
 * one for each unit.
 */
export function spellingOf(kind: Kind): string {
  const units = Object.keys(kinds[kind].units).map((unit) => `(${spellings(unit)})`);
  return `^(${SIGN}?)(?:(${DECIMAL})|${FRACTION})${BLANK}?(?:${units.join('|')})$`;
}

/** The longest text that can be a quantity. */
const LONGEST = 60;

/** The spellings of each kind, compiled when the first quantity of that kind is read: a search reads many briefs. */
const patterns = new Map<Kind, RegExp>();

function patternOf(kind: Kind): RegExp {
  let pattern = patterns.get(kind);
  if (pattern === undefined) {
    pattern = new RegExp(spellingOf(kind), 'u');
    patterns.set(kind, pattern);
  }
  return pattern;
}

/** Core's strict spelling of a quantity as people write it; `undefined` when the text is no quantity. */
export function strictText(kind: Kind, text: string): string | undefined {
  if (text.length > LONGEST) return undefined;
  const found = patternOf(kind).exec(text);
  if (found === null) return undefined;
  const [, sign, decimal, whole, numerator, denominator, ...units] = found;
  const unit = Object.keys(kinds[kind].units)[units.findIndex((one) => one !== undefined)];
  const digits =
    decimal?.replace('\u2212', '-') ?? String(Number(whole ?? 0) + Number(numerator) / Number(denominator));
  return `${sign === '\u2212' ? '-' : sign}${digits} ${unit}`;
}

/** What a text with commas or blanks among its digits may mean. The reader is asked; nothing is guessed. */
export function meantTexts(kind: Kind, text: string): readonly string[] {
  if (text.length > LONGEST) return [];
  const found = /^([+\-\u2212]?)(\d{1,3}(?:[,.' \u00A0\u202F\u2009]\d{3})+|\d+)(?:[,.](\d+))?(?=[^\d.,])(.*)$/u.exec(
    text,
  );
  if (found === null) return [];
  const [, sign = '', whole = '', decimals, unit = ''] = found;
  const grouped = /[^\d]/.test(whole);
  const joined = whole.replace(/[^\d]/g, '');
  const readings = [`${joined}${decimals === undefined ? '' : `.${decimals}`}`];
  // One comma before three digits marks decimals in some countries and thousands in others.
  const [before, after, ...more] = whole.split(/[,.]/);
  if (grouped && decimals === undefined && after !== undefined && more.length === 0)
    readings.unshift(`${before}.${after}`);
  return readings.flatMap((digits) => strictText(kind, `${sign}${digits}${unit}`) ?? []);
}
