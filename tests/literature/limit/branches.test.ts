import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { closedBox, infiniteBaffle, ventedBox } from '@airspring/core/enclosure';
import { branchesAtLevel } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import { checkIn } from '../../ledger/check.js';
import fixtures from './branches.json' with { type: 'json' };

const air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343.2) };
const check = checkIn(air);
const { V, Re, Le, Bl, Mms, Cms, Rms, Sd } = fixtures.driver;
const drivers = driver({
  Sd: si('coneArea', Sd),
  Mms: si('mass', Mms),
  Cms: si('compliance', Cms),
  Rms: si('mechanicalResistance', Rms),
  Re: si('resistance', Re),
  Le: si('inductance', Le),
  Bl: si('forceFactor', Bl),
});
const box = closedBox({ drivers, netVolume: si('volume', V) }, air);
const upTo = si('displacementPeak', fixtures.upTo);
const curves = {
  Bl: { coefficients: fixtures.bl.map((one) => one * Bl), upTo },
  stiffness: { coefficients: fixtures.k.map((one) => one / Cms), upTo },
};
const { cases } = fixtures;
/** The branch of a case: its place among those of its frequency and drive, which the script finds as well. */
const branchOf = (f: number, volts: number, place: number) =>
  branchesAtLevel(box, [f], { driveVoltageRms: si('voltageRms', volts), ...curves })[0]!.branches[place]!;
const placeOf = (i: number) =>
  cases.slice(0, i).filter(({ f, volts }) => f === cases[i]!.f && volts === cases[i]!.volts).length;
const given = {
  f: { value: cases.map(({ f }) => f), unit: 'Hz' },
  volts: { value: cases.map(({ volts }) => volts), unit: 'V' },
  place: { value: cases.map((_, i) => placeOf(i)), unit: '1' },
} as const;
const balanced = { key: 'scipy', locator: 'one sine balanced by quadrature and fsolve; script branches.py' };
const time = { key: 'scipy', locator: 'equations of motion over time by LSODA; script branches.py' };

for (const [column, unit, expected] of [
  ['displacementPeak', 'm', cases.map(({ travel }) => travel)],
  ['currentRms', 'A', cases.map(({ current }) => current)],
  ['levelHalfSpace', 'dB', cases.map(({ level }) => level)],
] as const)
  check(`limit.branches.${column}`, {
    formula: 'limit/branchesAtLevel',
    source: balanced,
    status: 'derived',
    kind: 'program',
    given,
    expected,
    unit,
    got: ({ f, volts, place }) => branchOf(f, volts, place)[column],
    tolerance:
      unit === 'dB'
        ? { absolute: 1e-12, why: 'roots by two programs' }
        : { relative: 1e-13, why: 'roots by two programs' },
  });

check('limit.branches.count', {
  formula: 'limit/branchesAtLevel',
  source: balanced,
  status: 'derived',
  kind: 'program',
  given: { f: given.f, volts: given.volts },
  expected: cases.map((one) => cases.filter(({ f, volts }) => f === one.f && volts === one.volts).length),
  unit: '1',
  got: ({ f, volts }) =>
    branchesAtLevel(box, [f], { driveVoltageRms: si('voltageRms', volts), ...curves })[0]!.branches.length,
  tolerance: { absolute: 0, why: 'every state is found by both' },
});

check('limit.branches.stable', {
  formula: 'limit/branchesAtLevel',
  source: { ...time, locator: 'whether a motion that begins there stays there, by LSODA; script branches.py' },
  status: 'derived',
  kind: 'program',
  given,
  expected: cases.map(({ stays }) => Number(stays)),
  unit: '1',
  got: ({ f, volts, place }) => Number(branchOf(f, volts, place).stable),
  tolerance: { absolute: 0, why: 'yes or no' },
});

const stays = cases.flatMap(({ stays: is }, i) => (is ? [i] : []));
check('limit.branches.over-time', {
  formula: 'limit/branchesAtLevel',
  source: time,
  status: 'derived',
  kind: 'program',
  given: {
    f: { value: stays.map((i) => cases[i]!.f), unit: 'Hz' },
    volts: { value: stays.map((i) => cases[i]!.volts), unit: 'V' },
    place: { value: stays.map(placeOf), unit: '1' },
  },
  expected: stays.map((i) => cases[i]!.overTime),
  unit: 'm',
  got: ({ f, volts, place }) => branchOf(f, volts, place).displacementPeak,
  tolerance: { relative: 0.015, why: 'one sine stands for a travel with harmonics' },
});

/** The vented box whose vent loses by the square of the speed of its air. */
const { vent, vented } = fixtures;
const ported = ventedBox(
  {
    drivers,
    netVolume: si('volume', V),
    fb: si('frequency', vent.fb),
    ventArea: si('area', vent.area),
  },
  air,
);
const loss = quadraticLoss({ outward: vent.coefficient });
const ventedAt = (f: number, volts: number) =>
  branchesAtLevel(ported, [f], { driveVoltageRms: si('voltageRms', volts), ...curves, loss })[0]!.branches;
const ventedPlace = (i: number) => vented.slice(0, i).filter(({ f }) => f === vented[i]!.f).length;
const ventedGiven = (those: readonly number[]) =>
  ({
    f: { value: those.map((i) => vented[i]!.f), unit: 'Hz' },
    volts: { value: those.map((i) => vented[i]!.volts), unit: 'V' },
    place: { value: those.map(ventedPlace), unit: '1' },
  }) as const;
const every = vented.map((_, i) => i);

for (const [column, unit, expected] of [
  ['displacementPeak', 'm', vented.map(({ travel }) => travel)],
  ['currentRms', 'A', vented.map(({ current }) => current)],
  ['levelHalfSpace', 'dB', vented.map(({ level }) => level)],
] as const)
  check(`limit.branches.vented.${column}`, {
    formula: 'limit/branchesAtLevel',
    source: balanced,
    status: 'derived',
    kind: 'program',
    given: ventedGiven(every),
    expected,
    unit,
    got: ({ f, volts, place }) => ventedAt(f, volts)[place]![column],
    tolerance:
      unit === 'dB'
        ? { absolute: 1e-11, why: 'roots by two programs' }
        : { relative: 1e-12, why: 'roots by two programs' },
  });

check('limit.branches.vented.stable', {
  formula: 'limit/branchesAtLevel',
  source: { ...time, locator: 'whether a motion that begins there stays there, by LSODA; script branches.py' },
  status: 'derived',
  kind: 'program',
  given: ventedGiven(every),
  expected: vented.map(({ stays }) => Number(stays)),
  unit: '1',
  got: ({ f, volts, place }) => {
    const found = ventedAt(f, volts);
    // Every state of this tone is found by both.
    return found.length === vented.filter((one) => one.f === f).length ? Number(found[place]!.stable) : Number.NaN;
  },
  tolerance: { absolute: 0, why: 'yes or no' },
});

const ventedStays = every.filter((i) => vented[i]!.stays);
check('limit.branches.vented.over-time', {
  formula: 'limit/branchesAtLevel',
  source: time,
  status: 'derived',
  kind: 'program',
  given: ventedGiven(ventedStays),
  expected: ventedStays.map((i) => vented[i]!.overTime),
  unit: 'm',
  got: ({ f, volts, place }) => ventedAt(f, volts)[place]!.displacementPeak,
  tolerance: { relative: 0.025, why: 'one sine stands for a travel and an air speed with harmonics' },
});

/** Duffing's y″ + 2ζy′ + y + αy³ = cos Ωτ: a current moves a mass on a spring that stiffens; y is the travel over F/K. */
const { alpha, zeta, cases: duffing } = fixtures.duffing;
const [mass, stiffness, still, source, force] = [0.04, 2000, 1e-3, 1e5, 5];
const resonance = Math.sqrt(stiffness / mass) / (2 * Math.PI);
const baffled = infiniteBaffle(
  {
    drivers: driver({
      Sd: '330 cm²',
      Mms: si('mass', mass),
      Cms: si('compliance', 1 / stiffness),
      Rms: si('mechanicalResistance', 2 * zeta * Math.sqrt(stiffness * mass)),
      Re: '5 Ω',
      Bl: si('forceFactor', force),
    }),
    sourceResistance: si('resistance', source),
  },
  air,
);
const duffingBranch = (ratio: number, place: number) =>
  branchesAtLevel(baffled, [ratio * resonance], {
    driveVoltageRms: si('voltageRms', (stiffness * still * (source + 5)) / force / Math.SQRT2),
    stiffness: {
      coefficients: [stiffness, 0, (alpha * stiffness) / still ** 2],
      upTo: si('displacementPeak', 4 * still),
    },
  })[0]!.branches[place]!;
check('limit.branches.duffing', {
  formula: 'limit/branchesAtLevel',
  source: {
    key: 'nayfeh1979',
    locator: 'amplitude equation of a cubic spring; its roots by numpy, script branches.py',
  },
  status: 'derived',
  kind: 'program',
  given: {
    ratio: { value: duffing.map(({ ratio }) => ratio), unit: '1' },
    place: {
      value: duffing.map((one, i) => duffing.slice(0, i).filter(({ ratio }) => ratio === one.ratio).length),
      unit: '1',
    },
  },
  expected: duffing.map(({ travel }) => travel),
  unit: '1',
  got: ({ ratio, place }) => duffingBranch(ratio, place).displacementPeak / still,
  tolerance: { relative: 1e-4, why: 'the source is no pure current' },
});
