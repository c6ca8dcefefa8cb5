import type { DriverModels } from '../brief/driver-models.js';
import { isTried } from '../brief/kinds-named.js';
import type { DriverChoice, Job } from '../job/job.js';
import type { BoxKind, Variant } from '../kind/box-kind.js';
import { aligned, type Unsuited } from './aligned.js';
import { compileDemand, type DemandOf } from './compiled-demand.js';
import type { Rooms } from './room.js';
import { type Wishes, wishesOf } from './wishes.js';

/** Called now and then while a search goes on. */
export type Progress = (done: {
  readonly what: string;
  readonly count: number;
  readonly of: number;
  /** Default 'searching'. */
  readonly doing?: string;
}) => void;

/** What all searches of one job share. */
export interface Search {
  readonly job: Job;
  readonly kinds: readonly BoxKind[];
  /** Models of coils and suspensions that its briefs may ask for. */
  readonly models: DriverModels;
  readonly variants: readonly Variant[];
  /** What was left out of them because the alignment of the brief cannot be had there. */
  readonly unsuited: readonly Unsuited[];
  readonly wishes: Wishes;
  /** How much room boxes leave. It does not depend on the sound, so that searches for other sounds share it. */
  readonly rooms: Map<string, Rooms>;
  /** What those variants ask of their parts that share their sound with others, of other searches as well. */
  readonly sounds: Map<string, DemandOf>;
  /** What each variant asks of its parts, compiled at its first use. */
  readonly demandOf: (variant: Variant) => DemandOf;
  readonly progress: Progress;
}

/** A function that makes the value of each key at its first use. */
export function memory<K, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key) as V;
  };
}

/** A name for a driver of a brief in a wiring; that of its sheet may be that of another. */
export const nameOfChoice = ({ driverIndex, drivers: { series, parallel, isobaric } }: DriverChoice): string =>
  [driverIndex, series, parallel, isobaric].join(' ');

/** A name for what a variant sounds like, where it shares that with others. */
export const soundOf = ({ kind, choice, sound }: Variant): string | undefined =>
  sound === undefined ? undefined : `${kind.name} ${nameOfChoice(choice)} ${sound}`;

/** Prepares the search of a job over the kinds that its brief allows. */
export function searchOf(
  job: Job,
  {
    kinds,
    models,
    progress = () => {},
  }: Pick<Search, 'kinds' | 'models'> & { readonly progress?: Progress | undefined },
  sounds: Search['sounds'] = new Map(),
): Search {
  const allowed = kinds.filter((kind) => isTried(kind, job.kinds) && (kind.shaped || !job.space.shape));
  const { alignment } = job;
  const all = job.choices.flatMap((choice) => allowed.flatMap((kind) => kind.variants(job, choice)));
  const { variants, unsuited } =
    typeof alignment === 'object' ? aligned(alignment, all) : { variants: all, unsuited: [] };
  return {
    job,
    kinds,
    models,
    variants,
    unsuited,
    wishes: wishesOf(job, variants),
    rooms: new Map(),
    sounds,
    demandOf: memory((variant: Variant) => {
      const name = soundOf(variant);
      const known = name === undefined ? undefined : sounds.get(name);
      const demandOf = known ?? compileDemand(job, variant);
      if (name !== undefined) sounds.set(name, demandOf);
      return demandOf;
    }),
    progress,
  };
}

/** The same search for another sound in the same space, with the same drivers. */
export function searchAgain(search: Search, job: Job): Search {
  return { ...searchOf(job, search), rooms: search.rooms };
}
