import { type Air, standardAir } from '../air/index.js';
import { betweenChambers, frontChamber, ventedRear } from './band-pass-chambers.js';
import { drivenCone } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import { type ParallelBandPassInput, type ParallelBandPassSpec, parallelBandPassFamily } from './parallel-band-pass.js';
import { ventedAir } from './vented-box.js';

/** A series band-pass box of sixth order as people write it: the same fields as those of a parallel one. */
export type SeriesBandPassInput = ParallelBandPassInput;

/** A series band-pass box of sixth order after reading, in SI units. */
export type SeriesBandPassSpec = ParallelBandPassSpec;

/** The family of series band-pass boxes of sixth order: a parallel one whose rear vent opens into the front chamber. */
export const seriesBandPassFamily: Family<SeriesBandPassSpec, SeriesBandPassInput> = {
  ...parallelBandPassFamily,
  name: 'sixth-order band-pass, series',
  topology: (spec) => {
    const { elements, probes } = drivenCone(spec.drivers.equivalent, spec.sourceResistance, betweenChambers);
    const rear = ventedAir(ventedRear(spec), 'rear', betweenChambers.front);
    const front = ventedAir(frontChamber(spec), 'front');
    return {
      elements: [...elements, ...rear.elements, ...front.elements],
      probes: { ...probes, ...rear.probes, ...front.probes },
      outlets: [...front.outlets, ...rear.outlets],
    };
  },
};

/**
 * A driver or a group in a series band-pass box of sixth order, as a network. The cone stands in the panel between two chambers.
 * The rear chamber has a vent into the front one, and the front chamber has a vent to the air outside, through which alone the
 * box is heard.
 *
 * $$ \frac{p}{p_\infty} = \frac{\omega_f^2\, s^4}{D\,\left[(s^2 + \omega_f^2)(s^2 + \omega_r^2) + \mu\,\omega_r^2 s^2\right]
 *    + \omega_s^2 s^2\left[\alpha_r (s^2 + \omega_f^2) + \alpha_f s^2\right]},
 *    \quad D = s^2 + s\,\omega_s/Q_{ts} + \omega_s^2,\quad \mu = \alpha_f/\alpha_r $$
 *
 * This response is what the network gives without losses of the box and coil inductance. It is checked in tests, not used here.
 * $p_\infty$ is the level that the driver would approach in a closed box. This response has no asymptote of its own: cut-offs are
 * counted from its maximum or from a stated level.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $\omega_r, \omega_f$ | `rearTuning`, `frontTuning` | rad/s | resonance of each vent with the air of its own chamber alone |
 * | $\alpha_r, \alpha_f$ | `rearVolume`, `frontVolume` | 1 | compliance of the driver over that of the chamber |
 *
 * The quality factors of each chamber hold at its tuning, and both leaks lead to the air outside. The probes of the air speed
 * are `ventAirSpeed rear`, positive into the front chamber, and `ventAirSpeed front`.
 *
 * @validity frequencies at which chambers and vents are small compared with the wavelength; small signals
 * @neglects modes of the chambers and the vents, flexing walls, leaks between the chambers, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source geddes1989 band-pass whose rear chamber opens into the front one, circuit
 * @example seriesBandPass({ drivers: driver, rearVolume: '40 L', rearTuning: '35 Hz', frontVolume: '15 L', frontTuning: '70 Hz' })
 */
export const seriesBandPass = (
  input: SeriesBandPassInput | SeriesBandPassSpec,
  air: Air = standardAir,
): System<SeriesBandPassSpec> => systemOf(seriesBandPassFamily, input, air);
