import { airSpeedCustoms } from '@airspring/core/vent';
import type { Design } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { airSpeedFigure } from '../figures/air-speed.js';
import { coneTravelFigure } from '../figures/cone-travel.js';
import { figureMarkup } from '../figures/figure.js';
import { firstLimitFigure } from '../figures/first-limit.js';
import { levelFigure } from '../figures/level.js';
import { html, type Markup } from '../html.js';
import { limitInWords, say } from '../say.js';
import { cautionsAbout } from './cautions.js';
import { cite } from './sources.js';

/** Level, travel, air speed, and what gives out. */
export function sound(design: Design, designs: readonly Design[], facts: BriefFacts): Markup {
  const airSpeed = airSpeedFigure(designs, facts);
  const level = say('level', facts.level, 'dB');
  return html`
<section aria-labelledby="sound"><h2 id="sound">What it plays</h2>
<p>All boxes are driven alike here: with ${say('voltageRms', design.curves.driveVoltageRms, 'V')}, which gives ${level} where the response is flat. Line patterns tell the boxes apart, colours the quantities. The network of driver, box and vent is Small’s ${cite('small1973vented1')}.</p>
${figureMarkup(levelFigure(designs, facts))}
${cautionsAbout(design, 'Hearing')}
${figureMarkup(coneTravelFigure(designs, facts))}
${airSpeed && figureMarkup(airSpeed)}
${
  airSpeed &&
  html`<p>To limit the mean speed is a rule of thumb ${cite('practice')}; ${say('airSpeedPeak', airSpeedCustoms.strict.airSpeedPeak, 'm/s')} to ${say('airSpeedPeak', airSpeedCustoms.usual.airSpeedPeak, 'm/s')} are customary. It predicts no noise: that depends on flare, edge and tone as well.</p>`
}
<h3>How loud it gets</h3>
<p>Turn it up and something gives out: the cone runs out of travel ${cite('iec60268-22')}, the coil gets too hot, the vent exceeds its speed, or the amplifier clips. Which comes first changes with the tone ${cite('small1973vented2')}.</p>
${figureMarkup(firstLimitFigure(designs, facts))}
<h3>Below the band</h3>
<p>${protection(design, facts)}</p>
${cautionsAbout(design, 'Driver', 'Mains')}
</section>`;
}

/** What guards the cone under the tuning, where nothing holds it any more. */
function protection({ protection: given, drivers, curves, vent }: Design, { drivers: known }: BriefFacts): string {
  const drive = say('voltageRms', given.driveVoltageRms, 'V');
  const Xmax = say('length', known.get(drivers.name)?.Xmax ?? 0, 'mm', 2);
  const lowest = say('frequency', curves.frequencies[0] ?? 0, 'Hz');
  const head = vent
    ? `Below ${say('frequency', vent.fb, 'Hz')} the air in the vent moves with the cone and no longer holds it.`
    : 'In a closed box the air holds the cone down to the lowest tones.';
  if (given.lowestSafeFrequency === undefined) {
    return `${head} At ${drive} the cone still stays within its ${Xmax} at every tone. Drive it harder, as the amplifier can, and ${limitInWords(curves.binding[0] ?? '')} gives out first at ${lowest}, at a level of ${say('level', curves.greatestLevel[0] ?? 0, 'dB')}: a high-pass below the band spares it what nobody hears.`;
  }
  const from = `${head} At ${drive}, tones below ${say('frequency', given.lowestSafeFrequency, 'Hz')} are too much for it.`;
  const { highPass } = given;
  if (!highPass) return `${from} Keep such tones out of the programme.`;
  return `${from} A second-order Butterworth high-pass at ${say('frequency', highPass.corner, 'Hz')} keeps the cone within its ${Xmax}, and costs ${say('level', highPass.costAtLowest, 'dB', 2)} at the lowest tone of the band.`;
}
