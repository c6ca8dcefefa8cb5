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
    driverAt: opt(
      v.pipe(
        oneOrMore(plainNumber(0, 1, 0.3), 'a place of the driver'),
        v.description(
          'where a single driver plays into it, as shares of its length from the closed end, within its first channel; each is tried; default the middle of the first channel',
        ),
      ),
    ),
    openAt: opt(
      v.pipe(
        oneOrMore(plainNumber(0, 1, 0.9), 'a place of the opening'),
        v.description(
          'where it is open, as shares of its length from the closed end, within its last channel; each is tried; default 1, its far end',
        ),
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

/** What a brief may say about a line whose section changes. */
export const shapedLineFields = {
  ...lineFields,
  line: {
    ...lineFields.line,
    mouth: opt(
      v.pipe(
        plainNumber(0.1, 5, 0.5),
        v.description('section of its open end ÷ that of its closed end; default any from 0.3 to 1'),
      ),
    ),
  },
};

const LINES = ['line', 'stepped-line', 'tapered-line'];

/** A brief for lines alone whose drivers may not stand on the front; told once, by the first of them. */
export const acrossLine =
  (name: string) =>
  (_written: Written, read: Partial<Job['sections']>): Fault[] => {
    const { box, drivers = [] } = read as {
      box?: { kinds?: readonly string[] };
      drivers?: readonly ({ faces?: readonly string[] } | undefined)[];
    };
    const { kinds = [] } = box ?? {};
    if (kinds[0] !== name || !kinds.every((kind) => LINES.includes(kind))) return [];
    return drivers.flatMap((driver, i): Fault[] => {
      const faces = driver?.faces;
      if (faces === undefined || faces.includes('front')) return [];
      const path = `drivers[${i}].faces`;
      const expected = 'front among them, since a line begins behind the front';
      return [{ code: 'inconsistent', path, got: faces, expected, remedy: 'Add front, or name another kind of box.' }];
    });
  };

/** As well a brief for one kind of line alone, folded so that no cuboid holds it. */
export const acrossShapedLine =
  (name: string, expected: string, isHeld: (folds: number) => boolean) =>
  (written: Written, read: Partial<Job['sections']>): Fault[] => {
    const { box, line } = read as { box?: { kinds?: readonly string[] }; line?: { folds?: readonly number[] } };
    const isAlone = box?.kinds?.every((kind) => kind === name) ?? false;
    const got = line?.folds;
    const beyond = isAlone && got !== undefined && !got.some(isHeld);
    const remedy = 'Change the number of folds, or leave line.folds out.';
    return [
      ...acrossLine(name)(written, read),
      ...(beyond ? [{ code: 'inconsistent' as const, path: 'line.folds', got, expected, remedy }] : []),
    ];
  };
