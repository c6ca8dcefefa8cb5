import { listOf } from '../kind/wording.js';
import type { Account } from '../standing/account.js';
import type { Retrofit } from '../standing/retrofit.js';
import { numbered, type Row, type RowDone } from '../standing/row.js';
import { glanced, LEAST, shortfall } from '../standing/shortfall.js';
import { numbersOf, reachText } from './account-text.js';
import { rangesText } from './bands-text.js';
import { BUILT, impedanceText } from './impedance-text.js';
import { endOfSearchText, type Phrasing } from './phrasing.js';
import { quieterText } from './quieter-text.js';

/** The changes that can be made, each with its number in the report. */
export const doneRows = ({ rows }: Retrofit) => numbered(rows);

/** Every change that can be made, in numbers, beside the box as it is; the units stand in the second row. */
export function comparisonRows(answer: Retrofit, say: Phrasing): (readonly string[])[] {
  const { now } = answer;
  const done = doneRows(answer).map(([i, row]) => [String(i), ...numbersOf(row.account, say), row.change]);
  return [
    ['', 'tuned', 'reach', 'level', 'air', 'quiet', 'travel', 'load', ''],
    ['', 'Hz', 'Hz', 'dB', 'm/s', 'dB', say.travelUnit, 'Ω', 'change'],
    ['', ...numbersOf(now.account, say), 'as it is'],
    ...done,
  ];
}

/** The box as it is, and what each change, each combination and each tube would make of it. */
const accountsOf = ({ now, rows, designs, tubeSets }: Retrofit): Account[] => [
  now.account,
  ...rows.flatMap((row) => (row.ok ? [row.account] : [])),
  ...designs.map(({ account }) => account),
  ...tubeSets.flatMap(({ options }) => options.map(({ account }) => account)),
];

/** What the columns of the comparison mean. */
export const legend = (answer: Retrofit, say: Phrasing): string =>
  [
    `Reach: the response has fallen by ${say.decibels(answer.asked.fall)} there.${endOfSearchText(accountsOf(answer))}`,
    'Level: the loudest steady tone at every frequency of the band.',
    ...(answer.now.box.tubes.length > 0
      ? [
          'Air and travel: the greatest peak values at the wanted level.',
          'Quiet: up to this level the vent stays below every published onset of noise. Load: the least impedance.',
          'Lengths of vents count from the outer face of the panel to the inner end.',
          ...(say.lengthUnit === 'in' ? ['Tubes are in whole millimetres: 1 in is 25.4 mm.'] : []),
        ]
      : ['Travel: the greatest peak value at the wanted level. Load: the least impedance.']),
  ].join(' ');

const HOLDS: Readonly<Record<string, string>> = {
  tuning: 'the tuning',
  length: 'the length of the vent',
  volume: 'the air in the box',
};

const heldText = ({ holds }: Row): string =>
  holds.length === 0 ? '' : ` It keeps ${listOf(holds.map((one) => HOLDS[one] ?? one))}.`;

/** What a change is and keeps. */
export const changeText = (row: RowDone, say: Phrasing): string => `${say.phrase(row.what)}.${heldText(row)}`;

/** What to buy, cut, print or drill, and what to measure first. */
export const stepsOf = (row: RowDone, say: Phrasing): string[] => [
  ...row.steps.map((step) => say.phrase(step)),
  ...(row.measure ? [say.phrase(row.measure)] : []),
];

/** What cannot be done, and why. */
export const refusedRows = ({ rows }: Retrofit, say: Phrasing): string[][] =>
  rows.flatMap((row) => (row.ok ? [] : [[row.change, `${say.phrase(row.what)}. ${say.phrase(row.because)}`]]));

/** Levels that differ by less look the same, dB. */
const SHOWN = 0.05;

/** What to do first, and what it changes. */
function firstText(answer: Retrofit, say: Phrasing): string {
  const { first, rows, now, asked } = answer;
  const [number, row] = doneRows(answer).find(([, one]) => one === rows[first ?? -1]) ?? [];
  if (row === undefined) {
    return shortfall({ wanted: asked }, glanced(now.account)) > LEAST
      ? 'No change below brings the box nearer to what you want.'
      : 'The box already reaches as deep and plays as loud as you want. The changes below go further.';
  }
  const { account } = row;
  const changes = [
    `level ${say.decibels(now.account.loudest.level)} → ${say.decibels(account.loudest.level)} (wanted: ${say.decibels(asked.level)})`,
    ...(now.account.reach !== undefined && account.reach !== undefined
      ? [`reach ${reachText(now.account, say)} → ${reachText(account, say)}`]
      : []),
    ...(now.account.wanted.airSpeed && account.wanted.airSpeed
      ? [
          `peak air speed at the wanted level ${say.speed(now.account.wanted.airSpeed.value)} → ${say.speed(account.wanted.airSpeed.value)}`,
        ]
      : []),
  ];
  const [before, after] = [now.account.noise?.quiet.level, account.noise?.quiet.level];
  if (before !== undefined && after !== undefined) {
    const louder = after - before;
    const heard = account.noise!.noisy.level < asked.level ? 'is still noisy' : 'may still be heard';
    const wanted = after < asked.level - SHOWN ? `, and at ${say.decibels(asked.level)} it ${heard}` : '';
    changes.push(
      `the vent is quiet up to ${say.decibels(before)} → ${say.decibels(after)}, ${say.decibels(Math.abs(louder))} ${louder < 0 ? 'less loud' : 'louder'} before it may be heard${wanted}`,
    );
  }
  const [behind, then] = [now.account.compression, account.compression];
  if (behind && then) {
    changes.push(
      `the sound falls behind at the wanted level by ${say.decibels(behind.nominal)} → ${say.decibels(then.nominal)} because the vent loses pressure (published losses give ${then.low.toFixed(1)} to ${say.decibels(then.high)})`,
    );
  }
  const ranges = row.bands ? ` As far as the measured drivers are known, ${rangesText(row.bands, say)}.` : '';
  const made = row.making ? ` ${say.phrase(row.making)}` : '';
  return `Do this first: ${row.change}, number ${number} below. No change alone comes nearer to the level and the reach that you want, and none that comes as near is less work. ${say.phrase(row.what)}.${made} It changes: ${changes.join('; ')}.${ranges}`;
}

/** What to do first, what keeps the vent quieter, and what to measure then; a paragraph each. */
export function firstParagraphs(answer: Retrofit, say: Phrasing): string[] {
  const row = answer.rows[answer.first ?? -1];
  const quieter = row?.ok ? quieterText(answer, row, say) : '';
  return [firstText(answer, say), quieter, measureAfterText(answer, say)].filter((text) => text !== '');
}

/** The impedance to measure when the first change is made, beside that of the box as it stands; empty where there is none. */
export function measureAfterText({ first, rows, now }: Retrofit, say: Phrasing): string {
  const row = rows[first ?? -1];
  if (!row?.ok || row.impedance === undefined) return '';
  const told = {
    playing: [],
    ...(row.account.fb !== undefined && { dip: { of: 'the tuning', at: [row.account.fb] } }),
  };
  const [peaks, after] = [now, row].map(({ impedance }) => impedance!.maxima.map(({ frequency }) => frequency));
  const isAlike =
    peaks!.length === after!.length && peaks!.every((frequency, i) => Math.abs(after![i]! / frequency - 1) < BUILT);
  const alike = isAlike
    ? ' That is nearly the same: the measurement then finds a mistake, such as a leak, but does not tell the changed box from the old one.'
    : '';
  const before =
    peaks!.length > 0
      ? ` As the box stands, ${peaks!.length > 1 ? 'its peaks are' : 'its peak is'} at ${listOf(peaks!.map(say.hertz))}.${alike}`
      : '';
  return `Then measure. ${impedanceText({ impedance: row.impedance, told }, say)}${before}`;
}
