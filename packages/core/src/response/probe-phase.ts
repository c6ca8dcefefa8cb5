import type { System } from '../enclosure/index.js';
import { frequencyGrid } from '../quantity/index.js';
import { compiledSystem, probeColumns, probeNamed } from './compile.js';

/** A probe, and whether it is taken as it is or integrated over time. */
export interface ProbeOptions {
  readonly probe: string;
  /** Whether the probe is first integrated over time, which turns a velocity into a displacement a quarter turn later. */
  readonly integrated?: boolean;
}

/**
 * Phase of a probe relative to the drive: of the cone with `coneVelocity`, or of its displacement with `integrated`, of the air in
 * the vent with `ventAirSpeed`. Both count as positive outwards: far below the tuning of a vented box the two are opposed.
 *
 * $$ \varphi = \arg y, \quad \text{or } \arg\frac{y}{j\omega} = \arg y - \frac{\pi}{2} \text{ of the integral} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $y$ | `probe` | SI per V | value of the probe at one volt |
 *
 * @validity as {@link respond}; time runs as exp(+jωt), so that a negative phase is late
 * @neglects what {@link respond} neglects
 * @returns rad for each frequency, −π to π, as it comes: it jumps by a turn at ±π and is not unwrapped; 0 where the probe is 0
 * @throws InputError `empty` for a probe that is not there, and those of `frequencyGrid`
 * @source small1972direct electro-mechano-acoustical circuit
 * @example probePhase(system, [20, 30, 40], { probe: 'coneVelocity', integrated: true })
 */
export function probePhase(
  system: System,
  frequencies: ArrayLike<number>,
  { probe, integrated = false }: ProbeOptions,
): Float64Array {
  const grid = frequencyGrid(frequencies);
  const { re, im } = probeNamed(probeColumns(compiledSystem(system), grid), probe);
  // −j (re + j im) = im − j re
  return grid.map((_, i) => (integrated ? Math.atan2(-re[i]!, im[i]!) : Math.atan2(im[i]!, re[i]!)));
}
