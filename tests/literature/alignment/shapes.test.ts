/** The targets of alignments, against normalised prototypes that were worked out from the published definitions. */
import {
  type Alignment,
  bessel,
  butterworth,
  chebyshev,
  criticallyDamped,
  fixedAt,
  interOrder,
  legendre,
  linkwitzRiley,
  ofTotalQ,
  subChebyshev,
} from '@airspring/core/alignment';
import { check } from '../../ledger/check.js';
import prototypes from './prototypes.json' with { type: 'json' };

/** The coefficients over the frequency at which the first is 1 if the last is, as it must be. */
function normalised(ascending: readonly number[]): number[] {
  const order = ascending.length - 1;
  const scale = ascending[0]! ** (1 / order);
  return ascending.map((value, k) => value * scale ** (k - order));
}
/** The order, and the coefficients of the target. */
const shapeOf = ({ order, target }: Alignment): readonly number[] =>
  typeof target === 'function' ? [order, ...normalised(target(0))] : [];
const expectedShape = (ascending: readonly number[]) => [ascending.length - 1, ...normalised(ascending)];

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
      got: (row) => shapeOf(make(row.order, row.ripple)),
      // The high-pass has the coefficients of the low-pass in reverse.
      expected: expectedShape([...lowPass].reverse().map((value) => value / lowPass[0]!)),
      unit: '1',
      tolerance: { relative: 1e-9, why: 'the prototypes have ten digits' },
    });
  });
}

/** Chebyshev shapes whose ripple is asked for, not the parameter that the driver would choose. */
for (const [, order, ripple, ...lowPass] of prototypes.rows.filter(
  ([family, , ripple]) => family === 'chebyshev' && (ripple as number) > 0,
) as [string, number, number, ...number[]][])
  check(`alignment.fixed-at.${order}.${ripple}`, {
    formula: 'alignment/fixedAt',
    source: types.chebyshev.source,
    status: 'derived',
    kind: 'table',
    given: { order: { value: order, unit: '1' }, ripple: { value: ripple, unit: 'dB' } },
    got: ({ order, ripple }) => {
      const found = fixedAt(chebyshev(order), { ripple });
      if (!found.ok) throw new Error(found.because[0]?.text);
      return shapeOf(found.alignment);
    },
    expected: expectedShape([...lowPass].reverse().map((value) => value / lowPass[0]!)),
    unit: '1',
    tolerance: { relative: 1e-9, why: 'the prototypes have ten digits' },
  });

check('alignment.shape.inter-order', {
  formula: 'alignment/interOrder',
  source: { key: 'audioxpress2024ib4', locator: 'order 3½; equal weights of the two orders are our reading' },
  status: 'derived',
  kind: 'standard',
  given: { share: { value: 0.5, unit: '1' } },
  got: ({ share }) => shapeOf(interOrder(share)),
  expected: [4, 1, 2.863279021, 3.678735169, 2.71246573, 1],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});
check('alignment.shape.linkwitz-riley', {
  formula: 'alignment/linkwitzRiley',
  source: { key: 'audioxpress2024lr4', locator: 'two equal Butterworth filters in a row' },
  status: 'derived',
  kind: 'standard',
  given: { sections: { value: 2, unit: '1' } },
  got: () => shapeOf(linkwitzRiley),
  expected: [4, 1, 2.828427125, 4, 2.828427125, 1],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});
check('alignment.shape.total-q', {
  formula: 'alignment/ofTotalQ',
  source: { key: 'small1972closed1', locator: 's²/(s² + s/Qtc + 1)' },
  status: 'derived',
  kind: 'standard',
  given: { Qtc: { value: 0.8, unit: '1' } },
  got: ({ Qtc }) => shapeOf(ofTotalQ(Qtc)),
  expected: [2, 1, 1.25, 1],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'one division' },
});
check('alignment.shape.critically-damped', {
  formula: 'alignment/criticallyDamped',
  source: { key: 'small1972closed1', locator: 'Qtc = 0.5: one double pole; binomial coefficients' },
  status: 'derived',
  kind: 'standard',
  given: { order: { value: 4, unit: '1' } },
  got: ({ order }) => shapeOf(criticallyDamped(order)),
  expected: [4, 1, 4, 6, 4, 1],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'whole numbers' },
});

/** What a free parameter says, then the shape that it gives: k, ripple, 1, a3, a2, a1, 1. */
const ellipseOf = (type: Alignment, k: number): readonly number[] => {
  const { target, free } = type;
  if (typeof target !== 'function' || free === undefined) return [];
  const { k: told, ripple } = free.told(k) as { readonly k: number; readonly ripple: number };
  return [told, ripple, ...normalised(target(k))];
};
const ellipse = { key: 'small1973vented1', locator: 'C4 coefficients by k, from the ellipse of poles' };
for (const [k, ripple, a3, a2, a1] of [
  [0.3, 1.463825333, 1.181964243, 2.767169083, 1.822426992],
  [0.6, 0.06785885795, 1.957935196, 2.914807694, 2.362429493],
  [0.9, 0.0001332999231, 2.475588237, 3.274794068, 2.558760532],
] as const) {
  check(`alignment.shape.ellipse.${k}`, {
    formula: 'alignment/chebyshev',
    source: ellipse,
    status: 'derived',
    kind: 'table',
    given: { k: { value: k, unit: '1' } },
    got: (row) => ellipseOf(chebyshev(4), row.k),
    expected: [k, ripple, 1, a3, a2, a1, 1],
    unit: '1',
    tolerance: { relative: 1e-9, why: 'ten digits; the ripple at k = 0.9 is the difference of numbers near 1' },
  });
}
for (const [k, a3, a2, a1] of [
  [1.1, 2.737556979, 3.556633405, 2.667394698],
  [1.5, 3.134498068, 4.113178302, 2.890337354],
  [2, 3.473496516, 4.707410712, 3.161741138],
] as const) {
  check(`alignment.shape.outer-ellipse.${k}`, {
    formula: 'alignment/subChebyshev',
    source: ellipse,
    status: 'derived',
    kind: 'table',
    given: { k: { value: k, unit: '1' } },
    got: (row) => ellipseOf(subChebyshev(4), row.k).filter((_, i) => i !== 1),
    expected: [k, 1, a3, a2, a1, 1],
    unit: '1',
    tolerance: { relative: 1e-9, why: 'ten digits' },
  });
}
