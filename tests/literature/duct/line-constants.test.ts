import { standardAir } from '@airspring/core/air';
import { lineConstants, roundSection, slitSection, withoutLoss } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';

/** Constants at 300 K, as in the published expansions. */
const air = {
  ...standardAir,
  density: si('density', 1.1769),
  speedOfSound: si('speed', 347.23),
  viscosity: si('viscosity', 1.846e-5),
  heatCapacityRatio: 1.4017,
  prandtlNumber: 0.841 ** 2,
};
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
  source: { key: 'zwikker1949', locator: 'line constants of a circular tube, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    0.0287658030993, 0.0442576990225, 0.0617389114728, 0.135564525593, 0.0138591233636, 0.021618421177, 0.0303657059871,
    0.067287400023, 0.0054225810237, 0.00852778101006, 0.0120274403208, 0.0267971121364, 0.00359743052078,
    0.00566766812927, 0.00800082688428, 0.017847344882, 0.00269149600092, 0.00424420157651, 0.00599408443546,
    0.0133789913398, 0.0017899602582, 0.00282511034046, 0.00399170548081, 0.00891498551511,
  ],
  unit: 'Np/m',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.velocity', {
  formula: 'duct/lineConstants',
  source: { key: 'zwikker1949', locator: 'line constants of a circular tube, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    323.439349318, 331.761589349, 336.139659717, 342.178200903, 334.879381646, 339.311060238, 341.591800561,
    344.685317504, 342.178200903, 344.017508692, 344.95218817, 346.207600728, 343.845452149, 345.081645584,
    345.708106756, 346.547728678, 344.685317504, 345.616220075, 346.087321632, 346.718044453, 345.529356844,
    346.152468847, 346.46737483, 346.888528209,
  ],
  unit: 'm/s',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.impedance.re', {
  formula: 'duct/lineConstants',
  source: { key: 'zwikker1949', locator: 'line constants of a circular tube, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    1.02596947602, 1.01647568254, 1.01166128411, 1.00521887749, 1.01303463572, 1.00824957033, 1.00583462704,
    1.00260977559, 1.00521887749, 1.00330104989, 1.00233427396, 1.00104394702, 1.0034795857, 1.00220078283,
    1.00155621167, 1.00069596724, 1.00260977559, 1.00165060867, 1.00116716632, 1.0005219761, 1.00173989107,
    1.00110041597, 1.00077811446, 1.00034798439,
  ],
  unit: '1',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.impedance.im', {
  formula: 'duct/lineConstants',
  source: { key: 'zwikker1949', locator: 'line constants of a circular tube, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    -0.0319409990597, -0.0188272625093, -0.0128282244244, -0.00545000288065, -0.0144964226155, -0.00883000800907,
    -0.00612379774126, -0.00266733615548, -0.00545000288065, -0.00339323965489, -0.00238030398411, -0.00105313587449,
    -0.00358204551533, -0.00224169048691, -0.00157664642227, -0.000700049136016, -0.00266733615548, -0.0016736009035,
    -0.00117865441734, -0.00052427159453, -0.00176544129625, -0.0011106266358, -0.000783217428884, -0.000349004351422,
  ],
  unit: '1',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
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
  source: { key: 'zwikker1949', locator: 'limit of narrow tubes: 4/3 − 8j/rv², evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
  given: {
    rv: { value: [0.3, 1.0], unit: '1' },
  },
  got: ({ rv }) => viscous(narrow(rv), 20).re,
  expected: [1.333331458354, 1.333102167162],
  unit: '1',
  tolerance: { relative: 1e-11, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.narrow.resistance', {
  formula: 'duct/roundSection',
  source: { key: 'zwikker1949', locator: 'limit of narrow tubes: 4/3 − 8j/rv², evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
  given: {
    rv: { value: [0.01, 0.1, 0.3, 1.0], unit: '1' },
  },
  got: ({ rv }) => viscous(narrow(rv), 20).im,
  expected: [-80000.00000069, -800.0000694444, -88.88951388274, -8.006936016914],
  unit: '1',
  tolerance: { relative: 2e-12, why: 'printed to thirteen digits' },
});

/** Just below the first wave across the tube: 2ka = 3.66 and 3.62, against 3.68. */
const cutOn = { a: { value: [0.075, 0.005], unit: 'm' }, f: { value: [1350, 20000], unit: 'Hz' } } as const;
const atCutOn = {
  formula: 'duct/lineConstants',
  source: {
    key: 'zwikker1949',
    locator: 'line constants of a circular tube, evaluated with 40 digits by line-chain.py',
  },
  status: 'derived',
  kind: 'table',
  given: cutOn,
  tolerance: { relative: 2e-12, why: 'printed to thirteen digits from 40-digit arithmetic' },
} as const;
check('duct.line.cut-on.attenuation', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).attenuation,
  expected: [0.01464323392598, 0.8468805046178],
  unit: 'Np/m',
});
check('duct.line.cut-on.velocity', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).phaseVelocity,
  expected: [347.0221067784, 346.4212219302],
  unit: 'm/s',
});
check('duct.line.cut-on.impedance', {
  ...atCutOn,
  got: ({ a, f }) => line(a, f).impedance.re / impedance(a),
  expected: [1.000211776652, 1.00082531464],
  unit: '1',
});

check('duct.line.round.attenuation', {
  formula: 'duct/roundSection',
  source: { key: 'zwikker1949', locator: 'line constants of a circular tube, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
  given: {
    a: { value: [0.005, 0.025, 0.075], unit: 'm' },
    f: { value: [20, 100, 500], unit: 'Hz' },
  },
  got: ({ a, f }) => line(a, f).attenuation,
  expected: [0.0287658030993, 0.0120274403208, 0.00891498551511],
  unit: 'Np/m',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.slit.attenuation', {
  formula: 'duct/slitSection',
  source: { key: 'zwikker1949', locator: 'slit form, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    0.0965685972374, 0.128960285224, 0.233672777587, 0.0303676459573, 0.0457925825546, 0.0879499493903, 0.0142367643341,
    0.0219874873476, 0.0430994226587, 0.00689463712682, 0.0107748556647, 0.0213350327807, 0.00339303673381,
    0.00533375819516, 0.0106143743745,
  ],
  unit: 'Np/m',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.slit.velocity', {
  formula: 'duct/slitSection',
  source: { key: 'zwikker1949', locator: 'slit form, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    298.595729558, 312.28225595, 328.219372208, 323.633992038, 331.810296927, 339.316972978, 334.903155331,
    339.316972978, 343.224509392, 340.941543884, 343.224509392, 345.215222776, 344.055386555, 345.215222776,
    346.219629058,
  ],
  unit: 'm/s',
  tolerance: { relative: 1e-10, why: 'printed to twelve digits from 40-digit arithmetic' },
});

check('duct.line.slit.resistance', {
  formula: 'duct/slitSection',
  source: { key: 'zwikker1949', locator: 'slit form, evaluated with 40 digits' },
  status: 'derived',
  kind: 'table',
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
  expected: [
    61.3472459851, 79.222492213, 136.731667517, 18.0225332812, 26.5057242503, 49.7810149033, 8.16442822816,
    12.4452537258, 24.1172006313, 3.88387484694, 6.02930015782, 11.8696281263, 1.89406088985, 2.96740703157,
    5.88811727357,
  ],
  unit: 'Pa·s/m²',
  tolerance: { relative: 5e-11, why: 'the resistance is a small difference here' },
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
  source: { key: 'fletcher1998', locator: 'quality factor of a pipe from its walls, β/(2α)' },
  status: 'derived',
  kind: 'table',
  given: {
    a: { value: [0.02, 0.02, 0.02, 0.0375, 0.0375, 0.0375, 0.05, 0.05, 0.05, 0.075, 0.075, 0.075], unit: 'm' },
    f: { value: [30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0, 30.0, 200.0, 1000.0], unit: 'Hz' },
  },
  got: ({ a, f }) => {
    const { attenuation, phaseConstant } = line(a, f);
    return phaseConstant / (2 * attenuation);
  },
  expected: [
    33.1784373, 85.6686285, 191.557504, 62.2114701, 160.626438, 359.166634, 82.9483433, 214.16734, 478.887266,
    124.421418, 321.248885, 718.328414,
  ],
  unit: '1',
  tolerance: { relative: 1e-8, why: 'nine digits' },
});

check('duct.line.lossless', {
  formula: 'duct/withoutLoss',
  source: { key: 'morse1968', locator: 'plane waves in a duct: c and ρc/S' },
  status: 'derived',
  kind: 'table',
  given: { a: { value: [0.005, 0.0375, 0.075], unit: 'm' } },
  got: ({ a }) => {
    const lossless = lineConstants({ section: withoutLoss(round(a)), frequency: '50 Hz' }, air);
    return (lossless.impedance.re / lossless.phaseVelocity) * Math.PI * a * a;
  },
  expected: [1.1769, 1.1769, 1.1769],
  unit: 'kg/m³',
  tolerance: { relative: 5e-15, why: 'ρc/S over c, times S, is ρ' },
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
  kind: 'table',
  given: { width: { value: 0.3, unit: 'm' }, height: { value: 0.02, unit: 'm' } },
  got: ({ width: w, height }) => {
    const { area, width, cutOn } = slitSection({ width: si('length', w), height: si('length', height) });
    return [area, width, cutOn];
  },
  expected: [0.006, 0.3, 3.141592653589793],
  unit: 'm², m, 1',
  tolerance: { relative: 1e-15, why: 'sixteen digits' },
});
