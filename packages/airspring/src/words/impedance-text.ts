import { inWords, listOf } from '../kind/wording.js';
import { IMPEDANCE_RANGE } from '../record/impedance-told.js';
import type { At } from '../record/load.js';
import type { Played } from '../record/played.js';
import type { Phrasing } from './phrasing.js';

/** A box whose peaks and dips are off by no more of their frequencies counts as the designed one: common practice. */
export const BUILT = 0.05;
const within = `within ${100 * BUILT} %`;

/** What an impedance measurement of the finished box should show. */
export const impedanceText = (design: Pick<Played, 'impedance' | 'told'>, say: Phrasing): string =>
  `${impedanceFound(design, say)} Measure the impedance of the finished box. If ${design.impedance.maxima.length === 1 ? `the frequency of its peak is ${within} of this one` : `the frequencies of its peaks and dips are ${within} of these`} (common practice), you have built what was designed.`;

/** Its peaks and dips with a place for what is measured. */
export const impedanceRows = ({ impedance }: Pick<Played, 'impedance'>, say: Phrasing): readonly string[][] => [
  ['', 'computed', 'measured'],
  ...[...impedance.maxima.map((at) => ['peak', at] as const), ...impedance.minima.map((at) => ['dip', at] as const)]
    .sort(([, one], [, other]) => one.frequency - other.frequency)
    .map(([what, { value, frequency }]) => [what, `${say.hertz(frequency)}, ${say.ohms(value)}`, '']),
];

/** Up to this difference, as a share, a dip is called close to a tuning. */
const CLOSE = 0.05;

/** What the dips between the peaks tell of the tunings: close to them, or where these are. */
function besideTuning({ of, at }: NonNullable<Played['told']['dip']>, dips: readonly At[], say: Phrasing): string {
  const tunings = [...at].sort((a, b) => a - b);
  const close =
    dips.length === at.length && dips.every(({ frequency }, i) => Math.abs(frequency / tunings[i]! - 1) < CLOSE);
  return close ? `, close to ${of}` : `; ${of} ${at.length > 1 ? 'are' : 'is'} at ${listOf(tunings.map(say.hertz))}`;
}

/** Peaks, dip and load alone. */
export function impedanceFound({ impedance, told }: Pick<Played, 'impedance' | 'told'>, say: Phrasing): string {
  const spot = ({ value, frequency }: At) => `${say.ohms(value)} at ${say.hertz(frequency)}`;
  const { maxima, minima } = impedance;
  const [first, last] = [maxima[0], maxima.at(-1)];
  const dips = minima.filter(
    ({ frequency }) => first && last && frequency > first.frequency && frequency < last.frequency,
  );
  const { least } = impedance;
  const single = maxima.length === 1;
  const peaks = `The impedance has ${single ? 'one peak' : `${inWords(maxima.length)} peaks`}: ${listOf(maxima.map(spot))}.`;
  const between =
    told.dip && dips.length > 0
      ? ` The ${dips.length > 1 ? 'dips between them are' : 'dip between them is'} ${listOf(dips.map(spot))}${besideTuning(told.dip, dips, say)}.`
      : '';
  const [from, to] = IMPEDANCE_RANGE;
  const { load } = impedance;
  const nominal =
    load.nominal === undefined
      ? ''
      : ` In the audible bass it is at least ${say.ohms(load.least.value)}, so for the amplifier the box counts as a load of ${say.ohms(load.nominal)}.`;
  return `${peaks}${between} The lowest impedance between ${say.edge(from)} and ${say.edge(to)} is ${spot(least)}.${nominal}`;
}
