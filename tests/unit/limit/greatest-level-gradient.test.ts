import { quadraticLoss } from '@airspring/core/duct';
import { closedBox, mixedBox, type System, ventedBox } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  greatestLevel,
  greatestLevelGradient,
  greatestLevelWithLosses,
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

const ported = { ...inputs, ventArea: 0.004 };
const makePorted = ({ Re, fb, Cms, ventArea }: typeof ported) =>
  ventedBox({
    drivers: { ...bounded, Re: si('resistance', Re), Cms: si('compliance', Cms) },
    netVolume: '40 L',
    fb: si('frequency', fb),
    QL: 7,
    ventArea: si('area', ventArea),
  });
const loss = quadraticLoss({ outward: 1.5 });
const airSpeed = airSpeedLimit('6 m/s');

test.each([
  ['travel', 25, []],
  ['vent', 30, [airSpeed]],
  ['heat', 300, []],
] as const)('by inputs with a vent that loses, while %s binds', (binding, frequency, more) => {
  const at = si('frequency', frequency);
  const limitsAt = (system: System) => [...limitsOf(system), ...more];
  const found = greatestLevelGradient(makePorted(ported), limitsAt(makePorted(ported)), at, { loss });
  expect(found).toMatchObject({ ok: true, binding });
  const by = sensitivity(makePorted, ported, (one) => greatestLevelGradient(one, limitsAt(one), at, { loss }));
  if (!by.ok || !found.ok) throw new Error('no gradient');
  const level = (given: typeof ported) => {
    const one = makePorted(given);
    return greatestLevelWithLosses(one, limitsAt(one), [at], { loss }).levelHalfSpace[0]!;
  };
  expect(found.value).toBeCloseTo(level(ported), 9);
  for (const [name, x] of Object.entries(ported)) {
    const quotient = (h: number) =>
      (level({ ...ported, [name]: x * (1 + h) }) - level({ ...ported, [name]: x * (1 - h) })) / (2 * h);
    const slope = (by.byInput as Readonly<Record<string, number>>)[name]! * x;
    expect(slope, name).toBeCloseTo((4 * quotient(5e-4) - quotient(1e-3)) / 3, 6);
  }
  // A number is told both ways: the area stands in the equations as one over it.
  expect(found.byNumber.perVentArea! / 0.004).toBeCloseTo(found.byElement.perVentArea!, 10);
});

test('a loss of nothing changes nothing, at one frequency and in a band', () => {
  const system = makePorted(ported);
  const none = { loss: quadraticLoss({ outward: 0 }) };
  const limits = [...limitsOf(system), airSpeed];
  const band = { from: '25 Hz', to: '90 Hz' } as const;
  for (const [lossy, plain] of [
    [greatestLevelGradient(system, limits, '30 Hz', none), greatestLevelGradient(system, limits, '30 Hz')],
    [leastGreatestLevelGradient(system, limits, band, none), leastGreatestLevelGradient(system, limits, band)],
  ]) {
    if (!lossy?.ok || !plain?.ok) throw new Error('no gradient');
    expect(lossy.binding).toBe(plain.binding);
    expect(lossy.frequency).toBeCloseTo(plain.frequency, 8);
    for (const [name, slope] of Object.entries(plain.byElement)) expect(lossy.byElement[name]).toBeCloseTo(slope, 8);
  }
});

test('the area of the vent counts where the speed of its air binds', () => {
  const found = greatestLevelGradient(makePorted(ported), [airSpeed], '30 Hz');
  expect(found.ok && found.byElement.perVentArea).toBeCloseTo(-20 / Math.LN10, 9);
});

test('a loss is refused where no vent of a stated area is, and where it is none', () => {
  const sealed = closedBox({ drivers: bounded, netVolume: '40 L' });
  const ask = (system: System, one: unknown) => () =>
    greatestLevelGradient(system, [voltageLimit('9 V')], '30 Hz', { loss: one as never });
  expect(ask(sealed, loss)).toThrow(/a vent of a stated area/);
  expect(ask(makePorted(ported), 3)).toThrow(/options\.loss/);
  expect(ask(makePorted(ported), { ...loss, resistance: (u: number) => 9 / (1 + u ** 2) })).toThrow(/greater speed/);
});
