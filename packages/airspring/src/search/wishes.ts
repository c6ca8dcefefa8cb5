import { NANOMETRE } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import { LEAST_OF_NOMINAL } from '../job/load.js';
import { volumesIn } from '../job/space-shape.js';
import type { Variant } from '../kind/box-kind.js';
import type { Point } from '../kind/point.js';
import type { KindWish, Wish } from '../kind/wish.js';
import type { Demand } from './demand.js';

/** A wish, and what a box needs of it, in SI units. */
type SoundWish = Wish & { readonly needed: (demand: Demand) => number };

/** The three outer edges in their order, and the outer volume. */
const sizeWishes = ({ space, units }: Job): Wish[] => [
  ...(['width', 'height', 'depth'] as const).map(
    (edge): Wish => ({
      path: `space.${edge}`,
      what: `outer ${edge}`,
      quantity: 'length',
      unit: units.length,
      allowed: space[edge],
      sense: 'at most',
      weight: 'small',
    }),
  ),
  {
    path: 'space.volume',
    what: 'outer volume',
    quantity: 'volume',
    unit: units.volume,
    allowed: space.volume,
    sense: 'at most',
    weight: 'small',
  },
];

/** What every box is asked to play, whatever its kind. */
function soundWishes({ wanted, amplifier }: Job): SoundWish[] {
  return [
    {
      path: 'wanted.lowest',
      what: 'cut-off of the response',
      quantity: 'frequency',
      unit: 'Hz',
      allowed: wanted.lowest,
      sense: 'at most',
      weight: 'deep',
      needed: (demand) => demand.cutoff,
    },
    {
      path: LEVEL,
      what: 'level that cones and coils allow',
      quantity: 'level',
      unit: 'dB',
      allowed: wanted.level,
      sense: 'at least',
      weight: 'loud',
      easedByLevel: true,
      needed: (demand) => wanted.level - 20 * Math.log10(Math.max(demand.travel, demand.heat)),
    },
    {
      path: 'wanted.rise',
      what: 'rise of the response',
      quantity: 'level',
      unit: 'dB',
      allowed: wanted.rise,
      sense: 'at most',
      needed: (demand) => demand.rise,
    },
    ...amplifierWishes(amplifier),
  ];
}

/** What the amplifier can give: watts into a load where the brief says so, otherwise volts and amperes; and the least load. */
function amplifierWishes({ voltage, current, rated, leastLoad }: Job['amplifier']): SoundWish[] {
  const limits: SoundWish[] = rated
    ? [
        {
          path: 'amplifier.power',
          what: `power rating that it needs, into ${rated.into} Ω`,
          quantity: 'power',
          unit: 'W',
          allowed: rated.power,
          sense: 'at most',
          easedByLevel: true,
          needed: (demand) => Math.max(demand.voltage ** 2 / rated.into, demand.current ** 2 * rated.into),
        },
      ]
    : [
        {
          path: 'amplifier.voltage',
          what: 'drive, rms',
          quantity: 'voltageRms',
          unit: 'V',
          allowed: voltage,
          sense: 'at most',
          easedByLevel: true,
          needed: (demand) => demand.voltage,
        },
        {
          path: 'amplifier.current',
          what: 'current, rms',
          quantity: 'currentRms',
          unit: 'A',
          allowed: current,
          sense: 'at most',
          easedByLevel: true,
          needed: (demand) => demand.current,
        },
      ];
  if (leastLoad === undefined) return limits;
  return [
    ...limits,
    {
      path: 'amplifier.leastLoad',
      what: 'nominal load, by its least impedance',
      quantity: 'resistance',
      unit: 'Ω',
      allowed: leastLoad,
      sense: 'at least',
      needed: (demand) => demand.leastImpedance / LEAST_OF_NOMINAL,
    },
  ];
}

/** The wishes of a job in a fixed order, and how boxes are judged by them: excesses follow that order. */
export interface Wishes {
  readonly list: readonly Wish[];
  /** Those of sound come first, those of size next, those of kinds last. */
  readonly soundCount: number;
  readonly sizeCount: number;
  /** Each function fills in the excesses that depend on its arguments. */
  readonly sound: (demand: Demand, out: Float64Array) => void;
  readonly size: (edges: ArrayLike<number>, out: Float64Array) => void;
  /** For the volume alone, before any edge is known. */
  readonly volume: (outer: number, out: Float64Array) => void;
  readonly own: (variant: Variant, point: Point, loads: Float64Array, out: Float64Array) => void;
}

export const LEVEL = 'wanted.level';

/** All wishes of a job; those of kinds come after those of every box. A box meets each wish that does not concern it. */
export function wishesOf(job: Job, variants: readonly Variant[]): Wishes {
  const sounds = soundWishes(job);
  const sizes = sizeWishes(job);
  const common = sounds.length + sizes.length;
  const level = sounds.findIndex(({ path }) => path === LEVEL);
  const volume = common - 1;
  const { outerIn } = volumesIn(job);
  const own = [...new Map(variants.flatMap(({ wishes }) => wishes.map((wish) => [wish.path, wish]))).values()];
  const placesIn = new Map(
    variants.map((variant) => [
      variant,
      variant.wishes.map(({ path }) => common + own.findIndex((wish) => wish.path === path)),
    ]),
  );
  const list = [...sounds, ...sizes, ...own];
  const excessOf = compileExcess(list);
  return {
    list,
    soundCount: sounds.length,
    sizeCount: sizes.length,
    volume: (outer, out) => {
      out.fill(-1, sounds.length, common);
      out[volume] = excessOf(volume, outer);
    },
    sound: (demand, out) => {
      for (let i = 0; i < sounds.length; i++) out[i] = excessOf(i, (sounds[i] as SoundWish).needed(demand));
    },
    size: (edges, out) => {
      for (let axis = 0; axis < 3; axis++) out[sounds.length + axis] = excessOf(sounds.length + axis, edges[axis]!);
      out[volume] = excessOf(volume, outerIn(edges[0]! * edges[1]! * edges[2]!));
    },
    own: (variant, point, loads, out) => {
      out.fill(-1, common);
      // A part that gives out limits the level as the cone does.
      variant.loads?.forEach(({ ofPart, capacity }, k) => {
        if (ofPart !== undefined) out[level] = Math.max(out[level]!, Math.log(loads[k]! / capacity(point)));
      });
      const places = placesIn.get(variant) as number[];
      for (let i = 0; i < places.length; i++) {
        const place = places[i]!;
        out[place] = excessOf(place, (variant.wishes[i] as KindWish).needed(point, loads));
      }
    },
  };
}

/** A decibel, as a logarithm of a ratio of amplitudes. */
export const DECIBEL = Math.LN10 / 20;

/**
 * How far a wish is missed: ln(needed / allowed), with levels and powers as amplitudes. The wish is met at 0 or less. The wish is
 * given by its place; what it says stands in columns, since wishes differ too much in their fields to be read quickly.
 */
function compileExcess(list: readonly Wish[]): (place: number, needed: number) => number {
  const limits = Float64Array.from(list, ({ allowed }) => allowed);
  const signs = Float64Array.from(list, ({ sense }) => (sense === 'at most' ? 1 : -1));
  const spare = Float64Array.from(list, ({ quantity }) => (quantity === 'length' ? NANOMETRE : 0));
  const powers = Float64Array.from(list, ({ quantity }) => (quantity === 'power' ? 2 : 1));
  const isLevel = Uint8Array.from(list, ({ quantity }) => (quantity === 'level' ? 1 : 0));
  return (place, needed) => {
    const allowed = limits[place]!;
    if (allowed === Infinity) return -1;
    if (isLevel[place] === 1) return signs[place]! * (needed - allowed) * DECIBEL;
    const ratio = Math.max(needed - spare[place]!, 1e-12) / allowed;
    return (signs[place]! * Math.log(ratio)) / powers[place]!;
  };
}

/** What a box with this excess needs: the inverse of {@link compileExcess}. */
export function neededFor({ quantity, sense, allowed }: Wish, excess: number): number {
  const sign = sense === 'at most' ? 1 : -1;
  if (quantity === 'level') return allowed + (sign * excess) / DECIBEL;
  return allowed * Math.exp(sign * excess * (quantity === 'power' ? 2 : 1));
}

/** The sum of all excesses above 0; it is 0 when every wish is met. */
export function missed(excess: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < excess.length; i++) if (excess[i]! > 0) sum += excess[i]!;
  return sum;
}
