import { type CompletedDriver, levelHalfSpace, referenceEfficiency } from '@airspring/core/driver';
import type { Fault } from '@airspring/core/fault';
import { decimalText, si } from '@airspring/core/quantity';
import * as v from 'valibot';
import type { Estimated } from '../job/job.js';
import { decibels, ohms } from './bounds.js';
import { quantity } from './quantity-text.js';

const opt = v.exactOptional;

/** What a sheet may say instead of Vas. */
export const sensitivityFields = {
  sensitivity: opt(
    v.pipe(
      quantity('level', { ...decibels, example: '88 dB' }),
      v.description('level at 1 m in half space, where the response is flat; used if the sheet does not give Vas'),
    ),
  ),
  sensitivityAt: opt(
    v.pipe(
      v.picklist(['1 W', '2.83 V']),
      v.description('the drive of the sensitivity: 2.83 V rms at the terminals, or 1 W into the nominal impedance'),
    ),
  ),
  nominalImpedance: opt(
    v.pipe(
      quantity('resistance', { ...ohms, example: '8 Ω' }),
      v.description('nominal impedance; if Re is not given, it is assumed to be 0.8 times this (common practice)'),
    ),
  ),
};

interface Sheet {
  readonly fs?: number;
  readonly Qts?: number;
  readonly Qes?: number;
  readonly Qms?: number;
  readonly Re?: number;
  readonly sensitivity?: number;
  readonly sensitivityAt?: '1 W' | '2.83 V';
  readonly nominalImpedance?: number;
}

/** A sensitivity of a sheet is taken to be right within this, dB (common practice). */
const WITHIN = 2;
/** Re as a share of the nominal impedance: the least, the usual and the greatest (common practice). */
const SHARE = { least: 0.7, usual: 0.8, greatest: 0.9 } as const;

/** Vas and Re of one reading of a sheet. */
export interface Reading {
  readonly Vas: number;
  readonly Re: number;
}

/** What a sensitivity says of Vas: the usual reading, and those at both ends of what is assumed. */
export interface Readings {
  readonly usual: Reading;
  readonly ends: readonly [least: Reading, greatest: Reading];
  readonly told: Omit<Estimated, 'ends' | 'Vas'>;
}

/**
 * Vas by the reference efficiency: the level of the sheet is that of the acoustic power η₀ V²/Re in half space, and η₀ is
 * proportional to Vas. `undefined` where fs, Qes or the drive is not known.
 *
 * @source small1972direct reference efficiency
 */
export function readingsOf(sheet: Sheet): Readings | undefined {
  const { fs, Qts, Qms, sensitivity, sensitivityAt, nominalImpedance } = sheet;
  const Qes = sheet.Qes ?? (Qts !== undefined && Qms !== undefined ? (Qts * Qms) / (Qms - Qts) : undefined);
  if (fs === undefined || Qes === undefined || !(Qes > 0) || sensitivity === undefined) return undefined;
  const square = sensitivityAt === '2.83 V' ? 2.83 ** 2 : sensitivityAt === '1 W' ? nominalImpedance : undefined;
  const Re = sheet.Re ?? (nominalImpedance && SHARE.usual * nominalImpedance);
  if (square === undefined || Re === undefined) return undefined;
  const perVolume = referenceEfficiency({ fs: si('frequency', fs), Vas: si('volume', 1), Qes: si('ratio', Qes) });
  const oneWatt = levelHalfSpace(si('power', 1));
  const reading = (level: number, resistance: number): Reading => ({
    Vas: (10 ** ((level - oneWatt) / 10) * resistance) / square / perVolume,
    Re: resistance,
  });
  const end = (sign: 1 | -1, share: number) =>
    reading(sensitivity + sign * WITHIN, sheet.Re ?? share * nominalImpedance!);
  return {
    usual: reading(sensitivity, Re),
    ends: [end(-1, SHARE.least), end(1, SHARE.greatest)],
    told: {
      sensitivity,
      sensitivityAt: sensitivityAt as '1 W',
      within: WITHIN,
      ...(sheet.Re === undefined && {
        Re: { value: Re, from: (SHARE.least * Re) / SHARE.usual, to: (SHARE.greatest * Re) / SHARE.usual },
      }),
    },
  };
}

/** What is missing beside a sensitivity. Values are quoted as written. */
export function faultsOfSensitivity(written: Readonly<Record<string, unknown>>, path: string): Fault[] {
  const missing = (field: string, expected: string): Fault[] => [
    { code: 'empty', path: `${path}.${field}`, got: undefined, expected, remedy: 'Look it up in the sheet.' },
  ];
  if (written.sensitivity === undefined) return [];
  if (written.sensitivityAt === undefined) {
    return missing('sensitivityAt', `the drive at which the sensitivity is ${written.sensitivity}: "1 W" or "2.83 V"`);
  }
  if (written.sensitivityAt === '1 W' && written.nominalImpedance === undefined) {
    return missing('nominalImpedance', 'the impedance into which the drive is 1 W');
  }
  return [];
}

/** The fault of a sensitivity that leads to a Vas that no driver has. */
export function faultOfVas({ usual, ends }: Readings, got: unknown, path: string): Fault[] {
  const litres = (volume: number) => `${decimalText(volume * 1e3, 3)} L`;
  const [least, greatest] = [1e-6, 10];
  if ([usual, ...ends].every(({ Vas }) => Vas >= least && Vas <= greatest)) return [];
  return [
    {
      code: 'inconsistent',
      path: `${path}.sensitivity`,
      got,
      expected: `a level that leads to a Vas from ${litres(least)} to ${litres(greatest)}; with fs and Q it leads to ${litres(usual.Vas)}`,
      remedy: 'Check the level, fs and the quality factors.',
    },
  ];
}

/** The sensitivity that a whole driver leads to, at the drive that its sheet names; `undefined` where the sheet tells none. */
export function impliedBy(
  { sensitivity, sensitivityAt, nominalImpedance }: Sheet,
  { driver, parameters }: CompletedDriver,
): { readonly given: number; readonly implied: number } | undefined {
  const square = sensitivityAt === '2.83 V' ? 2.83 ** 2 : nominalImpedance;
  if (sensitivity === undefined || sensitivityAt === undefined || square === undefined) return undefined;
  const power = si('power', (parameters.referenceEfficiency * square) / driver.Re);
  return { given: sensitivity, implied: levelHalfSpace(power) };
}
