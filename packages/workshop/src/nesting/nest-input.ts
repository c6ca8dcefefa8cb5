import { type Fault, refuse } from '@airspring/core/fault';
import {
  count,
  type Field,
  type Length,
  type LengthInput,
  nested,
  notNegative,
  optional,
  positive,
  readFields,
  si,
} from '@airspring/core/quantity';

/** A piece to be sawn, once or several times. */
export interface PartInput {
  readonly name: string;
  /** Along the grain, if it has one. */
  readonly length: LengthInput;
  readonly width: LengthInput;
  /** Whether its length must lie along the grain of the sheet. Default: no, it may be turned. */
  readonly grained?: boolean | undefined;
  /** Default: 1. */
  readonly count?: number | undefined;
}

/** A size of sheet, or an offcut that lies about. */
export interface SheetInput {
  readonly name?: string | undefined;
  /** Along its grain. */
  readonly length: LengthInput;
  readonly width: LengthInput;
  /** How many there are. Default: as many as are needed. */
  readonly count?: number | undefined;
}

export interface NestInput {
  readonly parts: readonly PartInput[];
  readonly sheets: readonly SheetInput[];
  /** Width of the cut. */
  readonly kerf: LengthInput;
  /** What is cut from each edge of a sheet first, since it is bruised. Default: nothing. */
  readonly trim?: LengthInput | undefined;
}

export interface Part {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly grained: boolean;
}
export interface Sheet {
  readonly name: string;
  readonly length: Length;
  readonly width: Length;
  readonly count?: number;
}
export interface Nest {
  readonly parts: readonly Part[];
  readonly sheets: readonly Sheet[];
  readonly kerf: Length;
  readonly trim: Length;
}

/** The greatest number of parts that are nested at once: the time grows with its square. */
const PARTS = 2000;

const word: Field<string> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'string') return value;
    faults.push({ code: 'empty', path, got: value, expected: 'a text', remedy: 'Give it a name.' });
    return undefined;
  },
};
const yes: Field<boolean> = {
  optional: false,
  read: (faults, value, path) => {
    if (typeof value === 'boolean') return value;
    faults.push({ code: 'inconsistent', path, got: value, expected: 'true or false', remedy: 'Give one of both.' });
    return undefined;
  },
};

const length = positive('length');
const part = nested({ name: word, length, width: length, grained: optional(yes), count: optional(count(PARTS)) });
const sheet = nested({ name: optional(word), length, width: length, count: optional(count(PARTS)) });

const some = <T>(field: Field<T>): Field<readonly T[]> => ({
  optional: false,
  read: (faults, value, path) => {
    if (!Array.isArray(value) || value.length === 0) {
      faults.push({
        code: 'empty',
        path,
        got: value,
        expected: 'a list with one element at least',
        remedy: 'Give it.',
      });
      return undefined;
    }
    const before = faults.length;
    const list = value.map((each, i) => field.read(faults, each, `${path}[${i}]`));
    return faults.length === before ? (list as T[]) : undefined;
  },
});

const shape = {
  parts: some(part),
  sheets: some(sheet),
  kerf: notNegative('length'),
  trim: optional(notNegative('length')),
};

export function readNest(input: NestInput): Nest {
  const { parts, sheets, kerf, trim = si('length', 0) } = readFields('nest', input, shape);
  const faults: Fault[] = [];
  const all = parts.reduce((sum, { count = 1 }) => sum + count, 0);
  if (all > PARTS) {
    const expected = `at most ${PARTS} parts together`;
    faults.push({ code: 'out-of-range', path: 'nest.parts', got: all, expected, remedy: 'Nest them in several runs.' });
  }
  for (const [i, { length, width }] of sheets.entries()) {
    if (Math.min(length, width) > 2 * trim) continue;
    const expected = `more than twice the trim, ${2 * trim} m`;
    faults.push({
      code: 'inconsistent',
      path: `nest.sheets[${i}]`,
      got: Math.min(length, width),
      expected,
      remedy: 'Trim less.',
    });
  }
  refuse(faults);
  return {
    parts: parts.flatMap(({ name, length, width, grained = false, count = 1 }) =>
      Array.from({ length: count }, () => ({ name, length, width, grained })),
    ),
    sheets: sheets.map((one, i) => ({ ...one, name: one.name ?? `sheet ${i + 1}` })),
    kerf,
    trim,
  };
}
