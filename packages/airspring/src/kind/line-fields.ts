import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import { oneOrMore } from '../brief/bounds.js';
import { plainNumber, quantity, wholeNumber } from '../brief/quantity-text.js';
import type { Job, Written } from '../job/job.js';
import { quiet } from './vented-fields.js';

const opt = v.exactOptional;

/** What a brief may say about a line. */
export const lineFields = {
  vent: { quiet },
  line: {
    folds: opt(
      v.pipe(
        oneOrMore(wholeNumber(0, 5), 'a number of folds'),
        v.description('how often it is folded; each number is tried; default 0, 1, 2 and 3'),
      ),
    ),
    flowResistivity: opt(
      v.pipe(
        quantity('flowResistivity', { least: 50, greatest: 50_000, unit: 'Pa·s/m²', example: '1500 Pa·s/m²' }),
        v.description('flow resistivity of the fibre in it; default no fill'),
      ),
    ),
    filled: opt(
      v.pipe(
        plainNumber(0.55, 1, 0.6),
        v.description('share of its length that is filled, from its closed end; default 1, all of it'),
      ),
    ),
    airSpeed: opt(
      v.pipe(
        quantity('airSpeedPeak', { least: 0.1, greatest: 340, unit: 'm/s' }),
        v.description(
          'greatest air speed in its opening: peak in time, mean over its cross-section; default 17 m/s, common practice',
        ),
      ),
    ),
  },
};

/** A brief for lines alone whose drivers may not stand on the front. */
export function acrossLine(_written: Written, read: Partial<Job['sections']>): Fault[] {
  const { box, drivers = [] } = read as {
    box?: { kinds?: readonly string[] };
    drivers?: readonly ({ faces?: readonly string[] } | undefined)[];
  };
  if (box?.kinds?.some((kind) => kind !== 'line') ?? true) return [];
  return drivers.flatMap((driver, i): Fault[] => {
    const faces = driver?.faces;
    if (faces === undefined || faces.includes('front')) return [];
    const path = `drivers[${i}].faces`;
    const expected = 'front among them, since a line begins behind the front';
    return [{ code: 'inconsistent', path, got: faces, expected, remedy: 'Add front, or name another kind of box.' }];
  });
}
