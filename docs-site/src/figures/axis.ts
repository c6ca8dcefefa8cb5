/** Lowest and highest of some values and the steps between, in whole steps. */
export function axis(values: readonly number[], step: number): { domain: readonly [number, number]; ticks: number[] } {
  const low = Math.floor(Math.min(...values) / step + 1e-9);
  const high = Math.ceil(Math.max(...values) / step - 1e-9);
  const ticks = Array.from({ length: high - low + 1 }, (_, i) => (low + i) * step);
  return { domain: [low * step, high * step], ticks };
}

/** Where letters stand so that none covers another: as near to their lines as they can. */
export function spread(wanted: readonly number[], apart: number, lowest = Number.NEGATIVE_INFINITY): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = [...wanted];
  for (let pass = 0; pass < 40; pass++) {
    for (const i of order) placed[i] = Math.max(lowest, placed[i]!);
    for (let k = 1; k < order.length; k++) {
      const [a, b] = [order[k - 1]!, order[k]!];
      const close = apart - (placed[b]! - placed[a]!);
      if (close <= 0) continue;
      const down = Math.min(close / 2, placed[a]! - lowest);
      placed[a] = placed[a]! - down;
      placed[b] = placed[b]! + close - down;
    }
  }
  return placed;
}

/** An axis from a low value to a high one with about five round steps. */
export function axisOf(low: number, high: number, words: string) {
  const rough = (high - low) / 5 || 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 2.5, 5, 10].find((size) => size * power >= rough * (1 - 1e-9)) ?? 10);
  const { domain, ticks } = axis([low, high], step);
  return { domain, ticks: ticks.map((tick) => Number(tick.toPrecision(12))), words };
}
