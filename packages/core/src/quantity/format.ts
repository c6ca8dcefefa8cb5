import type { Kind, Quantity, UnitOf } from './quantity.js';
import { type KindDefinition, kinds } from './units.js';

/** Converts an SI value to another unit of its kind. */
export function inUnit<K extends Kind>(kind: K, value: number | Quantity<K>, unit: UnitOf<K>): number {
  const [scale, offset] = (kinds[kind] as KindDefinition).units[unit] as readonly [number, number];
  return (value - offset) / scale;
}

/** Writes a plain decimal with the given significant digits, without an exponent or trailing zeros after the point. */
export function decimalText(value: number, digits: number): string {
  if (value === 0) return '0';
  const places = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  const text = value.toFixed(Math.min(places, 100));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/**
 * Writes a quantity as people do. `read` can read the text back.
 *
 * @example format('length', si('length', 0.0621), 'mm') // '62.1 mm'
 */
export const format = <K extends Kind>(kind: K, value: number | Quantity<K>, unit: UnitOf<K>, digits = 3): string =>
  `${decimalText(inUnit(kind, value, unit), digits)} ${unit}`;
