import type { Account, Retrofit } from 'airspring';
import { markedSets } from '../../../packages/airspring/src/standing/marked-tubes.js';

const cell = (value: string | number | undefined): string =>
  value === undefined
    ? ''
    : typeof value === 'number'
      ? String(Number(value.toPrecision(6)))
      : `"${value.replaceAll('"', '""')}"`;
const lines = (rows: readonly (readonly (string | number | undefined)[])[]): string =>
  `${rows.map((row) => row.map(cell).join(',')).join('\n')}\n`;

const heads = [
  'tuning, Hz',
  'reach, Hz',
  'greatest level, dB',
  'gives out first',
  'at, Hz',
  'air speed peak at the wanted level, m/s',
  'quiet up to, dB',
  'noisy above, dB',
  'falls behind at the wanted level, dB',
  'at least, dB',
  'at most, dB',
  'cone travel peak at the wanted level, m',
  'least impedance, ohm',
] as const;

const numbersOf = ({ fb, fc, reach, loudest, wanted, noise, compression, leastLoad }: Account) => [
  fb ?? fc,
  reach,
  loudest.level,
  loudest.binding,
  loudest.frequency,
  wanted.airSpeed?.value,
  noise?.quiet.level,
  noise?.noisy.level,
  compression?.nominal,
  compression?.low,
  compression?.high,
  wanted.travel.value,
  leastLoad.value,
];

/** Every change as comma-separated values, the box as it is first. */
export const changesCsv = ({ now, rows }: Retrofit): string =>
  lines([
    ['change', 'can be done', ...heads],
    ['as it is', 'yes', ...numbersOf(now.account)],
    ...rows.map((row) =>
      row.ok
        ? [row.change, row.fitting === 'measure' ? 'measure' : 'yes', ...numbersOf(row.account)]
        : [row.change, 'no'],
    ),
  ]);

/** The tubes of every flange, a row a length; those worth printing have their marks. */
export const tubesCsv = ({ tubeSets }: Retrofit): string => {
  const marks = new Map(
    markedSets(tubeSets).flatMap(({ proposed }) => proposed.map(({ mark, option }) => [option, mark] as const)),
  );
  return lines([
    ['tube', 'length, m', 'inner diameter, m', 'hole, m', 'fits', ...heads],
    ...tubeSets.flatMap(({ options, diameter, hole: { hole } }) =>
      options.map((option) => {
        const { length, fitting, account } = option;
        return [marks.get(option), length, diameter, hole, fitting, ...numbersOf(account)];
      }),
    ),
  ]);
};
