import type { Air } from '@airspring/core/air';
import { airSpeedLimit, type Limit, quietLimits } from '@airspring/core/limit';
import type { Probe } from '@airspring/core/network';
import { type Frequency, si } from '@airspring/core/quantity';
import type { VentSection } from '@airspring/core/vent';
import { type Job, safeFromOf } from '../job/job.js';
import type { KindWish, Load, Point, Variant } from './box-kind.js';

interface OneOpening {
  readonly element: string;
  readonly of?: string;
}

/** The openings of a kind of box through which its air moves: one, or several of the same area. */
interface Openings {
  /** Their elements in the topology of the family, and what tells several of them apart in its probes. */
  readonly openings: readonly [OneOpening, ...OneOpening[]];
  /** What a reader calls one of them: 'vent'. */
  readonly called: string;
  /** Where a brief limits its air speed. */
  readonly path: string;
  readonly airSpeedPeak: number;
  /** Where the air is fastest, m². */
  readonly area: (point: Point) => number;
  /** Set where each opening must stay below every published onset of noise at the wanted level. */
  readonly quiet?: Quiet | undefined;
}

interface Quiet {
  /** Where a brief asks for it. */
  readonly path: string;
  readonly level: number;
  /** The lowest frequency that is played. */
  readonly from: Frequency;
  readonly air: Air;
  /** One of the vents. */
  readonly section: (point: Point) => VentSection;
}

/** Vents that stay quiet at the level and in the band of a job. */
export const quietIn = ({ wanted, air }: Job, section: (point: Point) => VentSection): Quiet => ({
  path: 'vent.quiet',
  level: wanted.level,
  from: si('frequency', safeFromOf(wanted)),
  air,
  section,
});

/** What a variant says of a limit on the air speed in its openings, and of openings that stay quiet. */
export const airSpeedIn = ({
  openings,
  called,
  path,
  airSpeedPeak,
  area,
  quiet,
}: Openings): Pick<Variant, 'loads' | 'limits' | 'wishes'> => {
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
  if (quiet === undefined) return { loads: [speed], limits: () => ofEach(limit), wishes: [wish] };

  const limitsAt = kept((point: Point) => quietLimits(quiet.section(point), { air: quiet.air, from: quiet.from }));
  const least = (point: Point, integrated?: true): number =>
    Math.SQRT2 * (limitsAt(point).find((one) => one.integrated === integrated)?.greatestRms ?? Infinity);
  const moved: Load = {
    probes,
    integrated: true,
    capacity: (point) => area(point) * least(point, true),
    what: `travel of the air in the ${called}, peak`,
    meaning: 'travel',
    perReading: (point) => 1 / area(point),
    below: `the travel of ${below}`,
  };
  const slow: Load = { ...speed, capacity: (point) => area(point) * least(point) };
  const quietWish: KindWish = {
    path: quiet.path,
    what: `level up to which the ${called} is quiet`,
    quantity: 'level',
    unit: 'dB',
    allowed: quiet.level,
    sense: 'at least',
    easedByLevel: true,
    firm: true,
    needed: (point, loads) =>
      quiet.level - 20 * Math.log10(Math.max(loads[1]! / moved.capacity(point), loads[2]! / slow.capacity(point))),
  };
  return {
    loads: [speed, moved, slow],
    limits: (point) => [limit, ...limitsAt(point)].flatMap(ofEach),
    wishes: [wish, quietWish],
  };
};

/** The last answer of a function, which is asked for the same point several times. */
function kept<Answer>(of: (point: Point) => Answer): (point: Point) => Answer {
  let [asked, answer]: [string, Answer | undefined] = ['', undefined];
  return (point) => {
    const key = point.join(' ');
    if (key !== asked) [asked, answer] = [key, of(point)];
    return answer as Answer;
  };
}
