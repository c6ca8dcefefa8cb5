import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import { resonanceInAir } from '../driver/resonance.js';
import { compile } from '../network/index.js';
import { type Resistance, readFields } from '../quantity/index.js';
import {
  betweenChambers,
  type FrontChamberInput,
  type FrontChamberSpec,
  frontChamber,
  frontChamberShape,
  frontPart,
  rearPart,
  type VentedRearInput,
  type VentedRearSpec,
  ventedRear,
  ventedRearShape,
} from './band-pass-chambers.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, drivenCone, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import { setVentedAir, ventedAir } from './vented-box.js';

/** A parallel band-pass box of sixth order as people write it. */
export interface ParallelBandPassInput extends DrivenInput, VentedRearInput, FrontChamberInput {}

/** A parallel band-pass box of sixth order after reading, in SI units. */
export interface ParallelBandPassSpec extends DrivenSpec, VentedRearSpec, FrontChamberSpec {}

/** The readers of all fields of a band-pass box of sixth order. */
const sixthOrderShape = { ...drivenShape, ...ventedRearShape, ...frontChamberShape };

/** The family of parallel band-pass boxes of sixth order: each of the two chambers has a vent to the air outside. */
export const parallelBandPassFamily: Family<ParallelBandPassSpec, ParallelBandPassInput> = {
  name: 'sixth-order band-pass, parallel',
  compile,
  losses: ['rearQL', 'rearQA', 'rearQP', 'frontQL', 'frontQA', 'frontQP'],
  // The rear chamber is the one with the lower tuning: the response is the same if the two change places.
  unknowns: [
    { field: 'rearVolume', unit: equivalentVolume, starts: [1, 0.2] },
    { field: 'rearTuning', unit: resonanceInAir, starts: [1, 0.6] },
    { field: 'frontVolume', unit: equivalentVolume, starts: [0.5, 0.1] },
    { field: 'frontTuning', unit: resonanceInAir, starts: [2, 4] },
  ],
  read: (input) => {
    const { drivers, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, sixthOrderShape);
    return { drivers: asGroup(drivers), ...box, sourceResistance };
  },
  topology: (spec) => {
    const { elements, probes } = drivenCone(spec.drivers.equivalent, spec.sourceResistance, betweenChambers);
    const [rear, front] = [ventedAir(ventedRear(spec), 'rear'), ventedAir(frontChamber(spec), 'front')];
    return {
      elements: [...elements, ...rear.elements, ...front.elements],
      probes: { ...probes, ...rear.probes, ...front.probes },
      outlets: [...front.outlets, ...rear.outlets],
    };
  },
  values: (spec, air, set) => {
    setDirectRadiator(spec.drivers.equivalent, spec.sourceResistance, set);
    setVentedAir(ventedRear(spec), air, set, rearPart);
    setVentedAir(frontChamber(spec), air, set, frontPart);
  },
};

/**
 * A driver or a group in a parallel band-pass box of sixth order, as a network. The cone stands in the panel between two
 * chambers, and each chamber has a vent to the air outside. Between the two tunings both vents help each other; below the lower
 * and above the higher tuning they cancel in part.
 *
 * $$ \frac{p}{p_\infty} = \frac{(\omega_f^2 - \omega_r^2)\, s^4}
 *    {(s^2 + s\,\omega_s/Q_{ts} + \omega_s^2)(s^2 + \omega_r^2)(s^2 + \omega_f^2)
 *     + \omega_s^2 s^2\,[\alpha_r (s^2 + \omega_f^2) + \alpha_f (s^2 + \omega_r^2)]} $$
 *
 * This response is what the network gives without losses of the box and coil inductance. It is checked in tests, not used here.
 * $p_\infty$ is the level that the driver would approach in a closed box. This response has no asymptote of its own: cut-offs are
 * counted from its maximum or from a stated level.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega_r, \omega_f$ | `rearTuning`, `frontTuning` | rad/s | resonance of each vent and its chamber |
 * | $\alpha_r, \alpha_f$ | `rearVolume`, `frontVolume` | 1 | compliance of the driver over that of the chamber |
 *
 * The quality factors of each chamber hold at its tuning. The probes of the air speed are `ventAirSpeed rear` and
 * `ventAirSpeed front`.
 *
 * @validity frequencies at which chambers, vents and the distance between their mouths are small compared with the wavelength; small signals
 * @neglects modes of the chambers and the vents, flexing walls, leaks between the chambers, radiation resistance, mutual radiation
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source geddes1989 band-pass with two vented chambers, circuit
 * @example parallelBandPass({ drivers: driver, rearVolume: '40 L', rearTuning: '35 Hz', frontVolume: '15 L', frontTuning: '70 Hz' })
 */
export const parallelBandPass = (
  input: ParallelBandPassInput | ParallelBandPassSpec,
  air: Air = standardAir,
): System<ParallelBandPassSpec> => systemOf(parallelBandPassFamily, input, air);
