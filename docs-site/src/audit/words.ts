/** Small changes to texts of records before they stand in a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const ended = (text: string): string => text.replace(/[.\s]*$/, '.');

/** Markup without blank lines: Markdown leaves it alone. */
export const flat = (markup: string): string => markup.trim().replace(/\n\s*\n+/g, '\n');
