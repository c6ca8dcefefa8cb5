import { type Fault, refuse } from '../fault/index.js';
import type { FilterKernel } from '../filter/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { frequencyGrid } from '../quantity/index.js';
import { REFERENCE_PRESSURE } from '../response/index.js';

/** The level of silence, which has to be a number: −3000 dB. */
const LEAST = 1e-150;

/** What is accepted: levels from silence, which is −3000 dB, and angles that keep their digits, rad. */
const SOFTEST = 3000;
const LOUDEST = 600;
const MOST_TURNED = 1e9;

/** A level and its phase over frequency: what `respond` tells of a box, or what was measured. */
export interface LevelAndPhase {
  /** dB re 20 µPa. */
  readonly levelHalfSpace: Float64Array;
  /** rad. */
  readonly phase: Float64Array;
}

/**
 * The complex sound pressure of a level and a phase, as of a box by `respond`.
 *
 * $$ p = p_0\,10^{L/20}\,e^{j\varphi} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L$ | `levelHalfSpace` | dB | level at 1 m in half space |
 * | $\varphi$ | `phase` | rad | phase of the pressure, without its delay on the way |
 * | $p_0$ | | Pa | 20 µPa |
 *
 * @validity any finite columns of one length, up to 600 dB
 * @neglects nothing
 * @returns Pa rms, one complex value for each frequency
 * @throws InputError `not-finite`, `out-of-range`, `inconsistent` for columns of different length
 * @source iso1683 reference of 20 µPa
 * @example soundPressure(respond(box, [30, 60, 120], { driveVoltageRms: '2.83 V' }))
 */
export function soundPressure({ levelHalfSpace, phase }: LevelAndPhase): ComplexColumn {
  const faults: Fault[] = [];
  if (levelHalfSpace.length !== phase.length) {
    const expected = `as many values as levelHalfSpace, ${levelHalfSpace.length}`;
    faults.push({ code: 'inconsistent', path: 'phase', got: phase.length, expected, remedy: 'Use one grid for both.' });
  }
  const refused = (path: string, column: Float64Array, low: number, high: number, expected: string) => {
    const wrong = column.findIndex((value) => !(value >= low && value <= high));
    if (wrong < 0) return;
    const code = Number.isFinite(column[wrong]) ? 'out-of-range' : 'not-finite';
    faults.push({ code, path: `${path}[${wrong}]`, got: column[wrong], expected, remedy: 'Check the column.' });
  };
  refused('levelHalfSpace', levelHalfSpace, -SOFTEST, LOUDEST, `a level of −${SOFTEST} to ${LOUDEST} dB`);
  refused('phase', phase, -MOST_TURNED, MOST_TURNED, `an angle of at most ${MOST_TURNED} rad`);
  refuse(faults);
  const out = complexColumn(levelHalfSpace.length);
  for (let i = 0; i < levelHalfSpace.length; i++) {
    const size = REFERENCE_PRESSURE * 10 ** (levelHalfSpace[i]! / 20);
    out.re[i] = size * Math.cos(phase[i]!);
    out.im[i] = size * Math.sin(phase[i]!);
  }
  return out;
}

/** The size of each complex value in dB of a unit. */
const inDecibels = ({ re, im }: ComplexColumn, unit: number): Float64Array =>
  re.map((a, i) => 20 * Math.log10(Math.max(Math.hypot(a, im[i]!) / unit, LEAST)));

/**
 * The level of a complex sound pressure.
 *
 * $$ L = 20\lg\frac{|p|}{p_0} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p$ | `pressure` | Pa | rms |
 * | $p_0$ | | Pa | 20 µPa |
 *
 * @validity any column
 * @neglects nothing; −3000 dB stands for silence
 * @returns dB, one for each frequency
 * @source iso1683 reference of 20 µPa
 * @example pressureLevel({ re: Float64Array.of(1), im: Float64Array.of(0) }) // 94.0 dB
 */
export const pressureLevel = (pressure: ComplexColumn): Float64Array => inDecibels(pressure, REFERENCE_PRESSURE);

/**
 * By how much a path, a corner or a room changes the level at 1 m in half space.
 *
 * $$ \Delta L = 20\lg\left|\frac{p}{p_{1\,\mathrm m}}\right| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $p/p_{1\,\mathrm m}$ | `kernel` | 1 | what it multiplies a response by |
 *
 * @validity that of the kernel
 * @neglects what the kernel neglects
 * @returns dB, one for each frequency
 * @throws InputError those of `frequencyGrid`
 * @source iso1683 level of a field quantity
 * @example gainLevel(compilePath({ distance: '2 m' }), [50]) // −6.02 dB
 */
export function gainLevel(kernel: FilterKernel, frequencies: ArrayLike<number>): Float64Array {
  const grid = frequencyGrid(frequencies);
  const column = complexColumn(grid.length);
  column.re.fill(1);
  kernel(grid, column);
  return inDecibels(column, 1);
}

/** The greatest pressure that is accepted, so that no sum overflows, Pa. */
const GREATEST = 1e100;

/** The faults of a column that is not finite, or not as long as the grid. */
export function unlessPressure(path: string, column: ComplexColumn, length: number): Fault[] {
  const remedy = 'Give the sound pressure over the same frequencies, by soundPressure.';
  const expected = `a Float64Array of ${length} finite values`;
  const fault = (code: Fault['code'], at: string, got: unknown): Fault => ({ code, path: at, got, expected, remedy });
  for (const part of ['re', 'im'] as const) {
    const list = column?.[part];
    if (!(list instanceof Float64Array) || list.length !== length)
      return [fault('inconsistent', `${path}.${part}`, list)];
    const wrong = list.findIndex((value) => !(Math.abs(value) <= GREATEST));
    if (wrong < 0) continue;
    const code = Number.isFinite(list[wrong]) ? 'out-of-range' : 'not-finite';
    return [fault(code, `${path}.${part}[${wrong}]`, list[wrong])];
  }
  return [];
}

/** A copy that a kernel may change. */
export const copyOf = ({ re, im }: ComplexColumn): ComplexColumn => ({ re: re.slice(), im: im.slice() });
