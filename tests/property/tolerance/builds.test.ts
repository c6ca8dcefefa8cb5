/** Builds hang on the seed, their number and the number that scatters alone; each plays as a box with its numbers does. */
import { standardAir } from '@airspring/core/air';
import { type System, ventedBox } from '@airspring/core/enclosure';
import { airSpeedLimit, greatestLevel, travelLimit, voltageLimit } from '@airspring/core/limit';
import { uniformAt } from '@airspring/core/numeric';
import { logarithmicGrid, si } from '@airspring/core/quantity';
import { passband, respond } from '@airspring/core/response';
import { compileBuilds, normal, type Scatter, scatterOf, summaryOf, within } from '@airspring/core/tolerance';
import { expect } from 'vitest';
import { fc, test } from '../../arbitrary/property.js';
import { physical } from '../../literature/enclosure/textbook.js';

const drivers = physical({ fs: 30, Qes: 0.35, Qms: 5, Vas: 0.06, Sd: 0.033, Re: 5.6 }, standardAir);
const system = ventedBox({ drivers, netVolume: '45 L', fb: '29 Hz', QL: 7, ventArea: '60 cm²' });
const scatter: Scatter = { Cms: normal(0.08), Bl: within(0.06), vent: within(0.05) };
const grid = logarithmicGrid(12, 150, 40);
const seeds = fc.integer({ min: 0, max: 2 ** 40 });

/** The box with the numbers of a build. */
function boxOf(seed: number, build: number): System {
  const uniform = uniformAt(seed);
  const { topology, values } = system.network;
  const drawn = Object.entries(scatter).map(([name, { factor }], e) => [
    name,
    (values[name] as number) * factor(uniform(build, e)),
  ]);
  return { ...system, network: { topology, values: { ...values, ...Object.fromEntries(drawn) } } };
}

test.prop([seeds, fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 })])(
  'builds in two parts, in either order, are those in one',
  (seed, first, second) => {
    const kernel = compileBuilds(system, scatter, grid);
    const whole = kernel(seed, 0, first + second);
    const parts = [kernel(seed, first, second), kernel(seed, 0, first)] as const;
    expect([...parts[1].f3, ...parts[0].f3]).toEqual([...whole.f3]);
    expect([...parts[1].levels, ...parts[0].levels]).toEqual([...whole.levels]);
    if (first + second < 2) return;
    expect(summaryOf(system, scatter, grid, parts)).toEqual(summaryOf(system, scatter, grid, [whole]));
  },
);

test.prop([seeds, fc.integer({ min: 0, max: 1e6 })])('a build plays as a box with its numbers', (seed, build) => {
  const { levels } = compileBuilds(system, scatter, grid)(seed, build, 1);
  const { levelHalfSpace } = respond(boxOf(seed, build), grid, { driveVoltageRms: si('voltageRms', 1) });
  levels.forEach((level, i) => expect(level).toBeCloseTo(levelHalfSpace[i]!, 9));
});

test.prop([seeds, fc.integer({ min: 0, max: 1e6 })])(
  'a build plays as loud as a box with its numbers',
  (seed, build) => {
    const limits = [
      ...travelLimit({ ...drivers, Xmax: si('displacementPeak', 0.006) }),
      airSpeedLimit('12 m/s'),
      voltageLimit('20 V'),
    ];
    const within = { limits, frequencies: logarithmicGrid(28, 100, 30) };
    const gain = Float64Array.from(within.frequencies, (_, i) => Math.sin(i));
    const [plain, moved] = [within, { ...within, gain }].map(
      (one) => compileBuilds(system, scatter, grid, { within: one })(seed, build, 1).greatestLevels![0]!,
    );
    const { levelHalfSpace, least } = greatestLevel(boxOf(seed, build), limits, within.frequencies);
    expect(plain).toBeCloseTo(least.levelHalfSpace, 9);
    expect(moved).toBeCloseTo(Math.min(...levelHalfSpace.map((level, i) => level + gain[i]!)), 9);
  },
);

test.prop([seeds, fc.integer({ min: 0, max: 1e6 })])(
  'from its maximum, f3 is the lower end of its passband',
  (seed, build) => {
    const fine = logarithmicGrid(12, 150, 1000);
    const { f3 } = compileBuilds(system, scatter, fine, { reference: 'maximum' })(seed, build, 1);
    const passed = passband(boxOf(seed, build), { from: '12 Hz', to: '150 Hz' });
    expect(f3[0]! / ((passed.ok && passed.lower) || Number.NaN)).toBeCloseTo(1, 4);
  },
);

test('at each frequency nine of ten builds lie between the edges of the band', () => {
  const builds = 400;
  const { level } = scatterOf(system, scatter, { seed: 5, builds, frequencies: grid });
  const { levels } = compileBuilds(system, scatter, grid)(5, 0, builds);
  grid.forEach((_, i) => {
    const column = Array.from({ length: builds }, (_build, b) => levels[b * grid.length + i]!);
    const below = (edge: number) => column.filter((value) => value < edge).length / builds;
    expect(below(level.low[i]!)).toBeCloseTo(0.05, 2);
    expect(below(level.middle[i]!)).toBeCloseTo(0.5, 2);
    expect(below(level.high[i]!)).toBeCloseTo(0.95, 2);
  });
});
