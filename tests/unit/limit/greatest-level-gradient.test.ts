import { mixedBox, type System, ventedBox } from '@airspring/core/enclosure';
import {
  greatestLevel,
  greatestLevelGradient,
  heatLimit,
  type Limit,
  leastGreatestLevelGradient,
  limitsOfEach,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { sensitivity } from '@airspring/core/tolerance';
import { expect, test } from 'vitest';
import { driver } from '../laws/boxes.js';

const bounded = { ...driver, Xmax: si('displacementPeak', 0.006), Pe: si('power', 50) };
const inputs = { Re: bounded.Re as number, fb: 31, Cms: bounded.Cms as number };
const make = ({ Re, fb, Cms }: typeof inputs) =>
  ventedBox({
    drivers: { ...bounded, Re: si('resistance', Re), Cms: si('compliance', Cms) },
    netVolume: '40 L',
    fb: si('frequency', fb),
    QL: 7,
  });
const limitsOf = ({ spec }: System): readonly Limit[] => {
  const { drivers } = spec as ReturnType<typeof make>['spec'];
  return [...travelLimit(drivers), ...heatLimit(drivers), voltageLimit('40 V')];
};
const slopes = (at: (given: typeof inputs) => number) =>
  Object.entries(inputs).map(([name, x]) => {
    const quotient = (h: number) =>
      (at({ ...inputs, [name]: x * (1 + h) }) - at({ ...inputs, [name]: x * (1 - h) })) / (2 * h * x);
    return (4 * quotient(5e-4) - quotient(1e-3)) / 3;
  });

test.each([
  ['travel', 25],
  ['heat', 300],
] as const)('by inputs, while %s binds', (binding, frequency) => {
  const at = si('frequency', frequency);
  const found = greatestLevelGradient(make(inputs), limitsOf(make(inputs)), at);
  expect(found).toMatchObject({ ok: true, binding });
  const by = sensitivity(make, inputs, (system) => greatestLevelGradient(system, limitsOf(system), at));
  const differences = slopes((given) => greatestLevel(make(given), limitsOf(make(given)), [at]).levelHalfSpace[0]!);
  if (!by.ok || !found.ok) throw new Error('no gradient');
  Object.values(by.byInput).forEach((slope, i) => {
    const x = Object.values(inputs)[i]!;
    expect((slope - differences[i]!) * x).toBeCloseTo(0, 7);
  });
  expect(found.byNumber.Re! * inputs.Re).toBeCloseTo(found.byElement.Re!, 12);
});

test('two limits that bind at once make it one-sided, in a band as well', () => {
  const system = make(inputs);
  const twice = [voltageLimit('4 V'), { ...voltageLimit('4 V'), name: 'fuse' }];
  const band = { from: '60 Hz', to: '90 Hz' } as const;
  expect(greatestLevelGradient(system, twice, '60 Hz')).toMatchObject({ oneSided: true, binding: 'amplifier voltage' });
  expect(leastGreatestLevelGradient(system, twice, band)).toMatchObject({ oneSided: true });
  expect(leastGreatestLevelGradient(system, [voltageLimit('4 V')], band)).not.toHaveProperty('oneSided');
});

test('a limit of one driver among several changes with the numbers of that driver', () => {
  const drivers = { parallel: ['left', 'right'].map((name) => ({ name, driver: bounded })) };
  const box = mixedBox({ drivers, chambers: { box: { netVolume: '80 L' } } });
  const found = greatestLevelGradient(box, limitsOfEach(box.spec).slice(1, 2), '300 Hz');
  expect(found).toMatchObject({ ok: true, binding: 'heat of left' });
  expect(found.ok && Number.isFinite(found.byElement['Re left'])).toBe(true);
});

test('a limit that changes with a number that is not there is refused', () => {
  const [heat] = heatLimit(bounded);
  const wrong = { ...heat!, exponents: { R: -1 } };
  expect(() => greatestLevelGradient(make(inputs), [wrong], '300 Hz')).toThrow(/limits\.heat\.exponents: got "R"/);
  expect(() => greatestLevelGradient(make(inputs), [], '300 Hz')).toThrow(/limits/);
});
