import type { System } from '../enclosure/index.js';
import { type Fault, InputError, refuse } from '../fault/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import {
  type Frequency,
  type FrequencyGrid,
  frequencyGrid,
  type Level,
  si,
  type VoltageRms,
} from '../quantity/index.js';
import { compiledSystem, levelColumn, probeColumns, probeNamed } from '../response/index.js';
import type { Limit } from './limit.js';

/**
 * Fills `voltage` with the greatest drive at each frequency, and `binding` with the index of the limit that binds there. A
 * kernel. `columns[k]` belongs to `limits[k]`; a limit without a column limits the drive itself.
 *
 * @validity small-signal parameters up to each limit
 * @neglects what {@link greatestLevel} neglects; checks nothing, allocates nothing
 * @returns nothing; V rms in `voltage`, index of the limit in `binding`
 * @source small1973vented2 displacement-limited and thermally limited power
 * @example greatestDrive(frequencies, limits, columns, voltage, binding)
 */
export function greatestDrive(
  frequencies: Float64Array,
  limits: readonly Limit[],
  columns: readonly (ComplexColumn | undefined)[],
  voltage: Float64Array,
  binding: Int32Array,
): void {
  voltage.fill(Number.MAX_VALUE);
  binding.fill(-1);
  for (let k = 0; k < limits.length; k++) {
    const { greatestRms, integrated } = limits[k] as Limit;
    const column = columns[k];
    for (let i = 0; i < frequencies.length; i++) {
      let most = greatestRms;
      if (column !== undefined) {
        const a = column.re[i]!;
        const b = column.im[i]!;
        const size = Math.sqrt(a * a + b * b);
        most /= Math.max(integrated ? size / (2 * Math.PI * frequencies[i]!) : size, 1e-150);
      }
      // The first limit is taken even if no drive reaches it, because some limit has to bind.
      if (most < voltage[i]! || (binding[i]! < 0 && most > 0)) {
        voltage[i] = Math.min(most, Number.MAX_VALUE);
        binding[i] = k;
      }
    }
  }
}

/** The greatest level that a system can play at each frequency, and what gives out first. */
export interface GreatestLevel {
  readonly frequencies: FrequencyGrid;
  /** Steady sine, dB at 1 m in half space. */
  readonly levelHalfSpace: Float64Array;
  /** Drive at that level, V rms. */
  readonly driveVoltageRms: Float64Array;
  /** Name of the limit that binds at each frequency. */
  readonly binding: readonly string[];
  /** The frequency at which this level is least. */
  readonly least: {
    readonly frequency: Frequency;
    readonly levelHalfSpace: Level;
    readonly driveVoltageRms: VoltageRms;
    readonly binding: string;
  };
}

/** Where the greatest level is least. */
export function leastOf(columns: Omit<GreatestLevel, 'least'>): GreatestLevel['least'] {
  const { frequencies, levelHalfSpace, driveVoltageRms, binding } = columns;
  const at = levelHalfSpace.reduce((least, level, i) => (level < levelHalfSpace[least]! ? i : least), 0);
  return {
    frequency: si('frequency', frequencies[at]!),
    levelHalfSpace: si('level', levelHalfSpace[at]!),
    driveVoltageRms: si('voltageRms', driveVoltageRms[at]!),
    binding: binding[at] as string,
  };
}

/** Refuses an empty list, and limits that are not a number above zero. */
export function refuseBadLimits(limits: readonly Limit[]): void {
  if (!Array.isArray(limits) || limits.length === 0) {
    const remedy = 'Give at least one limit.';
    throw new InputError([{ code: 'empty', path: 'limits', got: limits, expected: 'a list of limits', remedy }]);
  }
  const faults = limits.flatMap((limit: Limit | null | undefined, i): Fault[] => {
    const got = limit?.greatestRms;
    if (got !== undefined && got > 0 && got < Infinity) return [];
    const code = Number.isFinite(got) ? 'not-positive' : 'not-finite';
    const remedy = 'Leave the limit out if there is none.';
    return [{ code, path: `limits[${i}].greatestRms`, got, expected: 'a value above zero', remedy }];
  });
  refuse(faults);
}

/**
 * The greatest level of a steady sine that stays within every limit, at each frequency, and the limit that binds there. A filter before
 * the amplifier leaves these levels as they are: the drive before the filter may be larger by as much as the filter takes, which
 * `filterLevel` tells.
 *
 * $$ e_{max}(f) = \min_k \frac{g_k}{|h_k(f)|},\quad L_{max} = L_{1\,\mathrm{V}}(f) + 20\log_{10} e_{max} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $g_k$ | `greatestRms` | SI | greatest value that limit k allows |
 * | $h_k$ | `probe` | SI per V | value that one volt causes |
 *
 * @validity small-signal parameters up to each limit
 * @neglects compression, heating of the coil, any signal but a steady sine
 * @throws InputError `empty` without limits
 * @returns one column each, and where it is least
 * @source small1973vented2 displacement-limited and thermally limited power
 * @example greatestLevel(system, [...travelLimit(driver), voltageLimit('20 V')], [30, 40, 50]).binding
 */
export function greatestLevel(system: System, limits: readonly Limit[], frequencies: ArrayLike<number>): GreatestLevel {
  const grid = frequencyGrid(frequencies);
  refuseBadLimits(limits);
  const probes = probeColumns(compiledSystem(system), grid);
  const columns = limits.map(({ probe }) => (probe === undefined ? undefined : probeNamed(probes, probe)));
  const driveVoltageRms = new Float64Array(grid.length);
  const index = new Int32Array(grid.length);
  greatestDrive(grid, limits, columns, driveVoltageRms, index);
  const levelHalfSpace = new Float64Array(grid.length);
  levelColumn(grid, probeNamed(probes, 'radiatedFlow'), system.air.density, 1, levelHalfSpace);
  levelHalfSpace.forEach((level, i) => {
    levelHalfSpace[i] = level + 20 * Math.log10(driveVoltageRms[i]!);
  });
  const binding = Array.from(index, (k) => (limits[k] as Limit).name);
  const result = { frequencies: grid, levelHalfSpace, driveVoltageRms, binding };
  return { ...result, least: leastOf(result) };
}
