import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import type { ReadFields } from '../brief/fields.js';
import { type Bounds, quantity } from '../brief/quantity-text.js';
import type { Job, Written } from '../job/job.js';
import { closedAirFields } from './closed-air.js';
import { placeOf, series } from './preferred-values.js';

const opt = v.exactOptional;
const farads: Bounds<'capacitance'> = { least: 1, greatest: 100_000, unit: 'µF', example: '470 µF' };
const names = Object.keys(series) as (keyof typeof series)[];

/** One microfarad. */
export const MICRO = 1e-6;

/** What a brief may say about the capacitor in series with the drivers. */
export const capacitorFields = {
  ...closedAirFields,
  capacitor: {
    smallest: opt(v.pipe(quantity('capacitance', farads), v.description('the smallest to try; default 100 µF'))),
    largest: opt(v.pipe(quantity('capacitance', farads), v.description('the largest to try; default 4700 µF'))),
    series: opt(
      v.pipe(v.picklist(names), v.description('series of preferred values that it is bought from; default E12')),
    ),
  },
};

/** The capacitors that are tried if a brief does not say which it has, F. */
const USUAL = [100e-6, 4700e-6] as const;

/** The series, and the places in it of the smallest and the largest capacitor. If only one is given, the other gives way to it. */
export function capacitorsOf({ smallest, largest, series: name = 'E12' }: Capacitors) {
  const decade = series[name];
  const from = smallest ?? Math.min(USUAL[0], largest ?? Infinity);
  const to = largest ?? Math.max(USUAL[1], from);
  return { name, decade, from: Math.ceil(placeOf(decade, from, MICRO)), to: Math.floor(placeOf(decade, to, MICRO)) };
}
type Capacitors = NonNullable<ReadFields<typeof capacitorFields>['capacitor']>;

/** Faults between the fields: bounds that leave no value of the series. */
export function acrossCapacitor(written: Written, read: Partial<Job['sections']>): Fault[] {
  const { capacitor } = read as { capacitor?: Capacitors };
  if (capacitor === undefined) return [];
  const { name, from, to } = capacitorsOf(capacitor);
  if (from <= to) return [];
  const quoted = written.capacitor as Readonly<Record<string, unknown>>;
  const [path, got] =
    quoted.largest === undefined ? ['capacitor.smallest', quoted.smallest] : ['capacitor.largest', quoted.largest];
  const expected = `bounds that hold a value of ${name}, the smallest below the largest`;
  return [{ code: 'inconsistent', path, got, expected, remedy: 'Move the bounds apart.' }];
}
