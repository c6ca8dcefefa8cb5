import { type Fault, refuse } from '../fault/index.js';
import { unlessRising } from '../numeric/refusal.js';
import {
  type FrequencyGrid,
  type FrequencyInput,
  frequencyGrid,
  given,
  logarithmicGrid,
  positive,
  type RatioInput,
  readFields,
} from '../quantity/index.js';

/** What is played, as the voltage of the amplifier has it. */
export interface ProgrammeInput {
  /** Hz, rising. */
  readonly frequencies: ArrayLike<number>;
  /** The share of the mean square of the voltage at each frequency; together 1. */
  readonly share: ArrayLike<number>;
  /** Peak over rms: √2 of a sine, 4 of noise that is seldom clipped (12 dB). */
  readonly crestFactor: RatioInput;
}

/** A programme after reading; a plain record. */
export interface Programme {
  readonly frequencies: FrequencyGrid;
  readonly share: Float64Array;
  readonly crestFactor: number;
}

const shape = {
  frequencies: given<ArrayLike<number>>(),
  share: given<ArrayLike<number>>(),
  crestFactor: positive('ratio'),
};
const pinkShape = { from: positive('frequency'), to: positive('frequency'), crestFactor: positive('ratio') };
const ROUNDING = 1e-6;

/**
 * A programme as a spectrum of power and a crest factor. `programmeOfRecording` of `@airspring/transient` measures that of a recording.
 *
 * $$ \sum_j s_j = 1,\qquad e_j = E\sqrt{s_j},\qquad \hat e = c\,E $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $s_j$ | `share` | 1 | share of the mean square of the voltage |
 * | $c$ | `crestFactor` | 1 | peak over rms |
 * | $E$ | | V | rms voltage of the programme |
 *
 * @validity shares that sum to 1 within 10⁻⁶; a crest factor of 1 or more. A spectrum has as many lines as it takes for each resonance
 * @neglects everything about the programme but these: how long it stays loud, and what sounds together
 * @returns the programme
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `inconsistent`
 * @source own (definition)
 * @example programme({ frequencies: [30, 60, 120], share: [0.2, 0.5, 0.3], crestFactor: 4 })
 */
export function programme(input: ProgrammeInput): Programme {
  const { frequencies, share, crestFactor } = readFields('programme', input, shape);
  const grid = frequencyGrid(frequencies, 'programme.frequencies');
  const shares = Float64Array.from(share ?? []);
  const faults: Fault[] = [];
  const fault = (code: Fault['code'], field: string, got: unknown, expected: string, remedy: string) =>
    faults.push({ code, path: `programme.${field}`, got, expected, remedy });
  if (shares.length !== grid.length)
    fault('inconsistent', 'share', shares, `a list of ${grid.length}, a share for each frequency`, 'Give as many.');
  shares.forEach((one, i) => {
    const code = Number.isFinite(one) ? 'not-positive' : 'not-finite';
    if (!(one >= 0 && one < Infinity))
      fault(code, `share[${i}]`, one, 'a share of zero or more', 'Check the spectrum.');
  });
  const sum = shares.reduce((total, one) => total + one, 0);
  if (faults.length === 0 && Math.abs(sum - 1) > ROUNDING)
    fault('inconsistent', 'share', sum, 'shares that sum to 1', 'Divide each by their sum.');
  if (crestFactor < 1)
    fault('out-of-range', 'crestFactor', crestFactor, 'a crest factor of 1 or more', 'Give the peak over the rms.');
  refuse(faults);
  return { frequencies: grid, share: shares, crestFactor };
}

/**
 * Pink noise in a band: equal power in each octave, as equal shares at frequencies in equal ratios.
 *
 * @validity lines that are closer than the resonances are wide; 24 in each octave, in the middles of equal parts of the band
 * @neglects what `programme` neglects
 * @returns a {@link Programme}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`
 * @source common practice
 * @example pinkProgramme({ from: '25 Hz', to: '200 Hz', crestFactor: 4 })
 */
export function pinkProgramme(options: {
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
  readonly crestFactor: RatioInput;
}): Programme {
  const { crestFactor, from, to } = readFields('programme', options, pinkShape);
  refuse(unlessRising('programme.to', from, to));
  const parts = Math.max(Math.ceil(24 * Math.log2(to / from)), 1);
  const edges = logarithmicGrid(from, to, parts + 1);
  const frequencies = Array.from({ length: parts }, (_, i) => Math.sqrt(edges[i]! * edges[i + 1]!));
  return programme({ frequencies, share: frequencies.map(() => 1 / parts), crestFactor });
}
