import { airSpeedLimit, type Limit, quietLimits } from '@airspring/core/limit';
import type { Probe } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import type { VentSection } from '@airspring/core/vent';
import { type Job, safeFromOf } from '../job/job.js';
import type { BoxOpening, Variant } from './box-kind.js';
import type { Point } from './point.js';
import type { KindWish, Load } from './wish.js';

interface OneOpening extends Omit<BoxOpening, 'section' | 'length'> {
  /** Its element in the topology of the family. */
  readonly element: string;
  /** Equal openings give the same object: what is known of one is kept with it. */
  readonly section: (point: Point) => VentSection;
  /** Length of a vent with two open ends. */
  readonly length?: (point: Point) => number;
}

/** The openings of a kind of box through which its air moves: one, or several of the same area. */
interface Openings {
  readonly openings: readonly [OneOpening, ...OneOpening[]];
  /** What a reader calls one of them: 'vent'. */
  readonly called: string;
  /** Where a brief limits its air speed. */
  readonly path: string;
  readonly airSpeedPeak: number;
  /** Where the air is fastest, m². */
  readonly area: (point: Point) => number;
  /** Whether each opening must stay below every published onset of noise at the wanted level. */
  readonly quiet: boolean;
}

/** What a variant says of the openings through which its air moves: their limits, and what is known of their noise and losses. */
export const airSpeedIn = (
  { wanted, air }: Job,
  { openings, called, path, airSpeedPeak, area, quiet }: Openings,
): Pick<Variant, 'loads' | 'limits' | 'wishes'> & Required<Pick<Variant, 'openings'>> => {
  const probes = openings.map(({ element }): Probe => ({ of: 'flow', element })) as [Probe, ...Probe[]];
  const limit = airSpeedLimit(si('airSpeedRms', airSpeedPeak / Math.SQRT2));
  const what = `air speed in the ${called}, peak`;
  const below = `the air in the ${called}`;
  const speed: Load = {
    probes,
    capacity: (point) => area(point) * airSpeedPeak,
    what,
    meaning: 'airSpeed',
    perReading: (point) => 1 / area(point),
    below,
  };
  const wish: KindWish = {
    path,
    what,
    quantity: 'airSpeedPeak',
    unit: 'm/s',
    allowed: airSpeedPeak,
    sense: 'at most',
    easedByLevel: true,
    needed: (point, loads) => loads[0]! / area(point),
  };
  const ofEach = (one: Limit): Limit[] =>
    openings.map(({ of }) =>
      of === undefined ? one : { ...one, name: `${one.name} ${of}`, probe: `${one.probe} ${of}` },
    );
  const openingsAt = (point: Point): readonly BoxOpening[] =>
    openings.map(({ element: _, section, length, ...one }) => ({
      ...one,
      section: section(point),
      ...(length && { length: si('length', length(point)) }),
    }));
  if (!quiet) return { loads: [speed], limits: () => ofEach(limit), wishes: [wish], openings: openingsAt };

  const [{ section }] = openings;
  const from = si('frequency', safeFromOf(wanted));
  const known = new WeakMap<VentSection, Quiet>();
  const quietAt = (point: Point): Quiet => {
    const opening = section(point);
    const found = known.get(opening) ?? quietOf(quietLimits(opening, { air, from }));
    known.set(opening, found);
    return found;
  };
  const moved: Load = {
    probes,
    integrated: true,
    capacity: (point) => area(point) * quietAt(point).moved,
    what: `travel of the air in the ${called}, peak`,
    meaning: 'travel',
    perReading: (point) => 1 / area(point),
    below: `the travel of ${below}`,
  };
  const slow: Load = { ...speed, capacity: (point) => area(point) * quietAt(point).speed };
  const quietWish: KindWish = {
    path: 'vent.quiet',
    what: `level up to which the ${called} is quiet`,
    quantity: 'level',
    unit: 'dB',
    allowed: wanted.level,
    sense: 'at least',
    easedByLevel: true,
    firm: true,
    needed: (point, loads) =>
      wanted.level - 20 * Math.log10(Math.max(loads[1]! / moved.capacity(point), loads[2]! / slow.capacity(point))),
  };
  return {
    loads: [speed, moved, slow],
    limits: (point) => [limit, ...quietAt(point).limits].flatMap(ofEach),
    wishes: [wish, quietWish],
    openings: openingsAt,
  };
};

/** The limits of an opening that stays quiet, and the peaks of how far and how fast its air may move, m and m/s. */
interface Quiet {
  readonly limits: readonly Limit[];
  readonly moved: number;
  readonly speed: number;
}

function quietOf(limits: readonly Limit[]): Quiet {
  const least = (integrated?: true) =>
    Math.SQRT2 * (limits.find((one) => one.integrated === integrated)?.greatestRms ?? Infinity);
  return { limits, moved: least(true), speed: least() };
}
