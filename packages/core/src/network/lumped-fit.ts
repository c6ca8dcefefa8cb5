import { type Impossible, impossible } from '../fault/index.js';
import { complexColumn, logarithmic, nonNegativeLeastSquares } from '../numeric/index.js';
import { type Branch, branch, branchLaw, type Element, type Law, type Network, type Values } from './element.js';
import { isListed } from './equations.js';
import { fillLaw } from './law-column.js';
import { slotsOf, valuesOf } from './slots.js';

/** A lumped network that is like another one in a band. */
export interface LumpedFit {
  readonly ok: true;
  readonly network: Network;
  /** Greatest deviation of a fitted element in the band, of its own size there. */
  readonly greatestError: number;
}

/** Relaxations in a decade of frequency. */
const PER_DECADE = 3;
/** Frequencies in a decade at which it is fitted. */
const POINTS = 12;
/** How far beyond the band the relaxations reach. */
const BEYOND = 10;

/**
 * A lumped network in place of one with elements over frequency. Each of these becomes a chain of relaxations,
 *
 * $$ W(j\omega) \approx j\omega\left(a_0 + \sum_k \frac{a_k}{1 + j\omega\tau_k}\right), \quad a_k \ge 0 $$
 *
 * that is, a part that stores in series with pairs of one that stores and one that loses, side by side. $W$ is an impedance; for
 * a suspension it is velocity over force. The time constants $\tau_k$ are spread over the band and a decade beyond at both ends,
 * and the $a_k$ are fitted to the relative deviation. All parts are passive.
 *
 * @validity elements that say what they are `like`, in the band. The error is large for an element that no part of this sort
 * is, and it is returned
 * @neglects the deviation that it returns
 * @returns the network and its greatest error, or `not-lumped` with the element that has no such parts
 * @throws InputError for numbers that do not fit the topology
 * @source lawson1974 ch. 23 (non-negative least squares); gross1953 (retardation spectrum as a sum of relaxations)
 * @example lumpedFit(system.network, { from: 5, to: 5000 })
 */
export function lumpedFit(
  { topology, values: named }: Network,
  { from, to }: { readonly from: number; readonly to: number },
): LumpedFit | Impossible {
  const alien = topology.elements.find((one) => isListed(one) && !(one.kind === 'law' && one.like));
  if (alien !== undefined) {
    return impossible('not-lumped', `'${alien.name}' is given over frequency, and does not say which parts it is like`);
  }
  const slots = slotsOf(topology);
  const numbers = valuesOf(slots, named);
  const values: Record<string, number | readonly number[]> = { ...named };
  let greatestError = 0;
  const grid = between(from, to, POINTS);
  const elements = topology.elements.flatMap((element): readonly Element[] => {
    if (element.kind !== 'law') return [element];
    const column = complexColumn(grid.length);
    fillLaw(element, numbers, slots, grid, column);
    const { a, times, error } = relaxations(element, grid, column);
    greatestError = Math.max(greatestError, error);
    const { parts, numbers: own } = chained(element, a, times);
    delete values[element.name];
    Object.assign(values, own);
    return parts;
  });
  return { ok: true, network: { topology: { ...topology, elements }, values }, greatestError };
}

const between = (from: number, to: number, perDecade: number): Float64Array =>
  logarithmic(from, to, 2 + Math.ceil(perDecade * Math.log10(to / from)));

/** The weights of relaxations of which the sum is like an element, and how far it is off. */
function relaxations({ stands }: Law, grid: Float64Array, { re, im }: ReturnType<typeof complexColumn>) {
  const corners = between((2 * Math.PI * grid[0]!) / BEYOND, 2 * Math.PI * grid.at(-1)! * BEYOND, PER_DECADE);
  const times = [0, ...corners.map((w) => 1 / w)];
  const n = times.length;
  const rows = new Float64Array(2 * grid.length * n);
  const wanted = new Float64Array(2 * grid.length);
  grid.forEach((f, i) => {
    const w = 2 * Math.PI * f;
    const size = re[i]! ** 2 + im[i]! ** 2;
    // W/jω over its size, which leaves a number of size 1.
    const [x, y] = stands === 'impedance' ? [re[i]!, im[i]!] : [re[i]! / size, -im[i]! / size];
    const unit = Math.hypot(x, y);
    wanted[2 * i] = y / unit;
    wanted[2 * i + 1] = -x / unit;
    times.forEach((time, k) => {
      const share = w / (unit * (1 + (w * time) ** 2));
      rows[2 * i * n + k] = share;
      rows[(2 * i + 1) * n + k] = -share * w * time;
    });
  });
  const a = nonNegativeLeastSquares(n, rows, wanted);
  let error = 0;
  for (let i = 0; i < grid.length; i++) {
    const off = (row: number) => times.reduce((sum, _, k) => sum + rows[row * n + k]! * a[k]!, -wanted[row]!);
    error = Math.max(error, Math.hypot(off(2 * i), off(2 * i + 1)));
  }
  return { a, times, error };
}

/** The relaxations in series between the nodes of the element. */
function chained(law: Law, a: Float64Array, times: readonly number[]) {
  const [storing, losing] = law.like as NonNullable<Law['like']>;
  const used = [...a.keys()].filter((k) => a[k]! > 0);
  const numbers: Record<string, number> = {};
  const parts = used.flatMap((k, place): Branch[] => {
    const joint = (at: number) => `${law.name} ${at}`;
    const last = place === used.length - 1;
    const nodes = [place === 0 ? law.nodes[0] : joint(place), last ? law.nodes[1] : joint(place + 1)] as const;
    const inReference =
      law.stands === 'impedance' && law.inReference === false ? ({ inReference: false } as const) : {};
    const store = `${law.name} store ${k}`;
    numbers[store] = a[k]!;
    const stored = branch(storing, store, nodes, { stands: 'impedance', ...inReference });
    if (k === 0) return [stored];
    const loss = `${law.name} loss ${k}`;
    // The loss takes W = a/τ: as a resistance in Ω, or as its inverse.
    numbers[loss] = branchLaw[losing][0] === -1 ? a[k]! / times[k]! : times[k]! / a[k]!;
    return [stored, branch(losing, loss, nodes)];
  });
  return { parts, numbers: numbers as Values };
}
