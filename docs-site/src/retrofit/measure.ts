import { clearanceOf } from '../../../packages/airspring/src/standing/quieter.js';
import { html, type Markup } from '../html.js';
import { list, tied } from '../say.js';
import { cite } from '../sections/sources.js';
import type { Facts } from './facts.js';

/** What to measure with rule and calliper before anything is printed. */
export function measureFirst(facts: Facts): Markup {
  const { first, sets, say } = facts;
  const { panelThickness: t } = facts.answer;
  const ways = [
    ...(first?.row.box.tubes.map(({ diameter, length }) => ({ words: 'the tube to print first', diameter, length })) ??
      []),
    ...sets.flatMap(({ tubes: { diameter }, proposed }) =>
      proposed.map(({ mark, option: { length } }) => ({ words: `tube ${mark}`, diameter, length })),
    ),
  ].map(({ words, ...tube }) => `${words} needs ${say.length(clearanceOf([tube], t))}`);
  return html`
<section aria-labelledby="measure"><h2 id="measure">Measure before you print</h2>
<ol>
<li>The hole: measure it with a calliper at three places. A tube that is half a millimetre too thick does not go in.</li>
<li>The panel: measure its thickness at the hole. The brief says ${tied(say.length(t))}. The length of a vent counts from the outside of the panel.</li>
${
  ways.length > 0 &&
  html`<li>The clear distance straight behind the hole: push a dowel in until it touches something, and subtract the thickness of the panel. For a straight tube, ${tied(list(ways))}. This includes free air of one tube diameter in front of the inner end (common practice ${cite('practice')}).</li>`
}
<li>The room beside the tube: the magnet of a driver may be in its way.</li>
</ol>
</section>`;
}

/** The tuning found without any instrument. */
export function checkByEye({ answer: { now, asked }, say }: Facts): Markup | false {
  const { fb } = now.account;
  if (fb === undefined) return false;
  return html`
<section aria-labelledby="by-eye"><h2 id="by-eye">Check the tuning by eye</h2>
<p>At its tuning the cone of a vented box nearly stands still, and the air in the vent does the work ${cite('small1973vented1')}. You can see that without any instrument.</p>
<p class="caution"><strong>Low level, ears, fingers:</strong> this check needs very little sound, far below the ${tied(say.decibels(asked.level))} of the brief. A deep tone that sounds soft can still move a cone far. Keep your ears away from the vent, and your fingers off the cone and out of the vent while it plays. Wear hearing protection when you turn it up for anything else.</p>
<ol>
<li>Turn the amplifier right down, and keep children and pets out of the room. Play a steady tone of ${tied(say.hertz(1.6 * fb))}, so soft that you can hardly hear it.</li>
<li>Turn it up until you can just see the edge of the cone move, and no further.</li>
<li>Lower the tone slowly towards ${tied(say.hertz(fb))}. Near it the cone moves less and less. Where it moves least is the tuning. A lamp that shines flat across the cone shows it best.</li>
<li>Do not go much below ${tied(say.hertz(0.8 * fb))}: there the air in the vent no longer holds the cone.</li>
<li>If the tuning you find is more than 5&nbsp;% away from ${tied(say.hertz(fb))}, enter it in the brief, in <code>standing</code>: <code>"measured": { "tuning": "… Hz" }</code>. Every change is then computed again.</li>
</ol>
</section>`;
}
