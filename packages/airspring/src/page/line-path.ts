/**
 * The `d` of a line in pixels, each point by its distance from the one before, which is half as long. Distances are those
 * between points rounded to a tenth, so that nothing adds up.
 */
export function linePath(x: ArrayLike<number>, y: ArrayLike<number>): string {
  let path = '';
  let last: readonly [number, number] = [0, 0];
  for (let i = 0; i < x.length; i++) {
    const tenths = [Math.round(10 * x[i]!), Math.round(10 * y[i]!)] as const;
    path += `${i === 0 ? 'M' : i === 1 ? 'l' : ' '}${(tenths[0] - last[0]) / 10} ${(tenths[1] - last[1]) / 10}`;
    last = tenths;
  }
  return path;
}
