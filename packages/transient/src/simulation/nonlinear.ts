import { type Fault, refuse } from '@airspring/core/fault';
import type { LawResult } from '@airspring/core/laws';
import { count, given, nested, optional, positive, readFields } from '@airspring/core/quantity';
import { runnerOf } from './blocks.js';
import { coilCurveLaws } from './coil-curve-laws.js';
import type { CoilCurve, Spring } from './curve.js';
import { springsTogether } from './curve.js';
import { type Decimation, filteredDecimation } from './decimation.js';
import { compileReadout } from './instant.js';
import type { Simulated } from './linear.js';
import { constant, linearSpring } from './linear-models.js';
import type { MomentaryLoss } from './momentary-loss.js';
import { momentaryLossLaws } from './momentary-loss-laws.js';
import type { NonlinearOptions, NonlinearSimulation } from './nonlinear-simulation.js';
import { refuseNoNames } from './output-rows.js';
import { partsOf } from './parts.js';
import { springLaws } from './spring-laws.js';

const shape = {
  sampleRate: positive('frequency'),
  outputs: given<readonly string[]>(),
  oversampling: optional(count(16)),
  decimation: optional(given<Decimation>()),
  forceFactor: optional(given<CoilCurve>()),
  stiffness: optional(given<Spring>()),
  stop: optional(given<Spring>()),
  inductance: optional(given<CoilCurve>()),
  losses: optional(given<Readonly<Record<string, MomentaryLoss>>>()),
  heat: optional(
    nested({
      coilToMagnet: positive('thermalResistance'),
      magnetToAir: positive('thermalResistance'),
      coilTime: positive('time'),
      magnetTime: positive('time'),
      coefficient: positive('temperatureCoefficient'),
    }),
  ),
  coils: optional(count(4096)),
  balance: optional(given<boolean>()),
};

/** As many as a box has drivers; a bare network does not say it. */
const coilsOf = (spec: unknown): number =>
  (spec as { readonly drivers?: { readonly count?: number } } | undefined)?.drivers?.count ?? 1;

/**
 * A driver over time that is no longer linear: force factor, stiffness and inductance that depend on where the cone is, losses that
 * grow with the speed of the air, a coil that gets warm, and a stop. Everything else of the network stays as it is.
 *
 * $$ u = (R_e + \Delta R)\,i + \frac{d\lambda}{dt} + Bl(x)\,v,\quad
 *    M\dot v = Bl(x)\,i + \tfrac12 i^2 L_e'(x) - K(x)\,x - \dots,\quad M_a\dot U = p - \tfrac12\rho K u|u| $$
 *
 * The implicit midpoint rule with mean forces that meet the energy (discrete gradient) makes the energy exact at any step: what the
 * drive gives is what is stored and lost, but for rounding. It is of second order: four times the rate, a sixteenth of the error. In its
 * linear limit it gives the response of the network at $\tan(\pi f T)/(\pi T)$ for a frequency f, with straight lines between samples
 * of the drive.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $Bl(x), K(x), L_e(x)$ | `forceFactor`, `stiffness`, `inductance` | 1 | over their values at rest |
 * | $\Delta R$ | `heat`, `coils` | Ω | what the warm coils have beside Re; they share the power |
 * | $K$ | `losses` | 1 | of each vent |
 * | $T$ | `sampleRate`, `oversampling` | s | one over their product |
 *
 * @validity lumped networks with one motor; curves up to their reach, which each block reports
 * @neglects what the network neglects; change of the field with the current
 * @returns a kernel for blocks of samples. Each block tells whether all samples were solved; none is passed over in silence
 * @throws InputError `inconsistent` for a network that does not fit, `unknown-field` for outputs and losses, and those of the fields
 * @source falaize2016 (power-balanced simulation), gonzalez1996 (discrete gradient)
 * @example compileNonlinear(ventedBox({ drivers, netVolume: '45 L', fb: '29 Hz' }), { sampleRate: '48 kHz', outputs: ['pressure'],
 *   stiffness: stiffnessCurve({ reach: '10 mm', coefficients: [0, 1] }) })
 */
export function compileNonlinear({ network, air, spec }: Simulated, options: NonlinearOptions): NonlinearSimulation {
  const read = readFields('nonlinear', options, shape);
  const { sampleRate, outputs, oversampling = 1, decimation = filteredDecimation, heat, balance } = read;
  const coils = read.coils ?? coilsOf(spec);
  const { forceFactor = constant, stiffness = linearSpring, stop, inductance, losses = {} } = read;
  refuseNoNames(outputs);
  refuse([
    ...unlessModel('forceFactor', forceFactor, ['at'], 'forceFactorCurve'),
    ...unlessModel('stiffness', stiffness, ['energy', 'at'], 'stiffnessCurve'),
    ...unlessModel('stop', stop, ['energy', 'at'], 'stop'),
    ...unlessModel('inductance', inductance, ['at'], 'inductanceCurve'),
  ]);
  refuse([
    ...broken('forceFactor', coilCurveLaws(forceFactor)),
    ...broken('stiffness', springLaws(stiffness)),
    ...(stop ? broken('stop', springLaws(stop)) : []),
    ...(inductance ? broken('inductance', coilCurveLaws(inductance)) : []),
    ...Object.entries(losses).flatMap(([name, loss]) => broken(`losses.${name}`, momentaryLossLaws(loss))),
  ]);
  const parts = partsOf(network, inductance !== undefined);
  refuseLosses(Object.keys(losses), parts.linear);
  if (inductance !== undefined && parts.Le === 0) {
    const remedy = 'Give the driver an Le, or leave out the curve.';
    refuse([
      { code: 'inconsistent', path: 'nonlinear.inductance', got: 'a curve', expected: "an inductor 'Le'", remedy },
    ]);
  }
  const nonlinear = {
    forceFactor,
    inductance,
    losses,
    spring: springsTogether(stop ? [stiffness, stop] : [stiffness]),
  };
  const readout = compileReadout(parts, network.topology, nonlinear, outputs, air.density);
  const interval = 1 / (sampleRate * oversampling);
  const weights = decimation.weights(oversampling);
  const runner = runnerOf(parts, nonlinear, readout, { interval, oversampling, weights, heat, coils, balance });
  const delay = ((weights.length - 1) / 2) * interval;
  return { outputs, sampleRate, delay, ...runner(outputs.length) };
}

/** The fault of a record that is no model, such as the input of the function that makes one. */
function unlessModel(field: string, got: unknown, functions: readonly string[], maker: string): Fault[] {
  const model = got as Readonly<Record<string, unknown>> | undefined;
  if (model === undefined || functions.every((name) => typeof model?.[name] === 'function')) return [];
  const expected = `a model, as ${maker} makes it`;
  return [{ code: 'inconsistent', path: `nonlinear.${field}`, got, expected, remedy: `Call ${maker}(…).` }];
}

/** The faults of a model that would make energy, or steer Newton's method wrong. */
const broken = (field: string, laws: readonly LawResult[]): Fault[] =>
  laws
    .filter(({ holds }) => !holds)
    .map(({ law, detail }) => {
      const remedy = 'Correct the model, and try it by its laws.';
      return { code: 'inconsistent', path: `nonlinear.${field}`, got: detail, expected: `a model that ${law}`, remedy };
    });

/** A loss needs a mass of air: without one its flow would be no state. */
function refuseLosses(losses: readonly string[], linear: ReturnType<typeof partsOf>['linear']): void {
  const masses = linear
    .filter(({ does, isElectrical }) => does === 'stores flow' && !isElectrical)
    .map(({ name }) => name);
  refuse(
    losses
      .filter((name) => !masses.includes(name))
      .map((name): Fault => {
        const expected = masses.length > 0 ? `one of ${masses.join(', ')}` : 'a network with masses of air';
        const remedy = 'Name the mass of air to which the loss belongs.';
        return { code: 'unknown-field', path: `nonlinear.losses.${name}`, got: name, expected, remedy };
      }),
  );
}
