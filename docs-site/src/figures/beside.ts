import type { Mark, Trace } from './chart.js';

/** Where a line is at some x, between its points. */
export function heightAt({ x, y }: Pick<Trace, 'x' | 'y'>, at: number): number {
  let i = 1;
  while (i < x.length - 1 && x[i]! < at) i++;
  const [x0, x1, y0, y1] = [x[i - 1], x[i], y[i - 1], y[i]] as [number, number, number, number];
  return y0 + ((y1 - y0) * Math.log(at / x0)) / Math.log(x1 / x0);
}

/** The name of a line, beside it: `lift` above it in units of the axis. */
export const beside = (trace: Trace, words: string, at: number, lift = 0, side: Mark['side'] = 'right'): Mark => ({
  name: words,
  x: at,
  y: heightAt(trace, at) + lift,
  words,
  colour: trace.colour,
  side,
});

/** Where a line is farthest from all others, between two places: its name stands there. */
export function clearest(
  trace: Trace,
  others: readonly Trace[],
  [from, to]: readonly [number, number],
  domain: readonly [number, number],
): number {
  const x = Array.from(trace.x).filter((at) => at >= from && at <= to);
  const room = (at: number) => {
    const y = heightAt(trace, at);
    // Near the edge of the field a name would be cut off.
    if (y < domain[0] || y > domain[1] - 0.08 * (domain[1] - domain[0])) return -1;
    return Math.min(...others.map((other) => Math.abs(heightAt(other, at) - y)));
  };
  return x.reduce((best, at) => (room(at) > room(best) ? at : best), x[0] ?? from);
}
