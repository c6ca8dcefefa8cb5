/** Every row of the last benchmark run, including those that miss their goal. */
import type { Row } from '../../../benchmarks/result.js';
import { html, table } from '../html.js';
import type { Bench } from './bench.js';
import { page } from './markdown.js';
import { numberText, withUnit } from './numbers.js';
import { flat } from './words.js';

export function speedPage(bench: Bench | undefined): string {
  const front = {
    title: 'Speed',
    summary: 'Every row of the last benchmark run, including those that miss their goal.',
  };
  const back = '[All formulas and their worst deviation](/formulas/)';
  if (!bench) return page(front, 'No benchmark run is kept here. `npm run bench -- --keep` makes one.', back);
  const rows = bench.groups.flatMap((group) => group.rows);
  const judged = rows.filter(({ met }) => met !== undefined);
  const missed = judged.filter(({ met }) => met === false).length;
  const absent = rows.filter(({ median }) => median === undefined).length;
  const { processor, cores, memoryGB, system } = bench.machine;
  return page(
    front,
    `<p class="answer">${judged.length - missed} of ${judged.length} goals met, ${missed} missed; ${absent} of ${rows.length} rows without a number.</p>`,
    `Run of ${bench.date.slice(0, 10)} on ${processor}, ${cores} cores, ${memoryGB} GB, ${system}, load ${numberText(bench.load, 3)} when it began.${bench.quick ? ' This was a quick run with few rounds and without the long rows, so its numbers vary more.' : ''} Ratios are by processor time where both rows have it, otherwise by the clock.`,
    flat(table('Versions', ['what', 'version'], Object.entries(bench.versions)).markup),
    ...bench.groups.flatMap(({ title, rows }) => [`## ${title}`, flat(groupTable(rows))]),
    '## Do they compute the same?',
    'The results of each peer are compared with ours before it is timed.',
    flat(
      table(
        'Worst deviation from ours',
        ['peer', 'columns', 'deviation', 'allowed'],
        bench.agreement.flatMap(({ peer, set, worst, tolerance, delay, delayTolerance }) => [
          [peer, set, numberText(worst, 2), numberText(tolerance, 2)],
          ...(delay === undefined
            ? []
            : [[peer, `${set}, delay`, numberText(delay, 2), numberText(delayTolerance ?? 0, 2)]]),
        ]),
      ).markup,
    ),
    back,
  );
}

function groupTable(rows: readonly Row[]): string {
  const named = new Map(rows.map(({ id, what }) => [id, what]));
  const lines = rows.map((row) => {
    const { what, ratio, against } = row;
    const compared = ratio === undefined ? '–' : `${numberText(ratio, 3)} × ${named.get(against ?? '') ?? against}`;
    return [what, timeText(row), compared, goalText(row)];
  });
  return table('Times and ratios', ['what', 'median; best; processor time', 'ratio', 'goal'], lines).markup;
}

function timeText({ median, best, cpu, unit, missing }: Row): string {
  if (median === undefined) return `not there: ${missing}`;
  const times = [median, best, cpu].flatMap((time) => (time === undefined ? [] : [numberText(time, 3)]));
  return withUnit(times.join('; '), unit);
}

function goalText({ goal, met }: Row) {
  if (goal === undefined) return '–';
  if (met === undefined) return `${goal}: not judged`;
  return met ? `${goal}: met` : html`${goal}: <strong>missed</strong>`;
}
