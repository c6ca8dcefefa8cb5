import { type Filter, highPass, shapeByQ } from '../filter/index.js';
import { si } from '../quantity/index.js';
import { normalisedShape } from './alignment.js';
import type { ShapedBox } from './shaped-box.js';
import type { Sought } from './unknowns.js';

/** An auxiliary high-pass in front of the amplifier, as the solver seeks it: Hz, and a quality factor if it has order 2. */
export interface HighPassTrial {
  readonly corner: number;
  readonly Q?: number;
}

/** A spec with the high-pass that goes with it. The family does not read that field. */
export type Behind<Spec> = Spec & { readonly highPass?: HighPassTrial };

/** Corner and quality factor of the high-pass as numbers that are sought. A high-pass shares in every order of the alignment. */
export function highPassUnknowns<Spec>(order: 1 | 2, resonance: number): Sought<Behind<Spec>>[] {
  const put =
    (field: 'corner' | 'Q') =>
    (trial: Behind<Spec>, value: number): void => {
      (trial as { highPass?: HighPassTrial }).highPass = { corner: resonance, ...trial.highPass, [field]: value };
    };
  const corner = { name: 'highPass.corner', starts: [1, 0.5, 2].map((ratio) => ratio * resonance), put: put('corner') };
  return order === 1 ? [corner] : [corner, { name: 'highPass.Q', starts: [0.6, 1.2, 3], put: put('Q') }];
}

/** The response of a box behind a high-pass: its denominator is the product of both. */
export function behindHighPass(box: ShapedBox, order: 1 | 2): ShapedBox {
  const middle = new Float64Array(box.order - 1);
  const product = new Float64Array(box.order + order + 1);
  const shapeOf = (spec: Behind<unknown>, out: Float64Array): number => {
    const frequency = box.shapeOf(spec, middle);
    const { corner, Q } = spec.highPass!;
    const ratio = corner / frequency;
    const [first, second] = order === 1 ? [ratio, 1] : [ratio ** 2, ratio / Q!];
    product.fill(0);
    for (let k = 0; k <= box.order; k++) {
      const value = k === 0 || k === box.order ? 1 : middle[k - 1]!;
      product[k]! += first * value;
      product[k + 1]! += second * value;
      if (order === 2) product[k + 2]! += value;
    }
    return normalisedShape(product, box.order + order, out) * frequency;
  };
  const { numerator } = box;
  const shifted = new Float64Array(box.order + order + 1);
  return {
    ...box,
    order: box.order + order,
    below: box.below + order,
    shapeOf: shapeOf as ShapedBox['shapeOf'],
    ...(numerator && {
      numerator: (frequency) => {
        shifted.set(numerator(frequency), order);
        return shifted;
      },
    }),
  };
}

/** The high-pass as a filter. */
export function filterOf({ corner, Q }: HighPassTrial): Filter {
  const at = si('frequency', corner);
  return highPass(shapeByQ(Q === undefined ? { order: 1 } : { order: 2, Q }), at);
}

/** Gain of the high-pass at a frequency. */
export function gainOf({ corner, Q }: HighPassTrial, frequency: number): number {
  const x = frequency / corner;
  return Q === undefined ? x / Math.hypot(1, x) : x ** 2 / Math.hypot(1 - x ** 2, x / Q);
}
