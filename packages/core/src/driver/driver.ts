import { type Fault, InputError } from '../fault/index.js';
import {
  type Compliance,
  type ComplianceInput,
  type ConeArea,
  type ConeAreaInput,
  type DisplacementPeak,
  type DisplacementPeakInput,
  type Field,
  type Fields,
  type ForceFactor,
  type ForceFactorInput,
  type Inductance,
  type InductanceInput,
  type Length,
  type LengthInput,
  type Mass,
  type MassInput,
  type MechanicalResistance,
  type MechanicalResistanceInput,
  notNegative,
  optional,
  type Power,
  type PowerInput,
  positive,
  type Resistance,
  type ResistanceInput,
  readFieldsInto,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import { type CoilModel, coilField } from './coil.js';
import { type SuspensionModel, suspensionField } from './suspension.js';

/**
 * A moving-coil driver by its physical parameters, in SI units. The Thiele/Small parameters follow from them, and Vas also
 * depends on the air, so the record describes the same driver in any air. It is plain and can be stored as JSON, except for the models of coil and
 * suspension: these have functions, and must be passed in again.
 */
export interface Driver {
  readonly name?: string;
  /** Effective cone area, m². */
  readonly Sd: ConeArea;
  /** Moving mass with the air load on both sides of the cone, kg. */
  readonly Mms: Mass;
  /** Compliance of the suspension, m/N. */
  readonly Cms: Compliance;
  /** Mechanical resistance of the suspension, N·s/m. */
  readonly Rms: MechanicalResistance;
  /** DC resistance of the voice coil, Ω. */
  readonly Re: Resistance;
  /** Force factor, T·m. */
  readonly Bl: ForceFactor;
  /** Inductance of the voice coil, H: short for `coil: inductor({ Le })`. */
  readonly Le?: Inductance;
  /** What the coil has besides Re, where that is more than Le. */
  readonly coil?: CoilModel;
  /** How the compliance departs from Cms over frequency; by default not at all. */
  readonly suspension?: SuspensionModel;
  /** Greatest travel for which the motor is designed, peak, one way, m. */
  readonly Xmax?: DisplacementPeak;
  /** Power that the voice coil can dissipate continuously, W. */
  readonly Pe?: Power;
  /** Outer diameter of the frame, m. */
  readonly outerDiameter?: Length;
  /** Diameter of the cutout in the panel, m. */
  readonly cutoutDiameter?: Length;
  /** Depth behind the panel, m. */
  readonly depth?: Length;
  /** Volume that the driver takes from the box, m³. */
  readonly displacedVolume?: Volume;
}

/** The input of {@link driver}. Each quantity is a text with its unit, or a branded SI number. */
export interface DriverInput {
  readonly name?: string | undefined;
  readonly Sd: ConeAreaInput;
  readonly Mms: MassInput;
  readonly Cms: ComplianceInput;
  readonly Rms: MechanicalResistanceInput;
  readonly Re: ResistanceInput;
  readonly Bl: ForceFactorInput;
  readonly Le?: InductanceInput | undefined;
  readonly coil?: CoilModel | undefined;
  readonly suspension?: SuspensionModel | undefined;
  readonly Xmax?: DisplacementPeakInput | undefined;
  readonly Pe?: PowerInput | undefined;
  readonly outerDiameter?: LengthInput | undefined;
  readonly cutoutDiameter?: LengthInput | undefined;
  readonly depth?: LengthInput | undefined;
  readonly displacedVolume?: VolumeInput | undefined;
}

const text: Field<string> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'string' && value !== '') return value;
    faults.push({ code: 'empty', path, got: value, expected: 'a text', remedy: 'Give a name, or leave it out.' });
    return undefined;
  },
};

/** Fields that are the same in a data sheet and in the physical record. */
export const commonShape = {
  name: optional(text),
  Le: optional(notNegative('inductance')),
  coil: optional(coilField),
  suspension: optional(suspensionField),
  Xmax: optional(positive('displacementPeak')),
  Pe: optional(positive('power')),
  outerDiameter: optional(positive('length')),
  cutoutDiameter: optional(positive('length')),
  depth: optional(positive('length')),
  displacedVolume: optional(positive('volume')),
};

/** How a {@link Driver} is read: for `readFields`, and for `nested` in records that hold a driver. */
export const driverShape = {
  Sd: positive('coneArea'),
  Mms: positive('mass'),
  Cms: positive('compliance'),
  Rms: positive('mechanicalResistance'),
  Re: positive('resistance'),
  Bl: positive('forceFactor'),
  ...commonShape,
};

/** Faults between fields that are valid on their own: Le beside a coil, or a cutout as wide as the frame. */
export function contradictions(
  read: Partial<Fields<typeof commonShape>>,
  path: string,
  written: Pick<DriverInput, 'Le' | 'outerDiameter' | 'cutoutDiameter'>,
): readonly Fault[] {
  const faults: Fault[] = [];
  const { Le, coil, outerDiameter, cutoutDiameter } = read;
  if (Le !== undefined && coil !== undefined) {
    const remedy = 'Remove one of the two.';
    faults.push({
      code: 'conflict',
      path: `${path}.Le`,
      got: written.Le,
      expected: 'no Le beside a coil',
      remedy,
    });
  }
  if (outerDiameter !== undefined && cutoutDiameter !== undefined && cutoutDiameter >= outerDiameter) {
    const outer = written.outerDiameter;
    const expected = `less than outerDiameter, ${typeof outer === 'string' ? outer : `${outer} m`}`;
    const got = written.cutoutDiameter;
    const remedy = 'Swap the two diameters, or measure again.';
    faults.push({ code: 'inconsistent', path: `${path}.cutoutDiameter`, got, expected, remedy });
  }
  return faults;
}

/**
 * Reads the physical parameters of a driver from texts or SI numbers, and returns a checked record of SI numbers.
 *
 * @validity small-signal parameters of one driver
 * @neglects any dependence on travel, current, temperature and age
 * @returns a plain record in SI units
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent`,
 * `conflict` for Le beside a coil
 * @source small1972direct definition of the driver parameters
 * @example
 * driver({ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' }).Mms // 0.086
 */
export function driver(input: DriverInput, path = 'driver'): Driver {
  const faults: Fault[] = [];
  const record = readFieldsInto(faults, path, input, driverShape);
  if (record !== undefined) faults.push(...contradictions(record, path, input));
  if (record === undefined || faults.length > 0) throw new InputError(faults);
  return record;
}
