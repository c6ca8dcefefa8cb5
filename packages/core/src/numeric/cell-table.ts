/** Numbers by cell of a lattice. */
export interface CellTable {
  /** The number of a cell, `undefined` where none was put in. */
  readonly get: (cell: readonly number[]) => number | undefined;
  /** Puts in the number of a cell that has none yet. */
  readonly put: (cell: readonly number[], value: number) => void;
  readonly count: () => number;
}

const SMALLEST = 1024;

/** A table of cells in flat columns. A text as the key of each cell would take longer to make than many costs take to work out. */
export function cellTable(axes: number): CellTable {
  let count = 0;
  let mask = SMALLEST - 1;
  let cells = new Float64Array(SMALLEST * axes);
  let values = new Float64Array(SMALLEST);
  let used = new Uint8Array(SMALLEST);

  /** Where a cell stands, or would stand. */
  function placeOf(cell: ArrayLike<number>, from: number): number {
    let hash = 0;
    for (let axis = 0; axis < axes; axis++) hash = Math.imul(hash ^ cell[from + axis]!, 0x9e3779b1) ^ (hash >>> 13);
    for (let place = (hash ^ (hash >>> 15)) & mask; ; place = (place + 1) & mask) {
      if (used[place] === 0) return place;
      let axis = 0;
      while (axis < axes && cells[place * axes + axis] === cell[from + axis]) axis++;
      if (axis === axes) return place;
    }
  }

  function write(cell: ArrayLike<number>, from: number, value: number): void {
    const place = placeOf(cell, from);
    for (let axis = 0; axis < axes; axis++) cells[place * axes + axis] = cell[from + axis]!;
    values[place] = value;
    used[place] = 1;
  }

  function grow(): void {
    const [oldCells, oldValues, oldUsed] = [cells, values, used];
    const size = 4 * oldUsed.length;
    mask = size - 1;
    cells = new Float64Array(size * axes);
    values = new Float64Array(size);
    used = new Uint8Array(size);
    for (let place = 0; place < oldUsed.length; place++) {
      if (oldUsed[place] === 1) write(oldCells, place * axes, oldValues[place]!);
    }
  }

  return {
    get: (cell) => {
      const place = placeOf(cell, 0);
      return used[place] === 1 ? values[place] : undefined;
    },
    put: (cell, value) => {
      if (2 * count >= used.length) grow();
      write(cell, 0, value);
      count++;
    },
    count: () => count,
  };
}
