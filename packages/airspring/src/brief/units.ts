import { format, kinds } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import { strictText } from './spelling.js';

/** Data of bought parts: their sheets are metric, whatever the builder measures in. Titles and notes are no quantities. */
const NOT_MEASURED = ['$schema', 'title', 'note', 'drivers', 'radiators'];

/** No field of a brief lies deeper: a value that does is a fault, and no reason to overflow. */
const DEEPEST = 20;

const textsIn = (value: unknown, levels = DEEPEST): string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null && levels > 0
      ? Object.values(value).flatMap((one) => textsIn(one, levels - 1))
      : [];

/** Whether every length that the builder measured is in inches or feet, and there is one. */
function inInches(brief: object): boolean {
  const measured = Object.entries(brief).filter(([section]) => !NOT_MEASURED.includes(section));
  const lengths = measured.flatMap(([, section]) =>
    textsIn(section).flatMap((text) => strictText('length', text) ?? []),
  );
  return lengths.length > 0 && lengths.every((length) => / (?:in|ft)$/.test(length));
}

/**
 * The units in which a report of this brief is written: those that `units` names. Otherwise lengths are in inches if every
 * length outside the data of drivers and radiators is written in inches or feet, and in millimetres if not. Volumes are in litres.
 *
 * @example unitsOf({ space: { width: '15 in', panelThickness: '3/4 in' } }).length // 'in'
 */
export function unitsOf(brief: object): Job['units'] {
  const { units = {} } = brief as { readonly units?: Partial<Job['units']> };
  return { length: units.length ?? (inInches(brief) ? 'in' : 'mm'), volume: units.volume ?? 'L' };
}

/** How lengths and volumes are told in faults of a brief: in the units of its report, whatever is wrong with it. */
export function tellingOf(brief: object) {
  const { units, ...rest } = brief as { readonly units?: unknown };
  const usual = unitsOf(rest);
  const named = { ...usual, ...(typeof units === 'object' ? units : {}) };
  const length = Object.hasOwn(kinds.length.units, named.length) ? named.length : usual.length;
  const volume = Object.hasOwn(kinds.volume.units, named.volume) ? named.volume : usual.volume;
  return {
    length: (metres: number) => format('length', metres, length, 4),
    volume: (cubicMetres: number) => format('volume', cubicMetres, volume, 4),
  };
}
