import { cautions } from '../record/cautions.js';
import { markedSets } from '../standing/marked-tubes.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { ChangedDesign } from '../standing/whole.js';
import { nowSentences } from '../words/account-text.js';
import { designHead, designSummary, overviewRows, partRows, stepsInOrder } from '../words/changed-design-text.js';
import {
  changeText,
  comparisonRows,
  doneRows,
  firstParagraphs,
  legend,
  refusedRows,
  stepsOf,
} from '../words/changes-text.js';
import { impedanceText } from '../words/impedance-text.js';
import { byEyeCautions, byEyeSteps, measuredRows, measuredSentences } from '../words/measured-text.js';
import { type Phrasing, phrasing, type Units } from '../words/phrasing.js';
import { loudest } from '../words/play-text.js';
import { holeText, leftOutText, tubeRows, tubeSentences } from '../words/tubes-text.js';
import { drillingTemplate } from './drilling-template.js';
import { escaped, pageOf, tableOf } from './markup.js';
import { drawTubes } from './tube-drawing.js';
import { labelOf } from './tube-words.js';

const paragraphs = (texts: readonly string[]): string => texts.map((text) => `<p>${escaped(text)}</p>`).join('\n');
const caution = (text: string): string => `<p class="caution">${escaped(text)}</p>`;
const section = (title: string, body: string): string => `<section><h2>${escaped(title)}</h2>\n${body}</section>`;

/** A table whose units stand in a row of their own: both rows become one head. */
function numbersTable([names = [], units = [], ...rows]: readonly (readonly string[])[]): string {
  const head = names.map((name, i) => [name, units[i]].filter((part) => part !== '').join(', '));
  return tableOf([head, ...rows]);
}

function steps(answer: Retrofit, say: Phrasing): string {
  return doneRows(answer)
    .map(([number, row]) => {
      const items = stepsOf(row, say).map((step) => `<li>${escaped(step)}</li>`);
      return `<h3>${number}. ${escaped(row.change)}</h3><p>${escaped(changeText(row, say))}</p><ol>${items.join('')}</ol>`;
    })
    .join('\n');
}

function tubes(answer: Retrofit, say: Phrasing): string {
  const sets = markedSets(answer.tubeSets);
  const left = leftOutText(answer, say);
  if (sets.length === 0 && left === '') return '';
  const each = sets.map((set) => {
    const { tubes } = set;
    const [before, after] = tubeSentences(tubes, say);
    const title = `Set ${set.number}, ${holeText(tubes, answer, say)}`;
    const facts = { answer, say };
    const drawn = drawTubes(facts, set, TUBES_WIDE);
    const words = `What a tube of ${say.length(tubes.diameter)} would do at each length. ${labelOf(facts, tubes)}`;
    const figure = `<figure>${drawn}<figcaption>${escaped(words)}</figcaption></figure>`;
    return `<h3>${escaped(title)}</h3>${paragraphs([before])}${numbersTable(tubeRows(set, answer, say))}${after === '' ? '' : paragraphs([after])}${figure}`;
  });
  return section('Sets of tubes for one flange', `${each.join('\n')}${left === '' ? '' : paragraphs([left])}`);
}

/** Width of the drawing of tubes over their length, pixels. */
const TUBES_WIDE = 648;

/** The sheet of a combination to take to the bench. */
function designSheet(design: ChangedDesign, { now }: Retrofit, say: Phrasing): string {
  const items = stepsInOrder(design, say).map(
    ({ text, caution: due }) => `<li>${due === undefined ? '' : caution(due)}${escaped(text)}</li>`,
  );
  const limits = design.margins.map(({ what, value, sense, limit }) => [what, value, sense, limit]);
  return `<article class="sheet"><h2>${escaped(designHead(design))}</h2>
${paragraphs([designSummary(design, now.account, say)])}
<h3>What to do, in order</h3><ol>${items.join('')}</ol>
${design.parts.length > 0 ? `<h3>What to make or to buy</h3>${tableOf(partRows(design, say))}` : ''}
<h3>How it plays</h3>${paragraphs([loudest(design, say)])}${caution(cautions.hearing)}
${tableOf([['quantity', 'this box', '', 'limit'], ...limits])}
<h3>To measure when it is done</h3>${paragraphs([impedanceText(design, say)])}
${design.cautions.includes(cautions.travel) ? caution(cautions.travel) : ''}</article>${design.holes.length > 0 ? drillingTemplate(design.holes, say) : ''}`;
}

/**
 * A page to print about the combinations of an answer alone: a sheet for each, with templates of its new holes.
 *
 * @example changedDesignPage({ ...answer, designs: answer.designs.slice(0, 1) }, { length: 'mm' })
 */
export function changedDesignPage(answer: Retrofit, units: Units = {}): string {
  const say = phrasing(units);
  return pageOf(answer.title, answer.designs.map((design) => designSheet(design, answer, say)).join('\n'));
}

/**
 * A page to print about an existing box: what it does now, what to do first, each change in numbers and in steps, and the
 * tubes. It is one HTML document that needs no script and loads nothing from elsewhere.
 *
 * @example retrofitPage(retrofit(brief), { length: 'mm' })
 */
export function retrofitPage(answer: Retrofit, units: Units = {}): string {
  const say = phrasing(units);
  const not = refusedRows(answer, say);
  const byEye = byEyeSteps(answer, say);
  const body = [
    paragraphs([...firstParagraphs(answer, say), ...answer.doubts.map((phrase) => say.phrase(phrase))]),
    section('What it does now', paragraphs(nowSentences(answer, say)) + caution(cautions.hearing)),
    ...(answer.measuredDrivers
      ? [
          section(
            'What the impedance tells of the drivers',
            tableOf(measuredRows(answer.measuredDrivers)) + paragraphs(measuredSentences(answer.measuredDrivers, say)),
          ),
        ]
      : []),
    ...(byEye.length > 0
      ? [
          section(
            'Check the tuning by eye first',
            `${byEyeCautions.map(caution).join('')}<ol>${byEye.map((step) => `<li>${escaped(step)}</li>`).join('')}</ol>`,
          ),
        ]
      : []),
    section(
      'What could be done, each change alone',
      numbersTable(comparisonRows(answer, say)) + paragraphs([legend(answer, say)]),
    ),
    section('The steps', [cautions.dust, cautions.fumes, cautions.mains].map(caution).join('') + steps(answer, say)),
    ...(answer.designs.length > 0
      ? [
          section('The best combinations, as whole designs', numbersTable(overviewRows(answer))),
          ...answer.designs.map((design) => designSheet(design, answer, say)),
        ]
      : []),
    tubes(answer, say),
    ...(not.length > 0 ? [section('What cannot be done', tableOf([['change', 'why not'], ...not]))] : []),
    ...(answer.assumed.length > 0
      ? [section('What was assumed', paragraphs(answer.assumed.map((phrase) => say.phrase(phrase))))]
      : []),
  ];
  return pageOf(answer.title, body.join('\n'));
}
