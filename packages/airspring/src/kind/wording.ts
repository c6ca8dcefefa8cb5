import type { Phrase } from './phrase.js';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'] as const;

/** A small count in words. */
export const inWords = (count: number): string => NUMBERS[count] ?? String(count);

/** A sentence begins with a capital letter. */
export const capital = (text: string): string => text.replace(/^./, (letter) => letter.toUpperCase());

/** 'left, right and top'. */
export const listOf = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** The default of the leaks, told where the brief leaves it out. */
export const leaksAssumed = (written: number | undefined, QL: number): Phrase[] =>
  written === undefined ? [[`The leaks of the box are assumed to have a QL of ${QL}, which is common practice.`]] : [];

/** How much longer a vent may get, after what comes before it. */
export const moreLength = (spare: number): Phrase =>
  spare < 0.0005 ? [' There is no room for more length.'] : [' There is room for ', [spare, 'length'], ' more length.'];

/** What a limit on the air speed in a vent is worth. */
export const airSpeedNote: Phrase = ['The limit on the air speed in a vent is common practice.'];
