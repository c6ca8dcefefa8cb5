import type { System } from '../enclosure/index.js';
import { withoutCoilInductance } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';
import { type Level, si } from '../quantity/index.js';
import { levelColumn } from './columns.js';
import { type CompiledNetwork, compileNetwork, probeIndex, undamped } from './compile.js';

/**
 * Where the level has reached its limit but for a term of 1/f², which the two points remove. Heavy absorption asks for far ones.
 */
export const FAR = [1e6, 2e6] as const;

/** Level at 1 m in half space as a function of frequency, for 1 V rms at the drive; of a network compiled already. Refuses an undamped pole. */
export function levelOf({ probes, sweep }: CompiledNetwork, density: number): (frequency: number) => number {
  const row = probeIndex(probes, 'radiatedFlow');
  const out = probes.map(() => complexColumn(1));
  const at = new Float64Array(1);
  const level = new Float64Array(1);
  return (frequency) => {
    at[0] = frequency;
    sweep(at, out);
    levelColumn(at, out[row] as (typeof out)[number], density, 1, level);
    if (!Number.isFinite(level[0])) throw undamped(frequency);
    return level[0] as number;
  };
}

/**
 * Level that a system approaches at high frequency when its coil had no inductance, per volt of drive: the reference of
 * its cut-offs. For one driver in half space
 *
 * $$ L_\infty = 20\log_{10}\frac{\rho\,Bl\,S_d}{2\pi\,M_{ms}(R_g + R_e)\cdot 20\,\mu\mathrm{Pa}} $$
 *
 * but it is read off the network, so that it holds for any family.
 *
 * @validity systems whose level approaches a constant
 * @neglects coil inductance, by definition
 * @returns dB at 1 m in half space for 1 V rms
 * @source small1972direct
 * @check response.reference-level
 * @example referenceLevel(closedBox({ drivers, netVolume: '40 L' }))
 */
export function referenceLevel(system: System): Level {
  const level = levelOf(compileNetwork(withoutCoilInductance(system.network)), system.air.density);
  const [near, far] = FAR;
  return si('level', (4 * level(far) - level(near)) / 3);
}
