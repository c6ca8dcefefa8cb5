import { type Air, standardAir } from '../air/index.js';
import { ductElement, ductValues, flanged, radiationResistance, unflanged } from '../duct/index.js';
import { solidAngleField } from '../duct/solid-angle-field.js';
import { type Fault, refuse } from '../fault/index.js';
import { branch, compile, type Element, losslessLine, type Probe } from '../network/index.js';
import {
  count,
  given,
  type LengthInput,
  notNegative,
  optional,
  positive,
  type RatioInput,
  type Resistance,
  readFieldsInto,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import type { WaveTube } from '../vent/index.js';
import { boxAir, boxCompliance, setBoxAir } from './box-air.js';
import { type DrivenInput, type DrivenSpec, drivenShape } from './driven.js';
import { asGroup, directRadiator, setDirectRadiator } from './driver-parts.js';
import { type Family, type System, systemOf } from './family.js';

/** A round vent with waves in it, as people write it. */
export interface LineVentInput {
  /** Inner diameter. */
  readonly diameter: LengthInput;
  readonly length: LengthInput;
  /** Number of equal vents; default 1. */
  readonly count?: number;
  /** Loss at the walls over that of smooth ones; default 1, and 0 without loss. See `withWallLoss`. */
  readonly wallLoss?: RatioInput;
  /** What the air in the box adds to the length; default that of a free end. */
  readonly innerCorrection?: LengthInput;
  /** What the air outside adds to the length; default that of an end flush with a wide wall. */
  readonly outerCorrection?: LengthInput;
  /**
   * Solid angle into which all vents together radiate, sr: 2π beside a wide wall. It damps the waves in them. Left out, the sound
   * takes no power from the vents, as in other boxes.
   */
  readonly solidAngle?: number;
}

/** A vented box with waves in its vent, as people write it. */
export interface LineVentedBoxInput extends DrivenInput {
  /** Volume of the air in the box, after drivers, vents and bracing have taken theirs. */
  readonly netVolume: VolumeInput;
  readonly vent: LineVentInput;
  /** Quality factor of the leaks at the tuning; leave it out if there are none. */
  readonly QL?: RatioInput;
  /** Quality factor of the absorption in the box at the tuning; leave it out if there is none. */
  readonly QA?: RatioInput;
}

/** A vent with waves in it after reading, in SI units. */
export interface LineVentSpec extends WaveTube {
  readonly solidAngle?: number;
}

/** A vented box with waves in its vent after reading, in SI units. */
export interface LineVentedBoxSpec extends DrivenSpec {
  readonly netVolume: Volume;
  readonly vent: LineVentSpec;
  readonly QL?: number;
  readonly QA?: number;
}

const shape = {
  ...drivenShape,
  netVolume: positive('volume'),
  vent: given<unknown>(),
  QL: optional(positive('ratio')),
  QA: optional(positive('ratio')),
};
const ventShape = {
  diameter: positive('length'),
  length: positive('length'),
  count: optional(count(100)),
  wallLoss: optional(notNegative('ratio')),
  innerCorrection: optional(notNegative('length')),
  outerCorrection: optional(notNegative('length')),
  solidAngle: optional(solidAngleField),
};

function read(input: LineVentedBoxInput | LineVentedBoxSpec): LineVentedBoxSpec {
  const faults: Fault[] = [];
  const box = readFieldsInto(faults, 'box', input, shape);
  const vent = box && readFieldsInto(faults, 'box.vent', box.vent, ventShape);
  refuse(faults);
  const { drivers, sourceResistance = 0 as Resistance, ...rest } = box!;
  const opening = { radius: vent!.diameter / 2 };
  return {
    ...rest,
    drivers: asGroup(drivers),
    sourceResistance,
    vent: {
      count: 1,
      wallLoss: 1,
      innerCorrection: si('length', unflanged(opening, 0)),
      outerCorrection: si('length', flanged(opening, 0)),
      ...vent!,
    },
  };
}

const areaOf = ({ count, diameter }: LineVentSpec) => (count * Math.PI * diameter ** 2) / 4;

/** The family of vented boxes with waves in their vents. */
export const lineVentedFamily: Family<LineVentedBoxSpec, LineVentedBoxInput> = {
  name: 'vented by a line',
  compile,
  losses: ['QL', 'QA'],
  read,
  topology: ({ drivers, sourceResistance, vent, ...losses }) => {
    const { elements, probes, cone } = directRadiator(drivers.equivalent, sourceResistance);
    const air = boxAir(losses);
    const radiates = vent.solidAngle !== undefined;
    const tube = vent.wallLoss === 0 ? losslessLine : ductElement;
    const ends: Element[] = [
      branch('acousticMass', 'innerEnd', ['box', 'throat'], { stands: 'impedance' }),
      branch('acousticMass', 'outerEnd', ['mouth', radiates ? 'outside' : 'ground'], { stands: 'impedance' }),
      ...(radiates ? [radiationResistance('radiation', ['outside', 'ground'])] : []),
    ];
    const speed: Probe = { of: 'flow', element: 'outerEnd', factor: 'perVentArea' };
    return {
      elements: [...elements, ...air.elements, ...ends, tube('vent', ['throat', 'mouth'])],
      probes: { ...probes, ventAirSpeed: speed },
      outlets: [cone, ...air.leaks, { name: 'vent', flow: { of: 'flow', element: 'outerEnd' } }],
    };
  },
  values: ({ drivers, sourceResistance, netVolume, vent, ...losses }, air, set) => {
    const { length, wallLoss, innerCorrection, outerCorrection, count, solidAngle } = vent;
    const area = areaOf(vent);
    const Cab = boxCompliance(netVolume, 1, air);
    const mass = (ell: number) => (air.density * ell) / area;
    setDirectRadiator(drivers.equivalent, sourceResistance, set);
    setBoxAir(Cab, 1 / Math.sqrt(mass(length + innerCorrection + outerCorrection) * Cab), losses, set);
    set('innerEnd', mass(innerCorrection));
    set('outerEnd', mass(outerCorrection));
    if (solidAngle !== undefined) set('radiation', air.density, air.speedOfSound, solidAngle);
    if (wallLoss === 0) set('vent', (air.density * air.speedOfSound) / area, length / air.speedOfSound);
    else {
      // Tubes side by side are one of their area, whose layer is as much thicker as its radius is greater.
      const walls = { wallLoss: wallLoss * Math.sqrt(count), flowResistivity: 0 };
      set('vent', ...ductValues({ area, endArea: area, length, ...walls }, air));
    }
    set('perVentArea', 1 / area);
  },
};

/**
 * A driver or a group in a vented box whose vent is a tube along which waves travel, as a network. Unlike the mass of air of
 * `ventedBox`, it resonates again where half a wave fits into it, and the friction at its walls follows from its size.
 *
 * $$ \tan k L = \frac{S}{k V}\quad\text{at the tuning},\qquad f_m \approx \frac{m\,c}{2\,(L + \Delta\ell_1 + \Delta\ell_2)} $$
 *
 * This is what the network gives without losses; the first for ends without corrections. It is checked in tests, not used here.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $L, S$ | `vent` | m, m² | length, and cross-section of all vents together |
 * | $\Delta\ell_1, \Delta\ell_2$ | `vent` | m | end corrections |
 * | $V$ | `netVolume` | m³ | air in the box |
 * | $f_m$ | | Hz | resonances of the pipe |
 *
 * QL and QA hold at the tuning $\frac{c}{2\pi}\sqrt{S/(V\ell)}$, where ℓ is the length with both corrections.
 *
 * @validity waves longer than the width of the vent and than the box; small signals
 * @neglects modes of the box, flexing walls, radiation resistance but that of `solidAngle`, bends, losses that grow with level
 * @throws InputError
 * @returns the system, its spec in SI units
 * @source rayleigh1896 sec. 307; zwikker1949 line constants
 * @example lineVentedBox({ drivers: driver, netVolume: '45 L', vent: { diameter: '75 mm', length: '25 cm' }, QL: 7 })
 */
export const lineVentedBox = (
  input: LineVentedBoxInput | LineVentedBoxSpec,
  air: Air = standardAir,
): System<LineVentedBoxSpec> => systemOf(lineVentedFamily, input, air);
