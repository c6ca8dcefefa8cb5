import type { System } from '@airspring/core/enclosure';
import {
  type Biquad,
  biquads,
  butterworthShape,
  filterGroupDelay,
  filterLevel,
  highPass,
} from '@airspring/core/filter';
import { gentlestHighPass, type Limit } from '@airspring/core/limit';
import { type Frequency, frequencyGrid, si, type VoltageRms } from '@airspring/core/quantity';
import { cutoff, type Reference } from '@airspring/core/response';
import type { Heard } from '../job/heard.js';
import { reachAt } from './behind-filter.js';

/** A high-pass that a report names, as the brief would state it. */
export interface GentleHighPass {
  readonly order: number;
  /** Rounded up to a tenth of a hertz. */
  readonly corner: number;
  /** Level that it takes at the lowest tone of the band, dB. */
  readonly costAtLowest: number;
  /** Group delay that it adds there, s. */
  readonly delayAtLowest: number;
  /** By how much it raises f3, Hz. */
  readonly riseOfF3: number;
  /** Set where the response behind it breaks the wanted fall: up to here it has fallen by more, Hz. */
  readonly fallenUpTo?: number;
}

/** The Butterworth filters that a brief can name. */
const shapes = () => [1, 2, 3, 4].map(butterworthShape);
/** A corner as people can set it. */
const settable = (corner: number): Frequency => si('frequency', Math.ceil(corner * 10 - 1e-6) / 10);

/** A frequency is told to a tenth of a hertz. */
const TOLD = 0.05;

/** The Butterworth high-pass below the lowest tone that keeps the limits and costs the least depth; left out if none does. */
export function gentlestOf(
  system: System,
  limits: readonly Limit[],
  asked: {
    readonly driveVoltageRms: VoltageRms;
    readonly lowest: number;
    /** The level per volt that the response keeps from the lowest tone on, dB, and the place where it is judged. */
    readonly keeps?: { readonly place: Pick<Heard, 'gain'>; readonly level: number };
    readonly band: readonly [number, number];
    readonly reference?: Reference | undefined;
  },
): GentleHighPass | undefined {
  const { driveVoltageRms, lowest, keeps } = asked;
  const [from, to] = asked.band.map((f) => si('frequency', f)) as [Frequency, Frequency];
  const find = (reference: Reference) =>
    [
      reference,
      gentlestHighPass(system, limits, { driveVoltageRms, from, to, candidates: shapes(), reference }),
    ] as const;
  let [reference, found] = find(asked.reference ?? 'asymptote');
  // A response that falls before the end of the band is counted from there.
  if (!found.ok) [reference, found] = find({ frequency: to });
  if (!found.ok) return undefined;
  const below = found.candidates.find(({ corner }) => settable(corner) <= lowest);
  if (below === undefined) return undefined;
  const corner = settable(below.corner);
  const filter = highPass(below.shape, corner);
  const there = frequencyGrid([lowest]);
  const behind = cutoff(system, { from, to, reference, filter });
  const fallen = keeps && reachAt(keeps.place, system, filter, asked.band, keeps.level);
  return {
    order: filter.denominator.length - 1,
    corner,
    costAtLowest: -filterLevel(filter, there)[0]!,
    delayAtLowest: filterGroupDelay(filter, there)[0]!,
    riseOfF3: behind.ok ? behind.frequency - found.f3 : below.cost.depth,
    ...(fallen !== undefined && fallen > lowest + TOLD && { fallenUpTo: fallen }),
  };
}

/** The same filter as digital coefficients, if a sample rate is stated. */
export function digitalOf(
  { order, corner }: GentleHighPass,
  sampleRate: Frequency | undefined,
): { readonly sampleRate?: number; readonly sections?: readonly Biquad[] } {
  if (sampleRate === undefined) return {};
  const filter = highPass(butterworthShape(order), si('frequency', corner));
  return { sampleRate, sections: biquads(filter, { sampleRate }).sections };
}
