import type { DriverGroup } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import type { Limit } from '@airspring/core/limit';
import type { LargeSignal } from '../job/job.js';
import type { BoxOpening } from '../kind/box-kind.js';
import type { Box } from '../search/box.js';
import type { OwnLoad } from './depth.js';

/** What is known of a box before it is told how it plays. */
export interface Playing {
  readonly system: System;
  readonly drivers: DriverGroup;
  /** Limits of its own parts, such as the air speed in its vent. */
  readonly limits: readonly Limit[];
  /** What its kind limits besides, and the point at which it does. */
  readonly own: readonly OwnLoad[];
  /** The openings through which its air moves, if it has some. */
  readonly openings?: readonly BoxOpening[];
  /** What its drivers do when they are played loud, as far as that is known. */
  readonly largeSignal?: LargeSignal | undefined;
  /** What f3, the cut-off and the rise are counted from; the asymptote where it is left out. */
  readonly reference?: 'asymptote' | 'maximum';
  /** From here upwards the response stays within the wanted fall, Hz. */
  readonly cutoff: number;
  /** How far the response rises above its reference, dB. */
  readonly rise: number;
}

/** A box that the search has found. */
export const playingOf = ({ variant, point, demand }: Box): Playing => ({
  system: variant.system(point),
  drivers: variant.choice.drivers,
  limits: variant.limits(point),
  largeSignal: variant.choice.largeSignal,
  own: (variant.loads ?? []).map((load) => ({ load, point })),
  ...(variant.openings && { openings: variant.openings(point) }),
  ...(variant.reference && { reference: variant.reference }),
  cutoff: demand.cutoff,
  rise: demand.rise,
});
