import { type Air, standardAir } from '@airspring/core/air';
import type { Driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import {
  cutoffGradient,
  type GradientResult,
  greatestGradient,
  groupDelayGradient,
  levelGradient,
  lowerEndGradient,
} from '@airspring/core/response';
import { checkIn } from '../../ledger/check.js';
import { type BandPassRow, boxes, driverOf, responses } from '../enclosure/band-pass.js';
import fixture from './gradient.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const drivers = fixture.driver as unknown as Driver;
const systems: Record<'closed' | 'vented', System> = {
  closed: closedBox({ drivers, netVolume: '40 L' }, air),
  vented: ventedBox({ drivers, netVolume: '60 L', fb: '28 Hz', QL: 7, QP: 60 }, air),
};

/** The value, then its slopes in the order of the names. */
const listed = (result: GradientResult, names: string[]) =>
  result.ok ? [result.value, ...names.map((name) => result.byElement[name] ?? Number.NaN)] : [];

for (const [family, { level, delay, cutoff, greatest }] of Object.entries(fixture.boxes)) {
  const system = systems[family as keyof typeof systems];
  const names = Object.keys(cutoff.byElement);
  const expected = ({ value, byElement }: typeof cutoff | typeof greatest) => [value, ...Object.values(byElement)];
  const shared = {
    source: { key: 'mpmath', locator: 'circuit solved by hand, differences at 50 digits; script gradient.py' },
    status: 'derived',
    kind: 'program',
    given: { family: { value: family, unit: '' }, of: { value: `value; by ${names.join(', ')}`, unit: '' } },
  } as const;
  check(`response.level-gradient.${family}`, {
    ...shared,
    formula: 'response/levelGradient',
    got: () => level.flatMap(({ frequency }) => listed(levelGradient(system, si('frequency', frequency)), names)),
    expected: level.flatMap(expected),
    unit: 'dB, dB per relative change',
    tolerance: { absolute: 3e-13, why: 'double precision of values up to 100' },
  });
  check(`response.level-gradient.${family}.frequency`, {
    ...shared,
    formula: 'response/levelGradient',
    given: {
      family: { value: family, unit: '' },
      of: { value: 'slope over frequency; by the density of the air', unit: '' },
    },
    got: () =>
      level.flatMap(({ frequency }) => {
        const found = levelGradient(system, si('frequency', frequency));
        return found.ok ? [found.byFrequency, found.byElement['air.density'] ?? Number.NaN] : [];
      }),
    // 20 log10 ρ has the slope 20/ln 10.
    expected: level.flatMap(({ byFrequency }) => [byFrequency, 8.685889638065037]),
    unit: 'dB per relative change',
    tolerance: { absolute: 3e-13, why: 'double precision of values up to 100' },
  });
  check(`response.group-delay-gradient.${family}`, {
    ...shared,
    formula: 'response/groupDelayGradient',
    given: {
      family: { value: family, unit: '' },
      of: { value: `value; by ${names.join(', ')}; over frequency`, unit: '' },
    },
    got: () =>
      delay.flatMap(({ frequency }) => {
        const found = groupDelayGradient(system, si('frequency', frequency));
        return [...listed(found, names), found.ok ? found.byFrequency : Number.NaN];
      }),
    expected: delay.flatMap(({ value, byElement, byFrequency }) => [value, ...Object.values(byElement), byFrequency]),
    unit: 's, s per relative change',
    tolerance: {
      absolute: family === 'closed' ? 1e-14 : 1e-12,
      why: 'differences of phases over less than a hundredth; the vented box has sharper turns',
    },
  });
  check(`response.cutoff-gradient.${family}`, {
    ...shared,
    formula: 'response/cutoffGradient',
    got: () => listed(cutoffGradient(system), names),
    expected: expected(cutoff),
    unit: 'Hz, Hz per relative change',
    tolerance: { absolute: family === 'closed' ? 3e-10 : 2e-13, why: 'the cut-off is found to a trillionth of it' },
  });
  check(`response.greatest-gradient.${family}`, {
    ...shared,
    formula: 'response/greatestGradient',
    got: () =>
      listed(greatestGradient(system, { probe: 'coneVelocity', integrated: true, from: '30 Hz', to: '119 Hz' }), names),
    expected: expected(greatest),
    unit: 'm/V, m/V per relative change',
    tolerance: {
      absolute: family === 'closed' ? 1e-18 : 1e-12,
      why: 'closed: rounding, at the end of the band; vented: a billionth, the place of the maximum is known to 1e-10',
    },
  });
}

/** The lower end of the passband of the textbook response without losses, by bisection below its greatest value. */
function lowerEnd(row: BandPassRow): number {
  const size = (f: number) => Math.hypot(...responses.fourth(row)([0, f / row.fs]));
  const grid = Array.from({ length: 2000 }, (_, i) => 20 * 10 ** (i / 2000));
  const near = grid.reduce((best, f) => (size(f) > size(best) ? f : best), grid[0]!);
  let [from, to] = [near * 0.998, near * 1.002];
  for (let n = 0; n < 60; n++) {
    const [one, two] = [(2 * from + to) / 3, (from + 2 * to) / 3];
    if (size(one) < size(two)) from = one;
    else to = two;
  }
  const top = from;
  let [below, above] = [top / 4, top];
  for (let n = 0; n < 60; n++) {
    const middle = (below + above) / 2;
    if (size(middle) < size(top) / Math.SQRT2) below = middle;
    else above = middle;
  }
  return above;
}

const bandPass: BandPassRow = { fs: 30, Qts: 0.35, Vas: 60, rearVolume: 20, frontVolume: 15, frontTuning: 55 };
const lowerEndBase = {
  formula: 'response/lowerEndGradient',
  source: {
    key: 'geddes1989',
    locator: 'response function of the fourth-order band-pass; slopes by differences of its lower end',
  },
  status: 'derived',
  kind: 'standard',
  unit: 'Hz, Hz per relative change',
  tolerance: { absolute: 2e-8, why: 'differences over a thousandth of values known to a trillionth' },
} as const;
/** The slope of the lower end by the logarithm of what moves, by differences without the square of the step. */
function slopeOf(moved: (part: number) => BandPassRow): number {
  const quotient = (h: number) => (lowerEnd(moved(h)) - lowerEnd(moved(-h))) / (2 * h);
  return (4 * quotient(1e-3) - quotient(2e-3)) / 3;
}
const lowerEndFound = () => lowerEndGradient(boxes.fourth(bandPass), { to: '200 Hz' });
check('response.lower-end-gradient.fourth-order', {
  ...lowerEndBase,
  given: { of: { value: 'lower end; by rear volume, front volume and front tuning', unit: '' } },
  got: () => {
    const found = lowerEndFound();
    if (!found.ok) return [];
    const by = found.byElement;
    // A larger front chamber with the same tuning has a lighter vent; a higher tuning, a vent lighter by twice as much.
    return [found.value, by['Cab rear']!, by['Cab front']! - by['vent front']!, -2 * by['vent front']!];
  },
  expected: [
    lowerEnd(bandPass),
    ...(['rearVolume', 'frontVolume', 'frontTuning'] as const).map((field) =>
      slopeOf((part) => ({ ...bandPass, [field]: bandPass[field] * Math.exp(part) })),
    ),
  ],
});

const ofDriver = ['Re', 'Bl', 'Mms', 'Rms', 'Cms', 'Sd'] as const;
const paperDriver = driverOf(bandPass);
check('response.lower-end-gradient.driver', {
  ...lowerEndBase,
  given: { by: { value: ofDriver.join(', '), unit: '' } },
  got: () => listed(lowerEndFound(), [...ofDriver]).slice(1),
  expected: ofDriver.map((name) =>
    slopeOf((part) => {
      const moved = { [name]: paperDriver[name] * Math.exp(part) };
      const { Re, Bl, Mms, Rms, Cms, Sd } = { ...paperDriver, ...moved } as Record<(typeof ofDriver)[number], number>;
      return {
        ...bandPass,
        fs: 1 / (2 * Math.PI * Math.sqrt(Mms * Cms)),
        Qts: Math.sqrt(Mms / Cms) / (Rms + Bl ** 2 / Re),
        Vas: bandPass.Vas * (Cms / paperDriver.Cms) * (Sd / paperDriver.Sd) ** 2,
      };
    }),
  ),
});
