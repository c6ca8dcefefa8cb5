import { descend, survey } from '@airspring/core/search';
import { type Build, type Cell, compileBuild, printedWidth, TUNING_STEP } from '../box/build.js';
import { compileGeometry, compileVentLength, type Kin, kinOf, tubeArea, ventBody } from '../box/candidate.js';
import { compileDemand, type Demand, emptyDemand } from '../box/demand.js';
import { place } from '../box/placement.js';
import type { Job, Offer } from '../brief/job.js';
import { missed, roomFor, sizeExcess, soundExcess, wishes } from './wishes.js';

/** What one search minimises: a cost for a box's excesses and criteria, given at each cell of the lattice. */
export type Cost = (excess: Float64Array, criteria: Build['criteria']) => number;

/** How far the lattice reaches beyond the brief: 1 stays inside, more looks at what the brief forbids. */
export interface Reach {
  readonly volume: number;
  readonly diameter: number;
  /** How many steps of the lattice make one; the walk in whole millimetres follows all the same. */
  readonly step: number;
}

const VOLUME_RATIO = 1.04;
const TUNING_RATIO = 1.03;
const DIAMETER_RATIO = 1.07;
const geometric = (from: number, to: number, ratio: number): Float64Array => {
  const count = Math.max(1, Math.ceil(Math.log(to / from) / Math.log(ratio)) + 1);
  return Float64Array.from({ length: count }, (_, i) => from * ratio ** i);
};

/** Lattices in volume, tuning and vent diameter. */
function lattices(job: Job, reach: Reach) {
  const room = roomFor(job);
  // In a large space the best box may be far smaller than what there is room for: an eighth of the smallest Vas is small.
  const smallest = Math.min(room / 40, ...job.offers.map(({ completed }) => completed.parameters.Vas / 8));
  return {
    volumes: geometric(smallest, room * reach.volume, VOLUME_RATIO ** reach.step),
    tunings: geometric(job.wanted.lowest / 2.5, job.wanted.lowest * 2.5, TUNING_RATIO ** reach.step),
    diameters: geometric(job.vent.smallest, job.vent.largest * reach.diameter, DIAMETER_RATIO ** reach.step),
  };
}

/** Demands of all volumes and tunings for one offer in one family; shared by all shapes and vents. */
function demandTable(job: Job, offer: Offer, family: Kin['family'], volumes: Float64Array, tunings: Float64Array) {
  const kernel = compileDemand(job, offer, family);
  const columns = family === 'vented' ? tunings : tunings.subarray(0, 1);
  const table: Demand[][] = Array.from(volumes, (volume) =>
    Array.from(columns, (fb) => {
      const demand = emptyDemand();
      kernel.at(volume, fb, demand);
      return demand;
    }),
  );
  return { kernel, table };
}

/** The best start of one kin for one cost. */
interface Start {
  readonly kin: Kin;
  readonly build: (cell: Cell) => Build | undefined;
  readonly cell: Cell;
  readonly cost: number;
}

/** Called at each cell of the lattice with all that decides there. */
export type Visitor = (excess: Float64Array) => void;

/**
 * Goes over the whole lattice: every offer, family, shape, vent count, volume, tuning and diameter; then walks downhill in
 * whole millimetres from the best starts of each cost. Deterministic: no seed. Gives the best build for each cost.
 */
export function explore(
  job: Job,
  costs: readonly Cost[],
  reach: Reach,
  visit: Visitor = () => {},
): (Build | undefined)[] {
  const { volumes, tunings, diameters } = lattices(job, reach);
  const starts: Start[][] = costs.map(() => []);
  const tables = new Map<string, ReturnType<typeof demandTable>>();
  for (const kin of kinOf(job)) {
    const key = `${job.offers.indexOf(kin.offer)} ${kin.family}`;
    let table = tables.get(key);
    if (table === undefined) {
      table = demandTable(job, kin.offer, kin.family, volumes, tunings);
      tables.set(key, table);
    }
    const found = surveyKin(job, kin, table.table, { volumes, tunings, diameters }, costs, visit);
    const build = compileBuild(job, kin, table.kernel);
    found.forEach((start, k) => {
      if (start !== undefined) (starts[k] as Start[]).push({ kin, build, ...start });
    });
  }
  return costs.map((cost, k) => refine(job, cost, starts[k] as Start[], reach));
}

const TRIED = 3;

/** Walks downhill from the best starts. */
function refine(job: Job, cost: Cost, starts: readonly Start[], reach: Reach): Build | undefined {
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

function surveyKin(
  job: Job,
  kin: Kin,
  table: readonly (readonly Demand[])[],
  { volumes, tunings, diameters }: ReturnType<typeof lattices>,
  costs: readonly Cost[],
  visit: Visitor,
): ({ cell: Cell; cost: number } | undefined)[] {
  const geometry = compileGeometry(job, kin);
  const { vents, shape } = kin;
  const vented = kin.family === 'vented';
  const t = job.space.panelThickness;
  const bores = Array.from(vented ? diameters : [1e-3], (diameter) => {
    const body = ventBody(job, diameter);
    const area = vented ? (vents * Math.PI * diameter ** 2) / 4 : 0;
    return {
      diameter: vented ? diameter : 0,
      body,
      area,
      taken: vented ? tubeArea(body, vents) : 0,
      length: vented ? compileVentLength(job, vents, diameter) : () => 0,
      printed: printedWidth(body),
      /** Longest vent by the solved edge in steps of 1 %; −1: not asked yet. */
      longest: new Float64Array(1200).fill(-1),
    };
  });
  const edges = new Float64Array(3);
  const solved = shape === 'proportional' ? 0 : ['width', 'height', 'depth'].indexOf(shape);
  const coarse = new Float64Array(3);
  const excess = new Float64Array(wishes.length);
  const criteria = { cutoff: 0, level: 0, volume: 0, ventLength: 0 };

  /** Reach between edges rounded down by at most 1 %: never more than there is. */
  const longestAt = (bore: (typeof bores)[number]): number => {
    const step = Math.floor(Math.log((edges[solved] as number) / 0.01) / Math.log(1.01));
    if (step < 0 || step >= bore.longest.length) return 0;
    if ((bore.longest[step] as number) < 0) {
      const ratio = (0.01 * 1.01 ** step) / (edges[solved] as number);
      for (let axis = 0; axis < 3; axis++) {
        coarse[axis] = (edges[axis] as number) * (shape === 'proportional' || axis === solved ? ratio : 1);
      }
      bore.longest[step] = geometry.longestVent(coarse, bore.body);
    }
    return bore.longest[step] as number;
  };

  const evaluate = (cell: Int32Array, out: Float64Array) => {
    const [v, f, d] = cell as unknown as [number, number, number];
    const netVolume = volumes[v] as number;
    const fb = vented ? (tunings[f] as number) : 0;
    const bore = bores[d] as (typeof bores)[number];
    out.fill(Infinity);
    const ventLength = bore.length(netVolume, fb);
    if (vented && ventLength <= t) return;
    geometry.size(netVolume, geometry.contents + bore.taken * Math.max(0, ventLength - t), edges);
    const longest = longestAt(bore);
    if (longest <= 0 || ventLength > longest) return;
    const demand = (table[v] as readonly Demand[])[vented ? f : 0] as Demand;
    sizeExcess(job, edges, bore.diameter, bore.printed, excess);
    criteria.level = soundExcess(job, demand, bore.area, excess);
    criteria.cutoff = demand.cutoff;
    criteria.volume = (edges[0] as number) * (edges[1] as number) * (edges[2] as number);
    criteria.ventLength = vents * ventLength;
    visit(excess);
    for (let k = 0; k < costs.length; k++) out[k] = (costs[k] as Cost)(excess, criteria);
  };

  return survey([volumes.length, vented ? tunings.length : 1, bores.length], costs.length, evaluate).map((found) => {
    if (found === undefined) return undefined;
    const [v, f, d] = found.cell as [number, number, number];
    const bore = bores[d] as (typeof bores)[number];
    const netVolume = volumes[v] as number;
    const fb = vented ? (tunings[f] as number) : 0;
    const ventLength = bore.length(netVolume, fb);
    geometry.size(netVolume, geometry.contents + bore.taken * Math.max(0, ventLength - t), edges);
    const full = [job.space.width, job.space.height, job.space.depth][solved] as number;
    const size = shape === 'proportional' ? ((edges[0] as number) / full) * 1e3 : (edges[solved] as number) * 1e3;
    const cell: Cell = [Math.round(size), Math.round(bore.diameter * 1e3), Math.round(fb / TUNING_STEP)];
    return { cell, cost: found.cost };
  });
}

/** Cost of a box that must meet every wish: what it misses first, then its points. */
export const costByPoints =
  (score: (criteria: Build['criteria']) => number): Cost =>
  (excess, criteria) => {
    const miss = missed(excess);
    return miss > 0 ? 1e3 * (1 + miss) : -score(criteria);
  };
