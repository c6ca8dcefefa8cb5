/**
 * Noise with a spectrum that falls with frequency, made octave by octave so that any sample can be computed alone.
 *
 * Level k is a sequence at the sample rate over 2^k. It is white noise through a filter W of finite length, plus level k + 1
 * interpolated to twice its rate. With the interpolator U, maximally flat and equal to 2 at zero frequency, each level has the
 * spectrum 1/ν where
 *
 *   |W(ν)|² = 1/ν − |U(ν)|² / (2 · fold(2ν)),   ν from 0 to ½,
 *
 * for 2ν folded to between 0 and ½. The number of terms is finite on each level, and a white sample depends on its place alone.
 */
import { uniformAt } from '@airspring/core/numeric';

/** Weights of the samples at distances ½, 3/2, 5/2, 7/2 on both sides: a polynomial through eight points, in the middle. */
const middle = [1225, -245, 49, -5].map((whole) => whole / 2048);
const REACH = middle.length;
/** Terms of W on each side of its middle. */
const HALF = 12;
/** Points of the frequency axis over which the terms of W are taken. */
const POINTS = 512;
/** Interpolations after which the power of a level no longer changes, to nine digits. */
const SETTLED = 5;
/** What gives a uniform number less one half the standard deviation 1. */
const WHITE = Math.sqrt(12);

const interpolatorAt = (v: number): number =>
  1 + 2 * middle.reduce((sum, weight, i) => sum + weight * Math.cos(2 * Math.PI * v * (2 * i + 1)), 0);

/** |W| at the middles of equal parts of the axis from 0 to ½. */
const octave = Float64Array.from({ length: POINTS }, (_, i) => {
  const v = (i + 0.5) / (2 * POINTS);
  // The difference vanishes as ν⁷ towards zero, where rounding could make it negative.
  return Math.sqrt(Math.max(0, 1 / v - interpolatorAt(v) ** 2 / (2 * Math.min(2 * v, 1 - 2 * v))));
});

/** Terms of W, from the middle outwards, with the amplitude weighted over ν. */
export const octaveTerms = (weight: (v: number) => number): Float64Array => {
  const weighted = octave.map((size, i) => size * weight((i + 0.5) / (2 * POINTS)));
  return Float64Array.from({ length: HALF + 1 }, (_, n) => {
    const sum = weighted.reduce((all, size, i) => all + size * Math.cos((Math.PI * n * (i + 0.5)) / POINTS), 0);
    return sum / POINTS;
  });
};

/** Mean square of what a level gives after it was interpolated a number of times. */
export function powerOf(terms: Float64Array, times: number): number {
  let response = Float64Array.from({ length: 2 * HALF + 1 }, (_, i) => terms[Math.abs(i - HALF)]!);
  let power = 1;
  for (let turn = 0; turn < Math.min(times, SETTLED); turn++) {
    const wide = new Float64Array(2 * response.length + 2 * REACH);
    for (const [i, size] of response.entries()) {
      wide[2 * i + 2 * REACH - 1]! += size;
      middle.forEach((weight, k) => {
        wide[2 * i + 2 * REACH + 2 * k]! += weight * size;
        wide[2 * i + 2 * REACH - 2 - 2 * k]! += weight * size;
      });
    }
    response = wide;
    power /= 2;
  }
  return power * response.reduce((sum, size) => sum + size * size, 0);
}

/** White noise of rms 1: each random number of 52 bits makes four samples of 13. */
function whiteNoise(uniform: ReturnType<typeof uniformAt>, k: number, from: number, count: number): Float64Array {
  const before = from - 4 * Math.floor(from / 4);
  const white = new Float64Array(before + count + 4);
  for (let i = 0; i < before + count; i += 4) {
    let rest = uniform((from - before + i) / 4, k);
    for (let part = 0; part < 4; part++) {
      rest *= 8192;
      const whole = Math.floor(rest);
      rest -= whole;
      white[i + part] = WHITE * ((whole + 0.5) / 8192 - 0.5);
    }
  }
  return white.subarray(before, before + count);
}

/** A function that gives samples of level 0, of the filters of all levels. */
export function pyramid(levels: readonly Float64Array[], seed: number): (from: number, count: number) => Float64Array {
  const uniform = uniformAt(seed);
  const levelFrom = (k: number, from: number, count: number): Float64Array => {
    const terms = levels[k]!;
    const white = whiteNoise(uniform, k, from - HALF, count + 2 * HALF);
    const out = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      let sum = terms[0]! * white[i + HALF]!;
      for (let n = 1; n <= HALF; n++) sum += terms[n]! * (white[i + HALF - n]! + white[i + HALF + n]!);
      out[i] = sum;
    }
    if (k + 1 < levels.length) addInterpolated(out, from, (start, size) => levelFrom(k + 1, start, size));
    return out;
  };
  return (from, count) => levelFrom(0, from, count);
}

/** Adds a sequence of half the rate: its samples on even places, the polynomial through eight of them between. */
function addInterpolated(out: Float64Array, from: number, slower: (from: number, count: number) => Float64Array): void {
  const start = Math.floor(from / 2) - REACH + 1;
  const end = Math.floor((from + out.length - 1) / 2) + REACH;
  const half = slower(start, end - start + 1);
  for (let i = 0; i < out.length; i++) {
    const place = from + i;
    const m = Math.floor(place / 2) - start;
    if (place % 2 === 0) out[i]! += half[m]!;
    else for (let k = 0; k < REACH; k++) out[i]! += middle[k]! * (half[m - k]! + half[m + 1 + k]!);
  }
}
