import { type Fault, refuse } from '../fault/index.js';
import { boundedMinimum, type ComplexColumn } from '../numeric/index.js';
import {
  type FrequencyInput,
  frequencyGrid,
  optional,
  positive,
  readFieldsInto,
  si,
  type Time,
  type TimeInput,
} from '../quantity/index.js';
import type { Joined } from './join-mains.js';
import { unlessPressure } from './pressure.js';

export interface BestDelayInput {
  /** The band about the crossing in which they must add, such as an octave to each side. */
  readonly from: FrequencyInput;
  readonly to: FrequencyInput;
  /** The greatest delay that is tried of either; default 20 ms. */
  readonly most?: TimeInput | undefined;
}

/** How two sources add best with a polarity. Delay and polarity come on top of what they had. */
export interface Delayed {
  /** Of the main speaker. */
  readonly polarity: 'normal' | 'inverted';
  /** A delay of the box; one of the two delays is 0. */
  readonly boxDelay: Time;
  readonly mainDelay: Time;
  /** By how much the level of the sum stays below that of both in phase, dB, as a mean over the band. */
  readonly shortfall: number;
}

export interface BestDelay extends Delayed {
  /** The best with the other polarity. */
  readonly otherPolarity: Delayed;
}

const shape = { from: positive('frequency'), to: positive('frequency'), most: optional(positive('time')) };
/** Delays that are tried for each period of the highest frequency, before the best is refined. */
const PER_PERIOD = 16;
/** The greatest number of periods of the highest frequency in a delay. */
const MOST_PERIODS = 1000;
const LEAST = 1e-150;

/** The part of a complex pair within a band, and the weights of the trapezoidal rule over ln f, with a sum of 1. */
interface Band {
  readonly omega: Float64Array;
  readonly box: ComplexColumn;
  readonly main: ComplexColumn;
  readonly weights: Float64Array;
}

function shortfallOf({ omega, box, main, weights }: Band, delay: number, sign: number): number {
  let mean = 0;
  for (let i = 0; i < omega.length; i++) {
    const angle = omega[i]! * delay;
    const c = sign * Math.cos(angle);
    const s = -sign * Math.sin(angle);
    const a = box.re[i]!;
    const b = box.im[i]!;
    const x = main.re[i]!;
    const y = main.im[i]!;
    const sum = Math.hypot(a + x * c - y * s, b + x * s + y * c);
    const most = Math.hypot(a, b) + Math.hypot(x, y);
    if (most > 0) mean -= weights[i]! * 20 * Math.log10(Math.max(sum / most, LEAST));
  }
  return Math.max(mean, 0);
}

/**
 * The delay and the polarity with which a box and a main speaker add best at the listener. The measure is the shortfall of the level of
 * their sum below the sum of their magnitudes, as a mean over a band in equal parts of $\ln f$.
 *
 * $$ S(\tau, \pm) = \frac{1}{\ln(f_2/f_1)}\int_{f_1}^{f_2} 20\lg\frac{|p_b| + |p_m|}{|p_b \pm p_m e^{-j\omega\tau}|}\,d\ln f $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p_b, p_m$ | `joined.box`, `joined.main` | Pa | at the listener, by `joinMains` |
 * | $f_1, f_2$ | `from`, `to` | Hz | band |
 * | $\tau$ | `mainDelay`, `boxDelay` | s | delay of the main speaker; where it is negative, the box is delayed instead |
 * | $S$ | `shortfall` | dB | 0 where both are in phase throughout |
 *
 * Where one of the two is much louder the phase makes no difference, so the crossing decides.
 *
 * @validity bands that hold at least two frequencies of the grid; the integral is the trapezoidal rule over these
 * @neglects the room, other places to listen. Delays that lie a period apart can be nearly as good: prefer the shortest
 * @returns the record {@link BestDelay}
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unsorted`, `unknown-field`, `inconsistent`
 * @source linkwitz1976 sources in phase at the crossing; the measure is ours
 * @example bestDelay(joinMains({ box, main }, grid), { from: '40 Hz', to: '160 Hz' })
 */
export function bestDelay(joined: Joined, input: BestDelayInput): BestDelay {
  const faults: Fault[] = [];
  const grid = frequencyGrid(joined?.frequencies, 'joined.frequencies');
  const read = readFieldsInto(faults, '', input, shape);
  faults.push(...unlessPressure('joined.box', joined.box, grid.length));
  faults.push(...unlessPressure('joined.main', joined.main, grid.length));
  refuse(faults);
  const { from, to, most = 0.02 } = read!;
  const inside = [...grid.keys()].filter((i) => grid[i]! >= from && grid[i]! <= to);
  if (inside.length < 2) {
    const remedy = 'Widen the band, or use a finer grid.';
    refuse([
      { code: 'inconsistent', path: 'to', got: to, expected: 'two frequencies of the grid in the band', remedy },
    ]);
  }
  const highest = grid[inside.at(-1)!]!;
  if (most * highest > MOST_PERIODS) {
    const expected = `at most ${MOST_PERIODS} periods of ${highest} Hz`;
    refuse([{ code: 'out-of-range', path: 'most', got: most, expected, remedy: 'Lower it.' }]);
  }
  const cut = ({ re, im }: ComplexColumn): ComplexColumn => ({
    re: Float64Array.from(inside, (i) => re[i]!),
    im: Float64Array.from(inside, (i) => im[i]!),
  });
  const logs = inside.map((i) => Math.log(grid[i]!));
  const band: Band = {
    omega: Float64Array.from(inside, (i) => 2 * Math.PI * grid[i]!),
    box: cut(joined.box),
    main: cut(joined.main),
    weights: Float64Array.from(
      logs,
      (at, i) => ((logs[i + 1] ?? at) - (logs[i - 1] ?? at)) / (2 * (logs.at(-1)! - logs[0]!)),
    ),
  };
  const [normal, inverted] = [1, -1].map((sign) => bestOf(band, sign, most, highest)) as [Delayed, Delayed];
  return inverted.shortfall < normal.shortfall
    ? { ...inverted, otherPolarity: normal }
    : { ...normal, otherPolarity: inverted };
}

/** Tries delays from 0 outwards, so that of equals the shortest is taken, and refines the best. */
function bestOf(band: Band, sign: number, most: number, highest: number): Delayed {
  const steps = Math.ceil(most * highest * PER_PERIOD);
  const step = most / steps;
  const asked = (delay: number) => shortfallOf(band, delay, sign);
  let delay = 0;
  let least = asked(0);
  for (let k = 1; k <= steps; k++)
    for (const tried of [k * step, -k * step]) {
      const found = asked(tried);
      if (found < least) [delay, least] = [tried, found];
    }
  const refined = boundedMinimum(asked, Math.max(delay - step, -most), Math.min(delay + step, most), 1e-10);
  if (refined.value < least) [delay, least] = [refined.x, refined.value];
  return {
    polarity: sign > 0 ? 'normal' : 'inverted',
    boxDelay: si('time', Math.max(-delay, 0)),
    mainDelay: si('time', Math.max(delay, 0)),
    shortfall: least,
  };
}
