import { format, type Kind, type UnitOf } from '@airspring/core/quantity';

/** A quantity that no line break tears apart, with a true minus sign. */
export const say = <K extends Kind>(kind: K, value: number, unit: UnitOf<K>, digits = 3): string =>
  format(kind, value, unit, digits).replace('-', '−').replace(' ', '\u00a0');

/** 'A, B and C'. */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** Text of a report or a brief, its numbers tied to their units. */
export const tied = (text: string): string => text.replace(/(\d) (?=\S)|(×) (?=\d)/g, '$1$2\u00a0');

const limits: Readonly<Record<string, string>> = {
  travel: 'the travel of the cone',
  heat: 'the heat of the voice coil',
  vent: 'the air in the vent',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
};

/** What gives out, as it stands in a sentence. */
export const limitInWords = (binding: string): string => limits[binding] ?? binding;
