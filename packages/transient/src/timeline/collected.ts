/** What is collected while a slice is heard, in plain arrays: they can be kept, copied and gone on with. */
export interface Collected {
  /** Greatest magnitude and sum of squares of each output, in the slice and in the whole piece. */
  readonly peak: Float64Array;
  readonly sum: Float64Array;
  readonly wholePeak: Float64Array;
  readonly wholeSum: Float64Array;
  /** Mean square of each output over a long time. */
  readonly lasting: Float64Array;
  /** Of the air in each vent: its stroke so far, its last direction, and the longest stroke of the slice. */
  readonly strokes: readonly Float64Array[];
}

export const collectedOf = (outputs: number, vents: number): Collected => {
  const [peak, sum, wholePeak, wholeSum, lasting] = Array.from({ length: 5 }, () => new Float64Array(outputs));
  return {
    peak: peak!,
    sum: sum!,
    wholePeak: wholePeak!,
    wholeSum: wholeSum!,
    lasting: lasting!,
    strokes: Array.from({ length: vents }, () => new Float64Array(3)),
  };
};

/** Takes samples of an output into the slice; a kernel. */
export function collect(
  { peak, sum }: Collected,
  output: number,
  column: Float64Array,
  from: number,
  to: number,
): void {
  let greatest = peak[output]!;
  let total = sum[output]!;
  for (let i = from; i < to; i++) {
    const value = column[i]!;
    const size = Math.abs(value);
    if (size > greatest) greatest = size;
    total += value * value;
  }
  peak[output] = greatest;
  sum[output] = total;
}

/** Follows the air in a vent: a stroke is the way that it goes in one direction; a kernel. */
export function collectStroke(
  stroke: Float64Array,
  speed: Float64Array,
  from: number,
  to: number,
  interval: number,
): void {
  let [way, direction, longest] = [stroke[0]!, stroke[1]!, stroke[2]!];
  for (let i = from; i < to; i++) {
    const value = speed[i]!;
    const sign = Math.sign(value);
    if (sign !== direction) {
      direction = sign;
      way = 0;
    }
    way += Math.abs(value) * interval;
    if (way > longest) longest = way;
  }
  stroke[0] = way;
  stroke[1] = direction;
  stroke[2] = longest;
}

/** Ends a slice of so many samples, where the long time has this many. What was collected goes into the whole piece. */
export function endSlice({ peak, sum, wholePeak, wholeSum, lasting, strokes }: Collected, count: number, long: number) {
  const kept = Math.exp(-count / long);
  for (let i = 0; i < peak.length; i++) {
    lasting[i] = kept * lasting[i]! + (1 - kept) * (sum[i]! / count);
    wholePeak[i] = Math.max(wholePeak[i]!, peak[i]!);
    wholeSum[i]! += sum[i]!;
  }
  return () => {
    peak.fill(0);
    sum.fill(0);
    for (const stroke of strokes) stroke[2] = 0;
  };
}
