import { format } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import type { RawMargin } from '../kind/build-record.js';
import { driverDepth } from '../kind/drivers.js';
import type { Meaning } from '../kind/phrase.js';
import type { Box } from '../search/box.js';
import type { Search } from '../search/search.js';
import { neededFor } from '../search/wishes.js';
import type { Margin } from './design-parts.js';
import type { Design } from './design-record.js';

/** How near a box is to each limit of the brief that concerns a box of its kind. */
export function wishMargins({ wishes, variants }: Search, { excess, variant }: Box): Margin[] {
  const foreign = (path: string) =>
    variants.some((other) => other.wishes.some((wish) => wish.path === path)) &&
    !variant.wishes.some((wish) => wish.path === path);
  return wishes.list.flatMap((wish, i): Margin[] => {
    const { path, what, quantity, unit, allowed, sense } = wish;
    if (!(allowed < Infinity) || foreign(path)) return [];
    const text = (value: number) => format(quantity, value, unit as never, 4);
    const over = excess[i]!;
    return [
      { path, what, value: text(neededFor(wish, over)), limit: text(allowed), sense, relative: Math.expm1(over) },
    ];
  });
}

/** Unit in which a limit that is no wish is written. */
const unitOf = (meaning: Meaning, { units }: Job): readonly [string, string] => {
  if (meaning === 'travel') return ['displacementPeak', 'mm'];
  if (meaning === 'mass') return ['mass', 'g'];
  if (meaning === 'power') return ['power', 'W'];
  if (meaning === 'airSpeed') return ['airSpeedPeak', 'm/s'];
  return ['length', units.length];
};

function told(job: Job, { path, what, meaning, value, limit, sense }: RawMargin): Margin[] {
  if (!(limit < Infinity)) return [];
  const [kind, unit] = unitOf(meaning, job);
  const text = (number: number) => format(kind as never, number as never, unit as never, 4);
  const relative = sense === 'at most' ? value / limit - 1 : limit / value - 1;
  return [{ path, what, value: text(value), limit: text(limit), sense, relative }];
}

/** How near a box comes to the limits of its drivers and of its kind's parts. `spare` is the room left behind the driver. */
export function partMargins(
  job: Job,
  { choice, load }: Box['variant'],
  { displacementPeak, heat, own: loaded }: Design['atWantedLevel'],
  spare: number,
  own: readonly RawMargin[],
): Margin[] {
  const path = `drivers[${choice.driverIndex}]`;
  const { Xmax = Infinity, Pe = Infinity } = choice.drivers.driver;
  const depth = driverDepth(choice.drivers);
  const at = (field: string) => `${path}.${field}`;
  const most = 'at most' as const;
  const all: readonly RawMargin[] = [
    {
      path: at('Xmax'),
      what: 'cone travel, peak',
      meaning: 'travel',
      value: displacementPeak.value,
      limit: Xmax,
      sense: most,
    },
    { path: at('Pe'), what: 'heat in each voice coil', meaning: 'power', value: heat.value, limit: Pe, sense: most },
    {
      path: at('depth'),
      what: 'clear depth for the driver',
      meaning: 'length',
      value: depth + spare,
      limit: depth,
      sense: 'at least',
    },
    ...(load?.ofPart !== undefined && loaded
      ? [
          {
            path: load.ofPart,
            what: load.what,
            meaning: load.meaning,
            value: loaded.at.value,
            limit: loaded.limit,
            sense: most,
          },
        ]
      : []),
    ...own,
  ];
  return all.flatMap((margin) => told(job, margin));
}
