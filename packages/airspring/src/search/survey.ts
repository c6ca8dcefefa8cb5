import { volumesIn } from '../job/space-shape.js';
import type { Variant } from '../kind/box-kind.js';
import type { Parts, Point } from '../kind/point.js';
import { asGoodAsCanBe, rate } from './box.js';
import type { Cost } from './cost.js';
import { emptyDemand } from './demand.js';
import { type Alike, boundsMet, compileDistinct } from './distinct-shapes.js';
import type { Grid } from './grid.js';
import { hopefulSounds } from './hopeful.js';
import type { Criteria } from './points.js';
import { compileRoom, noRooms, type Room } from './room.js';
import type { Search } from './search.js';
import { edgesOf, inProportion, type Shape } from './shapes.js';
import { compileSizePrices } from './size-prices.js';
import { DECIBEL } from './wishes.js';

/** The cheapest box of a variant's lattice for one cost. */
export interface Start {
  readonly variant: Variant;
  /** Outer edges, m. */
  readonly edges: readonly [number, number, number];
  readonly point: Point;
  readonly cost: number;
}

/**
 * By how much a sound may differ from one beside it in each of its excesses: a step of a lattice on each axis. Of the sounds of
 * band-pass boxes that come nearest to their briefs, one in fifty differs more from all those beside it.
 */
const EASED = 0.25;

/** Sums of the same costs in another order differ by less. */
const ROUNDING = 1e-9;

/**
 * Visits a grid of one variant: net volumes, then the acoustic axes, the geometric axes and the shapes. Each level is left as
 * soon as the best that it could give is dearer than what was found, so that most boxes are never made. Deterministic.
 */
export function surveyVariant(
  search: Search,
  variant: Variant,
  costs: readonly Cost[],
  grid: Grid,
  best: Float64Array,
): (Start | undefined)[] {
  const { volumes, acoustic, geometric, shapes, name } = grid;
  const { job, wishes } = search;
  const { voltage: mostVoltage, current: mostCurrent } = job.amplifier;
  const t = 2 * job.space.panelThickness;
  const excess = new Float64Array(wishes.list.length);
  const missedBySound = new Float64Array(wishes.soundCount);
  const edges = new Float64Array(3);
  const inner = new Float64Array(3);
  const criteria: Criteria = { depth: 0, level: 0, volume: 0, effort: 0 };
  const parts: Parts = { extent: 0, taken: 0, effort: 0 };
  const demandOf = search.demandOf(variant);
  const demand = emptyDemand(variant);
  const byMissAlone = costs.every((cost) => cost.byMiss);
  const found: (Start | undefined)[] = costs.map(() => undefined);
  const own = new Float64Array(costs.length).fill(Infinity);
  const floor = new Float64Array(costs.length);
  /** What all but the size costs. */
  const rest = new Float64Array(costs.length);
  const point: number[] = [];
  const edge = variant.span?.edge;
  const free = edge === undefined ? 0b111 : 0b111 & ~(1 << edge);
  const { cuboidFor, outerIn } = volumesIn(job);
  /** The inner edges of a shape; at the span, that of the point. */
  const edgesFor = (shape: Shape, volume: number): boolean => {
    if (edge !== undefined) inner[edge] = point[point.length - 1]!;
    return edgesOf(shape, variant.least, cuboidFor(volume), inner, free);
  };
  const edgesAtAnySpan = (shape: Shape, volume: number): boolean =>
    edgesOf(shape, variant.least, cuboidFor(volume), inner);
  const cube = inProportion(shapes[0] as Shape, Float64Array.of(1, 1, 1));

  /** Whether the box could still be the cheapest for some cost. */
  const mayWin = (): boolean => {
    for (let k = 0; k < costs.length; k++) if ((costs[k] as Cost).of(excess, criteria) < limitOf(k)) return true;
    return false;
  };
  const limitOf = (k: number): number => Math.min(own[k]!, best[k]! + (costs[k] as Cost).slack);
  /** Sets the least outer size that holds an inner volume: no shape needs less. */
  const setLeast = (volume: number, edgesIn = edgesFor): boolean => {
    if (!edgesIn(cube, volume)) return false;
    let outer = 1;
    for (let axis = 0; axis < 3; axis++) outer *= inner[axis]! + t;
    criteria.volume = outerIn(outer);
    return true;
  };
  const key = `${variant.roomKey ?? search.variants.indexOf(variant)} ${name}`;
  const rooms = search.rooms.get(key) ?? noRooms();
  if (name !== undefined) search.rooms.set(key, rooms);
  const isKept = name !== undefined && !variant.roomByPoint;
  const room = compileRoom(rooms, variant, shapes, edgesFor, inner);
  const everyShape: readonly Alike[] = [
    { places: [...shapes.keys()], smallest: [], greatest: [Infinity, Infinity, Infinity] },
  ];
  /** A box whose edges are all exact may hold less than they leave. */
  const anyExact =
    edge !== undefined || shapes.some(({ most }) => most.every((size, axis) => size === variant.least[axis]));
  const distinctAt = compileDistinct(shapes, variant.least, rooms.alike);
  const pricesOf = byMissAlone && !isKept && edge === undefined ? compileSizePrices(costs, wishes, t) : undefined;

  const hopeful = hopefulSounds(grid, (v, at) => {
    setPoint(volumes[v]!, acoustic[at] as readonly number[], geometric[0] as readonly number[]);
    return soundMayWin(volumes[Math.max(0, v - 1)]!, EASED);
  });
  for (let v = 0; v < volumes.length; v++) {
    const volume = volumes[v]!;
    if (costs.every(({ least }, k) => best[k]! <= least)) break;
    if (!setLeast(volume + variant.contents, edgesAtAnySpan)) continue;
    // Where the size alone is too dear, so is that of every larger volume.
    asGoodAsCanBe(excess, criteria);
    wishes.volume(criteria.volume, excess);
    if (!mayWin()) break;
    for (let at = 0; at < acoustic.length; at++) {
      if (hopeful === undefined || hopeful[v * acoustic.length + at] === 1)
        visitSound(volume, acoustic[at] as readonly number[]);
    }
  }

  function setPoint(volume: number, sound: readonly number[], sizes: readonly number[]): void {
    point[0] = volume;
    for (let i = 0; i < sound.length; i++) point[1 + i] = sound[i]!;
    for (let i = 0; i < sizes.length; i++) point[1 + sound.length + i] = sizes[i]!;
  }

  // A function for each level of the lattice: the engine compiles small ones sooner, and none of them a second time.
  function visitSound(volume: number, sound: readonly number[]): void {
    for (let cell = 0; cell < geometric.length; cell++) {
      setPoint(volume, sound, geometric[cell] as readonly number[]);
      if (cell === 0 && !soundMayWin(volume)) return;
      visitCell(volume, cell);
    }
  }

  /** Whether a box could still be the cheapest if its size were the least that holds its volume, and its parts asked for nothing. */
  function soundMayWin(volume: number, eased = 0): boolean {
    const isExact = demandOf.atLeast(point, demand);
    if (!demandMayWin(volume, eased)) return false;
    if (isExact && byMissAlone) return true;
    demandOf(point, demand);
    demandOf.keep(demand);
    return demandMayWin(volume, eased);
  }

  function demandMayWin(volume: number, eased: number): boolean {
    wishes.sound(demand, excess);
    for (let i = 0; i < wishes.soundCount; i++) {
      missedBySound[i] = excess[i]!;
      excess[i]! -= eased;
    }
    excess.fill(-1, wishes.soundCount);
    setLeast(volume + variant.contents, edgesAtAnySpan);
    criteria.effort = 0;
    criteria.depth = demand.depth * Math.exp(-eased);
    const used = Math.max(demand.travel, demand.heat, demand.voltage / mostVoltage, demand.current / mostCurrent);
    criteria.level = job.wanted.level - 20 * Math.log10(used) + eased / DECIBEL;
    wishes.volume(criteria.volume, excess);
    return mayWin();
  }

  /** Whether the box of the point could be the cheapest in some shape of an inner volume. It keeps what all but the size costs. */
  function shapeMayWin(volume: number): boolean {
    if (pricesOf === undefined) return true;
    excess.fill(-1, wishes.soundCount, wishes.soundCount + wishes.sizeCount);
    for (let k = 0; k < costs.length; k++) rest[k] = (costs[k] as Cost).of(excess, criteria);
    const { least } = pricesOf(distinctAt(cuboidFor(volume)));
    for (let k = 0; k < costs.length; k++) if (rest[k]! + least[k]! < limitOf(k) + ROUNDING) return true;
    return false;
  }

  function visitCell(volume: number, cell: number): void {
    if (!variant.parts(point, parts)) return;
    const filled = volume + variant.contents + parts.taken;
    const known = isKept ? room.at(cell, filled, point) : undefined;
    if (isKept && parts.extent > (known?.most ?? -1)) return;
    if (!setLeast(filled)) return;
    // What the sound misses is known for all cells; where a part gives out first, `own` raises it.
    for (let i = 0; i < wishes.soundCount; i++) excess[i] = missedBySound[i]!;
    wishes.own(variant, point, demand.loads, excess);
    if (!byMissAlone) rate(job, variant, point, demand, criteria);
    criteria.effort = parts.effort;
    wishes.volume(criteria.volume, excess);
    if (!mayWin()) return;
    for (let k = 0; k < costs.length; k++) floor[k] = (costs[k] as Cost).of(excess, criteria);
    if (!shapeMayWin(filled)) return;
    if (known === undefined) tryShapes(filled);
    else tryKnown(filled, known);
  }

  /** Tries every shape of those that may leave room for the parts. */
  function tryShapes(volume: number): void {
    let tried = 0;
    const cuboid = cuboidFor(volume);
    const groups = edge === undefined ? distinctAt(cuboid) : everyShape;
    const prices = pricesOf?.(groups).of;
    for (let g = 0; g < groups.length; g++) {
      const { places, greatest } = groups[g] as Alike;
      if (!mayHold(greatest, cuboid)) continue;
      for (let i = 0; i < places.length; i++) {
        if (prices !== undefined && !placeMayWin(prices, places[i]!)) continue;
        const shape = shapes[places[i]!] as Shape;
        if (!edgesFor(shape, volume)) continue;
        const bit = boundsMet(shape, variant.least, inner, edge);
        if ((tried & bit) !== 0) continue;
        tried |= bit;
        const w = inner[0]!;
        const h = inner[1]!;
        const d = inner[2]!;
        const { extent } = parts;
        if (extent > (variant.roomAtMost?.(w, h, d, point) ?? Infinity)) continue;
        if (!sizeMayWin() || extent > variant.room(w, h, d, point, extent)) continue;
        if (!take()) return;
      }
    }
  }

  /** The same in one shape, by its place. */
  function placeMayWin(prices: readonly Float64Array[], place: number): boolean {
    for (let k = 0; k < prices.length; k++) if (rest[k]! + prices[k]![place]! < limitOf(k) + ROUNDING) return true;
    return false;
  }

  /** Whether a box of an inner volume whose edges are at most these may leave room for the parts. */
  function mayHold(greatest: Alike['greatest'], volume: number): boolean {
    if (variant.roomAtMost === undefined || anyExact) return true;
    return !(parts.extent > variant.roomAtMost(greatest[0], greatest[1], greatest[2], point, volume));
  }

  /** The same where the room that boxes of about this volume leave is kept: that of a shape at a volume slightly smaller. */
  function tryKnown(volume: number, known: Room): void {
    const { extent } = parts;
    for (let s = 0; s < shapes.length; s++) {
      if (extent > known.atMost[s]! || !edgesFor(shapes[s] as Shape, volume)) continue;
      if (!sizeMayWin() || extent > room.leaves(known, s, volume, point)) continue;
      if (!take()) return;
    }
  }

  /** Whether a box with the inner edges that are set could be the cheapest. */
  function sizeMayWin(): boolean {
    for (let axis = 0; axis < 3; axis++) edges[axis] = inner[axis]! + t;
    criteria.volume = outerIn(edges[0]! * edges[1]! * edges[2]!);
    wishes.size(edges, excess);
    return mayWin();
  }

  /** Keeps the box for each cost at which it is the cheapest so far. Whether some shape of its volume could still be cheaper. */
  function take(): boolean {
    for (let k = 0; k < costs.length; k++) {
      const cost = (costs[k] as Cost).of(excess, criteria);
      if (!(cost < own[k]!)) continue;
      own[k] = cost;
      if (cost < best[k]!) best[k] = cost;
      found[k] = { variant, edges: [...edges] as [number, number, number], point: [...point], cost };
      if (!anyBelow()) return false;
    }
    return true;
  }

  /** Whether some shape of the size that is being tried could still be cheaper than what was found. */
  function anyBelow(): boolean {
    for (let k = 0; k < costs.length; k++) if (floor[k]! < limitOf(k)) return true;
    return false;
  }

  return found;
}
