import { standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { closedBox, type System, ventedBox } from '@airspring/core/enclosure';
import { compile, compileNetwork } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  compiledSystem,
  cutoff,
  cutoffGradient,
  features,
  levelCrossings,
  lowestLoad,
  probeColumns,
  probeNamed,
  radiatedPower,
  referenceLevel,
  respond,
  stepResponse,
} from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import {
  listed,
  type Numbered,
  networkOf,
  outletsOf,
  part,
  partsOf,
  probesOf,
  withParts,
  withProbes,
} from '../../arbitrary/network-of.js';
import { stranger } from '../../circuit/cases.js';

/** Invented. */
const ten = driver({ Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' });
const closed = closedBox({ drivers: ten, netVolume: '40 L' });
const vented = ventedBox({ drivers: ten, netVolume: '60 L', fb: '28 Hz', QL: 7, ventArea: '60 cm²' });
const faulty = (...faults: [string, string][]) =>
  expect.objectContaining({
    code: 'airspring-input',
    faults: faults.map(([code, path]) => expect.objectContaining({ code, path })),
  });

test('by hand, far from every resonance: at 0.001 Hz the spring holds the cone, at 100 kHz its mass', () => {
  const { displacementPeak, impedance, currentRms } = respond(closed, [1e-3, 1e5], { driveVoltageRms: '2 V' });
  const Cab = 0.04 / (standardAir.density * standardAir.speedOfSound ** 2);
  const stiffness = 1 / 0.4e-3 + 0.033 ** 2 / Cab;
  expect(displacementPeak[0]! / ((Math.SQRT2 * 2 * 14.3) / (5.6 * stiffness))).toBeCloseTo(1, 6);
  const w = 2e5 * Math.PI;
  expect(displacementPeak[1]! / ((Math.SQRT2 * 2 * 14.3) / (5.6 * 0.086 * w * w))).toBeCloseTo(1, 6);
  expect(impedance[0]).toBeCloseTo(5.6, 6);
  expect(currentRms[1]).toBeCloseTo(2 / 5.6, 6);
});
test('columns that a system does not tell are absent', () => {
  expect(respond(closed, [40])).not.toHaveProperty('airSpeedPeak');
  expect(respond(vented, [40]).airSpeedPeak).toHaveLength(1);
});
test('the source resistance is in the drive and not in the impedance', () => {
  const behind = closedBox({ drivers: ten, netVolume: '40 L', sourceResistance: '2 ohm' });
  expect(respond(behind, [43]).impedance[0]).toBeCloseTo(respond(closed, [43]).impedance[0]!, 12);
  expect(referenceLevel(behind)).toBeCloseTo(referenceLevel(closed) + 20 * Math.log10(5.6 / 7.6), 8);
});
test.each([closed, vented])(
  'radiated power is a small share of what goes in, where the cone is small against the wavelength',
  (system) => {
    const frequencies = [15, 20, 28, 35, 50, 70, 100];
    const { radiatedFlowRms, currentRms, impedance, impedancePhase } = respond(system, frequencies);
    frequencies.forEach((f, i) => {
      const into = currentRms[i]! ** 2 * impedance[i]! * Math.cos(impedancePhase[i]!);
      const share = radiatedPower(radiatedFlowRms[i]!, f, system.air) / into;
      expect(share).toBeGreaterThan(0);
      expect(share).toBeLessThan(0.1);
    });
  },
);
test('a vented box has two impedance maxima and the minimum between them near fb; a closed one has one', () => {
  const { impedanceMaxima, impedanceMinima } = features(vented);
  expect(impedanceMaxima).toHaveLength(2);
  expect(Math.abs(impedanceMinima[0]!.frequency / 28 - 1)).toBeLessThan(0.05);
  expect(features(closed).impedanceMaxima).toHaveLength(1);
});

describe('refusals', () => {
  test('frequencies', () => {
    expect(() => respond(closed, [])).toThrow(faulty(['empty', 'frequencies']));
    expect(() => respond(closed, [40, 30, Number.NaN, -1])).toThrow(
      faulty(['unsorted', 'frequencies[1]'], ['not-finite', 'frequencies[2]'], ['not-positive', 'frequencies[3]']),
    );
  });
  test('options', () => {
    expect(() => respond(closed, [40], { driveVoltageRms: '3 W' as never })).toThrow(
      faulty(['unit', 'options.driveVoltageRms']),
    );
    expect(() => cutoff(closed, { reference: 'top' as never })).toThrow(faulty(['unknown-field', 'cutoff.reference']));
    expect(() => cutoff(closed, { reference: {} as never })).toThrow(faulty(['empty', 'reference.frequency']));
    expect(() => stepResponse(closed, { until: '0 s', points: 0 })).toThrow(
      faulty(['not-positive', 'step.until'], ['out-of-range', 'step.points']),
    );
  });
  test.each([cutoff, levelCrossings, features])(
    'a band that ends before it begins',
    (door: (system: System, band: object) => unknown) => {
      expect(() => door(closed, { from: '300 Hz', to: '100 Hz' })).toThrow(
        expect.objectContaining({ code: 'airspring-input' }),
      );
    },
  );

  const without = (name: string): System => {
    const { [name]: _, ...probes } = probesOf(closed.network);
    return { ...closed, network: withProbes(closed.network, probes, name === 'radiatedFlow' ? [] : undefined) };
  };
  test.each(['radiatedFlow', 'coneVelocity', 'current', 'terminalVoltage'])('a system without the probe %s', (name) => {
    expect(() => respond(without(name), [40])).toThrow(faulty(['empty', `network.probes.${name}`]));
  });
  test('every door that needs the radiated flow says so', () => {
    const deaf = without('radiatedFlow');
    for (const door of [
      cutoff,
      levelCrossings,
      referenceLevel,
      features,
      (system: System) => stepResponse(system, { until: '1 s', points: 2 }),
    ]) {
      expect(() => door(deaf)).toThrow(faulty(['empty', 'network.probes.radiatedFlow']));
    }
  });
  test('a probe by a name that every record has', () => {
    const columns = probeColumns(compiledSystem(closed), Float64Array.of(40));
    expect(() => probeNamed(columns, 'toString')).toThrow(faulty(['empty', 'network.probes.toString']));
  });
  test('a resonance that nothing damps, met exactly', () => {
    const elements: Numbered[] = [
      { kind: 'source', name: 'drive', nodes: ['in', 'ground'] },
      part('inductor', 'L', ['in', 'out'], 1 / (200 * Math.PI)),
      part('capacitor', 'C', ['out', 'ground'], 1 / (200 * Math.PI)),
    ];
    const network = networkOf(elements, { seen: { of: 'flow', element: 'drive' } });
    expect(() => probeColumns(compileNetwork(network), Float64Array.of(50, 100))).toThrow(
      faulty(['inconsistent', 'network']),
    );
    expect(probeColumns(compileNetwork(network), Float64Array.of(50, 99)).seen?.im[0]).toBeCloseTo(2 / 3, 12);
  });
  test('a step of what is not lumped, and of what has no mass', () => {
    const lining = listed('lining', ['box', 'ground'], (_f, re) => re.fill(1e-6));
    const parts = partsOf(closed.network);
    const through = [{ name: 'lining', flow: { of: 'flow', element: 'lining' } }] as const;
    const lined = {
      ...closed,
      compile,
      network: networkOf([...parts, lining], probesOf(closed.network), [...outletsOf(closed.network), ...through]),
    };
    expect(() => stepResponse(lined, { until: '1 s', points: 2 })).toThrow(faulty(['inconsistent', 'network']));
    const massless = {
      ...closed,
      network: withParts(
        closed.network,
        parts.filter(({ name }) => name !== 'Mms'),
      ),
    };
    expect(() => stepResponse(massless, { until: '1 s', points: 2 })).toThrow(faulty(['inconsistent', 'network']));
    expect(respond(lined, [40]).levelHalfSpace[0]).toBeLessThan(respond(closed, [40]).levelHalfSpace[0]!);
  });
});

describe('what is not there is a result, not an error', () => {
  test('no cut-off below the band, none above it', () => {
    expect(cutoff(closed, { from: '100 Hz', to: '190 Hz' })).toMatchObject({
      ok: false,
      because: [{ code: 'above-throughout' }],
    });
    expect(cutoff(closed, { from: '2 Hz', to: '20 Hz' })).toMatchObject({
      ok: false,
      because: [{ code: 'below-at-end' }],
    });
    expect(features(closed, { from: '2 Hz', to: '20 Hz' })).not.toHaveProperty('f3');
  });
});

describe("a stranger's network obeys what ours obey", () => {
  test('every door answers it', () => {
    const columns = respond(stranger, [10, 20, 40, 80]);
    expect(Math.max(...columns.impedancePhase.map(Math.abs))).toBeLessThan(Math.PI / 2);
    expect(columns.impedance.every((Z) => Z > 5.6)).toBe(true);
    const f3 = cutoff(stranger);
    expect(f3.ok && f3.frequency).toBeGreaterThan(10);
    expect(features(stranger).impedanceMaxima).toHaveLength(2);
    expect(stepResponse(stranger, { until: '1 s', points: 101 }).pressure.every(Number.isFinite)).toBe(true);
  });
  test('at the resonance of the radiator in free air its notch: what the cone gives the radiator takes', () => {
    // 1/(2π √(0.3 · 0.5e-3)) = 12.995 Hz
    const notch = 1 / (2 * Math.PI * Math.sqrt(0.3 * 0.5e-3));
    const [before, at, after] = respond(stranger, [notch * 0.8, notch, notch * 1.25]).levelHalfSpace;
    expect(at!).toBeLessThan(before! - 3);
    expect(at!).toBeLessThan(after! - 10);
  });
});

test('the ripple goes from the cut-off itself to the top of the peak, not from sample to sample', () => {
  const peaked = ventedBox({ drivers: ten, netVolume: '60 L', fb: '29 Hz' });
  const { f3, peaks, ripple } = features(peaked);
  expect(f3).toBeGreaterThan(2);
  const top = Math.max(...peaks.map(({ value }) => value));
  expect(ripple).toBeCloseTo(top + 10 * Math.log10(2), 6);
});

test('a pole that nothing damps is no level, wherever a cut-off meets it', () => {
  const C = 1 / (2 * Math.PI * 50) ** 2;
  const elements: Numbered[] = [
    { kind: 'source', name: 'drive', nodes: ['in', 'ground'] },
    part('inductor', 'L', ['in', 'out'], 1),
    part('capacitor', 'C', ['out', 'ground'], C),
  ];
  const probes = { radiatedFlow: { of: 'potential', node: 'out' } } as const;
  const system: System = {
    family: 'by hand',
    spec: {},
    air: standardAir,
    network: networkOf(elements, probes),
    compile,
  };
  const options = { from: '50 Hz', to: '100 Hz', reference: 'maximum' } as const;
  expect(() => cutoff(system, options)).toThrow(faulty(['inconsistent', 'network']));
});

test('terminals through which nothing flows have no impedance: refused by name, not infinite', () => {
  const elements: Numbered[] = [
    { kind: 'source', name: 'drive', nodes: ['in', 'ground'] },
    part('resistor', 'R', ['other', 'ground'], 4),
  ];
  const probes = {
    radiatedFlow: { of: 'flow', element: 'R' },
    coneVelocity: { of: 'potential', node: 'other' },
    current: { of: 'flow', element: 'drive' },
    terminalVoltage: { of: 'potential', node: 'in' },
  } as const;
  const system: System = {
    family: 'by hand',
    spec: {},
    air: standardAir,
    network: networkOf(elements, probes),
    compile,
  };
  for (const ask of [() => respond(system, [20, 40]), () => lowestLoad(system), () => features(system)]) {
    expect(ask).toThrow(faulty(['inconsistent', 'network.probes.current']));
  }
});

test('the asymptote is that of the closed form, however strong the motor and light the cone', () => {
  const air = standardAir;
  for (const [Bl, Mms] of [
    [14.3, 0.086],
    [80, 0.0002],
    [300, 1e-6],
    [0.01, 100],
  ] as const) {
    const strong = driver({ ...ten, Bl: si('forceFactor', Bl), Mms: si('mass', Mms), Le: '1 mH' });
    const level = 20 * Math.log10((air.density * Bl * strong.Sd) / (2 * Math.PI * Mms * strong.Re * 20e-6));
    for (const system of [
      closedBox({ drivers: strong, netVolume: '40 L' }),
      ventedBox({ drivers: strong, netVolume: '40 L', fb: '30 Hz', QL: 7, QP: 50 }),
    ]) {
      expect(referenceLevel(system)).toBeCloseTo(level, 6);
      const found = cutoffGradient(system, { from: '2 Hz', to: '10000 kHz' });
      // The asymptote has these slopes, the cut-off of a strong motor lies where the level still rises towards it.
      if (found.ok) expect(Object.values(found.byElement).every(Number.isFinite)).toBe(true);
    }
  }
});
