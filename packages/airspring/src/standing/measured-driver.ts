import type { Air } from '@airspring/core/air';
import { type Fault, isInputError } from '@airspring/core/fault';
import { sheetOnly } from '../brief/driver-fields.js';
import type { Faultless } from '../brief/faultless.js';
import type { ReadFields } from '../brief/fields.js';
import type { ventedFields } from '../kind/vented-fields.js';
import { WITHIN } from './measured-fields.js';
import { LEAST_QL, type Leaks, leaksOf } from './measured-leaks.js';
import { type Read, type Readings, readingsOf, type Shared, type Sheet, sharedOf } from './measured-readings.js';
import {
  type Ends,
  endsOf,
  type followed,
  type OtherLosses,
  rangesOf,
  valuesAlone,
  valuesOf,
} from './measured-values.js';

/** Drivers known from the impedance of their box, not from a sheet, with what was read of it. */
export interface Measurement {
  readonly told: MeasuredDriver;
  readonly readings: Readings;
  readonly ends: Ends;
  readonly shared: Shared;
  readonly others: OtherLosses;
  /** Of the box, Hz: the leak moves the dip away from it. */
  readonly tuning: number;
}

/** Drivers known from the impedance of their box, not from a sheet. */
export interface MeasuredDriver {
  readonly values: readonly {
    readonly field: (typeof followed)[number];
    readonly value: number;
    /** Where it lies if each reading is off by what is stated, independently of the others, and the box leaks as `leaks` says. */
    readonly from: number;
    readonly to: number;
  }[];
  readonly within: {
    readonly frequency: number;
    readonly length: number;
    readonly impedance: number;
    readonly air: number;
  };
  readonly leaks: Leaks;
  /** Whether how well it was measured is assumed, in whole or in part. */
  readonly withinAssumed: boolean;
  /** What neither a sheet nor the measurement tells. */
  readonly open: readonly string[];
}

/** Fields of a sheet, any of which makes a driver one with a sheet. */
const SHEET = ['fs', 'Qts', 'Qes', 'Qms', 'Vas', 'Mms', 'Cms', 'Rms', 'Bl', 'sensitivity'] as const;

/** Whether a brief gives no sheet of a driver. */
export const withoutSheet = (driver: Faultless<Sheet>): boolean => SHEET.every((field) => driver[field] === undefined);

/** Where the readings of core stand in a brief. */
const PLACES: Readonly<Record<string, string>> = {
  'impedance.peakImpedance': 'standing.measured.peakImpedance',
  'impedance.flankImpedance': 'standing.measured.flank.impedance',
  'impedance.flankFrequency': 'standing.measured.flank.frequency',
  'impedance.dip': 'standing.measured.tuning',
};

/** What stays open without a sheet, and what that leaves out of the answer. */
const OPEN: Readonly<Record<(typeof sheetOnly)[number], string>> = {
  Xmax: 'the travel of the cone (Xmax): no limit on the travel is judged',
  Pe: 'the heat that the coil bears (Pe): no limit on the heat is judged',
  outerDiameter: 'the diameter of the frame',
  cutoutDiameter: 'the cutout: whether a tube passes it is not known',
  depth: 'the depth of the driver: measure whether a tube clears it',
};

/** What was found of the driver of a brief that gives no sheet, with its faults; `undefined` where it gives one. */
export function measuredDriver(brief: unknown, air: Air, faults: Fault[]): Measurement | undefined {
  const read = brief as Read;
  const [sheet] = read.drivers ?? [];
  if (sheet === undefined || read.standing === undefined || !withoutSheet(sheet)) return undefined;
  if (read.standing.measured === undefined) {
    const expected = 'the data of its sheet, or the impedance of its box';
    const remedy = 'Give fs, Qes, Qms, Vas, Sd and Re; or measure the impedance, and tell it in standing.measured.';
    faults.push({ code: 'empty', path: 'drivers[0]', got: 'neither', expected, remedy });
    return undefined;
  }
  const found = readingsOf(read, faults);
  if (found === undefined) return undefined;
  const shared = sharedOf(sheet.wirings?.[0]);
  const told = read.standing.measured.within ?? {};
  const within = {
    frequency: told.frequency ?? WITHIN.frequency,
    length: told.length ?? WITHIN.length,
    impedance: told.impedance ?? WITHIN.impedance,
    air: told.air ?? WITHIN.air * found.air,
  };
  const { QL, QA, QP } = (read as ReadFields<Pick<typeof ventedFields, 'box'>>).box ?? {};
  const others = { ...(QA !== undefined && { QA }), ...(QP !== undefined && { QP }) };
  try {
    const of = (one: Readings) => valuesOf(one, shared, others, air);
    const leaks = leaksOf(QL, (leak) => of({ ...found, leak }).leak, faults);
    const readings = { ...found, leak: 1 / leaks.QL };
    const ends = endsOf(readings, within, Math.max(readings.leak, 1 / (QL ?? LEAST_QL)));
    const open = sheetOnly.filter((name) => sheet[name] === undefined).map((name) => OPEN[name]);
    const withinAssumed = Object.keys(told).length < 4;
    const measurement = (values: MeasuredDriver['values']): Measurement => ({
      told: { values, within, leaks, withinAssumed, open },
      readings,
      ends,
      shared,
      others,
      tuning: of(readings).fb,
    });
    try {
      return measurement(rangesOf(readings, ends, of));
    } catch (error) {
      if (!isInputError(error)) throw error;
      const expected = 'readings that differ by more than what they may be off';
      const remedy = 'Measure more finely, or state how well it was measured.';
      faults.push({
        code: 'inconsistent',
        path: 'standing.measured.within',
        got: read.standing.measured.within,
        expected,
        remedy,
      });
      return measurement(valuesAlone(of(readings)));
    }
  } catch (error) {
    if (!isInputError(error)) throw error;
    for (const fault of error.faults) faults.push({ ...fault, path: PLACES[fault.path] ?? 'standing.measured' });
    return undefined;
  }
}

/** The data of a driver that follow, as a sheet would tell them. */
export const dataOf = ({ values }: Pick<MeasuredDriver, 'values'>) =>
  Object.fromEntries(
    values
      .filter(({ field }) => !['Qes', 'Qms', 'Qts', 'fs', 'Vas', 'Sd'].includes(field))
      .map(({ field, value }) => [field, value]),
  );
