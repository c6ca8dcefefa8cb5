import { type Air, standardAir } from '@airspring/core/air';
import { type AreaInput, notNegative, optional, positive, type RatioInput, readFields } from '@airspring/core/quantity';

/**
 * What air loses at an instant that moves through an opening, as a value. Ours and your own are used alike. It takes energy or none:
 * pressure and flow never have unlike signs.
 */
export interface MomentaryLoss {
  readonly name: string;
  readonly sources: readonly string[];
  /** Fills the pressure lost, Pa, and its slope by the flow, at a flow in m³/s out of the box. */
  readonly at: (flow: number, out: Float64Array) => void;
}

/** A loss that grows with the square of the speed. */
export interface QuadraticVentLossInput {
  /** Cross-section at which the speed is meant, of all openings together. */
  readonly area: AreaInput;
  /** Pressure lost over ½ρu², for flow out of the box. */
  readonly outward: RatioInput;
  /** The same for flow into the box; default as outward. */
  readonly inward?: RatioInput;
}

const shape = { area: positive('area'), outward: notNegative('ratio'), inward: optional(notNegative('ratio')) };

/**
 * The loss of jets at the ends of a vent, of edges and bends, at each instant:
 *
 * $$ p = \tfrac12 \rho K u|u|,\quad u = U/S $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $S$ | `area` | m² | cross-section |
 * | $K$ | `outward`, `inward` | 1 | loss coefficient of each direction |
 * | $U$ | | m³/s | flow out of the box |
 *
 * The coefficients of a vent follow from its shape: `ventLoss` of core gives them as `quadratic`.
 *
 * @validity flow that acts at each instant as steady flow does: a stroke that is long compared with the edges
 * @neglects losses at the walls, and what the jet leaves behind for the way back
 * @returns a {@link MomentaryLoss}
 * @throws InputError those of the fields
 * @source ingard1967 quasi-steady orifice
 * @example quadraticVentLoss({ area: '60 cm²', outward: 1.5, inward: 1.1 })
 */
export function quadraticVentLoss(input: QuadraticVentLossInput, { density }: Air = standardAir): MomentaryLoss {
  const { area, outward, inward = outward } = readFields('loss', input, shape);
  const [out, into] = [outward, inward].map((K) => (density * K) / (2 * area ** 2)) as [number, number];
  return {
    name: 'quadratic',
    sources: ['ingard1967'],
    at: (flow, filled) => {
      const slope = (flow > 0 ? out : into) * Math.abs(flow);
      filled[0] = slope * flow;
      filled[1] = 2 * slope;
    },
  };
}
