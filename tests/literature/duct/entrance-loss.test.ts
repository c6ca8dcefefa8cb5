import { standardAir } from '@airspring/core/air';
import { bendLoss, entranceLoss, oscillatingFlow } from '@airspring/core/duct';
import { si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';

const tenth = si('length', 0.1);
const entrance = (ratio: number) => entranceLoss({ diameter: tenth, rounding: si('length', 0.1 * ratio) });
/** The tables have two decimals; the library that restates them drops zeros at the end. */
const library = 'as a general open library of fluid mechanics restates it';

// The formula holds these tables, so that its own points show no more than that they were copied right.
check('duct.entrance-loss.rounded', {
  formula: 'duct/entranceLoss',
  source: { key: 'idelchik1966', locator: `rounded entrance flush with a wall, ${library}` },
  status: 'seen',
  kind: 'identity',
  given: { ratio: { value: [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2], unit: '1' } },
  got: ({ ratio }) => entrance(ratio).nominal,
  printed: ['0.50', '0.44', '0.37', '0.31', '0.26', '0.22', '0.20', '0.15', '0.09', '0.06', '0.03'],
  unit: '1',
});

check('duct.entrance-loss.measured', {
  formula: 'duct/entranceLoss',
  source: { key: 'harris1930', locator: `measured entrances, ${library}` },
  status: 'seen',
  kind: 'identity',
  given: { ratio: { value: [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12], unit: '1' } },
  got: ({ ratio }) => entrance(ratio).low,
  printed: ['0.44', '0.35', '0.28', '0.22', '0.17', '0.13', '0.10', '0.07', '0.03'],
  unit: '1',
});

// Between its points another program draws a curve through each table, or a line as ours.
const between = {
  status: 'derived',
  kind: 'program',
  unit: '1',
} as const;
const ratio = { value: [0.005, 0.015, 0.025, 0.045, 0.07, 0.1, 0.14, 0.18, 0.3], unit: '1' };
check('duct.entrance-loss.rounded-between', {
  ...between,
  formula: 'duct/entranceLoss',
  source: { key: 'fluids_lib', locator: 'entrance_rounded, idelchik1966: a curve through the table' },
  given: { ratio },
  got: ({ ratio }) => entrance(ratio).nominal,
  expected: [
    0.47167741491, 0.40496775526, 0.33851605353, 0.23786840527, 0.17588282163, 0.11328005178, 0.07353881439,
    0.04548706187, 0.03,
  ],
  tolerance: { absolute: 0.007, why: 'straight lines between the points, there a smooth curve' },
});
check('duct.entrance-loss.measured-between', {
  ...between,
  formula: 'duct/entranceLoss',
  source: { key: 'fluids_lib', locator: 'entrance_rounded, harris1930: a curve through the table' },
  given: { ratio },
  got: ({ ratio }) => entrance(ratio).low,
  expected: [
    0.3922855662, 0.31314330139, 0.24885462543, 0.14877169856, 0.08179023982, 0.0486487823, 0.01378373923, 0, 0,
  ],
  tolerance: { absolute: 0.004, why: 'straight lines between the points, there a smooth curve' },
});
check('duct.entrance-loss.projecting-between', {
  ...between,
  formula: 'duct/entranceLoss',
  source: { key: 'fluids_lib', locator: 'entrance_distance, idelchik1966, half a diameter: lines through the table' },
  given: { wall: { value: [0.002, 0.006, 0.01, 0.014, 0.018, 0.027, 0.035, 0.045, 0.08], unit: '1' } },
  got: ({ wall }) => entranceLoss({ diameter: tenth, wall: si('length', 0.1 * wall) }).nominal,
  expected: [0.97, 0.91, 0.855, 0.8, 0.745, 0.645, 0.575, 0.52, 0.5],
  tolerance: { relative: 1e-14, why: 'double precision' },
});
check('duct.entrance-loss.read', {
  formula: 'duct/entranceLoss',
  source: { key: 'rennels2012', locator: 'rounded entrance, documented example: 23.5 mm on 0.1 m' },
  status: 'seen',
  kind: 'example',
  given: { ratio: { value: 0.235, unit: '1' } },
  got: ({ ratio }) => entrance(ratio).high,
  printed: '0.09839534618360923',
  unit: '1',
});

check('duct.entrance-loss.jet', {
  formula: 'duct/entranceLoss',
  source: { key: 'rennels2012', locator: `rounded entrance, closed formula, ${library} (documented example: 0.235)` },
  status: 'derived',
  kind: 'program',
  given: { ratio: { value: [0, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.235, 0.3, 0.5, 1], unit: '1' } },
  got: ({ ratio }) => entrance(ratio).high,
  expected: [
    0.5699935264, 0.44919312642, 0.39648830077, 0.29683978436, 0.20291036655, 0.14849219374, 0.11461966865,
    0.098395346184, 0.078334917116, 0.052624879413, 0.0299976,
  ],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'the ten digits of the values' },
});

check('duct.entrance-loss.projecting', {
  formula: 'duct/entranceLoss',
  source: { key: 'idelchik1966', locator: `entrance that projects by half a diameter, ${library}` },
  status: 'seen',
  kind: 'identity',
  given: { wall: { value: [0, 0.004, 0.008, 0.012, 0.016, 0.02, 0.024, 0.03, 0.04, 0.05], unit: '1' } },
  got: ({ wall }) => entranceLoss({ diameter: tenth, wall: si('length', 0.1 * wall) }).nominal,
  printed: ['1.00', '0.94', '0.88', '0.83', '0.77', '0.72', '0.68', '0.61', '0.54', '0.50'],
  unit: '1',
});

check('duct.bend-loss.rounded', {
  formula: 'duct/bendLoss',
  source: { key: 'rennels2012', locator: `smooth bend of 90° with friction 0.02, run in ${library.slice(3)}` },
  status: 'derived',
  kind: 'program',
  given: { ratio: { value: [0.5, 1, 1.5, 2, 3], unit: '1' } },
  got: ({ ratio }) =>
    bendLoss({
      diameter: tenth,
      angle: '90 deg',
      centreLineRadius: si('length', 0.1 * ratio),
      friction: si('ratio', 0.02),
    }),
  expected: [0.9377054546, 0.3404041521, 0.2425918809, 0.2185677622, 0.2216036301],
  unit: '1',
  tolerance: { relative: 1e-9, why: 'ten digits' },
});

check('duct.bend-loss.mitre', {
  formula: 'duct/bendLoss',
  source: { key: 'rennels2012', locator: `mitre, ${library} (documented: 150°)` },
  status: 'derived',
  kind: 'program',
  given: { angle: { value: [15, 30, 45, 60, 75, 90, 120, 150], unit: '°' } },
  got: ({ angle }) => bendLoss({ diameter: tenth, angle: si('angle', (angle * Math.PI) / 180) }),
  expected: [
    0.060513893081, 0.15308822558, 0.30419633093, 0.53, 0.83321884307, 1.202081528, 2.0264994449, 2.7128147735,
  ],
  unit: '1',
  tolerance: { relative: 1e-10, why: 'eleven digits' },
});

const flow = (U: number, f: number, D: number) =>
  oscillatingFlow({ diameter: si('length', D), airSpeedPeak: si('airSpeedPeak', U), frequency: si('frequency', f) });

check('duct.oscillating-flow.period', {
  formula: 'duct/oscillatingFlow',
  source: { key: 'keulegan1958', locator: 'U T/D, and its relation to Strouhal and to the displacement' },
  status: 'derived',
  kind: 'example',
  given: {
    U: { value: 10, unit: 'm/s' },
    f: { value: 30, unit: 'Hz' },
    D: { value: 0.075, unit: 'm' },
  },
  got: ({ U, f, D }) => {
    const { keuleganCarpenter, strouhal, displacementPeak } = flow(U, f, D);
    return [keuleganCarpenter, strouhal, displacementPeak / D];
  },
  expected: [4.44444444444, 0.225, 0.707355302631],
  unit: '1',
  tolerance: { relative: 2e-12, why: 'twelve digits' },
});

check('duct.oscillating-flow.layer', {
  formula: 'duct/oscillatingFlow',
  source: { key: 'hino1976', locator: 'definitions of Re_δ and the displacement, worked out for ν = 1.568e-5 m²/s' },
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: [20, 20, 30, 40, 60], unit: 'Hz' },
    U: { value: [5, 17, 10, 5, 17], unit: 'm/s' },
  },
  // It goes with 1/√ν.
  got: ({ f, U }) =>
    flow(U, f, 0.075).boundaryReynolds * Math.sqrt(standardAir.viscosity / standardAir.density / 1.568e-5),
  expected: [159.296796, 541.609107, 260.130579, 112.639845, 312.698164],
  unit: '1',
  tolerance: { relative: 5e-9, why: 'nine digits' },
});

check('duct.oscillating-flow.displacement', {
  formula: 'duct/oscillatingFlow',
  source: { key: 'hino1976', locator: 'definitions, worked out' },
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: [20, 30, 60], unit: 'Hz' },
    U: { value: [5, 17, 10], unit: 'm/s' },
  },
  got: ({ f, U }) => flow(U, f, 0.075).displacementPeak,
  expected: [0.0397887358, 0.0901878011, 0.0265258238],
  unit: 'm',
  tolerance: { relative: 2e-9, why: 'nine digits' },
});
