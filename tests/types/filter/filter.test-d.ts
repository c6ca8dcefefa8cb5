import { butterworthHighPass, type Filter, highPassByQ } from '@airspring/core/filter';
import { expectTypeOf, test } from 'vitest';

test('the order says how many quality factors there are', () => {
  expectTypeOf(highPassByQ({ order: 4, corner: '20 Hz', Q: [0.6, 2.5] })).toEqualTypeOf<Filter>();
  // @ts-expect-error one section, one Q
  highPassByQ({ order: 2, corner: '20 Hz', Q: [0.6, 2.5] });
  // @ts-expect-error two sections, two Q
  highPassByQ({ order: 4, corner: '20 Hz', Q: 0.6 });
  // @ts-expect-error a section without its Q
  highPassByQ({ order: 3, corner: '20 Hz' });
  // @ts-expect-error no section, no Q
  highPassByQ({ order: 1, corner: '20 Hz', Q: 1 });
  // @ts-expect-error orders 1 to 4
  butterworthHighPass({ order: 5, corner: '20 Hz' });
  // @ts-expect-error a corner is a frequency
  butterworthHighPass({ order: 2, corner: '20 s' });
});
