import { type Air, readAir, standardAir } from '../air/index.js';
import { type PassiveRadiator, type PassiveRadiatorInput, passiveRadiatorField } from '../driver/index.js';
import { lumpedWarnings } from '../duct/resonance.js';
import type { Warning } from '../fault/index.js';
import {
  count,
  type Frequency,
  type Mass,
  type MassInput,
  notNegative,
  optional,
  positive,
  readFields,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { boxCompliance } from './box-air.js';

/** Equal passive radiators that move alike, as people write them. */
export interface RadiatorsInput {
  readonly radiator: PassiveRadiatorInput;
  /** Number of radiators, 1 to 4; default 1. */
  readonly count?: number;
  /** Mass added to each radiator; default none. */
  readonly addedMass?: MassInput;
}

/** The same after reading, in SI units. */
export interface RadiatorsSpec {
  readonly radiator: PassiveRadiator;
  readonly count: number;
  readonly addedMass: Mass;
}

/** The readers of the fields of {@link RadiatorsInput}. */
export const radiatorsShape = {
  radiator: passiveRadiatorField,
  count: optional(count(4)),
  addedMass: optional(notNegative('mass')),
};

/** Where the radiators resonate, with the air of the box and without it. */
export interface PassiveRadiatorTuning {
  /** Resonance with the air of the box; here the cone of the driver moves least. */
  readonly fb: Frequency;
  /** Resonance in free air with the added mass; here the level has a notch. */
  readonly notch: Frequency;
  /** Compliance of the radiators over that of the air in the box: $(f_b/f_p)^2 - 1$. */
  readonly complianceRatio: number;
  readonly warnings: readonly Warning[];
}

/** Stiffness that one radiator sees: its suspension, and its share of the air. SI numbers, unchecked. */
export const radiatorStiffness = ({ Sd, Cms }: PassiveRadiator, many: number, Cab: number): number =>
  1 / Cms + (many * Sd ** 2) / Cab;

/** $\omega_b$ of the lossless radiators with air of compliance `Cab`, rad/s. SI numbers, unchecked. */
export const tunedAngularFrequency = ({ radiator, count, addedMass }: RadiatorsSpec, Cab: number): number =>
  Math.sqrt(radiatorStiffness(radiator, count, Cab) / (radiator.Mms + addedMass));

/** The record of a tuning. SI numbers, unchecked. */
export function tuningOf(radiators: RadiatorsSpec, netVolume: Volume, air: Air): PassiveRadiatorTuning {
  const { radiator, count, addedMass } = radiators;
  const Cab = boxCompliance(netVolume, 1, air);
  const wb = tunedAngularFrequency(radiators, Cab);
  return {
    fb: si('frequency', wb / (2 * Math.PI)),
    notch: si('frequency', 1 / (2 * Math.PI * Math.sqrt((radiator.Mms + addedMass) * radiator.Cms))),
    complianceRatio: (count * radiator.Sd ** 2 * radiator.Cms) / Cab,
    warnings: lumpedWarnings(wb / air.speedOfSound, 0, netVolume),
  };
}

export interface PassiveRadiatorTuningInput extends RadiatorsInput {
  /** Volume of the air in the box, without what drivers, radiators and bracing take up. */
  readonly netVolume: VolumeInput;
}

/**
 * The frequency to which passive radiators tune a box, and the notch below it.
 *
 * $$ f_b = \frac{1}{2\pi}\sqrt{\frac{1/C_{ms} + n S_d^2 \rho c^2/V}{M_{ms} + m}} = f_p\sqrt{1 + \delta},\quad
 *    f_p = \frac{1}{2\pi\sqrt{(M_{ms} + m)\,C_{ms}}},\quad \delta = \frac{n \rho c^2 S_d^2 C_{ms}}{V} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $n$ | `count` | 1 | number of equal radiators |
 * | $m$ | `addedMass` | kg | mass fixed to each |
 * | $M_{ms}, C_{ms}, S_d$ | `radiator` | kg, m/N, m² | of one radiator |
 * | $f_p$ | `notch` | Hz | resonance of the radiators in free air |
 * | $\delta$ | `complianceRatio` | 1 | compliance of the radiators over that of the box |
 *
 * @validity $k_b V^{1/3}$ at most 0.5; above this there is a warning `outside-validity`
 * @neglects losses; the driver; the sag of a radiator that faces up or down; change of the air load with the box
 * @returns a tuning in SI units
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source small1974pr1 passive-radiator resonance and box tuning
 * @example
 * passiveRadiatorTuning({ netVolume: '45 L', radiator: { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6 } }).fb // 31.6 Hz
 */
export function passiveRadiatorTuning(
  input: PassiveRadiatorTuningInput,
  air: Air = standardAir,
): PassiveRadiatorTuning {
  readAir(air);
  const shape = { netVolume: positive('volume'), ...radiatorsShape };
  const { netVolume, radiator, count = 1, addedMass = 0 as Mass } = readFields('box', input, shape);
  return tuningOf({ radiator, count, addedMass }, netVolume, air);
}
