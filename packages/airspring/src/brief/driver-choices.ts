import {
  type CompletedDriver,
  completeDriver,
  type Driver,
  type DriverData,
  type DriverGroup,
  group,
} from '@airspring/core/driver';
import { type Fault, isInputError } from '@airspring/core/fault';
import type { DriverChoice, Estimated, LargeSignal } from '../job/job.js';
import { driverFields } from './driver-fields.js';
import { type DriverModels, modelOf } from './driver-models.js';
import type { Faultless } from './faultless.js';
import type { BriefFor, ReadBrief } from './schema.js';
import { faultsOfCount, faultsOfFaces, seatingOf } from './seating.js';
import {
  faultOfVas,
  faultsOfSensitivity,
  impliedBy,
  type Readings,
  readingsOf,
  sensitivityFields,
} from './sensitivity.js';

type Sheet = Omit<ReadBrief['drivers'][number], 'wirings' | 'faces' | 'spread'>;

/** What does not complete a driver: models are made, and passed on as values; what it does at large signals is told to the job. */
const BESIDE: readonly string[] = ['coil', 'suspension', 'largeSignal'];
type Brief = BriefFor<readonly []>;
type Written = Brief['drivers'][number];

/** The result; or `undefined`, with the faults of the refusal added to the others. */
export function gather<T>(faults: Fault[], work: () => T, told = (fault: Fault): Fault | undefined => fault) {
  try {
    return work();
  } catch (error) {
    if (!isInputError(error)) throw error;
    for (const fault of error.faults) {
      const one = told(fault);
      if (one !== undefined) faults.push(one);
    }
    return undefined;
  }
}

/** A sheet with its quantities as texts, so that its faults are stated in the units in which it was written. */
export function withUnits<Data>(
  sheet: Readonly<Record<string, unknown>>,
  written: Readonly<Record<string, unknown>>,
  schemas: Readonly<Record<string, object>> = driverFields,
): Data {
  const fields = Object.entries(sheet).map(([name, value]) => {
    const field = schemas[name] as object;
    const schema = ('wrapped' in field ? field.wrapped : field) as { strict?: (text: string) => string | undefined };
    const text = written[name];
    return [name, (typeof text === 'string' && schema.strict?.(text)) || value];
  });
  return Object.fromEntries(fields);
}

/** Fields of a driver that say how it may be used. */
const USES: readonly string[] = ['wirings', 'faces', 'spread'];

/** A driver completed from its sheet; where Vas came from the sensitivity, with the readings at both ends of what is assumed. */
interface Completed {
  readonly completed: CompletedDriver;
  readonly estimated?: {
    readonly told: Readings['told'];
    readonly Vas: Estimated['Vas'];
    readonly ends: readonly CompletedDriver[];
  };
}

const INSTEAD = ' A sensitivity with its drive (sensitivity, sensitivityAt) can replace Vas.';

/** Completes a sheet. If a value was lost to a fault, only contradictions are reported, not what is missing. */
function completedOf(
  faults: Fault[],
  whole: Faultless<Sheet>,
  written: Written,
  path: string,
  { coils, suspensions }: DriverModels,
): Completed | undefined {
  const data = Object.fromEntries(
    Object.entries(whole).filter(([name]) => !Object.hasOwn(sensitivityFields, name) && !BESIDE.includes(name)),
  );
  const model = <Model>(choices: Parameters<typeof modelOf<Model>>[0], name: 'coil' | 'suspension', driver: Driver) => {
    const asked = modelOf(choices, whole[name], written[name], `${path}.${name}`);
    return asked && gather(faults, () => asked.make(driver), asked.told);
  };
  const complete = (more: object = {}) => {
    const completed = gather(faults, () => completeDriver({ ...withUnits<DriverData>(data, written), ...more }, path));
    if (!completed?.ok) return completed;
    const [coil, suspension] = [
      model(coils, 'coil', completed.driver),
      model(suspensions, 'suspension', completed.driver),
    ];
    const driver = { ...completed.driver, ...(coil && { coil }), ...(suspension && { suspension }) };
    const blocked = completed.blocked.filter(({ missing }) => coil === undefined || !missing.includes('Le'));
    return { ...completed, driver, blocked };
  };
  if (whole.Le !== undefined && whole.coil !== undefined) {
    const remedy = 'Remove one of the two.';
    const expected = 'no Le beside a coil';
    faults.push({ code: 'conflict', path: `${path}.Le`, got: written.Le, expected, remedy });
  }
  const completed = complete();
  if (completed === undefined) return undefined;
  if (completed.ok) return { completed };
  const readings = readingsOf(whole as Parameters<typeof readingsOf>[0]);
  if (readings !== undefined) {
    const wrong = faultOfVas(readings, written.sensitivity, path);
    faults.push(...wrong);
    if (wrong.length > 0) return undefined;
    const [usual, ...ends] = [readings.usual, ...readings.ends].map(complete);
    if (usual?.ok && ends.every((end) => end?.ok)) {
      const [from, to] = readings.ends.map(({ Vas }) => Vas) as [number, number];
      const Vas = { value: readings.usual.Vas, from, to };
      return { completed: usual, estimated: { told: readings.told, Vas, ends: ends as CompletedDriver[] } };
    }
  }
  const all = Object.keys(written).every((field) => USES.includes(field) || Object.hasOwn(whole, field));
  if (!all || faultsOfSensitivity(written, path).length > 0) return undefined;
  for (const { text } of completed.because) {
    const expected = 'enough data to compute the whole driver';
    const instead = text.includes('Vas') && written.sensitivity === undefined ? INSTEAD : '';
    faults.push({ code: 'empty', path, got: 'too few fields', expected, remedy: `${text}${instead}` });
  }
  return undefined;
}

/** Drops choices that differ in name alone: the search would only find the same boxes again. */
const onceEach = (choices: readonly DriverChoice[]): DriverChoice[] => {
  const known = new Map<string, DriverChoice>();
  for (const choice of choices) {
    const { driver, series, parallel, isobaric } = choice.drivers;
    const key = JSON.stringify([{ ...driver, name: undefined }, series, parallel, isobaric, choice.seating]);
    if (!known.has(key)) known.set(key, choice);
  }
  return [...known.values()];
};

/** Every driver of a brief in every wiring, as far as they were read; adds the faults across their fields. */
export function choicesOf(
  faults: Fault[],
  brief: unknown,
  { drivers = [] }: Faultless<ReadBrief>,
  models: DriverModels,
): DriverChoice[] {
  const all = drivers.flatMap((faultless, driverIndex): DriverChoice[] => {
    if (faultless === undefined) return [];
    const { wirings = [{}], faces, spread, ...sheet } = faultless;
    const path = `drivers[${driverIndex}]`;
    const seating = seatingOf({ faces: faces?.flatMap((face) => face ?? []), spread });
    const counted = faultsOfFaces(seating, path);
    faults.push(...counted);
    const written = (brief as Brief).drivers[driverIndex] as Written;
    faults.push(...faultsOfSensitivity(written, path));
    const { completed, estimated } = completedOf(faults, sheet, written, path, models) ?? {};
    return wirings.flatMap((wiring, i): DriverChoice[] => {
      if (wiring === undefined) return [];
      const at = `${path}.wirings[${i}]`;
      // The wiring is checked even without a driver. That the driver is missing has already been reported.
      const atWiring = (fault: Fault) =>
        fault.path.startsWith('group') ? { ...fault, path: fault.path.replace(/^group/, at) } : undefined;
      const made = gather(faults, () => group((completed?.driver ?? {}) as DriverGroup['driver'], wiring), atWiring);
      const fronts = ((wiring.series ?? 1) * (wiring.parallel ?? 1)) / (wiring.isobaric ? 2 : 1);
      if (fronts > 4) {
        const expected = 'at most 4 drivers side by side';
        const got = `${fronts} drivers side by side`;
        faults.push({ code: 'out-of-range', path: at, got, expected, remedy: 'Offer fewer drivers in this box.' });
      }
      if (counted.length === 0) {
        faults.push(...faultsOfCount(seating, fronts, faultless.wirings ? at : `${path}.spread`));
      }
      if (made === undefined || completed === undefined) return [];
      const ends = estimated?.ends.map((end) => ({ completed: end, drivers: group(end.driver, wiring) }));
      const sensitivity = estimated ? undefined : impliedBy(sheet as Parameters<typeof impliedBy>[0], completed);
      const told = estimated && { ...estimated.told, Vas: estimated.Vas, ends: ends ?? [] };
      return [
        {
          driverIndex,
          name: sheet.name as string,
          completed,
          drivers: made,
          seating,
          ...(faultless.largeSignal && { largeSignal: faultless.largeSignal as LargeSignal }),
          ...(sensitivity && { sensitivity }),
          ...(told && { estimated: told }),
        },
      ];
    });
  });
  return onceEach(all);
}
