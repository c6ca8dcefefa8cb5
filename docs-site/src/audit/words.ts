/** Small changes to texts of records before they stand in a sentence. */
import { type Markup, trusted } from '../html.js';

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** Numbers tied to the unit after them. */
const united = (text: string): string =>
  text.replace(/(\d) (?=(?:%|°|[kmµ]?(?:m|s|g|L|V|A|W|Ω|Pa|Hz)|in|dB)(?![a-zA-Z]))/g, '$1\u00a0');
export const ended = (text: string): string => united(text).replace(/[.\s]*$/, '.');

/** A long name as markup that may break where a new word of it begins. */
export const breakable = (name: string): Markup => trusted(name.replace(/(?<=[a-z0-9])(?=[A-Z])/g, '<wbr>'));

/** Markup without blank lines: Markdown leaves it alone. */
export const flat = (markup: string): string => markup.trim().replace(/\n\s*\n+/g, '\n');
