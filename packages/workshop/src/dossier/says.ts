import { format } from '@airspring/core/quantity';
import type { Work } from './work.js';

/** A length as the reader of the pages writes it. */
export type Says = (metres: number) => string;

export const saysOf =
  ({ unit }: Pick<Work, 'unit'>): Says =>
  (metres) =>
    format('length', metres, unit, 4);

/** A length that needs no more than one digit. */
export const roughly = (unit: Work['unit'], metres: number): string => format('length', metres, unit, 1);

/** A volume of air as the reader of the pages writes it. */
export const airText = ({ volumeUnit = 'L' }: Pick<Work, 'volumeUnit'>, cubicMetres: number): string =>
  format('volume', cubicMetres, volumeUnit, 2);
