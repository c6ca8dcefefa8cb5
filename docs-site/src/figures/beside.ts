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
