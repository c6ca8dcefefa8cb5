import { driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { cutoffGradient, type GradientResult, levelGradient } from '@airspring/core/response';
import { sensitivity } from '@airspring/core/tolerance';
import { expect, test } from 'vitest';

/** Invented. */
const ten = driver({ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' });
const boxOf = ({ volume }: { volume: number }): System =>
  closedBox({ drivers: ten, netVolume: si('volume', volume) }) as System;

test('an input that one element is proportional to, by any power, has that element’s slope times the power', () => {
  const result = (system: System) => levelGradient(system, '35 Hz');
  const direct = result(boxOf({ volume: 0.04 }));
  if (!direct.ok) throw new Error('undamped');
  for (const power of [1, -2, 3.5, 0.2]) {
    const found = sensitivity(({ x }) => boxOf({ volume: 0.04 * (x / 7) ** power }), { x: 7 }, result);
    if (!found.ok) throw new Error('undamped');
    expect(found.byPercent.x! / ((power * direct.byElement.Cab!) / 100)).toBeCloseTo(1, 11);
    expect(found.byInput.x! / ((power * direct.byElement.Cab!) / 7)).toBeCloseTo(1, 11);
  }
});
test('an input that changes nothing has no slope', () => {
  const found = sensitivity(({ volume }) => boxOf({ volume }), { volume: 0.04, colour: 3 }, cutoffGradient);
  expect(found).toMatchObject({ ok: true, byInput: { colour: 0 }, byPercent: { colour: 0 } });
});
test('why there is no result is handed on, and so is a kink', () => {
  const none = sensitivity(boxOf, { volume: 0.04 }, (system) =>
    cutoffGradient(system, { from: '100 Hz', to: '150 Hz' }),
  );
  expect(none).toMatchObject({ ok: false, because: [{ code: 'above-throughout' }] });
  const kink = (): GradientResult => ({
    ok: true,
    value: 1,
    byElement: {},
    byNumber: {},
    byFrequency: 0,
    oneSided: true,
  });
  expect(sensitivity(boxOf, { volume: 0.04 }, kink)).toMatchObject({ ok: true, oneSided: true });
  expect(sensitivity(boxOf, { volume: 0.04 }, (system) => levelGradient(system, '35 Hz'))).not.toHaveProperty(
    'oneSided',
  );
});
test('inputs of a vented box by name, the losses too', () => {
  const found = sensitivity(
    ({ fb, volume, QL }) =>
      ventedBox({ drivers: ten, netVolume: si('volume', volume), fb: si('frequency', fb), QL }) as System,
    { fb: 29, volume: 0.06, QL: 7 },
    cutoffGradient,
  );
  expect(Object.keys(found.ok ? found.byInput : {})).toEqual(['fb', 'volume', 'QL']);
});
test('an input without a logarithm, or one that makes another network, is refused by name', () => {
  const make = ({ volume, r }: { volume: number; r: number }): System =>
    closedBox({ drivers: ten, netVolume: si('volume', volume), sourceResistance: si('resistance', r) }) as System;
  const refusal = (code: string, path: string) =>
    expect.objectContaining({ faults: [expect.objectContaining({ code, path })] });
  expect(() => sensitivity(make, { volume: 0.04, r: 0 }, cutoffGradient)).toThrow(refusal('empty', 'steps.r'));
  expect(() => sensitivity(make, { volume: 0.04, r: -1 }, cutoffGradient)).toThrow(refusal('not-positive', 'inputs.r'));
  const stepped = ({ volume, r }: { volume: number; r: number }) => make({ volume, r: Math.max(0, r - 0.1) });
  expect(() => sensitivity(stepped, { volume: 0.04, r: 0.1 }, cutoffGradient)).toThrow(
    refusal('inconsistent', 'inputs.r'),
  );
});
test('an input of 0 has the slope to its right: a resistance before the coil lowers the level as Re would', () => {
  const make = ({ r, volume }: { r: number; volume: number }): System =>
    closedBox({ drivers: ten, netVolume: si('volume', volume), sourceResistance: si('resistance', r) }) as System;
  const level = (system: System) => levelGradient(system, '500 kHz');
  const found = sensitivity(make, { r: 0, volume: 0.04 }, level, { r: 0.05 });
  if (!found.ok) throw new Error('undamped');
  // 20 lg(Re/(Re + r)), far above the resonance and without inductance.
  expect(found.byInput.r! / (-20 / Math.LN10 / 5.6)).toBeCloseTo(1, 5);
  expect(found.byPercent.r).toBe(0);
  const near = sensitivity(make, { r: 1e-5, volume: 0.04 }, cutoffGradient);
  const zero = sensitivity(make, { r: 0, volume: 0.04 }, cutoffGradient, { r: 0.05 });
  expect((zero.ok ? zero.byInput.r! : 0) / (near.ok ? near.byInput.r! : 1)).toBeCloseTo(1, 4);
});
