export { linePath } from '../../../packages/airspring/src/page/line-path.js';

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
