/**
 * The road of the textbooks, apart from the library's: Thiele/Small parameters made into a physical driver, and the
 * response as a polynomial over the normalised frequency.
 */
import { type Air, standardAir } from '@airspring/core/air';
import { type Driver, driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import table from './alignments.json' with { type: 'json' };

/** The air of the papers, as seen restated: 345 m/s and 1.18 kg/m³. */
export const paperAir: Air = { ...standardAir, density: si('density', 1.18), speedOfSound: si('speed', 345) };

export interface Sheet {
  readonly fs: number;
  readonly Qes: number;
  readonly Qms: number;
  readonly Vas: number;
  readonly Sd: number;
  readonly Re: number;
}

/** A physical driver of such a sheet. */
export function physical({ fs, Qes, Qms, Vas, Sd, Re }: Sheet, air: Air): Driver {
  const ws = 2 * Math.PI * fs;
  const Cms = Vas / (air.density * air.speedOfSound ** 2 * Sd ** 2);
  const Mms = 1 / (ws ** 2 * Cms);
  return driver({
    Sd: si('coneArea', Sd),
    Mms: si('mass', Mms),
    Cms: si('compliance', Cms),
    Rms: si('mechanicalResistance', (ws * Mms) / Qms),
    Re: si('resistance', Re),
    Bl: si('forceFactor', Math.sqrt((ws * Mms * Re) / Qes)),
  });
}

/** Total Q split between motor and suspension: only the sum of the dampings counts for the shape. */
export const split = (Qts: number, Qms = 5) => ({ Qms, Qes: 1 / (1 / Qts - 1 / Qms) });

export interface AlignmentRow {
  readonly QL: number;
  readonly Qts: number;
  readonly h: number;
  readonly alpha: number;
}

/** The free choices of the invented driver: none of them changes the shape of a response. */
export const fs = 30;
const Vas = 0.06;

/** The vented box of one row of a table of alignments; QL 0 stands for no leak. */
export const ventedOf = ({ QL, Qts, h, alpha }: AlignmentRow): System => {
  const drivers = physical({ fs, ...split(Qts), Vas, Sd: 0.033, Re: 5.6 }, paperAir);
  return ventedBox(
    { drivers, netVolume: si('volume', Vas / alpha), fb: si('frequency', h * fs), ...(QL > 0 && { QL }) },
    paperAir,
  ) as System;
};

type Column = 'QL' | 'Qts' | 'h' | 'alpha' | 'f3' | 'f10' | 'a1' | 'a2' | 'a3' | 'kP' | 'fXmax' | 'Xmax';

/** Columns of the alignments of one family, or of all. */
export function alignments(family?: string): Readonly<Record<Column, readonly number[]>> {
  const rows = table.rows.filter(([name]) => family === undefined || name === family);
  return Object.fromEntries(
    table.columns.slice(1).map((column, i) => [column, rows.map((row) => row[i + 1]!)]),
  ) as unknown as Record<Column, readonly number[]>;
}

/** Coefficients of the normalised fourth-order high-pass, over √(ωs ωb), as printed for a box that leaks. */
export function printedCoefficients({ QL, Qts, h, alpha }: AlignmentRow): readonly [number, number, number] {
  const leak = QL > 0 ? 1 / QL : 0;
  return [
    1 / (Math.sqrt(h) * Qts) + Math.sqrt(h) * leak,
    (alpha + 1 + h * h) / h + leak / Qts,
    Math.sqrt(h) / Qts + leak / Math.sqrt(h),
  ];
}

/** A closed box of given total Q and resonance; its free choices change no shape. */
export function closedOf({
  Qtc,
  fc = 50,
  alpha = 3,
}: {
  readonly Qtc: number;
  readonly fc?: number;
  readonly alpha?: number;
}) {
  const rise = Math.sqrt(1 + alpha);
  const drivers = physical({ fs: fc / rise, ...split(Qtc / rise, 4), Vas, Sd: 0.033, Re: 5.6 }, paperAir);
  return closedBox({ drivers, netVolume: si('volume', Vas / alpha) }, paperAir) as System;
}
