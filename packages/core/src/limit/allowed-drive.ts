import type { System } from '../enclosure/index.js';
import { missingProbe, undamped } from '../network/index.js';
import { type ComplexColumn, complexColumns } from '../numeric/index.js';
import { atFrequency } from '../response/at-frequency.js';
import { sweptColumns } from '../response/compile.js';
import { turns } from '../response/extremum.js';
import { compiledSystem } from '../response/index.js';
import { greatestDrive } from './greatest-level.js';
import type { Limit } from './limit.js';

/** The swept probe of each limit; a limit on the drive itself has none. */
type Swept = readonly (ComplexColumn | undefined)[];

/** What the limits need of a system. `columnsAt` sweeps frequencies; pass its columns on, and they are swept only once. */
export interface AllowedDrive {
  readonly columnsAt: (frequencies: Float64Array) => Swept;
  /** The greatest drive at some frequencies, V rms, and the place of the limit that binds there. */
  readonly most: (
    frequencies: Float64Array,
    columns?: Swept,
  ) => { readonly voltage: Float64Array; readonly binding: Int32Array };
  /** The greatest drive at one frequency, V rms. A call allocates nothing. */
  readonly mostAt: (frequency: number) => number;
  /** The greatest drive that each limit alone allows, a column for each. */
  readonly each: (frequencies: Float64Array) => readonly Float64Array[];
  /** Frequencies between those of a grid, from a given place on, at which a limit is closest. */
  readonly peaks: (grid: Float64Array, columns: Swept, start: number) => number[];
}

/** Prepares a system for questions about its limits. A missing probe is named. */
export function allowedDrive(system: System, limits: readonly Limit[]): AllowedDrive {
  const network = compiledSystem(system);
  const places = limits.map(({ probe }) => {
    const at = probe === undefined ? -1 : network.probes.indexOf(probe);
    if (probe !== undefined && at < 0) throw missingProbe(probe);
    return at;
  });
  const columnsAt = (frequencies: Float64Array): Swept => {
    const columns = sweptColumns(network, frequencies);
    return places.map((place) => columns[place]);
  };
  const within = (some: readonly Limit[], columns: Swept, frequencies: Float64Array) => {
    const voltage = new Float64Array(frequencies.length);
    const binding = new Int32Array(frequencies.length);
    greatestDrive(frequencies, some, columns, voltage, binding);
    return { voltage, binding };
  };
  const [one, voltageAtOne, bindingAtOne] = [new Float64Array(1), new Float64Array(1), new Int32Array(1)];
  const columnsAtOne = complexColumns(network.probes.length, 1);
  const ofLimits = places.map((place) => columnsAtOne[place]);
  return {
    columnsAt,
    mostAt: (frequency) => {
      one[0] = frequency;
      if (network.sweep(one, columnsAtOne) >= 0) throw undamped(frequency);
      greatestDrive(one, limits, ofLimits, voltageAtOne, bindingAtOne);
      return voltageAtOne[0]!;
    },
    most: (frequencies, columns = columnsAt(frequencies)) => within(limits, columns, frequencies),
    each: (frequencies) => {
      const columns = columnsAt(frequencies);
      return limits.map((limit, k) => within([limit], [columns[k]], frequencies).voltage);
    },
    peaks: (grid, columns, start) => {
      const { slope } = atFrequency(network);
      const frequencies = grid.subarray(start);
      return columns.flatMap((column, k) => {
        if (column === undefined) return [];
        const power = (limits[k] as Limit).integrated ? 1 : 0;
        const sizes = frequencies.map((f, i) => Math.hypot(column.re[start + i]!, column.im[start + i]!) / f ** power);
        return turns(frequencies, sizes, 1, (f) => slope(places[k]!, f) - power);
      });
    },
  };
}
