import { type PassiveRadiator, type PassiveRadiatorInput, passiveRadiator } from '@airspring/core/driver';
import type { Fault } from '@airspring/core/fault';
import * as v from 'valibot';
import { lossQ, most, oneOrMore } from '../brief/bounds.js';
import { gather, withUnits } from '../brief/driver-choices.js';
import { driverFields } from '../brief/driver-fields.js';
import type { ReadFields } from '../brief/fields.js';
import { quantity, wholeNumber } from '../brief/quantity-text.js';
import { faultsOfCount, faultsOfFaces, seatingFields, seatingOf } from '../brief/seating.js';
import type { Job, Seating, Written } from '../job/job.js';
import { pinnedTuning } from './vented-fields.js';

const opt = v.exactOptional;
const { name, fs, Qms, Vas, Sd, coneDiameter, Mms, Cms, Rms, Xmax, outerDiameter, cutoutDiameter, depth } =
  driverFields;
const { displacedVolume } = driverFields;
const sheetFields = {
  name,
  fs,
  Qms,
  Vas,
  Sd,
  coneDiameter,
  Mms,
  Cms,
  Rms,
  Xmax,
  outerDiameter,
  cutoutDiameter,
  depth,
  displacedVolume,
} as const;

const radiator = v.strictObject({
  ...sheetFields,
  counts: opt(
    v.pipe(
      oneOrMore(wholeNumber(1, 4), 'a number of radiators'),
      v.description('how many of these radiators; each number is tried; default one'),
    ),
  ),
  greatestAddedMass: opt(
    v.pipe(
      quantity('mass', { least: 0, greatest: 10_000, unit: 'g' }, 'not-negative'),
      v.description('greatest mass that may be added to each cone; default as much as its own moving mass'),
    ),
  ),
  ...seatingFields,
});

/** What a brief may say about boxes with passive radiators. */
export const fields = {
  box: {
    tuning: pinnedTuning,
    QL: opt(v.pipe(lossQ, v.description('quality factor of the leaks at the tuning; default 7, common practice'))),
    QA: opt(v.pipe(lossQ, v.description('quality factor of the absorption at the tuning; default no absorption'))),
  },
  radiators: v.pipe(
    v.array(radiator),
    v.minLength(1, 'empty\nat least one passive radiator\nAdd one, or leave the field out.'),
    most(),
    v.description(
      'passive radiators to choose from, for the kind radiator; fs, Qms and Vas are those without added mass',
    ),
  ),
};

type Sheet = v.InferOutput<typeof radiator>;

/** One passive radiator of the brief, with how many of it there are. */
export interface RadiatorChoice {
  /** Its path in the brief. */
  readonly path: string;
  readonly name: string;
  readonly radiator: PassiveRadiator;
  readonly seating: Seating;
  readonly count: number;
  /** Greatest mass that may be added to each, kg. */
  readonly greatestAddedMass: number;
  /** The brief does not say it. */
  readonly massAssumed: boolean;
}

const pathOf = (i: number): string => `radiators[${i}]`;
const countsOf = ({ counts }: { readonly counts?: readonly (number | undefined)[] | undefined }): number[] =>
  [...new Set(counts ?? [1])].filter((count) => count !== undefined);

/** The data of a sheet, without the fields that say how it may be used. */
const dataOf = (sheet: object) =>
  Object.fromEntries(Object.entries(sheet).filter(([field]) => Object.hasOwn(sheetFields, field)));

/** Faults of radiators whose data are incomplete or contradictory, of numbers that their faces cannot share, and of a missing list. */
export function across(written: Written, read: Partial<Job['sections']>): Fault[] {
  const { box, radiators } = read as {
    box?: { kinds?: readonly string[] };
    radiators?: readonly (Sheet | undefined)[];
  };
  if (written.radiators === undefined && box?.kinds?.includes('radiator')) {
    const expected = 'a list of passive radiators to choose from, since box.kinds names radiator';
    return [{ code: 'empty', path: 'radiators', got: undefined, expected, remedy: 'Add the field.' }];
  }
  return (radiators ?? []).flatMap((sheet, i): Fault[] => {
    if (sheet === undefined) return [];
    const path = pathOf(i);
    const texts = (written.radiators as readonly Readonly<Record<string, unknown>>[])[i] ?? {};
    const faults: Fault[] = [];
    const data = dataOf(sheet);
    const whole = Object.keys(texts).every((field) => Object.hasOwn(sheet, field));
    gather(
      faults,
      () => passiveRadiator(withUnits<PassiveRadiatorInput>(data, texts), path),
      // If a value was lost to a fault of its own, or its name is misspelt, nothing is reported as missing.
      (fault) => (whole || fault.code !== 'empty' ? fault : undefined),
    );
    const seating = seatingOf({ faces: sheet.faces?.flatMap((face) => face ?? []), spread: sheet.spread });
    const misplaced = faultsOfFaces(seating, path);
    const at = sheet.counts ? `${path}.counts` : `${path}.spread`;
    const miscounted = misplaced.length > 0 ? [] : countsOf(sheet).flatMap((n) => faultsOfCount(seating, n, at));
    return [...faults, ...misplaced, ...miscounted];
  });
}

/** Every passive radiator of a brief, once for each number of it that may be tried. */
export function radiatorsOf({ sections }: Job): RadiatorChoice[] {
  const { radiators = [] } = sections as ReadFields<typeof fields>;
  return radiators.flatMap((sheet, i) => {
    const made = passiveRadiator(dataOf(sheet) as PassiveRadiatorInput, pathOf(i));
    return countsOf(sheet).map((count) => ({
      path: pathOf(i),
      name: sheet.name,
      radiator: made,
      seating: seatingOf(sheet),
      count,
      greatestAddedMass: sheet.greatestAddedMass ?? made.Mms,
      massAssumed: sheet.greatestAddedMass === undefined,
    }));
  });
}
