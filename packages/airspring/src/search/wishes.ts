import type { Demand } from '../box/demand.js';
import type { Job } from '../brief/job.js';

/** One wish of a brief that a box may miss: its path, and how much it weighs when wishes must yield. */
export interface Wish {
  readonly path: string;
  readonly weight: keyof Job['weights'] | undefined;
}

/** Wishes in a fixed order; the excesses of a box follow it. */
export const wishes = [
  { path: 'wanted.lowest', weight: 'deep' },
  { path: 'wanted.level', weight: 'loud' },
  { path: 'wanted.rise', weight: undefined },
  { path: 'space.width', weight: 'small' },
  { path: 'space.height', weight: 'small' },
  { path: 'space.depth', weight: 'small' },
  { path: 'space.volume', weight: 'small' },
  { path: 'vent.airSpeed', weight: undefined },
  { path: 'vent.largest', weight: 'simple' },
  { path: 'printer.width', weight: undefined },
  { path: 'amplifier.voltage', weight: undefined },
  { path: 'amplifier.current', weight: undefined },
] as const satisfies readonly Wish[];

type Places<List extends readonly unknown[]> = { readonly [Place in keyof List]: number };

const [LOWEST, LEVEL, RISE, WIDTH, HEIGHT, DEPTH, VOLUME, SPEED, LARGEST, PRINTER, VOLTAGE, CURRENT] =
  wishes.keys() as unknown as Places<typeof wishes>;

export { CURRENT, LEVEL, LOWEST, SPEED, VOLTAGE };

/** How far each wish is missed, as the logarithm of needed over allowed; 0 or less is met. */
export type Excess = Float64Array;

/** What a reader compares: the four wishes that trade against each other. */
export interface Criteria {
  /** Lowest frequency within the wanted fall, Hz. */
  cutoff: number;
  /** Least over the band of the greatest level of a steady sine, dB. */
  level: number;
  /** Outside, m³. */
  volume: number;
  /** Of all vents together, m; 0 without a vent. */
  ventLength: number;
}

const DB = Math.LN10 / 20;

/** A nanometre is no excess: solved edges carry rounding. */
const over = (needed: number, allowed: number): number => Math.log((needed - 1e-9) / allowed);

/** Excesses that depend on size, in SI: outer edges and the vent's diameters. */
export function sizeExcess(
  { space, vent, printer }: Job,
  edges: ArrayLike<number>,
  diameter: number,
  printed: number,
  out: Excess,
): void {
  const w = edges[0] as number;
  const h = edges[1] as number;
  const d = edges[2] as number;
  out[WIDTH] = over(w, space.width);
  out[HEIGHT] = over(h, space.height);
  out[DEPTH] = over(d, space.depth);
  out[VOLUME] = space.volume === Infinity ? -1 : over(w * h * d, space.volume);
  out[LARGEST] = diameter > 0 ? over(diameter, vent.largest) : -1;
  out[PRINTER] = diameter > 0 && printer.width < Infinity ? over(printed, printer.width) : -1;
}

/** Excesses that depend on sound, and the greatest level they leave. `area` is that of all vents, 0 without. */
export function soundExcess(job: Job, demand: Demand, area: number, out: Excess): number {
  const { wanted, amplifier, vent } = job;
  const physical = Math.max(demand.travel, demand.heat);
  const speed = area > 0 ? demand.ventFlow / area / vent.airSpeedPeak : 0;
  const voltage = demand.voltage / amplifier.voltage;
  const current = demand.current / amplifier.current;
  out[LOWEST] = Math.log(demand.cutoff / wanted.lowest);
  out[LEVEL] = Math.log(physical);
  out[RISE] = (demand.rise - wanted.rise) * DB;
  out[SPEED] = Math.log(Math.max(speed, 1e-9));
  out[VOLTAGE] = Math.log(voltage);
  out[CURRENT] = Math.log(Math.max(current, 1e-9));
  return wanted.level - 20 * Math.log10(Math.max(physical, speed, voltage, current));
}

/** Sum of what is missed; 0 when every wish is met. */
export function missed(excess: Excess): number {
  let sum = 0;
  for (let i = 0; i < excess.length; i++) if ((excess[i] as number) > 0) sum += excess[i] as number;
  return sum;
}

/**
 * Points of a box by the wishes that trade against each other. One point is one decibel of greatest level, a tenth of an
 * octave of depth, a tenth of a halving of the outer volume, or a tenth of a metre of vent to print.
 */
export const points = (job: Job, weights: Job['weights'], { cutoff, level, volume, ventLength }: Criteria): number =>
  weights.deep * 10 * Math.log2(job.wanted.lowest / cutoff) +
  weights.loud * (level - job.wanted.level) +
  weights.small * 10 * Math.log2(roomFor(job) / volume) -
  weights.simple * 10 * ventLength;

/** Outer volume that the space allows, m³. */
export const roomFor = ({ space }: Job): number => Math.min(space.volume, space.width * space.height * space.depth);

/** A weight of nothing would let a box win that is worse in that respect for no gain. */
const LEAST = 0.01;

/** The brief's own weights, then those of a reader who leans to one wish: deeper, louder, smaller, simpler. */
export const leanings = ({ weights }: Job): readonly Job['weights'][] => {
  const base = {
    deep: Math.max(weights.deep, LEAST),
    loud: Math.max(weights.loud, LEAST),
    small: Math.max(weights.small, LEAST),
    simple: Math.max(weights.simple, LEAST),
  };
  return [base, ...(['deep', 'loud', 'small', 'simple'] as const).map((name) => ({ ...base, [name]: 4 * base[name] }))];
};
