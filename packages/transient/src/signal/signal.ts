import { refuse } from '@airspring/core/fault';

/** A kernel: fills a block with the samples from number `from` on. Whatever was asked before, a sample is the same. */
export type SignalBlock = (from: number, out: Float64Array) => void;

/** A signal that can be made at any place, without what went before. Ours and your own are used alike. */
export interface Signal {
  readonly name: string;
  readonly sources: readonly string[];
  /** Prepares the signal for a sample rate, Hz. Sample 0 is the instant 0. */
  readonly compile: (sampleRate: number) => SignalBlock;
}

/** Refuses a frequency that samples cannot hold: it would be heard as another. */
export function refuseAbove(path: string, frequency: number, sampleRate: number): void {
  if (frequency < sampleRate / 2) return;
  const expected = `below ${sampleRate / 2} Hz, half of the sample rate`;
  refuse([
    { code: 'out-of-range', path, got: frequency, expected, remedy: 'Raise the sample rate or lower the frequency.' },
  ]);
}
