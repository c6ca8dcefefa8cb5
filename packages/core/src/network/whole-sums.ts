/**
 * A sum of element products: monomial → whole coefficient. A monomial packs the exponents of its symbols as the digits of
 * one number, so that multiplying is adding.
 */
export type Sum = Map<number, number>;

/** target ← target + a × b × sign. Products that cancel do so exactly, as whole numbers. */
export function addProduct(target: Sum, a: Sum, b: Sum, sign: number): void {
  for (const [key, coefficient] of a) {
    const by = coefficient * sign;
    for (const [other, factor] of b) {
      const product = key + other;
      const total = (target.get(product) ?? 0) + by * factor;
      if (total === 0) target.delete(product);
      else target.set(product, total);
    }
  }
}
