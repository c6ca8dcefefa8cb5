import {
  asGroup,
  directRadiator,
  equivalentDriver,
  setDirectRadiator,
  systemOf,
  ventedBox,
  ventedFamily,
} from '@airspring/core/enclosure';
import {
  airSpeedLimit,
  currentLimit,
  greatestDrive,
  greatestLevel,
  heatLimit,
  type Limit,
  travelLimit,
  voltageLimit,
} from '@airspring/core/limit';
import { compile, compileNetwork, type Network, type Values, valuesOf } from '@airspring/core/network';
import type { ComplexColumn } from '@airspring/core/numeric';
import { compiledSystem, compileResponse, probeColumns, probeNamed, respond } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { networkOf, partsOf } from '../arbitrary/network-of.js';
import { check } from '../ledger/check.js';
import { closed, fourApart, fourTogether, lossyCoil, stranger, systems, ten, tubed, vented } from './cases.js';
import { byPlan, byPolynomials, flat, largest, minus, scaled, worst } from './compare.js';
import { simulate } from './simulator.js';

const [FROM, TO, POINTS] = [10, 1000, 41];
type Columns = Readonly<Record<string, ComplexColumn>>;
const zero = (like: ComplexColumn): ComplexColumn => ({ re: like.re.map(() => 0), im: like.re.map(() => 0) });

/** The probes of our boxes, read off the simulator's node voltages and branch currents. */
async function simulated(network: Network): Promise<{ frequencies: Float64Array; columns: Columns }> {
  const run = await simulate(network, FROM, TO, POINTS);
  const named = (name: string) => run.get(name) as ComplexColumn;
  const frequencies = named('frequency').re;
  const { elements, probes } = network.topology;
  const of = (kind: string) => elements.find((one) => one.kind === kind);
  const Cab = of('acousticCompliance') as { name: string; nodes: readonly [string, string] };
  const voltage = (node: string) =>
    node === 'ground' ? zero(named('frequency')) : named(`v(${node.replace(/ /g, '_')})`.toLowerCase());
  const across = minus(voltage(Cab.nodes[0]), voltage(Cab.nodes[1]));
  const source = of('source') as { name: string };
  const cone = probes.coneVelocity as { node: string };
  const terminals = probes.terminalVoltage as { node: string } | undefined;
  const perVentArea = network.values.perVentArea as number;
  return {
    frequencies,
    columns: {
      radiatedFlow: scaled(across, -network.values[Cab.name]!, frequencies),
      box: voltage('box'),
      coneVelocity: voltage(cone.node),
      current: scaled(named(`i(v_${source.name})`), -1), // SPICE counts it into the plus pole
      ...(terminals && { terminalVoltage: voltage(terminals.node) }),
      ...(probes.ventAirSpeed && { ventAirSpeed: scaled(named('i(l_vent)'), perVentArea) }),
      ...(run.has('i(v_mouth)') && { mouth: named('i(v_mouth)') }),
    },
  };
}

const source = { key: 'ngspice', locator: '.ac of the netlist text, 10 Hz to 1 kHz' };
const program = { source, status: 'derived', kind: 'program' } as const;
const within = (column: ComplexColumn) => ({
  absolute: 3e-14 * largest(column),
  why: 'of the largest value; both in double precision',
});

describe('a circuit simulator and both roads agree', async () => {
  for (const [name, { network }] of Object.entries({ ...systems, "a stranger's": stranger })) {
    const { frequencies, columns } = await simulated(network);
    for (const [road, solve] of [
      ['polynomials', byPolynomials],
      ['elimination', byPlan],
    ] as const) {
      const ours = solve(network, frequencies);
      for (const [probe, column] of Object.entries(columns)) {
        if (ours[probe] === undefined) continue;
        test(`${name}, ${road}: ${probe}`, () =>
          expect(worst(column, ours[probe] as ComplexColumn)).toBeLessThan(1e-9));
      }
    }
  }
});

const four = await simulated(fourApart);
const ours = byPolynomials(fourTogether().network, four.frequencies);
test.each(['radiatedFlow', 'coneVelocity', 'current'])('four drivers apart are their group: %s', (probe) => {
  expect(worst(four.columns[probe] as ComplexColumn, ours[probe] as ComplexColumn)).toBeLessThan(1e-9);
});

const withTube = await simulated(tubed);
/** What the cone, the leak and the mouth of the tube let out, of the simulator's velocity, pressure and current. */
const out = (() => {
  const { coneVelocity, box, mouth } = withTube.columns as Record<'coneVelocity' | 'box' | 'mouth', ComplexColumn>;
  const cone = scaled(coneVelocity, tubed.values.Sd as number);
  const leak = scaled(box, 1 / (tubed.values.leak as number));
  return minus(cone, minus(scaled(leak, -1), mouth));
})();
const tubeColumns: Columns = {
  radiatedFlow: out,
  intoBox: scaled(withTube.columns.radiatedFlow as ComplexColumn, -1),
  coneVelocity: withTube.columns.coneVelocity as ComplexColumn,
  current: withTube.columns.current as ComplexColumn,
};
test.each(Object.entries(tubeColumns))('a vent as a lossless line: %s', (probe, column) => {
  const ours = byPlan(tubed, withTube.frequencies)[probe] as ComplexColumn;
  expect(worst(column, ours)).toBeLessThan(1e-9);
});

const inClosed = await simulated(closed.network);
const inVented = await simulated(vented.network);
const inLossy = await simulated((systems['lossy coil behind a cable'] as typeof closed).network);
/** The same with values of zero in place of what the reference leaves out: shorts for the simulator, and no leak. */
const lossy = (systems['lossy coil behind a cable'] as typeof closed).network;
const ofShorted = await simulated({ ...lossy, values: { ...lossy.values, Le: 0, L2: 0, leak: Infinity } });
const ventedFlow = inVented.columns.radiatedFlow as ComplexColumn;
const { frequencies } = inVented;

check('network.circuit.closed', {
  ...program,
  formula: 'network/netlist',
  given: { family: { value: 'closed', unit: '' }, probe: { value: 'coneVelocity', unit: 'm/s per V' } },
  got: () => flat(byPolynomials(closed.network, frequencies).coneVelocity as ComplexColumn),
  expected: flat(inClosed.columns.coneVelocity as ComplexColumn),
  unit: 'm/s per V',
  tolerance: within(inClosed.columns.coneVelocity as ComplexColumn),
});
check('network.circuit.vented', {
  ...program,
  formula: 'network/sweepRows',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'radiatedFlow', unit: '' } },
  got: () => flat(byPolynomials(vented.network, frequencies).radiatedFlow as ComplexColumn),
  expected: flat(ventedFlow),
  unit: 'm³/s per V',
  tolerance: within(ventedFlow),
});
check('network.plan', {
  ...program,
  formula: 'network/compilePlan',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'radiatedFlow', unit: '' } },
  got: () => flat(byPlan(vented.network, frequencies).radiatedFlow as ComplexColumn),
  expected: flat(ventedFlow),
  unit: 'm³/s per V',
  tolerance: within(ventedFlow),
});
check('network.circuit.line', {
  ...program,
  formula: 'network/losslessLine',
  given: { family: { value: 'box with a tube', unit: '' }, probe: { value: 'radiatedFlow', unit: '' } },
  got: () => flat(byPlan(tubed, frequencies).radiatedFlow as ComplexColumn),
  expected: flat(out),
  unit: 'm³/s per V',
  tolerance: within(out),
});
check('network.circuit.shorted-coil', {
  ...program,
  formula: 'network/compileNetwork',
  given: { family: { value: 'vented, lossy coil', unit: '' }, probe: { value: 'current', unit: '' } },
  got: () => {
    const compiled = compileNetwork(lossy, true);
    return flat(probeColumns(compiled, frequencies).current as ComplexColumn);
  },
  expected: flat(ofShorted.columns.current as ComplexColumn),
  unit: 'A per V',
  tolerance: within(ofShorted.columns.current as ComplexColumn),
});
/** The shared part of a box on the air of another: what a family of one's own does. */
function onAirOf({ network }: { readonly network: Network }, ...driven: Parameters<typeof directRadiator>): Network {
  const { elements, probes, cone } = directRadiator(...driven);
  const own = new Set(elements.map(({ name }) => name));
  const air = partsOf(network).filter(({ name }) => !own.has(name));
  const leaving = network.topology.outlets.filter(({ name }) => name !== 'cone');
  const { topology, values } = networkOf([...elements, ...air], probes, [cone, ...leaving]);
  const set: Record<string, number | readonly number[]> = {};
  setDirectRadiator(...driven, (name, ...numbers) => {
    set[name] = numbers;
  });
  return { topology, values: { ...values, ...set } as Values };
}
const behindCable = systems['lossy coil behind a cable'] as typeof closed;
for (const [probe, unit] of [
  ['current', 'A per V'],
  ['terminalVoltage', 'V per V'],
  ['coneVelocity', 'm/s per V'],
  ['radiatedFlow', 'm³/s per V'],
] as const) {
  check(`enclosure.circuit.directRadiator.${probe}`, {
    ...program,
    formula: 'network/compilePolynomials',
    given: { coil: { value: 'Le, R2 ∥ L2, source resistance', unit: '' }, probe: { value: probe, unit: '' } },
    got: () => flat(byPolynomials(onAirOf(behindCable, lossyCoil, 0.4), frequencies)[probe] as ComplexColumn),
    expected: flat(inLossy.columns[probe] as ComplexColumn),
    unit,
    tolerance: within(inLossy.columns[probe] as ComplexColumn),
  });
}
for (const [name, one] of [
  ['equivalentDriver', equivalentDriver],
  ['asGroup', (drivers: Parameters<typeof asGroup>[0]) => asGroup(drivers).equivalent],
] as const) {
  check(`enclosure.circuit.${name}`, {
    ...program,
    formula: `enclosure/${name}`,
    given: {
      drivers: { value: 'four apart, two in series in each of two branches', unit: '' },
      probe: { value: 'current', unit: '' },
    },
    got: () => {
      const together = fourTogether();
      const { drivers } = together.spec as { drivers: Parameters<typeof asGroup>[0] };
      return flat(byPolynomials(onAirOf(together, one(drivers), 0), frequencies).current as ComplexColumn);
    },
    expected: flat(four.columns.current as ComplexColumn),
    unit: 'A per V',
    tolerance: within(four.columns.current as ComplexColumn),
  });
}

const ventedProbe = (name: string) => inVented.columns[name] as ComplexColumn;
check('response.circuit.network', {
  ...program,
  formula: 'network/compile',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'ventAirSpeed', unit: '' } },
  got: () => {
    const { slots, network } = compile(vented.network.topology);
    const { probes, sweep } = network(valuesOf(slots, vented.network.values));
    const out = probes.map(() => zero(ventedFlow));
    sweep(frequencies, out);
    return flat(out[probes.indexOf('ventAirSpeed')] as ComplexColumn);
  },
  expected: flat(ventedProbe('ventAirSpeed')),
  unit: 'm/s per V',
  tolerance: within(ventedProbe('ventAirSpeed')),
});
for (const [probe, unit] of [
  ['current', 'A per V'],
  ['coneVelocity', 'm/s per V'],
  ['radiatedFlow', 'm³/s per V'],
  ['ventAirSpeed', 'm/s per V'],
] as const) {
  check(`response.circuit.columns${probe === 'current' ? '' : `.${probe}`}`, {
    ...program,
    formula: 'response/probeColumns',
    given: { family: { value: 'vented', unit: '' }, probe: { value: probe, unit: '' } },
    got: () => flat(probeColumns(compiledSystem(vented), frequencies)[probe] as ComplexColumn),
    expected: flat(ventedProbe(probe)),
    unit,
    tolerance: within(ventedProbe(probe)),
  });
}
check('response.circuit.probe', {
  ...program,
  formula: 'response/probeNamed',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'coneVelocity', unit: '' } },
  got: () => flat(probeNamed(probeColumns(compiledSystem(vented), frequencies), 'coneVelocity')),
  expected: flat(ventedProbe('coneVelocity')),
  unit: 'm/s per V',
  tolerance: within(ventedProbe('coneVelocity')),
});
const size = ({ re, im }: ComplexColumn) => re.map((x, i) => Math.hypot(x, im[i]!));
/** Level at 1 m in half space of the simulated flow: ωρ|U|/2π over 20 µPa, with its own arithmetic. */
const level = size(ventedFlow).map((U, i) => 20 * Math.log10((U * frequencies[i]! * vented.air.density) / 2e-5));
check('response.circuit.level', {
  ...program,
  formula: 'response/respond',
  given: { family: { value: 'vented', unit: '' } },
  got: () => respond(vented, frequencies).levelHalfSpace,
  expected: [...level],
  unit: 'dB',
  tolerance: { absolute: 3e-13, why: 'double precision of levels up to 100' },
});

check('response.circuit.kernel', {
  ...program,
  formula: 'response/compileResponse',
  given: { family: { value: 'vented', unit: '' }, of: { value: 'level, flow, current, air speed', unit: '' } },
  got: () => {
    const { fill, columns } = compileResponse(compiledSystem(vented), vented.air.density);
    const out = columns(frequencies.length);
    fill(frequencies, 2, out);
    const speed = out.airSpeedPeak ?? [];
    return [...out.levelHalfSpace, ...out.radiatedFlowRms.map((U) => 1000 * U), ...out.currentRms, ...speed];
  },
  expected: [
    ...level.map((L) => L + 20 * Math.log10(2)),
    ...size(ventedFlow).map((U) => 2000 * U),
    ...size(ventedProbe('current')).map((i) => 2 * i),
    ...size(ventedProbe('ventAirSpeed')).map((v) => 2 * Math.SQRT2 * v),
  ],
  unit: 'dB, L/s, A, m/s',
  tolerance: { absolute: 5e-13, why: 'double precision of levels up to 100' },
});
check('response.circuit.compiled', {
  ...program,
  formula: 'response/compiledSystem',
  given: { family: { value: 'closed', unit: '' }, probe: { value: 'current', unit: '' } },
  got: () => flat(probeColumns(compiledSystem(closed), frequencies).current as ComplexColumn),
  expected: flat(inClosed.columns.current as ComplexColumn),
  unit: 'A per V',
  tolerance: within(inClosed.columns.current as ComplexColumn),
});
check('enclosure.circuit.system', {
  ...program,
  formula: 'enclosure/systemOf',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'radiatedFlow', unit: '' } },
  got: () =>
    flat(byPolynomials(systemOf(ventedFamily, vented.spec).network, frequencies).radiatedFlow as ComplexColumn),
  expected: flat(ventedFlow),
  unit: 'm³/s per V',
  tolerance: within(ventedFlow),
});

check('response.circuit.drive', {
  ...program,
  formula: 'response/respond',
  given: { family: { value: 'vented', unit: '' }, of: { value: 'flow, current, phase of the impedance', unit: '' } },
  got: () => {
    const { radiatedFlowRms, currentRms, impedancePhase } = respond(vented, frequencies, { driveVoltageRms: '2 V' });
    return [...radiatedFlowRms.map((U) => 1000 * U), ...currentRms, ...impedancePhase];
  },
  // One volt stands across the terminals: the impedance turns against the current.
  expected: [
    ...size(ventedFlow).map((U) => 2000 * U),
    ...size(ventedProbe('current')).map((i) => 2 * i),
    ...ventedProbe('current').re.map((re, i) => -Math.atan2(ventedProbe('current').im[i]!, re)),
  ],
  unit: 'L/s, A, rad',
  tolerance: { absolute: 5e-13, why: 'rounding of values up to 10' },
});

check('response.circuit.columns.terminalVoltage', {
  ...program,
  formula: 'response/probeColumns',
  given: { family: { value: 'vented, cable', unit: '' }, probe: { value: 'terminalVoltage', unit: '' } },
  got: () => {
    return flat(probeColumns(compiledSystem(behindCable), frequencies).terminalVoltage as ComplexColumn);
  },
  expected: flat(inLossy.columns.terminalVoltage as ComplexColumn),
  unit: 'V per V',
  tolerance: within(inLossy.columns.terminalVoltage as ComplexColumn),
});

check('enclosure.circuit.vent', {
  ...program,
  formula: 'enclosure/ventedBox',
  given: { family: { value: 'vented', unit: '' }, probe: { value: 'ventAirSpeed', unit: '' } },
  got: () => flat(byPolynomials(ventedBox(vented.spec).network, frequencies).ventAirSpeed as ComplexColumn),
  expected: flat(ventedProbe('ventAirSpeed')),
  unit: 'm/s per V',
  tolerance: within(ventedProbe('ventAirSpeed')),
});

/** Greatest drive by the simulated columns, one limit after the other. */
const over = (name: string, factor: (f: number) => number) =>
  size(ventedProbe(name)).map((value, i) => factor(frequencies[i]!) / value);
const limits = {
  'limit.travel': [
    'limit/travelLimit',
    () => travelLimit(ten),
    over('coneVelocity', (f) => (2 * Math.PI * f * 0.009) / Math.SQRT2),
  ],
  'limit.heat': ['limit/heatLimit', () => heatLimit(ten), over('current', () => Math.sqrt(200 / 5.6))],
  'limit.air-speed': ['limit/airSpeedLimit', () => [airSpeedLimit('12 m/s')], over('ventAirSpeed', () => 12)],
  'limit.voltage': ['limit/voltageLimit', () => [voltageLimit('30 V')], over('terminalVoltage', () => 30)],
  'limit.current': ['limit/currentLimit', () => [currentLimit('4 A')], over('current', () => 4)],
} as const satisfies Record<string, readonly [`${string}/${string}`, () => readonly Limit[], Float64Array]>;
for (const [id, [formula, list, drive]] of Object.entries(limits)) {
  check(id, {
    ...program,
    formula,
    given: { family: { value: 'vented', unit: '' }, limit: { value: list()[0]?.name ?? '', unit: '' } },
    got: () => greatestLevel(vented, list(), frequencies).driveVoltageRms,
    expected: [...drive],
    unit: 'V rms',
    tolerance: { relative: 2e-14, why: 'both in double precision' },
  });
}
const every = Object.values(limits).flatMap(([, list]) => list());
const least = frequencies.map((_, i) => Math.min(...Object.values(limits).map(([, , drive]) => drive[i]!)));
check('limit.greatest-level', {
  ...program,
  formula: 'limit/greatestLevel',
  given: {
    family: { value: 'vented', unit: '' },
    limits: { value: every.map(({ name }) => name).join(', '), unit: '' },
  },
  got: () => greatestLevel(vented, every, frequencies).levelHalfSpace,
  expected: [...level.map((L, i) => L + 20 * Math.log10(least[i]!))],
  unit: 'dB',
  tolerance: { absolute: 3e-13, why: 'double precision of levels up to 100' },
});
check('limit.greatest-drive', {
  ...program,
  formula: 'limit/greatestDrive',
  given: {
    family: { value: 'vented', unit: '' },
    limits: { value: every.map(({ name }) => name).join(', '), unit: '' },
  },
  got: () => {
    const columns = every.map(({ probe }) => (probe === undefined ? undefined : ventedProbe(probe)));
    const voltage = new Float64Array(frequencies.length);
    greatestDrive(frequencies, every, columns, voltage, new Int32Array(frequencies.length));
    return voltage;
  },
  expected: [...least],
  unit: 'V rms',
  tolerance: { relative: 1e-14, why: 'the same columns, other arithmetic' },
});
test('which limit binds is the least of the simulated ones', () => {
  const { binding } = greatestLevel(vented, every, frequencies);
  const names = Object.values(limits);
  const expected = [...frequencies].map((_, i) => names.reduce((a, b) => (b[2][i]! < a[2][i]! ? b : a))[1]()[0]?.name);
  expect(binding).toEqual(expected);
  expect(new Set(binding).size).toBeGreaterThan(2);
});
check('limit.greatest-level.least', {
  ...program,
  formula: 'limit/greatestLevel',
  given: { family: { value: 'vented', unit: '' }, of: { value: 'least level: frequency, level, drive', unit: '' } },
  got: () => {
    const { frequency, levelHalfSpace, driveVoltageRms } = greatestLevel(vented, every, frequencies).least;
    return [frequency, levelHalfSpace, driveVoltageRms];
  },
  expected: (() => {
    const levels = [...level].map((L, i) => L + 20 * Math.log10(least[i]!));
    const at = levels.indexOf(Math.min(...levels));
    return [frequencies[at]!, levels[at]!, least[at]!];
  })(),
  unit: 'Hz, dB, V rms',
  tolerance: { relative: 1e-14, why: 'both in double precision' },
});
