import { type Driver, driver } from '../driver/index.js';
import { type DrivenSpec, type Family, totalQ, type Unknown } from '../enclosure/index.js';
import { type Impossible, impossible, refuse } from '../fault/index.js';
import { logarithmic } from '../numeric/index.js';
import { si } from '../quantity/index.js';
import type { Aligned, AlignmentResult } from './aligned.js';
import type { Alignment } from './alignment.js';
import { isGiven } from './options.js';
import { judgeAlignment, refuseQualities } from './refusals.js';
import { solveAlignment } from './solve.js';
import { numbersOf } from './unknowns.js';

/** What an alignment makes of a driver, as multiples of what the sheet of the driver says. */
export interface DriverRow {
  /** Total quality factor of the driver. */
  readonly Qts: number;
  /** What the alignment chooses of the box, each as a multiple of its unit: volumes ÷ Vas, tunings ÷ fs. */
  readonly box: Readonly<Record<string, number>>;
  /** Half-power frequency ÷ fs, where there is one; of a band-pass the lower edge. */
  readonly f3?: number;
  /** The upper edge of a band-pass ÷ fs. */
  readonly upper?: number;
  /** The parameters of the alignment, with the one that the driver decides. */
  readonly parameters: Readonly<Record<string, number>>;
}

/** Which drivers an alignment suits. */
export interface DriversFor {
  readonly ok: true;
  readonly alignment: string;
  readonly family: string;
  /** The least and the greatest total quality factor, of those that were looked at. */
  readonly Qts: readonly [least: number, greatest: number];
  /** In the order of Qts; both ends are rows. */
  readonly rows: readonly DriverRow[];
}

/** Any driver will do, since quality factors and ratios say everything. */
const [fs, Mms, Sd, Re] = [40, 0.05, 0.03, 6] as const;
const ANGULAR = 2 * Math.PI * fs;
/** Mechanical quality factor ÷ total. */
const MECHANICAL = 20;

const driverOf = (Qts: number): Driver =>
  driver({
    Mms: si('mass', Mms),
    Cms: si('compliance', 1 / (ANGULAR ** 2 * Mms)),
    Rms: si('mechanicalResistance', (ANGULAR * Mms) / (MECHANICAL * Qts)),
    Sd: si('coneArea', Sd),
    Re: si('resistance', Re),
    Bl: si('forceFactor', Math.sqrt(((1 - 1 / MECHANICAL) * ANGULAR * Mms * Re) / Qts)),
  });

/** Quality factors that are looked at where none are named. */
const LOOKED_AT = logarithmic(0.12, 1.2, 25);
/** Low ones, from which a resistance leads to the one that a fixed shape takes. */
const LOW = [0.1, 0.15, 0.25, 0.4, 0.7] as const;
/** How closely the ends of the range are found. */
const HALVINGS = 16;

function rowOf<Spec extends DrivenSpec>(
  { system, f3, upper, parameters }: Aligned<Spec>,
  open: readonly Unknown<Spec>[],
): DriverRow {
  const { spec, air } = system;
  const box = open.map(({ field, unit, beside }) => {
    const value = numbersOf(spec)[field]! + (beside?.(spec) ?? 0);
    return [field, value / unit(spec.drivers.equivalent, air, spec)] as const;
  });
  return {
    Qts: totalQ(spec, ANGULAR),
    box: Object.fromEntries(box),
    ...(f3.ok && { f3: f3.frequency / fs }),
    ...(upper?.ok && { upper: upper.frequency / fs }),
    parameters,
  };
}

/**
 * Which drivers an alignment suits: the range of their total quality factor, and over that range the box and the
 * half-power frequency as multiples of Vas and fs. Read it before buying a driver. What else a box needs, such as its losses, may
 * depend on the driver: a passive radiator whose Vas is twice that of the driver.
 *
 * @validity families whose response depends on the total quality factor alone: no coil inductance, equal drivers
 * @neglects what the family neglects; the inductance of the coil
 * @returns the range and its rows, or why no driver that was looked at has the alignment
 * @throws InputError `empty`, `not-finite`, `not-positive`, `unsorted` of quality factors; those of the family
 * @source small1973vented1 alignment charts: α, h and f3/fs over QT
 * @example driversFor(quasiThirdOrder, ventedFamily, { QL: 7 }).ok // true
 */
export function driversFor<Spec extends DrivenSpec, Input>(
  alignment: Alignment,
  family: Family<Spec, Input>,
  losses: Partial<Input> | ((driver: Driver) => Partial<Input>) = {},
  Qts: ArrayLike<number> = LOOKED_AT,
): DriversFor | Impossible {
  refuse(judgeAlignment(alignment));
  refuseQualities('Qts', Qts);
  const given = (drivers: Driver): Partial<Input> => (typeof losses === 'function' ? losses(drivers) : losses);
  const solve = (Q: number, addResistance = false): AlignmentResult<Spec> => {
    const drivers = driverOf(Q);
    return solveAlignment(alignment, family, { ...given(drivers), drivers }, { addResistance });
  };
  const known = given(driverOf(LOW[0]));
  const open = (family.unknowns ?? []).filter(({ field }) => !isGiven(known, field));
  const rowAt = (Q: number, addResistance = false): DriverRow | undefined => {
    const found = solve(Q, addResistance);
    return found.ok ? rowOf(found, open) : undefined;
  };
  const only = alignment.free === undefined ? onlyRow((Q) => rowAt(Q, true)) : undefined;
  const rows = only ? [only] : rowsOver(Qts, rowAt);
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) {
    const failed = solve(Qts[0]!);
    return failed.ok ? impossible('no-driver', `No driver was looked at for ${alignment.name}.`) : failed;
  }
  return { ok: true, alignment: alignment.name, family: family.name, Qts: [first.Qts, last.Qts], rows };
}

/** The row of a shape that suits one quality factor alone: a resistance then leads from a lower one to it. */
function onlyRow(rowAt: (Q: number) => DriverRow | undefined): DriverRow | undefined {
  for (const Q of LOW) {
    const row = rowAt(Q);
    if (row !== undefined) return Math.abs(row.Qts / Q - 1) > 1e-6 ? row : undefined;
  }
  return undefined;
}

/** The rows of some quality factors, with both ends of each range that has boxes. */
function rowsOver(Qts: ArrayLike<number>, rowAt: (Q: number) => DriverRow | undefined): readonly DriverRow[] {
  const all = Array.from(Qts, (Q) => ({ Q, row: rowAt(Q) }));
  const endOf = (inside: number, beyond: { readonly Q: number; readonly row?: DriverRow | undefined } | undefined) => {
    if (beyond === undefined || beyond.row !== undefined) return [];
    let [within, without] = [inside, beyond.Q];
    let last: DriverRow | undefined;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = Math.sqrt(within * without);
      const row = rowAt(middle);
      if (row === undefined) without = middle;
      else [within, last] = [middle, row];
    }
    return last ?? [];
  };
  return all.flatMap(({ Q, row }, i) =>
    row === undefined ? [] : [endOf(Q, all[i - 1]), row, endOf(Q, all[i + 1])].flat(),
  );
}
