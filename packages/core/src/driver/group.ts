import { type Fault, InputError, isInputError } from '../fault/index.js';
import { count, type Field, optional, readFieldsInto, si } from '../quantity/index.js';
import { type Driver, type DriverInput, driver as readDriver } from './driver.js';

/** How the identical drivers of a group are wired and mounted. */
export interface GroupInput {
  /** Drivers in series in each branch, 1 to 64; default 1. */
  readonly series?: number | undefined;
  /** Branches in parallel, 1 to 64; default 1. */
  readonly parallel?: number | undefined;
  /** Whether the drivers are mounted in pairs that share a small sealed chamber, so that a pair has one front; default false. */
  readonly isobaric?: boolean | undefined;
}

/** Identical drivers that move alike, and the single driver that is equivalent to them. */
export interface DriverGroup {
  /** One of the drivers. Its travel and its sizes are those of each. */
  readonly driver: Driver;
  /** Number of drivers, series × parallel. */
  readonly count: number;
  readonly series: number;
  readonly parallel: number;
  readonly isobaric: boolean;
  /** Number of cones that face outwards: `count`, or half of it for isobaric pairs. */
  readonly fronts: number;
  /** The single driver that behaves like all of them, electrically and acoustically. */
  readonly equivalent: Driver;
  /** The fraction of the group's terminal voltage and current that each driver receives. */
  readonly share: { readonly voltage: number; readonly current: number };
}

const truth: Field<boolean> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'boolean') return value;
    faults.push({ code: 'unit', path, got: value, expected: 'true or false', remedy: 'Write true or false.' });
    return undefined;
  },
};

const groupShape = { series: optional(count(64)), parallel: optional(count(64)), isobaric: optional(truth) };

const times = <T extends number>(value: T, factor: number): T => (value * factor) as T;

/**
 * Combines identical drivers that move alike into one equivalent driver. Each of $p$ parallel branches has $s$ drivers in
 * series, which makes $n = sp$ drivers. Of their cones, $a$ face outwards ($a = n$; $a = n/2$ for isobaric pairs):
 *
 * $$ S_d' = a S_d,\quad M_{ms}' = n M_{ms},\quad R_{ms}' = n R_{ms},\quad C_{ms}' = C_{ms}/n,\quad
 *    R_e' = \tfrac{s}{p} R_e,\quad L_e' = \tfrac{s}{p} L_e,\quad Bl' = s\,Bl,\quad P_e' = n P_e $$
 *
 * All cones have the same velocity $v$, so masses, resistances and stiffnesses add. A branch generates the voltage
 * $s\,Bl\,v$. The group current $i$ gives each coil $i/p$, and together the coils give the force $n\,Bl\,i/p = s\,Bl\,i$.
 * Therefore one force factor serves both. The impedance of a coil model is that of one driver times $s/p$; a suspension model is
 * relative to Cms and stays. fs, Qms, Qes and Qts do not change. $V_{as}' = \rho c^2 S_d'^2 C_{ms}'$ is
 * $n V_{as}$ for drivers side by side. An isobaric pair has the area of one driver and half the compliance, and therefore half
 * the Vas: it needs half the box, at half the efficiency.
 *
 * Each driver receives 1/s of the group's voltage and 1/p of its current, hence 1/n of the power. Xmax does not change. The
 * displaced volume is that of all n drivers; for an isobaric pair with one driver outside the box this is too much, on the
 * safe side. Frame diameters and depth are found only in `driver`.
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $s$ | `series` | 1 | drivers in series in a branch |
 * | $p$ | `parallel` | 1 | branches in parallel |
 * | $n$ | `count` | 1 | drivers |
 * | $a$ | `fronts` | 1 | cones that face outwards |
 *
 * @validity identical drivers under identical load; for isobaric pairs, frequencies at which the air in the coupling chamber
 * is stiff compared with the suspensions and light compared with the cones.
 * @neglects differences between the drivers, mutual radiation, mass and compliance of the air in an isobaric chamber.
 * @returns the group, with `equivalent` in SI units
 * @throws InputError those of `driver`; `out-of-range` for the counts; `inconsistent` for an odd number of isobaric drivers
 * @source beranek2012 electro-mechano-acoustical circuits: elements of one velocity, force factor
 * @example group(one, { parallel: 2 }).equivalent.Re // half of one.Re
 */
export function group(driver: DriverInput, wiring: GroupInput = {}): DriverGroup {
  const faults: Fault[] = [];
  const read = readFieldsInto(faults, 'group', wiring, groupShape);
  let one: Driver | undefined;
  try {
    one = readDriver(driver);
  } catch (error) {
    if (!isInputError(error)) throw error;
    faults.push(...error.faults);
  }
  const { series = 1, parallel = 1, isobaric = false } = read ?? {};
  const n = series * parallel;
  if (isobaric && n % 2 === 1) {
    const remedy = 'State how each pair is wired: parallel: 2, or series: 2.';
    faults.push({
      code: 'inconsistent',
      path: 'group.isobaric',
      got: true,
      expected: 'an even number of drivers',
      remedy,
    });
  }
  if (one === undefined || faults.length > 0) throw new InputError(faults);
  const fronts = isobaric ? n / 2 : n;
  const share = { voltage: 1 / series, current: 1 / parallel };
  return {
    driver: one,
    count: n,
    series,
    parallel,
    isobaric,
    fronts,
    equivalent: joined(one, series, parallel, fronts),
    share,
  };
}

function joined(one: Driver, series: number, parallel: number, fronts: number): Driver {
  const n = series * parallel;
  const electrical = series / parallel;
  const { name, Le, coil, suspension, Xmax, Pe, displacedVolume } = one;
  return {
    ...(name !== undefined && { name: n === 1 ? name : `${n} × ${name}` }),
    Sd: times(one.Sd, fronts),
    Mms: times(one.Mms, n),
    Cms: si('compliance', one.Cms / n),
    Rms: times(one.Rms, n),
    Re: times(one.Re, electrical),
    Bl: times(one.Bl, series),
    ...(Le !== undefined && { Le: times(Le, electrical) }),
    ...(coil !== undefined && { coil: electrical === 1 ? coil : coil.scaled(electrical, 1) }),
    ...(suspension !== undefined && { suspension }),
    ...(Xmax !== undefined && { Xmax }),
    ...(Pe !== undefined && { Pe: times(Pe, n) }),
    ...(displacedVolume !== undefined && { displacedVolume: times(displacedVolume, n) }),
  };
}
