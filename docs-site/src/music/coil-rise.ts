import type { ThermalModelInput } from '@airspring/core/limit';

/**
 * How a coil warms up of which only Pe is known: it is supposed that Pe for hours warms it by 180 K, most of it above the magnet
 * (common practice; times as in `thermalModel`). For a heat of Pe.
 */
const LASTING = 180;
export const supposed = {
  coilToMagnet: 0.7 * LASTING,
  magnetToAir: 0.3 * LASTING,
  coilTime: 4,
  magnetTime: 1200,
} as const satisfies Record<keyof Omit<ThermalModelInput, 'coefficient'>, number>;

/** Rise of the coil at the end of each slice, K, of heat as shares of Pe. Within a slice the magnet stays as warm as it is. */
export function coilRise(heat: ArrayLike<number>, slice: number): Float64Array {
  const { coilToMagnet, magnetToAir, coilTime, magnetTime } = supposed;
  const kept = Math.exp(-slice / coilTime);
  const capacity = magnetTime / magnetToAir;
  const out = new Float64Array(heat.length);
  let [above, magnet] = [0, 0];
  for (let i = 0; i < out.length; i++) {
    const before = above;
    above = kept * above + (1 - kept) * coilToMagnet * heat[i]!;
    magnet += (slice * ((before + above) / 2 / coilToMagnet - magnet / magnetToAir)) / capacity;
    out[i] = above + magnet;
  }
  return out;
}
