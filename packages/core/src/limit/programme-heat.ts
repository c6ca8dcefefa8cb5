import type { System } from '../enclosure/index.js';
import { InputError, type Warning } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';
import {
  type FrequencyGrid,
  given,
  type Level,
  type Power,
  positive,
  readFields,
  si,
  type TemperatureDifference,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { type ProgrammeInput, programme } from './programme.js';
import { programmeColumns } from './programme-columns.js';
import { heatField, riseWarnings, type ThermalModelInput, thermalModel } from './thermal-model.js';

/** How hot a coil becomes while a programme plays, and what that costs. */
export interface ProgrammeHeat {
  /** Rise of the coil above the air once it has settled. */
  readonly coilRise: TemperatureDifference;
  readonly magnetRise: TemperatureDifference;
  /** Hot resistance over the cold one. */
  readonly resistanceRatio: number;
  /** Mean heat in each coil. */
  readonly power: Power;
  /** Level of the whole programme, rms, at 1 m in half space. */
  readonly levelHalfSpace: Level;
  readonly frequencies: FrequencyGrid;
  /** How much lower the level is at each frequency than with a cold coil, dB. */
  readonly compression: Float64Array;
  /** `outside-validity` where the coil is beyond what the model can tell. */
  readonly warnings: readonly Warning[];
}

/**
 * How hot the coil becomes while a programme plays, and by how much the level falls at each frequency. One temperature holds for all
 * frequencies, since the coil is slower than the programme.
 *
 * $$ \theta_v = (R_v + R_m)\,\frac{E^2 R}{n}\sum_j s_j\,|Y_j(R)|^2,\qquad R = R_e\,(1 + \alpha\theta_v) $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\theta_v$ | `coilRise` | K | rise of the coil above the air |
 * | $E$ | `driveVoltageRms` | V | rms voltage of the programme |
 * | $s_j$ | `programme.share` | 1 | share of its mean square at a frequency |
 * | $Y_j$ | | S | current in the coil per volt |
 * | $n$ | | 1 | coils that share the power |
 *
 * @validity a programme of many minutes whose loudness changes faster than the coil warms up; one driver, or several alike
 * @neglects what `thermalModel` neglects; loud passages longer than the time constant of the coil; the loss of the vent
 * @returns temperatures, level, a column of compression, and warnings
 * @throws InputError those of `programme`, `thermalModel` and `respond`; `inconsistent` for a system with several kinds of drivers
 * @source button1992 power compression by the rise of Re; own (the sum over a spectrum)
 * @example programmeHeat(box, { programme: pink, driveVoltageRms: '12 V', heat: model }).coilRise
 */
export function programmeHeat(
  system: System,
  options: {
    readonly programme: ProgrammeInput;
    readonly driveVoltageRms: VoltageRmsInput;
    readonly heat: ThermalModelInput;
  },
): ProgrammeHeat {
  const read = readFields('options', options, {
    programme: given<ProgrammeInput>(),
    driveVoltageRms: positive('voltageRms'),
    heat: heatField,
  });
  const { driveVoltageRms: drive } = read;
  const played = programme(read.programme);
  const heat = thermalModel(read.heat);
  const { probes, Re, count, at, squareOfDrive, riseOfCold, level } = programmeColumns(system, played, { warms: true });
  const excess = (rise: number) => (rise === 0 ? -1 : squareOfDrive(rise, heat) / drive ** 2 - 1);
  // The heat of a voltage is greatest at some resistance, so the rise has an end.
  let high = riseOfCold(drive, heat);
  for (let k = 0; !(excess(high) >= 0); k++, high *= 4) if (k === 100) throw noRise(drive);
  const found = bracketedRoot(excess, 0, high, 1e-14 * high);
  if (!found.ok) throw noRise(drive);
  const rise = found.x;
  const coilRise = rise / heat.coefficient;
  const total = heat.coilToMagnet + heat.magnetToAir;
  const flow = probes.indexOf('radiatedFlow');
  const [cold, hot] = [at(0), at(rise)];
  const compression = Float64Array.from(
    played.frequencies,
    (_, i) => 20 * Math.log10(cold.size(flow, i) / hot.size(flow, i)),
  );
  return {
    coilRise: si('temperatureDifference', coilRise),
    magnetRise: si('temperatureDifference', (coilRise * heat.magnetToAir) / total),
    resistanceRatio: 1 + rise,
    power: si('power', (drive ** 2 * Re * (1 + rise) * hot.rms(probes.indexOf('coilCurrent')) ** 2) / count),
    levelHalfSpace: si('level', level(rise) + 20 * Math.log10(drive)),
    frequencies: played.frequencies,
    compression,
    warnings: riseWarnings(coilRise),
  };
}

const noRise = (drive: number): InputError => {
  const expected = `a system whose coils settle at ${drive} V`;
  const remedy = 'Lower the drive, or check the thermal resistances.';
  return new InputError([{ code: 'inconsistent', path: 'options.driveVoltageRms', got: drive, expected, remedy }]);
};
