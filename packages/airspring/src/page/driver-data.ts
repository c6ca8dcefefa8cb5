import type { CompletedDriver } from '@airspring/core/driver';
import { format } from '@airspring/core/quantity';
import * as v from 'valibot';
import { driverFields } from '../brief/driver-fields.js';
import type { DriverChoice, Job } from '../job/job.js';
import { listOf } from '../kind/wording.js';
import type { Phrasing } from '../words/phrasing.js';

type Field = keyof typeof driverFields;

/** How each number of a sheet is told; those without a symbol by what they are. */
const TOLD: readonly (readonly [field: Field, tell: (value: number, say: Phrasing) => string])[] = [
  ['fs', (value) => format('frequency', value, 'Hz', 4)],
  ['Qts', (value) => value.toPrecision(3)],
  ['Qes', (value) => value.toPrecision(3)],
  ['Qms', (value) => value.toPrecision(3)],
  ['Vas', (value, say) => say.volume(value)],
  ['coneDiameter', (value, say) => say.length(value)],
  ['Sd', (value) => format('coneArea', value, 'cm²', 4)],
  ['Mms', (value) => format('mass', value, 'g', 4)],
  ['Cms', (value) => format('compliance', value, 'mm/N', 3)],
  ['Rms', (value) => format('mechanicalResistance', value, 'N·s/m', 3)],
  ['Bl', (value) => format('forceFactor', value, 'T·m', 4)],
  ['Re', (value) => format('resistance', value, 'Ω', 3)],
  ['Le', (value) => format('inductance', value, 'mH', 3)],
  ['Xmax', (value, say) => say.travel(value)],
  ['Pe', (value) => format('power', value, 'W', 4)],
  ['outerDiameter', (value, say) => say.length(value)],
  ['cutoutDiameter', (value, say) => say.length(value)],
  ['depth', (value, say) => say.length(value)],
  ['displacedVolume', (value, say) => say.volume(value)],
];
/** Sheets seldom tell these: they are shown where the brief states them, or where another number follows from them. */
const ASKED: readonly Field[] = ['coneDiameter', 'Cms', 'Rms'];
const SIZES: readonly Field[] = ['outerDiameter', 'cutoutDiameter', 'depth', 'displacedVolume'];

/** What a field is, as the schema describes it, without its default. */
function meaningOf(field: Field): string {
  const schema = driverFields[field];
  const inner = 'wrapped' in schema ? (schema.wrapped as typeof schema) : schema;
  return (v.getDescription(inner as never) ?? '').replace(/;.*| with half.*$/, '').replace(/^instead of Sd: /, '');
}

/** The number that a row tells: as it was stated, or as it follows. */
const numberOf = ({ driver, parameters, deviations }: CompletedDriver, field: Field): number | undefined =>
  deviations.find((one) => one.field === field)?.given ??
  (({ ...driver, ...parameters } as Readonly<Record<string, unknown>>)[field] as number | undefined);

/** Where a number comes from: the brief, or what it follows from. */
function originOf(
  { completed: { derived, deviations }, estimated }: DriverChoice,
  field: Field,
  written: Readonly<Record<string, unknown>>,
  tell: (value: number) => string,
): string {
  const rounded = deviations.find((one) => one.field === field && one.verdict === 'rounding');
  if (rounded) return `the brief; what else it tells leads to ${tell(rounded.implied)}, and that is used`;
  if (written[field] !== undefined) return 'the brief';
  if (field === 'Vas' && estimated) return `assumed, from the sensitivity: ${range(estimated.Vas, tell)}`;
  if (field === 'Re' && estimated?.Re) return `assumed, from the nominal impedance: ${range(estimated.Re, tell)}`;
  const from = derived.find((one) => one.field === field)?.from ?? [];
  return from.length > 0 ? `follows from ${listOf(from)}` : 'follows from the others';
}

const range = ({ from, to }: { readonly from: number; readonly to: number }, tell: (value: number) => string): string =>
  `between ${tell(from)} and ${tell(to)}`;

/** The sheet of a driver that a design is worked out from: what each number is, the number, and where it comes from. */
export function driverData(
  job: Pick<Job, 'choices' | 'written'>,
  index: number,
  say: Phrasing,
): (readonly [string, string, string])[] {
  const choice = job.choices.find(({ driverIndex }) => driverIndex === index);
  if (choice === undefined) return [];
  const written = ((job.written.drivers as readonly object[] | undefined)?.[index] ?? {}) as Record<string, unknown>;
  const needed = new Set<string>(choice.completed.derived.flatMap(({ from }) => from));
  return TOLD.flatMap(([field, tell]) => {
    if (ASKED.includes(field) && written[field] === undefined && !needed.has(field)) return [];
    const what = SIZES.includes(field) ? meaningOf(field) : `${field}, ${meaningOf(field)}`;
    const value = numberOf(choice.completed, field);
    if (value !== undefined) {
      const inUnits = (number: number) => tell(number, say);
      return [[what, inUnits(value), originOf(choice, field, written, inUnits)] as const];
    }
    if (field === 'Le') {
      const coil = written.coil === undefined ? 'none' : 'the "coil" of the brief tells it';
      return [[what, coil, written.coil === undefined ? 'assumed: the brief tells none' : 'the brief'] as const];
    }
    return field === 'displacedVolume' ? [[what, 'an estimate', 'assumed, from hole and depth'] as const] : [];
  });
}
