import { si } from '@airspring/core/quantity';
import { compileBodiesFit, fit, roundBodies } from '@airspring/core/space';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';

const metres = (value: number) => si('length', value);
const edge = fc.double({ min: 0.15, max: 0.7, noNaN: true });
const body = fc.record({
  cutoutDiameter: fc.double({ min: 0.08, max: 0.25, noNaN: true }).map(metres),
  collar: fc.double({ min: 0, max: 0.04, noNaN: true }),
  depth: fc.double({ min: 0.02, max: 0.3, noNaN: true }).map(metres),
});
const T = metres(0.018);
const OPPOSED = { count: 2, faces: ['left', 'right'], spread: 'opposed' } as const;

test.prop([edge, edge, edge, body, body, fc.boolean()], { numRuns: 200 })(
  'drivers and radiators fit together exactly where fit says so',
  (width, height, depth, one, other, opposed) => {
    const sized = ({ collar, ...sizes }: typeof one) => ({
      ...sizes,
      outerDiameter: metres(sizes.cutoutDiameter + collar),
    });
    const driver = { ...sized(one), ...(opposed && OPPOSED) };
    const radiator = { ...sized(other), faces: ['top', 'back'] as const };
    const fits = compileBodiesFit({
      thickness: [T, T, T, T, T, T],
      gap: 0.005,
      edgeMargin: 0.005,
      cutoutMargin: 0.002,
      bodies: [...roundBodies('driver', driver), ...roundBodies('radiator', radiator)],
    });
    const outer = { width: metres(width + 2 * T), height: metres(height + 2 * T), depth: metres(depth + 2 * T) };
    expect(fits(width, height, depth)).toBe(fit({ outer, thickness: T, driver, radiator }).ok);
  },
);
