import type { TubeOption } from 'airspring';
import { capital, inWords } from '../../../packages/airspring/src/kind/wording.js';
import type { MarkedSet } from '../../../packages/airspring/src/standing/marked-tubes.js';
import { glanceNumbers } from '../../../packages/airspring/src/words/account-text.js';
import { endOfSearchText } from '../../../packages/airspring/src/words/phrasing.js';
import { flangeText, holeText, leftOutText, purposeText } from '../../../packages/airspring/src/words/tubes-text.js';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';
import { anchorOf, tubeFigure } from './tube-figure.js';
import { meets } from './wishes.js';

const cellsOf = ({ account }: TubeOption): string[] => glanceNumbers(account).map((number) => number || '–');

/** What the tubes of one flange have in common, against the wishes. */
function lesson({ answer, first }: Facts, { proposed }: MarkedSet): string {
  const { account } = answer.now;
  const found = proposed.map(({ option }) => option.account);
  const met = found.map((one) => meets(one, answer));
  if (met.every(({ reach, level }) => reach && level)) return 'They are as deep and as loud as you want.';
  const louder = found.every(({ loudest }) => loudest.level > account.loudest.level);
  const shallower = found.every(({ reach }) => (reach ?? Infinity) > (account.reach ?? 0));
  if (!louder || !shallower) return 'Each gives up something of what you want.';
  const [best] = first ? [meets(first.row.account, answer)] : [];
  return `Each is louder than the box is now but reaches less deep: through the same hole, a lower tuning gains level and loses depth.${best?.level && best.reach ? ' The change at the top of this page loses neither.' : ''}`;
}

function oneSet(facts: Facts, set: MarkedSet, isOnly: boolean): Markup {
  const { answer, say } = facts;
  const { tubes, number, proposed } = set;
  const rows = proposed.map(({ mark, option, purpose }) => [
    `${mark}, ${tied(say.length(option.length))}`,
    ...cellsOf(option),
    purposeText(option, purpose, answer, say),
  ]);
  const count = `${capital(inWords(proposed.length))} ${proposed.length === 1 ? 'length is' : 'lengths are'} worth printing.`;
  return html`${!isOnly && html`<h3 id="flange${anchorOf(set)}">${tied(`Set ${number}, ${holeText(tubes, answer, say)}`)}</h3>`}
<p>${tied(flangeText(tubes, say))}</p>
${tubeFigure(facts, set)}
<p>${count} ${lesson(facts, set)}</p>
${table(`Tubes of ${tied(say.length(tubes.diameter))} worth printing.${endOfSearchText(proposed.map(({ option }) => option.account))}`, ['tube', 'tuned, Hz', 'reach, Hz', 'level, dB', 'air, m/s', 'quiet, dB', 'what it is for'], rows, 'tubes')}`;
}

/** Sets of tubes for one flange each, one for every hole, saw and pipe: the figure over their length, and the tubes worth printing. */
export function tubesOfOneFlange(facts: Facts): Markup | false {
  const { sets, answer, say } = facts;
  const left = leftOutText(answer, say);
  return (
    (sets.length > 0 || left !== '') &&
    html`
<section aria-labelledby="tubes"><h2 id="tubes">One flange, many tubes</h2>
${sets.length > 1 && html`<p>A hole can stay as it is, be made larger, or take a pipe that you have: for each there is a set of tubes below. Choose one set; a hole takes one flange.</p>`}
${sets.map((set) => oneSet(facts, set, sets.length === 1))}
${left !== '' && html`<p>${tied(left)}</p>`}
</section>`
  );
}
