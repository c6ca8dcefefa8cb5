import type { OpeningTold } from '../record/vent-noise.js';
import type { Phrasing } from './phrasing.js';

/** Between which levels it is doubtful whether a vent is heard, and what the sound loses in it. */
export function ventSentences(
  { called, noise: { quiet, noisy }, compression, tuning }: OpeningTold,
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
    ...(tuning ? [tuningSentence(tuning, compression?.frequency, say)] : []),
  ].join(' ');
}

const lossSentences = (
  { low, nominal, high, frequency }: NonNullable<OpeningTold['compression']>,
  where: string,
  say: Phrasing,
): string =>
  `The air loses pressure in ${where} by its speed: at the wanted level the sound falls behind by about ${say.decibels(nominal)} at ${say.hertz(frequency)}. Published losses give ${low.toFixed(1)} to ${say.decibels(high)}.`;

/** What a loss does to the resonance, to its sharpness and to the dip by which it is measured. */
function tuningSentence(
  { drive, small, large }: NonNullable<OpeningTold['tuning']>,
  frequency: number | undefined,
  say: Phrasing,
): string {
  const which = frequency === undefined ? '' : `, which the wanted level takes at ${say.hertz(frequency)},`;
  const sharp = (Q: number | undefined) => Q?.toFixed(1);
  const changed = (now: string, before: string | undefined) =>
    before === undefined || before === now ? now : `${now} instead of ${before}`;
  const Q = sharp(large.Q);
  const duller = Q === undefined ? '' : `has a quality factor of ${changed(Q, sharp(small.Q))} and `;
  const [fb, fbBefore] = [say.hertz(large.fb), say.hertz(small.fb)];
  const place = `${fb === fbBefore ? 'stays' : 'is'} at ${changed(fb, fbBefore)}`;
  const [before, after] = [small.leastImpedance, large.leastImpedance].map((dip) => dip && say.hertz(dip.frequency));
  const moves = before === after ? `stays at ${after}` : `moves from ${before} to ${after}`;
  return [
    `At ${say.volts(drive)} rms${which} the resonance of box and vent ${duller}${place}.`,
    ...(`${duller}${place}`.includes('instead of') ? ['The second values hold for small signals.'] : []),
    ...(before && after ? [`The dip of the impedance ${moves}.`] : []),
  ].join(' ');
}

/** What is heard of a vent at the wanted level; empty where it is quiet there. */
export function heardAtWanted(
  { quiet, noisy }: OpeningTold['noise'],
  wanted: number,
  called: string,
  say: Phrasing,
): string {
  // Levels are told to a tenth.
  if (quiet.level > wanted - 0.05) return '';
  const heard = noisy.level < wanted - 0.05 ? 'is noisy' : 'may be heard';
  return `At the wanted level ${called} ${heard}: it is quiet up to ${say.decibels(quiet.level)} only.`;
}
