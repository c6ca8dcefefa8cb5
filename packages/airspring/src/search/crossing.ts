/** Where a value crosses 1 between two frequencies, by a straight line in both logarithms. */
export const crossingAt = (low: number, high: number, atLow: number, atHigh: number): number =>
  low * (high / low) ** (Math.log(atLow) / Math.log(atLow / atHigh));

/** So near a limit, as a logarithm, a finer look may find that it is exceeded. */
const GRAZING = 0.005;

/**
 * How far above the middle of three samples a value last falls to 1 that exceeds or grazes it only between them, in steps;
 * `undefined` where it does not. A parabola in logarithms goes through the samples.
 */
export function grazedAbove(low: number, middle: number, high: number): number | undefined {
  if (middle < low || middle < high || middle > 1) return undefined;
  const a = Math.log(low);
  const b = Math.log(middle);
  const c = Math.log(high);
  const bend = (a + c) / 2 - b;
  const slope = (c - a) / 2;
  const top = b - slope ** 2 / (4 * bend);
  return bend < 0 && top > -GRAZING ? Math.sqrt(Math.max(0, -top / bend)) - slope / (2 * bend) : undefined;
}

/**
 * Where a response crosses a level between this frequency of a grid and the next, by regula falsi in logarithms. The first guess
 * also counts with the bend of the curve, by the frequency above. `size` is the response at any frequency.
 */
export function crossingFrom(
  i: number,
  grid: Float64Array,
  levels: Float64Array,
  fallen: number,
  size: (frequency: number) => number,
): number {
  let a = Math.log(grid[i]!);
  let b = Math.log(grid[i + 1]!);
  let fa = Math.log(levels[i]! / fallen);
  let fb = Math.log(levels[i + 1]! / fallen);
  let x = b - (fb * (b - a)) / (fb - fa);
  const fc = i + 2 < grid.length ? Math.log(levels[i + 2]! / fallen) : fb;
  if (fc > fb) {
    const c = Math.log(grid[i + 2]!);
    const bent = (a * fb * fc) / ((fa - fb) * (fa - fc)) + (b * fa * fc) / ((fb - fa) * (fb - fc));
    const guess = bent + (c * fa * fb) / ((fc - fa) * (fc - fb));
    if (guess > a && guess < b) x = guess;
  }
  for (let step = 0; step < 12; step++) {
    const fx = Math.log(size(Math.exp(x)) / fallen);
    const below = fx < 0;
    // So near, the straight line to the other end is as good as one more look.
    if (Math.abs(fx) < 1e-6) return Math.exp(x - (fx * ((below ? b : a) - x)) / ((below ? fb : fa) - fx));
    // Assigned one by one: taking pairs apart takes longer than the looks while the engine still interprets this.
    if (below) {
      a = x;
      fa = fx;
    } else {
      b = x;
      fb = fx;
    }
    x = b - (fb * (b - a)) / (fb - fa);
  }
  return Math.exp(b);
}
