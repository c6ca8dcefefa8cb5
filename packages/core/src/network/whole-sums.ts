/**
 * A sum of products: [product, whole coefficient, product, whole coefficient …], the products rising. A product is a set of
 * factors, each a bit of one number.
 */
export type Sum = readonly number[];

/** The sums 0 and 1. */
export const NOTHING: Sum = [];
export const ONE: Sum = [0, 1];

/** sum + other × product × coefficient, without what has a factor twice. Products that cancel do so exactly, as whole numbers. */
function plus(sum: Sum, other: Sum, product: number, coefficient: number): Sum {
  const out: number[] = [];
  let i = 0;
  for (let j = 0; j < other.length; j += 2) {
    if ((other[j]! & product) !== 0) continue;
    // Multiplying adds the same bits to each, so that the products still rise.
    const own = other[j]! | product;
    for (; i < sum.length && sum[i]! < own; i += 2) out.push(sum[i]!, sum[i + 1]!);
    let total = other[j + 1]! * coefficient;
    if (sum[i] === own) {
      total += sum[i + 1]!;
      i += 2;
    }
    if (total !== 0) out.push(own, total);
  }
  for (; i < sum.length; i += 2) out.push(sum[i]!, sum[i + 1]!);
  return out;
}

/** sum + a × b × sign. */
export function plusProduct(sum: Sum, a: Sum, b: Sum, sign: number): Sum {
  let out = sum;
  for (let k = 0; k < b.length; k += 2) out = plus(out, a, b[k]!, b[k + 1]! * sign);
  return out;
}
