import type { Factored } from './forward-elimination.js';

/** An unknown as constant + Σ factor × other unknowns, the same at every frequency. */
export interface ConstantSum {
  constant: number;
  readonly terms: Map<number, number>;
}

/** The unknowns of joints and transformers. Each is a sum of other unknowns, with those of the same kind already substituted. */
export function constantSums({ steps, columnOf, factorOf, inverseOf }: Factored): Map<number, ConstantSum> {
  const sums = new Map<number, ConstantSum>();
  for (const step of [...steps].reverse()) {
    const right = step.right < 0 ? 0 : factorOf(step.right);
    const inverse = inverseOf(step);
    const rest = step.rest.map((entry) => [factorOf(entry), columnOf(entry)] as const);
    if (typeof right !== 'number' || typeof inverse !== 'number') continue;
    if (!rest.every((term): term is readonly [number, number] => typeof term[0] === 'number')) continue;
    const sum: ConstantSum = { constant: right * inverse, terms: new Map() };
    for (const [factor, unknown] of rest as readonly (readonly [number, number])[]) {
      const inner = sums.get(unknown) ?? { constant: 0, terms: new Map([[unknown, 1]]) };
      sum.constant -= factor * inverse * inner.constant;
      for (const [other, part] of inner.terms) {
        sum.terms.set(other, (sum.terms.get(other) ?? 0) - factor * inverse * part);
      }
    }
    sums.set(step.column, sum);
  }
  return sums;
}
