import { refuse } from '@airspring/core/fault';
import type { Signal } from './signal.js';

/**
 * A signal times a number, as a voltage is made of a signal of peak 1.
 *
 * @validity any finite number
 * @returns a signal
 * @throws InputError `not-finite`
 * @source oppenheim1997 §1.2 (definition)
 * @example scaled(sine({ frequency: '30 Hz' }), 28.3)
 */
export function scaled(signal: Signal, by: number): Signal {
  if (!Number.isFinite(by)) {
    refuse([
      { code: 'not-finite', path: 'by', got: by, expected: 'a finite number', remedy: 'Replace NaN or infinity.' },
    ]);
  }
  const compile: Signal['compile'] = (sampleRate) => {
    const block = signal.compile(sampleRate);
    return (from, out) => {
      block(from, out);
      for (let i = 0; i < out.length; i++) out[i]! *= by;
    };
  };
  return { ...signal, name: `${by} × ${signal.name}`, compile };
}

/**
 * Several signals at once, as two tones whose intermodulation is asked for.
 *
 * @validity any number of signals; silence of none
 * @returns a signal
 * @source oppenheim1997 §1.2 (definition)
 * @example summed([scaled(sine({ frequency: '30 Hz' }), 0.8), scaled(sine({ frequency: '200 Hz' }), 0.2)])
 */
export function summed(signals: readonly Signal[]): Signal {
  const compile: Signal['compile'] = (sampleRate) => {
    const blocks = signals.map((signal) => signal.compile(sampleRate));
    return (from, out) => {
      const part = new Float64Array(out.length);
      out.fill(0);
      for (const block of blocks) {
        block(from, part);
        for (let i = 0; i < out.length; i++) out[i]! += part[i]!;
      }
    };
  };
  return {
    name: signals.map(({ name }) => name).join(' + '),
    sources: [...new Set(signals.flatMap(({ sources }) => sources))],
    compile,
  };
}

/**
 * A signal whose peaks are cut off, as programme is limited before it is broadcast or sold: it has a lower crest factor.
 *
 * @validity peaks above zero
 * @neglects the products above half the sample rate, which are folded down
 * @returns a signal between −peak and peak
 * @throws InputError `not-positive`, `not-finite`
 * @source oppenheim1997 §1.6 (a system without memory)
 * @example clipped(simulatedProgramme({ seed: 1 }), 2)
 */
export function clipped(signal: Signal, peak: number): Signal {
  if (!(peak > 0 && Number.isFinite(peak))) {
    const code = Number.isFinite(peak) ? 'not-positive' : 'not-finite';
    refuse([{ code, path: 'peak', got: peak, expected: 'a number above 0', remedy: 'Give a value above 0.' }]);
  }
  const compile: Signal['compile'] = (sampleRate) => {
    const block = signal.compile(sampleRate);
    return (from, out) => {
      block(from, out);
      for (let i = 0; i < out.length; i++) out[i] = Math.max(-peak, Math.min(peak, out[i]!));
    };
  };
  return { ...signal, name: `${signal.name}, cut off at ${peak}`, compile };
}
