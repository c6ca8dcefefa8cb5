import type { Air } from '../air/index.js';
import type { Drivers } from '../enclosure/index.js';
import type { Fault } from '../fault/index.js';
import { count, type Field, given, nested, optional } from '../quantity/index.js';
import { type Alignment, isGoal } from './alignment.js';
import type { ComparedBand } from './deviation.js';
import type { Norm } from './least-deviation.js';

/** What else is known, and what may be chosen beside the box. */
export interface AlignmentOptions {
  readonly air?: Air;
  /** Allows resistance to be added in front of the driver, so that a fixed target suits a driver of a lower total quality factor. */
  readonly addResistance?: boolean;
  /**
   * An auxiliary high-pass in front of the amplifier, whose order counts as part of that of the alignment. Its corner, and its
   * quality factor if it has order 2, are sought as well.
   */
  readonly highPass?: { readonly order: 1 | 2 };
  /** What is to be small where the target cannot be met exactly; default {@link rootMeanSquare}. */
  readonly norm?: Norm;
  /**
   * Where it is to be small, as multiples of the frequency of the target, which is sought as well; default from 1/2 to 4, and to 2 for a
   * band-pass.
   */
  readonly band?: ComparedBand;
}

/** Further from its own frequency a target is its slope alone, or level. */
const WIDEST = 10;
const isWithin = (value: unknown): value is number =>
  typeof value === 'number' && value >= 1 / WIDEST && value <= WIDEST;

/** The readers of the options. */
export const optionsShape = {
  air: optional(given<Air>()),
  addResistance: optional(given<boolean>()),
  highPass: optional(nested({ order: count(2) as Field<1 | 2> })),
  band: optional<ComparedBand>({
    optional: false,
    read: (faults, got, path) => {
      const { from, to } = (got ?? {}) as Partial<ComparedBand>;
      if (isWithin(from) && isWithin(to) && from < to) return { from, to };
      const expected = `from and to, multiples of the frequency of the target from ${1 / WIDEST} to ${WIDEST}, from below to`;
      faults.push({ code: 'out-of-range', path, got, expected, remedy: 'Give two plain numbers, such as 0.5 and 4.' });
      return undefined;
    },
  }),
  norm: optional<Norm>({
    optional: false,
    read: (faults, got, path) => {
      if (typeof (got as Norm | null)?.of === 'function') return got as Norm;
      const expected = 'a norm, such as rootMeanSquare or greatestDifference';
      faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Give a record with name and of.' });
      return undefined;
    },
  }),
};

/** Whether a field of the box is given. One that is `undefined` counts as left out. */
export const isGiven = (input: object, field: string): boolean =>
  (input as Record<string, unknown>)[field] !== undefined;

/** The fault of an input that is no record, or has no drivers. */
export function judgeInput(input: { readonly drivers: Drivers }): Fault[] {
  if (input?.drivers !== undefined) return [];
  const [path, expected] = input ? ['box.drivers', 'a driver'] : ['box', 'a record with drivers'];
  return [{ code: 'empty', path: path!, got: undefined, expected: expected!, remedy: 'Give it.' }];
}

/** A goal seeks the box alone: nothing that may be chosen beside it is used. */
export function judgeGoal({ target, name }: Alignment, { addResistance, highPass }: AlignmentOptions): Fault[] {
  if (!isGoal(target)) return [];
  return Object.entries({ addResistance, highPass }).flatMap(([option, got]): Fault[] => {
    if (got === undefined || got === false) return [];
    const expected = `nothing beside ${name}, which is a goal and seeks the box alone`;
    return [{ code: 'conflict', path: `options.${option}`, got, expected, remedy: 'Leave it out.' }];
  });
}
