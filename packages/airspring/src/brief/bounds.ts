import * as v from 'valibot';
import { type Bounds, plainNumber } from './quantity-text.js';
import { MOST } from './size.js';

// Bounds far wider than anything that is built: they catch a wrong unit where the reader wrote it.
export const edge: Bounds<'length'> = { least: 0.02, greatest: 20, unit: 'm', example: '400 mm' };
export const size: Bounds<'length'> = { least: 1, greatest: 2000, unit: 'mm' };
export const wall: Bounds<'length'> = { least: 0.1, greatest: 200, unit: 'mm', example: '18 mm' };
export const air: Bounds<'volume'> = { least: 0.001, greatest: 10_000, unit: 'L' };
export const audible: Bounds<'frequency'> = { least: 1, greatest: 20_000, unit: 'Hz' };
export const decibels: Bounds<'level'> = { least: 0.01, greatest: 200, unit: 'dB' };
export const coil: Bounds<'inductance'> = { least: 1e-4, greatest: 1000, unit: 'mH' };
export const ohms: Bounds<'resistance'> = { least: 0.001, greatest: 10_000, unit: 'Ω' };

/** A quality factor. */
export const Q = plainNumber(0.01, 1e4, 0.4);
/** A quality factor of losses. Below 1, leaks or damping would outweigh the box itself. */
export const lossQ = plainNumber(1, 1e4, 7);

/** Limits the length of a list to what a person might write. */
export const most = <const T extends readonly unknown[]>() =>
  v.maxLength<T, typeof MOST, string>(
    MOST,
    `out-of-range\na list of at most ${MOST} items\nLeave out what is not needed.`,
  );

/** A list of one or more items; `what` says what one is, where the list is empty. */
export const oneOrMore = <const S extends v.GenericSchema>(item: S, what: string) =>
  v.pipe(v.array(item), v.minLength(1, `empty\n${what}\nName one.`), most());
