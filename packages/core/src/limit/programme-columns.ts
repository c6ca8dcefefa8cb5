import type { System } from '../enclosure/index.js';
import { sweptColumns } from '../response/compile.js';
import { compiledSystem } from '../response/index.js';
import { levelOfFlow, REFERENCE_PRESSURE } from '../response/level.js';
import { atRise, COIL, coilOf, warmingOf, withCoil } from './hot-coil.js';
import type { Programme } from './programme.js';
import type { ThermalModel } from './thermal-model.js';

/** A system that plays a programme of 1 V rms with coils that have risen to (1 + rise) Re. */
export interface ProgrammeAt {
  /** Rms of a probe over the whole programme; of its integral over time where that is asked for. */
  readonly rms: (place: number, integrated?: boolean) => number;
  /** Magnitude of a probe at the i-th frequency, per volt there. */
  readonly size: (place: number, i: number) => number;
}

export interface ProgrammeColumns {
  readonly probes: readonly string[];
  readonly Re: number;
  readonly count: number;
  readonly at: (rise: number) => ProgrammeAt;
  /** The squared drive, V², at which a model settles at a rise above zero. */
  readonly squareOfDrive: (rise: number, heat: ThermalModel) => number;
  /** The rise that the heat of a cold coil would cause: near the true one where that is small. */
  readonly riseOfCold: (drive: number, heat: ThermalModel) => number;
  /** Level of the whole programme at a rise, per volt of it, dB. */
  readonly level: (rise: number) => number;
}

/** Sweeps a system over the frequencies of a programme. One rise of the coils holds for all of them; none where they do not warm up. */
export function programmeColumns(
  system: System,
  { frequencies, share }: Programme,
  { warms }: { readonly warms: boolean },
): ProgrammeColumns {
  const { Re, count } = warms ? coilOf(system) : { Re: 1, count: 1 };
  const sides = warms ? [withCoil(system, Re), withCoil(system, 2 * Re)] : [system];
  const [cold, hot = cold] = sides.map((one) => {
    const network = compiledSystem(one);
    return { probes: network.probes, columns: sweptColumns(network, frequencies) };
  }) as [Swept, Swept?];
  const { probes } = cold;
  const [coil, flow] = [probes.indexOf(warms ? COIL : 'current'), probes.indexOf('radiatedFlow')];
  const at = (rise: number): ProgrammeAt => {
    const points = Array.from(frequencies, (_, i) => atRise(cold.columns, hot.columns, coil, i, rise));
    const size = (place: number, i: number) => Math.hypot(...points[i]!.probe(place));
    const sum = (of: (i: number) => number) =>
      Math.sqrt(share.reduce((total, part, i) => total + part * of(i) ** 2, 0));
    const rms = (place: number, integrated = false) =>
      sum((i) => size(place, i) / (integrated ? 2 * Math.PI * frequencies[i]! : 1));
    return { rms, size };
  };
  const squareOfDrive = (rise: number, heat: ThermalModel) =>
    rise / ((1 + rise) * warmingOf(heat, Re, count) * at(rise).rms(coil) ** 2);
  const riseOfCold = (drive: number, heat: ThermalModel) => {
    const rise = warmingOf(heat, Re, count) * (drive * at(0).rms(coil)) ** 2;
    return Math.min(Math.max(rise, 1e-300), 1);
  };
  const level = (rise: number) => {
    const { size } = at(rise);
    const mean = share.reduce((total, part, i) => total + part * (size(flow, i) * frequencies[i]!) ** 2, 0);
    return levelOfFlow(Math.sqrt(mean), system.air.density / REFERENCE_PRESSURE);
  };
  return { probes, Re, count, at, squareOfDrive, riseOfCold, level };
}

interface Swept {
  readonly probes: readonly string[];
  readonly columns: ReturnType<typeof sweptColumns>;
}
