import { type CompletedDriver, completeDriver, type DriverGroup, group } from '@airspring/core/driver';
import { type Fault, InputError } from '@airspring/core/fault';
import type { Faultless } from './faultless.js';
import type { ReadBrief } from './schema.js';

/** One driver in one wiring, out of those that the brief offers. */
export interface Offer {
  /** Place in the list of drivers. */
  readonly driverIndex: number;
  readonly name: string;
  readonly completed: CompletedDriver;
  readonly drivers: DriverGroup;
}

type Sheet = ReadBrief['drivers'][number];

/** The result, or `undefined` with the faults of a refusal added to the others. */
export function gather<T>(faults: Fault[], work: () => T, told = (fault: Fault): Fault | undefined => fault) {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    faults.push(...error.faults.flatMap((fault) => told(fault) ?? []));
    return undefined;
  }
}

/** Completes a sheet; of one that has lost a value to a fault only contradictions are told, and nothing is missing. */
function completedOf(faults: Fault[], sheet: Faultless<Omit<Sheet, 'wirings'>>, path: string, whole: boolean) {
  const completed = gather(faults, () => completeDriver(sheet, path));
  if (completed === undefined || completed.ok) return completed;
  if (!whole) return undefined;
  for (const { code, text } of completed.because) {
    const at = `${path}.${code.replace('missing-', '')}`;
    faults.push({ code: 'empty', path: at, got: undefined, expected: text, remedy: 'Add what is missing.' });
  }
  return undefined;
}

/** Every driver of a brief in every wiring, and the faults across their fields; `read` holds those with a fault as well. */
export function offersOf(faults: Fault[], read: ReadBrief, { drivers = [] }: Faultless<ReadBrief>): Offer[] {
  return drivers.flatMap((faultless, driverIndex): Offer[] => {
    if (faultless === undefined) return [];
    const { wirings = [{}], ...sheet } = faultless;
    const path = `drivers[${driverIndex}]`;
    const { name: _, wirings: __, ...values } = read.drivers[driverIndex] as Sheet;
    const whole = Object.keys(values).every((field) => Object.hasOwn(sheet, field));
    const completed = completedOf(faults, sheet, path, whole);
    return wirings.flatMap((wiring, i): Offer[] => {
      if (wiring === undefined) return [];
      const at = `${path}.wirings[${i}]`;
      // Without a driver the wiring is judged all the same; that the driver is missing has been told.
      const told = (fault: Fault) =>
        fault.path.startsWith('group') ? { ...fault, path: fault.path.replace(/^group/, at) } : undefined;
      const made = gather(faults, () => group((completed?.driver ?? {}) as DriverGroup['driver'], wiring), told);
      const fronts = ((wiring.series ?? 1) * (wiring.parallel ?? 1)) / (wiring.isobaric ? 2 : 1);
      if (fronts > 4) {
        const expected = 'at most 4 drivers side by side';
        faults.push({ code: 'out-of-range', path: at, got: fronts, expected, remedy: 'Split the box.' });
      }
      if (made === undefined || completed === undefined) return [];
      return [{ driverIndex, name: sheet.name as string, completed, drivers: made }];
    });
  });
}
