/** How does a linear system move over time, exactly? */
export { compileLinear, type LinearOptions, type LinearSimulation, type Simulated } from './linear.js';
/** How does a voltage go on between samples, and what does that do to a sine? */
export { firstOrderHold, type Hold, holdTransfer, zeroOrderHold } from './hold.js';
/** How does a driver move whose force factor, stiffness, inductance, vent and temperature depend on what it does? */
export { compileNonlinear } from './nonlinear.js';
export type { BlockReport, NonlinearOptions, NonlinearSimulation } from './nonlinear-simulation.js';
/** What does a nonlinear simulation carry from sample to sample? */
export type { Motion } from './motion.js';
/** How do force factor and inductance change with displacement? */
export type { CoilCurve, Spring } from './curve.js';
export { forceFactorCurve, inductanceCurve } from './coil-curves.js';
export type { PolynomialInput } from './polynomial-curve.js';
/** How does the suspension change with displacement, and what stops the cone? */
export { stiffnessCurve } from './stiffness-curve.js';
export { type StopInput, stop } from './stop.js';
/** What does air lose at an instant in a vent? */
export { type MomentaryLoss, type QuadraticVentLossInput, quadraticVentLoss } from './momentary-loss.js';
/** How are samples left out where a simulation steps more often than it is asked? */
export { type Decimation, filteredDecimation, rawDecimation } from './decimation.js';
/** What repeats under tones, and which harmonics has it? */
export { type SteadyOptions, type SteadyState, steadyState, type Tone } from './steady-state.js';
export { type Harmonics, harmonicsOf } from './harmonics.js';
/** How much distortion is that? */
export {
  type HarmonicDistortion,
  harmonicDistortion,
  type ModulationDistortion,
  modulationDistortion,
} from './distortion.js';
/** Does a curve, a spring or a loss of your own obey its laws? */
export { coilCurveLaws } from './coil-curve-laws.js';
export { momentaryLossLaws } from './momentary-loss-laws.js';
export { springLaws } from './spring-laws.js';
