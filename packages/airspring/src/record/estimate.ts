import { logarithmicGrid } from '@airspring/core/quantity';
import { HALF_POWER, referenceLevel, respond } from '@airspring/core/response';
import { wantedAt } from '../job/heard.js';
import { type DriverChoice, type Estimated, type Job, safeFromOf } from '../job/job.js';
import type { Variant } from '../kind/box-kind.js';
import { type Box, judge } from '../search/box.js';
import { costByPoints } from '../search/cost.js';
import { emptyDemand } from '../search/demand.js';
import { type Search, searchOf } from '../search/search.js';
import { reachOf } from './behind-filter.js';
import { greatestAt } from './greatest-wanted.js';
import { limitsOf } from './limits.js';

/** Values between which something lies. */
export interface Between {
  readonly from: number;
  readonly to: number;
}

/** Values between which a number lies, and the Vas of the driver that gives each, m³: the greatest of few drivers, not of all between them. */
export interface BetweenVas extends Between {
  readonly Vas: Between;
}

/** What is uncertain about a box because the sheet of its driver does not tell Vas: the same box with other drivers in it. */
export interface Uncertain {
  readonly f3?: BetweenVas;
  /** The greatest level of a steady sine, at the frequency of the band where it is least, dB. */
  readonly level: BetweenVas;
  /** The length of the vent that would serve best in this box, m. */
  readonly ventLength?: BetweenVas;
}

/** The least and the greatest of some values, each with the Vas that it was found with. */
function between(values: readonly (readonly [value: number, Vas: number])[]): BetweenVas {
  const [first, ...others] = values as readonly [(typeof values)[number], ...typeof values];
  const least = others.reduce((a, b) => (b[0] < a[0] ? b : a), first);
  const most = others.reduce((a, b) => (b[0] > a[0] ? b : a), first);
  return { from: least[0], to: most[0], Vas: { from: least[1], to: most[1] } };
}
const vasOf = ({ choice }: Variant): number => choice.completed.parameters.Vas;

/** The choices of drivers at both ends of what is assumed. */
const endsOf = (choice: DriverChoice, { ends }: Estimated): DriverChoice[] =>
  ends.map(({ completed, drivers }) => ({ ...choice, completed, drivers }));

/** The same box with the drivers at both ends of what is assumed; `undefined` where nothing is. */
export function uncertainOf(search: Search, box: Box): Uncertain | undefined {
  const { variants, kinds, models } = search;
  // The box stays as it is, also where its alignment would ask another one of the other drivers.
  const { alignment: _, ...job } = search.job;
  const { choice, kind } = box.variant;
  if (choice.estimated === undefined) return undefined;
  const alike = variants.filter((one) => one.choice === choice && one.kind === kind);
  const place = alike.indexOf(box.variant);
  const others = endsOf(choice, choice.estimated).flatMap((end) => {
    const again = searchOf({ ...job, choices: [end] }, { kinds, models });
    const variant = again.variants.filter((one) => one.kind === kind)[place];
    return variant ? [{ search: again, variant }] : [];
  });
  const all = [{ search, variant: box.variant }, ...others];
  const range = [Math.min(5, job.wanted.lowest / 4), job.wanted.highest] as const;
  const grid = logarithmicGrid(...range, 400);
  const f3 = all.flatMap(({ variant }) => {
    const system = variant.system(box.point);
    const { levelHalfSpace } = respond(system, grid);
    const reference = variant.reference === 'maximum' ? Math.max(...levelHalfSpace) : referenceLevel(system);
    const reach = reachOf(system, job.amplifier.filter, range, reference - HALF_POWER);
    return reach === undefined ? [] : [[reach, vasOf(variant)] as const];
  });
  const band = logarithmicGrid(safeFromOf(job.wanted), job.wanted.highest, 200);
  const levels = all.map(({ variant }) => {
    const limits = limitsOf(job, variant.choice.drivers, variant.limits(box.point));
    const { least } = greatestAt(wantedAt(job.heard), variant.system(box.point), limits, band);
    return [least.level, vasOf(variant)] as const;
  });
  const lengths =
    box.variant.loads?.[0]?.meaning === 'airSpeed'
      ? all.map((one) => [bestLength(one, box), vasOf(one.variant)] as const)
      : [];
  return {
    ...(f3.length > 0 && { f3: between(f3) }),
    level: between(levels),
    ...(lengths.length > 0 && { ventLength: between(lengths) }),
  };
}

/** The length of the vent whose tuning costs least in this box, everything else unchanged. */
function bestLength({ search, variant }: { readonly search: Search; readonly variant: Variant }, box: Box): number {
  const { job, wishes } = search;
  const cost = costByPoints(job, job.weights);
  const demandOf = search.demandOf(variant);
  const [demand, excess, parts] = [
    emptyDemand(variant),
    Float64Array.from(box.excess),
    { extent: 0, taken: 0, effort: 0 },
  ];
  const criteria = { ...box.criteria };
  const { from, to } = tuningAxis(job, variant);
  let best = { cost: Infinity, length: 0 };
  for (let i = 0; i <= TUNINGS; i++) {
    const [netVolume = 0, , ...sizes] = box.point;
    const point = [netVolume, from * (to / from) ** (i / TUNINGS), ...sizes];
    if (!variant.parts(point, parts)) continue;
    demandOf(point, demand);
    judge(job, wishes, variant, point, demand, criteria, excess);
    const price = cost.of(excess, { ...criteria, effort: parts.effort });
    if (price < best.cost) best = { cost: price, length: parts.extent };
  }
  return best.length;
}

const TUNINGS = 120;
const tuningAxis = ({ wanted }: Job, { acoustic: [axis] }: Variant): Between =>
  axis ?? { from: wanted.lowest, to: wanted.lowest };
