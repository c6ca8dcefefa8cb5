import type { Band, Bands } from '../standing/bands.js';
import type { Retrofit } from '../standing/retrofit.js';
import type { Phrasing } from './phrasing.js';

/** '41.2 to 46.1 Hz'; one number where both ends are printed alike. */
function between({ from, to }: Band, say: (value: number) => string): string {
  if (to === undefined) return `${say(from)} or less deep`;
  const [low, high] = [say(from), say(to)];
  return low === high ? low : `${low.replace(/ \S+$/, '')} to ${high}`;
}

/** Reach, level and air speed of a box as ranges: what its sentences begin with, and what follows the verb of each. */
export const rangesText = ({ reach, level, airSpeed }: Bands, say: Phrasing): string => {
  const speed = airSpeed && `, and the air in its vent moves at ${between(airSpeed, say.speed)} at the wanted level`;
  return `it reaches ${between(reach, say.hertz)}${speed ? ',' : ' and'} plays ${between(level, say.decibels)}${speed ?? ''}`;
};

/** What a measurement that may be off leaves of these numbers; nothing where the drivers have a sheet. */
export function bandsSentence({ measuredDrivers, now: { bands } }: Retrofit, say: Phrasing): string | undefined {
  if (measuredDrivers === undefined) return undefined;
  return bands === undefined
    ? 'The drivers are known from the impedance of the box. If all readings are off by as much as they may be, they tell of no driver: no range of reach, level and air speed follows.'
    : `The drivers are known from the impedance of the box, so these numbers have a range. If every reading is off by at most what is stated, even all at once, ${rangesText(bands, say)}.`;
}
