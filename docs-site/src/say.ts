import { format, type Kind, type UnitOf } from '@airspring/core/quantity';

/** A quantity that no line break tears apart, with a true minus sign. */
export const say = <K extends Kind>(kind: K, value: number, unit: UnitOf<K>, digits = 3): string =>
  format(kind, value, unit, digits).replace('-', '−').replace(' ', '\u00a0');

/** 'A, B and C'. */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

export { limitInWords } from '../../packages/airspring/src/words/limit-words.js';
export { tied } from '../../packages/airspring/src/words/tied.js';
