import { type Air, standardAir } from '../air/index.js';
import { type Fault, type Impossible, InputError, type Warning } from '../fault/index.js';
import { readFieldsInto } from '../quantity/index.js';
import { audit, type Derivation, type Deviation, missing, ofDerived } from './audit.js';
import { commonShape, contradictions, type Driver, driverShape } from './driver.js';
import { type DriverData, dataShape, impossibleQ } from './driver-data.js';
import { type DriverParameters, driverParameters } from './parameters.js';

/** A question that cannot be answered for this driver, and the fields that are missing for it. */
export interface Blocked {
  readonly what: string;
  readonly missing: readonly string[];
}

/** A driver completed from a data sheet, with an account of what was derived. */
export interface CompletedDriver {
  readonly ok: true;
  readonly driver: Driver;
  /** The Thiele/Small parameters in the air of the data sheet. */
  readonly parameters: DriverParameters;
  readonly derived: readonly Derivation[];
  readonly deviations: readonly Deviation[];
  readonly blocked: readonly Blocked[];
  readonly warnings: readonly Warning[];
}

const optionalUses = [
  ['greatest travel', ['Xmax']],
  ['thermal limit', ['Pe']],
  ['rise of the impedance with frequency', ['Le']],
  ['cutout in the panel', ['cutoutDiameter']],
  ['fit of the driver in the box', ['outerDiameter', 'depth']],
  ['volume that the driver takes up in the box', ['displacedVolume']],
] as const;

const physical = ['Sd', 'Mms', 'Cms', 'Rms', 'Re', 'Bl'] as const;

/**
 * Derives the physical parameters of a driver from any sufficient set of data: physical, Thiele/Small or mixed.
 *
 * Given fields are taken in the order of trust (Sd, coneDiameter, Re, fs, Qes, Qms, Qts, Vas, Mms, Cms, Rms, Bl). After
 * each field, everything that follows from the fields taken so far is derived by the relations
 *
 * $$ S_d = \tfrac{\pi}{4} d^2,\ \ \frac{1}{Q_{ts}} = \frac{1}{Q_{es}} + \frac{1}{Q_{ms}},\ \ V_{as} = \rho c^2 S_d^2 C_{ms},\ \
 *    (2\pi f_s)^2 M_{ms} C_{ms} = 1,\ \ Q_{ms} = \frac{2\pi f_s M_{ms}}{R_{ms}},\ \ Q_{es} = \frac{2\pi f_s M_{ms} R_e}{Bl^2} $$
 *
 * in every direction. A given field that has already been derived changes nothing, since the earlier fields win; it is only
 * compared. Within 1 % it is `consistent` and within 10 % it is `rounding`. If it differs by more, the data are refused.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `coneDiameter` | m | effective diameter of the cone |
 * | $f_s$ | `fs` | Hz | resonance in free air |
 * | $Q_{es}, Q_{ms}, Q_{ts}$ | `Qes` `Qms` `Qts` | 1 | quality factors: motor, suspension, both |
 * | $V_{as}$ | `Vas` | m³ | volume of air as compliant as the suspension |
 * | $\rho c^2$ | `sheetAir` | Pa | bulk modulus of the air in which Vas was taken |
 *
 * @validity small-signal data of one driver, without resistance between amplifier and terminals
 * @neglects the change of the air load, which is part of Mms, with the air
 * @returns the driver and an account of what was derived; or `ok: false` with one reason, which names the physical parameters
 * that cannot be derived and the fields that would be enough
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `unknown-field`; `inconsistent` when given
 * fields contradict each other: Qts is not below Qes and Qms, or a redundant field is off by more than 10 %
 * @source small1972direct definition of the driver parameters
 * @example completeDriver({ fs: '27 Hz', Qts: 0.36, Qes: 0.4, Vas: '62 L', Sd: '330 cm²', Re: '5.6 ohm' })
 */
export function completeDriver(data: DriverData, path = 'driver'): CompletedDriver | Impossible {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, path, data, dataShape);
  if (read !== undefined) faults.push(...contradictions(read, path, data), ...impossibleQ(read, path));
  if (read === undefined || faults.length > 0) throw new InputError(faults);

  const air: Air = read.sheetAir ?? standardAir;
  const { known, derived, deviations } = audit(faults, path, read, { ...data }, air);
  if (faults.length > 0) throw new InputError(faults);

  const absent = physical.filter((field) => known[field] === undefined);
  if (absent.length > 0) return { ok: false, because: [missing(absent, known)] };
  const { sheetAir: _, ...rest } = read;
  const sizes = Object.fromEntries(Object.entries(rest).filter(([name]) => Object.hasOwn(commonShape, name)));
  const found = Object.fromEntries(physical.map((field) => [field, known[field]]));
  // The derived values are read too, because accepted data may lead to values that the library does not accept.
  const driver = readFieldsInto(faults, path, { ...sizes, ...found }, driverShape);
  if (driver === undefined) throw new InputError(faults.map((fault) => ofDerived(fault, path, derived)));
  return {
    ok: true,
    driver,
    parameters: driverParameters(driver, air),
    derived,
    deviations,
    blocked: optionalUses.flatMap(([what, fields]) => {
      const absent = fields.filter(
        (field) => read[field] === undefined && !(field === 'Le' && read.coil !== undefined),
      );
      return absent.length === 0 ? [] : [{ what, missing: absent }];
    }),
    warnings: air.warnings,
  };
}
