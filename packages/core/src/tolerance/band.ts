/** Nine of ten builds lie between the first and the last. */
export const SHARES = [0.05, 0.5, 0.95] as const;

/** A number over many builds: below it lie 5 %, half, 95 % of them. */
export interface Band {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly standardDeviation: number;
}

/** The value below which a share of sorted numbers lies. */
export const quantile = (sorted: Float64Array, share: number): number => {
  const place = share * (sorted.length - 1);
  const i = Math.min(Math.floor(place), sorted.length - 2);
  return sorted.length === 1 ? sorted[0]! : sorted[i]! + (place - i) * (sorted[i + 1]! - sorted[i]!);
};

/** The band of some numbers, at least one. */
export function bandOf(numbers: Float64Array): Band {
  // Sums are taken in sorted order as well, so that their rounding does not depend on the order of the numbers.
  const sorted = numbers.slice().sort();
  const mean = sorted.reduce((sum, value) => sum + value, 0) / numbers.length;
  const squares = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const [low, middle, high] = SHARES.map((share) => quantile(sorted, share)) as [number, number, number];
  return { low, middle, high, standardDeviation: Math.sqrt(squares / Math.max(1, numbers.length - 1)) };
}
