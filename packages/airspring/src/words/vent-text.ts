import type { VentedTold } from '../record/vent-noise.js';
import type { Phrasing } from './phrasing.js';

/** Between which levels it is doubtful whether a vent is heard, and what the sound loses in it. */
export function ventSentences(
  { called, noise: { quiet, noisy }, compression }: VentedTold,
  quietWanted: boolean,
  say: Phrasing,
): string {
  const several = quiet.where !== undefined;
  const of = several ? ` in ${quiet.where}` : '';
  return [
    'No formula tells when a vent is heard, so all published onsets are asked, for every steady tone of the band.',
    `Up to ${say.decibels(quiet.level)} ${several ? 'every vent' : called} is quiet: it stays below every one of them. The first is "${quiet.onset}"${of}, at ${say.hertz(quiet.frequency)}.`,
    `Above ${say.decibels(noisy.level)} ${several ? noisy.where : 'it'} has passed them all and is noisy. Between the two it is doubtful.`,
    ...(quietWanted ? ['You want it quiet at the wanted level.'] : []),
    ...(compression ? [lossSentences(compression, several ? 'the vents' : called, say)] : []),
  ].join(' ');
}

const lossSentences = (
  { low, nominal, high, frequency }: NonNullable<VentedTold['compression']>,
  where: string,
  say: Phrasing,
): string =>
  `The air loses pressure in ${where} by its speed: at the wanted level the sound falls behind by about ${say.decibels(nominal)} at ${say.hertz(frequency)}. Published losses give ${low.toFixed(1)} to ${say.decibels(high)}.`;
