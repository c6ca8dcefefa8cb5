import { type Air, airField, standardAir } from '../air/index.js';
import { type Fault, InputError } from '../fault/index.js';
import {
  type Compliance,
  type ConeArea,
  type DisplacementPeak,
  type Field,
  type Length,
  type Mass,
  type MechanicalResistance,
  optional,
  positive,
  readFieldsInto,
  type Volume,
} from '../quantity/index.js';
import { audit, missing, ofDerived } from './audit.js';
import { commonShape, contradictions } from './driver.js';
import { type DriverData, dataShape } from './driver-data.js';

/**
 * A passive radiator, which is a cone with its suspension and without a motor, in SI units. Its resonance and Vas follow from
 * these parameters. The record is plain and can be stored as JSON.
 */
export interface PassiveRadiator {
  readonly name?: string;
  /** Effective cone area, m². */
  readonly Sd: ConeArea;
  /** Moving mass with the air load on both sides of the cone, without added mass, kg. */
  readonly Mms: Mass;
  /** Compliance of the suspension, m/N. */
  readonly Cms: Compliance;
  /** Mechanical resistance of the suspension, N·s/m. */
  readonly Rms: MechanicalResistance;
  /** Greatest travel for which the suspension is designed, peak, one way, m. */
  readonly Xmax?: DisplacementPeak;
  /** Outer diameter of the frame, m. */
  readonly outerDiameter?: Length;
  /** Diameter of the cutout in the panel, m. */
  readonly cutoutDiameter?: Length;
  /** Depth behind the panel, m. */
  readonly depth?: Length;
  /** Volume that the radiator takes up in the box, m³. */
  readonly displacedVolume?: Volume;
}

/** The data of a passive radiator from a data sheet or a measurement: any sufficient fields; fs, Qms and Vas without added mass. */
export type PassiveRadiatorInput = Pick<
  DriverData,
  | 'name'
  | 'Sd'
  | 'coneDiameter'
  | 'fs'
  | 'Qms'
  | 'Vas'
  | 'Mms'
  | 'Cms'
  | 'Rms'
  | 'sheetAir'
  | 'Xmax'
  | 'outerDiameter'
  | 'cutoutDiameter'
  | 'depth'
  | 'displacedVolume'
>;

const { name, Xmax, outerDiameter, cutoutDiameter, depth, displacedVolume } = commonShape;
const { Sd, coneDiameter, fs, Qms, Vas, Mms, Cms, Rms } = dataShape;
const sizesShape = { name, Xmax, outerDiameter, cutoutDiameter, depth, displacedVolume };
const inputShape = { Sd, coneDiameter, fs, Qms, Vas, Mms, Cms, Rms, sheetAir: optional(airField), ...sizesShape };
const shape = {
  Sd: positive('coneArea'),
  Mms: positive('mass'),
  Cms: positive('compliance'),
  Rms: positive('mechanicalResistance'),
  ...sizesShape,
};

const physical = ['Sd', 'Mms', 'Cms', 'Rms'] as const;
const related = ['Sd', 'fs', 'Qms', 'Vas', 'Mms', 'Cms', 'Rms'] as const;

/** How a {@link PassiveRadiator} is read, for records that hold one. */
export const passiveRadiatorField: Field<PassiveRadiator> = { optional: false, read: readRadiator };

function readRadiator(faults: Fault[], input: unknown, path: string): PassiveRadiator | undefined {
  const before = faults.length;
  const read = readFieldsInto(faults, path, input, inputShape);
  if (read === undefined) return undefined;
  const written = input as Readonly<Record<string, never>>;
  faults.push(...contradictions(read, path, written));
  const air: Air = read.sheetAir ?? standardAir;
  const { known, derived } = audit(faults, path, read, written, air);
  if (faults.length > before) return undefined;
  const absent = physical.filter((field) => known[field] === undefined);
  if (absent.length > 0) {
    const remedy = missing(absent, known, related).text;
    const expected = `data from which ${absent.join(', ')} ${absent.length === 1 ? 'follows' : 'follow'}`;
    faults.push({ code: 'empty', path, got: input, expected, remedy });
    return undefined;
  }
  const sizes = Object.fromEntries(Object.entries(read).filter(([field]) => Object.hasOwn(sizesShape, field)));
  const found = Object.fromEntries(physical.map((field) => [field, known[field]]));
  // The derived values are read too, because accepted data may lead to values that the library does not accept.
  const again: Fault[] = [];
  const record = readFieldsInto(again, path, { ...sizes, ...found }, shape);
  faults.push(...again.map((fault) => ofDerived(fault, path, derived)));
  return record;
}

/**
 * Reads the data of a passive radiator and derives its physical parameters by the relations of `completeDriver`
 *
 * $$ S_d = \tfrac{\pi}{4} d^2,\quad C_{ms} = \frac{V_{as}}{\rho c^2 S_d^2},\quad M_{ms} = \frac{1}{(2\pi f_s)^2 C_{ms}},\quad
 *    R_{ms} = \frac{2\pi f_s M_{ms}}{Q_{ms}} $$
 *
 * in every direction. A field that other fields also imply may deviate from them by 10 %, as rounding does. If it deviates by
 * more, the data are refused.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `coneDiameter` | m | effective diameter of the cone |
 * | $f_s$ | `fs` | Hz | resonance in free air |
 * | $Q_{ms}$ | `Qms` | 1 | quality factor of the suspension at fs |
 * | $V_{as}$ | `Vas` | m³ | volume of air as compliant as the suspension |
 * | $\rho c^2$ | `sheetAir` | Pa | bulk modulus of the air in which Vas was taken; default 20 °C, 101325 Pa, 50 % |
 *
 * @validity small-signal data, without added mass
 * @neglects the change of the air load, which is part of Mms, with the air; any dependence on travel
 * @returns a plain record in SI units
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`; `empty` when the data are not
 *   sufficient, with the fields to add; `inconsistent` when they contradict each other
 * @source small1974pr1 definition of the passive-radiator parameters
 * @example passiveRadiator({ Sd: '330 cm²', fs: '17 Hz', Vas: '110 L', Qms: 6 }).Mms // 0.123
 */
export function passiveRadiator(input: PassiveRadiatorInput, path = 'radiator'): PassiveRadiator {
  const faults: Fault[] = [];
  const record = readRadiator(faults, input, path);
  if (record === undefined) throw new InputError(faults);
  return record;
}
