/** Hot coils and lossy vents in any box: what the answers claim holds, and whatever is asked is answered or refused. */
import { type Driver, type DriverGroup, driver } from '@airspring/core/driver';
import { quadraticLoss } from '@airspring/core/duct';
import { closedBox, type System } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  amplifierHeat,
  coilTemperatureLimit,
  damageLimit,
  greatestLevel,
  greatestLevelGradient,
  greatestLevelWithLosses,
  greatestProgrammeLevel,
  heatLimit,
  hotResistance,
  type Limit,
  motorTravelLimit,
  pinkProgramme,
  programme,
  programmeHeat,
  respondWithHeat,
  suspensionTravelLimit,
  temperatureAfter,
  thermalModel,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { integral } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { expect } from 'vitest';
import { absurdSystemArbitrary, closedBoxArbitrary, systemArbitrary } from '../../arbitrary/box.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const grid = frequencyGrid(Array.from({ length: 16 }, (_, i) => 9 * 1.22 ** i));
/** Each is a sweep, or several. */
const RUNS = Math.min(60, Math.ceil(fuzzRuns / 2));
/** For what compiles a box at each frequency anew. */
const few = frequencyGrid(grid.filter((_, i) => i % 3 === 0));
const spread = (least: number, most: number) =>
  fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map((x) => Math.exp(x));
const model = fc
  .record({
    coilToMagnet: spread(0.5, 20),
    magnetToAir: spread(0.2, 10),
    coilTime: spread(0.5, 30),
    magnetTime: spread(60, 1e4),
  })
  .map((record) => thermalModel(record as never));
const volts = spread(0.01, 100).map((x) => si('voltageRms', x));
const close = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
const driversOf = (system: System) => (system.spec as { drivers: DriverGroup }).drivers;
const hasVent = (system: System) => 'ventAirSpeed' in system.network.topology.probes;
const limitsOf = (system: System): readonly Limit[] => [
  ...travelLimit(driversOf(system)),
  ...heatLimit(driversOf(system)),
  ...(hasVent(system) ? [airSpeedLimit('12 m/s')] : []),
  voltageLimit('40 V'),
];

test.prop([closedBoxArbitrary, model, volts], { numRuns: RUNS })(
  'a hot coil plays as a cold one of its hot resistance does, and its heat fits its temperature',
  (spec, heat, driveVoltageRms) => {
    const system = closedBox(spec);
    const hot = respondWithHeat(system, few, { driveVoltageRms, heat });
    const { driver: one, ...wiring } = system.spec.drivers;
    few.forEach((f, i) => {
      const warm: Driver = driver({ ...one, Re: hotResistance(one.Re, heat, hot.coilRise[i]!) });
      const drivers = { ...wiring, driver: warm } as DriverGroup;
      const at = respond(closedBox({ ...spec, drivers }, system.air), [f], { driveVoltageRms });
      close(hot.currentRms[i]!, at.currentRms[0]!, 1e-9);
      expect(Math.abs(hot.levelHalfSpace[i]! - at.levelHalfSpace[0]!)).toBeLessThan(1e-7);
      close(hot.displacementPeak[i]!, at.displacementPeak[0]!, 1e-9);
      close(hot.coilRise[i]!, (heat.coilToMagnet + heat.magnetToAir) * hot.power[i]!, 1e-12);
      close(hot.resistanceRatio[i]!, 1 + heat.coefficient * hot.coilRise[i]!, 1e-9);
    });
  },
);

test.prop([systemArbitrary, model, volts], { numRuns: RUNS })(
  'more drive is more heat, current and level; a small drive warms nothing; heat never adds level',
  (system, heat, driveVoltageRms) => {
    const [at, more] = [1, 1.2].map((by) =>
      respondWithHeat(system, grid, { driveVoltageRms: si('voltageRms', driveVoltageRms * by), heat }),
    ) as [ReturnType<typeof respondWithHeat>, ReturnType<typeof respondWithHeat>];
    const small = respondWithHeat(system, grid, { driveVoltageRms: si('voltageRms', 1e-6), heat });
    const linear = respond(system, grid, { driveVoltageRms: si('voltageRms', 1e-6) });
    grid.forEach((_, i) => {
      expect(more.coilRise[i]!).toBeGreaterThan(at.coilRise[i]!);
      expect(more.currentRms[i]!).toBeGreaterThan(at.currentRms[i]!);
      expect(more.levelHalfSpace[i]!).toBeGreaterThan(at.levelHalfSpace[i]!);
      expect(at.compression[i]!).toBeGreaterThanOrEqual(-1e-9);
      expect(Math.abs(small.levelHalfSpace[i]! - linear.levelHalfSpace[i]!)).toBeLessThan(1e-8);
    });
  },
);

test.prop([systemArbitrary, model], { numRuns: RUNS })(
  'without losses the greatest level is the linear one, and heat lowers it nowhere below none of the limits',
  (system, heat) => {
    const limits = limitsOf(system);
    const linear = greatestLevel(system, limits, grid);
    const cold = greatestLevelWithLosses(system, limits, grid);
    const hot = greatestLevelWithLosses(system, limits, grid, { heat });
    expect(cold.binding).toEqual(linear.binding);
    grid.forEach((_, i) => {
      close(cold.driveVoltageRms[i]!, linear.driveVoltageRms[i]!, 1e-10);
      expect(Math.abs(cold.levelHalfSpace[i]! - linear.levelHalfSpace[i]!)).toBeLessThan(1e-8);
      expect(hot.levelHalfSpace[i]!).toBeLessThanOrEqual(cold.levelHalfSpace[i]! + 1e-8);
      expect(hot.driveVoltageRms[i]!).toBeGreaterThanOrEqual(cold.driveVoltageRms[i]! * (1 - 1e-10));
    });
  },
);

test.prop([systemArbitrary.filter(hasVent), model, fc.double({ min: 0.05, max: 5, noNaN: true })], {
  numRuns: RUNS,
})('with every loss the limit that binds is met at that drive, and no other is passed', (system, heat, K) => {
  const loss = quadraticLoss({ outward: si('ratio', K) });
  const rise = si('temperatureDifference', 120);
  const travel = si('displacementPeak', 0.006);
  const limits = [
    damageLimit({ Xmech: travel, margin: '0 %' }),
    coilTemperatureLimit(driversOf(system), { heat, rise }),
    voltageLimit('40 V'),
  ];
  const found = greatestLevelWithLosses(system, limits, grid, { loss, heat });
  grid.forEach((f, i) => {
    const driveVoltageRms = si('voltageRms', found.driveVoltageRms[i]!);
    const at = respondWithHeat(system, [f], { driveVoltageRms, heat, loss });
    const used: Record<string, number> = {
      damage: at.displacementPeak[0]! / travel,
      'coil temperature': at.coilRise[0]! / rise,
      'amplifier voltage': driveVoltageRms / 40,
    };
    for (const share of Object.values(used)) expect(share).toBeLessThanOrEqual(1 + 1e-8);
    close(used[found.binding[i]!]!, 1, 1e-8);
    close(found.coilRise[i]!, at.coilRise[0]!, 1e-7);
    expect(Math.abs(found.compression[i]! - at.compression[0]!)).toBeLessThan(1e-7);
  });
});

test.prop([model, spread(1, 500), spread(0.01, 1e5)])(
  'what is heated is stored or given to the air',
  (heat, power, time) => {
    const at = (t: number) => temperatureAfter(heat, { power: si('power', power), time: si('time', t) });
    const { coil, magnet } = at(time);
    const given = integral((t) => (t < 1e-9 ? 0 : at(t).magnet / heat.magnetToAir), 0, time);
    const stored = (coil * heat.coilTime) / heat.coilToMagnet + (magnet * heat.magnetTime) / heat.magnetToAir;
    close(stored + given, power * time, 1e-7);
    const later = at(1.1 * time);
    expect(later.coil).toBeGreaterThanOrEqual(coil * (1 - 1e-12));
    expect(later.magnet).toBeGreaterThanOrEqual(magnet * (1 - 1e-12));
    const end = at(1e7);
    close(end.coil, power * (heat.coilToMagnet + heat.magnetToAir), 1e-9);
    close(end.magnet, power * heat.magnetToAir, 1e-9);
  },
);

test.prop([systemArbitrary, model, volts, spread(10, 200)], { numRuns: RUNS })(
  'a programme of one line is a sine',
  (system, heat, driveVoltageRms, f) => {
    const one = { frequencies: [f], share: [1], crestFactor: si('ratio', Math.SQRT2) };
    const played = programmeHeat(system, { programme: one, driveVoltageRms, heat });
    const sine = respondWithHeat(system, [f], { driveVoltageRms, heat });
    close(played.coilRise, sine.coilRise[0]!, 1e-8);
    close(played.power, sine.power[0]!, 1e-8);
    expect(Math.abs(played.levelHalfSpace - sine.levelHalfSpace[0]!)).toBeLessThan(1e-7);
    expect(Math.abs(played.compression[0]! - sine.compression[0]!)).toBeLessThan(1e-7);
    const limits = limitsOf(system);
    for (const options of [{}, { heat }]) {
      const most = greatestLevelWithLosses(system, limits, [f], options);
      const loudest = greatestProgrammeLevel(system, limits, { programme: one, ...options });
      close(loudest.driveVoltageRms, most.driveVoltageRms[0]!, 1e-8);
      expect(Math.abs(loudest.levelHalfSpace - most.levelHalfSpace[0]!)).toBeLessThan(1e-6);
    }
  },
);

const pink = (crest: number) => pinkProgramme({ from: '20 Hz', to: '160 Hz', crestFactor: si('ratio', crest) });
test.prop([systemArbitrary, model, fc.double({ min: 1, max: 8, noNaN: true })], { numRuns: 30 })(
  'the higher the peaks the lower a programme; the limit that binds is the least; wider limits allow more',
  (system, heat, crest) => {
    const limits = limitsOf(system);
    for (const options of [{}, { heat }]) {
      const at = greatestProgrammeLevel(system, limits, { programme: pink(crest), ...options });
      const peaky = greatestProgrammeLevel(system, limits, { programme: pink(1.5 * crest), ...options });
      expect(peaky.driveVoltageRms).toBeLessThanOrEqual(at.driveVoltageRms * (1 + 1e-9));
      close(at.drives[at.binding]!, Math.min(...Object.values(at.drives)), 1e-9);
      const wider = limits.map((limit) => ({ ...limit, greatestRms: 1.1 * limit.greatestRms }));
      const more = greatestProgrammeLevel(system, wider, { programme: pink(crest), ...options });
      expect(more.driveVoltageRms).toBeGreaterThan(at.driveVoltageRms);
      if ('heat' in options) {
        const driveVoltageRms = si('voltageRms', at.driveVoltageRms);
        close(programmeHeat(system, { programme: pink(crest), driveVoltageRms, heat }).coilRise, at.coilRise, 1e-7);
      }
    }
  },
);

test.prop([systemArbitrary, fc.double({ min: 0.01, max: 1, noNaN: true })])(
  'the output stage gives no heat back, and with the load takes what the supply gives',
  (system, share) => {
    const driveVoltageRms = si('voltageRms', (share * 40) / Math.SQRT2);
    const { heat, delivered } = amplifierHeat(system, grid, { supply: '40 V', driveVoltageRms });
    const { currentRms } = respond(system, grid, { driveVoltageRms });
    grid.forEach((_, i) => {
      expect(heat[i]!).toBeGreaterThanOrEqual(0);
      close(heat[i]! + delivered[i]!, (80 / Math.PI) * Math.SQRT2 * currentRms[i]!, 1e-12);
    });
  },
);

const anything = fc.anything();
const some = <T>(arbitrary: fc.Arbitrary<T>) => fc.oneof(anything, arbitrary);
const finite = (run: () => unknown) => answered(() => allFinite(run()));
test.prop([some(fc.record({ coefficients: some(fc.array(fc.double())), upTo: some(spread(1e-4, 1)) })), anything], {
  numRuns: fuzzRuns,
})('curves, margins and models of anything', (curve, other) => {
  finite(() => motorTravelLimit(curve as never));
  finite(() => suspensionTravelLimit(curve as never, { share: other as never }));
  finite(() => damageLimit(other as never));
  finite(() => thermalModel(other as never));
});
const spectrum = fc.record({
  frequencies: some(fc.array(fc.double())),
  share: some(fc.array(fc.double())),
  crestFactor: some(spread(0.5, 20)),
});
test.prop([some(spectrum), anything], { numRuns: fuzzRuns })('programmes of anything', (input, other) => {
  finite(() => programme(input as never));
  finite(() => pinkProgramme({ from: other, to: '200 Hz', crestFactor: 4 } as never));
});
const options = fc.record(
  {
    heat: some(model),
    loss: some(fc.constant(quadraticLoss({ outward: 1 as never }))),
    ventCompression: some(spread(0.01, 20)),
    amplifier: some(fc.record({ supply: spread(1, 200), heat: spread(0.1, 500) })),
  },
  { requiredKeys: [] },
);
test.prop([absurdSystemArbitrary, options, some(volts)], { numRuns: fuzzRuns })(
  'absurd boxes with losses of anything',
  (system, input, drive) => {
    const limits = () => [...travelLimit(driversOf(system)), voltageLimit('40 V')];
    const at = [1e-4, 5, 28, 100, 1e7];
    finite(() => respondWithHeat(system, at, { driveVoltageRms: drive, ...input } as never));
    finite(() => greatestLevelWithLosses(system, limits(), at, input as never));
    finite(() => greatestProgrammeLevel(system, limits(), { programme: pink(4), heat: input.heat } as never));
    finite(() => programmeHeat(system, { programme: pink(4), heat: input.heat, driveVoltageRms: drive } as never));
    finite(() => amplifierHeat(system, at, { supply: '40 V', driveVoltageRms: drive } as never));
  },
);

test.prop([systemArbitrary.filter(hasVent), spread(0.05, 5), spread(12, 90)], { numRuns: RUNS })(
  'the slope of the greatest level over frequency is that of its values, with a vent that loses in any box',
  (system, K, hertz) => {
    const loss = quadraticLoss({ outward: si('ratio', K) });
    const found = greatestLevelGradient(system, limitsOf(system), si('frequency', hertz), { loss });
    if (!found.ok) return;
    allFinite(found);
    const limit = limitsOf(system).filter(({ name }) => name === found.binding);
    const steps = [-2e-3, -1e-3, 1e-3, 2e-3];
    const near = frequencyGrid([...steps.map((step) => hertz * Math.exp(step)), hertz].sort((a, b) => a - b));
    const level = greatestLevelWithLosses(system, limit, near, { loss }).levelHalfSpace;
    close(found.value, level[2]!, 1e-9);
    const slope = (8 * (level[3]! - level[1]!) - (level[4]! - level[0]!)) / 12e-3;
    expect(Math.abs(found.byFrequency - slope)).toBeLessThan(1e-4 * Math.max(1, Math.abs(slope)));
  },
);
