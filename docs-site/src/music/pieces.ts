import { si } from '@airspring/core/quantity';
import type { Recording } from '@airspring/transient/recording';
import { type Signal, simulatedProgramme } from '@airspring/transient/signal';

/** A piece that the page makes itself. Both are invented, and the same in every browser. */
export interface Piece {
  readonly id: string;
  /** As a sentence calls it. */
  readonly called: string;
  readonly signal: Signal;
  /** s */
  readonly duration: number;
}

/** Something that sets in at a time, s, and dies away by e in another. */
type Fading = readonly [at: number, fades: number];
const fading = ([at, fades]: Fading, t: number): number =>
  t < at || t > at + 8 * fades ? 0 : (1 - Math.exp((at - t) / 0.04)) * Math.exp((at - t) / fades);

const claps: readonly Fading[] = [
  [1, 1.6],
  [3, 0.8],
  [11, 2.2],
  [12.5, 0.7],
  [21, 2.8],
  [22.2, 0.9],
];
/** The steps of a giant: when, and on which tone, Hz. */
const steps: readonly (readonly [at: number, tone: number])[] = [
  [6, 55],
  [7.2, 49],
  [8.4, 41.2],
  [9.6, 41.2],
  [15, 49],
  [16.2, 41.2],
  [17.4, 36.7],
  [18.6, 36.7],
];
const rumbles = simulatedProgramme({
  seed: 11,
  weights: [
    { frequency: 25, level: -12 },
    { frequency: 40, level: 0 },
    { frequency: 80, level: 0 },
    { frequency: 160, level: -18 },
  ],
});

/** Thunder, and between its claps the steps of a giant. */
const storm: Signal = {
  name: 'storm',
  sources: [],
  compile: (sampleRate) => {
    const rumble = rumbles.compile(sampleRate);
    return (from, out) => {
      rumble(from, out);
      for (let i = 0; i < out.length; i++) {
        const t = (from + i) / sampleRate;
        const thunder = claps.reduce((sum, clap) => sum + fading(clap, t), 0);
        out[i]! *= 0.16 * thunder;
        for (const [at, tone] of steps) {
          const swell = fading([at, 0.5], t);
          if (swell > 0) out[i]! += 0.9 * swell * Math.sin(2 * Math.PI * tone * (t - at));
        }
      }
    };
  },
};

/** A moan glides from one tone to another; the harmonics that follow it are softer. */
interface Moan {
  readonly at: number;
  readonly lasts: number;
  readonly from: number;
  readonly to: number;
}
const moans: readonly Moan[] = [
  { at: 0.5, lasts: 3.5, from: 62, to: 41 },
  { at: 4.5, lasts: 4, from: 41, to: 33 },
  { at: 9.5, lasts: 1.2, from: 80, to: 120 },
  { at: 11, lasts: 1.2, from: 80, to: 120 },
  { at: 12.5, lasts: 4.5, from: 55, to: 31 },
  { at: 17.5, lasts: 3, from: 31, to: 37 },
  { at: 21.5, lasts: 1.5, from: 98, to: 65 },
  { at: 23.5, lasts: 6, from: 49, to: 31 },
];
const harmonics = [0.7, 0.2, 0.1];

/** What a moan is at a time, by exact phase: the frequency moves from one end to the other, an octave in equal times. */
function moaning({ at, lasts, from, to }: Moan, t: number): number {
  if (t <= at || t >= at + lasts) return 0;
  const rate = Math.log(to / from) / lasts;
  const turns = (from * Math.expm1(rate * (t - at))) / rate;
  const swell = Math.sin((Math.PI * (t - at)) / lasts) ** 2;
  return swell * harmonics.reduce((sum, size, k) => sum + size * Math.sin(2 * Math.PI * (k + 1) * turns), 0);
}

const song: Signal = {
  name: 'whale song',
  sources: [],
  compile: (sampleRate) => (from, out) => {
    for (let i = 0; i < out.length; i++) {
      const t = (from + i) / sampleRate;
      out[i] = moans.reduce((sum, moan) => sum + moaning(moan, t), 0);
    }
  },
};

export const pieces: readonly Piece[] = [
  { id: 'storm', called: 'our storm', signal: storm, duration: 26 },
  { id: 'song', called: 'our whale song', signal: song, duration: 30 },
];

const BLOCK = 65_536;

/** A piece as a recording: it is played as a file would be. */
export function recordingOf({ signal, duration }: Piece): Recording {
  const sampleRate = si('frequency', 48_000);
  const frames = Math.round(duration * sampleRate);
  return {
    format: 'made by this page',
    sampleRate,
    channels: 1,
    frames,
    duration: si('time', duration),
    warnings: [],
    blocks: async function* ({ length = BLOCK } = {}) {
      const block = signal.compile(sampleRate);
      for (let from = 0; from < frames; from += length) {
        const out = new Float64Array(Math.min(length, frames - from));
        block(from, out);
        yield [out];
      }
    },
  };
}
