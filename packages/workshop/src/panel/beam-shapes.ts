import { eigenPairs, type Matrix, square } from './symmetric-eigen.js';

/** How an edge of a panel is held: it may turn, or it may not. */
export type EdgeHold = 'simple' | 'clamped';

/** A strip of a panel over a length of 1, from one edge to the other. */
interface Strip {
  readonly edges: readonly [EdgeHold, EdgeHold];
  /** Where lines across it cannot move. */
  readonly lines: readonly number[];
  /** Where bars lie across it, which bend with it. */
  readonly bars: readonly number[];
}

/** Shapes in which a strip is let bend, and their integrals over the strip: of products, of slopes and of curvatures. */
export interface BeamShapes {
  readonly count: number;
  readonly slopes: Matrix;
  readonly curvatures: Matrix;
  /** The shapes at each bar. */
  readonly atBars: readonly Float64Array[];
}

/** Parts of a strip: the cubics of ten are within 0.01 % of its first frequencies. */
const LEAST_PARTS = 10;

/** Where the parts of a strip meet: at each line and bar, and evenly between. */
function nodesOf(stops: readonly number[]): number[] {
  const ends = [0, ...[...new Set(stops)].sort((a, b) => a - b), 1];
  return ends.flatMap((to, i) => {
    if (i === 0) return [0];
    const from = ends[i - 1]!;
    const parts = Math.max(2, Math.round(LEAST_PARTS * (to - from)));
    return Array.from({ length: parts }, (_, k) => (k + 1 === parts ? to : from + ((to - from) * (k + 1)) / parts));
  });
}

/** Integrals of products, slopes and curvatures of the four cubics of a part: value and slope at either end. */
function partMatrices(l: number): readonly (readonly (readonly number[])[])[] {
  const l2 = l * l;
  const scaled = (by: number, rows: readonly (readonly number[])[]) => rows.map((row) => row.map((one) => one * by));
  return [
    scaled(l / 420, [
      [156, 22 * l, 54, -13 * l],
      [22 * l, 4 * l2, 13 * l, -3 * l2],
      [54, 13 * l, 156, -22 * l],
      [-13 * l, -3 * l2, -22 * l, 4 * l2],
    ]),
    scaled(1 / (30 * l), [
      [36, 3 * l, -36, 3 * l],
      [3 * l, 4 * l2, -3 * l, -l2],
      [-36, -3 * l, 36, -3 * l],
      [3 * l, -l2, -3 * l, 4 * l2],
    ]),
    scaled(1 / (l2 * l), [
      [12, 6 * l, -12, 6 * l],
      [6 * l, 4 * l2, -6 * l, 2 * l2],
      [-12, -6 * l, 12, -6 * l],
      [6 * l, 2 * l2, -6 * l, 4 * l2],
    ]),
  ];
}

/** The natural shapes of a strip, the slowest first, as values and slopes at all nodes. */
function naturalShapes(whole: readonly Matrix[], free: readonly number[], count: number): Float64Array[] {
  const reduced = (A: Matrix) => free.map((i) => Float64Array.from(free, (j) => A[i]![j]!));
  const pairs = eigenPairs(reduced(whole[2]!), reduced(whole[0]!)).slice(0, count);
  return pairs.map(({ vector }) => {
    const shape = new Float64Array(whole[0]!.length);
    free.forEach((i, k) => {
      shape[i] = vector[k]!;
    });
    return shape;
  });
}

const between = (A: Matrix, one: Float64Array, other: Float64Array): number => {
  let sum = 0;
  for (const [i, row] of A.entries()) {
    if (one[i] === 0) continue;
    let part = 0;
    for (let j = 0; j < row.length; j++) part += row[j]! * other[j]!;
    sum += one[i]! * part;
  }
  return sum;
};

/** Shapes that are left of a sum once those before it are taken out are new above this part of it. */
const NEW = 1e-5;

/**
 * Shapes of a strip, orthogonal to each other and of unit size: its natural ones and, where bars lie across it, those of a strip
 * whose bars cannot move as well, so that soft and stiff bars are both met.
 */
export function beamShapes({ edges, lines, bars }: Strip, count: number): BeamShapes {
  const nodes = nodesOf([...lines, ...bars]);
  const whole = [0, 1, 2].map(() => square(2 * nodes.length));
  for (let part = 0; part + 1 < nodes.length; part++) {
    for (const [kind, rows] of partMatrices(nodes[part + 1]! - nodes[part]!).entries()) {
      for (let i = 0; i < 4; i++)
        for (let j = 0; j < 4; j++) whole[kind]![2 * part + i]![2 * part + j]! += rows[i]![j]!;
    }
  }
  const last = nodes.length - 1;
  const freeWith = (held: readonly number[]) =>
    Array.from({ length: 2 * nodes.length }, (_, i) => i).filter((i) => {
      const node = i >> 1;
      if (node !== 0 && node !== last) return i % 2 === 1 || !held.includes(nodes[node]!);
      return i % 2 === 1 && edges[node === 0 ? 0 : 1] === 'simple';
    });
  const natural = naturalShapes(whole, freeWith(lines), count);
  const stiff = bars.length > 0 ? naturalShapes(whole, freeWith([...lines, ...bars]), count) : [];
  const shapes: Float64Array[] = [];
  for (const shape of [...natural, ...stiff]) {
    const rest = Float64Array.from(shape);
    for (const known of shapes) {
      const share = between(whole[0]!, known, rest);
      for (let i = 0; i < rest.length; i++) rest[i]! -= share * known[i]!;
    }
    const size = Math.sqrt(between(whole[0]!, rest, rest));
    if (size > NEW) shapes.push(rest.map((one) => one / size));
  }
  const integrals = (A: Matrix) => shapes.map((one) => Float64Array.from(shapes, (other) => between(A, one, other)));
  return {
    count: shapes.length,
    slopes: integrals(whole[1]!),
    curvatures: integrals(whole[2]!),
    atBars: bars.map((at) => Float64Array.from(shapes, (shape) => shape[2 * nodes.indexOf(at)]!)),
  };
}
