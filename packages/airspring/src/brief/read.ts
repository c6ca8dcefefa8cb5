import type { Air } from '@airspring/core/air';
import { type Fault, InputError, sayFault } from '@airspring/core/fault';
import type { ShapeChoice } from '@airspring/core/space';
import * as v from 'valibot';
import type { AlignmentChoice } from '../job/alignment-choice.js';
import type { DriverChoice, Job, Written } from '../job/job.js';
import { faultsAcross } from './across.js';
import { faultsOfAlignment, standardAlignments } from './alignment.js';
import { jobOf } from './defaults.js';
import { choicesOf, gather } from './driver-choices.js';
import type { DriverModels } from './driver-models.js';
import { type Faultless, faultlessOf } from './faultless.js';
import type { BriefPart } from './fields.js';
import { faultOf, issuesOf, unknownFields } from './issue.js';
import { faultsOfKinds } from './kinds-named.js';
import { mediumOf } from './medium.js';
import { keysOf, valueAt } from './path.js';
import { recessOf } from './recess.js';
import { briefSchema, type ReadBrief } from './schema.js';
import { faultsOfShape } from './shaped-across.js';
import { faultsOfSize } from './size.js';
import { standardModels } from './standard-models.js';
import { tellingOf } from './units.js';

/** A fault found by core, with the value as the reader wrote it, and in the reader's units. */
const asWritten = (brief: object) => {
  const { length } = tellingOf(brief);
  return (fault: Fault) => {
    const written = valueAt(brief, keysOf(fault.path));
    const told = sayFault(fault, length);
    return typeof written === 'string' || typeof written === 'number' ? { ...told, got: written } : told;
  };
};

/** One fault for each place and reason. */
const once = (faults: readonly Fault[]): Fault[] => [
  ...new Map(faults.map((fault) => [`${fault.path}\n${fault.expected}`, fault])).values(),
];

/** A brief in SI units, before any default is filled in. */
export interface Checked<Read> {
  readonly read: Read;
  readonly air: Air;
  readonly choices: readonly DriverChoice[];
}

/**
 * Checks a brief by a schema: converts every quantity to SI units and completes every driver. Fields that are right by
 * themselves are checked against each other even when other fields have faults, so that nobody has to correct a brief in
 * stages. `completed` may add what follows for its drivers from elsewhere in the brief.
 *
 * @throws InputError with every fault at its path
 */
export function checked<Read>(
  brief: unknown,
  schema: v.GenericSchema<unknown, Read>,
  parts: readonly Pick<BriefPart, 'across'>[],
  models: DriverModels,
  completed: (faults: Fault[], read: Faultless<ReadBrief>, air: Air) => Faultless<ReadBrief> = (_, same) => same,
): Checked<Read> {
  const tooLarge = faultsOfSize(brief, '');
  if (tooLarge.length > 0) throw new InputError(tooLarge);
  const { output, issues = [] } = v.safeParse(schema, brief);
  const wrong = issues
    .flatMap(issuesOf)
    .filter(({ expected }) => expected !== 'never')
    .map((issue) => faultOf(issue, schema));
  const notABrief = wrong.filter(({ path }) => path.length === 0);
  if (notABrief.length > 0) throw new InputError(once(notABrief.map(({ fault }) => fault)));
  const faultless = faultlessOf(
    output as unknown as ReadBrief,
    wrong.map(({ path }) => path),
  );
  const across = faultsAcross(brief, faultless, parts);
  const medium = gather(across, () => mediumOf(faultless.air ?? {}));
  const whole = medium ? completed(across, faultless, medium) : faultless;
  const choices = choicesOf(across, brief, whole, models);
  const alone = [...wrong.map(({ fault }) => fault), ...unknownFields(brief, output, schema)];
  // A field that is wrong by itself is not checked against other fields as well.
  const places = new Set(alone.map(({ path }) => path));
  const held = across.filter(({ path }) => !places.has(path)).map(asWritten(brief as object));
  const faults = once([...alone, ...held]);
  if (faults.length > 0 || medium === undefined) throw new InputError(faults);
  return { read: output as Read, air: medium, choices };
}

/**
 * Reads a brief about boxes of these kinds, which may name these alignments and shapes, and fills in every default.
 *
 * @throws InputError with every fault at its path
 * @example readBrief(JSON.parse(text), kinds).wanted.lowest // 30
 */
export function readBrief(
  brief: unknown,
  kinds: readonly BriefPart[],
  models: DriverModels = standardModels,
  alignments: readonly AlignmentChoice[] = standardAlignments,
  shapes: readonly ShapeChoice[] = [],
): Job {
  const named: Pick<BriefPart, 'across'> = {
    across: (written, read) => [
      ...faultsOfKinds(written, (read.box as ReadBrief['box'])?.kinds, kinds),
      ...faultsOfShape(written, read as Faultless<ReadBrief>, kinds, shapes),
      ...faultsOfAlignment(read.alignment, written.box as object | undefined, alignments),
    ],
  };
  const schema = briefSchema(kinds, alignments, models, shapes);
  const { read, air, choices } = checked(brief, schema, [named, ...kinds], models);
  const recessed = choices.map((choice) => {
    const recess = recessOf(read, choice.seating);
    return recess ? { ...choice, recess } : choice;
  });
  return jobOf(brief as Written, read, air, recessed, alignments, shapes);
}
