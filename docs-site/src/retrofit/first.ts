import type { Account } from 'airspring';
import { reachText } from '../../../packages/airspring/src/words/account-text.js';
import { rangesText } from '../../../packages/airspring/src/words/bands-text.js';
import { changeText, measureAfterText, stepsOf } from '../../../packages/airspring/src/words/changes-text.js';
import { quieterText } from '../../../packages/airspring/src/words/quieter-text.js';
import { figureMarkup } from '../figures/figure.js';
import { html, type Markup, table } from '../html.js';
import { limitInWords, tied } from '../say.js';
import { caution } from './cautions.js';
import type { Facts } from './facts.js';
import { measuredHead } from './measured.js';
import { withRanges } from './ranges.js';
import { tubesBeside } from './tubes-beside.js';
import { LEAST_DECIBELS, LEAST_SHARE, meets } from './wishes.js';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is to be printed for the first change, as its step says it. */
export const printStep = ({ first, say }: Pick<Facts, 'first' | 'say'>): string | undefined =>
  first?.row.steps.map((step) => say.phrase(step)).find((step) => step.startsWith('Print'));

/** What to do first, as a sentence to act on. */
export function doFirst({ first, say }: Facts): string {
  if (!first) return 'No single change brings the box nearer to what you want.';
  const { row } = first;
  const print = printStep({ first, say });
  if (print === undefined) return `First: ${row.change}. ${changeText(row, say)}`;
  const [sentence = ''] = print.split(/(?<=\.) /);
  return `${sentence.replace(/^Print /, 'Print this first: ')} That is ${row.change}${row.holds.includes('tuning') && !row.change.includes('tuning') ? ', with the tuning kept' : ''}.`;
}

function levelChange(now: Account, then: Account, { answer: { asked }, say }: Facts): string {
  const by = then.loudest.level - now.loudest.level;
  const to = say.decibels(then.loudest.level);
  const moves =
    Math.abs(by) < LEAST_DECIBELS
      ? `The loudest steady tone stays at ${to}`
      : `The loudest steady tone ${by > 0 ? 'rises' : 'falls'} from ${say.decibels(now.loudest.level)} to ${to}`;
  const short = asked.level - then.loudest.level;
  return short < LEAST_DECIBELS
    ? `${moves}, as loud as you want`
    : `${moves}, still ${say.decibels(short)} short of what you want`;
}

function airChange(now: Account, then: Account, { answer: { asked }, say }: Facts): string {
  const [from, to] = [now.wanted.airSpeed?.value, then.wanted.airSpeed?.value];
  if (from === undefined || to === undefined) return '';
  const at = `at ${say.decibels(asked.level)}`;
  const moves =
    Math.abs(to / from - 1) < LEAST_SHARE
      ? `the air in the vent keeps its ${say.speed(to)} ${at}`
      : `the air in the vent ${to < from ? 'slows' : 'speeds up'} from ${say.speed(from)} to ${say.speed(to)} ${at}`;
  const within = to <= asked.airSpeedPeak + 0.05 ? 'within' : 'still above';
  return `, and ${moves}, ${within} your limit of ${say.speed(asked.airSpeedPeak)} (peak values)`;
}

function reachChange(now: Account, then: Account, { say }: Facts): string {
  const [from, to] = [now.reach, then.reach];
  if (from === undefined || to === undefined) return '';
  const reached = reachText(then, say);
  if (Math.abs(to / from - 1) < LEAST_SHARE) return ` It reaches about as deep as before: ${reached}.`;
  return ` It reaches ${to < from ? 'deeper' : 'less deep'}: ${reached} instead of ${reachText(now, say)}.`;
}

/** How much louder the vent plays before it may be heard, and what that means at the wanted level. */
export function howQuiet({ first, answer: { now, asked }, say }: Facts): string {
  const [from, to] = [now.account.noise, first?.row.account.noise];
  if (first === undefined || (from === undefined && to === undefined)) return '';
  if (to === undefined) return 'No vent is left that could be heard.';
  const by = from === undefined ? undefined : to.quiet.level - from.quiet.level;
  const head =
    by === undefined
      ? 'The new vent is judged by its onsets of noise'
      : Math.abs(by) < LEAST_DECIBELS
        ? 'The vent may be heard from the same level on as now'
        : `The vent then plays ${say.decibels(Math.abs(by))} ${by > 0 ? 'louder' : 'less loud'} before it may be heard`;
  const judged =
    to.quiet.level >= asked.level - LEAST_DECIBELS
      ? 'it is quiet'
      : to.noisy.level < asked.level
        ? 'it is still noisy'
        : 'it may be heard or not, for no formula tells when a vent is heard';
  return `${head}: up to ${say.decibels(to.quiet.level)} it stays below every published onset. Above ${say.decibels(to.noisy.level)} it has passed them all. At the ${say.decibels(asked.level)} that you want ${judged}.`;
}

/** What the first change does to level, air and depth. */
export function whatItChanges(facts: Facts): string {
  const { first, answer } = facts;
  if (!first) return '';
  const [now, then] = [answer.now.account, first.row.account];
  const ranges = first.row.bands
    ? ` As far as the measured drivers are known, ${rangesText(first.row.bands, facts.say)}.`
    : '';
  return `${levelChange(now, then, facts)}${airChange(now, then, facts)}.${reachChange(now, then, facts)}${ranges}`;
}

/** Which choices keep the vent quieter than what is done first, and what they cost. */
export const quieterChoices = ({ first, answer, say }: Facts): string =>
  first ? quieterText(answer, first.row, say) : '';

/** The impedance to measure when it is done, beside that of the box as it stands. */
export const measureWhenDone = ({ answer, say }: Facts): string => measureAfterText(answer, say);

function beforeAndAfter({ answer, say }: Facts, then: Account): Markup {
  const { now, asked } = answer;
  const met = meets(then, answer);
  const strong = (text: string, is: boolean) => (is ? html`<strong>${tied(text)}</strong>` : tied(text));
  const row = (name: string, of: (account: Account) => string | undefined, is: boolean, wanted: string) => [
    name,
    tied(of(now.account) ?? 'none'),
    strong(of(then) ?? 'none', is),
    tied(wanted),
  ];
  return table(
    'The box now, and after this change; bold numbers meet what you asked for',
    ['what', 'now', 'then', 'you want'],
    [
      row(
        'loudest steady tone',
        ({ loudest }) => say.decibels(loudest.level),
        met.level,
        `at least ${say.decibels(asked.level)}`,
      ),
      row(
        `peak air speed in the vent at ${say.decibels(asked.level)}`,
        ({ wanted }) => wanted.airSpeed && say.speed(wanted.airSpeed.value),
        met.airSpeed,
        `at most ${say.speed(asked.airSpeedPeak)}`,
      ),
      row(
        'the vent is quiet up to',
        ({ noise }) => noise && say.decibels(noise.quiet.level),
        met.quiet,
        asked.quiet ? `at least ${say.decibels(asked.level)}` : '',
      ),
      row('the vent is noisy above', ({ noise }) => noise && say.decibels(noise.noisy.level), false, ''),
      row(
        `lost in the vent at ${say.decibels(asked.level)}`,
        ({ compression }) =>
          compression &&
          `${say.decibels(compression.nominal)} (${compression.low.toFixed(1)} to ${compression.high.toFixed(1)})`,
        false,
        '',
      ),
      row('reach', (account) => reachText(account, say), met.reach, `${say.edge(asked.lowest)} or lower`),
      row('tuning', ({ fb, fc }) => say.hertz(fb ?? fc ?? 0), false, ''),
      row('gives out first', ({ loudest }) => limitInWords(loudest.binding), false, ''),
    ],
    'before-after',
  );
}

/** What to do first, what it changes, and how it is done. */
export function firstAnswer(facts: Facts): Markup {
  const { first, say } = facts;
  const [changes, quiet, quieter] = [whatItChanges(facts), howQuiet(facts), quieterChoices(facts)];
  const measure = measureWhenDone(facts);
  const drivers = measuredHead(facts);
  if (!first) return html`${drivers}<p class="answer">${doFirst(facts)}</p>`;
  const { row } = first;
  const picture = tubesBeside(facts);
  const steps = [...(row.measure ? [row.measure] : []), ...row.steps].map((step) => tied(say.phrase(step)));
  return html`
${drivers}${withRanges(doFirst(facts), { bands: row.bands, where: 'done', say, answer: true })}
${withRanges(changes, { bands: row.bands, where: 'first', say, answer: true })}
${quiet !== '' && html`<p class="answer">${tied(quiet)}</p>`}
${quieter !== '' && html`<p class="answer">${tied(quieter)}</p>`}
${picture && figureMarkup(picture)}
${beforeAndAfter(facts, row.account)}
<section aria-labelledby="how"><h2 id="how">How to do it</h2>
<ol>${steps.map((step) => html`<li>${step}</li>`)}</ol>
${caution('dust')}${caution('fumes')}
${measure !== '' && html`<p>${tied(measure)}</p>`}
</section>`;
}

/** The verdict in one line, beside a brief that is being written. */
export function firstLine({ first, answer: { now }, say }: Facts): Markup {
  if (!first) return html`No single change helps.`;
  const { row } = first;
  const [from, to] = [now.account.wanted.airSpeed, row.account.wanted.airSpeed];
  const air = from && to ? `; air ${say.speed(from.value)} → ${say.speed(to.value)}` : '';
  const [was, then] = [now.account.noise, row.account.noise];
  const quiet = was && then ? `; quiet up to ${say.decibels(was.quiet.level)} → ${say.decibels(then.quiet.level)}` : '';
  return html`<strong>First: ${row.change}.</strong> ${tied(`${capital(say.phrase(row.what))}: level ${say.decibels(now.account.loudest.level)} → ${say.decibels(row.account.loudest.level)}${air}${quiet}.`)}`;
}

export const stepList = (facts: Facts, row: Parameters<typeof stepsOf>[0]): Markup =>
  html`<ol>${stepsOf(row, facts.say).map((step) => html`<li>${tied(step)}</li>`)}</ol>`;
