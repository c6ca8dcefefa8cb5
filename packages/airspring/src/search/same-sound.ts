import { type Box, type Cell, cellOf, type compileBox } from './box.js';
import type { Cost } from './cost.js';

/** By how many millimetres one edge of a pair is moved. The other one then keeps the air. */
const SHIFTS = [0, 1, -1, 2, -2, 4, -4, 8, -8, 16, -16, 32, -32, 48, -48];
/** By how many units the size of a part is changed. */
const TURNS = [0, 1, -1];
/** How many units of the last axis are tried from a cell, in each direction. */
const LONGEST_RUN = 7;
/** How much dearer than the box a cell may be, in points, or how much it may cost beyond one that misses nothing. */
const NEAR = 0.1;
const MISSING = 1e3;

/** The cells of other shapes and of parts one unit larger or smaller, with about the air and the acoustic values of a box. */
function* cellsOfSameSound({ variant, edges, point }: Box, panel: number): Generator<Cell> {
  const { acoustic, geometric } = variant;
  const turned = [
    point,
    ...geometric.flatMap(({ unit }, axis) =>
      TURNS.slice(1).map((turn) =>
        point.map((value, i) => (i === 1 + acoustic.length + axis ? value + turn * unit : value)),
      ),
    ),
  ];
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
 * The cheapest box among a box and those of about the same sound in other shapes. A walk moves one or two numbers at a time: it
 * does not find that a vent 1 mm narrower, which is some 15 mm shorter at the same tuning, has room in a box that is flatter and
 * smaller. Where the sound only just meets a limit, whole units do not keep it. The last number of a cell, such as the length
 * of the vent, is therefore moved as well, as long as that pays.
 */
export function cheapestOfSameSound(
  box: Box,
  cost: Cost,
  { priceAt, boxAt, stands, lower, upper }: ReturnType<typeof compileBox>,
  panel: number,
): Box {
  let best = box;
  let least = cost.of(box.excess, box.criteria);
  const price = (cell: Cell): number => {
    if (!cell.every((whole, i) => whole >= lower[i]! && whole <= upper[i]!)) return Infinity;
    const price = priceAt(cell, cost, least);
    if (price >= least) return price;
    const found = boxAt(cell);
    if (found === undefined || !stands(found)) return Infinity;
    best = found;
    least = price;
    return price;
  };
  const last = lower.length - 1;
  for (let from: Box | undefined; from !== best; ) {
    from = best;
    for (const cell of cellsOfSameSound(from, panel)) {
      const start = price(cell);
      if (start > least + NEAR && !(start > MISSING && start < MISSING + NEAR)) continue;
      for (const way of [-1, 1]) {
        let before = start;
        for (let n = 1; n <= LONGEST_RUN; n++) {
          const next = price(cell.map((whole, i) => (i === last ? whole + n * way : whole)));
          if (!(next < before)) break;
          before = next;
        }
      }
    }
  }
  return best;
}
