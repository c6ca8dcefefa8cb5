import { format } from '@airspring/core/quantity';
import type { Work } from './work.js';

/** A length as the reader of the pages writes it. */
export type Says = (metres: number) => string;

export const saysOf =
  ({ unit }: Pick<Work, 'unit'>): Says =>
  (metres) =>
    format('length', metres, unit, 4);
