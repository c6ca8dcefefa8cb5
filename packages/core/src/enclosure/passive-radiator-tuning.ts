import { type Air, readAir, standardAir } from '../air/index.js';
import { type PassiveRadiator, type PassiveRadiatorInput, passiveRadiatorField } from '../driver/index.js';
import { lumpedWarnings } from '../duct/resonance.js';
import { type Impossible, impossible, type Warning } from '../fault/index.js';
import {
  count,
  decimalText,
  type Frequency,
  type FrequencyInput,
  kinds,
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

/** Passive radiators that are alike and move alike, as people write them. */
export interface RadiatorsInput {
  readonly radiator: PassiveRadiatorInput;
  /** How many there are, 1 to 4; default 1. */
  readonly count?: number;
  /** Mass fixed to each, beyond its own; default none. */
  readonly addedMass?: MassInput;
}

/** The same as they were read, in SI units. */
export interface RadiatorsSpec {
  readonly radiator: PassiveRadiator;
  readonly count: number;
  readonly addedMass: Mass;
}

/** How {@link RadiatorsInput} is read. */
export const radiatorsShape = {
  radiator: passiveRadiatorField,
  count: optional(count(4)),
  addedMass: optional(notNegative('mass')),
};

/** Where the radiators resonate, with the air of the box and without it. */
export interface PassiveRadiatorTuning {
  /** With the air of the box: here the cone of the driver moves least. */
  readonly fb: Frequency;
  /** In free air, with the added mass: here the level has a notch. */
  readonly notch: Frequency;
  /** Compliance of the radiators over that of the air in the box: $(f_b/f_p)^2 - 1$. */
  readonly complianceRatio: number;
  readonly warnings: readonly Warning[];
}

/** Stiffness that one radiator sees: its suspension, and its share of the air. SI numbers, unchecked. */
const stiffness = ({ Sd, Cms }: PassiveRadiator, many: number, Cab: number): number => 1 / Cms + (many * Sd ** 2) / Cab;

/** $\omega_b$ of the lossless radiators with an air of compliance `Cab`, rad/s. SI numbers, unchecked. */
export const tunedAngularFrequency = ({ radiator, count, addedMass }: RadiatorsSpec, Cab: number): number =>
  Math.sqrt(stiffness(radiator, count, Cab) / (radiator.Mms + addedMass));

function tuningOf(radiators: RadiatorsSpec, netVolume: Volume, air: Air): PassiveRadiatorTuning {
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
  /** Air in the box, without what drivers, radiators and bracing take. */
  readonly netVolume: VolumeInput;
}

/**
 * Frequency to which passive radiators tune a box, and the notch below it.
 *
 * $$ f_b = \frac{1}{2\pi}\sqrt{\frac{1/C_{ms} + n S_d^2 \rho c^2/V}{M_{ms} + m}} = f_p\sqrt{1 + \delta},\quad
 *    f_p = \frac{1}{2\pi\sqrt{(M_{ms} + m)\,C_{ms}}},\quad \delta = \frac{n \rho c^2 S_d^2 C_{ms}}{V} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $n$ | `count` | 1 | radiators, alike |
 * | $m$ | `addedMass` | kg | mass fixed to each |
 * | $M_{ms}, C_{ms}, S_d$ | `radiator` | kg, m/N, m² | of one radiator |
 * | $f_p$ | `notch` | Hz | resonance of the radiators in free air |
 * | $\delta$ | `complianceRatio` | 1 | compliance of the radiators over that of the box |
 *
 * @validity $k_b V^{1/3}$ at most 0.5, else a warning `outside-validity`
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

export interface AddedMassInput extends Omit<PassiveRadiatorTuningInput, 'addedMass'> {
  /** The tuning that is wanted. */
  readonly fb: FrequencyInput;
}

/** The mass for a wanted tuning, and what it leads to. */
export interface AddedMass extends PassiveRadiatorTuning {
  readonly ok: true;
  /** To be fixed to each radiator. */
  readonly addedMass: Mass;
}

/**
 * Mass to fix to each passive radiator of a box for a wanted tuning.
 *
 * $$ m = \frac{1/C_{ms} + n S_d^2 \rho c^2/V}{(2\pi f_b)^2} - M_{ms} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $f_b$ | `fb` | Hz | wanted tuning |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $n$ | `count` | 1 | radiators, alike |
 * | $M_{ms}, C_{ms}, S_d$ | `radiator` | kg, m/N, m² | of one radiator |
 *
 * @validity as `passiveRadiatorTuning`; the suspension bears the mass, and a fixing that cannot come loose holds it
 * @neglects as `passiveRadiatorTuning`
 * @returns the mass, 0 below 0.1 mg, with its tuning; or why there is none: `tuning-too-high`, with the volume that would do, since mass only
 *   lowers a tuning; `mass-too-great`, beyond what the library accepts
 * @throws InputError `empty`, `unit`, `not-finite`, `not-positive`, `out-of-range`, `inconsistent`, `unknown-field`
 * @source small1974pr1 passive-radiator resonance and box tuning, solved for the mass
 * @example
 * const radiator = { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6 } as const;
 * addedMassForTuning({ netVolume: '45 L', radiator, fb: '27 Hz' }) // 45 g
 */
export function addedMassForTuning(input: AddedMassInput, air: Air = standardAir): AddedMass | Impossible {
  readAir(air);
  const { radiator, count: many } = radiatorsShape;
  const shape = { netVolume: positive('volume'), radiator, count: many, fb: positive('frequency') };
  const { fb, netVolume, count = 1, ...read } = readFields('box', input, shape);
  const square = (2 * Math.PI * fb) ** 2;
  const { Mms, Cms, Sd } = read.radiator;
  const moved = stiffness(read.radiator, count, boxCompliance(netVolume, 1, air)) / square;
  const added = moved - Mms;
  if (added < -1e-12 * Mms) {
    const bare = tuningOf({ ...read, count, addedMass: si('mass', 0) }, netVolume, air).fb;
    const volume = (count * Sd ** 2 * air.density * air.speedOfSound ** 2) / (Mms * square - 1 / Cms);
    return impossible(
      'tuning-too-high',
      `Without added mass the tuning is ${decimalText(bare, 4)} Hz, below the wanted ${decimalText(fb, 4)} Hz, and mass only lowers it. Without added mass a box of ${decimalText(1000 * volume, 3)} L is tuned to ${decimalText(fb, 4)} Hz.`,
    );
  }
  const [least, greatest] = kinds.mass.range;
  if (added > greatest) {
    const text = `A tuning of ${decimalText(fb, 4)} Hz takes ${decimalText(added, 3)} kg on each radiator; at most ${greatest} kg is accepted.`;
    return impossible('mass-too-great', text);
  }
  const addedMass = si('mass', added < least ? 0 : added);
  return { ok: true, addedMass, ...tuningOf({ ...read, count, addedMass }, netVolume, air) };
}
