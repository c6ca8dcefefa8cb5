import type { System } from '../enclosure/index.js';
import { greatestLevel, type Limit } from '../limit/index.js';
import { columnsOf } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';
import { lostByJson } from './plain-record.js';

/** Options for trying a limit. */
export interface LimitTrial {
  /** A system that has the limited probe. */
  readonly system: System;
  /** Drives at which the limit is known to be reached, from a published curve, a measurement or a calculation by hand. */
  readonly reached?: readonly { readonly frequency: number; readonly driveVoltageRms: number }[];
}

const frequencies = [10, 31, 100, 310, 1000];
/** By how much a drive may differ from the known one. */
const AGREEMENT = 1e-3;

/**
 * The laws of every limit, including your own.
 *
 * It has a name, a basis in words, and a number above zero that survives JSON. Its probe belongs to the system. At the drive that
 * it allows, the limited quantity has exactly the stated value. Half the value allows half the drive, since a linear system is
 * proportional to its drive. Its exponents are of numbers of the system. A velocity that is limited as travel must be integrated, which is possible only for a probe. Known
 * drives agree within 0.1 %.
 *
 * @validity small signals
 * @neglects whether the number is right, where no drive is stated
 * @returns one result for each law
 * @source small1973vented2 displacement-limited and thermally limited power
 * @example limitLaws(voltageLimit('20 V'), { system })
 */
export function limitLaws(limit: Limit, { system, reached = [] }: LimitTrial): readonly LawResult[] {
  const { name, basis, probe, integrated, greatestRms, exponents = {} } = limit;
  const drives = (one: Limit, at: readonly number[] = frequencies) => greatestLevel(system, [one], at).driveVoltageRms;
  return [
    tried('has a name and a basis', `${name}: ${basis}`, () =>
      name?.length > 0 && basis?.length > 0 ? undefined : 'no words for the reader',
    ),
    tried('a number above zero', 'once', () =>
      greatestRms > 0 && greatestRms < Infinity ? undefined : `${greatestRms}`,
    ),
    tried('survives JSON', 'once', () => lostByJson(limit)),
    tried('its probe is there', probe ?? 'the drive', () => {
      if (probe === undefined) return integrated === true ? 'the drive is integrated' : undefined;
      return probe in columnsOf(system, Float64Array.of(100)) ? undefined : `no ${probe}`;
    }),
    tried('its exponents are of numbers that are there', `${Object.keys(exponents).length} exponents`, () => {
      const wrong = Object.entries(exponents).find(
        ([element, power]) => typeof system.network.values[element] !== 'number' || !Number.isFinite(power),
      );
      return wrong?.join(': ');
    }),
    tried('is reached at the drive that it allows', `${frequencies.length} frequencies`, () => {
      const allowed = drives(limit);
      const column = probe === undefined ? undefined : columnsOf(system, Float64Array.from(frequencies))[probe];
      const i = frequencies.findIndex((f, k) => {
        const size = column === undefined ? 1 : Math.hypot(column.re[k]!, column.im[k]!);
        const value = allowed[k]! * (integrated === true ? size / (2 * Math.PI * f) : size);
        return !alike(value, greatestRms);
      });
      return i < 0 ? undefined : `not at ${frequencies[i]} Hz`;
    }),
    tried('half the limit allows half the drive', `${frequencies.length} frequencies`, () => {
      const [whole, half] = [drives(limit), drives({ ...limit, greatestRms: greatestRms / 2 })];
      return whole.every((value, i) => alike(value, 2 * half[i]!)) ? undefined : 'it does not';
    }),
    tried('agrees with known values', `${reached.length} drives`, () => {
      for (const { frequency, driveVoltageRms } of reached) {
        const own = drives(limit, [frequency])[0]!;
        if (!alike(own, driveVoltageRms, AGREEMENT))
          return `${own} V at ${frequency} Hz, but the known drive is ${driveVoltageRms} V`;
      }
      return undefined;
    }),
  ];
}
