import type { DriverGroup } from '@airspring/core/driver';
import type { System } from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestLevel,
  heatLimit,
  lowestSafeFrequency,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import {
  cutoff,
  features,
  levelCrossings,
  radiatedPower,
  referenceLevel,
  respond,
  stepResponse,
} from '@airspring/core/response';
import { absurdSystemArbitrary } from '../../arbitrary/box.js';
import { accepted } from '../../arbitrary/driver.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';
import { allFinite, answered } from '../answered.js';

const finite = (run: () => unknown) => answered(() => allFinite(run()));
const runs = { numRuns: fuzzRuns };
/** The arbitrary may draw what is refused: then there is no system. */
const system = absurdSystemArbitrary;
const grid = [1e-4, 0.1, 5, 28, 100, 3e4, 1e7];

test.prop([system, accepted('frequency'), accepted('voltageRms')], runs)('respond', (system, f, driveVoltageRms) => {
  finite(() => respond(system, grid, { driveVoltageRms }));
  finite(() => respond(system, [f], { driveVoltageRms }));
});
test.prop([system], runs)('reference level', (system) => {
  finite(() => referenceLevel(system));
});
const drop = fc.option(fc.double({ min: -100, max: 100, noNaN: true }), { nil: undefined });
const bandEnd = fc.option(accepted('frequency'), { nil: undefined });
const reference = fc.constantFrom('asymptote' as const, 'maximum' as const, undefined);
const band = fc
  .record({ from: bandEnd, to: bandEnd })
  .map(({ from, to }) => ({ ...(from && { from }), ...(to && { to }) }));
test.prop([system, band, drop, reference], { numRuns: Math.ceil(fuzzRuns / 3) })(
  'cut-off, crossings',
  (system, band, drop, reference) => {
    const options = { ...band, ...(drop !== undefined && { drop }), ...(reference !== undefined && { reference }) };
    finite(() => cutoff(system, options));
    finite(() => levelCrossings(system, options));
  },
);
test.prop([system, band], { numRuns: Math.ceil(fuzzRuns / 5) })('features', (system, band) => {
  finite(() => features(system, band));
});
test.prop([system, accepted('time'), fc.integer({ min: 1, max: 50 })], runs)(
  'step response',
  (system, until, points) => {
    finite(() => stepResponse(system, { until, points }));
  },
);
test.prop([accepted('volumeFlow'), accepted('frequency'), accepted('density'), accepted('speed')], runs)(
  'radiated power',
  (flow, frequency, density, speedOfSound) => allFinite(radiatedPower(flow, frequency, { density, speedOfSound })),
);

const limitsOf = (system: System) => {
  const { drivers } = system.spec as { drivers: DriverGroup };
  const vented = 'ventAirSpeed' in system.network.topology.probes;
  return (voltage: number, current: number, speed: number) => [
    ...travelLimit(drivers),
    ...heatLimit(drivers),
    ...(vented ? [airSpeedLimit(speed as never)] : []),
    voltageLimit(voltage as never),
    currentLimit(current as never),
  ];
};
test.prop([system, accepted('voltageRms'), accepted('currentRms'), accepted('airSpeedRms'), band], {
  numRuns: Math.ceil(fuzzRuns / 3),
})('limits', (system, voltage, current, speed, band) => {
  const limits = limitsOf(system)(voltage, current, speed);
  finite(() => greatestLevel(system, limits, grid));
  finite(() => greatestLevel(system, limits.slice(0, 1), grid));
  finite(() => lowestSafeFrequency(system, limits, { driveVoltageRms: voltage, ...band }));
});
