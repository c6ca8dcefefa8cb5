/** What every nonlinear simulation must obey: its linear limit, its energy, its order, its own report. */
import { group } from '@airspring/core/driver';
import {
  capacitorBox,
  closedBox,
  fourthOrderBandPass,
  infiniteBaffle,
  passiveRadiatorBox,
} from '@airspring/core/enclosure';
import { respondWithHeat, thermalModel } from '@airspring/core/limit';
import { compileNetwork } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import {
  compileLinear,
  compileNonlinear,
  filteredDecimation,
  forceFactorCurve,
  harmonicsOf,
  inductanceCurve,
  type NonlinearOptions,
  quadraticVentLoss,
  rawDecimation,
  type Simulated,
  stiffnessCurve,
  stop,
} from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { faultsOf, pathsOf } from '../../refusal/faults.js';
import { closed, plainVented, tenInch, vented } from './boxes.js';

const RATE = 48_000;

/** Bl(x), K(x) and the vent; and all the rest beside. */
export const motorAndVent: Omit<NonlinearOptions, 'sampleRate' | 'outputs'> = {
  forceFactor: forceFactorCurve({ reach: '12 mm', coefficients: [0.05, -0.4, 0, -0.1] }),
  stiffness: stiffnessCurve({ reach: '12 mm', coefficients: [0.1, 0.9] }),
  losses: { vent: quadraticVentLoss({ area: '60 cm²', outward: 1.5, inward: 1.1 }) },
};
export const everything: typeof motorAndVent = {
  ...motorAndVent,
  inductance: inductanceCurve({ reach: '12 mm', coefficients: [-0.35, 0.05] }),
  heat: thermalModel({ coilToMagnet: '1.2 K/W', magnetToAir: '0.8 K/W', coilTime: '2 s', magnetTime: '600 s' }),
  stop: stop({ outward: '14 mm', inward: '13 mm', stiffness: 200 }),
};

const sine = (volts: number, frequency: number, seconds: number, rate = RATE) =>
  Float64Array.from(
    { length: Math.round(seconds * rate) },
    (_, n) => volts * Math.sin((2 * Math.PI * frequency * n) / rate),
  );

function played(system: Simulated, options: Omit<NonlinearOptions, 'sampleRate'>, drive: Float64Array, rate = RATE) {
  const simulation = compileNonlinear(system, { ...options, sampleRate: `${rate} Hz` });
  const motion = simulation.start();
  const out = simulation.outputs.map(() => new Float64Array(drive.length));
  return { out, report: simulation.run(motion, drive, out), motion, simulation };
}

const outputs = ['pressure', 'ventAirSpeed', 'current', 'coneVelocity', 'radiatedFlow'];

test.each([
  ['vented, with all losses', vented],
  ['vented, no inductance', plainVented],
  ['closed', closed],
])('without curves it is the network at the warped frequency: %s', (_, system) => {
  const frequency = 500;
  const length = 3 * RATE;
  const period = RATE / frequency;
  const drive = Float64Array.from({ length }, (_, n) => Math.cos((2 * Math.PI * n) / period));
  const names = outputs.filter((name) => name !== 'ventAirSpeed' || system !== closed);
  const { out, report } = played(system, { outputs: names }, drive);
  expect(report.ok).toBe(true);
  const warped = (RATE / Math.PI) * Math.tan((Math.PI * frequency) / RATE);
  const compiled = compileNetwork(system.network);
  const columns = compiled.probes.map(() => complexColumn(1));
  compiled.sweep(Float64Array.of(warped), columns);
  names.forEach((name, i) => {
    const column = columns[compiled.probes.indexOf(name === 'pressure' ? 'radiatedFlow' : name)]!;
    let [x, y] = [column.re[0]!, column.im[0]!];
    if (name === 'pressure') [x, y] = [-y, x].map((part) => part * system.air.density * warped) as [number, number];
    let [re, im] = [0, 0];
    for (let n = length - period; n < length; n++) {
      re += (2 / period) * out[i]![n]! * Math.cos((2 * Math.PI * n) / period);
      im -= (2 / period) * out[i]![n]! * Math.sin((2 * Math.PI * n) / period);
    }
    expect(Math.hypot(re - x, im - y) / Math.hypot(x, y), name).toBeLessThan(1e-9);
  });
});

/** Boxes with more springs, masses and chambers than a vented one. All have one motor. */
const families: Readonly<Record<string, Simulated>> = {
  'passive radiators': passiveRadiatorBox({
    drivers: tenInch,
    netVolume: '50 L',
    radiator: { Sd: '480 cm²', Mms: '180 g', Cms: '0.5 mm/N', Rms: '2 N·s/m' },
    QL: 10,
  }),
  'fourth-order band-pass': fourthOrderBandPass({
    drivers: tenInch,
    rearVolume: '20 L',
    rearQL: 20,
    frontVolume: '25 L',
    frontTuning: '50 Hz',
    frontVentArea: '60 cm²',
  }),
  'infinite baffle': infiniteBaffle({ drivers: tenInch }),
  'capacitor before a closed box': capacitorBox({
    drivers: tenInch,
    netVolume: '30 L',
    seriesCapacitance: '500 µF',
  } as never),
};
test.each(Object.keys(families))('the same for %s', (name) => {
  const system = families[name]!;
  const drive = Float64Array.from({ length: 2 * RATE }, (_, n) => Math.cos((2 * Math.PI * 400 * n) / RATE));
  const { out, report } = played(system, { outputs: ['pressure', 'current'] }, drive);
  expect(report.ok).toBe(true);
  const warped = (RATE / Math.PI) * Math.tan((Math.PI * 400) / RATE);
  const compiled = compileNetwork(system.network);
  const columns = compiled.probes.map(() => complexColumn(1));
  compiled.sweep(Float64Array.of(warped), columns);
  const size = (probe: string) => {
    const { re, im } = columns[compiled.probes.indexOf(probe)]!;
    return Math.hypot(re[0]!, im[0]!);
  };
  const amplitude = (column: Float64Array) => harmonicsOf(column.subarray(-120), 1).amplitudes[1]!;
  expect(amplitude(out[0]!) / (size('radiatedFlow') * system.air.density * warped)).toBeCloseTo(1, 9);
  expect(amplitude(out[1]!) / size('current')).toBeCloseTo(1, 9);
});

test('the integral of a velocity at a spring is that of its samples', () => {
  const drive = sine(10, 45, 0.5);
  const outputs = ['radiatorVelocity', 'integral radiatorVelocity'];
  const { out } = played(families['passive radiators']!, { ...motorAndVent, losses: {}, outputs }, drive);
  let sum = 0;
  const [velocity, travel] = out as [Float64Array, Float64Array];
  const most = Math.max(...travel.map(Math.abs));
  velocity.forEach((v, n) => {
    sum += (v + (velocity[n - 1] ?? 0)) / 2 / RATE;
    expect(Math.abs(travel[n]! - sum) / most).toBeLessThan(1e-4);
  });
  expect(faultsOf(() => played(closed, { outputs: ['integral current'] }, drive))).toMatchObject([
    { code: 'unknown-field', path: 'outputs[0]' },
  ]);
});

test('a period without samples, or with one that is no number, has no harmonics', () => {
  expect(pathsOf(() => harmonicsOf([], 3))).toEqual(['period']);
  expect(pathsOf(() => harmonicsOf([0, 1, Number.NaN, -1], 1))).toEqual(['period[2]']);
  for (const most of [-1, 0.5, Number.NaN]) expect(pathsOf(() => harmonicsOf([0, 1, 0, -1], most))).toEqual(['most']);
});

test('what is asked for must be a list, and a curve no input of one', () => {
  const input = { reach: '10 mm', coefficients: [0, 1] };
  const paths = (options: object) =>
    pathsOf(() => compileNonlinear(closed, { sampleRate: '48 kHz', outputs: ['displacement'], ...options } as never));
  for (const outputs of [[], 'displacement', {}]) expect(paths({ outputs })).toEqual(['outputs']);
  const models = { forceFactor: input, stiffness: input, stop: { outward: '9 mm' }, inductance: null };
  expect(paths(models)).toEqual(Object.keys(models).map((name) => `nonlinear.${name}`));
});

test('its linear limit comes to the linear kernel by the square of the rate', () => {
  const off = [1, 2].map((times) => {
    const rate = RATE * times;
    const drive = sine(1, 60, 0.25, rate);
    const { out } = played(vented, { outputs: ['displacement'] }, drive, rate);
    const linear = compileLinear(vented, { outputs: ['displacement'], sampleRate: `${rate} Hz` });
    const exact = new Float64Array(drive.length);
    linear.run(linear.start(), drive, [exact]);
    return Math.max(...out[0]!.map((x, n) => Math.abs(x - exact[n]!))) / Math.max(...exact);
  }) as [number, number];
  expect(off[1]).toBeLessThan(1e-5);
  expect(Math.log2(off[0] / off[1])).toBeCloseTo(2, 1);
});

test.each([
  ['motor, suspension and vent', vented, motorAndVent],
  ['everything, far into the stop', vented, everything],
  ['everything, no losses in the box', plainVented, motorAndVent],
])('what the drive gives is stored or lost: %s', (_, system, options) => {
  for (const [volts, frequency] of [
    [2, 30],
    [20, 30],
    [60, 17],
    [90, 45],
  ] as const) {
    const { report } = played(
      system,
      { ...options, outputs: ['displacement'], balance: true },
      sine(volts, frequency, 1),
    );
    expect(report.ok).toBe(true);
    const { given, lost, stored } = report.balance!;
    expect(given).toBeGreaterThan(0);
    expect(Math.abs(given - lost - stored) / given, `${volts} V at ${frequency} Hz`).toBeLessThan(1e-10);
  }
});

test('blocks of any length give the run at once, and the motion can be kept and gone on with', () => {
  const drive = sine(25, 30, 0.05);
  const options = { ...everything, outputs: ['pressure', 'coilRise'], oversampling: 2 };
  const { out } = played(vented, options, drive);
  const { run, start } = compileNonlinear(vented, { ...options, sampleRate: '48 kHz' });
  const parts = options.outputs.map(() => new Float64Array(drive.length));
  let motion = start();
  for (let from = 0; from < drive.length; from += 77) {
    const part = (column: Float64Array) => column.subarray(from, from + 77);
    run(motion, part(drive), parts.map(part));
    motion = structuredClone(motion);
  }
  expect(parts).toEqual(out);
});

test.each([2, 4])('%d steps a sample are that much nearer, and late by the stated delay', (oversampling) => {
  const drive = sine(20, 50, 0.2);
  const outputs = ['displacement'];
  const fine = played(vented, { ...motorAndVent, outputs }, sine(20, 50, 0.2, 16 * RATE), 16 * RATE).out[0]!;
  /** Greatest deviation once the filter is full, from straight lines between the samples: its own rate is no fault of the step. */
  const off = (options: Partial<NonlinearOptions>) => {
    const { out, simulation } = played(vented, { ...motorAndVent, outputs, ...options }, drive);
    const late = Math.round(simulation.delay * RATE);
    let most = 0;
    for (let n = 4000; n < drive.length - late; n++)
      most = Math.max(most, Math.abs(out[0]![n + late]! - fine[16 * n]!));
    return { most, late };
  };
  const plain = off({});
  const filtered = off({ oversampling });
  const raw = off({ oversampling, decimation: rawDecimation });
  expect([plain.late, filtered.late, raw.late]).toEqual([0, 8, 0]);
  const greatest = fine.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  expect(greatest).toBeGreaterThan(5e-3);
  expect(raw.most).toBeLessThan(plain.most);
  expect(filtered.most).toBeLessThan(1e-4 * greatest);
});

test.each([2, 4])('the filter of decimation by %d keeps what is stated', (oversampling) => {
  const weights = filteredDecimation.weights(oversampling);
  const level = (part: number) => {
    const turn = (2 * Math.PI * part) / oversampling;
    const middle = (weights.length - 1) / 2;
    return 20 * Math.log10(Math.abs(weights.reduce((sum, w, k) => sum + w * Math.cos(turn * (k - middle)), 0)));
  };
  const parts = (from: number, to: number) => Array.from({ length: 200 }, (_, i) => from + ((to - from) * i) / 199);
  const [pass, stop] = [
    Math.max(...parts(0, 0.32).map((p) => Math.abs(level(p)))),
    Math.max(...parts(0.68, oversampling / 2).map(level)),
  ];
  expect(pass).toBeLessThan(4e-4);
  expect(stop).toBeLessThan(-89);
});

test('a sample that is no number is passed over and told', () => {
  const drive = sine(10, 40, 0.02);
  drive[300] = Number.NaN;
  drive[301] = Number.POSITIVE_INFINITY;
  const { out, report } = played(vented, { ...everything, outputs: ['pressure', 'current'] }, drive);
  expect(report).toMatchObject({ ok: false, unsolved: 2 });
  expect(out.every((column) => column.every(Number.isFinite))).toBe(true);
});

test('a model that gives no number at some place leaves the sample unsolved, and the motion as it was', () => {
  const wall = {
    ...stiffnessCurve({ reach: '12 mm', coefficients: [] }),
    between: (from: number, to: number, out: Float64Array) => {
      out[0] = Math.abs(to) > 0.017 ? Number.NaN : (from + to) / 2;
      out[1] = 0.5;
    },
  };
  const { out, report } = played(vented, { stiffness: wall, outputs: ['displacement'] }, sine(60, 20, 0.2));
  expect(report.ok).toBe(false);
  expect(report.unsolved).toBeGreaterThan(0);
  expect(out[0]!.every((x) => Math.abs(x) <= 0.017)).toBe(true);
});

test('a loss so steep that Newton does not reach its end is found by halves', () => {
  const steep = {
    name: 'ninth power',
    sources: [],
    at: (flow: number, out: Float64Array) => {
      out[0] = 1e24 * flow ** 9;
      out[1] = 9e24 * flow ** 8;
    },
  };
  const drive = new Float64Array(200).fill(300);
  const { report } = played(
    plainVented,
    { losses: { vent: steep }, outputs: ['displacement'], balance: true },
    drive,
    100,
  );
  expect(report.ok).toBe(true);
  expect(report.halved).toBeGreaterThan(0);
  const { given, lost, stored } = report.balance!;
  expect(Math.abs(given - lost - stored) / given).toBeLessThan(1e-10);
});

test('beyond the reach of a curve is told', () => {
  const at = (volts: number) =>
    played(vented, { ...motorAndVent, outputs: ['displacement'] }, sine(volts, 20, 0.3)).report;
  expect(at(5).beyondReach).toBe(false);
  expect(at(60)).toMatchObject({ ok: true, beyondReach: true });
});

test('what does not fit is refused with its path', () => {
  const refusal = (options: object, system: Simulated = vented) =>
    faultsOf(() =>
      compileNonlinear(system, { sampleRate: '48 kHz', outputs: ['pressure'], ...options } as NonlinearOptions),
    );
  expect(refusal({ outputs: ['presure'] })).toMatchObject([{ code: 'unknown-field', path: 'outputs[0]' }]);
  expect(refusal({ outputs: ['ventAirSpeed'] }, closed)).toMatchObject([{ code: 'unknown-field', path: 'outputs[0]' }]);
  expect(refusal({ outputs: [] })).toMatchObject([{ code: 'empty', path: 'outputs' }]);
  expect(refusal({ oversampling: 3.5 })).toMatchObject([{ path: 'nonlinear.oversampling' }]);
  expect(refusal({ losses: { port: motorAndVent.losses!.vent } })).toMatchObject([
    { code: 'unknown-field', path: 'nonlinear.losses.port', expected: 'one of vent' },
  ]);
  expect(refusal({ losses: { vent: motorAndVent.losses!.vent } }, closed)).toMatchObject([{ code: 'unknown-field' }]);
  expect(refusal({ inductance: everything.inductance }, plainVented)).toMatchObject([{ path: 'nonlinear.inductance' }]);
  expect(refusal({ heat: { coilToMagnet: -1 } })).toHaveLength(5);
});

test('polynomials that fall to zero, and numbers that are none, are refused', () => {
  const refusal = (coefficients: unknown) => faultsOf(() => stiffnessCurve({ reach: '10 mm', coefficients } as never));
  expect(refusal([0, -1.2])).toMatchObject([
    {
      code: 'not-positive',
      path: 'stiffness.coefficients',
      got: 'zero at -9.13 mm',
      expected: 'a stiffness above zero from −reach to reach',
    },
  ]);
  expect(refusal([0.5, Number.NaN])).toMatchObject([{ code: 'not-finite', path: 'stiffness.coefficients[1]' }]);
  expect(refusal(['1'])).toMatchObject([{ path: 'stiffness.coefficients[0]' }]);
  expect(refusal('0.5')).toMatchObject([{ code: 'out-of-range' }]);
  expect(refusal(Array(99).fill(0))).toMatchObject([{ code: 'out-of-range' }]);
  expect(refusal([0, -0.99])).toEqual([]);
  expect(faultsOf(() => forceFactorCurve({ reach: '10 mm', coefficients: [-1.5] }))).toMatchObject([
    { path: 'forceFactor.coefficients' },
  ]);
  expect(faultsOf(() => stop({ outward: '1 mm', inward: '-1 mm', stiffness: 3 } as never))).toMatchObject([
    { path: 'stop.inward' },
  ]);
});

test.each([
  [1, 1],
  [1, 2],
  [2, 1],
])('%d by %d coils share the heat: they settle where respondWithHeat puts each', (series, parallel) => {
  const heat = thermalModel({ coilToMagnet: '3 K/W', magnetToAir: '1 K/W', coilTime: '0.2 s', magnetTime: '1 s' });
  const box = closedBox({ drivers: group(tenInch, { series, parallel }), netVolume: '40 L' });
  const [expected] = respondWithHeat(box, [100], { driveVoltageRms: '8 V', heat }).coilRise;
  const { start, run } = compileNonlinear(box, { sampleRate: '4 kHz', outputs: ['coilRise'], heat });
  const drive = Float64Array.from({ length: 32_000 }, (_, n) => 8 * Math.SQRT2 * Math.sin((Math.PI * n) / 20));
  const rise = new Float64Array(drive.length);
  run(start(), drive, [rise]);
  const settled = rise.subarray(-40).reduce((sum, one) => sum + one / 40, 0);
  expect(Math.abs(settled / expected! - 1)).toBeLessThan(0.01);
});
