import { type CompiledNetwork, undamped } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';

/** A network that is evaluated at single frequencies, as root finders need it. A call allocates nothing. */
export interface AtFrequency {
  /** Magnitude of a probe, per volt. */
  readonly magnitude: (probe: number, frequency: number) => number;
  /** d ln|y| / d ln f of a probe y. */
  readonly slope: (probe: number, frequency: number) => number;
}

/** Prepares a network for evaluation at single frequencies. A resonance that nothing damps is refused. */
export function atFrequency({ probes, sweep, slope }: CompiledNetwork): AtFrequency {
  const at = new Float64Array(1);
  const columns = probes.map(() => complexColumn(1));
  const change = complexColumn(1);
  return {
    magnitude: (probe, frequency) => {
      at[0] = frequency;
      if (sweep(at, columns) >= 0) throw undamped(frequency);
      const { re, im } = columns[probe] as (typeof columns)[number];
      const a = re[0]!;
      const b = im[0]!;
      return Math.sqrt(a * a + b * b);
    },
    slope: (probe, frequency) => {
      at[0] = frequency;
      if (slope(probe, at, change) >= 0) throw undamped(frequency);
      return change.re[0]!;
    },
  };
}
