/** One row of the ledger, in full. */
import { halfUnit, shareOfPrint } from '../../../tests/ledger/print.js';
import { heldToPrint, isLoose, isOutside, isQuoted, type LedgerRow, toleranceSize } from '../../../tests/ledger/row.js';
import { type Fragment, html, type Markup, table } from '../html.js';
import { disagreeing } from './disagreements-page.js';
import { deviations, listed, numberText, sizeText, unitsOf, withUnit } from './numbers.js';
import { standingWords } from './standing.js';
import { capital, ended, flat } from './words.js';

/** More elements than this stand behind a summary, the worst of them before it. */
const SHOWN = 8;
/** No more numbers than these are listed; the ledger holds them all. */
const LISTED = 240;

/** The row as markup without blank lines, so that Markdown leaves it alone. Its id is its anchor. */
export function checkBlock(row: LedgerRow): string {
  const { id, source, kind, part, tolerance } = row;
  const known = source.key !== 'own' && source.key !== 'common-practice';
  const key: Fragment = known
    ? html`<a class="cite" href="/bibliography/#${source.key}">[${source.key}]</a>`
    : `[${source.key === 'own' ? 'own' : 'common practice'}]`;
  const flags = [
    !row.passed && 'Failed',
    !isOutside(row) && 'Does not count as outside',
    isLoose(row) && 'Loose',
  ].filter((flag) => flag !== false);
  const off = sizeText(row, row.deviation);
  const relative = tolerance.relative === undefined ? '' : ' of the expected value';
  const rows = elements(row);
  const strain = strains(row);
  const worst = rows[strain.indexOf(Math.max(...strain))] ?? [];
  const columns = columnsOf(row);
  const heads = columns.map(([name, unit]) => headed(name, unit));
  const values =
    rows.length <= SHOWN
      ? table(`${id}: expected and got`, heads, rows)
      : html`<p>The worst of ${rows.length} values: ${columns.map(([name, unit], k) => `${name} ${withUnit(worst[k] ?? '', unit)}`).join(', ')}.</p>
${more(id, heads, rows)}`;
  const block = html`<div class="check" id="${id}">
<p><code>${id}</code> ${key} ${ended(source.locator)} ${capital(kind)}, ${standingWords(row)}${isQuoted(row) && `, quoted in ${source.readIn}`}.${part && ` Of the result this is ${part}.`}${flags.length > 0 && html` <strong>${flags.join('. ')}.</strong>`}${disagreeing(row).length > 0 && html` <a href="/formulas/disagreements/">Misses the ${row.status === 'seen' ? 'print' : 'rule of thumb'}</a>.`}</p>
<p>Worst deviation ${off}${relative}, allowed ${sizeText(row, toleranceSize(row))}: ${ended(tolerance.why)}${conditions(row)}</p>
${values}
</div>`;
  return flat(block.markup);
}

/** Printed digits of a row each element of which is held to its own. */
const heldDigits = ({ printed = [], tolerance }: LedgerRow): readonly string[] =>
  tolerance.why === heldToPrint ? [printed].flat() : [];

/** How far each element is off: of what its print allows, where that is what it is held to. */
function strains(row: LedgerRow): readonly number[] {
  const digits = heldDigits(row);
  return digits.length > 0 ? digits.map((text, i) => shareOfPrint(listed(row.got)[i]!, text)) : deviations(row);
}

/** A number as it stands in print. */
const printedText = (text: string): string => (/e/i.test(text) ? numberText(Number(text)) : text.replace('-', '−'));

/** The other values, or where they are too many, the first, the last, and as many evenly between. */
function more(id: string, heads: readonly string[], rows: readonly (readonly string[])[]): Markup {
  const most = Math.floor(LISTED / heads.length);
  const step = Math.max(1, (rows.length - 1) / (most - 1));
  const taken = Array.from({ length: Math.min(most, rows.length) }, (_, i) => rows[Math.round(i * step)] ?? []);
  const title = rows.length <= most ? `All ${rows.length} values` : `${most} of ${rows.length} values, evenly taken`;
  return html`<details><summary>${title} of ${id}</summary>${table(`${id}: ${title.toLowerCase()}`, heads, taken)}</details>`;
}

const isList = (value: unknown): value is readonly (number | string)[] => Array.isArray(value);
const valueText = (value: number | string): string => (typeof value === 'number' ? numberText(value) : value);

/** What is given once for all elements, and the air if it is not the standard one. */
function conditions({ given, air }: LedgerRow): string {
  const fixed = Object.entries(given).filter(([, { value }]) => !isList(value));
  const medium = air
    ? ` Air of ${withUnit(numberText(air.density, 5), 'kg/m³')}, sound at ${withUnit(numberText(air.speedOfSound, 6), 'm/s')}.`
    : '';
  if (fixed.length === 0) return medium;
  const texts = fixed.map(
    ([name, { value, unit }]) => `${name} ${withUnit(valueText(value as number | string), unit)}`,
  );
  return ` Given ${texts.join(', ')}.${medium}`;
}

const varying = ({ given }: LedgerRow) => Object.entries(given).filter(([, { value }]) => isList(value));

const headed = (name: string, unit: string): string => (unit === '' || unit === '1' ? name : `${name}, ${unit}`);

/** The one unit of all elements; undefined where each has its own. */
const commonUnit = (row: LedgerRow): string | undefined =>
  new Set(unitsOf(row)).size === 1 ? unitsOf(row)[0] : undefined;

/** Name and unit of each column of the elements. */
const columnsOf = (row: LedgerRow): readonly (readonly [name: string, unit: string])[] => {
  const unit = commonUnit(row) ?? '';
  return [
    ...varying(row).map(([name, given]) => [name, given.unit] as const),
    ...(varying(row).length === 0 && listed(row.expected).length > 1 ? [['No.', ''] as const] : []),
    ['expected', unit],
    ['got', unit],
    ['deviation', row.tolerance.relative === undefined ? unit : ''],
    ...(heldDigits(row).length > 1 ? [['allowed', unit] as const] : []),
  ];
};

function elements(row: LedgerRow): readonly (readonly string[])[] {
  const [wanted, got, off, units] = [listed(row.expected), listed(row.got), deviations(row), unitsOf(row)];
  const [held, digits] = [heldDigits(row), [row.printed ?? []].flat()];
  const given = varying(row).map(([, { value }]) => value as readonly (number | string)[]);
  return wanted.map((want, i) => {
    const unit = commonUnit(row) === undefined ? (units[i] ?? '') : '';
    return [
      ...given.map((values) => valueText(values[i] as number | string)),
      ...(given.length === 0 && wanted.length > 1 ? [String(i + 1)] : []),
      withUnit(digits[i] === undefined ? numberText(want) : printedText(digits[i]), unit),
      withUnit(numberText(got[i]!), unit),
      sizeText({ tolerance: row.tolerance, unit }, off[i]!),
      ...(held.length > 1 ? [withUnit(numberText(halfUnit(held[i]!), 2), unit)] : []),
    ];
  });
}
