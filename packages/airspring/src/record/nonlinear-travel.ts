import type { System } from '@airspring/core/enclosure';
import { branchesAtLevel, type TravelCurve } from '@airspring/core/limit';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { respond, respondAtLevel } from '@airspring/core/response';
import { ventLoss } from '@airspring/core/vent';
import { type CurveTold, type Job, type LargeSignal, safeFromOf } from '../job/job.js';
import type { BoxOpening } from '../kind/box-kind.js';
import { inLargeSignal } from './large-signal-faults.js';
import type { At } from './load.js';
import { worst } from './worst.js';

/** How far a driver whose force factor or stiffness depends on its travel moves with all that the amplifier gives, at the tones of the band. */
export interface NonlinearTravel {
  readonly curves: readonly ('force factor' | 'stiffness')[];
  /** Up to which travel all of them are known, m. */
  readonly reach: number;
  /** The greatest peak travel within the reach of a state in which it stays, and what a linear driver would do there, m. */
  readonly travel?: At & { readonly linear: number };
  /** The least and the greatest tone at which it may stay in more than one state, Hz, and the tone of the widest gap with its travels, m. */
  readonly several?: {
    readonly from: number;
    readonly to: number;
    readonly frequency: number;
    readonly travels: readonly number[];
  };
  /** The least and the greatest tone at which it would go beyond the reach, Hz. */
  readonly beyond?: { readonly from: number; readonly to: number };
  /** Whether the loss of the vent is counted, by steady data: of one vent, or several alike. */
  readonly ventLoss: boolean;
}

const TONES = 80;

/** The states of a box at each tone of the band; nothing where no curve is told. */
export function nonlinearTravelOf(
  job: Job,
  system: System,
  large: LargeSignal | undefined,
  openings: readonly BoxOpening[] = [],
): NonlinearTravel | undefined {
  const choice = job.choices.find(({ largeSignal }) => largeSignal === large);
  const { forceFactor, stiffness: spring } = large ?? {};
  // A suspension over frequency has no one stiffness at rest.
  const stiffness = typeof system.network.values.Cms === 'number' ? spring : undefined;
  if (choice === undefined || (forceFactor === undefined && stiffness === undefined)) return undefined;
  const [opening, ...others] = openings;
  const loss = others.length === 0 ? lossOf(opening) : undefined;
  const driveVoltageRms = si('voltageRms', job.amplifier.voltage);
  const grid = logarithmicGrid(safeFromOf(job.wanted), job.wanted.highest, TONES);
  const states = inLargeSignal(choice.driverIndex, () =>
    branchesAtLevel(system, grid, {
      driveVoltageRms,
      ...(forceFactor && { Bl: curveOf(forceFactor) }),
      ...(stiffness && { stiffness: curveOf(stiffness) }),
      ...(loss && { loss }),
    }),
  ).map(({ frequency, branches, beyond }) => {
    const stays = branches.filter(({ stable }) => stable).map(({ displacementPeak }) => displacementPeak);
    return { frequency, stays, beyond };
  });
  const most = worst(
    grid,
    Float64Array.from(states, ({ stays }) => stays.at(-1) ?? 0),
  );
  const at = [most.frequency];
  const linear = loss
    ? respondAtLevel(system, at, { driveVoltageRms, loss })
    : respond(system, at, { driveVoltageRms });
  const several = states.filter(({ stays }) => stays.length > 1);
  const gap = ({ stays }: (typeof states)[number]) => stays.at(-1)! - stays[0]!;
  const widest = several.toSorted((a, b) => gap(b) - gap(a))[0];
  const beyond = states.filter((one) => one.beyond);
  const ends = (of: typeof states) => ({ from: of[0]!.frequency, to: of.at(-1)!.frequency });
  return {
    curves: [...(forceFactor ? ['force factor' as const] : []), ...(stiffness ? ['stiffness' as const] : [])],
    reach: Math.min(forceFactor?.reach ?? Infinity, stiffness?.reach ?? Infinity),
    ...(most.value > 0 && {
      travel: { ...most, linear: linear.displacementPeak[0]! },
    }),
    ...(widest && { several: { ...ends(several), frequency: widest.frequency, travels: widest.stays } }),
    ...(beyond.length > 0 && { beyond: ends(beyond) }),
    ventLoss: loss !== undefined,
  };
}

/** What an opening with two ends loses by the speed of its air; of others nothing was published. */
const lossOf = ({ section, length }: Partial<BoxOpening> = {}) =>
  section && length !== undefined ? ventLoss({ vent: { ...section, length } }).nominal : undefined;

/** A curve over its value at rest as core takes it: only its shape counts. */
const curveOf = ({ reach, coefficients }: CurveTold): TravelCurve => ({
  coefficients: [1, ...coefficients.map((value, i) => value / reach ** (i + 1))],
  upTo: reach,
});
