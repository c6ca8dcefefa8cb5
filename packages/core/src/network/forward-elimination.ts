import type { ComplexColumn } from '../numeric/index.js';
import { addSizes, type Factor, multiply, subtractProduct } from './column-arithmetic.js';
import type { TakeColumn } from './column-room.js';
import type { Elimination } from './elimination.js';
import { type Entry, LOST } from './entry.js';
import type { EntryColumns } from './entry-columns.js';
import type { Step } from './step.js';

/** Beyond these sizes the square of a pivot is outside the range of double precision. */
const [SMALLEST, LARGEST] = [1e-150, 1e150];

/** Equations whose elimination is done over a block of frequencies: entries below pivots become factors, pivots inverses. */
export interface Factored {
  readonly steps: readonly Step[];
  /** Column of an entry. */
  readonly columnOf: (entry: number) => number;
  readonly factorOf: (entry: number) => Factor;
  /** What an entry below a pivot has become. */
  readonly factorBelow: (entry: number) => Factor;
  readonly inverseOf: (step: Step) => Factor;
  /** Eliminates, and marks the places at which a pivot lost too many digits: what is solved there is wrong. */
  readonly eliminate: (count: number, lost: Uint8Array) => void;
}

/** Prepares the part of an elimination that is done at each frequency. */
export function forwardElimination(
  { entries, steps }: Elimination,
  { factorOf, sizesOf }: EntryColumns,
  take: TakeColumn,
): Factored {
  const inverseOf = ({ pivot }: Step): Factor => {
    const factor = factorOf(pivot);
    return typeof factor === 'number' ? 1 / factor : factor;
  };
  const guarded = new Set(steps.flatMap((step) => (step.swept && step.guarded ? [step.pivot] : [])));
  const below = new Map<number, Factor>();
  const sweep = steps.flatMap((step) => {
    if (!step.swept) return [];
    const inverse = inverseOf(step);
    const rows = step.rows.map(({ factor, updates }) => {
      const from = factorOf(factor);
      const to = typeof from !== 'number' ? from : typeof inverse === 'number' ? from * inverse : take();
      below.set(factor, to);
      const changes = updates.map(([target, source]) => ({
        target: factorOf(target) as ComplexColumn,
        source: factorOf(source),
        sizes: guarded.has(target) ? sizesOf(target) : undefined,
      }));
      return { from, to, changes };
    });
    return [{ inverse, sizes: step.guarded ? sizesOf(step.pivot) : undefined, rows }];
  });

  const eliminate = (count: number, lost: Uint8Array) => {
    for (const { inverse, sizes, rows } of sweep) {
      if (typeof inverse !== 'number') invertGuarded(inverse, sizes, count, lost);
      for (const { from, to, changes } of rows) {
        if (typeof to !== 'number') multiply(to, from, inverse, count);
        for (const { target, source, sizes } of changes) {
          if (sizes !== undefined) addSizes(sizes, to, source, count);
          subtractProduct(target, to, source, count);
        }
      }
    }
  };
  return {
    steps,
    columnOf: (entry) => (entries[entry] as Entry).column,
    factorOf,
    factorBelow: (entry) => below.get(entry) ?? factorOf(entry),
    inverseOf,
    eliminate,
  };
}

/** z ← 1/z. Marks where a pivot lost too many digits of what it was summed from, and goes on there with a 1. */
function invertGuarded(
  { re, im }: ComplexColumn,
  sizes: Float64Array | undefined,
  count: number,
  lost: Uint8Array,
): void {
  for (let i = 0; i < count; i++) {
    const a = re[i]!;
    const b = im[i]!;
    const left = Math.abs(a) + Math.abs(b);
    const floor = sizes === undefined ? 0 : LOST * sizes[i]!;
    if (left > floor && left > SMALLEST && left < LARGEST) {
      const unit = 1 / (a * a + b * b);
      re[i] = a * unit;
      im[i] = -b * unit;
    } else {
      lost[i] = 1;
      re[i] = 1;
      im[i] = 0;
    }
  }
}
