/** Cut-off, reference and features of boxes whose coil has an impedance over frequency: eddy currents in its iron. */
import { type ClosedBoxSpec, closedBox, type System, type VentedBoxSpec, ventedBox } from '@airspring/core/enclosure';
import { lowestSafeFrequency, travelLimit } from '@airspring/core/limit';
import { compile } from '@airspring/core/network';
import { cutoff, features, referenceLevel, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { bandPass, driver, withEddy } from '../../circuit/seam-cases.js';
import { check } from '../../ledger/check.js';
import { type Complex, over, sum, times } from '../complex.js';

/** The box of the papers by hand: U = Sd v (1 − leak and vent of the flow into the box), coil Re + K (jω)^n; leak QL at fb. */
function levelByHand(box: VentedBoxSpec | ClosedBoxSpec, air: System['air'], [K, n]: readonly [number, number]) {
  const { Re, Bl, Sd, Mms, Cms, Rms } = driver;
  const Cab = box.netVolume / (air.density * air.speedOfSound ** 2);
  const wb = 'fb' in box ? 2 * Math.PI * box.fb : Math.sqrt((1 / Cms + Sd ** 2 / Cab) / Mms);
  const leak = box.QL === undefined ? 0 : (wb * Cab) / box.QL;
  return (f: number) => {
    const w = 2 * Math.PI * f;
    const size = K * w ** n;
    const coil: Complex = [Re + size * Math.cos((n * Math.PI) / 2), size * Math.sin((n * Math.PI) / 2)];
    const vent: Complex = 'fb' in box ? [0, -(wb * wb * Cab) / w] : [0, 0];
    const Y = sum([leak, 0], [0, w * Cab], vent);
    const mechanical = sum([Rms, w * Mms - 1 / (w * Cms)], over([Bl * Bl, 0], coil), over([Sd * Sd, 0], Y));
    const velocity = over(over([Bl, 0], coil), mechanical);
    // p = −Sd v/Y in the box; what leaves is what the air is not pressed by: jω Cab Sd v/Y.
    const flow = times(over([0, w * Cab], Y), [Sd * velocity[0], Sd * velocity[1]]);
    return 20 * Math.log10((Math.hypot(...flow) * f * air.density) / 20e-6);
  };
}
const asymptote = (air: System['air']) =>
  20 * Math.log10((air.density * driver.Bl * driver.Sd) / (2 * Math.PI * driver.Mms * driver.Re * 20e-6));

const laws = [
  [0, 0.7],
  [0.02, 0.7],
  [0.045, 0.5],
] as const;
const vented = ventedBox({ drivers: driver, netVolume: '45 L', fb: '28 Hz', QL: 7 });
const closed = closedBox({ drivers: driver, netVolume: '30 L' });
const withLaw = <Spec>({ network, ...rest }: System<Spec>, law: readonly number[]): System<Spec> => ({
  ...rest,
  compile,
  network: withEddy(network, law),
});
/** Where a level that rises crosses another, by halving. */
function crossed(level: (f: number) => number, wanted: number, below: number, above: number): number {
  let [low, high] = [below, above];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (level(middle) < wanted) low = middle;
    else high = middle;
  }
  return high;
}
const half = 10 * Math.log10(2);

check('response.coil-law.f3', {
  formula: 'response/cutoff',
  source: {
    key: 'small1972direct',
    locator: 'circuit of driver and box, worked out by hand; half power below ρ Bl Sd/(2π Mms Re)',
  },
  status: 'derived',
  kind: 'example',
  given: {
    coil: { value: 'none, 0.02 (jω)^0.7, 0.045 (jω)^0.5', unit: 'Ω' },
    family: { value: 'vented, closed', unit: '' },
  },
  got: () =>
    laws.flatMap((law) =>
      [vented, closed].map((box) => {
        const found = cutoff(withLaw(box as System, law));
        return found.ok ? found.frequency : Number.NaN;
      }),
    ),
  expected: laws.flatMap((law) =>
    [vented, closed].map(({ spec, air }) => crossed(levelByHand(spec, air, law), asymptote(air) - half, 15, 75)),
  ),
  unit: 'Hz',
  tolerance: { relative: 1e-12, why: 'both solved to rounding' },
});
check('response.coil-law.reference', {
  formula: 'response/referenceLevel',
  source: { key: 'small1972direct', locator: 'asymptote ρ Bl Sd/(2π Mms Re): neither coil law nor leak is in it' },
  status: 'derived',
  kind: 'example',
  given: {
    coil: { value: 'none, 0.02 (jω)^0.7, 0.045 (jω)^0.5', unit: 'Ω' },
    losses: { value: 'QL 7; QL 15 and QA 5; QL 7 and QA 5', unit: '' },
  },
  got: () => [
    ...laws.map((law) => referenceLevel(withLaw(vented, law))),
    referenceLevel(closedBox({ drivers: driver, netVolume: '20 L', QL: 15, QA: 5 })),
    referenceLevel(ventedBox({ drivers: driver, netVolume: '45 L', fb: '28 Hz', QL: 7, QA: 5 })),
  ],
  expected: Array.from({ length: 5 }, () => asymptote(vented.air)),
  unit: 'dB',
  tolerance: { absolute: 1e-12, why: 'read off polynomials: rounding alone' },
});

test('the asymptote of a strong motor is that of the closed form beside a coil law too', () => {
  const strong = { ...driver, Bl: 300 as never, Mms: 1e-6 as never };
  const system = withLaw(closedBox({ drivers: strong, netVolume: '30 L' }), [0.02, 0.7]);
  const level = asymptote(system.air) + 20 * Math.log10((300 / driver.Bl) * (driver.Mms / 1e-6));
  expect(referenceLevel(system)).toBeCloseTo(level, 9);
});

test('the numbers of the first page: 79.38 dB and 30.73 Hz; a coil law moves f3 by what it takes, not to 6 Hz', () => {
  expect(referenceLevel(vented)).toBeCloseTo(79.38, 2);
  const f3 = cutoff(vented);
  expect(f3.ok && f3.frequency).toBeCloseTo(30.73, 2);
  for (const law of laws.slice(1)) {
    const lossy = cutoff(withLaw(vented, law));
    expect(lossy.ok && lossy.frequency).toBeGreaterThan(29);
    expect(features(withLaw(vented, law)).referenceLevel).toBeCloseTo(79.38, 2);
  }
  expect(levelByHand(vented.spec, vented.air, [0.02, 0.7])(40)).toBeCloseTo(
    respond(withLaw(vented, [0.02, 0.7]), [40]).levelHalfSpace[0]!,
    9,
  );
});

describe('a band-pass has no asymptote', () => {
  const others = expect.objectContaining({
    faults: [
      expect.objectContaining({
        code: 'inconsistent',
        path: 'reference',
        remedy: expect.stringMatching(/'maximum'.*level.*frequency/),
      }),
    ],
  });
  test('each door that would count from one refuses it, and names the others', () => {
    for (const door of [referenceLevel, features, cutoff]) {
      expect(() => door(bandPass)).toThrow(others);
      expect(() => door(withLaw(bandPass, [0.02, 0.7]))).toThrow(others);
    }
  });
  test('from its maximum, from a level and from a frequency it has a cut-off', () => {
    for (const system of [bandPass, withLaw(bandPass, [0.02, 0.7])]) {
      const top = cutoff(system, { reference: 'maximum', to: '60 Hz' });
      expect(top.ok && top.frequency).toBeGreaterThan(20);
      const level = respond(system, [55]).levelHalfSpace[0]!;
      const [byLevel, byFrequency] = [
        cutoff(system, { reference: { level: level as never }, to: '60 Hz' }),
        cutoff(system, { reference: { frequency: '55 Hz' }, to: '60 Hz' }),
      ];
      expect(byLevel).toEqual(byFrequency);
      expect(byLevel.ok).toBe(true);
    }
  });
  test('limits and gradients hold of it all the same', () => {
    const limited = { ...driver, Xmax: 6e-3 as never };
    const found = lowestSafeFrequency(withLaw(bandPass, [0.02, 0.7]), travelLimit(limited), {
      driveVoltageRms: '20 V',
    });
    expect(found.ok || found.because[0]?.code).toBeTruthy();
  });
});
