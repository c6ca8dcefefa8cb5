import type { Band, Bands } from '../standing/bands.js';
import { NO_LEAK } from '../standing/measured-values.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Phrasing } from './phrasing.js';

/** '41.2 to 46.1 Hz'; one number where both ends are printed alike. */
function between({ from, to }: Band, say: (value: number) => string): string {
  if (to === undefined) return `${say(from)} or less deep`;
  const [low, high] = [say(from), say(to)];
  return low === high ? low : `${low.replace(/ \S+$/, '')} to ${high}`;
}

/** The words around each range of a box, and the range itself; `of` names the number. */
export interface RangePart {
  readonly before: string;
  readonly range: string;
  readonly of: keyof Bands;
}

/** Reach, level and air speed of a box as ranges, with the words around them: what its sentences begin with, and what follows the verb of each. */
export function rangeParts({ reach, level, airSpeed }: Bands, say: Phrasing): readonly RangePart[] {
  return [
    { before: 'it reaches ', range: between(reach, say.hertz), of: 'reach' },
    { before: `${airSpeed ? ',' : ' and'} plays `, range: between(level, say.decibels), of: 'level' },
    ...(airSpeed
      ? [
          {
            before: ', and the air in its vent moves at ',
            range: between(airSpeed, say.speed),
            of: 'airSpeed',
          } as const,
        ]
      : []),
  ];
}
export const afterRanges = ({ airSpeed }: Bands): string => (airSpeed ? ' at the wanted level' : '');

/** The same as one text. */
export const rangesText = (bands: Bands, say: Phrasing): string =>
  `${rangeParts(bands, say)
    .map(({ before, range }) => before + range)
    .join('')}${afterRanges(bands)}`;

/** A leak by its QL; of a QL that is the greatest that a brief takes, nothing can be told. */
export const leakText = (QL: number): string =>
  QL > 0.99 / NO_LEAK ? 'no leak' : `a QL of ${Number(QL.toPrecision(3))}`;

/** The readings of a corner, as they are written in a brief. */
const cornerText = (corner: Band['corners']['from'], say: Phrasing): string =>
  [
    `the peaks at ${corner.lowerPeak.toFixed(2)} and ${corner.upperPeak.toFixed(2)} Hz`,
    `the dip at ${corner.dip.toFixed(2)} Hz`,
    `${corner.peakImpedance.toFixed(2)} Ω at the higher peak`,
    `${corner.flankImpedance.toFixed(2)} Ω at ${corner.flankFrequency.toFixed(2)} Hz`,
    `Re ${corner.Re.toFixed(3)} Ω`,
    `a cone of ${say.length(corner.coneDiameter)}`,
    `${say.volume(corner.air)} of air`,
    leakText(1 / corner.leak),
  ].join(', ');

const VERBS: Readonly<Record<keyof Bands, readonly [least: string, most: string]>> = {
  reach: ['It reaches deepest', 'It reaches least deep'],
  level: ['It plays least loud', 'It plays loudest'],
  airSpeed: ['The air is slowest', 'The air is fastest'],
};

/** Where a range comes from: how its ends were found, and the readings that give each of them; a line each. */
export function rangeProof(of: keyof Bands, { corners }: Band, say: Phrasing): readonly string[] {
  const [least, most] = VERBS[of];
  return [
    'Each end is the number for one set of readings, each as it was read or off by as much as it may be. These sets were searched, and not all were tried; that is no proof: another set may lead a little farther.',
    `${least} with ${cornerText(corners.from, say)}.`,
    `${most} with ${cornerText(corners.to, say)}.`,
    'The box has that number if these are the true readings; they are rounded here.',
  ];
}

/** What a measurement that may be off leaves of these numbers; nothing where the drivers have a sheet. */
export function bandsSentence({ measuredDrivers, now: { bands } }: Retrofit, say: Phrasing): string | undefined {
  if (measuredDrivers === undefined) return undefined;
  return bands === undefined
    ? 'The drivers are known from the impedance of the box. If all readings are off by as much as they may be, they tell of no driver: no range of reach, level and air speed follows.'
    : `The drivers are known from the impedance of the box, so these numbers have a range. If every reading is off by at most what is stated, even all at once, and the box leaks between nothing and ${leakText(measuredDrivers.leaks.least)}, ${rangesText(bands, say)}.`;
}
