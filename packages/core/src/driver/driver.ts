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

/**
 * A moving-coil driver by its physical parameters, in SI units. This set is primary: fs, the Q's and Vas follow from it
 * (Vas only together with an air), so that it stays the same driver in any air. A plain record that survives JSON.
 */
export interface Driver {
  readonly name?: string;
  /** Effective cone area, m². */
  readonly Sd: ConeArea;
  /** Moving mass with the air load of both sides of the cone, kg. */
  readonly Mms: Mass;
  /** Compliance of the suspension, m/N. */
  readonly Cms: Compliance;
  /** Mechanical resistance of the suspension, N·s/m. */
  readonly Rms: MechanicalResistance;
  /** Direct-current resistance of the voice coil, Ω. */
  readonly Re: Resistance;
  /** Force factor, T·m. */
  readonly Bl: ForceFactor;
  /** Inductance of the voice coil, H; in series with the pair R2 ∥ L2 when that is given. */
  readonly Le?: Inductance;
  /** Loss of the voice coil by eddy currents, Ω: in parallel with L2. */
  readonly R2?: Resistance;
  /** Inductance of the lossy part of the voice coil, H: in parallel with R2. */
  readonly L2?: Inductance;
  /** Greatest travel that the motor is made for, peak, one way, m. */
  readonly Xmax?: DisplacementPeak;
  /** Power that the voice coil can turn into heat for long, W. */
  readonly Pe?: Power;
  /** Outer diameter of the frame, m. */
  readonly outerDiameter?: Length;
  /** Diameter of the hole in the panel, m. */
  readonly cutoutDiameter?: Length;
  /** Depth behind the panel, m. */
  readonly depth?: Length;
  /** Volume that the driver takes from the box, m³. */
  readonly displacedVolume?: Volume;
}

/** A {@link Driver} as people write it: each quantity as a text with its unit, or as a branded SI number. */
export interface DriverInput {
  readonly name?: string | undefined;
  readonly Sd: ConeAreaInput;
  readonly Mms: MassInput;
  readonly Cms: ComplianceInput;
  readonly Rms: MechanicalResistanceInput;
  readonly Re: ResistanceInput;
  readonly Bl: ForceFactorInput;
  readonly Le?: InductanceInput | undefined;
  readonly R2?: ResistanceInput | undefined;
  readonly L2?: InductanceInput | undefined;
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

/** Fields that a data sheet and the physical record share as they are. */
export const commonShape = {
  name: optional(text),
  Le: optional(notNegative('inductance')),
  R2: optional(positive('resistance')),
  L2: optional(positive('inductance')),
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

/** Faults between fields that each are right alone: half of a lossy coil, a frame that falls through its hole. */
export function contradictions(
  read: Partial<Fields<typeof commonShape>>,
  path: string,
  written: Pick<DriverInput, 'outerDiameter' | 'cutoutDiameter'>,
): readonly Fault[] {
  const faults: Fault[] = [];
  const { R2, L2, outerDiameter, cutoutDiameter } = read;
  if ((R2 === undefined) !== (L2 === undefined)) {
    const [missing, there] = R2 === undefined ? ['R2', 'L2'] : ['L2', 'R2'];
    const remedy = `Give ${missing} as well, or remove ${there}.`;
    faults.push({
      code: 'inconsistent',
      path: `${path}.${missing}`,
      got: undefined,
      expected: `a value beside ${there}`,
      remedy,
    });
  }
  if (outerDiameter !== undefined && cutoutDiameter !== undefined && cutoutDiameter >= outerDiameter) {
    const outer = written.outerDiameter;
    const expected = `less than outerDiameter, ${typeof outer === 'string' ? outer : `${outer} m`}`;
    const got = written.cutoutDiameter;
    const remedy = 'Swap the two, or measure again.';
    faults.push({ code: 'inconsistent', path: `${path}.cutoutDiameter`, got, expected, remedy });
  }
  return faults;
}

/**
 * Reads the physical parameters of a driver: texts or SI numbers in, a checked record of SI numbers out.
 *
 * @validity small-signal parameters of one driver
 * @neglects any dependence on travel, current, heat and age
 * @returns a plain record in SI units
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `unknown-field`, `inconsistent`
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
