import { compileLongestSlot, type Face, faces } from '@airspring/core/space';
import { check } from '../../ledger/check.js';
import fixtures from './slots.json' with { type: 'json' };

const { slots, program } = fixtures;

for (const form of ['straight', 'folded'] as const) {
  check(`space.longest-slot.${form}`, {
    status: 'derived',
    kind: 'program',
    formula: 'space/compileLongestSlot',
    source: {
      key: 'scipy',
      locator: `${program}: differential evolution over all places; tests/literature/space/slots.py`,
    },
    given: { layout: { value: slots.map((_, i) => i), unit: 'row' } },
    got: ({ layout }) => {
      const { inner, driver, vent } = slots[layout]!;
      const out = new Float64Array(2);
      const { walls, ...slot } = vent;
      compileLongestSlot({
        thickness: faces.map(() => 0.018),
        gap: 0.005,
        edgeMargin: 0.005,
        cutoutMargin: 0.002,
        bodies: [{ ...driver, part: 'driver', count: 1, faces: [faces.indexOf(driver.face as Face)], opposed: false }],
        vent: { count: 1, faces: [faces.indexOf('front')], bend: true, walls: walls as 0 | 1 | 2 },
      })(...(inner as [number, number, number]), slot, out);
      return out[form === 'straight' ? 0 : 1]!;
    },
    expected: slots.map((row) => row[form]),
    unit: 'm',
    tolerance: { absolute: 1e-13, why: 'rounding of sums of edges: the best places are at the ends of what is tried' },
  });
}
