import type { MechanicalTold } from '../record/mechanical.js';
import type { Played } from '../record/played.js';
import type { Phrasing } from './phrasing.js';

/** How near tones and programme come to where the cone meets something hard, with all that the amplifier gives. */
export function mechanicalSentences(
  { Xmech, tone, usualMargin, from, programme, band }: MechanicalTold,
  { drivers: { Xmax }, amplifier }: Pick<Played, 'drivers' | 'amplifier'>,
  say: Phrasing,
): string {
  const beyond = Xmax ? `, ${say.decibels(20 * Math.log10(Xmech / Xmax))} beyond Xmax` : '';
  const most = `At ${say.volts(amplifier.voltage)} rms, the most that the amplifier gives${amplifier.filter === undefined ? '' : ', and behind the filter'},`;
  const moves = `moves the cone by ${say.travel(tone.value)}, at ${say.hertz(tone.frequency)}`;
  const free = 1 - tone.value / Xmech;
  const verdict =
    free < 0
      ? `${most} ${from === undefined ? 'tones of the whole band' : `tones below ${say.hertz(from)}`} can drive the cone against it, which can damage the driver.`
      : `${most} no tone from ${say.edge(band[0])} upwards does that: the worst ${moves}, so that ${say.percent(free)} stay free${free < usualMargin - 1e-9 ? `, less than the ${say.percent(usualMargin)} that are usual (common practice)` : ''}.`;
  return [
    `The cone meets something hard at ${say.travel(Xmech)} (Xmech), one way${beyond}.`,
    verdict,
    `Pink programme from ${say.edge(band[0])} to ${say.edge(band[1])} whose peaks are the greatest that the amplifier gives moves it by about ${say.travel(programme)}: an estimate, as if its peaks stood above the rms in the travel as in the voltage.`,
    'Beyond Xmax a linear model is a rough guide.',
  ].join(' ');
}
