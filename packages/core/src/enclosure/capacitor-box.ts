import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import { resonanceInAir } from '../driver/resonance.js';
import { branch, compile } from '../network/index.js';
import { type Capacitance, type CapacitanceInput, positive, type Resistance, readFields } from '../quantity/index.js';
import { boxAir } from './box-air.js';
import { type ClosedBoxInput, type ClosedBoxSpec, closedAirShape, closedFamily } from './closed-box.js';
import { drivenShape } from './driven.js';
import { asGroup, drivenCone } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';

/** A closed box with a capacitor in series with its drivers, as people write it. */
export interface CapacitorBoxInput extends ClosedBoxInput {
  /** Capacitance in series with all drivers together. */
  readonly seriesCapacitance: CapacitanceInput;
}

/** The same after reading, in SI units. */
export interface CapacitorBoxSpec extends ClosedBoxSpec {
  readonly seriesCapacitance: Capacitance;
}

const shape = { ...drivenShape, ...closedAirShape, seriesCapacitance: positive('capacitance') };

/** The family of closed boxes with a capacitor in series with their drivers. */
export const capacitorBoxFamily: Family<CapacitorBoxSpec, CapacitorBoxInput> = {
  name: 'closed with series capacitor',
  compile,
  losses: ['QL', 'QA'],
  unknowns: [
    { field: 'netVolume', unit: equivalentVolume, starts: [1, 0.1, 10] },
    {
      field: 'seriesCapacitance',
      unit: (driver) => 1 / (2 * Math.PI * resonanceInAir(driver) * driver.Re),
      starts: [1, 0.2, 5],
    },
  ],
  read: (input) => {
    const { drivers, fillGain = 1, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, shape);
    return { drivers: asGroup(drivers), ...box, fillGain, sourceResistance };
  },
  topology: ({ drivers, sourceResistance, ...losses }) => {
    // In a chain of parts the order does not matter: here the capacitor is the last.
    const to = 'capacitor';
    const { elements, probes } = drivenCone(drivers.equivalent, sourceResistance, { rear: 'box', to });
    const air = boxAir(losses);
    return {
      elements: [...elements, branch('capacitor', 'seriesCapacitance', [to, 'ground']), ...air.elements],
      probes,
      outlets: [{ name: 'cone', flow: { of: 'flow', element: 'Sd' } }, ...air.leaks],
    };
  },
  values: ({ seriesCapacitance, ...box }, air, set) => {
    closedFamily.values(box, air, set);
    set('seriesCapacitance', seriesCapacitance);
  },
};

/**
 * A driver or a group in a closed box, behind a capacitor, as a network. The capacitor and the cone that resonates in the box make
 * a high-pass of third order, which is steeper than that of the box, can reach lower, and spares the cone below it.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^3}{(s + g)(s^2 + s/Q_{mc} + 1) + s^2/Q_{ec}}, \quad g = \frac{1}{\omega_c R_e C} $$
 *
 * with s over $\omega_c$. This response is what the network gives without leak, absorption, filling, source resistance and coil
 * inductance. It is checked in tests, not used here.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $C$ | `seriesCapacitance` | F | capacitance in series with all drivers together |
 * | $\omega_c, Q_{mc}, Q_{ec}$ | | rad/s, 1 | resonance, mechanical and electrical quality factor of the driver in the box |
 *
 * Impedance and terminal voltage are those of the whole box, capacitor included.
 *
 * @validity frequencies at which the box is small compared with the wavelength; a capacitor whose losses are small compared with Re
 * @neglects loss and voltage rating of the capacitor, modes of the box, flexing walls, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1972direct electro-mechano-acoustical circuit, with a capacitor before the coil
 * @example capacitorBox({ drivers: driver, netVolume: '20 L', seriesCapacitance: '800 µF' })
 */
export const capacitorBox = (
  input: CapacitorBoxInput | CapacitorBoxSpec,
  air: Air = standardAir,
): System<CapacitorBoxSpec> => systemOf(capacitorBoxFamily, input, air);
