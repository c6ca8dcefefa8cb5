import type { Point } from '../kind/point.js';
import { type Box, type Cell, cellOf, type compileBox } from './box.js';
import type { Cost } from './cost.js';

/** By how many millimetres one edge of a pair is moved. The other one then keeps the air, or the outer volume. */
const SHIFTS = [0, 1, -1, 2, -2, 4, -4, 8, -8, 16, -16, 32, -32, 48, -48];
/** By how many units the size of a part is changed. */
const TURNS = [1, -1];
/** How many units of the last axis are tried from a cell, in each direction. */
const LONGEST_RUN = 7;
/** How much dearer than the box a cell may be, in points, or how much it may cost beyond one that misses nothing. */
const NEAR = 0.1;
const MISSING = 1e3;
/** A box that takes this share of the volume that is allowed is as large as whole units let it be. */
const FULL = 0.995;
/** Cubic millimetres of a cubic metre. */
const WHOLE = 1e9;

/** The point of a box, and those with a part one unit larger or smaller. */
const turnedOf = ({ variant: { acoustic, geometric }, point }: Box): Point[] => [
  point,
  ...geometric.flatMap(({ unit }, axis) =>
    TURNS.map((turn) => point.map((value, i) => (i === 1 + acoustic.length + axis ? value + turn * unit : value))),
  ),
];

/** The cells of other shapes and of parts one unit larger or smaller, with about the air and the acoustic values of a box. */
function* cellsOfSameSound(box: Box, panel: number): Generator<Cell> {
  const { variant, edges } = box;
  const turned = turnedOf(box);
  for (let one = 0; one < 3; one++) {
    const two = (one + 1) % 3;
    for (const shift of SHIFTS) {
      const size = [...edges];
      size[one] = edges[one]! + shift * 1e-3;
      size[two] = 2 * panel + ((edges[one]! - 2 * panel) * (edges[two]! - 2 * panel)) / (size[one]! - 2 * panel);
      for (const near of turned) yield cellOf(variant, size, near);
    }
  }
}

/**
 * The cells of other shapes that are as large as a brief allows, with the last number of a box, and of parts one unit larger or
 * smaller. With each comes what its last number would be at the acoustic values of the box.
 */
function* cellsOfSameSize(box: Box, allowed: number): Generator<readonly [cell: Cell, last: number]> {
  const turned = turnedOf(box).map((near) => cellOf(box.variant, box.edges, near));
  const own = turned[0] as Cell;
  const last = own.length - 1;
  for (let one = 0; one < 3; one++) {
    const two = (one + 1) % 3;
    for (const shift of SHIFTS) {
      const size = own.slice(0, 3);
      size[one] = own[one]! + shift;
      size[two] = Math.floor((allowed * WHOLE) / (size[one]! * own[3 - one - two]!) + 1e-9);
      for (const near of turned) yield [[...size, ...near.slice(3, last), own[last]!], near[last]!];
    }
  }
}

/**
 * The cheapest box among a box and those of about the same sound in other shapes. A walk moves one or two numbers at a time: it
 * does not find that a vent 1 mm narrower, which is some 15 mm shorter at the same tuning, has room in a box that is flatter and
 * smaller. Where the sound only just meets a limit, whole units do not keep it. The last number of a cell, such as the length
 * of the vent, is therefore moved as well, as long as that pays.
 *
 * A box that is as large as the brief allows cannot keep its air in a flatter shape, which takes more wood. There the outer volume
 * is kept instead, and the last number is sought between that of the box and the one that would keep its tuning: a wider vent
 * gains more than the somewhat higher tuning costs.
 */
export function cheapestOfSameSound(
  box: Box,
  cost: Cost,
  { priceAt, standingAt, lower, upper }: ReturnType<typeof compileBox>,
  panel: number,
  allowed: number,
): Box {
  let best = box;
  let least = cost.of(box.excess, box.criteria);
  const price = (cell: Cell): number => {
    if (!cell.every((whole, i) => whole >= lower[i]! && whole <= upper[i]!)) return Infinity;
    const price = priceAt(cell, cost, least);
    if (price >= least) return price;
    const found = standingAt(cell);
    if (found === undefined) return Infinity;
    best = found;
    least = price;
    return price;
  };
  const last = lower.length - 1;
  const moved = (cell: Cell, by: number): Cell => cell.map((whole, i) => (i === last ? whole + by : whole));
  function run(cell: Cell): void {
    const start = price(cell);
    if (start > least + NEAR && !(start > MISSING && start < MISSING + NEAR)) return;
    for (const way of [-1, 1]) {
      let before = start;
      for (let n = 1; n <= LONGEST_RUN; n++) {
        const next = price(moved(cell, n * way));
        if (!(next < before)) break;
        before = next;
      }
    }
  }
  function approach(cell: Cell, to: number): void {
    let at = cell;
    let before = price(cell);
    if (before === Infinity) return;
    for (let step = to - cell[last]!; step !== 0; step = Math.trunc(step / 2)) {
      const next = price(moved(at, step));
      if (!(next < before)) continue;
      at = moved(at, step);
      before = next;
    }
  }
  for (let from: Box | undefined; from !== best; ) {
    from = best;
    for (const cell of cellsOfSameSound(from, panel)) run(cell);
    if (last < 3 || from.criteria.volume < FULL * allowed) continue;
    for (const [cell, to] of cellsOfSameSize(from, allowed)) approach(cell, to);
  }
  return best;
}
