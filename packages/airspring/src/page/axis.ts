/** Lowest and highest of some values and the steps between, in whole steps. */
export function axis(values: readonly number[], step: number): { domain: readonly [number, number]; ticks: number[] } {
  const low = Math.floor(Math.min(...values) / step + 1e-9);
  const high = Math.ceil(Math.max(...values) / step - 1e-9);
  const ticks = Array.from({ length: high - low + 1 }, (_, i) => (low + i) * step);
  return { domain: [low * step, high * step], ticks };
}
