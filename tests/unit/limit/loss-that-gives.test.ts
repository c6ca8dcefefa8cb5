/** A loss that gives energy, or tells no number, is refused wherever a loss is taken. */
import type { FlowLoss } from '@airspring/core/duct';
import {
  greatestLevelWithLosses,
  respondWithHeat,
  thermalModel,
  ventOnsets,
  voltageLimit,
} from '@airspring/core/limit';
import { respondAtLevel, ventThirdHarmonic } from '@airspring/core/response';
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
])('a loss that %s', (_, resistance) => {
  const loss: FlowLoss = { name: 'own', sources: [], resistance };
  for (const asked of [
    () => respondAtLevel(plainVented, [25, 30, 40], { ...drive, loss }),
    () => ventThirdHarmonic(plainVented, [25, 30, 40], { ...drive, loss }),
    () => ventOnsets(plainVented, { diameter: '87 mm' }, [25, 30, 40], { loss }),
    () => respondWithHeat(plainVented, [25, 30, 40], { ...drive, heat, loss }),
    () => greatestLevelWithLosses(plainVented, [voltageLimit('20 V')], [25, 30, 40], { loss }),
  ])
    expect(pathsOf(asked)).toEqual(['loss.resistance']);
});
