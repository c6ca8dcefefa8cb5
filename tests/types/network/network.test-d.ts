import { branch, type Element, type Probe } from '@airspring/core/network';
import { describe, expectTypeOf, test } from 'vitest';

describe('a network', () => {
  test('has elements of known kinds, each with what it needs', () => {
    expectTypeOf(branch('mass', 'Mms', ['cone', 'ground'])).toExtend<Element>();
    // @ts-expect-error no number stands in an element
    branch('mass', 'Mms', ['cone', 'ground'], 0.06);
    // @ts-expect-error no such kind
    branch('weight', 'Mms', ['cone', 'ground']);
    // @ts-expect-error one node only
    branch('mass', 'Mms', ['cone']);
    // @ts-expect-error a motor without its mechanical side
    const motor: Element = { kind: 'motor', name: 'Bl', electrical: ['a', 'ground'] };
    // @ts-expect-error a potential is read at a node
    const probe: Probe = { of: 'potential', element: 'Mms' };
    expectTypeOf([motor, probe]).not.toBeAny();
  });
});
