import { printedWidth } from '../box/build.js';
import { compileVentLength, tubeArea, ventBody } from '../box/candidate.js';
import type { Job } from '../brief/job.js';
import { roomFor } from './wishes.js';

/** How far the lattice reaches beyond the brief: 1 stays inside, more looks at what the brief forbids. */
export interface Reach {
  readonly volume: number;
  readonly diameter: number;
  /** How many steps of the lattice make one; the walk in whole millimetres follows all the same. */
  readonly step: number;
}

/** How far beyond the brief to look for what would do. */
export const BEYOND: Reach = { volume: 5, diameter: 1.6, step: 2 };

/** What the search steps through. */
export interface Lattice {
  readonly volumes: Float64Array;
  readonly tunings: Float64Array;
  readonly diameters: Float64Array;
}

const VOLUME_RATIO = 1.04;
const TUNING_RATIO = 1.03;
const DIAMETER_RATIO = 1.07;
const geometric = (from: number, to: number, ratio: number): Float64Array => {
  const count = Math.max(1, Math.ceil(Math.log(to / from) / Math.log(ratio)) + 1);
  return Float64Array.from({ length: count }, (_, i) => from * ratio ** i);
};

export function latticeOf(job: Job, reach: Reach): Lattice {
  const room = roomFor(job);
  // In a large space the best box may be far smaller than what there is room for: an eighth of the smallest Vas is small.
  const smallest = Math.min(room / 40, ...job.offers.map(({ completed }) => completed.parameters.Vas / 8));
  return {
    volumes: geometric(smallest, room * reach.volume, VOLUME_RATIO ** reach.step),
    tunings: geometric(job.wanted.lowest / 2.5, job.wanted.lowest * 2.5, TUNING_RATIO ** reach.step),
    diameters: geometric(job.vent.smallest, job.vent.largest * reach.diameter, DIAMETER_RATIO ** reach.step),
  };
}

/** One inner diameter of the lattice with all that follows from it and from the number of vents alone. */
export interface Bore {
  /** m; 0 for a closed box. */
  readonly diameter: number;
  readonly body: ReturnType<typeof ventBody>;
  /** Of all openings, and of all tubes with their walls, m². */
  readonly area: number;
  readonly taken: number;
  readonly printed: number;
  /** By tuning: length is mass / net volume − ends. */
  readonly mass: Float64Array;
  readonly ends: Float64Array;
}

/** The bore that a closed box has for the search's sake: nothing, next to which there is always room. */
const noBore = (job: Job): Bore => ({
  diameter: 0,
  body: ventBody(job, 1e-3),
  area: 0,
  taken: 0,
  printed: 0,
  mass: new Float64Array(1),
  ends: new Float64Array(1),
});

/** All bores for a number of vents; for a closed box, which has none, the one that is nothing. */
export function boresOf(job: Job, vents: number, { diameters, tunings }: Lattice): Bore[] {
  if (vents === 0) return [noBore(job)];
  return Array.from(diameters, (diameter) => {
    const body = ventBody(job, diameter);
    const length = compileVentLength(job, vents, diameter);
    // An endless volume leaves the ends alone.
    const ends = tunings.map((fb) => -length(Infinity, fb));
    return {
      diameter,
      body,
      area: (vents * Math.PI * diameter ** 2) / 4,
      taken: tubeArea(body, vents),
      printed: printedWidth(body),
      mass: tunings.map((fb, f) => length(1, fb) + (ends[f] as number)),
      ends,
    };
  });
}
