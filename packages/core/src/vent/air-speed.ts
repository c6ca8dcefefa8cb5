import {
  type AirSpeedPeak,
  type AirSpeedRms,
  count,
  type LengthInput,
  notNegative,
  optional,
  positive,
  readFields,
  si,
  type VolumeFlowInput,
} from '../quantity/index.js';

interface Section {
  /** Inner diameter where the vent is narrowest. */
  readonly diameter: LengthInput;
  /** Number of vents that share the flow, 1 to 1000; default 1. */
  readonly count?: number | undefined;
}

export interface PeakFlowInput extends Section {
  /** Peak volume flow through all vents together. */
  readonly flowPeak: VolumeFlowInput;
}

export interface RmsFlowInput extends Section {
  /** Rms volume flow through all vents together. */
  readonly flowRms: VolumeFlowInput;
}

const section = { diameter: positive('length'), count: optional(count(1000)) };
const area = (diameter: number, vents = 1) => vents * Math.PI * (diameter / 2) ** 2;

/**
 * Peak air speed at the narrowest section, averaged over the section.
 *
 * $$ u = \frac{U}{n S} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `flowPeak` | m³/s | peak volume flow of all vents |
 * | $S$ | `diameter` | m² | cross-section of one vent |
 * | $n$ | `count` | 1 | number of vents |
 *
 * @validity a vent that is short compared with the wavelength, so that the flow is the same along it; air speeds far below the
 * speed of sound.
 * @neglects the velocity profile over the section; the air is faster in the middle when a jet forms.
 * @returns m/s
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source morse1968 kinematics
 * @example airSpeedPeak({ diameter: '75 mm', flowPeak: '60 L/s' }) // 13.6 m/s
 */
export function airSpeedPeak(input: PeakFlowInput): AirSpeedPeak {
  const fields = readFields('flow', input, { ...section, flowPeak: notNegative('volumeFlow') });
  return si('airSpeedPeak', fields.flowPeak / area(fields.diameter, fields.count));
}

/**
 * Air speed at the narrowest section, rms in time, averaged over the section.
 *
 * $$ u = \frac{U}{n S} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `flowRms` | m³/s | rms volume flow of all vents |
 * | $S$ | `diameter` | m² | cross-section of one vent |
 * | $n$ | `count` | 1 | number of vents |
 *
 * @validity as {@link airSpeedPeak}.
 * @neglects as {@link airSpeedPeak}.
 * @returns m/s
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`
 * @source morse1968 kinematics
 * @example airSpeedRms({ diameter: '75 mm', flowRms: '60 L/s' }) // 13.6 m/s
 */
export function airSpeedRms(input: RmsFlowInput): AirSpeedRms {
  const fields = readFields('flow', input, { ...section, flowRms: notNegative('volumeFlow') });
  return si('airSpeedRms', fields.flowRms / area(fields.diameter, fields.count));
}

/** A customary limit of the air speed. */
export interface AirSpeedCustom {
  readonly airSpeedPeak: AirSpeedPeak;
  readonly words: string;
}

/**
 * Customary limits of the peak air speed: common practice, not a prediction. Below them a vent with sharp edges can still be
 * audible, and above them a vent with well-rounded ends may stay quiet.
 */
export const airSpeedCustoms = {
  /** Keeps compression and distortion low. */
  strict: { airSpeedPeak: si('airSpeedPeak', 10), words: 'common practice: 10 m/s' },
  /** About 5 % of the speed of sound. */
  usual: { airSpeedPeak: si('airSpeedPeak', 17), words: 'common practice: 17 m/s, 5 % of the speed of sound' },
} as const satisfies Readonly<Record<string, AirSpeedCustom>>;
