import type { System } from '@airspring/core/enclosure';
import { greatestLevel, type Limit } from '@airspring/core/limit';
import type { Heard } from '../job/heard.js';

/** The greatest level at a place, at each frequency and where it is least. */
export interface GreatestAt {
  readonly level: Float64Array;
  readonly binding: readonly string[];
  readonly least: { readonly level: number; readonly frequency: number; readonly binding: string };
}

/** The greatest level of a steady sine at the place that a gain leads to from 1 m in half space. */
export function greatestAt(
  { gain }: Pick<Heard, 'gain'>,
  system: System,
  limits: readonly Limit[],
  frequencies: Float64Array,
): GreatestAt {
  const { levelHalfSpace, binding } = greatestLevel(system, limits, frequencies);
  const change = gain(frequencies);
  const level = levelHalfSpace.map((one, i) => one + change[i]!);
  const at = level.reduce((least, one, i) => (one < level[least]! ? i : least), 0);
  return { level, binding, least: { level: level[at]!, frequency: frequencies[at]!, binding: binding[at]! } };
}
