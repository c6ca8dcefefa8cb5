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

/** The points of such a line, in pixels. */
export function pointsOf(path: string): { readonly x: readonly number[]; readonly y: readonly number[] } {
  const steps = path
    .slice(1)
    .split(/[l ]/)
    .map((text) => Math.round(10 * Number(text)));
  const [x, y]: [number[], number[]] = [[], []];
  let [across, down] = [0, 0];
  for (let i = 0; i + 1 < steps.length; i += 2) {
    across += steps[i]!;
    down += steps[i + 1]!;
    x.push(across / 10);
    y.push(down / 10);
  }
  return { x, y };
}
