import { cautions } from '../record/cautions.js';
import type { Retrofit } from '../standing/retrofit.js';
import { type Phrasing, phrasing, type Units } from '../words/phrasing.js';
import {
  changeText,
  comparisonRows,
  doneRows,
  firstText,
  legend,
  nowSentences,
  refusedRows,
  stepsOf,
  tubeRows,
  tubeSentences,
} from '../words/retrofit-text.js';
import { escaped, pageOf, tableOf } from './markup.js';

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

function tubes({ tubes: set }: Retrofit, say: Phrasing): string {
  if (set === undefined) return '';
  const [before, after] = tubeSentences(set, say);
  return section(
    'A set of tubes for one flange',
    `${paragraphs([before])}${numbersTable(tubeRows(set, say))}${after === '' ? '' : paragraphs([after])}`,
  );
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
  const body = [
    paragraphs([firstText(answer, say), ...answer.doubts.map((phrase) => say.phrase(phrase))]),
    section('What it does now', paragraphs(nowSentences(answer, say)) + caution(cautions.hearing)),
    section(
      'What could be done, each change alone',
      numbersTable(comparisonRows(answer, say)) + paragraphs([legend(answer, say)]),
    ),
    section('The steps', [cautions.dust, cautions.fumes, cautions.mains].map(caution).join('') + steps(answer, say)),
    tubes(answer, say),
    ...(not.length > 0 ? [section('What cannot be done', tableOf([['change', 'why not'], ...not]))] : []),
    ...(answer.assumed.length > 0
      ? [section('What was assumed', paragraphs(answer.assumed.map((phrase) => say.phrase(phrase))))]
      : []),
  ];
  return pageOf(answer.title, body.join('\n'));
}
