import { type Air, standardAir } from '../air/index.js';
import { branch, compile, type Probe } from '../network/index.js';
import {
  type AcousticResistance,
  type AcousticResistanceInput,
  type Area,
  type AreaInput,
  optional,
  positive,
  type Resistance,
  readFields,
} from '../quantity/index.js';
import { boxAir } from './box-air.js';
import { type ClosedBoxInput, type ClosedBoxSpec, closedAirShape, closedFamily } from './closed-box.js';
import { drivenShape } from './driven.js';
import { asGroup, directRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';

/** A box with an aperiodic vent as people write it. */
export interface AperiodicBoxInput extends ClosedBoxInput {
  /** Flow resistance of the whole vent: the pressure across it over the flow through it. */
  readonly ventResistance: AcousticResistanceInput;
  /** Area of the vent. It is needed only for the air speed, which is left out without it. */
  readonly ventArea?: AreaInput;
}

/** The same after reading, in SI units. */
export interface AperiodicBoxSpec extends ClosedBoxSpec {
  readonly ventResistance: AcousticResistance;
  readonly ventArea?: Area;
}

const shape = {
  ...drivenShape,
  ...closedAirShape,
  ventResistance: positive('acousticResistance'),
  ventArea: optional(positive('area')),
};

const speed: Probe = { of: 'flow', element: 'vent', factor: 'perVentArea' };

/** The family of boxes with an aperiodic vent: an opening that resists the air and has next to no mass. */
export const aperiodicFamily: Family<AperiodicBoxSpec, AperiodicBoxInput> = {
  name: 'aperiodic',
  compile,
  read: (input) => {
    const { drivers, fillGain = 1, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, shape);
    return { drivers: asGroup(drivers), ...box, fillGain, sourceResistance };
  },
  topology: ({ drivers, sourceResistance, ventArea, ...losses }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const air = boxAir(losses);
    // As with a leak, the level far above all resonances is the same with it and without it.
    const vent = branch('acousticResistance', 'vent', ['box', 'ground'], { stands: 'admittance', inReference: false });
    return {
      elements: [...elements, ...air.elements, vent],
      probes: ventArea === undefined ? probes : { ...probes, ventAirSpeed: speed },
      outlets: [cone, ...air.leaks, { name: 'vent', flow: { of: 'flow', element: 'vent' } }],
    };
  },
  values: ({ ventResistance, ventArea, ...box }, air, set) => {
    closedFamily.values(box, air, set);
    set('vent', ventResistance);
    if (ventArea !== undefined) set('perVentArea', 1 / ventArea);
  },
};

/**
 * A driver or a group in a box with an aperiodic vent, as a network. The vent is an opening filled with felt or fibre, so that it
 * resists the air and hardly moves as a mass. The peak of the impedance becomes lower and broader. The level is nowhere higher than
 * in the closed box, and far below the resonance it falls by 18 dB an octave instead of 12.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^2 L}{s^2 + s/Q_{ts} + 1 + \alpha L}, \quad L = \frac{s}{s + 1/(\omega_s R_{av} C_{ab})} $$
 *
 * with s over $\omega_s$. This response is what the network gives without leak, absorption, filling and coil inductance. It is
 * checked in tests, not used here.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $R_{av}$ | `ventResistance` | Pa·s/m³ | pressure across the vent over the flow through it |
 * | $C_{ab}$ | `netVolume` | m³/Pa | compliance of the air in the box |
 * | $\alpha$ | `netVolume` | 1 | compliance of the driver over that of the box |
 *
 * QL and QA hold at the system resonance of the closed box. What the vent lets out sounds against the cone, so that it counts.
 *
 * @validity frequencies at which the box is small compared with the wavelength; flows at which the resistance is constant
 * @neglects the mass of the air in the vent, resistance that grows with flow, modes of the box, flexing walls, radiation resistance
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1972direct electro-mechano-acoustical circuit, with a resistance from the box to the air outside
 * @example aperiodicBox({ drivers: driver, netVolume: '20 L', ventResistance: '15000 Pa·s/m³' })
 */
export const aperiodicBox = (
  input: AperiodicBoxInput | AperiodicBoxSpec,
  air: Air = standardAir,
): System<AperiodicBoxSpec> => systemOf(aperiodicFamily, input, air);
