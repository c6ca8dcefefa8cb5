/** C (jω − A)⁻¹ B + D by elimination with row exchanges: state matrices against a sweep. */
import { type Network, stateSpace } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import type { Swept } from './compare.js';

export function byStates(network: Network, frequencies: Float64Array): Swept {
  const space = stateSpace(network);
  if (!space.ok) throw new Error(space.because.map(({ text }) => text).join('; '));
  const { size, A, B, C, D, outputs } = space;
  const columns = outputs.map(() => complexColumn(frequencies.length));
  frequencies.forEach((f, i) => {
    const x = solved(size, A, B, 2 * Math.PI * f);
    outputs.forEach((_, row) => {
      let [re, im] = [D[row]!, 0];
      for (let k = 0; k < size; k++) {
        re += C[row * size + k]! * (x[k] as readonly number[])[0]!;
        im += C[row * size + k]! * (x[k] as readonly number[])[1]!;
      }
      columns[row]!.re[i] = re;
      columns[row]!.im[i] = im;
    });
  });
  return Object.fromEntries(outputs.map((name, row) => [name, columns[row]!]));
}

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const n = c * c + d * d;
  return [(a * c + b * d) / n, (b * c - a * d) / n];
};

/** x of (jω − A) x = B. States of unlike units: the rows are brought to one size first. */
function solved(size: number, A: Float64Array, B: Float64Array, omega: number): readonly Complex[] {
  const rows = Array.from({ length: size }, (_, r) => {
    const row: Complex[] = Array.from({ length: size }, (_, c) => [-A[r * size + c]!, r === c ? omega : 0]);
    row.push([B[r]!, 0]);
    const most = Math.max(...row.slice(0, size).map((one) => Math.hypot(...one)));
    return row.map(([re, im]): Complex => [re / most, im / most]);
  });
  for (let k = 0; k < size; k++) {
    let best = k;
    for (let r = k + 1; r < size; r++) if (Math.hypot(...rows[r]![k]!) > Math.hypot(...rows[best]![k]!)) best = r;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    for (let r = 0; r < size; r++) {
      if (r === k) continue;
      const factor = over(rows[r]![k]!, rows[k]![k]!);
      for (let c = k; c <= size; c++) {
        const [re, im] = times(factor, rows[k]![c]!);
        rows[r]![c] = [rows[r]![c]![0] - re, rows[r]![c]![1] - im];
      }
    }
  }
  return rows.map((row, k) => over(row[size]!, row[k]!));
}
