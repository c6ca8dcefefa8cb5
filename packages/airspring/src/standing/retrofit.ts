import { referenceLevel } from '@airspring/core/response';
import type { Asked, Job } from '../job/job.js';
import type { BriefOptions } from '../kind/brief-options.js';
import type { Phrase } from '../kind/phrase.js';
import { USUAL_QL } from '../kind/vented-fields.js';
import { leaksAssumed } from '../kind/wording.js';
import { lowestReach } from '../record/behind-filter.js';
import { assumedOfDriver } from '../record/driver-account.js';
import { type HeardTold, heardTold } from '../record/heard-told.js';
import { impedanceTold } from '../record/impedance-told.js';
import type { Played } from '../record/played.js';
import type { TuningTold } from '../record/vent-noise.js';
import { type Account, tuningAtWanted } from './account.js';
import { type Bands, bandsOf } from './bands.js';
import { boxOf, type Made, type Now } from './changes/change.js';
import { changesTo } from './changes-to.js';
import { type Chain, first } from './combinations.js';
import type { MeasuredDriver } from './measured-driver.js';
import { numberedChanges } from './named.js';
import { type Quieter, quieterThan } from './quieter.js';
import type { ChangedBox, Row } from './row.js';
import type { Standing } from './standing.js';
import type { Sounding, State } from './state.js';
import { airTaken } from './tube.js';
import { type TubeSet, type TubeSets, tubeSets } from './tubes.js';
import { type ChangedDesign, wholeOf } from './whole.js';

/** The answer about an existing box: what it does now, and what each change would do. Plain records in SI units. */
export interface Retrofit {
  readonly version: 1;
  readonly title: string;
  readonly asked: Asked & {
    readonly airSpeedPeak: number;
    /** Whether vents must stay below every published onset of noise. */
    readonly quiet: boolean;
    /** The least nominal load that the amplifier takes, Ω, and the name of the existing filter. */
    readonly leastLoad?: number;
    readonly filter?: string;
  };
  readonly now: {
    readonly box: ChangedBox;
    readonly account: Account;
    readonly impedance: Played['impedance'];
    /** Left out without a vent, or with several that are unlike. */
    readonly tuning?: TuningTold;
    /** For drivers known from the impedance of their box. Left out where readings that are all off together tell of no driver. */
    readonly bands?: Bands;
    /** At the listener, where the brief has a room. */
    readonly heard?: HeardTold;
  };
  /** Of every panel, m. */
  readonly panelThickness: number;
  readonly rows: readonly Row[];
  /** The best combinations of changes, each a whole design. */
  readonly designs: readonly ChangedDesign[];
  /** Index in `rows` of the change that helps most; left out if none helps. */
  readonly first?: number;
  /** What keeps the vent quieter than that change: first what has room in a usual box, then what is quieter still. */
  readonly quieter: readonly Quieter[];
  /** Tubes for one flange: for each hole as it is, and made larger by each saw. */
  readonly tubeSets: readonly TubeSet[];
  /** Why there is no set where there might be one, a sentence each. */
  readonly tubeSetsLeftOut: TubeSets['leftOut'];
  /** What the impedance of the box tells of drivers without a sheet. */
  readonly measuredDrivers?: MeasuredDriver;
  readonly assumed: readonly Phrase[];
  /** Where a measurement contradicts the computed value: both numbers, and what would explain the difference. */
  readonly doubts: readonly Phrase[];
}

/**
 * What an existing box does now, and what each change alone would do to it.
 *
 * @throws InputError with every fault of the brief at its path
 * @example retrofit(brief).now.account.loudest.level
 */
export const retrofit = (brief: unknown, options: BriefOptions = {}): Retrofit => workedOut(brief, options).answer;

/** The answer about an existing box, with what each of its changes leaves. */
export interface WorkedOut {
  readonly answer: Retrofit;
  readonly now: Now;
  /** One for each row of the answer. */
  readonly made: readonly Made[];
  /** One for each design of the answer. */
  readonly chains: readonly Chain[];
}

/** The same as {@link retrofit}, with everything from which a change is built. */
export function workedOut(brief: unknown, options: BriefOptions = {}): WorkedOut {
  const { standing, now, sounding, made, chains } = changesTo(brief, options);
  const { state, account } = now;
  const { job, airSpeedPeak, quiet } = standing;
  // A copy holds its account as plain data.
  const rows = made.map(({ row }) => ({ ...row }));
  const helped = first(now, rows);
  const { measurement } = standing;
  const bandsAt = (one: State | undefined) => {
    const bands = measurement && one && bandsOf(standing, one, measurement);
    return bands && { bands };
  };
  const best = chains();
  const { first: at } = helped;
  const ofFirst = at === undefined ? undefined : made[at];
  const making = ofFirst?.done?.steps.find((step) => step.making)?.making;
  const impedanceAfter = ofFirst?.done && impedanceTold(ofFirst.done.sounding.system, job.wanted.highest);
  const designs = best.map(({ name, chain, leaning }) => wholeOf(now, chain, name, leaning));
  const { sets, leftOut } = tubeSets(standing);
  const numbered = numberedChanges(made).map(({ number, made: one }) => [number, one] as const);
  const tuning = tuningAtWanted(job, state, sounding, account);
  const answer: Retrofit = {
    version: 1,
    title: job.title,
    asked: {
      ...job.wanted,
      airSpeedPeak,
      quiet,
      ...(job.amplifier.leastLoad !== undefined && { leastLoad: job.amplifier.leastLoad }),
      ...(job.amplifier.filter && { filter: job.amplifier.filter.name }),
    },
    now: {
      box: boxOf(state, sounding, standing.vents),
      account,
      impedance: impedanceTold(sounding.system, job.wanted.highest),
      ...(tuning && { tuning }),
      ...bandsAt(state),
      ...heardNow(job, sounding),
    },
    panelThickness: standing.panelThickness,
    rows: rows.map((row, i) =>
      i === at
        ? {
            ...row,
            ...(making && { making }),
            ...bandsAt(ofFirst?.done?.state),
            ...(impedanceAfter && { impedance: impedanceAfter }),
          }
        : row,
    ),
    designs,
    ...helped,
    quieter: quieterThan(now, ofFirst, { numbered, designs, tubeSets: sets }),
    tubeSets: sets,
    tubeSetsLeftOut: leftOut,
    ...(measurement && { measuredDrivers: measurement.told }),
    assumed: assumedOf(standing),
    doubts: doubtsOf(standing),
  };
  return { answer, now, made, chains: best.map(({ chain }) => chain) };
}

/** What walls, room and distance make of the box as it stands. */
function heardNow(job: Job, { system, limits }: Sounding): { readonly heard?: HeardTold } {
  if (job.heard === undefined) return {};
  const about = { from: lowestReach(job.wanted), reference: referenceLevel(system), curves: new Float64Array() };
  return { heard: heardTold(job, job.heard, system, limits, about) };
}

function assumedOf({ contentsAssumed, vents, job, measurement }: Standing): Phrase[] {
  const { box } = job.sections as { box?: { QL?: number } };
  const { QL, lessThanUsual } = measurement?.told.leaks ?? {};
  const leaks: Phrase[] = lessThanUsual
    ? [
        [
          `The leaks of the box are assumed to have a QL of ${QL?.toPrecision(3)}: its peak is too high for the ${USUAL_QL} of common practice.`,
        ],
      ]
    : leaksAssumed(box?.QL, USUAL_QL);
  return [
    ...job.choices.flatMap(assumedOfDriver),
    ...contentsAssumed,
    ...(vents.length > 0 ? leaks : []),
    ...(vents.some(({ holeAssumed }) => holeAssumed)
      ? [['The hole of the vent is assumed to be as wide as its tube. Measure it.'] as const]
      : []),
  ];
}

const FAR = 0.05;

/** Where what a brief tells contradicts itself without being impossible. */
const doubtsOf = (standing: Standing): Phrase[] => [
  ...doubtedAir(standing),
  ...doubtedTuning(standing),
  ...doubtedPeaks(standing),
];

/** Air as it is told, and as the sizes of the box leave it. */
function doubtedAir({ airBeforeVents, vents, panelThickness, airOfSizes }: Standing): Phrase[] {
  if (airOfSizes === undefined) return [];
  const air = airBeforeVents - vents.reduce((sum, tube) => sum + airTaken(tube, panelThickness), 0);
  if (Math.abs(air / airOfSizes - 1) < FAR) return [];
  const less: Phrase = [' Something solid of ', [airOfSizes - air, 'volume'], ' inside would explain it.'];
  return [
    [
      'You say that the box holds ',
      [air, 'volume'],
      ' of air, but its sizes leave ',
      [airOfSizes, 'volume'],
      '.',
      ...(air < airOfSizes ? less : []),
      ' Check both. Until then the air that you stated is used.',
    ],
  ];
}

/** A sheet is seldom nearer to its driver. */
const SHEETS_DIFFER = 0.15;

/** The dip, and what the peaks on both sides of it say (small1973vented4, fB = fL fH/fsB). */
function doubtedPeaks({ tuning }: Standing): Phrase[] {
  if (tuning?.byPeaks === undefined || Math.abs(tuning.byPeaks / tuning.measured - 1) < SHEETS_DIFFER) return [];
  return [
    [
      'You measured the dip at ',
      [tuning.measured, 'frequency'],
      ', but the two peaks and fs of the sheet say that it is at ',
      [tuning.byPeaks, 'frequency'],
      '. Measure all three again, and check fs. Until then the dip is used.',
    ],
  ];
}

/** A measured tuning that differs from the computed one, and what would explain it: C ∝ V, M ∝ effective length, f ∝ 1/√(M C). */
function doubtedTuning({ tuning, tuningRatio }: Standing): Phrase[] {
  if (tuning === undefined || Math.abs(tuningRatio - 1) < FAR) return [];
  const higher = tuningRatio > 1;
  const percent = Math.round(Math.abs(tuningRatio ** -2 - 1) * 100);
  return [
    [
      'You measured a tuning of ',
      [tuning.measured, 'frequency'],
      ', but the sizes give ',
      [tuning.computed, 'frequency'],
      `. ${percent} % ${higher ? 'less' : 'more'} air in the box would explain it, and so would a vent that acts ${percent} % ${higher ? 'shorter' : 'longer'}. `,
      higher
        ? 'A leak raises the measured tuning as well. '
        : 'Filling, or something close to an end of the vent, lowers it as well. ',
      'Check the sizes. Until then the measured tuning is used, and every changed vent is corrected by the same ratio.',
    ],
  ];
}
