/**
 * What brute force shares over the bench of the demonstration: each volume and tuning by the textbooks' circuit, and whether a box beats
 * a design that the search shows.
 */
import { si } from '@airspring/core/quantity';
import { compileLengthForTuning } from '@airspring/core/vent';
import type { Brief, Met } from 'airspring';
import { expect } from 'vitest';
import type { Job } from '../../../packages/airspring/src/job/job.js';
import { type Criteria, leanings, pointsOf } from '../../../packages/airspring/src/search/points.js';
import { demo } from '../../arbitrary/brief.js';
import { compileTextbookDemand } from './textbook-demand.js';

export const TUNINGS = Float64Array.from({ length: 64 }, (_, i) => 12 * 1.029 ** i);
const VOLUMES = Float64Array.from({ length: 300 }, (_, i) => 0.003 * 1.0107 ** i);
const ONE_PERCENT_LEVEL = 20 * Math.log10(1.01);

/** The driver of the demonstration, by its own sheet. */
const [{ fs, Qts, Qes, Vas, Sd, Re, Le, Xmax, Pe }] = demo.drivers as [Brief['drivers'][number]];
const number = (text: string | undefined) => Number(text?.split(' ')[0]);
const sheet = {
  fs: number(fs),
  Qes: Qes!,
  Qms: 1 / (1 / Qts! - 1 / Qes!),
  Vas: number(Vas) / 1e3,
  Sd: number(Sd) / 1e4,
  Re: number(Re),
  Le: number(Le) / 1e3,
  Xmax: number(Xmax) / 1e3,
  Pe: number(Pe),
};

type Demand = ReturnType<ReturnType<typeof compileTextbookDemand>>;

/** Optimistic demand between two tabulated volumes: it may let a box pass that the exact one refuses, not the reverse. */
const best = (a: Demand, b: Demand): Demand => ({
  cutoff: Math.min(a.cutoff, b.cutoff),
  rise: Math.min(a.rise, b.rise),
  travel: Math.min(a.travel, b.travel),
  heat: Math.min(a.heat, b.heat),
  voltage: Math.min(a.voltage, b.voltage),
  current: Math.min(a.current, b.current),
  ventFlow: Math.min(a.ventFlow, b.ventFlow),
  below: [],
});

export const vent = { airSpeedPeak: 12, smallest: 0.04, wall: 0.003, collar: 0.012, faces: ['front'] as const };

const used = (
  { amplifier }: Job,
  demand: Pick<Demand, 'travel' | 'voltage' | 'current' | 'ventFlow'> & { readonly heat?: number },
  area: number,
) =>
  Math.max(
    demand.travel,
    demand.heat ?? 0,
    demand.ventFlow / area / vent.airSpeedPeak,
    demand.voltage / amplifier.voltage,
    demand.current / amplifier.current,
  );

/** Down to where the response and every limit hold at the wanted level, at each frequency from the band downwards. */
function depthOf(job: Job, { cutoff, below }: Demand, area: number): number {
  let above: readonly [number, number] | undefined;
  for (const need of below) {
    const heat = (need.current * Math.sqrt(sheet.Re / sheet.Pe)) as number;
    const share = Math.max(used(job, need, area), heat);
    if (share > 1) {
      const [f, at] = above ?? [need.frequency, 1];
      if (share <= at) return f;
      return Math.max(cutoff, need.frequency * (f / need.frequency) ** (Math.log(share) / Math.log(share / at)));
    }
    above = [need.frequency, share];
    if (need.frequency < cutoff) break;
  }
  return cutoff;
}

/** The designs of an answer beside the same road, and what beats them. */
export function judging(job: Job, answer: Met) {
  const { wanted } = job;
  const exact = compileTextbookDemand(sheet, job.air, wanted, { QL: 7, sourceResistance: 0.1 });
  const exactAt = Array.from(TUNINGS, (fb) => Array.from(VOLUMES, (volume) => exact(volume, fb)));
  const table = exactAt.map((column) => column.slice(1).map((demand, i) => best(column[i]!, demand)));
  const asked = answer.designs.map((one) => {
    const bore = one.vent?.diameter ?? 0;
    const length = (one.vent?.count ?? 0) * (one.vent?.length ?? 0);
    const demand = exact(one.box.netVolume, one.vent?.fb ?? 0);
    const level = wanted.level - 20 * Math.log10(used(job, demand, (Math.PI / 4) * bore ** 2));
    const depth = depthOf(job, demand, (Math.PI / 4) * bore ** 2);
    const criteria: Criteria = { depth, level, volume: one.box.outerVolume, effort: length };
    // What the design says of itself, by the other road.
    expect(Math.abs(demand.cutoff - one.response.cutoff)).toBeLessThan(0.01);
    expect(Math.abs(depth - one.response.depth)).toBeLessThan(0.02);
    expect(Math.abs(demand.rise - one.response.greatestRise)).toBeLessThan(0.01);
    expect(Math.abs(level - one.loudness.level)).toBeLessThan(0.02);
    const weights = leanings(job).find(({ name }) => name === one.leaning)!.weights;
    return { name: one.name, criteria, weights, points: pointsOf(job, weights, criteria) };
  });
  /** Why a box beats a design, or nothing. */
  const beats = (mine: Criteria): string[] =>
    asked.flatMap(({ name, criteria: theirs, weights, points: most }) => {
      const gains = [
        theirs.depth / mine.depth - 1,
        (mine.level - theirs.level) * (0.01 / ONE_PERCENT_LEVEL),
        theirs.volume / mine.volume - 1,
        theirs.effort / mine.effort - 1,
      ];
      const dominated = gains.every((gain) => gain >= 0) && gains.some((gain) => gain > 0.01);
      const more = pointsOf(job, weights, mine) - most;
      return [
        ...(dominated ? [`dominates ${name}: ${gains.map((gain) => gain.toFixed(4))}`] : []),
        ...(more > 0.01 * Math.abs(most) ? [`${more.toFixed(3)} points over ${name}'s ${most.toFixed(3)}`] : []),
      ];
    });

  const criteria = (
    demand: Demand,
    area: number,
    size: Pick<Criteria, 'volume' | 'effort'>,
    depths = [demand],
  ): Criteria | undefined => {
    const share = used(job, demand, area);
    if (share > 1 || demand.cutoff > wanted.lowest || demand.rise > wanted.rise) return undefined;
    const depth = Math.min(...depths.map((one) => depthOf(job, one, area)));
    return { ...size, depth, level: wanted.level - 20 * Math.log10(share) };
  };
  /** Why a vented box beats a design, or nothing; `undefined` where it does not meet every wish, as far as it is looked at. */
  const why = (netVolume: number, k: number, area: number, size: Pick<Criteria, 'volume' | 'effort'>) => {
    const place = Math.floor(Math.log(netVolume / VOLUMES[0]!) / Math.log(1.0107));
    const hope = table[k]![place];
    if (hope === undefined) throw new Error(`no table at ${netVolume} m³`);
    const hoped = criteria(hope, area, size, [exactAt[k]![place]!, exactAt[k]![place + 1]!]);
    if (hoped === undefined) return undefined;
    if (beats(hoped).length === 0) return [];
    const real = criteria(exact(netVolume, TUNINGS[k]!), area, size);
    return real === undefined ? [] : beats(real);
  };
  return { why };
}

/** Every whole millimetre of bore, with the length that tunes a box before its vent takes air: from a quadratic in closed form. */
export function boresFor(job: Job) {
  return Array.from({ length: 81 }, (_, i) => {
    const diameter = (40 + i) / 1e3;
    const length = compileLengthForTuning({ diameter: si('length', diameter), wall: si('length', vent.wall) }, job.air);
    const outer = diameter + 2 * vent.wall;
    const taken = (Math.PI / 4) * outer ** 2;
    // S/k² and both end corrections: what one cubic metre, and what infinitely many leave.
    const ends = Array.from(TUNINGS, (fb) => -length(Number.POSITIVE_INFINITY, fb));
    const mass = Array.from(TUNINGS, (fb, k) => length(1, fb) + ends[k]!);
    return {
      diameter,
      area: (Math.PI / 4) * diameter ** 2,
      outerDiameter: outer,
      flangeDiameter: outer + 2 * vent.collar,
      /** The length for a box that holds `before` within its panels, without a vent; and the air that is left. */
      tuned: (before: number, thickness: number, k: number) => {
        const W = before + taken * thickness;
        const b = W - taken * ends[k]!;
        const c = mass[k]! - ends[k]! * W;
        const long = (2 * c) / (b + Math.sqrt(b * b - 4 * taken * c));
        return { length: long, netVolume: W - taken * long };
      },
    };
  });
}
