import type { System } from '@airspring/core/enclosure';
import { type Impossible, impossible, type Warning } from '@airspring/core/fault';
import { logarithmicGrid } from '@airspring/core/quantity';
import {
  type Band,
  type Builds,
  type BuildsKernel,
  type BuildsOptions,
  compileBuilds,
  type Distribution,
  normal,
  summaryOf,
  within,
} from '@airspring/core/tolerance';
import { wantedAt } from '../job/heard.js';
import { type Job, safeFromOf } from '../job/job.js';
import type { Box } from '../search/box.js';
import { limitsOf } from './limits.js';

/** How far a number scatters, as a share of it: normally, or evenly between two bounds. */
export type Spread = { readonly standardDeviation: number } | { readonly within: number };

/**
 * How far the numbers of a box scatter from build to build: common practice, not measured here. Several drivers of one box are
 * taken to scatter together, as those of one batch do.
 */
const PRACTICE: Readonly<Record<string, Spread>> = {
  Cms: { standardDeviation: 0.08 },
  Bl: { standardDeviation: 0.03 },
  Mms: { standardDeviation: 0.02 },
  Re: { within: 0.03 },
  Cab: { within: 0.02 },
  'Cab front': { within: 0.02 },
  'Cab rear': { within: 0.02 },
  vent: { within: 0.03 },
  'vent.length': { within: 0.03 },
  'vent front': { within: 0.03 },
  'vent rear': { within: 0.03 },
  radiatorCompliance: { standardDeviation: 0.08 },
  radiatorMass: { standardDeviation: 0.02 },
};

const distributionOf = (spread: Spread): Distribution =>
  'within' in spread ? within(spread.within) : normal(spread.standardDeviation);

const BUILDS = 500;
/** At how many frequencies of the band the limits are looked at. */
const LIMITED = 60;
const SEED = 1;

/** What builds of one design will scatter. */
export interface ScatterTold {
  /** How many builds were worked out. */
  readonly builds: number;
  /** f3 without a filter, Hz: 5 %, half and 95 % of the builds lie below; or why there is no such band. */
  readonly f3: { readonly ok: true; readonly low: number; readonly middle: number; readonly high: number } | Impossible;
  /**
   * How loud the builds can play within every limit at each frequency of the band, dB: 5 %, half and 95 % of them less; and the share
   * of them that play the wanted level. Left out where no builds are worked out.
   */
  readonly greatest?: Readonly<Record<'low' | 'middle' | 'high' | 'kept', number>>;
  /**
   * Level without a filter, dB for 1 V rms: at each frequency, Hz, 5 %, half and 95 % of the builds lie below. Left out where no builds
   * are worked out.
   */
  readonly level?: Readonly<Record<'frequencies' | 'low' | 'middle' | 'high', readonly number[]>>;
  /** The share of the variance of f3 that each number of the network causes, the greatest first; adds up to 1. */
  readonly causes: readonly { readonly name: string; readonly share: number }[];
  /** The numbers of the network that were taken to scatter, and how far: common practice. */
  readonly assumed: readonly ({ readonly name: string } & Spread)[];
  /** Why the shares say less than they seem to. */
  readonly warnings: readonly Warning[];
}

/** A box of which no builds are worked out, and why. */
const untold = (code: string, since: string): ScatterTold => {
  const f3 = impossible(code, `What builds of this box will scatter is not worked out, since ${since}.`);
  return { builds: 0, f3, causes: [], assumed: [], warnings: [] };
};

/** Whether a network has a number of a name; that of an element over frequency is called by both names, as `vent.length`. */
function hasNumber({ network: { topology, values } }: System, name: string): boolean {
  if (typeof values[name] === 'number') return true;
  return topology.elements.some(
    (one) => 'parameters' in one && one.parameters.some((parameter) => `${one.name}.${parameter}` === name),
  );
}

/** What scatters of a box, and what of each build is worked out; or why that is not told. */
function scatteringOf(job: Job, { variant, point }: Built) {
  const { wanted, heard } = job;
  const system = variant.system(point);
  const spreads = Object.entries(PRACTICE).filter(([name]) => hasNumber(system, name));
  if (spreads.length === 0) return untold('other-network', 'none of its numbers is one whose scatter is known');
  const scatter = Object.fromEntries(spreads.map(([name, spread]) => [name, distributionOf(spread)]));
  const assumed = spreads.map(([name, spread]) => ({ name, ...spread }));
  const band = logarithmicGrid(safeFromOf(wanted), wanted.highest, LIMITED);
  const options: BuildsOptions = {
    reference: variant.reference,
    within: {
      limits: limitsOf(job, variant.choice.drivers, variant.limits(point)),
      frequencies: band,
      gain: wantedAt(heard).gain(band),
    },
  };
  // The greatest level is looked for within the band, as that of the design is.
  const highest = variant.reference === 'maximum' ? wanted.highest : 200;
  return {
    system,
    scatter,
    assumed,
    frequencies: logarithmicGrid(Math.min(10, wanted.lowest / 4), highest, 200),
    options,
  };
}

/** What builds of a box depend on. */
export type Built = Pick<Box, 'variant' | 'point'>;

/** Works out runs of builds of a box; `undefined` where nothing is told of them. */
export function buildsOf(job: Job, box: Built): BuildsKernel | undefined {
  const found = scatteringOf(job, box);
  return 'builds' in found ? undefined : compileBuilds(found.system, found.scatter, found.frequencies, found.options);
}

/** What builds of a box scatter, from runs of them in any order. Without runs, some builds are worked out here. */
export function scatterTold(job: Job, box: Built, runs?: readonly Builds[]): ScatterTold {
  const found = scatteringOf(job, box);
  if ('builds' in found) return found;
  const { system, scatter, assumed, frequencies, options } = found;
  const parts = runs ?? [compileBuilds(system, scatter, frequencies, options)(SEED, 0, BUILDS)];
  const told = summaryOf(system, scatter, frequencies, parts, options);
  const { builds, f3, level, greatestLevel, firstOrder, warnings } = told;
  const shares = firstOrder.ok ? Object.entries(firstOrder.shares) : [];
  return {
    builds,
    f3: f3.ok ? { ok: true, low: f3.low, middle: f3.middle, high: f3.high } : f3,
    ...(greatestLevel && { greatest: greatestTold(greatestLevel, parts, job.wanted.level) }),
    level: {
      frequencies: [...level.frequencies],
      low: [...level.low],
      middle: [...level.middle],
      high: [...level.high],
    },
    causes: shares.map(([name, share]) => ({ name, share })).sort((a, b) => b.share - a.share),
    assumed,
    warnings,
  };
}

/** How loud builds can play, and the share of them that play a level. */
function greatestTold({ low, middle, high }: Band, parts: readonly Builds[], wanted: number) {
  const levels = parts.flatMap(({ greatestLevels }) => Array.from(greatestLevels ?? []));
  return { low, middle, high, kept: levels.filter((level) => level >= wanted).length / levels.length };
}
