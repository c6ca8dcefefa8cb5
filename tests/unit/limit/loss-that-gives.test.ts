/** A loss that gives energy, tells no number, or whose pressure falls with the speed is refused wherever a loss is taken. */
import type { FlowLoss } from '@airspring/core/duct';
import { flowLossLaws } from '@airspring/core/laws';
import {
  branchesAtLevel,
  greatestLevelWithLosses,
  respondWithHeat,
  thermalModel,
  ventOnsets,
  voltageLimit,
} from '@airspring/core/limit';
import { respondAtLevel, tuningAtLevel, ventThirdHarmonic } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { pathsOf } from '../../refusal/faults.js';
import { plainVented } from '../transient/boxes.js';

const heat = thermalModel({ coilToMagnet: '3 K/W', magnetToAir: '1 K/W', coilTime: '5 s', magnetTime: '1000 s' });
const drive = { driveVoltageRms: '10 V' } as const;

test.each([
  ['gives energy', () => -5],
  ['gives energy at some speeds', (speed: number) => 5 * Math.cos(3 * speed)],
  ['is no number', () => Number.NaN],
  ['has no end', () => Infinity],
  ['gives way', (speed: number) => 100 / (1 + speed ** 2)],
  // 165 Pa at 3.3 m/s, 75 Pa at 3.6 m/s.
  [
    'gives way in a small range',
    (speed: number) => (speed < 3.3 ? 50 : speed < 3.6 ? 50 - 97 * (speed - 3.3) : 20.9 * (speed / 3.6) ** 3),
  ],
])('a loss that %s', (_, resistance) => {
  const loss: FlowLoss = { name: 'own', sources: [], resistance };
  for (const asked of [
    () => respondAtLevel(plainVented, [25, 30, 40], { ...drive, loss }),
    () => tuningAtLevel(plainVented, { ...drive, loss }),
    () => branchesAtLevel(plainVented, [25, 30, 40], { ...drive, loss }),
    () => ventThirdHarmonic(plainVented, [25, 30, 40], { ...drive, loss }),
    () => ventOnsets(plainVented, { diameter: '87 mm' }, [25, 30, 40], { loss }),
    () => respondWithHeat(plainVented, [25, 30, 40], { ...drive, heat, loss }),
    () => greatestLevelWithLosses(plainVented, [voltageLimit('20 V')], [25, 30, 40], { loss }),
  ])
    expect(pathsOf(asked)).toEqual(['loss.resistance']);
});

test('the law of a loss that gives way is named, since several states agree with it at one drive', () => {
  const loss: FlowLoss = { name: 'own', sources: [], resistance: (speed) => 2000 / (1 + speed ** 2) };
  /** The drive at which the air has a speed, by the resistance that the loss has there. */
  const driveFor = (speed: number) => {
    const held: FlowLoss = { ...loss, resistance: () => 2000 / (1 + speed ** 2) };
    return (10 * speed) / respondAtLevel(plainVented, [30], { ...drive, loss: held }).airSpeedPeak[0]!;
  };
  const [rising, falling, again] = [driveFor(1), driveFor(4), driveFor(40)];
  expect(rising).toBeGreaterThan(falling);
  expect(again).toBeGreaterThan(rising);
  const law = 'loses no less pressure at a greater speed';
  expect(flowLossLaws(loss).find((one) => one.law === law)?.holds).toBe(false);
  expect(() => respondAtLevel(plainVented, [25, 30, 40], { ...drive, loss })).toThrow(law);
});

test('a resistance that falls with the speed is no fault as long as its pressure does not', () => {
  const loss: FlowLoss = { name: 'own', sources: [], resistance: (speed) => 20 / (1 + speed) };
  const { ventResistance, airSpeedPeak } = respondAtLevel(plainVented, [25, 30, 40], { ...drive, loss });
  const area = 1 / (plainVented.network.values.perVentArea as number);
  airSpeedPeak.forEach((speed, i) => expect(ventResistance[i]).toBeCloseTo(20 / (1 + speed) / area, 6));
});
