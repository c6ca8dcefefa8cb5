import type { Air } from '../air/index.js';
import { type Fault, refuse } from '../fault/index.js';
import { type LengthInput, notNegative, optional, positive, readFields } from '../quantity/index.js';
import type { FlowLoss } from './flow-loss.js';

/** A duct with walls. */
export interface TurbulentWallInput {
  /** Inner diameter; of a slot four times its area over its perimeter. */
  readonly diameter: LengthInput;
  readonly length: LengthInput;
  /** Height of the roughness of the wall; default 0, a smooth wall. */
  readonly roughness?: LengthInput | undefined;
}

const shape = { diameter: positive('length'), length: positive('length'), roughness: optional(notNegative('length')) };

/**
 * Below this Reynolds number steady flow is laminar, where the fit for turbulent flow has no meaning. The friction factor keeps its value
 * from there downwards, so that the pressure rises without a jump. It is zero as long as the laminar layer takes more.
 */
const LEAST_REYNOLDS = 2300;

/**
 * Friction factor of turbulent flow in a pipe, by an explicit formula:
 *
 * $$ \frac{1}{\sqrt f} = -1.8\,\log_{10}\!\left[\left(\frac{\varepsilon/D}{3.7}\right)^{1.11} + \frac{6.9}{Re}\right] $$
 *
 * | symbol | argument | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Re$ | `reynolds` | 1 | mean speed × diameter over kinematic viscosity |
 * | $\varepsilon/D$ | `relativeRoughness` | 1 | height of the roughness over the diameter |
 *
 * @validity Re of 4000 to 10⁸, ε/D up to 0.05; within 2 % of the implicit law of Colebrook
 * @neglects that the flow turns about
 * @returns Darcy's factor: Δp = f (L/D) ½ρu²
 * @source haaland1983 explicit formula
 * @example turbulentFriction(1e5, 0) // 0.0178
 */
export const turbulentFriction = (reynolds: number, relativeRoughness: number): number =>
  (-1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;

/** Greatest height of the roughness over the diameter, up to which the friction factor was measured. */
const ROUGHEST = 0.05;

/** The fault of a roughness for which there is no friction factor. */
export function unlessSmooth(path: string, diameter: number, roughness = 0): Fault[] {
  if (roughness <= ROUGHEST * diameter * (1 + 1e-9)) return [];
  const expected = `at most a twentieth of the diameter, ${ROUGHEST * diameter} m`;
  const remedy = 'Give narrower sizes of a vent with walls that rough.';
  return [{ code: 'out-of-range', path, got: roughness, expected, remedy }];
}

/** {@link turbulentWall} for numbers in m that were read before. */
export function turbulentWallOf(diameter: number, length: number, roughness = 0): FlowLoss {
  const slenderness = length / diameter;
  const resistance = (speed: number, frequency: number, { density, viscosity }: Air): number => {
    const reynolds = Math.max((density * speed * diameter) / viscosity, LEAST_REYNOLDS);
    const turbulent =
      (4 / (3 * Math.PI)) * density * turbulentFriction(reynolds, roughness / diameter) * slenderness * speed;
    const laminar = 4 * slenderness * Math.sqrt(density * viscosity * Math.PI * frequency);
    return Math.max(0, turbulent - laminar);
  };
  return { name: 'walls', sources: ['haaland1983', 'ingard1967'], resistance };
}

/**
 * What the walls of a duct take more than in laminar flow, once the layer of air at them is turbulent. The laminar part does not
 * depend on the speed, and belongs to the linear duct, as `withWallLoss` has it.
 *
 * $$ r = \max\!\left(0,\; \frac{4}{3\pi}\,\rho f\frac LD\,\hat u \;-\; \frac{4L}{D}\sqrt{\tfrac12\rho\mu\omega}\right) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $D$ | `diameter` | m | inner diameter |
 * | $L$ | `length` | m | length |
 * | $f$ | `roughness` | 1 | friction factor of {@link turbulentFriction} at the peak speed, for a Reynolds number of 2300 or more |
 * | $\hat u$ | | m/s | peak of the mean speed |
 *
 * The two parts are equal where $\hat u\delta/\nu = 3\pi/f$, which is 471 for f = 0.02. Turbulence was seen to begin at 500 to 550.
 *
 * @validity a duct that is wide compared with the layer at its walls; a roughness of at most a twentieth of the diameter
 * @neglects that the turbulence lags behind the flow; what lies between laminar and turbulent
 * @returns a {@link FlowLoss}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source haaland1983 friction factor; ingard1967 quasi-steady loss of its fundamental
 * @example turbulentWall({ diameter: '75 mm', length: '25 cm' }).resistance(20, 30, standardAir)
 */
export function turbulentWall(input: TurbulentWallInput): FlowLoss {
  const { diameter, length, roughness } = readFields('wall', input, shape);
  refuse(unlessSmooth('wall.roughness', diameter, roughness));
  return turbulentWallOf(diameter, length, roughness);
}
