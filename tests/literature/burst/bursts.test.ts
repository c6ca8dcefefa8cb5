/** Shaped bursts against closed forms and an adaptive solver, the level of a band against print, and thresholds as they were read. */
import { type Air, standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import {
  type DistortionThresholds,
  greatestBursts,
  meanBurstLevel,
  narrowerThresholds,
  playBurst,
  widerThresholds,
} from '@airspring/transient/burst';
import { forceFactorCurve, stiffnessCurve } from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import fixture from './bursts.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const drivers = driver(fixture.driver as unknown as Parameters<typeof driver>[0]);
const box = closedBox({ drivers, netVolume: si('volume', fixture.volume) }, air);
const reach = si('displacementPeak', fixture.reach);
const modelsOf = (name: string) => {
  const { stiffness, forceFactor } = fixture.curves[name as keyof typeof fixture.curves];
  return {
    ...(stiffness.length > 0 && { stiffness: stiffnessCurve({ reach, coefficients: stiffness }) }),
    ...(forceFactor.length > 0 && { forceFactor: forceFactorCurve({ reach, coefficients: forceFactor }) }),
  };
};
const hertz = (value: number) => si('frequency', value);
const volts = (value: number) => si('voltageRms', value / Math.SQRT2);

for (const { frequency, levels, level } of fixture.linear) {
  check(`burst.linear.${frequency}`, {
    formula: 'burst/playBurst',
    source: {
      key: 'numpy',
      locator: 'closed form of the spectrum of the burst times that of the box; script bursts.py',
    },
    status: 'derived',
    kind: 'program',
    given: { frequency: { value: frequency, unit: 'Hz' }, peak: { value: 1, unit: 'V' } },
    got: () => {
      const burst = playBurst(box, { frequency: hertz(frequency), driveVoltageRms: volts(1) });
      return [burst.levelHalfSpace, ...burst.bands.slice(0, 4).map((band) => band.level)];
    },
    expected: [level, ...levels.slice(0, 4)],
    unit: 'dB: the tone, and the lowest four bands re the tone',
    tolerance: {
      absolute: 0.15,
      why: 'the spectrum is read line by line: in the bands, lines are a quarter of a side lobe apart',
    },
  });
}

for (const { case: name, frequency, volts: peak, levels, level, displacement } of fixture.played) {
  check(`burst.curves.${name.replaceAll(' ', '-')}.${frequency}`, {
    formula: 'burst/playBurst',
    source: { key: 'scipy', locator: 'integrate.solve_ivp, DOP853 at 1e-10; script bursts.py' },
    status: 'derived',
    kind: 'program',
    given: {
      curves: { value: name, unit: '' },
      frequency: { value: frequency, unit: 'Hz' },
      peak: { value: peak, unit: 'V' },
    },
    got: () => {
      const burst = playBurst(box, {
        ...modelsOf(name),
        frequency: hertz(frequency),
        driveVoltageRms: volts(peak),
      });
      const bands = burst.bands.slice(0, 3).map((band) => band.level);
      return [burst.levelHalfSpace, ...bands, 20 * Math.log10(burst.displacementPeak)];
    },
    expected: [level, ...levels.slice(0, 3), 20 * Math.log10(displacement)],
    unit: 'dB: the tone, three bands re the tone, and the travel re 1 m',
    tolerance: {
      absolute: 0.02,
      why: 'second order at 512 steps a cycle; the greatest sample is not the greatest of all',
    },
  });
}

const { threshold } = fixture;
const thirdAt25: DistortionThresholds = {
  name: 'a third harmonic of −25 dB',
  sources: ['own'],
  basis: 'a test',
  bands: [{ name: 'third', from: 2.25, to: 3.33, level: threshold.third }],
};
check('burst.greatest.cubic', {
  formula: 'burst/greatestBursts',
  source: { key: 'scipy', locator: 'optimize.brentq over integrate.solve_ivp; script bursts.py' },
  status: 'derived',
  kind: 'program',
  given: { frequency: { value: threshold.frequency, unit: 'Hz' }, third: { value: threshold.third, unit: 'dB' } },
  got: () => {
    const [found] = greatestBursts(box, [], [threshold.frequency], {
      ...modelsOf('cubic stiffness'),
      driveVoltageRms: '60 V',
      thresholds: thirdAt25,
    });
    if (!found?.ok) throw new Error('none');
    if (found.binding !== 'third') throw new Error(found.binding);
    return [20 * Math.log10(found.driveVoltageRms * Math.SQRT2), found.levelHalfSpace];
  },
  expected: [20 * Math.log10(threshold.volts), threshold.level],
  unit: 'dB: drive re 1 V, peak, and level',
  tolerance: { absolute: 0.03, why: 'the drive is found to 0.02 dB from below' },
});

check('burst.mean', {
  formula: 'burst/meanBurstLevel',
  source: { key: 'primercea2010', locator: 'page 2, example chart: 20, 25 and 31.5 Hz and their mean' },
  status: 'seen',
  kind: 'example',
  given: { levels: { value: '101.1 107.3 116.3', unit: 'dB' } },
  got: () => meanBurstLevel([101.1, 107.3, 116.3]),
  printed: '110.4',
  unit: 'dB',
});
check('burst.mean.numbers', {
  formula: 'burst/meanBurstLevel',
  source: { key: 'numpy', locator: '20 log10(mean(10**(L/20)))' },
  status: 'derived',
  kind: 'program',
  given: { levels: { value: '80 86 100', unit: 'dB' } },
  got: () => meanBurstLevel([80, 86, 100]),
  expected: 92.7332759125,
  unit: 'dB',
  tolerance: { absolute: 1e-10, why: 'given to twelve digits' },
});

test('both statements of the thresholds are as they were read', () => {
  const levels = ({ bands }: DistortionThresholds) => bands.map(({ level }) => level);
  expect(levels(widerThresholds)).toEqual([-10, -15, -20, -30, -40]);
  expect(levels(narrowerThresholds)).toEqual([-10, -20, -25, -35, -45]);
  expect(widerThresholds.bands.map(({ from }) => from)).toEqual([1.5, 2.25, 3.33, 5.66, 8.5]);
});
