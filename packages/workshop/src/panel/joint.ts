import { type Angle, type Length, type LengthInput, positive, readFields, si } from '@airspring/core/quantity';

/** What is taken from a panel along one of its edges. */
export type EdgeCut =
  /** A groove on the inner side: it begins `from` the outer side of the panel that meets the edge. A rabbet is a groove from 0. */
  | { readonly form: 'groove'; readonly from: Length; readonly width: Length; readonly depth: Length }
  /** A slope: the edge stands farther back the nearer to the inner side. The angle is counted from a square edge. */
  | { readonly form: 'bevel'; readonly angle: Angle };

/** How one of the two panels is made along the edge. */
export interface JointSide {
  /** How far its edge stands back from the outer side of the panel that it meets, m. */
  readonly setback: Length;
  readonly cuts: readonly EdgeCut[];
}

/** How two panels meet. The one that covers the other is `over`. Your own joint is a value like ours. */
export interface Joint {
  readonly name: string;
  /** How both are made, from their thicknesses in m. */
  readonly meet: (over: number, under: number) => { readonly over: JointSide; readonly under: JointSide };
}

const side = (setback: number, ...cuts: readonly EdgeCut[]): JointSide => ({ setback: si('length', setback), cuts });

/**
 * Butt joint: the covering panel runs through, and the other one stands against its inner side.
 *
 * @validity panels at right angles
 * @source own geometry of two boards
 * @example butt.meet(0.018, 0.015).under.setback // 0.018
 */
export const butt: Joint = { name: 'butt', meet: (over) => ({ over: side(0), under: side(over) }) };

const rabbetShape = { depth: positive('length') };

/**
 * Rabbet: the covering panel has a step along its edge, as wide as the other panel is thick, in which that panel stands.
 *
 * $$ s = t_{over} - d $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $s$ | m | how far the panel in the step stands back from the outer side |
 * | $t_{over}$ | m | thickness of the covering panel |
 * | $d$ | m | `depth`, how deep the step is |
 *
 * @validity steps less deep than the covering panel is thick
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`
 * @source own geometry of two boards
 * @example rabbet({ depth: '9 mm' }).meet(0.018, 0.018).under.setback // 0.009
 */
export function rabbet(input: { readonly depth: LengthInput }): Joint {
  const { depth } = readFields('rabbet', input, rabbetShape);
  return {
    name: 'rabbet',
    meet: (over, under) => ({
      over: side(0, { form: 'groove', from: si('length', 0), width: si('length', under), depth }),
      under: side(over - depth),
    }),
  };
}

const bevel = (across: number, own: number): EdgeCut => ({
  form: 'bevel',
  angle: si('angle', Math.atan2(across, own)),
});

/**
 * Mitre: both panels run to the outer edge, and their slopes lie in the plane from the outer edge to the inner one.
 *
 * $$ \tan\alpha = \frac{t_{other}}{t_{own}} $$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $\alpha$ | rad | angle of the slope, counted from a square edge |
 * | $t_{own}$, $t_{other}$ | m | thickness of the panel and of the one that it meets |
 *
 * @validity panels at right angles; 45 degrees where both are equally thick
 * @source own geometry of two boards
 * @example mitre.meet(0.018, 0.018).over.cuts // one slope of 45 degrees
 */
export const mitre: Joint = {
  name: 'mitre',
  meet: (over, under) => ({ over: side(0, bevel(under, over)), under: side(0, bevel(over, under)) }),
};
