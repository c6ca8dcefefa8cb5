import { visible } from '@airspring/core/fault';
import { LEAST_OF_NOMINAL } from '../job/load.js';
import { inWords } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import type { Account } from '../standing/account.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Row, RowDone, RowNot } from '../standing/row.js';
import type { TubeSet } from '../standing/tubes.js';
import { caution, heading, paragraph, table } from './layout.js';
import { type Phrasing, phrasing, type Units } from './phrasing.js';

const LIMITS: Readonly<Record<string, string>> = {
  vent: 'the air speed in the vent',
  travel: 'the travel of the cone (Xmax)',
  heat: 'the heat of the voice coil (Pe)',
  'amplifier voltage': 'the voltage of the amplifier',
  'amplifier current': 'the current of the amplifier',
  'radiator travel': 'the travel of the passive radiators (Xmax)',
};
const limitName = (binding: string): string => LIMITS[binding] ?? binding;

const tuningText = ({ fb, fc, Qtc }: Account, say: Phrasing): string =>
  fb !== undefined
    ? `It is tuned to ${say.hertz(fb)}.`
    : `It is closed, with a resonance of ${say.hertz(fc ?? 0)} and Qtc ${(Qtc ?? 0).toFixed(2)}.`;

/** What the box does now. */
function nowText({ now: { account }, asked }: Retrofit, say: Phrasing): string[] {
  const { netVolume, reach, reachUnfiltered, loudest, wanted, flat, lowestSafe, leastLoad, nominalLoad } = account;
  const band = `from ${say.edge(asked.lowest)} to ${say.edge(asked.highest)}`;
  const deep =
    reach === undefined
      ? `At ${say.edge(asked.highest)} the response has already fallen by more than ${say.decibels(asked.fall)}.`
      : `The response reaches down to ${say.hertz(reach)}, where it has fallen by ${say.decibels(asked.fall)}.`;
  const loud = `It plays a steady tone of ${say.decibels(loudest.level)} at any frequency ${band}, at 1 m in half space; you want ${say.decibels(asked.level)}. Louder, the first limit it reaches is ${limitName(loudest.binding)}, at ${say.hertz(loudest.frequency)}.`;
  const speed = wanted.airSpeed;
  const air =
    speed === undefined
      ? ''
      : ` At the wanted level the air in the vent moves at ${say.speed(speed.value)} at ${say.edge(speed.frequency)}; your limit is ${say.speed(asked.airSpeedPeak)}.`;
  const safe =
    lowestSafe === undefined
      ? ''
      : ` The drive of the wanted level, ${say.volts(flat.drive)} rms, pushes the cone beyond its travel below ${say.hertz(lowestSafe)}.`;
  const nominal = nominalLoad === undefined ? '' : `, so to the amplifier it is a load of ${say.ohms(nominalLoad)}`;
  const takes =
    asked.leastLoad === undefined
      ? ''
      : ` Your amplifier takes ${say.ohms(asked.leastLoad)} and more${leastLoad.value < LEAST_OF_NOMINAL * asked.leastLoad ? ': this load is too low for it' : ''}.`;
  const load = `Its least impedance is ${say.ohms(leastLoad.value)}, at ${say.hertz(leastLoad.frequency)}${nominal}.${takes}`;
  const watts =
    wanted.power === undefined || nominalLoad === undefined
      ? ''
      : ` At the wanted level it asks for ${say.volts(wanted.drive.value)} rms at ${say.edge(wanted.drive.frequency)}, which is ${say.watts(wanted.power)} into ${say.ohms(nominalLoad)}.`;
  const filtered =
    asked.filter === undefined
      ? ''
      : ` The filter that is there already is counted: ${asked.filter}.${reachUnfiltered === undefined ? '' : ` Without it the response would reach down to ${say.hertz(reachUnfiltered)}.`}`;
  return [
    paragraph(`${tuningText(account, say)} It holds ${say.volume(netVolume)} of air. ${deep}${filtered}`),
    paragraph(`${loud}${air}${safe}`),
    paragraph(`${load}${watts}`),
    caution(cautions.hearing),
  ];
}

const numbersOf = ({ fb, fc, reach, loudest, wanted, leastLoad }: Account, say: Phrasing): string[] => [
  (fb ?? fc ?? 0).toFixed(1),
  reach === undefined ? '' : reach.toFixed(1),
  loudest.level.toFixed(1),
  wanted.airSpeed === undefined ? '' : wanted.airSpeed.value.toFixed(1),
  say.travel(wanted.travel.value).replace(/ mm$/, ''),
  leastLoad.value.toFixed(1),
];

/** The changes that can be made, each with its number in the report. */
const doneRows = ({ rows }: Retrofit): (readonly [number: number, row: RowDone])[] =>
  rows.filter((row): row is RowDone => row.ok).map((row, i) => [i + 1, row] as const);

/** Every change that can be made, in numbers, beside the box as it is. */
function comparison(answer: Retrofit, say: Phrasing): string {
  const { now } = answer;
  const done = doneRows(answer).map(([i, row]) => [String(i), ...numbersOf(row.account, say), row.change]);
  return table('rrrrrrrl', [
    ['', 'tuned', 'reach', 'level', 'air', 'travel', 'load', ''],
    ['', 'Hz', 'Hz', 'dB', 'm/s', 'mm', 'Ω', 'change'],
    ['', ...numbersOf(now.account, say), 'as it is'],
    ...done,
  ]);
}

const HOLDS: Readonly<Record<string, string>> = {
  tuning: 'the tuning',
  length: 'the length of the vent',
  volume: 'the air in the box',
};

const heldText = ({ holds }: Row): string =>
  holds.length === 0 ? '' : ` It holds ${holds.map((one) => HOLDS[one]).join(', ')}.`;

function rowText(row: RowDone, number: number, say: Phrasing): string[] {
  const what = `${number}. ${say.phrase(row.what)}.${heldText(row)}`;
  const measure = row.measure ? ` ${say.phrase(row.measure)}` : '';
  return [paragraph(`${what} ${row.steps.map((step) => say.phrase(step)).join(' ')}${measure}`)];
}

const refusedText = (rows: readonly RowNot[], say: Phrasing): string =>
  table(
    'll',
    rows.map((row) => [row.change, `${say.phrase(row.what)}. ${say.phrase(row.because)}`]),
  );

const PURPOSES = {
  deep: 'for the deepest bass that keeps the air below its limit at the wanted level',
  loud: 'for the loudest steady tones',
  'quickest to print': 'the shortest that is within a decibel of the loudest',
} as const;

function tubesText({ diameter, outerDiameter, flangeDiameter, options, proposed }: TubeSet, say: Phrasing): string[] {
  const rows = proposed.flatMap(({ option, purpose }) => {
    const one = options[option];
    return one ? [[say.bareLength(one.length), ...numbersOf(one.account, say).slice(0, 5), PURPOSES[purpose]]] : [];
  });
  const open = options.some(({ fitting }) => fitting === 'measure');
  return [
    heading('A set of tubes for one flange', '-'),
    paragraph(
      `Glue one flange of ${say.length(flangeDiameter)} into the hole once. Then tubes of ${say.length(diameter)} inner and ${say.length(outerDiameter)} outer diameter slide into it, and you change the tuning by changing the tube. ${inWords(proposed.length).replace(/^./, (letter) => letter.toUpperCase())} ${proposed.length === 1 ? 'length is' : 'lengths are'} worth printing:`,
    ),
    table('rrrrrrl', [
      ['length', 'tuned', 'reach', 'level', 'air', 'travel', ''],
      [say.lengthUnit, 'Hz', 'Hz', 'dB', 'm/s', 'mm', 'what it is for'],
      ...rows,
    ]),
    ...(open
      ? [
          paragraph(
            'Each needs its length, less the panel, plus one bore of free way behind the hole. Measure before you print.',
          ),
        ]
      : []),
  ];
}

/** What to do first, and what it changes. */
function firstText(answer: Retrofit, say: Phrasing): string {
  const { first, rows, now, asked } = answer;
  const [number, row] = doneRows(answer).find(([, one]) => one === rows[first ?? -1]) ?? [];
  if (row === undefined) return 'No change below brings the box nearer to what you want.';
  const { account } = row;
  const changes = [
    `level ${say.decibels(now.account.loudest.level)} → ${say.decibels(account.loudest.level)} (wanted: ${say.decibels(asked.level)})`,
    ...(now.account.reach !== undefined && account.reach !== undefined
      ? [`reach ${say.hertz(now.account.reach)} → ${say.hertz(account.reach)}`]
      : []),
    ...(now.account.wanted.airSpeed && account.wanted.airSpeed
      ? [
          `air speed at the wanted level ${say.speed(now.account.wanted.airSpeed.value)} → ${say.speed(account.wanted.airSpeed.value)}`,
        ]
      : []),
  ];
  return `Do this first: ${row.change}, number ${number} below. ${say.phrase(row.what)}. It changes: ${changes.join('; ')}.`;
}

function printable<T>(part: T): T {
  if (typeof part === 'string') return visible(part) as T;
  if (Array.isArray(part)) return (typeof part[0] === 'number' ? part : part.map(printable)) as T;
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([name, value]) => [name, printable(value)])) as T;
}

/**
 * The printed report about a box that stands, at most 80 columns wide: what it does now, what to do first, what each change
 * would do, what cannot be done and why, and which tubes to print for one flange.
 *
 * @example retrofitText(retrofit(brief), { length: 'mm' })
 */
export function retrofitText(given: Retrofit, units: Units = {}): string {
  const answer = printable(given);
  const say = phrasing(units);
  const { rows, tubes, assumed, doubts, title } = answer;
  const not = rows.filter((row): row is RowNot => !row.ok);
  const blocks = [
    heading(title, '='),
    paragraph(firstText(answer, say)),
    ...doubts.map((phrase) => paragraph(say.phrase(phrase))),
    heading('What it does now', '-'),
    ...nowText(answer, say),
    heading('What could be done, each change alone', '-'),
    comparison(answer, say),
    paragraph(
      `Reach: the response has fallen by ${say.decibels(answer.asked.fall)} there. Level: the loudest steady tone at every frequency of the band. Air, travel: the greatest at the wanted level, peak. Load: the least impedance.`,
    ),
    ...doneRows(answer).flatMap(([i, row]) => rowText(row, i, say)),
    caution(cautions.dust),
    caution(cautions.fumes),
    caution(cautions.mains),
    ...(not.length > 0 ? [heading('What cannot be done', '-'), refusedText(not, say)] : []),
    ...(tubes ? tubesText(tubes, say) : []),
    ...(assumed.length > 0
      ? [heading('What was assumed', '-'), ...assumed.map((phrase) => paragraph(say.phrase(phrase)))]
      : []),
  ];
  return `${blocks.join('\n\n')}\n`;
}
