/** The targets of alignments, against normalised prototypes that were worked out from the published definitions. */
import {
  type Alignment,
  bessel,
  butterworth,
  chebyshev,
  criticallyDamped,
  denominatorOfMagnitude,
  interOrder,
  legendre,
  linkwitzRiley,
  ofTotalQ,
} from '@airspring/core/alignment';
import { check } from '../../ledger/check.js';
import prototypes from './prototypes.json' with { type: 'json' };

/** The coefficients over the frequency at which the first is 1 if the last is, as it must be. */
function normalised(ascending: readonly number[]): number[] {
  const order = ascending.length - 1;
  const scale = ascending[0]! ** (1 / order);
  return ascending.map((value, k) => value * scale ** (k - order));
}
const targetOf = ({ target }: Alignment): readonly number[] => (typeof target === 'function' ? target(0) : []);

const types = {
  butterworth: { make: butterworth, source: { key: 'zverev1967', locator: '|H|² = 1/(1 + ω²ⁿ)' } },
  bessel: { make: bessel, source: { key: 'thomson1949', locator: 'reverse Bessel polynomials' } },
  legendre: {
    make: legendre,
    source: { key: 'papoulis1958', locator: 'L_n(ω²) integrated from Legendre polynomials' },
  },
  chebyshev: {
    make: (order: number, ripple: number) => chebyshev(order, { ripple }),
    source: { key: 'zverev1967', locator: '|H|² = 1/(1 + ε² T_n²(ω))' },
  },
} as const;
for (const [name, { make, source }] of Object.entries(types)) {
  const rows = prototypes.rows.filter(([family]) => family === name) as [string, number, number, ...number[]][];
  rows.forEach(([, order, ripple, ...lowPass]) => {
    check(`alignment.shape.${name}.${order}${ripple > 0 ? `.${ripple}` : ''}`, {
      formula: `alignment/${name}`,
      source,
      status: 'derived',
      kind: 'table',
      given: { order: { value: order, unit: '1' }, ripple: { value: ripple, unit: 'dB' } },
      got: (row) => normalised(targetOf(make(row.order, row.ripple))),
      // The high-pass has the coefficients of the low-pass in reverse.
      expected: normalised([...lowPass].reverse().map((value) => value / lowPass[0]!)),
      unit: '1',
      tolerance: { relative: 4e-9, why: 'the prototypes have ten digits' },
    });
  });
}

check('alignment.shape.inter-order', {
  formula: 'alignment/interOrder',
  source: { key: 'audioxpress2024ib4', locator: 'order 3½; equal weights of the two orders are our reading' },
  status: 'derived',
  kind: 'standard',
  given: { share: { value: 0.5, unit: '1' } },
  got: ({ share }) => normalised(targetOf(interOrder(share))),
  expected: [1, 2.863279021, 3.678735169, 2.71246573, 1],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});
check('alignment.shape.linkwitz-riley', {
  formula: 'alignment/linkwitzRiley',
  source: { key: 'audioxpress2024lr4', locator: 'two equal Butterworth filters in a row' },
  status: 'derived',
  kind: 'standard',
  given: { sections: { value: 2, unit: '1' } },
  got: () => normalised(targetOf(linkwitzRiley)),
  expected: [1, 2.828427125, 4, 2.828427125, 1],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});
check('alignment.shape.total-q', {
  formula: 'alignment/ofTotalQ',
  source: { key: 'small1972closed1', locator: 's²/(s² + s/Qtc + 1)' },
  status: 'derived',
  kind: 'standard',
  given: { Qtc: { value: [0.5, 0.707, 1.2], unit: '1' } },
  got: ({ Qtc }) => normalised(targetOf(ofTotalQ(Qtc)))[1]!,
  expected: [2, 1 / 0.707, 1 / 1.2],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'one division' },
});
check('alignment.shape.critically-damped', {
  formula: 'alignment/criticallyDamped',
  source: { key: 'small1972closed1', locator: 'Qtc = 0.5: one double pole; binomial coefficients' },
  status: 'derived',
  kind: 'standard',
  given: { order: { value: 4, unit: '1' } },
  got: ({ order }) => normalised(targetOf(criticallyDamped(order))),
  expected: [1, 4, 6, 4, 1],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'whole numbers' },
});
check('alignment.magnitude.butterworth', {
  formula: 'alignment/denominatorOfMagnitude',
  source: { key: 'zverev1967', locator: 'Butterworth polynomials of order 2 to 5 from 1 + ω²ⁿ' },
  status: 'derived',
  kind: 'table',
  given: { order: { value: [2, 3, 4, 5], unit: '1' } },
  got: ({ order }) => denominatorOfMagnitude([1, ...Array.from({ length: order - 1 }, () => 0), 1])[1]!,
  expected: [Math.SQRT2, 2, 2.61312592975, 3.2360679775],
  unit: '1',
  tolerance: { relative: 1e-11, why: 'twelve digits' },
});
