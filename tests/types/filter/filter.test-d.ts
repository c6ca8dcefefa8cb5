import { biquads, butterworthShape, type Filter, type FilterShape, highPass, shapeByQ } from '@airspring/core/filter';
import { expectTypeOf, test } from 'vitest';

test('the order says how many quality factors there are', () => {
  expectTypeOf(highPass(shapeByQ({ order: 4, Q: [0.6, 2.5] }), '20 Hz')).toEqualTypeOf<Filter>();
  expectTypeOf(shapeByQ({ order: 1 })).toEqualTypeOf<FilterShape>();
  // @ts-expect-error one section, one Q
  shapeByQ({ order: 2, Q: [0.6, 2.5] });
  // @ts-expect-error two sections, two Q
  shapeByQ({ order: 4, Q: 0.6 });
  // @ts-expect-error a section without its Q
  shapeByQ({ order: 3 });
  // @ts-expect-error no section, no Q
  shapeByQ({ order: 1, Q: 1 });
  // @ts-expect-error a corner is a frequency
  highPass(butterworthShape(2), '20 s');
  // @ts-expect-error a sample rate is a frequency
  biquads(highPass(butterworthShape(2), '20 Hz'), { sampleRate: '1 ms' });
});
