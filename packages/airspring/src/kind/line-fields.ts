import type { Fault } from '@airspring/core/fault';
import { decimalText } from '@airspring/core/quantity';
import * as v from 'valibot';
import { oneOrMore } from '../brief/bounds.js';
import { plainNumber, quantity, wholeNumber } from '../brief/quantity-text.js';
import type { Job, Written } from '../job/job.js';
import { acrossFront, LINES } from './front-alone.js';
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

/** A brief for a single driver where every choice has several. */
function faultsOfDriverAt(written: Written, read: Partial<Job['sections']>): Fault[] {
  const { line, drivers = [] } = read as {
    line?: { driverAt?: unknown };
    drivers?: readonly (
      | { wirings?: readonly ({ series?: number; parallel?: number; isobaric?: boolean } | undefined)[] }
      | undefined
    )[];
  };
  const isSingle = ({ series = 1, parallel = 1, isobaric = false }) => series * parallel === (isobaric ? 2 : 1);
  const isServed = drivers.some(
    (driver) =>
      driver === undefined || (driver.wirings ?? [{}]).some((wiring) => wiring === undefined || isSingle(wiring)),
  );
  if (line?.driverAt === undefined || isServed) return [];
  const { driverAt: got } = written.line as { driverAt: unknown };
  const expected =
    'a choice of one driver or one isobaric pair in drivers, since several stand around the middle of the first channel';
  const remedy = 'Leave line.driverAt out, or offer such a choice.';
  return [{ code: 'inconsistent', path: 'line.driverAt', got, expected, remedy }];
}

/** A driver or an opening that no number of folds leaves in its channel: the first and the last are each that share of the line. */
function faultsOfPlaces(written: Written, read: Partial<Job['sections']>): Fault[] {
  const {
    folds = [0],
    driverAt,
    openAt,
  } = (read as { line?: { folds?: readonly number[]; driverAt?: readonly number[]; openAt?: readonly number[] } })
    .line ?? {};
  const channel = 1 / (1 + Math.min(...folds));
  const { driverAt: driver, openAt: opening } = (written.line ?? {}) as { driverAt?: unknown; openAt?: unknown };
  const fault = (path: string, got: unknown, expected: string): Fault[] => [
    { code: 'inconsistent', path, got, expected, remedy: 'Change the place, or the number of folds.' },
  ];
  const share = decimalText(channel, 3);
  const last = decimalText(1 - channel, 3);
  return [
    ...(driverAt === undefined || driverAt.some((at) => at > 0 && at < channel)
      ? []
      : fault('line.driverAt', driver, `a place between 0 and ${share}, within the first channel`)),
    ...(openAt === undefined || openAt.some((at) => at > 1 - channel)
      ? []
      : fault('line.openAt', opening, `a place above ${last} and up to 1, within the last channel`)),
  ];
}

/** What a brief for a line must keep; told once, by the first kind of line that it names. */
export const acrossLine =
  (name: string) =>
  (written: Written, read: Partial<Job['sections']>): Fault[] => {
    const { kinds = [] } = (read as { box?: { kinds?: readonly string[] } }).box ?? {};
    const isFirst = kinds.find((kind) => LINES.includes(kind)) === name;
    return [
      ...acrossFront(name)(written, read),
      ...(isFirst ? [...faultsOfDriverAt(written, read), ...faultsOfPlaces(written, read)] : []),
    ];
  };

/** As well a brief whose kinds of line are all folded so that no cuboid holds them; told once, by the first of them. */
export const acrossShapedLine =
  (name: string, expected: string, isHeld: (folds: number) => boolean) =>
  (written: Written, read: Partial<Job['sections']>): Fault[] => {
    const { box, line } = read as { box?: { kinds?: readonly string[] }; line?: { folds?: readonly number[] } };
    const { kinds = [] } = box ?? {};
    const got = line?.folds;
    const others = kinds.filter((kind) => kind !== name);
    // A number of folds that a tapered line takes is one that a stepped line takes.
    const beyond =
      kinds.includes(name) && others.every((kind) => kind === 'tapered-line') && got !== undefined && !got.some(isHeld);
    const remedy = 'Change the number of folds, or leave line.folds out.';
    return [
      ...acrossLine(name)(written, read),
      ...(beyond ? [{ code: 'inconsistent' as const, path: 'line.folds', got, expected, remedy }] : []),
    ];
  };
