import { standardAir } from '@airspring/core/air';
import { radiationResistance } from '@airspring/core/duct';
import { check } from '../../ledger/check.js';

check('duct.radiation-resistance', {
  formula: 'duct/radiationResistance',
  source: {
    key: 'rayleigh1896',
    locator: 'sec. 302: the pressure of a point source in a wide wall, ρω²U/(2πc) in phase with its flow',
  },
  status: 'derived',
  kind: 'standard',
  given: { f: { value: [20, 100, 600], unit: 'Hz' } },
  got: ({ f }) => {
    const out = { re: new Float64Array(1), im: new Float64Array(1) };
    const values = Float64Array.of(standardAir.density, standardAir.speedOfSound, 2 * Math.PI);
    radiationResistance('radiation', ['mouth', 'ground']).fill(values, 0, Float64Array.of(f), out);
    return out.re[0]!;
  },
  // 2π f² × 1.19931389 kg/m³ / 343.98673 m/s
  expected: [20, 100, 600].map((f) => (2 * Math.PI * f * f * 1.1993138954744935) / 343.9867288897193),
  unit: 'Pa·s/m³',
  tolerance: { relative: 1e-15, why: 'double precision' },
});
