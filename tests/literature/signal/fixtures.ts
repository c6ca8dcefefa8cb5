import type { Signal } from '@airspring/transient/signal';
import json from './signals.json' with { type: 'json' };

/** Signals and spectra by independent programs; `signals.py` beside this file wrote them. */
export const fixtures = json;

/** Some samples of a signal. */
export function samplesOf(signal: Signal, from: number, count: number, sampleRate = 48_000): Float64Array {
  const out = new Float64Array(count);
  signal.compile(sampleRate)(from, out);
  return out;
}
