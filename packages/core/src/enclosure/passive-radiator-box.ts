import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import { branch, compile, type Element, type Nodes } from '../network/index.js';
import {
  type Mass,
  optional,
  positive,
  type RatioInput,
  type Resistance,
  readFields,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { boxAir, boxCompliance, setBoxAir } from './box-air.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';
import {
  type RadiatorsInput,
  type RadiatorsSpec,
  radiatorsShape,
  tunedAngularFrequency,
} from './passive-radiator-tuning.js';

/** A box with passive radiators as people write it. */
export interface PassiveRadiatorBoxInput extends DrivenInput, RadiatorsInput {
  /** Volume of the air in the box, without what drivers, radiators and bracing take up. */
  readonly netVolume: VolumeInput;
  /** Quality factor of the leaks at the tuning; leave it out if there are none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at the tuning; leave it out if there is none. */
  readonly QA?: RatioInput;
}

/** A box with passive radiators after reading, in SI units. */
export interface PassiveRadiatorBoxSpec extends DrivenSpec, RadiatorsSpec {
  readonly netVolume: Volume;
  readonly QL?: number;
  readonly QA?: number;
}

const shape = {
  ...drivenShape,
  netVolume: positive('volume'),
  ...radiatorsShape,
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
};

const moving: Nodes = ['radiator', 'ground'];

/** All radiators move alike, so one cone stands for them, with their total mass, stiffness, damping and area. */
const radiators: readonly Element[] = [
  branch('mass', 'radiatorMass', moving),
  branch('damper', 'radiatorLoss', moving),
  branch('spring', 'radiatorCompliance', moving),
  { kind: 'piston', name: 'radiators', mechanical: moving, front: 'ground', rear: 'box' },
];

/** The family of boxes with passive radiators, which are cones without a motor in place of a vent. */
export const passiveRadiatorFamily: Family<PassiveRadiatorBoxSpec, PassiveRadiatorBoxInput> = {
  name: 'passive radiator',
  compile,
  losses: ['QL', 'QA'],
  unknowns: [
    { field: 'netVolume', unit: equivalentVolume, starts: [0.25, 1, 0.06, 4] },
    {
      field: 'addedMass',
      // The air of a box of Vas resonates with it at fs: the moving mass of the driver, for the area of a radiator.
      unit: ({ Mms, Sd }, _, { radiator, count }) => (Mms * count * radiator.Sd ** 2) / Sd ** 2,
      starts: [1, 0.25, 4],
      beside: ({ radiator }) => radiator.Mms,
    },
  ],
  read: (input) => {
    const read = readFields('box', input, shape);
    const { drivers, count = 1, addedMass = 0 as Mass, sourceResistance = 0 as Resistance, ...box } = read;
    return { drivers: asGroup(drivers), ...box, count, addedMass, sourceResistance };
  },
  topology: ({ drivers, sourceResistance, ...losses }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const air = boxAir(losses);
    return {
      elements: [...elements, ...air.elements, ...radiators],
      probes: { ...probes, radiatorVelocity: { of: 'potential', node: 'radiator' } },
      outlets: [cone, ...air.leaks, { name: 'radiators', flow: { of: 'flow', element: 'radiators' } }],
    };
  },
  values: ({ drivers, sourceResistance, netVolume, ...box }, air, set) => {
    const { radiator, count, addedMass } = box;
    const Cab = boxCompliance(netVolume, 1, air);
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    setBoxAir(Cab, tunedAngularFrequency(box, Cab), box, set);
    set('radiatorMass', count * (radiator.Mms + addedMass));
    set('radiatorLoss', count * radiator.Rms);
    set('radiatorCompliance', radiator.Cms / count);
    set('radiators', count * radiator.Sd);
  },
};

/**
 * A driver or a group in a box with passive radiators, as a network. The radiators are cones without a motor, in place of a
 * vent.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^2 (s^2 + s\,\omega_p/Q_{mp} + \omega_p^2)}
 *    {(s^2 + s/Q_{ts} + 1)(s^2 + s\,\omega_p/Q_{mp} + h^2) + \alpha\,(s^2 + s\,\omega_p/Q_{mp} + \omega_p^2)},\quad
 *    h = \omega_p\sqrt{1 + \delta} $$
 *
 * This response is what the network gives without leak, absorption and coil inductance. It is checked in tests, not used here.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $s$ | | 1 | complex frequency over $\omega_s$ of the driver |
 * | $\omega_p$ | `radiator` | 1 | resonance of the radiators in free air with the added mass, over $\omega_s$: the notch |
 * | $Q_{mp}$ | `radiator` | 1 | quality factor of the radiators at $\omega_p$ |
 * | $h$ | | 1 | tuning over $\omega_s$, at which QL and QA are set |
 * | $\alpha, \delta$ | `netVolume` | 1 | compliance of the driver, of the radiators, over that of the box |
 *
 * The probe `radiatorVelocity` is that of each radiator, positive outwards.
 *
 * @validity frequencies at which the box is small compared with the wavelength; small signals; equal radiators
 * @neglects modes of box and cones, flexing walls, radiation resistance, mutual radiation, rocking of the radiators
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1974pr1 response function
 * @example
 * const radiator = { Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6 } as const;
 * passiveRadiatorBox({ drivers: driver, netVolume: '45 L', radiator, addedMass: '40 g', QL: 10 })
 */
export const passiveRadiatorBox = (
  input: PassiveRadiatorBoxInput | PassiveRadiatorBoxSpec,
  air: Air = standardAir,
): System<PassiveRadiatorBoxSpec> => systemOf(passiveRadiatorFamily, input, air);
