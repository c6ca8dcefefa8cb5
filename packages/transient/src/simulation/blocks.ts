import type { ThermalModel } from '@airspring/core/limit';
import { coilPort } from './coil-port.js';
import { inputsOf, solved } from './companion.js';
import { accountOf, storedEnergy } from './energy.js';
import { heatStep } from './heat.js';
import type { Nonlinear, Readout } from './instant.js';
import { type Motion, place } from './motion.js';
import type { BlockReport, NonlinearSimulation } from './nonlinear-simulation.js';
import type { Parts } from './parts.js';
import { compileStep } from './step.js';
import { tablesOf } from './tables.js';

/** How often a simulation steps, and what it does beside. */
interface Pace {
  /** s. */
  readonly interval: number;
  readonly oversampling: number;
  /** Of the decimation. */
  readonly weights: Float64Array;
  /** Of one coil, and how many share the power. */
  readonly heat: ThermalModel | undefined;
  readonly coils: number;
  readonly balance: boolean | undefined;
}

/** Runs a system block by block: steps between the samples of the drive, heat, decimation, and the report. */
export function runnerOf(parts: Parts, nonlinear: Nonlinear, readout: Readout, pace: Pace) {
  const { interval, oversampling, weights, heat, coils, balance } = pace;
  const { forceFactor, inductance, spring, losses } = nonlinear;
  const names = Object.keys(losses);
  const inputs = inputsOf(parts, names);
  const Re = parts.linear.find(({ name }) => name === 'Re')?.value ?? 0;
  const heats = heat && heatStep(heat, interval);
  const perKelvin = Re * (heat?.coefficient ?? 0);
  let added = 0;
  const account = balance
    ? accountOf(parts, inputs, solved(parts, inputs, interval, 'voltage'), interval, () => added)
    : undefined;
  const coil = coilPort({ Bl: parts.Bl, forceFactor, inductance: inductance && { Le: parts.Le, curve: inductance } });
  const forces = { coil, spring, stiffness: parts.stiffness, losses: Object.values(losses) };
  const step = compileStep(tablesOf(parts, names, interval), forces, account);
  const energy = storedEnergy(parts, inputs, nonlinear);
  const reach = Math.min(forceFactor.reach, inductance?.reach ?? Infinity, spring.reach);
  const taps = weights.length;
  const half = (taps - 1) / 2;

  /** One interval: the temperature is drawn on by half of its last change, which keeps the order of the step. */
  function advance(motion: Motion, drive: number): boolean {
    const { own } = motion;
    if (heats !== undefined) added = perKelvin * (1.5 * own[place.coil]! - 0.5 * own[place.coilBefore]!);
    const isSolved = step(motion, drive, added);
    if (heats !== undefined && isSolved) {
      const coil = own[place.coil]!;
      const magnet = own[place.magnet]!;
      const power = ((Re + added) * own[place.current]! ** 2) / coils;
      own[place.coilBefore] = coil;
      own[place.coil] = heats[0]! * coil + heats[1]! * magnet + heats[4]! * power;
      own[place.magnet] = heats[2]! * coil + heats[3]! * magnet + heats[5]! * power;
    }
    return isSolved;
  }

  return (outputs: number): Pick<NonlinearSimulation, 'start' | 'run' | 'energy'> => {
    const heardNow = Array.from({ length: outputs }, () => new Float64Array(1));
    const start = (): Motion => {
      const places = 1 + names.length;
      const [past, peaks] = [new Float64Array(4 * places), new Float64Array(places)];
      const heard = Array.from({ length: outputs }, () => new Float64Array(2 * taps));
      return {
        stores: new Float64Array(inputs.stores.length),
        past,
        peaks,
        own: new Float64Array(place.count),
        heard,
      };
    };
    /** Puts what is heard now into the filters, and fills a sample from them where one is due. */
    const hear = (motion: Motion, voltage: number, out: readonly Float64Array[], at: number, isDue: boolean) => {
      const { own, heard } = motion;
      readout(motion, voltage, perKelvin * own[place.coil]!, heardNow, 0);
      const next = own[place.heard]! === 0 ? taps - 1 : own[place.heard]! - 1;
      own[place.heard] = next;
      for (let r = 0; r < outputs; r++) {
        const kept = heard[r]!;
        kept[next] = kept[next + taps] = heardNow[r]![0]!;
        if (!isDue) continue;
        // The weights are the same from both ends.
        let sum = weights[half]! * kept[next + half]!;
        for (let k = 0; k < half; k++) sum += weights[k]! * (kept[next + k]! + kept[next + taps - 1 - k]!);
        out[r]![at] = sum;
      }
    };
    const run = (motion: Motion, drive: Float64Array, out: readonly Float64Array[]): BlockReport => {
      const { own } = motion;
      const [steps, halved] = [own[place.steps]!, own[place.halved]!];
      let [unsolved, farthest] = [0, 0];
      for (let n = 0; n < drive.length; n++) {
        const last = own[place.drive]!;
        // A sample that is not a finite number repeats the one before, and counts as a sample without a solution.
        const isNumber = Number.isFinite(drive[n]!);
        const to = isNumber ? drive[n]! : last;
        const rise = (to - last) / oversampling;
        let isSolved = isNumber;
        for (let k = 0; k < oversampling; k++) {
          if (!advance(motion, last + (k + 0.5) * rise)) isSolved = false;
          const x = Math.abs(own[place.displacement]!);
          if (x > farthest) farthest = x;
          if (taps > 1) hear(motion, last + (k + 1) * rise, out, n, k === oversampling - 1);
        }
        if (!isSolved) unsolved++;
        own[place.drive] = to;
        if (taps === 1) readout(motion, to, perKelvin * own[place.coil]!, out, n);
      }
      const done = { steps: own[place.steps]! - steps, halved: own[place.halved]! - halved };
      const sums = { given: own[place.given]!, lost: own[place.lost]!, stored: balance ? energy(motion) : 0 };
      return {
        ...{ ok: unsolved === 0, unsolved, ...done, farthest, beyondReach: farthest > reach },
        ...(balance && { balance: sums }),
      };
    };
    return { start, run, energy };
  };
}
