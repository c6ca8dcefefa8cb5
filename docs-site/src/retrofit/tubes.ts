import type { TubeOption, TubeSet } from 'airspring';
import { capital, inWords } from '../../../packages/airspring/src/kind/wording.js';
import { purposeText } from '../../../packages/airspring/src/words/tubes-text.js';
import { html, type Markup, table } from '../html.js';
import { tied } from '../say.js';
import type { Facts } from './facts.js';
import { proposedTubes } from './proposed.js';
import { tubeFigure } from './tube-figure.js';
import { meets } from './wishes.js';

const cellsOf = ({ account: { fb = 0, reach, loudest, wanted } }: TubeOption): string[] => [
  fb.toFixed(1),
  reach?.toFixed(1) ?? '–',
  loudest.level.toFixed(1),
  wanted.airSpeed?.value.toFixed(1) ?? '–',
];

/** What the tubes of one flange have in common, against the wishes. */
function lesson({ answer, first }: Facts, tubes: TubeSet): string {
  const { account } = answer.now;
  const found = proposedTubes(tubes).map(({ option }) => option.account);
  const met = found.map((one) => meets(one, answer));
  if (met.every(({ reach, level }) => reach && level)) return 'They are as deep and as loud as you want.';
  const louder = found.every(({ loudest }) => loudest.level > account.loudest.level);
  const shallower = found.every(({ reach }) => (reach ?? Infinity) > (account.reach ?? 0));
  if (!louder || !shallower) return 'Each gives up something of what you want.';
  const [best] = first ? [meets(first.row.account, answer)] : [];
  return `Each is louder than the box is now but reaches less deep: through the same hole, a lower tuning gains level and loses depth.${best?.level && best.reach ? ' The change at the top of this page loses neither.' : ''}`;
}

/** A set of tubes for one flange: the figure over their length, and the tubes worth printing. */
export function tubesOfOneFlange(facts: Facts): Markup | false {
  const [tubes] = facts.answer.tubeSets;
  if (!tubes) return false;
  const { say } = facts;
  const found = proposedTubes(tubes);
  const rows = found.map(({ name, option, purpose }) => [
    `${name}, ${tied(say.length(option.length))}`,
    ...cellsOf(option),
    purposeText(option, purpose, facts.answer, say),
  ]);
  return html`
<section aria-labelledby="tubes"><h2 id="tubes">One flange, many tubes</h2>
<p>${tied(`Glue one flange of ${say.length(tubes.flangeDiameter)} into the existing hole, once. Tubes of ${say.length(tubes.diameter)} inner and ${say.length(tubes.outerDiameter)} outer diameter slide into it. When you change the tube, the tuning changes. The numbers allow for the air that tube and flange take up.`)}</p>
${tubeFigure(facts, tubes)}
<p>${found.length > 0 && `${capital(inWords(found.length))} ${found.length === 1 ? 'length is' : 'lengths are'} worth printing. `}${lesson(facts, tubes)}</p>
${table('Tubes worth printing', ['tube', 'tuned, Hz', 'reach, Hz', 'level, dB', 'air, m/s', 'what it is for'], rows, 'tubes')}
</section>`;
}
