import type { Air } from '@airspring/core/air';
import { InputError } from '@airspring/core/fault';
import { type Network, type StateSpace, stateSpace } from '@airspring/core/network';
import { type Frequency, type FrequencyInput, given, optional, positive, readFields } from '@airspring/core/quantity';
import { denseStep } from './dense-step.js';
import { firstOrderHold, type Hold } from './hold.js';
import type { Mode } from './mode.js';
import { modesOf } from './modes.js';
import { type OutputRow, outputRows } from './output-rows.js';
import { bankOf, runBank, type Section, statesOf } from './sections.js';
import { stepMatrices } from './step-matrices.js';

/** What is simulated: a box, or any network with the air that it radiates into. */
export interface Simulated {
  readonly network: Network;
  readonly air: Air;
  /** That of a box says how many drivers it has. */
  readonly spec?: unknown;
}

/** How a linear simulation runs. */
export interface LinearOptions {
  readonly sampleRate: FrequencyInput;
  /** Probes, `radiatedFlow`, `flow <element>`, `pressure` (Pa at 1 m), `displacement` (m), `integral <probe>`. */
  readonly outputs: readonly string[];
  /** How the drive goes on between samples; default {@link firstOrderHold}. */
  readonly hold?: Hold;
}

/** A linear system, compiled for blocks of samples. */
export interface LinearSimulation {
  readonly outputs: readonly string[];
  readonly sampleRate: Frequency;
  readonly hold: Hold;
  /** The states of a system at rest. One simulation runs any number of them. */
  readonly start: () => readonly Float64Array[];
  /** Fills a block of each output from a block of the drive, V; the states go on from block to block. A kernel: it allocates nothing. */
  readonly run: (states: readonly Float64Array[], drive: Float64Array, out: readonly Float64Array[]) => void;
}

const shape = {
  sampleRate: positive('frequency'),
  outputs: given<readonly string[]>(),
  hold: optional(given<Hold>()),
};

/**
 * A linear system over time, sample by sample, without an error of its own: what it computes is what the network does with the
 * voltage that the hold makes of the samples.
 *
 * $$ x_{n+1} = e^{AT} x_n + \Gamma_0 u_n + \Gamma_1 u_{n+1},\qquad y_n = C x_n + D u_n $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $A, B, C, D$ | `network` | SI | state space of the network |
 * | $T$ | `sampleRate` | s | one over the sample rate |
 * | $\Gamma_0, \Gamma_1$ | `hold` | SI | what the two samples of an interval add to the states |
 * | $u$ | | V | the drive at an instant |
 * | $y$ | `outputs` | SI | what is asked for, at the same instant |
 *
 * Pressure and displacement are no probes of a network. They are exact all the same: the slope of the radiated flow and the integral
 * of the cone velocity are sums of the same states. Each output runs as a bank of its natural motions; where these coincide, the
 * states themselves are stepped, several times slower.
 *
 * @validity lumped networks; elements over frequency are replaced by `lumpedFit` before. Frequencies well below half the sample rate,
 * where the hold is what it is meant to be: `holdTransfer`
 * @neglects what a linear network neglects
 * @returns a kernel for blocks of samples
 * @throws InputError `inconsistent` for a network without states, `empty` and `unknown-field` for outputs, and those of the fields
 * @source franklin1998 §4.3 (discrete equivalents by holds)
 * @source oppenheim1997 (state space of a rational response)
 * @example compileLinear(ventedBox({ drivers, netVolume: '45 L', fb: '29 Hz' }), { sampleRate: '48 kHz', outputs: ['pressure'] })
 */
export function compileLinear({ network, air }: Simulated, options: LinearOptions): LinearSimulation {
  const { sampleRate, outputs: names, hold = firstOrderHold } = readFields('linear', options, shape);
  const space = statesOfNetwork(network);
  const rows = outputRows(space, names, air.density);
  const modes = modesOf(network, space, rows);
  const kernel = modes ? byModes(modes, rows, 1 / sampleRate, hold) : denseStep(space, rows, 1 / sampleRate, hold);
  return { outputs: names, sampleRate, hold, ...kernel };
}

/** The state space of a network, or a refusal with the reason. */
function statesOfNetwork(network: Network): StateSpace {
  const space = stateSpace(network);
  if (space.ok) return space;
  const got = space.because.map(({ text }) => text).join('; ');
  const remedy = 'Replace elements over frequency by their lumpedFit, and leave out delays.';
  throw new InputError([
    { code: 'inconsistent', path: 'network', got, expected: 'a network of lumped elements with states', remedy },
  ]);
}

/** A bank of sections for each output. */
function byModes(modes: readonly Mode[], rows: readonly OutputRow[], interval: number, hold: Hold) {
  const made = rows.map((row, output) => {
    const sections = sectionsOf(modes, output, interval, hold);
    return { bank: bankOf(sections), direct: sections.reduce((sum, { direct }) => sum + direct, row.d) };
  });
  const start = () => made.map(({ bank }) => statesOf(bank));
  const run: LinearSimulation['run'] = (states, drive, out) => {
    for (let i = 0; i < made.length; i++) {
      const { bank, direct } = made[i]!;
      runBank(bank, states[i]!, direct, drive, out[i]!, drive.length);
    }
  };
  return { start, run };
}

/** Pairs of modes as sections: a mode with its conjugate, or two that do not swing. */
function sectionsOf(modes: readonly Mode[], output: number, interval: number, hold: Hold) {
  const real = modes.filter(({ im }) => im === 0);
  const swinging = modes
    .filter(({ im }) => im !== 0)
    .map((mode) => ({ A: [mode.re, -mode.im, mode.im, mode.re], B: [1, 0], c: shareOf(mode, output, 2) }));
  const still = Array.from({ length: Math.ceil(real.length / 2) }, (_, i) => {
    const [one, other] = [real[2 * i], real[2 * i + 1]] as [Mode, Mode | undefined];
    const c = [shareOf(one, output, 1)[0], other ? shareOf(other, output, 1)[0] : 0];
    return { A: [one.re, 0, 0, other?.re ?? 0], B: [1, other ? 1 : 0], c };
  });
  return [...swinging, ...still].map(({ A, B, c }): Section & { readonly direct: number } => {
    const { P, before, after } = stepMatrices(2, A, B, interval, hold);
    const [p11, p12, p21, p22] = [P[0]!, P[1]!, P[2]!, P[3]!];
    const [x, y] = [after[0]!, after[1]!];
    return {
      transition: [p11, p12, p21, p22],
      input: [before[0]! + p11 * x + p12 * y, before[1]! + p21 * x + p22 * y],
      output: [c[0]!, c[1]!],
      direct: c[0]! * x + c[1]! * y,
    };
  });
}

/** What the two states of a mode count in an output. */
const shareOf = ({ residues }: Mode, output: number, by: number): readonly [number, number] => {
  const { re, im } = residues[output] as { re: number; im: number };
  return [by * re, -by * im];
};
