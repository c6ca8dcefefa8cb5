import type { Spectrum } from './welch.js';

/** Mean square between two frequencies, Hz, from a power spectral density that is constant around each of its lines. */
export function powerBetween({ frequencies, density }: Spectrum, low: number, high: number): number {
  const step = frequencies[1]!;
  let power = 0;
  for (let k = Math.floor(low / step + 0.5); k <= Math.min(density.length - 1, Math.ceil(high / step - 0.5)); k++) {
    const inside = Math.min(high, (k + 0.5) * step) - Math.max(low, (k - 0.5) * step);
    power += Math.max(0, inside) * density[k]!;
  }
  return power;
}
