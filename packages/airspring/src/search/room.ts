import { compileGeometry, type Kin } from '../box/candidate.js';
import type { Job } from '../brief/job.js';
import type { Offer } from '../brief/offers.js';
import type { Bore } from './lattice.js';
import { memory } from './memory.js';

/** Edges are looked at in steps of 1 % from a centimetre upwards. */
const RATIO = 1.01;
const SMALLEST = 0.01;
const STEPS = 1200;

/** Room in the boxes of one kin. */
export interface Room {
  readonly geometry: ReturnType<typeof compileGeometry>;
  /** Axis of the outer edge that tells the size of such a box. */
  readonly solved: number;
  /** For a bore the longest vent between outer edges, of which the solved one is rounded down by at most 1 %. */
  readonly longest: (bore: Bore) => (edges: Float64Array) => number;
}

function compileRoom(job: Job, kin: Kin): Room {
  const geometry = compileGeometry(job, kin);
  const whole = kin.shape === 'proportional';
  const solved = whole ? 0 : ['width', 'height', 'depth'].indexOf(kin.shape);
  const coarse = new Float64Array(3);
  const compileLongest = ({ body }: Bore) => {
    /** −1: not asked yet. */
    const table = new Float64Array(STEPS).fill(-1);
    return (edges: Float64Array): number => {
      const edge = edges[solved] as number;
      const step = Math.floor(Math.log(edge / SMALLEST) / Math.log(RATIO));
      if (step < 0 || step >= STEPS) return 0;
      if ((table[step] as number) < 0) {
        const ratio = (SMALLEST * RATIO ** step) / edge;
        for (let axis = 0; axis < 3; axis++) {
          coarse[axis] = (edges[axis] as number) * (whole || axis === solved ? ratio : 1);
        }
        table[step] = geometry.longestVent(coarse, body);
      }
      return table[step] as number;
    };
  };
  const known = new Map<number, ReturnType<typeof compileLongest>>();
  const longest = (bore: Bore) => {
    const found = known.get(bore.diameter) ?? compileLongest(bore);
    known.set(bore.diameter, found);
    return found;
  };
  return { geometry, solved, longest };
}

/** The rooms of all kins. They know nothing of sound: searches in one space, with the same drivers and vents, share them. */
export function roomsOf(job: Job): (kin: Kin) => Room {
  const byOffer = memory((_offer: Offer) => new Map<string, Room>());
  return (kin) => {
    const rooms = byOffer(kin.offer);
    const key = `${kin.shape} ${kin.vents}`;
    const room = rooms.get(key) ?? compileRoom(job, kin);
    rooms.set(key, room);
    return room;
  };
}
