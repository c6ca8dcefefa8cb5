import { format, type Level } from '@airspring/core/quantity';

/** A steady level at the ear, A-weighted. */
export const inputs = {
  level: {
    kind: 'level',
    label: 'Level at the ear, A-weighted',
    value: '94 dB',
    least: '80 dB',
    greatest: '115 dB',
    step: '1 dB',
  },
} as const;

/**
 * Recommended limit (NIOSH 98-126): eight hours at 85 dB(A), half as long
 * for each 3 dB more.
 */
export const hours = (level: number): number => 8 / 2 ** ((level - 85) / 3);

export function answers({ level }: { readonly level: Level }) {
  const allowed = hours(level);
  const minutes = allowed * 60;
  return {
    time:
      allowed >= 24
        ? 'all day'
        : allowed >= 2
          ? `${allowed.toFixed(1)} hours a day`
          : minutes >= 1
            ? `${minutes.toFixed(0)} minutes a day`
            : `${(minutes * 60).toFixed(0)} seconds a day`,
    verdict: allowed >= 8 ? 'within' : 'above',
    twice: format('level', level + 3, 'dB'),
  };
}
