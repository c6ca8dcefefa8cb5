import type { Fault } from '@airspring/core/fault';
import { type Kind, kinds, type Quantity, readInto, type Sign, unitList } from '@airspring/core/quantity';
import * as v from 'valibot';

/** Parts of a fault, carried through the schema library in the text of its issue. */
const packed = (fault: Pick<Fault, 'code' | 'expected' | 'remedy'>): string =>
  [fault.code, fault.expected, fault.remedy].join('\n');

/** What an editor checks while one types; the reader below is stricter about ranges. */
const pattern = (kind: Kind): RegExp => {
  const units = Object.keys(kinds[kind].units).map((unit) => unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
  return new RegExp(`^[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)? (${units.join('|')})$`);
};

/** A quantity in a brief: a text with its unit in, a checked SI number out. */
export const quantity = <K extends Kind>(kind: K, sign: Sign = 'positive') =>
  v.pipe(
    v.string(
      packed({
        code: 'unit',
        expected: `a text: a number, one space, and one of ${unitList(kind)}`,
        remedy: `Write it like "${kind === 'temperature' ? '20 °C' : `1 ${Object.keys(kinds[kind].units)[0]}`}", in quotes.`,
      }),
    ),
    v.title(`${kinds[kind].of}: a number, one space, and one of ${unitList(kind)}` as string),
    v.rawTransform<string, Quantity<K>>(({ dataset, addIssue, NEVER }) => {
      const faults: Fault[] = [];
      const value = readInto(faults, kind, dataset.value, '', sign);
      for (const fault of faults) addIssue({ message: packed(fault) });
      return value ?? NEVER;
    }),
    v.metadata({ pattern: pattern(kind).source }),
  );

/** A plain number in a brief, within bounds that have a meaning. */
export const plainNumber = (least: number, greatest: number) => {
  const message = packed({
    code: 'out-of-range',
    expected: `a number from ${least} to ${greatest}`,
    remedy: 'Correct the number.',
  });
  return v.pipe(v.number(), v.minValue(least, message), v.maxValue(greatest, message));
};

/** A whole number in a brief. */
export const wholeNumber = (least: number, greatest: number) => {
  const message = packed({
    code: 'out-of-range',
    expected: `a whole number from ${least} to ${greatest}`,
    remedy: 'Correct the number.',
  });
  return v.pipe(v.number(), v.integer(message), v.minValue(least, message), v.maxValue(greatest, message));
};
