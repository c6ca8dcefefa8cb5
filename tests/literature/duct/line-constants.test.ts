import { lineConstants, roundSection, slitSection, withoutLoss } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import { tubeAir as air } from '../tube-air.js';
import chain from './line-chain.json' with { type: 'json' };
import relations from './relations.json' with { type: 'json' };

const check = checkIn(air);

/** Constants at 300 K, as in the published expansions. */
const round = (a: number) => roundSection({ diameter: si('length', 2 * a) });
const line = (a: number, f: number) => lineConstants({ section: round(a), frequency: si('frequency', f) }, air);
const impedance = (a: number) => (air.density * air.speedOfSound) / (Math.PI * a * a);
const slit = (h: number, f: number) =>
  lineConstants(
    { section: slitSection({ width: si('length', 1), height: si('length', h) }), frequency: si('frequency', f) },
    air,
  );

check('duct.line.attenuation', {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: {
      value: [
        0.005, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.01, 0.025, 0.025, 0.025, 0.025, 0.0375, 0.0375, 0.0375, 0.0375,
        0.05, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075, 0.075,
      ],
      unit: 'm',
    },
    f: {
      value: [
        20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0,
        50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0,
      ],
      unit: 'Hz',
    },
  },
  got: ({ a, f }) => line(a, f).attenuation,
  expected: relations['duct.line.attenuation'],
  unit: 'Np/m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.velocity', {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: {
      value: [
        0.005, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.01, 0.025, 0.025, 0.025, 0.025, 0.0375, 0.0375, 0.0375, 0.0375,
        0.05, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075, 0.075,
      ],
      unit: 'm',
    },
    f: {
      value: [
        20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0,
        50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0,
      ],
      unit: 'Hz',
    },
  },
  got: ({ a, f }) => line(a, f).phaseVelocity,
  expected: relations['duct.line.velocity'],
  unit: 'm/s',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.impedance.re', {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: {
      value: [
        0.005, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.01, 0.025, 0.025, 0.025, 0.025, 0.0375, 0.0375, 0.0375, 0.0375,
        0.05, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075, 0.075,
      ],
      unit: 'm',
    },
    f: {
      value: [
        20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0,
        50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0,
      ],
      unit: 'Hz',
    },
  },
  got: ({ a, f }) => line(a, f).impedance.re / impedance(a),
  expected: relations['duct.line.impedance.re'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.impedance.im', {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: {
      value: [
        0.005, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.01, 0.025, 0.025, 0.025, 0.025, 0.0375, 0.0375, 0.0375, 0.0375,
        0.05, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075, 0.075,
      ],
      unit: 'm',
    },
    f: {
      value: [
        20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0, 20.0,
        50.0, 100.0, 500.0, 20.0, 50.0, 100.0, 500.0,
      ],
      unit: 'Hz',
    },
  },
  got: ({ a, f }) => line(a, f).impedance.im / impedance(a),
  expected: relations['duct.line.impedance.im'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

/** The series impedance of a line over ρω/S: Γ Z, what the viscous layer alone makes of it. */
function viscous(a: number, f: number): { re: number; im: number } {
  const { attenuation, phaseConstant, impedance: z } = line(a, f);
  const mass = (2 * Math.PI * f * air.density) / (Math.PI * a * a);
  return {
    re: (attenuation * z.im + phaseConstant * z.re) / mass,
    im: -(attenuation * z.re - phaseConstant * z.im) / mass,
  };
}
/** Radius for a ratio to the viscous layer, at 20 Hz. */
const narrow = (rv: number) => rv / Math.sqrt((air.density * 2 * Math.PI * 20) / air.viscosity);

check('duct.line.narrow.mass', {
  formula: 'duct/roundSection',
  source: {
    key: 'mpmath',
    locator: 'limit of narrow tubes: 4/3 − 8j/rv², evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    rv: { value: [0.3, 1.0], unit: '1' },
  },
  got: ({ rv }) => viscous(narrow(rv), 20).re,
  expected: relations['duct.line.narrow.mass'],
  unit: '1',
  tolerance: { relative: 1e-13, why: 'double precision; Bessel functions of small arguments cancel' },
});

check('duct.line.narrow.resistance', {
  formula: 'duct/roundSection',
  source: {
    key: 'mpmath',
    locator: 'limit of narrow tubes: 4/3 − 8j/rv², evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    rv: { value: [0.01, 0.1, 0.3, 1.0], unit: '1' },
  },
  got: ({ rv }) => viscous(narrow(rv), 20).im,
  expected: relations['duct.line.narrow.resistance'],
  unit: '1',
  tolerance: { relative: 1e-13, why: 'double precision; Bessel functions of small arguments cancel' },
});

/** Just below the first wave across the tube: 2ka = 3.66 and 3.62, against 3.68. */
const cutOn = chain.cutOn;
const atCutOn = {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script line-chain.py',
  },
  status: 'derived',
  kind: 'program',
  given: { a: { value: cutOn.map(({ a }) => a), unit: 'm' }, f: { value: cutOn.map(({ f }) => f), unit: 'Hz' } },
  tolerance: { relative: 1e-14, why: 'double precision' },
} as const;
check('duct.line.cut-on.attenuation', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).attenuation,
  expected: cutOn.map((row) => row.attenuation),
  unit: 'Np/m',
});
check('duct.line.cut-on.velocity', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).phaseVelocity,
  expected: cutOn.map((row) => row.velocity),
  unit: 'm/s',
});
check('duct.line.cut-on.impedance', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).impedance.re / impedance(a),
  expected: cutOn.map((row) => row.impedance),
  unit: '1',
});

check('duct.line.round.attenuation', {
  formula: 'duct/roundSection',
  source: {
    key: 'mpmath',
    locator: 'line constants of a circular tube, evaluated with 40 digits (zwikker1949); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.005, 0.025, 0.075], unit: 'm' },
    f: { value: [20, 100, 500], unit: 'Hz' },
  },
  got: ({ a, f }) => line(a, f).attenuation,
  expected: relations['duct.line.round.attenuation'],
  unit: 'Np/m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.slit.attenuation', {
  formula: 'duct/slitSection',
  source: { key: 'mpmath', locator: 'slit form, evaluated with 40 digits (zwikker1949); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: {
    h: {
      value: [0.002, 0.002, 0.002, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.02, 0.02, 0.02, 0.04, 0.04, 0.04],
      unit: 'm',
    },
    f: {
      value: [20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0],
      unit: 'Hz',
    },
  },
  got: ({ h, f }) => slit(h, f).attenuation,
  expected: relations['duct.line.slit.attenuation'],
  unit: 'Np/m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.slit.velocity', {
  formula: 'duct/slitSection',
  source: { key: 'mpmath', locator: 'slit form, evaluated with 40 digits (zwikker1949); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: {
    h: {
      value: [0.002, 0.002, 0.002, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.02, 0.02, 0.02, 0.04, 0.04, 0.04],
      unit: 'm',
    },
    f: {
      value: [20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0],
      unit: 'Hz',
    },
  },
  got: ({ h, f }) => slit(h, f).phaseVelocity,
  expected: relations['duct.line.slit.velocity'],
  unit: 'm/s',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.slit.resistance', {
  formula: 'duct/slitSection',
  source: { key: 'mpmath', locator: 'slit form, evaluated with 40 digits (zwikker1949); script relations.py' },
  status: 'derived',
  kind: 'program',
  given: {
    h: {
      value: [0.002, 0.002, 0.002, 0.005, 0.005, 0.005, 0.01, 0.01, 0.01, 0.02, 0.02, 0.02, 0.04, 0.04, 0.04],
      unit: 'm',
    },
    f: {
      value: [20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0, 20.0, 50.0, 200.0],
      unit: 'Hz',
    },
  },
  got: ({ h, f }) => {
    const { attenuation, phaseConstant, impedance: z } = slit(h, f);
    return (attenuation * z.re - phaseConstant * z.im) * h;
  },
  expected: relations['duct.line.slit.resistance'],
  unit: 'Pa·s/m²',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

const ratio = (a: number, f: number) => a * Math.sqrt((air.density * 2 * Math.PI * f) / air.viscosity);

check('duct.line.expansion', {
  formula: 'duct/lineConstants',
  source: { key: 'keefe1984', locator: 'attenuation of wide tubes: 1.0449/rv + 1.0796/rv² + 0.7498/rv³ of ω/c' },
  status: 'derived',
  kind: 'table',
  given: { a: { value: [0.025, 0.0375, 0.05, 0.075], unit: 'm' }, f: { value: [200, 100, 50, 30], unit: 'Hz' } },
  got: ({ a, f }) => line(a, f).attenuation,
  expected: [0.025, 0.0375, 0.05, 0.075].map((a, i) => {
    const f = [200, 100, 50, 30][i]!;
    const r = ratio(a, f);
    return ((2 * Math.PI * f) / air.speedOfSound) * (1.0448533 / r + 1.079598 / r ** 2 + 0.749751 / r ** 3);
  }),
  unit: 'Np/m',
  tolerance: { relative: 2e-6, why: 'six digits of the coefficients, and the next term, 1/rv⁴ of 1e-9' },
});

check('duct.line.wall-quality', {
  formula: 'duct/lineConstants',
  source: {
    key: 'mpmath',
    locator: 'quality factor of a pipe from its walls, β/(2α) (fletcher1998); script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    a: { value: [0.02, 0.02, 0.02, 0.0375, 0.0375, 0.0375, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075], unit: 'm' },
    f: { value: [30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0], unit: 'Hz' },
  },
  got: ({ a, f }) => {
    const { attenuation, phaseConstant } = line(a, f);
    return phaseConstant / (2 * attenuation);
  },
  expected: relations['duct.line.wall-quality'],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'double precision' },
});

check('duct.line.lossless', {
  formula: 'duct/withoutLoss',
  source: {
    key: 'mpmath',
    locator: 'plane waves, ρc/S (morse1968): the lossy tube with 1e-40 of the viscosity; script relations.py',
  },
  status: 'derived',
  kind: 'program',
  given: { a: { value: [0.005, 0.0375, 0.075], unit: 'm' } },
  got: ({ a }) => {
    const lossless = lineConstants({ section: withoutLoss(round(a)), frequency: '50 Hz' }, air);
    return (lossless.impedance.re / lossless.phaseVelocity) * Math.PI * a * a;
  },
  expected: relations['duct.line.lossless'],
  unit: 'kg/m³',
  tolerance: { relative: 5e-15, why: 'double precision' },
});

check('duct.section.round', {
  formula: 'duct/roundSection',
  source: { key: 'scipy', locator: 'special.jnp_zeros(1, 1), twice: the first wave across a tube; area and width' },
  status: 'derived',
  kind: 'program',
  given: { a: { value: 0.05, unit: 'm' } },
  got: ({ a }) => {
    const { area, width, cutOn } = round(a);
    return [area, width, cutOn];
  },
  expected: [0.007853981633974483, 0.1, 3.682367562681319],
  unit: 'm², m, 1',
  tolerance: { relative: 1e-15, why: 'sixteen digits' },
});
check('duct.section.slit', {
  formula: 'duct/slitSection',
  source: { key: 'morse1968', locator: 'waves across a duct with parallel walls: half a wave in its width' },
  status: 'derived',
  kind: 'identity',
  given: { width: { value: 0.3, unit: 'm' }, height: { value: 0.02, unit: 'm' } },
  got: ({ width: w, height }) => {
    const { area, width, cutOn } = slitSection({ width: si('length', w), height: si('length', height) });
    return [area, width, cutOn];
  },
  expected: [0.006, 0.3, 3.141592653589793],
  unit: 'm², m, 1',
  tolerance: { relative: 1e-15, why: 'sixteen digits' },
});
check('duct.section.slit.wave', {
  formula: 'duct/slitSection',
  source: { key: 'mpmath', locator: 'findroot: wave number of the first wave across two walls; script relations.py' },
  status: 'derived',
  kind: 'program',
  given: { width: { value: [0.3, 0.06, 0.1], unit: 'm' }, height: { value: [0.02, 0.005, 0.01], unit: 'm' } },
  got: ({ width: w, height }) => {
    const { width, cutOn } = slitSection({ width: si('length', w), height: si('length', height) });
    return cutOn / width;
  },
  expected: relations['duct.section.slit.wave'],
  unit: 'rad/m',
  tolerance: { relative: 1e-14, why: 'double precision' },
});
