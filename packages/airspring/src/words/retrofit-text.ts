import { LEAST_OF_NOMINAL } from '../job/load.js';
import { capital, inWords, listOf } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import { GIVES_OUT } from '../record/limits.js';
import type { Account } from '../standing/account.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Row, RowDone } from '../standing/row.js';
import type { Purpose, TubeOption, TubeSet } from '../standing/tubes.js';
import { designBlocks } from './changed-design-text.js';
import { caution, heading, paragraph, table } from './layout.js';
import { byEyeCautions, byEyeSteps, measuredRows, measuredSentences } from './measured-text.js';
import { type Phrasing, phrasing, type Units } from './phrasing.js';
import { printable } from './printable.js';

/** The limits of vents and radiators as nouns, beside those of every box. */
const LIMITS: Readonly<Record<string, string>> = {
  ...GIVES_OUT,
  vent: 'the air speed in the vent',
  'radiator travel': 'the travel of the passive radiators (Xmax)',
};
const limitName = (binding: string): string => LIMITS[binding] ?? binding;

const tuningText = ({ fb, fc, Qtc }: Account, say: Phrasing): string =>
  fb !== undefined
    ? `It is tuned to ${say.hertz(fb)}.`
    : `It is closed, with a resonance of ${say.hertz(fc ?? 0)} and Qtc ${(Qtc ?? 0).toFixed(2)}.`;

/** What the box does now, a paragraph each. */
export function nowSentences({ now: { account }, asked }: Retrofit, say: Phrasing): string[] {
  const { netVolume, reach, reachUnfiltered, loudest, wanted, flat, lowestSafe, leastLoad, nominalLoad } = account;
  const band = `from ${say.edge(asked.safeFrom ?? asked.lowest)} to ${say.edge(asked.highest)}`;
  const deep =
    reach === undefined
      ? `At ${say.edge(asked.highest)} the response has already fallen by more than ${say.decibels(asked.fall)}.`
      : `The response reaches down to ${say.hertz(reach)}, where it has fallen by ${say.decibels(asked.fall)}.`;
  const loud = `It plays a steady tone of ${say.decibels(loudest.level)} at any frequency ${band}, at 1 m in half space; you want ${say.decibels(asked.level)}. When it plays louder, the first limit it reaches is ${limitName(loudest.binding)}, at ${say.hertz(loudest.frequency)}.`;
  const speed = wanted.airSpeed;
  const air =
    speed === undefined
      ? ''
      : ` At the wanted level the air in the vent moves at ${say.speed(speed.value)} at ${say.edge(speed.frequency)}; your limit is ${say.speed(asked.airSpeedPeak)}.`;
  const safe =
    lowestSafe === undefined
      ? ''
      : ` Below ${say.hertz(lowestSafe)}, the drive that gives the wanted level (${say.volts(flat.drive)} rms) pushes the cone beyond its travel.`;
  const nominal =
    nominalLoad === undefined ? '' : `, so for the amplifier it counts as a load of ${say.ohms(nominalLoad)}`;
  const takes =
    asked.leastLoad === undefined
      ? ''
      : ` Your amplifier takes loads of ${say.ohms(asked.leastLoad)} or more${leastLoad.value < LEAST_OF_NOMINAL * asked.leastLoad ? ': this load is too low for it' : ''}.`;
  const load = `Its least impedance is ${say.ohms(leastLoad.value)}, at ${say.hertz(leastLoad.frequency)}${nominal}.${takes}`;
  const watts =
    wanted.power === undefined || nominalLoad === undefined
      ? ''
      : ` At the wanted level it needs ${say.volts(wanted.drive.value)} rms at ${say.edge(wanted.drive.frequency)}, which is ${say.watts(wanted.power)} into ${say.ohms(nominalLoad)}.`;
  const filtered =
    asked.filter === undefined
      ? ''
      : ` Your existing filter is included: ${asked.filter}.${reachUnfiltered === undefined ? '' : ` Without it the response would reach down to ${say.hertz(reachUnfiltered)}.`}`;
  return [
    `${tuningText(account, say)} It holds ${say.volume(netVolume)} of air. ${deep}${filtered}`,
    `${loud}${air}${safe}`,
    `${load}${watts}`,
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
export const doneRows = ({ rows }: Retrofit): (readonly [number: number, row: RowDone])[] =>
  rows.filter((row): row is RowDone => row.ok).map((row, i) => [i + 1, row] as const);

/** Every change that can be made, in numbers, beside the box as it is; the units stand in the second row. */
export function comparisonRows(answer: Retrofit, say: Phrasing): (readonly string[])[] {
  const { now } = answer;
  const done = doneRows(answer).map(([i, row]) => [String(i), ...numbersOf(row.account, say), row.change]);
  return [
    ['', 'tuned', 'reach', 'level', 'air', 'travel', 'load', ''],
    ['', 'Hz', 'Hz', 'dB', 'm/s', 'mm', 'Ω', 'change'],
    ['', ...numbersOf(now.account, say), 'as it is'],
    ...done,
  ];
}

/** What the columns of the comparison mean. */
export const legend = ({ asked }: Retrofit, say: Phrasing): string =>
  `Reach: the response has fallen by ${say.decibels(asked.fall)} there. Level: the loudest steady tone at every frequency of the band. Air and travel: the greatest peak values at the wanted level. Load: the least impedance.`;

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

const rowText = (row: RowDone, number: number, say: Phrasing): string =>
  paragraph([`${number}. ${changeText(row, say)}`, ...stepsOf(row, say)].join(' '));

/** What cannot be done, and why. */
export const refusedRows = ({ rows }: Retrofit, say: Phrasing): string[][] =>
  rows.flatMap((row) => (row.ok ? [] : [[row.change, `${say.phrase(row.what)}. ${say.phrase(row.because)}`]]));

/** What a tube is for, in one plain sentence. */
export function purposeText({ account }: TubeOption, purpose: Purpose, { asked }: Retrofit, say: Phrasing): string {
  const { reach, loudest, wanted } = account;
  const deep = reach !== undefined && reach <= asked.lowest + 0.05;
  const loud = loudest.level >= asked.level - 0.05;
  if (purpose === 'deep') return 'For the deepest bass that keeps the air below its limit at the wanted level.';
  if (purpose === 'loud') {
    return deep
      ? `For the loudest steady tones that still reach down to ${say.edge(asked.lowest)}.`
      : 'For the loudest steady tones at a small cost in depth.';
  }
  if (deep && loud) return 'For what you want: it is deep enough and loud enough, and it is the shortest that is.';
  const shorts = [
    ...(deep || reach === undefined ? [] : [`reaches only ${say.hertz(reach)}`]),
    ...(loud ? [] : [`is ${say.decibels(asked.level - loudest.level)} short in level`]),
  ];
  const fast =
    wanted.airSpeed !== undefined && wanted.airSpeed.value > asked.airSpeedPeak && loud ? '; its air is fast' : '';
  return `For the nearest to what you want; it ${shorts.join(' and ')}${fast}.`;
}

/** The tubes that are worth printing, in numbers; the units stand in the second row. */
export function tubeRows({ options, proposed }: TubeSet, answer: Retrofit, say: Phrasing): (readonly string[])[] {
  const rows = proposed.flatMap(({ option, purpose }) => {
    const one = options[option];
    if (one === undefined) return [];
    const numbers = numbersOf(one.account, say).slice(0, 5);
    return [[say.bareLength(one.length), ...numbers, purposeText(one, purpose, answer, say)]];
  });
  return [
    ['length', 'tuned', 'reach', 'level', 'air', 'travel', ''],
    [say.lengthUnit, 'Hz', 'Hz', 'dB', 'm/s', 'mm', 'what it is for'],
    ...rows,
  ];
}

/** The hole of a set of tubes. */
export const holeText = ({ hole, diameter, vent }: TubeSet, { tubeSets, now }: Retrofit, say: Phrasing): string => {
  const several = new Set(tubeSets.map((set) => set.vent)).size > 1 || now.box.tubes.length > 1;
  const which = several ? ` of vent ${vent + 1}` : '';
  return hole.how === 'enlarged'
    ? `the hole${which} enlarged to ${say.length(hole.hole)}, tubes of ${say.length(diameter)}`
    : `the hole${which} as it is, tubes of ${say.length(diameter)}`;
};

/** How a set of tubes is used, before and after its table. */
export function tubeSentences(
  { hole, diameter, outerDiameter, flangeDiameter, options, proposed }: TubeSet,
  say: Phrasing,
): readonly [before: string, after: string] {
  const one = proposed.length === 1;
  const open = options.some(({ fitting }) => fitting === 'measure');
  const first =
    hole.how === 'enlarged'
      ? `Enlarge the hole with the saw of ${say.length(hole.hole)}, behind a board with a hole of that size as a guide, and wear eye protection and a dust mask. Then glue`
      : 'Glue';
  return [
    `${first} one flange of ${say.length(flangeDiameter)} into the hole once. Tubes of ${say.length(diameter)} inner and ${say.length(outerDiameter)} outer diameter slide into it, and you change the tuning by changing the tube. What tube and flange take from the air is counted. ${capital(inWords(proposed.length))} ${one ? 'length is' : 'lengths are'} worth printing:`,
    open
      ? 'Behind the hole, each needs a clear distance of its own length, less the panel, plus one tube diameter. Measure before you print.'
      : '',
  ];
}

function tubesText(answer: Retrofit, say: Phrasing): string[] {
  const sets = answer.tubeSets.filter(({ proposed }) => proposed.length > 0);
  if (sets.length === 0) return [];
  return [
    heading('Sets of tubes for one flange', '-'),
    ...sets.flatMap((set) => {
      const [before, after] = tubeSentences(set, say);
      return [
        paragraph(`${capital(holeText(set, answer, say))}. ${before}`),
        table('rrrrrrl', tubeRows(set, answer, say)),
        ...(after === '' ? [] : [paragraph(after)]),
      ];
    }),
  ];
}

/** What to do first, and what it changes. */
export function firstText(answer: Retrofit, say: Phrasing): string {
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

/** What the impedance tells of drivers without a sheet. */
function measuredBlocks({ measuredDrivers }: Retrofit, say: Phrasing): string[] {
  if (measuredDrivers === undefined) return [];
  return [
    heading('What the impedance tells of the drivers', '-'),
    table('lrrr', measuredRows(measuredDrivers)),
    ...measuredSentences(measuredDrivers, say).map(paragraph),
  ];
}

/** The check of the tuning by eye. */
function byEyeBlocks(answer: Retrofit, say: Phrasing): string[] {
  const steps = byEyeSteps(answer, say);
  if (steps.length === 0) return [];
  return [
    heading('Check the tuning by eye', '-'),
    ...byEyeCautions.map(caution),
    paragraph(steps.map((step, i) => `${i + 1}. ${step}`).join(' ')),
  ];
}

/**
 * The printed report about an existing box, at most 80 columns wide: what it does now, what to do first, what each change
 * would do, what cannot be done and why, and which tubes to print for one flange.
 *
 * @example retrofitText(retrofit(brief), { length: 'mm' })
 */
export function retrofitText(given: Retrofit, units: Units = {}): string {
  const answer = printable(given);
  const say = phrasing(units);
  const { assumed, doubts, title } = answer;
  const not = refusedRows(answer, say);
  const blocks = [
    heading(title, '='),
    paragraph(firstText(answer, say)),
    ...doubts.map((phrase) => paragraph(say.phrase(phrase))),
    heading('What it does now', '-'),
    ...nowSentences(answer, say).map(paragraph),
    caution(cautions.hearing),
    ...measuredBlocks(answer, say),
    heading('What could be done, each change alone', '-'),
    table('rrrrrrrl', comparisonRows(answer, say)),
    paragraph(legend(answer, say)),
    ...doneRows(answer).map(([i, row]) => rowText(row, i, say)),
    caution(cautions.dust),
    caution(cautions.fumes),
    caution(cautions.mains),
    ...designBlocks(answer, say),
    ...(not.length > 0 ? [heading('What cannot be done', '-'), table('ll', not)] : []),
    ...tubesText(answer, say),
    ...byEyeBlocks(answer, say),
    ...(assumed.length > 0
      ? [heading('What was assumed', '-'), ...assumed.map((phrase) => paragraph(say.phrase(phrase)))]
      : []),
  ];
  return `${blocks.join('\n\n')}\n`;
}
