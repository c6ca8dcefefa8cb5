import { chebyshev, solveAlignment } from '@airspring/core/alignment';
import { passiveRadiatorFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { expect, test } from 'vitest';
import { paperAir as air, fs, physical, split } from '../../literature/enclosure/textbook.js';

test('where several boxes of a family have the shape, all of them are told', () => {
  const drivers = physical({ fs, ...split(0.1, 20), Vas: 0.06, Sd: 0.033, Re: 5.6 }, air);
  const Cms = si('compliance', (0.06 * 0.3) / (air.density * air.speedOfSound ** 2 * 0.05 ** 2));
  const radiator = { Sd: si('coneArea', 0.05), Mms: si('mass', 0.02), Cms, Rms: si('mechanicalResistance', 1) };
  const input = { drivers, QL: 1.6, radiator };
  const found = solveAlignment(chebyshev(4, { ripple: 0.3 }), passiveRadiatorFamily, input, {
    air,
    addResistance: true,
  });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const boxes = [found, ...found.others];
  expect(boxes).toHaveLength(3);
  expect(new Set(boxes.map(({ system }) => system.spec.netVolume.toPrecision(3))).size).toBe(3);
  // Their poles are judged by tests/property/alignment/every-root-with-zeros.long.test.ts.
  expect(boxes.map(({ f3 }) => f3.ok)).toEqual([true, true, true]);
});
