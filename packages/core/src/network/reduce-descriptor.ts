import { type Impossible, impossible } from '../fault/index.js';

/** G z + C ż = b u, by rows. */
export interface Descriptor {
  readonly size: number;
  readonly G: Float64Array;
  readonly C: Float64Array;
  readonly b: Float64Array;
}

/** ẋ = A x + B u, and each of z as a sum of states and drive. */
export interface Reduced {
  readonly ok: true;
  readonly size: number;
  readonly A: Float64Array;
  readonly B: Float64Array;
  /** Row by row, of each of z. */
  readonly states: Float64Array;
  readonly drive: Float64Array;
}

/** An equation: a row over the slopes of z, over z, and over the drive. */
interface Equation {
  readonly slopes: Float64Array;
  readonly own: Float64Array;
  drive: number;
}

/** When a row shrinks by more than this, the rest is rounding error. */
const ROUNDING = 1e-11;

/**
 * Reduces a linear descriptor system to states. Rows are combined until those that still hold slopes are independent; the
 * other rows are solved for the unknowns that are no states. A row without slopes that holds only states is differentiated,
 * since it ties states together, such as two masses that move as one.
 *
 * @source brenan1996 ch. 2
 */
export function reduceDescriptor(descriptor: Descriptor): Reduced | Impossible {
  const { size, toOwn, toSlopes } = scaled(descriptor);
  const open = equationsOf(descriptor, toOwn, toSlopes);
  /** Unknowns that are no states, each with the row that gives its value. */
  const algebraic: { readonly column: number; readonly row: Equation }[] = [];
  /** States, each with the row that gives its slope. */
  const dynamic: { readonly column: number; readonly row: Equation }[] = [];
  const solved = new Set<number>();
  const changes: Change[] = [];

  for (let rounds = 0; open.length > 0; rounds++) {
    if (rounds > 4 * size) return impossible('undamped', 'the equations of the network contradict each other');
    // A slope first: the largest of all rows.
    const slope = largest(
      open,
      ({ slopes }) => slopes,
      dynamic.map(({ column }) => column),
    );
    if (slope !== undefined) {
      const row = open.splice(slope.row, 1)[0] as Equation;
      for (const other of [...open, ...dynamic.map((one) => one.row)]) removeSlope(other, row, slope.column);
      dynamic.push({ column: slope.column, row });
      changes.push(joined(row, slope.column, [...open, ...[...dynamic, ...algebraic].map((one) => one.row)]));
      continue;
    }
    // No row left has a slope: solve one for an unknown that is no state, else it ties states together.
    const states = dynamic.map(({ column }) => column);
    const value = largest(open, ({ own }) => own, [...states, ...solved]);
    if (value !== undefined) {
      const row = open.splice(value.row, 1)[0] as Equation;
      for (const other of [...open, ...dynamic.map((one) => one.row), ...algebraic.map((one) => one.row)]) {
        removeOwn(other, row, value.column);
      }
      algebraic.push({ column: value.column, row });
      solved.add(value.column);
      continue;
    }
    const row = open.shift() as Equation;
    const tied = largest([row], ({ own }) => own, []);
    if (tied === undefined) {
      if (row.drive !== 0)
        return impossible('jumps', 'the drive contradicts itself: it is held at two different values');
      return impossible(
        'undamped',
        'one equation follows from the others, so that a node or a loop has no definite value',
      );
    }
    if (row.drive !== 0) {
      return impossible(
        'jumps',
        'a state would jump with the drive; put a resistance between the source and that state',
      );
    }
    // The state is told by others: its own equation is free again, with the slopes of the others in it.
    const at = dynamic.findIndex(({ column }) => column === tied.column);
    const [freed] = dynamic.splice(at, 1);
    const slopes = { slopes: row.own.slice(), own: new Float64Array(size), drive: 0 };
    const kept = (freed as (typeof dynamic)[number]).row;
    // In the freed row the slope of the tied state is that of the others.
    removeSlope(kept, slopes, tied.column);
    for (const other of [...open, kept, ...dynamic.map((one) => one.row), ...algebraic.map((one) => one.row)]) {
      removeOwn(other, row, tied.column);
    }
    for (const other of dynamic) removeSlope(other.row, slopes, tied.column);
    algebraic.push({ column: tied.column, row });
    solved.add(tied.column);
    open.push(kept);
    // Slopes of states that have equations of their own already are taken out again.
    for (const { column, row: own } of dynamic) removeSlope(kept, own, column);
  }
  return assembled(size, dynamic, algebraic, changes, toOwn, toSlopes);
}

/** A state that is an unknown and a sum of others, such as the pressure across an air spring between two nodes. */
interface Change {
  readonly column: number;
  readonly terms: readonly (readonly [column: number, factor: number])[];
}

/** Makes one state of all the slopes in a row: the unknown of its column is that state less the sum of the others. */
function joined({ slopes }: Equation, column: number, rows: readonly Equation[]): Change {
  const lead = slopes[column]!;
  const terms = Array.from(slopes, (slope, k) => [k, slope / lead] as const).filter(
    ([k, f]) => k !== column && f !== 0,
  );
  for (const row of rows) {
    for (const part of [row.slopes, row.own]) {
      const own = part[column]!;
      for (const [k, factor] of terms) part[k] = difference(part[k]!, own * factor);
    }
  }
  return { column, terms };
}

/** Columns in units in which their entries are alike, and time in units of 1/(2π·100 Hz): pivots are compared. */
function scaled({ size, G, C }: Descriptor) {
  const toSlopes = 2 * Math.PI * 100;
  const toOwn = new Float64Array(size).fill(1);
  for (let round = 0; round < 4; round++) {
    const rows = Float64Array.from({ length: size }, (_, row) => {
      let most = 0;
      for (let k = 0; k < size; k++) {
        const at = row * size + k;
        most = Math.max(most, (Math.abs(G[at]!) + toSlopes * Math.abs(C[at]!)) * toOwn[k]!);
      }
      return most > 0 ? 1 / most : 1;
    });
    for (let k = 0; k < size; k++) {
      let most = 0;
      for (let row = 0; row < size; row++) {
        const at = row * size + k;
        most = Math.max(most, (Math.abs(G[at]!) + toSlopes * Math.abs(C[at]!)) * rows[row]!);
      }
      if (most > 0) toOwn[k] = 1 / most;
    }
  }
  return { size, toOwn, toSlopes };
}

function equationsOf({ size, G, C, b }: Descriptor, toOwn: Float64Array, toSlopes: number): Equation[] {
  return Array.from({ length: size }, (_, row) => {
    const part = (matrix: Float64Array, by: number) =>
      Float64Array.from({ length: size }, (_, k) => matrix[row * size + k]! * by * toOwn[k]!);
    const [slopes, own] = [part(C, toSlopes), part(G, 1)];
    const most = Math.max(...slopes.map(Math.abs), ...own.map(Math.abs));
    const unit = most > 0 ? 1 / most : 1;
    return { slopes: slopes.map((x) => x * unit), own: own.map((x) => x * unit), drive: -b[row]! * unit };
  });
}

/** The largest entry of some rows, some columns left out; `undefined` where there is none. */
function largest(rows: readonly Equation[], of: (row: Equation) => Float64Array, without: readonly number[]) {
  let [best, at] = [0, undefined as { row: number; column: number } | undefined];
  rows.forEach((equation, row) => {
    of(equation).forEach((value, column) => {
      if (Math.abs(value) <= best || without.includes(column)) return;
      best = Math.abs(value);
      at = { row, column };
    });
  });
  return best > ROUNDING ? at : undefined;
}

/** a − b, or 0 where that is rounding. */
const difference = (a: number, b: number): number =>
  Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b)) ? 0 : a - b;

const removeSlope = (row: Equation, by: Equation, column: number) =>
  subtract(row, by, row.slopes[column]! / by.slopes[column]!);
const removeOwn = (row: Equation, by: Equation, column: number) =>
  subtract(row, by, row.own[column]! / by.own[column]!);

function subtract(row: Equation, by: Equation, factor: number): void {
  if (factor === 0) return;
  for (const [to, from] of [
    [row.slopes, by.slopes],
    [row.own, by.own],
  ] as const) {
    for (let k = 0; k < to.length; k++) {
      to[k] = difference(to[k]!, factor * from[k]!);
    }
  }
  row.drive -= factor * by.drive;
}

function assembled(
  length: number,
  dynamic: readonly { readonly column: number; readonly row: Equation }[],
  algebraic: readonly { readonly column: number; readonly row: Equation }[],
  changes: readonly Change[],
  toOwn: Float64Array,
  toSlopes: number,
): Reduced {
  const size = dynamic.length;
  const place = new Map(dynamic.map(({ column }, k) => [column, k]));
  const [A, B] = [new Float64Array(size * size), new Float64Array(size)];
  const [states, drive] = [new Float64Array(length * size), new Float64Array(length)];
  dynamic.forEach(({ column, row }, k) => {
    const unit = -toSlopes / row.slopes[column]!;
    for (const [other, m] of place) A[k * size + m] = unit * row.own[other]!;
    B[k] = unit * row.drive;
    states[column * size + k] = 1;
  });
  for (const { column, row } of algebraic) {
    const unit = -1 / row.own[column]!;
    for (const [other, m] of place) states[column * size + m] = unit * row.own[other]!;
    drive[column] = unit * row.drive;
  }
  for (const { column, terms } of [...changes].reverse()) {
    for (const [other, factor] of terms) {
      for (let m = 0; m < size; m++) {
        states[column * size + m]! -= factor * states[other * size + m]!;
      }
      drive[column]! -= factor * drive[other]!;
    }
  }
  for (let column = 0; column < length; column++) {
    const unit = toOwn[column]!;
    for (let m = 0; m < size; m++) states[column * size + m]! *= unit;
    drive[column]! *= unit;
  }
  return { ok: true, size, A, B, states, drive };
}
