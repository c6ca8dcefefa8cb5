import { type Fault, refuse } from '../fault/index.js';
import { decimalText, type FrequencyInput, positive, readFieldsInto } from '../quantity/index.js';
import { unlessQuality } from './by-q.js';
import type { Filter } from './filter.js';

/** Resonance and quality factor of a closed box, and those that it is to have. */
export interface PoleShiftInput {
  /** Resonance of the box, fc. */
  readonly f0: FrequencyInput;
  /** Total quality factor of the box, Qtc. */
  readonly Q0: number;
  /** Resonance that it is to have. */
  readonly f1: FrequencyInput;
  /** Total quality factor that it is to have. */
  readonly Q1: number;
}

const shiftShape = {
  f0: positive('frequency'),
  Q0: positive('ratio'),
  f1: positive('frequency'),
  Q1: positive('ratio'),
};

/**
 * The pole shift of a closed box: zeros that cancel the poles of the box, and poles where they are wanted instead. The box behind it
 * has the response of a closed box with f1 and Q1. The lift far below is $(f_0/f_1)^2$, and it costs as much more drive and travel.
 *
 * $$ H(s) = \frac{s^2 + s\,\omega_0/Q_0 + \omega_0^2}{s^2 + s\,\omega_1/Q_1 + \omega_1^2} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega_0/2\pi$, $Q_0$ | `f0`, `Q0` | Hz, 1 | resonance and quality factor of the box |
 * | $\omega_1/2\pi$, $Q_1$ | `f1`, `Q1` | Hz, 1 | those that it is to have |
 *
 * @validity 0.05 ≤ Q ≤ 50; f0 and f1 within a factor of 10
 * @neglects the electronics that realise it; the change of f0 and Q0 with level, temperature and age, which leaves a bump or a dip
 * @returns the record {@link Filter}
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`
 * @source linkwitz1978 pole-zero compensation of a closed box
 * @source small1972closed1 response function of the closed box
 * @example poleShift({ f0: '55 Hz', Q0: 1.1, f1: '30 Hz', Q1: 0.6 }).name // 'Pole shift from 55 Hz, Q 1.1 to 30 Hz, Q 0.6'
 */
export function poleShift(input: PoleShiftInput): Filter {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, 'poleShift', input, shiftShape);
  if (read) {
    faults.push(...unlessQuality('poleShift.Q0', read.Q0), ...unlessQuality('poleShift.Q1', read.Q1));
    const ratio = read.f0 / read.f1;
    if (!(ratio >= 0.1 && ratio <= 10)) {
      const expected = 'a frequency within a factor of 10 of f0';
      const remedy = 'Forty decibels of lift are the most that is sensible.';
      faults.push({ code: 'out-of-range', path: 'poleShift.f1', got: read.f1, expected, remedy });
    }
  }
  refuse(faults);
  const { f0, Q0, f1, Q1 } = read as NonNullable<typeof read>;
  const section = (f: number, Q: number): number[] => [(2 * Math.PI * f) ** 2, (2 * Math.PI * f) / Q, 1];
  const at = (f: number, Q: number) => `${decimalText(f, 4)} Hz, Q ${decimalText(Q, 3)}`;
  return {
    kind: 'pole shift',
    name: `Pole shift from ${at(f0, Q0)} to ${at(f1, Q1)}`,
    numerator: section(f0, Q0),
    denominator: section(f1, Q1),
  };
}
