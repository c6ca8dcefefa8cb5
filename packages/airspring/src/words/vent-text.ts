import type { VentedTold } from '../record/vent-noise.js';
import type { Phrasing } from './phrasing.js';

/** Between which levels it is doubtful whether the vent is heard, and what the sound loses in it. */
export function ventSentences({ noise, compression }: VentedTold, quietWanted: boolean, say: Phrasing): string {
  const { quiet, noisy } = noise;
  const { low, nominal, high, frequency } = compression;
  return [
    'No formula tells when a vent is heard, so all published onsets are asked, for every steady tone of the band.',
    `Up to ${say.decibels(quiet.level)} the vent is quiet: it stays below every one of them. The first is "${quiet.onset}", at ${say.hertz(quiet.frequency)}.`,
    `Above ${say.decibels(noisy.level)} it has passed them all and is noisy. Between the two it is doubtful.`,
    ...(quietWanted ? ['You want it quiet at the wanted level.'] : []),
    `The air loses pressure in the vent by its speed: at the wanted level the sound falls behind by about ${say.decibels(nominal)} at ${say.hertz(frequency)}. Published losses give ${low.toFixed(1)} to ${say.decibels(high)}.`,
  ].join(' ');
}
