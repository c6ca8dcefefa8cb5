import type { LawResult } from '@airspring/core/laws';
import type { Signal } from './signal.js';

/** Numbers and sizes of the blocks that are tried: single samples, odd places, none at all. */
const blocks: readonly (readonly [from: number, size: number])[] = [
  [3999, 1],
  [0, 0],
  [1, 7],
  [1021, 512],
  [0, 4000],
];
const WHOLE = 4000;

/** What a block holds. Places that are not filled stay NaN. */
function filled(block: (from: number, out: Float64Array) => void, from: number, size: number): Float64Array {
  const out = new Float64Array(size).fill(Number.NaN);
  block(from, out);
  return out;
}

/**
 * The laws of every signal, ours and a stranger's: each sample is a finite number, a block holds the same samples whatever was asked
 * before, and a signal that is compiled anew is the same.
 *
 * @validity the first 4000 samples at a sample rate that the signal accepts
 * @neglects whether the signal sounds as its name says
 * @returns one result for each law
 * @source own (definitions)
 * @example signalLaws(pinkNoise({ seed: 7 }), 48_000).every(({ holds }) => holds)
 */
export function signalLaws(signal: Signal, sampleRate: number): readonly LawResult[] {
  const tried = `the first ${WHOLE} samples at ${sampleRate} Hz`;
  try {
    const block = signal.compile(sampleRate);
    const whole = filled(block, 0, WHOLE);
    const anew = filled(signal.compile(sampleRate), 0, WHOLE);
    const odd = whole.findIndex((sample) => !Number.isFinite(sample));
    const other = blocks.find(([from, size]) =>
      filled(block, from, size).some((sample, i) => !Object.is(sample, whole[from + i])),
    );
    const changed = anew.findIndex((sample, i) => !Object.is(sample, whole[i]));
    return [
      result('each sample is finite', tried, odd >= 0 && `sample ${odd} is ${whole[odd]}`),
      result('any block holds the same samples', tried, other && `a block of ${other[1]} from ${other[0]} differs`),
      result('what is compiled anew is the same', tried, changed >= 0 && `sample ${changed} differs`),
    ];
  } catch (error) {
    return [result('it compiles and fills', tried, `threw ${error instanceof Error ? error.message : String(error)}`)];
  }
}

const result = (law: string, detail: string, fault: string | false | undefined): LawResult =>
  fault ? { law, holds: false, detail: fault } : { law, holds: true, detail };
