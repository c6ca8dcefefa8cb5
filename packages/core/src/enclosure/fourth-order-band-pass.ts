import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import { resonanceInAir } from '../driver/resonance.js';
import { compile } from '../network/index.js';
import { type Resistance, readFields } from '../quantity/index.js';
import {
  betweenChambers,
  type ClosedRearInput,
  type ClosedRearSpec,
  closedRearLosses,
  closedRearShape,
  type FrontChamberInput,
  type FrontChamberSpec,
  frontChamber,
  frontChamberShape,
  frontPart,
  setClosedRear,
} from './band-pass-chambers.js';
import { boxAir } from './box-air.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, drivenCone, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import { setVentedAir, ventedAir } from './vented-box.js';

/** A band-pass box of fourth order as people write it. */
export interface FourthOrderBandPassInput extends DrivenInput, ClosedRearInput, FrontChamberInput {}

/** A band-pass box of fourth order after reading, in SI units. */
export interface FourthOrderBandPassSpec extends DrivenSpec, ClosedRearSpec, FrontChamberSpec {}

const shape = { ...drivenShape, ...closedRearShape, ...frontChamberShape };

/** The family of band-pass boxes of fourth order: the cone stands between a closed chamber and one that has a vent. */
export const fourthOrderBandPassFamily: Family<FourthOrderBandPassSpec, FourthOrderBandPassInput> = {
  name: 'fourth-order band-pass',
  compile,
  losses: ['rearQL', 'rearQA', 'frontQL', 'frontQA', 'frontQP'],
  unknowns: [
    { field: 'rearVolume', unit: equivalentVolume, starts: [1, 0.2, 5] },
    { field: 'frontVolume', unit: equivalentVolume, starts: [0.5, 0.1, 2.5] },
    { field: 'frontTuning', unit: resonanceInAir, starts: [1.5, 3] },
  ],
  read: (input) => {
    const { drivers, rearFillGain = 1, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, shape);
    return { drivers: asGroup(drivers), ...box, rearFillGain, sourceResistance };
  },
  topology: (spec) => {
    const { elements, probes } = drivenCone(spec.drivers.equivalent, spec.sourceResistance, betweenChambers);
    const rear = boxAir(closedRearLosses(spec), 'rear');
    const front = ventedAir(frontChamber(spec), 'front');
    // There is only one vent, so that its probe bears no name.
    const [ventAirSpeed] = Object.values(front.probes);
    return {
      elements: [...elements, ...rear.elements, ...front.elements],
      probes: { ...probes, ...(ventAirSpeed && { ventAirSpeed }) },
      outlets: [...front.outlets, ...rear.leaks],
    };
  },
  values: (spec, air, set) => {
    setDirectRadiator(spec.drivers.equivalent, spec.sourceResistance, set);
    setClosedRear(spec, spec.drivers.equivalent, air, set);
    setVentedAir(frontChamber(spec), air, set, frontPart);
  },
};

/**
 * A driver or a group in a band-pass box of fourth order, as a network. The cone stands in the panel between two chambers. The
 * one behind it is closed. The one in front of it has a vent, through which alone the box is heard.
 *
 * $$ \frac{p}{p_\infty} = \frac{\omega_f^2\, s^2}{(s^2 + s\,\omega_c/Q_{tc} + \omega_c^2)(s^2 + \omega_f^2) + \alpha_f\,\omega_s^2\, s^2},
 *    \quad \omega_c = \omega_s\sqrt{1 + \alpha_r} $$
 *
 * This response is what the network gives without leak, absorption, loss of the vent, filling and coil inductance. It is checked
 * in tests, not used here. $p_\infty$ is the level that the driver would approach in a closed box. This response has no asymptote
 * of its own: cut-offs are counted from its maximum or from a stated level.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega_f$ | `frontTuning` | rad/s | resonance of the front vent and the front chamber |
 * | $\omega_c, Q_{tc}$ | | rad/s, 1 | resonance and total quality factor of the driver in the rear chamber alone |
 * | $\alpha_r, \alpha_f$ | `rearVolume`, `frontVolume` | 1 | compliance of the driver over that of the chamber |
 *
 * rearQL and rearQA hold at the resonance of the driver in the rear chamber, frontQL, frontQA and frontQP at the front tuning.
 *
 * @validity frequencies at which both chambers and the vent are small compared with the wavelength; small signals
 * @neglects modes of the chambers and the vent, which pass sound above the band, flexing walls, leaks between the chambers, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source geddes1989 fourth-order band-pass, circuit and response function
 * @example fourthOrderBandPass({ drivers: driver, rearVolume: '20 L', frontVolume: '15 L', frontTuning: '52 Hz', frontQL: 10 })
 */
export const fourthOrderBandPass = (
  input: FourthOrderBandPassInput | FourthOrderBandPassSpec,
  air: Air = standardAir,
): System<FourthOrderBandPassSpec> => systemOf(fourthOrderBandPassFamily, input, air);
