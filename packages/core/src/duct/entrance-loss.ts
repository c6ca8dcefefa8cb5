import { type LengthInput, notNegative, optional, positive, readFields } from '../quantity/index.js';

/** How an end of a duct stands in the air from which it draws. */
export interface EntranceInput {
  readonly diameter: LengthInput;
  /** Radius of the rounding of the edge; default 0, a sharp edge. */
  readonly rounding?: LengthInput | undefined;
  /** Thickness of the wall of a tube that projects freely into the air; left out where the end is flush with a panel or flange. */
  readonly wall?: LengthInput | undefined;
}

/** A loss coefficient by published data: the least, the middle and the greatest of them. */
export interface LossRange {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** Loss coefficients over radius or thickness per diameter, as printed. Between them the line is straight, beyond them level. */
type Table = readonly (readonly [ratio: number, K: number])[];

/** idelchik1966, rounded entrance flush with a wall. */
const roundedByIdelchik: Table = [
  [0, 0.5],
  [0.01, 0.44],
  [0.02, 0.37],
  [0.03, 0.31],
  [0.04, 0.26],
  [0.05, 0.22],
  [0.06, 0.2],
  [0.08, 0.15],
  [0.12, 0.09],
  [0.16, 0.06],
  [0.2, 0.03],
]; // prettier-ignore
/** harris1930, the same, measured: the least of all data. */
const roundedByHarris: Table = [
  [0, 0.44],
  [0.01, 0.35],
  [0.02, 0.28],
  [0.03, 0.22],
  [0.04, 0.17],
  [0.05, 0.13],
  [0.06, 0.1],
  [0.08, 0.07],
  [0.12, 0.03],
  [0.16, 0],
]; // prettier-ignore
/** idelchik1966, a tube that projects by half a diameter or more, over the thickness of its wall. */
const projecting: Table = [
  [0, 1],
  [0.004, 0.94],
  [0.008, 0.88],
  [0.012, 0.83],
  [0.016, 0.77],
  [0.02, 0.72],
  [0.024, 0.68],
  [0.03, 0.61],
  [0.04, 0.54],
  [0.05, 0.5],
]; // prettier-ignore

function between(table: Table, ratio: number): number {
  const next = table.findIndex(([at]) => at >= ratio);
  if (next === 0) return table[0]![1];
  const [x1, K1] = table.at(next < 0 ? -1 : next)!;
  if (next < 0) return K1;
  const [x0, K0] = table[next - 1]!;
  return K0 + ((K1 - K0) * (ratio - x0)) / (x1 - x0);
}

/** rennels2012: a jet that contracts to an area 1/λ and widens again. Above r/D = 1 there is no more to gain. */
function roundedByRennels(ratio: number): number {
  const x = Math.min(ratio, 1);
  const jet = 1 + 0.622 * (1 - 0.3 * Math.sqrt(x) - 0.7 * x) ** 4;
  return 0.0696 * (1 - 0.569 * x) * jet ** 2 + (jet - 1) ** 2;
}

/** {@link entranceLoss} for numbers in m that were read before. */
export function entranceLossOf(diameter: number, rounding: number, wall?: number): LossRange {
  const ratio = rounding / diameter;
  const high = roundedByRennels(ratio);
  // The table ends at a fifth of the diameter. Far beyond it the formula falls below its last value.
  const range = {
    low: between(roundedByHarris, ratio),
    nominal: Math.min(between(roundedByIdelchik, ratio), high),
    high,
  };
  if (wall === undefined || rounding > 0) return range;
  const nominal = between(projecting, wall / diameter);
  return { low: Math.min(range.low, nominal), nominal, high: Math.max(range.high, nominal) };
}

const shape = {
  diameter: positive('length'),
  rounding: optional(notNegative('length')),
  wall: optional(notNegative('length')),
};

/**
 * Loss coefficient of an end that air flows into, by the rounding of its edge. Published data differ, so it is a range:
 *
 * $$ \Delta p = K\,\tfrac12\rho u^2,\qquad K_{high} = 0.0696\,(1 - 0.569\,x)\,\lambda^2 + (\lambda - 1)^2,\quad
 *    \lambda = 1 + 0.622\,(1 - 0.3\sqrt x - 0.7\,x)^4 $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $x$ | `rounding` / `diameter` | 1 | radius of the edge over the diameter |
 * | $u$ | | m/s | mean speed in the duct |
 *
 * `nominal` and `low` are read from two printed tables, of a handbook and of measurements. A tube that projects freely into the box
 * loses more, the thinner its wall.
 *
 * @validity steady flow into a long duct; a projecting tube that stands out by half its diameter or more
 * @neglects that the flow turns about: `ventLoss` says how far published values for sound lie from these
 * @returns the least, the middle and the greatest coefficient
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source idelchik1966 entrance with rounded edge, `nominal`
 * @source harris1930 measured entrances, `low`
 * @source rennels2012 rounded entrance, `high`
 * @example entranceLoss({ diameter: '75 mm', rounding: '9 mm' }).nominal // 0.09
 */
export function entranceLoss(input: EntranceInput): LossRange {
  const { diameter, rounding = 0, wall } = readFields('entrance', input, shape);
  return entranceLossOf(diameter, rounding, wall);
}
