import { radiatedPower } from '../response/index.js';
import { columnsOf, type Tried } from './family-trial.js';
import { alike, type LawResult, tried } from './law.js';

const needed = ['radiatedFlow', 'coneVelocity', 'current', 'terminalVoltage'];
/** Hz: without radiation resistance the far field is an estimate, for sources small against the wavelength. */
const SMALL_SOURCE = 100;
/** By how much a probe may differ from a known one. */
const AGREEMENT = 1e-3;

/**
 * The probes that the response reads exist, and are numbers at every frequency. The terminals give out no power, and no more power
 * leaves as sound than enters (@source desoer1969, passive one-ports; rayleigh1896 sec. 302, far-field power into a half space).
 */
export function answerLaws<Spec, Input>({ trial, system, grid }: Tried<Spec, Input>): readonly LawResult[] {
  const extent = `${grid.length} frequencies`;
  /** Real power at the terminals for 1 V, W, and V·A. */
  const power = () => {
    const made = system();
    const { terminalVoltage, current, radiatedFlow } = columnsOf(made, grid);
    return { air: made.air, e: terminalVoltage, i: current, u: radiatedFlow };
  };
  return [
    tried('all probes exist', needed.join(', '), () => {
      const there = Object.keys(columnsOf(system(), grid.slice(0, 1)));
      const missing = needed.filter((name) => !there.some((probe) => probe === name || probe.startsWith(`${name} `)));
      return missing.length === 0 ? undefined : `no ${missing.join(', ')}`;
    }),
    tried('answers at every frequency', extent, () => {
      for (const [name, { re, im }] of Object.entries(columnsOf(system(), grid))) {
        const i = grid.findIndex((_, k) => !Number.isFinite(re[k]! + im[k]!));
        if (i >= 0) return `${name} is not a number at ${grid[i]} Hz`;
      }
      return undefined;
    }),
    tried('agrees with known values', `${trial.known?.length ?? 0} values`, () => {
      for (const { probe, frequency, perVolt } of trial.known ?? []) {
        const column = columnsOf(system(), Float64Array.of(frequency))[probe];
        const own = column === undefined ? Number.NaN : Math.hypot(column.re[0]!, column.im[0]!);
        if (!alike(own, perVolt, AGREEMENT)) return `${probe} is ${own} at ${frequency} Hz, but ${perVolt} is known`;
      }
      return undefined;
    }),
    tried('takes in power and gives out none', extent, () => {
      const { e, i } = power();
      if (e === undefined || i === undefined) return undefined;
      const at = grid.findIndex((_, k) => {
        const [a, b] = [e.re[k]! * i.re[k]!, e.im[k]! * i.im[k]!];
        return !(a + b >= -1e-9 * (Math.abs(a) + Math.abs(b)));
      });
      return at < 0 ? undefined : `the terminals give out power at ${grid[at]} Hz`;
    }),
    tried('radiates no more power than it takes in', `up to ${SMALL_SOURCE} Hz`, () => {
      const { e, i, u, air } = power();
      if (e === undefined || i === undefined || u === undefined) return undefined;
      const at = grid.findIndex((f, k) => {
        if (f > SMALL_SOURCE) return false;
        const taken = e.re[k]! * i.re[k]! + e.im[k]! * i.im[k]!;
        return !(radiatedPower(Math.hypot(u.re[k]!, u.im[k]!), f, air) <= taken * (1 + 1e-9));
      });
      return at < 0 ? undefined : `more power leaves as sound than enters at ${grid[at]} Hz`;
    }),
  ];
}
