import { survey } from '@airspring/core/numeric';
import { type Build, type Cell, compileBuild, TUNING_STEP } from '../box/build.js';
import { type Kin, kinOf } from '../box/candidate.js';
import { compileDemand, type Demand, emptyDemand } from '../box/demand.js';
import type { Job } from '../brief/job.js';
import type { Offer } from '../brief/offers.js';
import type { Cost } from './cost.js';
import { type Bore, boresOf, type Lattice, latticeOf, type Reach } from './lattice.js';
import { memory } from './memory.js';
import { refine, type Start } from './refine.js';
import { type Room, roomsOf } from './room.js';
import { type Excess, sizeExcess, soundExcess, wishes } from './wishes.js';

/** Called at each cell of the lattice with all that decides there. */
export type Visitor = (excess: Excess) => void;

/** Demands by volume and tuning for one offer in one family, computed when first asked for; shared by all shapes and vents. */
function demandTable(job: Job, offer: Offer, family: Kin['family'], { volumes, tunings }: Lattice) {
  const kernel = compileDemand(job, offer, family);
  const known: Demand[] = new Array(volumes.length * tunings.length);
  const demandAt = (v: number, f: number): Demand => {
    const place = v * tunings.length + f;
    let demand = known[place];
    if (demand === undefined) {
      demand = emptyDemand();
      kernel.at(volumes[v] as number, tunings[f] as number, demand);
      known[place] = demand;
    }
    return demand;
  };
  return { kernel, demandAt };
}

/**
 * Goes over the whole lattice: every offer, family, shape, vent count, volume, tuning and diameter; then walks downhill in
 * whole millimetres from the best starts of each cost. Deterministic: no seed. Gives the best build for each cost.
 */
export function explore(
  job: Job,
  costs: readonly Cost[],
  reach: Reach,
  visit: Visitor = () => {},
  rooms = roomsOf(job),
): (Build | undefined)[] {
  const lattice = latticeOf(job, reach);
  const starts: Start[][] = costs.map(() => []);
  const bores = memory((vents: number) => boresOf(job, vents, lattice));
  const tables = memory((offer: Offer) => memory((family: Kin['family']) => demandTable(job, offer, family, lattice)));
  for (const kin of kinOf(job)) {
    const { kernel, demandAt } = tables(kin.offer)(kin.family);
    const found = surveyKin(job, kin, rooms(kin), lattice, bores(kin.vents), demandAt, costs, visit);
    const build = remembered(compileBuild(job, kin, kernel));
    found.forEach((start, k) => {
      if (start !== undefined) (starts[k] as Start[]).push({ kin, build, ...start });
    });
  }
  return costs.map((cost, k) => refine(job, cost, starts[k] as Start[], reach));
}

/** Walks of several costs come to the same boxes. */
function remembered(build: (cell: Cell) => Build | undefined): (cell: Cell) => Build | undefined {
  const known = new Map<string, Build | undefined>();
  return (cell) => {
    const key = cell.join(' ');
    if (!known.has(key)) known.set(key, build(cell));
    return known.get(key);
  };
}

function surveyKin(
  job: Job,
  kin: Kin,
  { geometry, solved, longest }: Room,
  { volumes, tunings }: Lattice,
  bores: readonly Bore[],
  demandAt: (v: number, f: number) => Demand,
  costs: readonly Cost[],
  visit: Visitor,
): ({ cell: Cell; cost: number } | undefined)[] {
  const { vents, shape } = kin;
  const vented = kin.family === 'vented';
  const t = job.space.panelThickness;
  const longestOf = bores.map(longest);
  const edges = new Float64Array(3);
  const excess = new Float64Array(wishes.length);
  const criteria = { cutoff: 0, level: 0, volume: 0, ventLength: 0 };

  const ventLengthAt = (v: number, f: number, { mass, ends }: Bore): number =>
    (mass[f] as number) / (volumes[v] as number) - (ends[f] as number);
  const setEdges = (v: number, bore: Bore, ventLength: number) =>
    geometry.size(volumes[v] as number, geometry.contents + bore.taken * Math.max(0, ventLength - t), edges);

  const evaluate = (cell: Int32Array, out: Float64Array) => {
    const v = cell[0] as number;
    const f = cell[1] as number;
    const d = cell[2] as number;
    const bore = bores[d] as Bore;
    out.fill(Infinity);
    const ventLength = ventLengthAt(v, f, bore);
    if (vented && ventLength <= t) return;
    setEdges(v, bore, ventLength);
    // No vent is longer than all edges together: most that are too long need not be placed to be known.
    if (ventLength > (edges[0] as number) + (edges[1] as number) + (edges[2] as number)) return;
    const longest = (longestOf[d] as (edges: Float64Array) => number)(edges);
    if (longest <= 0 || ventLength > longest) return;
    const demand = demandAt(v, f);
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
    const bore = bores[d] as Bore;
    setEdges(v, bore, ventLengthAt(v, f, bore));
    const full = [job.space.width, job.space.height, job.space.depth][solved] as number;
    const size = shape === 'proportional' ? ((edges[0] as number) / full) * 1e3 : (edges[solved] as number) * 1e3;
    const fb = vented ? (tunings[f] as number) : 0;
    const cell: Cell = [Math.round(size), Math.round(bore.diameter * 1e3), Math.round(fb / TUNING_STEP)];
    return { cell, cost: found.cost };
  });
}
