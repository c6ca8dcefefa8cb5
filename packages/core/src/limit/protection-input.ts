import type { System } from '../enclosure/index.js';
import { type Fault, refuse } from '../fault/index.js';
import type { FilterShape } from '../filter/index.js';
import { refuseBadShape } from '../filter/shape.js';
import { unlessRising } from '../numeric/refusal.js';
import {
  anySign,
  type Field,
  type Frequency,
  type FrequencyInput,
  optional,
  positive,
  readFields,
  si,
  type VoltageRms,
  type VoltageRmsInput,
} from '../quantity/index.js';
import { type Reference, referenceLevel } from '../response/index.js';
import { referenceShape } from '../response/reference.js';

/** What a filter is asked to protect from. Give the drive or the level. */
export interface ProtectionInput {
  /** A constant drive, V rms. */
  readonly driveVoltageRms?: VoltageRmsInput;
  /** Instead of the drive: the level far above all corners that it gives, dB at 1 m in half space. */
  readonly level?: number;
  /** The band in which every limit must hold; default 1 Hz to 200 Hz. */
  readonly from?: FrequencyInput;
  readonly to?: FrequencyInput;
  /** Shapes to try, yours included; default Butterworth of order 1 to 4, Bessel of order 2 to 4, Linkwitz–Riley of order 2 and 4. */
  readonly candidates?: readonly FilterShape[];
  /** The frequency at which delay and level are given; default f3 without a filter. */
  readonly at?: FrequencyInput;
  /** What f3 is counted from; default the asymptote. */
  readonly reference?: Reference;
}

/** What was asked for, read. */
interface Protected {
  readonly driveVoltageRms: VoltageRms;
  readonly from: Frequency;
  readonly to: Frequency;
  readonly candidates?: readonly FilterShape[] | undefined;
  readonly at?: Frequency | undefined;
  readonly reference?: Reference | undefined;
}

const shapes: Field<readonly FilterShape[]> = {
  optional: false,
  read: (faults, value, path) => {
    if (Array.isArray(value) && value.length > 0) return value as readonly FilterShape[];
    const expected = 'a list of at least one shape, such as butterworthShape(2)';
    faults.push({ code: 'empty', path, got: value, expected, remedy: 'Leave it out for the usual shapes.' });
    return undefined;
  },
};

const inputShape = {
  ...referenceShape,
  driveVoltageRms: optional(positive('voltageRms')),
  level: optional(anySign('level')),
  candidates: optional(shapes),
  at: optional(positive('frequency')),
};

/** Reads what a filter is to protect from. A level becomes the drive that gives it far above all corners. */
export function readProtection(system: System, input: ProtectionInput): Protected {
  const read = readFields('protection', input, inputShape);
  const { driveVoltageRms, level, candidates, at, reference } = read;
  const [from, to] = [read.from ?? si('frequency', 1), read.to ?? si('frequency', 200)];
  const faults: Fault[] = unlessRising('protection.to', from, to);
  if ((driveVoltageRms === undefined) === (level === undefined)) {
    const code = level === undefined ? 'empty' : 'conflict';
    const remedy = level === undefined ? 'Add one of them.' : 'Remove one of the two.';
    faults.push({
      code,
      path: 'protection.driveVoltageRms',
      got: driveVoltageRms,
      expected: 'the drive, or the level',
      remedy,
    });
  }
  refuse(faults);
  candidates?.forEach(refuseBadShape);
  const drive = driveVoltageRms ?? si('voltageRms', 10 ** ((level! - referenceLevel(system)) / 20));
  return { driveVoltageRms: drive, from, to, candidates, at, reference };
}
