import { type Air, readAir, standardAir } from '../air/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { decimalText, type FrequencyInput, kinds, type Mass, positive, readFields, si } from '../quantity/index.js';
import { boxCompliance } from './box-air.js';
import {
  type PassiveRadiatorTuning,
  type PassiveRadiatorTuningInput,
  radiatorStiffness,
  radiatorsShape,
  tuningOf,
} from './passive-radiator-tuning.js';

export interface AddedMassInput extends Omit<PassiveRadiatorTuningInput, 'addedMass'> {
  /** The wanted tuning. */
  readonly fb: FrequencyInput;
}

/** The mass for a wanted tuning, and the tuning that it gives. */
export interface AddedMass extends PassiveRadiatorTuning {
  readonly ok: true;
  /** The mass to fix to each radiator. */
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
 * | $n$ | `count` | 1 | number of equal radiators |
 * | $M_{ms}, C_{ms}, S_d$ | `radiator` | kg, m/N, m² | of one radiator |
 *
 * @validity as `passiveRadiatorTuning`; a suspension that bears the mass, and a fixing that cannot come loose
 * @neglects as `passiveRadiatorTuning`
 * @returns the mass (0 if it is below 0.1 mg) with its tuning, or why there is none. `tuning-too-high`: mass can only lower a
 *   tuning; the text names a volume that is suitable. `mass-too-great`: the mass is more than the library accepts
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
  const moved = radiatorStiffness(read.radiator, count, boxCompliance(netVolume, 1, air)) / square;
  const added = moved - Mms;
  if (added < -1e-12 * Mms) {
    const bare = tuningOf({ ...read, count, addedMass: si('mass', 0) }, netVolume, air).fb;
    const volume = (count * Sd ** 2 * air.density * air.speedOfSound ** 2) / (Mms * square - 1 / Cms);
    return impossible(
      'tuning-too-high',
      `Without added mass the tuning is ${decimalText(bare, 4)} Hz, below the wanted ${decimalText(fb, 4)} Hz, and added mass can only lower it. A box of ${decimalText(1000 * volume, 3)} L is tuned to ${decimalText(fb, 4)} Hz without added mass.`,
    );
  }
  const [least, greatest] = kinds.mass.range;
  if (added > greatest) {
    const text = `A tuning of ${decimalText(fb, 4)} Hz needs ${decimalText(added, 3)} kg on each radiator, but at most ${greatest} kg is accepted.`;
    return impossible('mass-too-great', text);
  }
  const addedMass = si('mass', added < least ? 0 : added);
  return { ok: true, addedMass, ...tuningOf({ ...read, count, addedMass }, netVolume, air) };
}
