import type { System } from '../enclosure/index.js';
import { withoutCoilInductance } from '../network/index.js';
import { complexColumn } from '../numeric/index.js';
import { type Level, si } from '../quantity/index.js';
import { type CompiledNetwork, compileNetwork, probeIndex, undamped } from './compile.js';
import { levelColumn } from './respond.js';

/** Where a network without polynomials is taken to have reached its limit, Hz. Heavy absorption asks for far points. */
const FAR = 1e6;

/**
 * Two frequencies at which the level has reached its limit but for a term of 1/f², which both together remove: a thousand
 * times above every corner, told by the polynomials (a root is at most twice the greatest $|c_k/c_n|^{1/(n-k)}$).
 */
export function farAway({ probes, polynomials }: CompiledNetwork): readonly [near: number, far: number] {
  if (polynomials === undefined) return [FAR, 2 * FAR];
  const { coefficients, width, scale } = polynomials;
  let corner = 0;
  for (const row of [0, 1 + probeIndex(probes, 'radiatedFlow')]) {
    const list = coefficients.subarray(row * width, (row + 1) * width);
    const top = list.findLastIndex((value) => value !== 0);
    for (let k = 0; k < top; k++) {
      const ratio = Math.abs((list[k] as number) / (list[top] as number));
      corner = Math.max(corner, ratio ** (1 / (top - k)));
    }
  }
  // No power of it may leave double precision when it is squared.
  const most = 10 ** (140 / width);
  const near = Math.max(FAR, (Math.min(1000 * corner, most) * scale) / (2 * Math.PI));
  return [near, 2 * near];
}

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
 * @validity systems whose level approaches a constant. With an element given over frequency it is read at 1 and 2 MHz: a
 * strong motor with a light cone may be 1 dB short of its limit there
 * @neglects coil inductance, by definition
 * @returns dB at 1 m in half space for 1 V rms
 * @source small1972direct
 * @example referenceLevel(closedBox({ drivers, netVolume: '40 L' }))
 */
export function referenceLevel(system: System): Level {
  const network = compileNetwork(withoutCoilInductance(system.network));
  const level = levelOf(network, system.air.density);
  const [near, far] = farAway(network);
  return si('level', (4 * level(far) - level(near)) / 3);
}
