/** What is no system is refused with words by whatever takes one. */
import { quadraticLoss } from '@airspring/core/duct';
import { type System, ventedBox } from '@airspring/core/enclosure';
import {
  amplifierHeat,
  gentlestHighPass,
  greatestLevel,
  greatestLevelWithLosses,
  limitChanges,
  lowestSafeFrequency,
  respondWithHeat,
  ventOnsets,
  voltageLimit,
} from '@airspring/core/limit';
import { frequencyGrid, si } from '@airspring/core/quantity';
import {
  compiledSystem,
  complexGradient,
  cutoff,
  cutoffGradient,
  features,
  greatestGradient,
  groupDelayGradient,
  levelGradient,
  lowestLoad,
  passband,
  probePhase,
  referenceLevel,
  respond,
  respondAtLevel,
  stepResponse,
  tuningAtLevel,
} from '@airspring/core/response';
import { compileBuilds } from '@airspring/core/tolerance';
import { describe, expect, test } from 'vitest';
import { vented } from '../laws/boxes.js';

const box = ventedBox(vented);
const band = { from: '20 Hz', to: '200 Hz' } as const;
const driveVoltageRms = '2.83 V';
const loss = quadraticLoss({ outward: 1.5 });
const volts = [voltageLimit('20 V')];
const vent = { diameter: si('length', 0.07) };
const heat = { coilToMagnet: '3 K/W', magnetToAir: '2 K/W', coilTime: '6 s', magnetTime: '900 s' } as const;
const takers: Readonly<Record<string, (system: System) => unknown>> = {
  respond: (system) => respond(system, [20, 40]),
  compiledSystem,
  referenceLevel,
  features: (system) => features(system, band),
  cutoff: (system) => cutoff(system, band),
  passband: (system) => passband(system, band),
  stepResponse: (system) => stepResponse(system, { until: '0.1 s', points: 20 }),
  lowestLoad: (system) => lowestLoad(system, band),
  probePhase: (system) => probePhase(system, [20], { probe: 'current' }),
  levelGradient: (system) => levelGradient(system, '30 Hz'),
  complexGradient: (system) => complexGradient(system, 'current', '30 Hz'),
  cutoffGradient: (system) => cutoffGradient(system, band),
  groupDelayGradient: (system) => groupDelayGradient(system, '30 Hz'),
  greatestGradient: (system) => greatestGradient(system, { probe: 'current', ...band }),
  respondAtLevel: (system) => respondAtLevel(system, [20], { driveVoltageRms, loss }),
  tuningAtLevel: (system) => tuningAtLevel(system, { driveVoltageRms, loss }),
  greatestLevel: (system) => greatestLevel(system, volts, [20]),
  greatestLevelWithLosses: (system) => greatestLevelWithLosses(system, volts, [20], { loss }),
  lowestSafeFrequency: (system) => lowestSafeFrequency(system, volts, { driveVoltageRms }),
  gentlestHighPass: (system) => gentlestHighPass(system, volts, { driveVoltageRms }),
  limitChanges: (system) => limitChanges(system, volts, band),
  ventOnsets: (system) => ventOnsets(system, vent, [20]),
  respondWithHeat: (system) => respondWithHeat(system, [20], { driveVoltageRms, heat }),
  amplifierHeat: (system) => amplifierHeat(system, [20], { supply: '30 V', driveVoltageRms }),
  compileBuilds: (system) => compileBuilds(system, {}, frequencyGrid([20])),
};

describe.each(Object.entries(takers))('%s', (_, take) => {
  test.each([[undefined], [null], [{}]])('%o', (nothing) => {
    expect(() => take(nothing as never)).toThrow(/^system: got .*expected a system that/);
  });
  test('a copy through JSON', () => {
    const copy = JSON.parse(JSON.stringify(box)) as never;
    expect(() => take(copy)).toThrow(
      /^system: got "vented[^"]*"; expected a system that .* a copy through JSON has no `compile`\.$/,
    );
  });
});
