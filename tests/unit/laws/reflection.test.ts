/** Our reflection factors obey every law of theirs; planted liars are found by the law that is named for it. */
import { reflectionLaws } from '@airspring/core/laws';
import { absorbing, type Reflection, rigid } from '@airspring/core/room';
import { expect, test } from 'vitest';
import { brokenLaws } from './boxes.js';

const lie = (factor: (frequency: number) => number, sources: unknown = ['own']): Reflection =>
  Object.assign(factor, { sources: sources as readonly string[] });
const panel = lie((frequency) => (frequency < 60 ? 0.5 : 0.9));

test.each([
  ['rigid', rigid],
  ['absorbing', absorbing(0.3)],
  ['all', absorbing(1)],
  ['a panel of one’s own', panel],
] as const)('%s', (_, reflection) => {
  expect(brokenLaws(reflectionLaws(reflection))).toEqual([]);
});

let calls = 0;
test.each([
  ['names its sources', lie(() => 1, null)],
  ['is finite', lie((frequency) => (frequency > 100 ? Number.NaN : 1))],
  ['returns no more than arrives', lie((frequency) => 1.2 - frequency / 1000)],
  ['gives the same answer twice', lie(() => 1e-9 * ++calls)],
] as const)('%s', (law, reflection) => {
  expect(brokenLaws(reflectionLaws(reflection))).toEqual([law]);
});
