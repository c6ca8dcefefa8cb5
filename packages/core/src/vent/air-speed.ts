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
  /** How many vents share the flow, 1 to 1000; default 1. */
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
 * Peak air speed at the narrowest section, mean over the section.
 *
 * $$ u = \frac{U}{n S} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $U$ | `flowPeak` | m³/s | peak volume flow of all vents |
 * | $S$ | `diameter` | m² | cross-section of one vent |
 * | $n$ | `count` | 1 | number of vents |
 *
 * @validity a vent short against the wavelength, so that the flow is one along it; speed small against that of sound.
 * @neglects the profile over the section: in the middle the air is faster when a jet forms.
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
 * Rms air speed at the narrowest section, mean over the section.
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

/** A limit of the air speed that people go by. */
export interface AirSpeedCustom {
  readonly airSpeedPeak: AirSpeedPeak;
  readonly words: string;
}

/**
 * Limits of the peak air speed as they are handed down: common practice, not a prediction. Below them a vent with sharp
 * edges can still be heard, above them one with well rounded ends may stay quiet.
 */
export const airSpeedCustoms = {
  /** For little compression and distortion. */
  strict: { airSpeedPeak: si('airSpeedPeak', 10), words: 'common practice: 10 m/s' },
  /** About 5 % of the speed of sound. */
  usual: { airSpeedPeak: si('airSpeedPeak', 17), words: 'common practice: 17 m/s, 5 % of the speed of sound' },
} as const satisfies Readonly<Record<string, AirSpeedCustom>>;
