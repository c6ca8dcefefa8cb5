import { format } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import type { RawMargin } from '../kind/build-record.js';
import { driverDepth } from '../kind/drivers.js';
import { type Meaning, travelUnitOf } from '../kind/phrase.js';
import type { Box } from '../search/box.js';
import type { Search } from '../search/search.js';
import { neededFor } from '../search/wishes.js';
import type { Margin } from './design-parts.js';
import type { Played } from './played.js';

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
  if (meaning === 'travel') return ['displacementPeak', travelUnitOf(units.length)];
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

/** How near a box comes to what its drivers bear. */
export function driverMargins(
  job: Job,
  index: number,
  { Xmax = Infinity, Pe = Infinity }: Played['drivers'],
  { displacementPeak, heat }: Played['atWantedLevel'],
): Margin[] {
  const path = `drivers[${index}]`;
  const sense = 'at most';
  const { Xmech = Infinity } = job.choices.find(({ driverIndex }) => driverIndex === index)?.largeSignal ?? {};
  const travel = { meaning: 'travel', value: displacementPeak.value, sense } as const;
  return [
    ...told(job, { ...travel, path: `${path}.Xmax`, what: 'cone travel, peak', limit: Xmax }),
    ...told(job, { ...travel, path: `${path}.largeSignal.Xmech`, what: 'cone travel, peak (Xmech)', limit: Xmech }),
    ...told(job, {
      path: `${path}.Pe`,
      what: 'heat in each voice coil',
      meaning: 'power',
      value: heat.value,
      limit: Pe,
      sense,
    }),
  ];
}

/** How near a box comes to the limits of its drivers and of its kind's parts. `spare` is the room left behind the driver. */
export function partMargins(
  job: Job,
  { choice, loads: [load] = [] }: Box['variant'],
  asked: Played['atWantedLevel'],
  spare: number,
  own: readonly RawMargin[],
): Margin[] {
  const depth = driverDepth(choice.drivers);
  const all: readonly RawMargin[] = [
    {
      path: `drivers[${choice.driverIndex}].depth`,
      what: 'clear depth for the driver',
      meaning: 'length',
      value: depth + spare,
      limit: depth,
      sense: 'at least',
    },
    ...(load?.ofPart !== undefined && asked.own
      ? [
          {
            path: load.ofPart,
            what: load.what,
            meaning: load.meaning,
            value: asked.own.at.value,
            limit: asked.own.limit,
            sense: 'at most' as const,
          },
        ]
      : []),
    ...own,
  ];
  return [
    ...driverMargins(job, choice.driverIndex, choice.drivers.driver, asked),
    ...all.flatMap((margin) => told(job, margin)),
  ];
}
