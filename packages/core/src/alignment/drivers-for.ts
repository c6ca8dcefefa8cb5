import { standardAir } from '../air/index.js';
import { type Driver, driver } from '../driver/index.js';
import { type DrivenSpec, type Family, totalQ } from '../enclosure/index.js';
import { type Impossible, impossible } from '../fault/index.js';
import { logarithmic } from '../numeric/index.js';
import { si } from '../quantity/index.js';
import type { Aligned, AlignmentResult } from './aligned.js';
import type { Alignment } from './alignment.js';
import { solveAlignment } from './solve.js';

/** What an alignment makes of a driver, as multiples of what the sheet of the driver says. */
export interface DriverRow {
  /** Total quality factor of the driver. */
  readonly Qts: number;
  /** Net volume ÷ Vas. */
  readonly volume: number;
  /** Tuning ÷ fs, where the box has one. */
  readonly tuning?: number;
  /** Half-power frequency ÷ fs, where there is one. */
  readonly f3?: number;
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

/** A spec with the fields that rows are told by. */
interface Sized extends DrivenSpec {
  readonly netVolume: number;
  readonly fb?: number;
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

/** Volume of air as springy as its suspension, m³. */
const Vas = (Sd ** 2 * standardAir.density * standardAir.speedOfSound ** 2) / (ANGULAR ** 2 * Mms);

/** Quality factors that are looked at where none are named. */
const LOOKED_AT = logarithmic(0.12, 1.2, 25);
/** Low ones, from which a resistance leads to the one that a fixed shape takes. */
const LOW = [0.1, 0.15, 0.25, 0.4, 0.7] as const;
/** How closely the ends of the range are found. */
const HALVINGS = 16;

function rowOf({ system, f3, parameters }: Aligned<Sized>): DriverRow {
  const { netVolume, fb } = system.spec;
  return {
    Qts: totalQ(system.spec, ANGULAR),
    volume: netVolume / Vas,
    ...(fb !== undefined && { tuning: fb / fs }),
    ...(f3.ok && { f3: f3.frequency / fs }),
    parameters,
  };
}

/**
 * Which drivers an alignment suits: the range of their total quality factor, and over that range the volume, the tuning and the
 * half-power frequency as multiples of Vas and fs. Read it before buying a driver.
 *
 * @validity families whose response depends on the total quality factor alone: no coil inductance, equal drivers
 * @neglects what the family neglects; the inductance of the coil
 * @returns the range and its rows, or why no driver that was looked at has the alignment
 * @throws InputError those of the family
 * @source small1973vented1 alignment charts: α, h and f3/fs over QT
 * @example driversFor(quasiThirdOrder, ventedFamily, { QL: 7 }).ok // true
 */
export function driversFor<Spec extends Sized, Input>(
  alignment: Alignment,
  family: Family<Spec, Input>,
  losses: Partial<Input> = {},
  Qts: ArrayLike<number> = LOOKED_AT,
): DriversFor | Impossible {
  const solve = (Q: number, addResistance = false): AlignmentResult<Spec> =>
    solveAlignment(alignment, family, { ...losses, drivers: driverOf(Q) }, { addResistance });
  const rowAt = (Q: number, addResistance = false): DriverRow | undefined => {
    const found = solve(Q, addResistance);
    return found.ok ? rowOf(found) : undefined;
  };
  const only = alignment.free === undefined ? onlyRow((Q) => rowAt(Q, true)) : undefined;
  const rows = only ? [only] : rowsOver(Qts, rowAt);
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) {
    const failed = solve(Qts[0] ?? 1);
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
