import { visible } from '@airspring/core/fault';
import type { Played } from '../record/played.js';
import type { Phrasing } from '../words/phrasing.js';
import { loudest, travelText } from '../words/play-text.js';
import { ventSentences } from '../words/vent-text.js';
import { drivesOf, highPassOf } from './drives.js';

/** The lines of a paragraph as one. */
export const joined = (text: string): string => visible(text.replace(/\s*\n\s*/g, ' '));

/** How loud a box plays, up to which level its vent is quiet, and how far its cone travels. Cautions have places of their own. */
export const playingSentences = (design: Played, say: Phrasing): string[] =>
  [
    loudest(design, say),
    ...(design.opening ? [ventSentences(design.opening, false, say)] : []),
    ...travelText(design, say),
  ].map(joined);

/** What the box is for an amplifier. */
export const loadSentence = ({ impedance: { load } }: Pick<Played, 'impedance'>, say: Phrasing): string => {
  const { nominal, least } = load;
  const counts = nominal === undefined ? '' : ` For the amplifier the box counts as a load of ${say.ohms(nominal)}.`;
  return `The lowest impedance in the audible bass is ${say.ohms(least.value)}, at ${say.hertz(least.frequency)}.${counts}`;
};

/** The impedance to measure, and a sentence about it. */
export const impedanceOf = ({ impedance, curves }: Pick<Played, 'impedance' | 'curves'>, text: string) => ({
  text: joined(text),
  frequencies: curves.frequencies,
  magnitude: curves.impedance,
  peaks: impedance.maxima,
  dips: impedance.minima,
});

/** Which drives keep the cone within its travel, and the high-pass that does. */
export function protectionOf(design: Played, say: Phrasing) {
  const highPass = highPassOf(design, say);
  return {
    drives: drivesOf(design, say),
    ...(highPass && {
      highPass: { ...highPass, settings: highPass.settings.map(([what, value]) => [what, visible(value)] as const) },
    }),
  };
}
