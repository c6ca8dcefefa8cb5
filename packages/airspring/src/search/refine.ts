import { descend } from '@airspring/core/numeric';
import type { Build, Cell } from '../box/build.js';
import type { Kin } from '../box/candidate.js';
import { place } from '../box/placement.js';
import type { Job } from '../brief/job.js';
import type { Cost } from './cost.js';
import type { Reach } from './lattice.js';

/** The best cell of one kin's lattice for one cost, as whole numbers. */
export interface Start {
  readonly kin: Kin;
  readonly build: (cell: Cell) => Build | undefined;
  readonly cell: Cell;
  readonly cost: number;
}

const TRIED = 3;

/** Walks downhill in whole millimetres from the best starts; the best box that stands where a walk ends. */
export function refine(job: Job, cost: Cost, starts: readonly Start[], reach: Reach): Build | undefined {
  const best = [...starts].sort((a, b) => a.cost - b.cost).slice(0, TRIED);
  const ends = best.flatMap(({ kin, build, cell }) => {
    let least = Infinity;
    const price = (at: readonly number[]) => {
      const made = build(at as unknown as Cell);
      const price = made === undefined ? Infinity : cost(made.excess, made.criteria);
      if (made === undefined || price >= least) return price;
      // A vent a little longer than the longest straight one may be too short to bend: only the full judgement knows.
      if (!place(job, made).ok) return Infinity;
      least = price;
      return price;
    };
    const vented = kin.family === 'vented';
    const lower = [1, vented ? Math.ceil(job.vent.smallest * 1e3 - 1e-6) : cell[1], vented ? 1 : cell[2]];
    const upper = [
      1e5,
      vented ? Math.floor(job.vent.largest * reach.diameter * 1e3 + 1e-6) : cell[1],
      vented ? 1e6 : cell[2],
    ];
    // The lattice's box stands between whole millimetres: look around for one that stands.
    const around = nearby(cell, price);
    const end = descend(price, around, { lower, upper, firstStep: 16 });
    return end.cost < Infinity ? [{ end, build }] : [];
  });
  const least = ends.sort((a, b) => a.end.cost - b.end.cost)[0];
  return least?.build(least.end.cell as unknown as Cell);
}

/** The start itself, or the first neighbour within 2 % that stands: a shorter or wider tuning may be needed by a millimetre. */
function nearby(cell: Cell, price: (cell: readonly number[]) => number): Cell {
  if (price(cell) < Infinity) return cell;
  const [size, diameter, tuning] = cell;
  for (const up of [1, 2, 4, 8, 16]) {
    for (const near of [
      [size + up, diameter, tuning],
      [size, diameter, tuning + up],
      [size + up, diameter, tuning + up],
    ] as const) {
      if (price(near) < Infinity) return near;
    }
  }
  return cell;
}
