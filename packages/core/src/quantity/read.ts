import { type Fault, InputError } from '../fault/index.js';
import type { Kind, Quantity, Text } from './quantity.js';
import { type KindDefinition, kinds } from './units.js';

/** Which signs are accepted: above zero, zero or more, or any. */
export type Sign = 'positive' | 'not-negative' | 'any';

const decimal = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i; // no hexadecimal, no blanks

const definition = (kind: Kind): KindDefinition => kinds[kind];
const article = (noun: string): string => `${/^(?:[aeiou]|rms)/.test(noun) ? 'an' : 'a'} ${noun}`;

/** The units of a kind, separated by commas: 'm, mm, cm, in, ft'. */
export const unitList = (kind: Kind): string => Object.keys(definition(kind).units).join(', ');

/** The fault of a number that is not finite, has the wrong sign or is outside the range of its kind. */
function judge(kind: Kind, value: number, got: unknown, path: string, sign: Sign): Fault | undefined {
  const { of, range, units } = definition(kind);
  const size = Math.abs(value);
  if (!Number.isFinite(value)) {
    return { code: 'not-finite', path, got, expected: `a finite ${of}`, remedy: 'Give a finite number.' };
  }
  if ((sign === 'positive' && value <= 0) || (sign === 'not-negative' && value < 0)) {
    const expected = sign === 'positive' ? `${article(of)} above zero` : `${article(of)} of zero or more`;
    return { code: 'not-positive', path, got, expected, remedy: 'Check the sign and the number.' };
  }
  if (size > range[1] || (size !== 0 && size < range[0])) {
    const [unit] = Object.keys(units);
    const expected = `${article(of)} of ${range[0]} to ${range[1]}${unit === '1' ? '' : ` ${unit}`}`;
    return { code: 'out-of-range', path, got, expected, remedy: 'Check the unit and the power of ten.' };
  }
  return undefined;
}

/** Reads one value without throwing. Returns the SI number, or adds a fault to the list and returns `undefined`. */
export function readInto<K extends Kind>(
  faults: Fault[],
  kind: K,
  value: unknown,
  path: string,
  sign: Sign = 'positive',
): Quantity<K> | undefined {
  let number: number;
  if (typeof value === 'number') {
    number = value;
  } else {
    const [digits = '', unit = '', ...rest] = typeof value === 'string' ? value.split(' ', 3) : [];
    const { units } = definition(kind);
    // A plain index would accept '5 constructor'.
    if (rest.length > 0 || !decimal.test(digits) || !Object.hasOwn(units, unit)) {
      const expected = `a number, one space, and one of ${unitList(kind)}`;
      const example = `${kind === 'temperature' ? '20 °C' : `1 ${Object.keys(units)[0]}`}`;
      faults.push({ code: 'unit', path, got: value, expected, remedy: `Write it like '${example}'.` });
      return undefined;
    }
    const [scale, offset] = units[unit] as readonly [number, number];
    number = Number(digits) * scale + offset;
  }
  const fault = judge(kind, number, value, path, sign);
  if (fault !== undefined) {
    faults.push(fault);
    return undefined;
  }
  return number as Quantity<K>;
}

/**
 * Reads one quantity: a branded SI number, or a text that consists of a number, one space and a unit.
 *
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @example read('volume', '24 L', 'box.volume') // 0.024, of type Volume
 */
export function read<K extends Kind>(
  kind: K,
  value: Quantity<K> | Text<K> | (string & {}),
  path: string = kind,
  sign: Sign = 'positive',
): Quantity<K> {
  const faults: Fault[] = [];
  const quantity = readInto(faults, kind, value, path, sign);
  if (quantity === undefined) throw new InputError(faults);
  return quantity;
}
