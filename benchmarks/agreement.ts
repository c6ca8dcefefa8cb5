import {
  type CompiledTopology,
  compileNetwork,
  compilePlan,
  compilePolynomials,
  type Network,
  valuesOf,
} from '../packages/core/src/network/index.js';
import { type ComplexColumn, complexColumn } from '../packages/core/src/numeric/index.js';
import { type Columns, probeColumns, respond } from '../packages/core/src/response/index.js';
import { simdSweep } from '../packages/core/src/simd/index.js';
import { simulate } from '../tests/circuit/simulator.js';
import { DRIVE, frequencies, networkA, networkB, POINTS, system } from './box.js';
import { naiveA, naiveB } from './peers/naive.js';
import { ask, doubles, type Peer } from './peers/outside.js';

/** How far a peer is from ours, over all columns of a set. */
export interface Agreement {
  readonly peer: string;
  readonly set: 'A' | 'B';
  /** Worst deviation of the columns, delay apart: relative, of phases in rad. */
  readonly worst: number;
  readonly tolerance: number;
  /** Worst deviation of the group delay over its greatest value; a peer that differentiates numerically is allowed more. */
  readonly delay?: number;
  readonly delayTolerance?: number;
}

const grid = frequencies(POINTS);
const EXACT = 1e-9;

/** |a − b| over |a|, with a floor of a millionth of the greatest |a|: a null does not mislead. */
function worstComplex(a: ComplexColumn, b: ComplexColumn): number {
  const size = a.re.map((re, i) => Math.hypot(re, a.im[i] as number));
  const floor = 1e-6 * Math.max(...size);
  const off = (i: number) =>
    Math.hypot((a.re[i] as number) - (b.re[i] as number), (a.im[i] as number) - (b.im[i] as number));
  return Math.max(...size.map((s, i) => off(i) / (s + floor)));
}
const asComplex = (re: Float64Array): ComplexColumn => ({ re, im: re.map(() => 0) });
const turn = (a: number, b: number) => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

const swept = (network: Network): ComplexColumn[] => Object.values(probeColumns(compileNetwork(network), grid));
const oursA = swept(networkA);
const oursB = respond(system, grid, { driveVoltageRms: DRIVE as Columns['driveVoltageRms'] });

const setA = (peer: string, columns: readonly ComplexColumn[], tolerance = EXACT): Agreement => {
  if (columns.length !== oursA.length) throw new Error(`${peer}: ${columns.length} columns`);
  const worst = Math.max(...oursA.map((column, k) => worstComplex(column, columns[k] as ComplexColumn)));
  return { peer, set: 'A', worst, tolerance };
};

function setB(peer: string, columns: readonly ArrayLike<number>[], delayTolerance = EXACT): Agreement {
  const [level, phase, travel, speed, impedance, impedancePhase, delay] = columns.map((column) =>
    Float64Array.from(column),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
  const angles = (a: Float64Array, b: Float64Array) => Math.max(...a.map((x, i) => turn(x, b[i] as number)));
  const sizes = (a: Float64Array, b: Float64Array) => worstComplex(asComplex(a), asComplex(b));
  const ours = oursB.groupDelay;
  const greatest = Math.max(...ours.map(Math.abs));
  return {
    peer,
    set: 'B',
    worst: Math.max(
      sizes(oursB.levelHalfSpace, level),
      angles(oursB.phase, phase),
      sizes(oursB.displacementPeak, travel),
      sizes(oursB.airSpeedPeak as Float64Array, speed),
      sizes(oursB.impedance, impedance),
      angles(oursB.impedancePhase, impedancePhase),
    ),
    tolerance: EXACT,
    delay: Math.max(...ours.map((x, i) => Math.abs(x - (delay[i] as number)))) / greatest,
    delayTolerance,
  };
}

/** Pairs of columns, real and imaginary, one after the other. */
const paired = (flat: readonly Float64Array[]): ComplexColumn[] =>
  flat.flatMap((re, k) => (k % 2 === 0 ? [{ re, im: flat[k + 1] as Float64Array }] : []));

/** Peers in our own process: the elimination plan, the kernel in WebAssembly, and the naive form. */
export function agreementWithin(): Agreement[] {
  const sweptBy = ({ slots, probes, network }: CompiledTopology) => {
    const columns = probes.map(() => complexColumn(POINTS));
    network(valuesOf(slots, networkA.values)).sweep(grid, columns);
    return columns;
  };
  const polynomials = compilePolynomials(networkA.topology, simdSweep().sweepRows) as CompiledTopology;
  const points = naiveA(grid);
  const naive = (['flow', 'velocity', 'vent', 'current'] as const).map((name) => ({
    re: Float64Array.from(points, (point) => point[name].re),
    im: Float64Array.from(points, (point) => point[name].im),
  }));
  return [
    setA('elimination plan', sweptBy(compilePlan(networkA.topology))),
    setA('WebAssembly SIMD', sweptBy(polynomials), 0),
    setA('naive TypeScript', naive),
    setB('naive TypeScript', naiveB(grid), 1e-6),
  ];
}

/** C and numpy, as far as they are there. */
export function agreementOutside(peers: Readonly<Record<'c' | 'simd' | 'numpy', Peer>>): Agreement[] {
  const found: Agreement[] = [];
  for (const name of ['c', 'simd'] as const) {
    const peer = peers[name];
    if (!peer.ok) continue;
    found.push(setA(name, paired(doubles(ask(peer, ['check', 'A']), POINTS))));
    found.push(setA(`${name} in one pass`, paired(doubles(ask(peer, ['check', 'F']), POINTS))));
    found.push(setB(name, doubles(ask(peer, ['check', 'B']), POINTS)));
  }
  const { numpy } = peers;
  if (!numpy.ok) return found;
  for (const form of ['usual', 'algebra']) {
    const columns = JSON.parse(String(ask(numpy, ['check', form, 'A']))) as [number[], number[]][];
    found.push(
      setA(
        `numpy ${form}`,
        columns.map(([re, im]) => ({ re: Float64Array.from(re), im: Float64Array.from(im) })),
      ),
    );
    const real = JSON.parse(String(ask(numpy, ['check', form, 'B']))) as number[][];
    // Differences between neighbours of the grid are what one writes there: coarse, and cheaper than anything exact.
    found.push(setB(`numpy ${form}`, real, form === 'usual' ? 1e-3 : EXACT));
  }
  return found;
}

/** The box in the circuit simulator: set A, for as many frequencies. */
export async function simulated(): Promise<ComplexColumn[]> {
  const run = await simulate(networkB, grid[0] as number, 10 ** (1 + (POINTS - 1) / 250), POINTS);
  const read = (name: string, factor: number): ComplexColumn => {
    const column = run.get(name);
    if (column === undefined) throw new Error(`the simulator gave no ${name}`);
    return { re: column.re.map((x) => x * factor), im: column.im.map((x) => x * factor) };
  };
  const at = read('frequency', 1).re;
  const Cab = system.network.values.Cab as number;
  const [box, absorption] = [read('v(box)', 1), read('v(absorption)', 1)];
  const flow = complexColumn(at.length);
  at.forEach((f, i) => {
    const w = 2 * Math.PI * f * Cab;
    flow.re[i] = w * ((box.im[i] as number) - (absorption.im[i] as number));
    flow.im[i] = -w * ((box.re[i] as number) - (absorption.re[i] as number));
  });
  return [flow, read('v(cone)', 1), read('i(l_vent)', 1), read('i(v_drive)', -1)];
}

export const agreementWithSimulator = async (): Promise<Agreement> =>
  setA('circuit simulator', await simulated(), 1e-6);

/** Those that do not agree: nothing is timed that gives other numbers. */
export const disagreeing = (all: readonly Agreement[]): Agreement[] =>
  all.filter(({ worst, tolerance, delay = 0, delayTolerance = 0 }) => !(worst <= tolerance && delay <= delayTolerance));
