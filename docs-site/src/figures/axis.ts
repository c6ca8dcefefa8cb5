import { axis } from '../../../packages/airspring/src/page/axis.js';

export { axis };

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

const LABELLED = [10, 20, 30, 50, 100, 200, 300, 500, 1000];
const BETWEEN = [15, 40, 60, 70, 80, 90, 150, 400, 600, 700, 800, 900];

/** The one axis of frequencies: a few names, and lines without a name between them. */
export function frequencyAxis(first: number, last: number) {
  const inside = (f: number) => f >= first * 0.999 && f <= last * 1.001;
  const [ticks, between] = [LABELLED.filter(inside), BETWEEN.filter(inside)];
  return { domain: [first, last] as const, ticks, between, log: true, words: 'frequency, Hz' } as const;
}

/** An axis from a low value to a high one with three to seven round steps, that ends where the values do. */
export function axisOf(low: number, high: number, words: string) {
  const rough = (high - low) / 7 || 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 2.5, 5, 10].find((size) => size * power >= rough * (1 - 1e-9)) ?? 10);
  const { domain, ticks } = axis([low, high], step);
  return { domain, ticks: ticks.map((tick) => Number(tick.toPrecision(12))), words };
}
