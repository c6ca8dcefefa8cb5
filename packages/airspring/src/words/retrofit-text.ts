import { cautions } from '../record/cautions.js';
import { GIVES_OUT, PARTS_GIVE_OUT } from '../record/limits.js';
import { markedSets } from '../standing/marked-tubes.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { RowDone } from '../standing/row.js';
import { nowSentences } from './account-text.js';
import { designBlocks } from './changed-design-text.js';
import { changeText, comparisonRows, doneRows, firstParagraphs, legend, refusedRows, stepsOf } from './changes-text.js';
import { heardBlocks } from './heard-text.js';
import { caution, heading, paragraph, table } from './layout.js';
import { byEyeCautions, byEyeSteps, measuredRows, measuredSentences } from './measured-text.js';
import { type Phrasing, phrasing, type Units } from './phrasing.js';
import { printable } from './printable.js';
import { rankedText } from './ranked-text.js';
import { holeText, leftOutText, tubeRows, tubeSentences } from './tubes-text.js';

const rowText = (row: RowDone, number: number, say: Phrasing): string =>
  paragraph([`${number}. ${changeText(row, say)}`, ...stepsOf(row, say)].join(' '));

function tubesText(answer: Retrofit, say: Phrasing): string[] {
  const sets = markedSets(answer.tubeSets);
  const { tubeSetsLeftOut } = answer;
  if (sets.length === 0 && tubeSetsLeftOut.length === 0) return [];
  return [
    heading('Sets of tubes for one flange', '-'),
    ...sets.flatMap((set) => {
      const [before, after] = tubeSentences(set.tubes, say);
      return [
        paragraph(`Set ${set.number}, ${holeText(set.tubes, answer, say)}. ${before}`),
        table('lrrrrrrrl', tubeRows(set, answer, say)),
        ...(after === '' ? [] : [paragraph(after)]),
      ];
    }),
    ...(tubeSetsLeftOut.length > 0 ? [paragraph(leftOutText(answer, say))] : []),
  ];
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
    heading('Check the tuning by eye first', '-'),
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
    ...firstParagraphs(answer, say).map(paragraph),
    ...doubts.map((phrase) => paragraph(say.phrase(phrase))),
    heading('What it does now', '-'),
    ...nowSentences(answer, say).map(paragraph),
    ...heardBlocks({ ...answer.now, loudness: { givesOut: { ...GIVES_OUT, ...PARTS_GIVE_OUT } } }, say),
    caution(cautions.hearing),
    ...measuredBlocks(answer, say),
    ...byEyeBlocks(answer, say),
    heading('What could be done, each change alone', '-'),
    table('rrrrrrrrl', comparisonRows(answer, say)),
    paragraph(legend(answer, say)),
    ...doneRows(answer).map(([i, row]) => rowText(row, i, say)),
    caution(cautions.dust),
    caution(cautions.fumes),
    caution(cautions.mains),
    ...designBlocks(answer, say),
    ...(not.length > 0 ? [heading('What cannot be done', '-'), table('ll', not)] : []),
    ...tubesText(answer, say),
    ...rankedText(answer, say),
    ...(assumed.length > 0
      ? [heading('What was assumed', '-'), ...assumed.map((phrase) => paragraph(say.phrase(phrase)))]
      : []),
  ];
  return `${blocks.join('\n\n')}\n`;
}
