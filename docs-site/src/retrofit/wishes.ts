import type { Account, Retrofit } from 'airspring';

/** Less than this is no difference that anyone would build for: dB, and a share of a frequency or a speed. */
export const LEAST_DECIBELS = 0.05;
export const LEAST_SHARE = 0.01;

/** Which of the wishes an account meets, as they are printed: to a tenth. */
export const meets = ({ loudest, reach, wanted, noise }: Account, { asked }: Retrofit) => ({
  level: loudest.level >= asked.level - LEAST_DECIBELS,
  reach: reach !== undefined && reach <= asked.lowest + 0.05,
  airSpeed: wanted.airSpeed === undefined || wanted.airSpeed.value <= asked.airSpeedPeak + 0.05,
  quiet: noise === undefined || noise.quiet.level >= asked.level - LEAST_DECIBELS,
});
