/** Builds of closed and vented boxes, each against the textbook formula with the very numbers that were drawn. */
import { closedBox } from '@airspring/core/enclosure';
import { normalQuantile, uniformAt } from '@airspring/core/numeric';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { compileBuilds, normal, scatterOf, within } from '@airspring/core/tolerance';
import { checkIn } from '../../ledger/check.js';
import { paperAir, physical } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

const drivers = physical({ fs: 30, Qes: 0.45, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
const system = closedBox({ drivers, netVolume: si('volume', 0.03) }, paperAir);
const Cab = 0.03 / (paperAir.density * paperAir.speedOfSound ** 2);

/** f3 of the closed box by its resonance and quality factor, with factors on compliance and motor. */
function textbook(compliance = 1, motor = 1): number {
  const { Sd, Mms, Cms, Rms, Re, Bl } = drivers;
  const wc = Math.sqrt((1 / (Cms * compliance) + Sd ** 2 / Cab) / Mms);
  const Q = (wc * Mms) / (Rms + (Bl * motor) ** 2 / Re);
  const a = 1 / Q ** 2 - 2;
  return (wc / (2 * Math.PI)) * Math.sqrt((a + Math.sqrt(a * a + 4)) / 2);
}

const seed = 11;
const source = { key: 'small1972closed1', locator: 'f3 by fc and Qtc, for each build by its own numbers' };
const builds = Array.from({ length: 40 }, (_, b) => b + 5);
check('tolerance.builds.f3', {
  formula: 'tolerance/compileBuilds',
  source,
  status: 'derived',
  kind: 'standard',
  given: { seed: { value: seed, unit: '1' } },
  got: () =>
    compileBuilds(system, { Cms: normal(0.1), Bl: within(0.08) }, logarithmicGrid(10, 200, 2000))(seed, 5, 40).f3,
  expected: builds.map((b) => {
    const uniform = uniformAt(seed);
    return textbook(1 + 0.1 * normalQuantile(uniform(b, 0)), 1 + 0.08 * (2 * uniform(b, 1) - 1));
  }),
  unit: 'Hz',
  tolerance: { relative: 2e-6, why: 'a straight line between frequencies 0.15 % apart' },
});

const step = 1e-5;
const slope = (textbook(1, 1 + step) - textbook(1, 1 - step)) / (2 * step);
const slopeOfCompliance = (textbook(1 + step) - textbook(1 - step)) / (2 * step);
const [fromMotor, fromCompliance] = [(slope * 0.03) ** 2, (slopeOfCompliance * 0.05) ** 2];
check('tolerance.scatter.first-order', {
  formula: 'tolerance/scatterOf',
  source: { key: 'small1972closed1', locator: 'slopes of f3 by differences of its formula' },
  status: 'derived',
  kind: 'standard',
  given: { Bl: { value: 3, unit: '%' }, Cms: { value: 5, unit: '%' } },
  got: () => {
    const { firstOrder } = scatterOf(system, { Bl: normal(0.03), Cms: normal(0.05) }, { builds: 10 });
    return firstOrder.ok ? [firstOrder.standardDeviation, firstOrder.shares.Bl!, firstOrder.shares.Cms!] : [Number.NaN];
  },
  expected: [
    Math.sqrt(fromMotor + fromCompliance),
    fromMotor / (fromMotor + fromCompliance),
    fromCompliance / (fromMotor + fromCompliance),
  ],
  unit: 'Hz, 1, 1',
  tolerance: { relative: 1e-8, why: 'differences over a part in 10⁵' },
});
// One number scatters: f3 falls as the motor gets weaker, so that its quantiles are those of the motor.
const z = normalQuantile(0.95);
check('tolerance.scatter.band', {
  formula: 'tolerance/scatterOf',
  source: { key: 'small1972closed1', locator: 'f3 at the quantiles of the one number that scatters' },
  status: 'derived',
  kind: 'standard',
  given: { Bl: { value: 3, unit: '%' } },
  got: () => {
    const { f3 } = scatterOf(system, { Bl: normal(0.03) }, { seed: 3, builds: 8000 });
    return f3.ok ? [f3.low, f3.middle, f3.high, f3.standardDeviation] : [Number.NaN];
  },
  expected: [textbook(1, 1 - 0.03 * z), textbook(), textbook(1, 1 + 0.03 * z), slope * 0.03],
  unit: 'Hz',
  tolerance: { relative: 0.03, why: '8000 builds know a standard deviation to 0.8 %, and these are curved a little' },
});
check('tolerance.within', {
  formula: 'tolerance/within',
  source: { key: 'dlmf', locator: '§1.16: variance of an even distribution, by its integral' },
  status: 'derived',
  kind: 'standard',
  given: { share: { value: 0.08, unit: '1' } },
  got: ({ share }) => {
    const even = within(share);
    return [even.factor(0.25), even.factor(0.5), even.factor(1), even.standardDeviation];
  },
  expected: [0.96, 1, 1.08, Math.sqrt(0.16 ** 2 / 12)],
  unit: '1',
  tolerance: { relative: 1e-14, why: 'rounding' },
});
check('tolerance.normal', {
  formula: 'tolerance/normal',
  source: { key: 'scipy', locator: 'stats.norm.ppf at 0.025, 0.5 and 0.975' },
  status: 'derived',
  kind: 'program',
  given: { share: { value: 0.05, unit: '1' } },
  got: ({ share }) => {
    const bell = normal(share);
    return [bell.factor(0.025), bell.factor(0.5), bell.factor(0.975), bell.standardDeviation];
  },
  expected: [1 - 0.05 * 1.959963984540054, 1, 1 + 0.05 * 1.959963984540054, 0.05],
  unit: '1',
  tolerance: { relative: 1e-13, why: 'rounding' },
});
