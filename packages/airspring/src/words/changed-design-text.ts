import { visible } from '@airspring/core/fault';
import { capital } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import type { Account } from '../standing/account.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { ChangedDesign } from '../standing/whole.js';
import { glanceNumbers, reachText } from './account-text.js';
import { driversText } from './build-text.js';
import { limitBlocks, playingBlocks } from './design-text.js';
import { impedanceText } from './impedance-text.js';
import { caution, heading, paragraph, table } from './layout.js';
import { type Phrasing, phrasing, type Units } from './phrasing.js';
import { printable } from './printable.js';

/** Its changes as one noun phrase. */
const changesText = ({ changes }: ChangedDesign): string =>
  changes.length < 2 ? changes.join('') : `${changes.slice(0, -1).join(', ')}, and ${changes.at(-1)}`;

export const designHead = (design: ChangedDesign): string =>
  `Design ${design.name}, ${design.leaning}: ${changesText(design)}`;

/** What it will be, and how that differs from the box as it stands. */
export function designSummary(design: ChangedDesign, now: Account, say: Phrasing): string {
  const { account, drivers, what } = design;
  const from = (a: string | undefined, b: string | undefined) =>
    a === undefined || b === undefined ? '' : `${a} → ${b}`;
  const hertz = (f: number | undefined) => (f === undefined ? undefined : say.hertz(f));
  const speed = ({ wanted: { airSpeed } }: Account) => airSpeed && say.speed(airSpeed.value);
  const quiet = ({ noise }: Account) => noise && say.decibels(noise.quiet.level);
  const moves = [
    ['tuned', from(hertz(now.fb ?? now.fc), hertz(account.fb ?? account.fc))],
    ['reach', from(reachText(now, say), reachText(account, say))],
    ['level', from(say.decibels(now.loudest.level), say.decibels(account.loudest.level))],
    ['peak air speed at the wanted level', from(speed(now), speed(account))],
    ['quiet up to', from(quiet(now), quiet(account))],
  ].flatMap(([name, text]) => (text === '' ? [] : [`${name} ${text}`]));
  const sentences = what.map((phrase) => `${say.phrase(phrase)}.`).join(' ');
  return `${sentences} It is for ${driversText(drivers)}. ${capital(moves.join('; '))}.`;
}

/** What to make or to buy; the first row heads the columns. */
export const partRows = ({ parts }: ChangedDesign, say: Phrasing): string[][] => [
  ['', 'part', 'how', 'size'],
  ...parts.map(({ what, made, count, size }) => [`${count} ×`, what, made, say.phrase(size)]),
];

/** The steps in order, each with its number, and each caution before the first step that needs it. */
export function stepsInOrder({ steps }: ChangedDesign, say: Phrasing) {
  const given = new Set<string>();
  return steps.map((step, i) => {
    const text = step.caution && cautions[step.caution];
    const due = text !== undefined && !given.has(text);
    if (due) given.add(text);
    return { number: i + 1, text: say.phrase(step.says), ...(due && { caution: text }) };
  });
}

/** A combination in full: what to do in order, what to make, how it plays, and its limits. */
const changedInFull = (design: ChangedDesign, now: Account, say: Phrasing): string[] => [
  paragraph(designSummary(design, now, say)),
  'WHAT TO DO, IN ORDER',
  ...stepsInOrder(design, say).flatMap(({ number, text, caution: due }) => [
    ...(due === undefined ? [] : [caution(due)]),
    paragraph(`${number}. ${text}`),
  ]),
  ...(design.parts.length > 0 ? ['WHAT TO MAKE OR TO BUY', table('rlll', partRows(design, say))] : []),
  ...playingBlocks(design, say),
  'IMPEDANCE, TO CHECK WHAT YOU BUILT',
  paragraph(impedanceText(design, say)),
  ...limitBlocks(design, say),
];

/** A combination other than the first: what to do, and how it differs. */
const changedInShort = (design: ChangedDesign, now: Account, say: Phrasing): string[] => [
  paragraph(designSummary(design, now, say)),
  paragraph(
    stepsInOrder(design, say)
      .map(({ number, text }) => `${number}. ${text}`)
      .join(' '),
  ),
  table('rlll', partRows(design, say)),
];

/** The best combinations: an overview, the first in full, the others in short. */
export function designBlocks({ designs, now }: Retrofit, say: Phrasing): string[] {
  const [first, ...others] = designs;
  if (first === undefined) return [];
  const head = (design: ChangedDesign) => heading(designHead(design), '-');
  return [
    heading('The best combinations, as whole designs', '-'),
    table('lrrrrrl', overviewRows({ designs, now })),
    head(first),
    ...changedInFull(first, now.account, say),
    ...others.flatMap((design) => [head(design), ...changedInShort(design, now.account, say)]),
  ];
}

/** The combinations in numbers; the units stand in the second row. */
export const overviewRows = ({ designs, now }: Pick<Retrofit, 'designs' | 'now'>): string[][] => [
  ['', 'tuned', 'reach', 'level', 'air', 'quiet', ''],
  ['', 'Hz', 'Hz', 'dB', 'm/s', 'dB', 'changes'],
  ['', ...glanceNumbers(now.account), 'as it is'],
  ...designs.map((design) => [design.name, ...glanceNumbers(design.account), changesText(design)]),
];

/**
 * The printed report of one combination of changes alone.
 *
 * @example changedDesignText(retrofit(brief), 'A', { length: 'mm' })
 */
export function changedDesignText(given: Retrofit, name: string, units: Units = {}): string {
  const answer = printable(given);
  const design = answer.designs.find((one) => one.name === name);
  if (design === undefined) return '';
  const say = phrasing(units);
  const blocks = [
    heading(visible(answer.title), '='),
    heading(designHead(design), '-'),
    ...changedInFull(design, answer.now.account, say),
  ];
  return `${blocks.join('\n\n')}\n`;
}
