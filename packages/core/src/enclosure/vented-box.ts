import { type Air, standardAir } from '../air/index.js';
import { equivalentVolume } from '../driver/equivalent-volume.js';
import { resonanceInAir } from '../driver/resonance.js';
import { branch, compileLumped, type Element, type Outlet, type Probe, type Setter } from '../network/index.js';
import {
  type Area,
  type AreaInput,
  type Frequency,
  type FrequencyInput,
  optional,
  positive,
  type RatioInput,
  type Resistance,
  readFields,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { type AirLosses, boxAir, boxCompliance, setBoxAir } from './box-air.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, partOf, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf, withLaws } from './family.js';

/** A vented box as people write it. */
export interface VentedBoxInput extends DrivenInput {
  /** Volume of the air in the box, without what drivers, vent and bracing take up. */
  readonly netVolume: VolumeInput;
  /** Tuning: the resonance of vent and box. */
  readonly fb: FrequencyInput;
  /** Narrowest cross-section of all vents together. It is needed only for the air speed, which is left out without it. */
  readonly ventArea?: AreaInput;
  /** Quality factor of the leaks at fb; leave it out if there are none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at fb; leave it out if there is none. */
  readonly QA?: RatioInput;
  /** Quality factor of the vent's own loss at fb; leave it out if there is none. */
  readonly QP?: RatioInput;
}

/** A vented box after reading, in SI units. */
export interface VentedBoxSpec extends DrivenSpec {
  readonly netVolume: Volume;
  readonly fb: Frequency;
  readonly ventArea?: Area;
  readonly QL?: number;
  readonly QA?: number;
  readonly QP?: number;
}

/** The air of a vented box: everything that does not depend on its drivers. */
export const ventedAirShape = {
  netVolume: positive('volume'),
  fb: positive('frequency'),
  ventArea: optional(positive('area')),
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
  QP: optional(positive('ratio')),
};

const shape = { ...drivenShape, ...ventedAirShape };

/** Losses of a vented box, as quality factors at the tuning. Leave out a loss that is not there. */
export interface VentedBoxLosses extends AirLosses {
  readonly QP?: number | undefined;
}

/**
 * The air of a vented box with its vent and its losses. The vent opens into the air outside, or into that of another chamber.
 * {@link setVentedAir} sets the numbers.
 */
export function ventedAir(
  { ventArea, QP, ...losses }: VentedBoxLosses & { readonly ventArea?: number | undefined },
  name?: string,
  into = 'ground',
): { readonly elements: Element[]; readonly outlets: Outlet[]; readonly probes: Record<string, Probe> } {
  const part = partOf(name);
  const [vent, mouth] = [part('vent'), QP === undefined ? into : part('mouth')];
  const air = boxAir(losses, name);
  const loss: Element[] =
    QP === undefined ? [] : [branch('acousticResistance', part('ventLoss'), [mouth, into], { stands: 'impedance' })];
  const speed: Probe = { of: 'flow', element: vent, factor: part('perVentArea') };
  const opening: Outlet = { name: vent, flow: { of: 'flow', element: vent } };
  return {
    elements: [...air.elements, branch('acousticMass', vent, [part('box'), mouth]), ...loss],
    outlets: into === 'ground' ? [...air.leaks, opening] : air.leaks,
    probes: ventArea === undefined ? {} : { [part('ventAirSpeed')]: speed },
  };
}

/**
 * Sets the numbers of {@link ventedAir} from volume, tuning and losses (small1973vented1, definitions of the box losses):
 *
 * $$ C_{ab} = \frac{V_b}{\rho c^2},\; M_{ap} = \frac{1}{\omega_b^2 C_{ab}},\;
 *    R_{al} = \frac{Q_L}{\omega_b C_{ab}},\; R_{ab} = \frac{1}{\omega_b C_{ab} Q_A},\; R_{ap} = \frac{\omega_b M_{ap}}{Q_P} $$
 */
export function setVentedAir(
  box: VentedBoxLosses & { readonly netVolume: number; readonly fb: number; readonly ventArea?: number | undefined },
  air: Air,
  set: Setter,
  part = partOf(),
): void {
  const wb = 2 * Math.PI * box.fb;
  const Cab = boxCompliance(box.netVolume, 1, air);
  const mass = 1 / (wb * wb * Cab);
  setBoxAir(Cab, wb, box, set, part);
  set(part('vent'), mass);
  if (box.QP !== undefined) set(part('ventLoss'), (wb * mass) / box.QP);
  if (box.ventArea !== undefined) set(part('perVentArea'), 1 / box.ventArea);
}

/** The family as the easy door takes it: lumped elements alone. */
const lumped: Family<VentedBoxSpec, VentedBoxInput> = {
  name: 'vented',
  compile: compileLumped,
  losses: ['QL', 'QA', 'QP'],
  unknowns: [
    { field: 'netVolume', unit: equivalentVolume, starts: [1, 0.25, 4] },
    { field: 'fb', unit: resonanceInAir, starts: [1, 2, 0.5] },
  ],
  read: (input) => {
    const { drivers, sourceResistance = 0 as Resistance, ...box } = readFields('box', input, shape);
    return { drivers: asGroup(drivers), ...box, sourceResistance };
  },
  topology: ({ drivers, sourceResistance, ...box }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const air = ventedAir(box);
    return {
      elements: [...elements, ...air.elements],
      probes: { ...probes, ...air.probes },
      outlets: [cone, ...air.outlets],
    };
  },
  values: (spec, air, set) => {
    setDirectRadiator(spec.drivers.equivalent, spec.sourceResistance, set);
    setVentedAir(spec, air, set);
  },
};

/** The family of vented boxes: the air mass in the vent resonates with the spring of the enclosed air. */
export const ventedFamily: Family<VentedBoxSpec, VentedBoxInput> = /* @__PURE__ */ withLaws(lumped);

/**
 * A driver or a group in a vented box, as a network. The air mass in the vent resonates with the spring of the enclosed air.
 *
 * $$ \frac{p}{p_\infty} = \frac{s^4}{s^4 + a_1 s^3 + a_2 s^2 + a_3 s + 1} $$
 *
 * $$ a_1 = \frac{1}{\sqrt{h}\,Q_{ts}} + \frac{\sqrt{h}}{Q_L},\quad
 *    a_2 = h + \frac{\alpha + 1}{h} + \frac{1}{Q_L Q_{ts}},\quad
 *    a_3 = \frac{\sqrt{h}}{Q_{ts}} + \frac{1}{\sqrt{h}\,Q_L} $$
 *
 * with $h = f_b/f_s$, $\alpha = V_{as}/V_b$ and s over √(ωs ωb). The network gives this response if there is no loss but the leak.
 * It is checked in tests, not used here. QL, QA and QP hold at fb.
 *
 * @validity frequencies at which box and vent are small compared with the wavelength; small signals
 * @neglects modes of box and vent, flexing walls, radiation resistance, losses that grow with level
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source small1973vented1 response function
 * @example ventedBox({ drivers: driver, netVolume: '45 L', fb: '29 Hz', QL: 7 })
 */
export const ventedBox = (input: VentedBoxInput | VentedBoxSpec, air: Air = standardAir): System<VentedBoxSpec> =>
  systemOf(lumped, input, air);
