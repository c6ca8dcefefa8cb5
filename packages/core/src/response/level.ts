import { kept, type System } from '../enclosure/index.js';
import { InputError } from '../fault/index.js';
import type { CompiledNetwork } from '../network/index.js';
import type { ComplexColumn } from '../numeric/index.js';
import { type Level, si } from '../quantity/index.js';
import { type AtFrequency, atFrequency } from './at-frequency.js';
import { compiledReference, compiledSystem, probeIndex } from './compile.js';

/** Reference of sound pressure level: 20 µPa rms (@source iso1683). */
export const REFERENCE_PRESSURE = 20e-6;

/** dB in one neper. */
export const NEPER = 20 / Math.LN10;

/** The level of silence, which has to be a number: −3000 dB. */
const LEAST = 1e-150;

/** Level of a flow at a frequency: 20 log10 of f |U| times a unit factor. */
export const levelOfFlow = (size: number, unit: number): number => 20 * Math.log10(Math.max(size * unit, LEAST));

/**
 * Sound pressure level at 1 m in half space of a radiated flow, for a drive; fills `out`. A kernel: ω ρ |U| / 2π.
 *
 * @validity sources that are small compared with the wavelength
 * @neglects directivity, propagation
 * @returns nothing; `out` holds dB re 20 µPa rms, −3000 dB where there is no sound
 * @source small1972direct sound pressure of a volume flow
 * @example levelColumn(frequencies, flow, standardAir.density, 2.83, levels)
 */
export function levelColumn(
  frequencies: Float64Array,
  { re, im }: ComplexColumn,
  density: number,
  driveVoltageRms: number,
  out: Float64Array,
): void {
  const unit = (density * driveVoltageRms) / REFERENCE_PRESSURE;
  for (let i = 0; i < frequencies.length; i++) {
    const a = re[i]!;
    const b = im[i]!;
    out[i] = levelOfFlow(Math.sqrt(a * a + b * b) * frequencies[i]!, unit);
  }
}

/** The level of a system for 1 V rms: sampled on a grid, or at one frequency with its slope by ln f in nepers. */
export interface LevelOf {
  readonly at: (frequency: number) => number;
  readonly slope: (frequency: number) => number;
  /** On a grid, from the columns of all probes there. */
  readonly column: (frequencies: Float64Array, swept: readonly ComplexColumn[]) => Float64Array;
}

export function levelOf(system: System): LevelOf {
  const network = compiledSystem(system);
  const row = probeIndex(network.probes, 'radiatedFlow');
  const { density } = system.air;
  const unit = density / REFERENCE_PRESSURE;
  const one: AtFrequency = kept(system, 'at frequency', () => atFrequency(network));
  return {
    at: (frequency) => levelOfFlow(one.magnitude(row, frequency) * frequency, unit),
    slope: (frequency) => one.slope(row, frequency) + 1,
    column: (frequencies, columns) => {
      const out = new Float64Array(frequencies.length);
      levelColumn(frequencies, columns[row] as ComplexColumn, density, 1, out);
      return out;
    },
  };
}

/** The fault of a level that never settles; it names the other references. */
const noAsymptote = (got: string): InputError => {
  const expected = 'a system whose level approaches a constant far above its resonances';
  const remedy =
    "Count from another reference: 'maximum', { level: '90 dB' }, or { frequency: '60 Hz' } for the level there.";
  return new InputError([{ code: 'inconsistent', path: 'reference', got, expected, remedy }]);
};

/** f |U| per volt far above every corner: the quotient of the leading coefficients of the polynomials. */
function limitOfPolynomials({ probes, polynomials }: CompiledNetwork): number | undefined {
  if (polynomials === undefined) return undefined;
  const { coefficients, width, scale } = polynomials;
  const row = 1 + probeIndex(probes, 'radiatedFlow');
  const denominator = coefficients.subarray(0, width);
  const numerator = coefficients.subarray(row * width, (row + 1) * width);
  const [top, order] = [numerator, denominator].map((list) => list.findLastIndex((value) => value !== 0)) as [
    number,
    number,
  ];
  if (top + 1 < order) throw noAsymptote('a level that falls with frequency');
  if (top + 1 > order) throw noAsymptote('a level that rises with frequency');
  return (Math.abs(numerator[top]! / denominator[order]!) * scale) / (2 * Math.PI);
}

/** The limit is read at the first of these frequencies where the level has settled, and at twice it, Hz. A line settles late. */
const FAR = [1e6, 1e8] as const;
/** Ratios of further frequencies that are tried. No line repeats its values at all of them. */
const BETWEEN = [0.25, 0.309, 0.393, 0.486, 0.618, 0.786, 1.236, 1.618] as const;
/** A level that changes by less than this between any two of them has settled, dB. */
const SETTLED = 0.02;

/** The same at very high frequencies, for a network with elements over frequency that the reference does not leave out. */
function limitFarAway(network: CompiledNetwork): number {
  const row = probeIndex(network.probes, 'radiatedFlow');
  const { magnitude } = atFrequency(network);
  let change = 0;
  for (const distance of FAR) {
    const sizeAt = (ratio: number) => magnitude(row, ratio * distance) * ratio * distance;
    const [near, far] = [sizeAt(1), sizeAt(2)];
    const sizes = [near, far, ...BETWEEN.map(sizeAt)];
    const found = 20 * Math.log10(Math.max(...sizes) / Math.min(...sizes));
    // The rest falls as 1/f².
    if (found < SETTLED) return (4 * far - near) / 3;
    if (distance === FAR[0]) change = found;
  }
  throw noAsymptote(`a level that still changes by ${change.toPrecision(2)} dB near 1 MHz`);
}

/**
 * The level that a system approaches at high frequency, per volt of drive. Cut-offs are counted from it. For this level the
 * inductive elements of the coil are shorted and the leak is left out. For one driver in half space it is
 *
 * $$ L_\infty = 20\log_{10}\frac{\rho\,Bl\,S_d}{2\pi\,M_{ms}(R_g + R_e)\cdot 20\,\mu\mathrm{Pa}} $$
 *
 * It is computed from the network, so it holds for any family.
 *
 * @validity systems whose level approaches a constant. Elements over frequency that are not part of the coil or of a vent
 * are evaluated at up to 2 MHz, and at up to 200 MHz where the level has not settled there
 * @neglects coil inductance and leak, by definition
 * @returns dB at 1 m in half space for 1 V rms
 * @throws InputError `inconsistent` for a system whose level approaches no constant, such as a band-pass
 * @source small1972direct
 * @example referenceLevel(closedBox({ drivers, netVolume: '40 L' }))
 */
export function referenceLevel(system: System): Level {
  return kept(system, 'reference level', () => referenceLevelOf(compiledReference(system), system.air.density));
}

/**
 * The same for a network that was compiled for the reference. A search replaces its numbers for each box.
 *
 * $$ L_\infty = 20\log_{10}\frac{\rho}{20\,\mu\mathrm{Pa}}\lim_{f\to\infty} f\,|U| $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `radiatedFlow` | m³/s | flow that leaves the system, rms, for 1 V rms |
 * | $\rho$ | `density` | kg/m³ | density of the air |
 *
 * @validity as {@link referenceLevel}
 * @returns dB at 1 m in half space for 1 V rms
 * @throws InputError `inconsistent` for a network whose level approaches no constant
 * @source small1972direct
 * @example referenceLevelOf(compile(topology).network(values, true), air.density)
 */
export function referenceLevelOf(network: CompiledNetwork, density: number): Level {
  const size = limitOfPolynomials(network) ?? limitFarAway(network);
  return si('level', levelOfFlow(size, density / REFERENCE_PRESSURE));
}
