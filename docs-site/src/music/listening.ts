import { biquads, linkwitzRileyShape, lowPass } from '@airspring/core/filter';
import { si } from '@airspring/core/quantity';
import { mixDown, type Recording, resampled } from '@airspring/transient/recording';
import { compileLinear } from '@airspring/transient/simulation';
import type { Playable } from './boxes.js';
import { rateFor } from './heard.js';

/** A stretch to listen to: the source, and each box as it plays it. All as loud as each other, and none above `CEILING`. */
export interface Excerpt {
  readonly rate: number;
  readonly from: number;
  readonly tracks: readonly Float32Array<ArrayBuffer>[];
}

/** Half a minute: what is held in memory does not grow with the recording. */
const LONGEST = 30;
/** Above it a box is no longer what the model says; source and boxes pass the same filter. */
const CORNER = 150;
/** Greatest sample of a track, of full scale. */
const CEILING = 0.5;
/** Root mean square that each track is brought to, if its peaks allow it. */
const LOUDNESS = 0.1;
/** It fades at its end in this time, s. */
const FADE = 0.2;
/** Played before the stretch begins, so that a box does not begin at rest, s. */
const BEFORE = 2;

/** What stands at the terminals and what a box makes of it at one metre, in a stretch from a time on. */
export async function excerptOf(recording: Recording, boxes: readonly Playable[], from: number): Promise<Excerpt> {
  const rate = rateFor(recording.sampleRate);
  const sampleRate = si('frequency', rate);
  const low = lowPass(linkwitzRileyShape(4), si('frequency', CORNER));
  const runs = [undefined, ...boxes].map((box) => track(box, sampleRate, low));
  const [first, start, end] = [from - BEFORE, from, from + LONGEST].map((time) => Math.max(0, Math.round(time * rate)));
  let at = 0;
  for await (const channels of resampled(recording, sampleRate).blocks()) {
    const block = mixDown(channels);
    const [a, b] = [Math.max(at, first!), Math.min(at + block.length, end!)];
    if (a < b) for (const run of runs) run.take(block.slice(a - at, b - at), Math.max(0, start! - a));
    at += block.length;
    if (at >= end!) break;
  }
  return { rate, from, tracks: alike(runs.map(({ sound }) => sound())) };
}

type Filter = ReturnType<typeof lowPass>;

/** The source, or a box that plays it; through the low-pass. */
function track(box: Playable | undefined, sampleRate: ReturnType<typeof si<'frequency'>>, low: Filter) {
  const simulation =
    box && compileLinear({ network: box.network, air: box.air }, { sampleRate, outputs: ['pressure'] });
  const states = simulation?.start();
  const sectionsOf = (one: Filter) =>
    biquads(one, { sampleRate }).sections.map((section) => ({ section, state: new Float64Array(2) }));
  const [before, after] = [box?.filter ? sectionsOf(box.filter) : [], sectionsOf(low)];
  const parts: Float32Array[] = [];
  const take = (block: Float64Array, skipped: number) => {
    for (const { section, state } of before) filter(block, section, state);
    const out = block.slice();
    if (simulation && states) simulation.run(states, block, [out]);
    for (const { section, state } of after) filter(out, section, state);
    if (skipped < out.length) parts.push(Float32Array.from(out.subarray(skipped)));
  };
  const sound = () => {
    const all = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const part of parts) {
      all.set(part, at);
      at += part.length;
    }
    const fading = Math.min(all.length, Math.round(FADE * sampleRate));
    for (let i = 0; i < fading; i++) all[all.length - 1 - i]! *= i / fading;
    return all;
  };
  return { take, sound };
}

/** A digital section in place, its two states carried on (the transposed direct form). */
function filter(
  out: Float64Array,
  { b0, b1, b2, a1, a2 }: ReturnType<typeof biquads>['sections'][number],
  state: Float64Array,
) {
  let [s1, s2] = [state[0]!, state[1]!];
  for (let i = 0; i < out.length; i++) {
    const x = out[i]!;
    const y = b0 * x + s1;
    s1 = b1 * x - a1 * y + s2;
    s2 = b2 * x - a2 * y;
    out[i] = y;
  }
  state[0] = s1;
  state[1] = s2;
}

/** Tracks of one loudness: the one with the highest peaks says how loud all may be. */
function alike(tracks: readonly Float32Array<ArrayBuffer>[]): readonly Float32Array<ArrayBuffer>[] {
  const told = tracks.map((samples) => {
    let [sum, peak] = [0, 0];
    for (const sample of samples) {
      sum += sample * sample;
      peak = Math.max(peak, Math.abs(sample));
    }
    return { samples, rms: Math.sqrt(sum / Math.max(1, samples.length)), peak };
  });
  const loudness = Math.min(LOUDNESS, ...told.map(({ rms, peak }) => (peak > 0 ? (CEILING * rms) / peak : LOUDNESS)));
  return told.map(({ samples, rms }) => (rms > 0 ? samples.map((sample) => (sample * loudness) / rms) : samples));
}
