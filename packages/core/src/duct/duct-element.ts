import type { Air } from '../air/index.js';
import type { Line, Nodes } from '../network/index.js';
import { chainOfSteps } from './chain-of-steps.js';
import { fillOf } from './fibre-fill.js';
import { lineAir } from './line-kernel.js';
import { type LineSection, roundSectionOf } from './line-section.js';
import { taperedChain } from './tapered-chain.js';
import { wallLossOf } from './wall-loss.js';

/** The area of a duct between its two ends, m², at a share of its length. It is a function: you can use your own. */
export type Taper = (near: number, far: number, share: number) => number;

/**
 * A duct with straight sides that widen alike in all directions: a cone, or a pyramid.
 *
 * $$ S = \left(\sqrt{S_1} + (\sqrt{S_2} - \sqrt{S_1})\,x\right)^2 $$
 *
 * @validity any two areas
 * @returns m²
 * @source rayleigh1896 secs. 303-308
 * @example conicalTaper(0.01, 0.04, 0.5) // 0.0225 m²
 */
export const conicalTaper: Taper = (near, far, share) =>
  (Math.sqrt(near) + (Math.sqrt(far) - Math.sqrt(near)) * share) ** 2;

/**
 * A duct whose area grows by the same factor over equal lengths.
 *
 * $$ S = S_1\,(S_2/S_1)^x $$
 *
 * @validity any two areas above zero
 * @returns m²
 * @source fletcher1998 exponential horn
 * @example exponentialTaper(0.01, 0.04, 0.5) // 0.02 m²
 */
export const exponentialTaper: Taper = (near, far, share) => near * (far / near) ** share;

/**
 * A duct between two parallel boards and two that draw apart: its area grows by equal amounts over equal lengths.
 *
 * $$ S = S_1 + (S_2 - S_1)\,x $$
 *
 * @validity any two areas
 * @returns m²
 * @source own (definition)
 * @example wedgeTaper(0.01, 0.04, 0.5) // 0.025 m²
 */
export const wedgeTaper: Taper = (near, far, share) => near + (far - near) * share;

/** A duct in plain SI numbers. */
export interface DuctNumbers {
  /** Area at the near and at the far end, m². */
  readonly area: number;
  readonly endArea: number;
  /** m */
  readonly length: number;
  /** 1 for smooth round walls, 0 without loss, see {@link withWallLoss}. */
  readonly wallLoss: number;
  /** Pa·s/m², see {@link withFill}; 0 without a fill. */
  readonly flowResistivity: number;
}

/**
 * A duct as an element of a network: uniform or tapered, with or without losses at its walls, empty or filled with fibre. All
 * its numbers are values of the network, see {@link ductValues}, so that gradients and searches can change them.
 *
 * $$ \begin{bmatrix} A & B\\ C & D \end{bmatrix} = \prod_{i=1}^{N} \exp\begin{bmatrix} \kappa_i & \bar z_i h\\
 *    \bar y_i h & -\kappa_i \end{bmatrix},\quad \kappa_i = \tfrac{\sqrt3}{12} h^2 (z_{i1} y_{i2} - z_{i2} y_{i1}),\quad h = L/N $$
 *
 * Here $z = \Gamma Z$ and $y = \Gamma/Z$ are series impedance and shunt admittance for each metre, at the two Gauss points of a step, and
 * $\bar z, \bar y$ their means. A uniform duct is exact with N = 1. One that tapers has twenty steps, and its error falls as
 * the fourth power of their number.
 *
 * @validity as `compileLine` and `compileSteppedLine`
 * @neglects what they neglect; bends and folds
 * @returns the element; its flow is the one at its far end
 * @source zwikker1949 line constants; fletcher1998 the horn equation, which the steps approach
 * @source iserles1999 the expansion at two Gauss points a step
 * @example ductElement('line', ['box', 'mouth']) // its values: ductValues({ area: 0.02, endArea: 0.02, length: 2, ... }, air)
 */
export const ductElement = (name: string, nodes: Nodes, taper: Taper = conicalTaper): Line => ({
  kind: 'line',
  name,
  nodes,
  parameters: [
    ...['area', 'endArea', 'length', 'wallLoss', 'flowResistivity'],
    ...['density', 'speedOfSound', 'viscosity', 'heatCapacityRatio', 'prandtlNumber'],
  ],
  fill: (values, at, frequencies, out) => {
    const duct = numbersAt(values, at);
    const air = airAt(values, at + 5);
    const { area, endArea, length, wallLoss, flowResistivity } = duct;
    const section = (S: number): LineSection =>
      fillOf(wallLossOf(roundSectionOf(Math.sqrt(S / Math.PI)), wallLoss), flowResistivity, air.viscosity);
    const chain =
      area === endArea
        ? chainOfSteps([section(area)], length, lineAir(air))
        : taperedChain(
            { at: (share) => section(taper(area, endArea, share)), alike: wallLoss === 0 },
            length,
            lineAir(air),
          );
    chain(frequencies, out);
  },
});

const numbersAt = (values: ArrayLike<number>, at: number): DuctNumbers => ({
  area: values[at]!,
  endArea: values[at + 1]!,
  length: values[at + 2]!,
  wallLoss: values[at + 3]!,
  flowResistivity: values[at + 4]!,
});

const airAt = (values: ArrayLike<number>, at: number) =>
  ({
    density: values[at]!,
    speedOfSound: values[at + 1]!,
    viscosity: values[at + 2]!,
    heatCapacityRatio: values[at + 3]!,
    prandtlNumber: values[at + 4]!,
  }) as Air;

/**
 * The values of a {@link ductElement}, in the order of its parameters.
 *
 * @validity areas and length above zero, losses of zero or more
 * @returns ten numbers
 * @source own (definition)
 * @example set('line', ...ductValues({ area: 0.02, endArea: 0.01, length: 2, wallLoss: 1, flowResistivity: 0 }, air))
 */
export const ductValues = (
  { area, endArea, length, wallLoss, flowResistivity }: DuctNumbers,
  { density, speedOfSound, viscosity, heatCapacityRatio, prandtlNumber }: Air,
): readonly number[] => [
  ...[area, endArea, length, wallLoss, flowResistivity],
  ...[density, speedOfSound, viscosity, heatCapacityRatio, prandtlNumber],
];
