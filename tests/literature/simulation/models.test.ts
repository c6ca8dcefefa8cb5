import { type Air, standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { thermalModel } from '@airspring/core/limit';
import { branch } from '@airspring/core/network';
import { si } from '@airspring/core/quantity';
import {
  compileLinear,
  compileNonlinear,
  firstOrderHold,
  forceFactorCurve,
  harmonicDistortion,
  harmonicsOf,
  holdTransfer,
  inductanceCurve,
  modulationDistortion,
  quadraticVentLoss,
  steadyState,
  stiffnessCurve,
  stop,
  zeroOrderHold,
} from '@airspring/transient/simulation';
import { check } from '../../ledger/check.js';
import fixture from './models.json' with { type: 'json' };

const reach = 0.012;
const places = { value: fixture.curves.places, unit: 'reaches' };
const polynomial = (...coefficients: number[]) => ({ reach: '12 mm', coefficients }) as const;
const filled = (at: (x: number, out: Float64Array) => void, x: number): number => {
  const out = new Float64Array(2);
  at(x, out);
  return out[0]!;
};
const program = (locator: string) =>
  ({ source: { key: 'scipy', locator: `${locator}; script models.py` }, status: 'derived', kind: 'program' }) as const;
const rounding = { relative: 1e-12, why: 'rounding' };

check('simulation.force-factor', {
  formula: 'simulation/forceFactorCurve',
  ...program('numpy.polynomial, held beyond the reach'),
  given: { x: places },
  got: ({ x }) => filled(forceFactorCurve(polynomial(0.05, -0.4, 0, -0.1)).at, x * reach),
  expected: fixture.curves.forceFactor,
  unit: '1',
  tolerance: rounding,
});
check('simulation.inductance', {
  formula: 'simulation/inductanceCurve',
  ...program('numpy.polynomial, held beyond the reach'),
  given: { x: places },
  got: ({ x }) => filled(inductanceCurve(polynomial(-0.35, 0.05)).at, x * reach),
  expected: fixture.curves.inductance,
  unit: '1',
  tolerance: rounding,
});
check('simulation.stiffness.force', {
  formula: 'simulation/stiffnessCurve',
  ...program('numpy.polynomial, held beyond the reach'),
  given: { x: places },
  got: ({ x }) => filled(stiffnessCurve(polynomial(0.1, 0.9)).at, x * reach) / reach,
  expected: fixture.curves.force,
  unit: 'reaches',
  tolerance: rounding,
});
check('simulation.stiffness.energy', {
  formula: 'simulation/stiffnessCurve',
  ...program('integrate.quad of the force'),
  given: { x: places },
  got: ({ x }) => stiffnessCurve(polynomial(0.1, 0.9)).energy(x * reach) / reach ** 2,
  expected: fixture.curves.energy,
  unit: 'reaches²',
  tolerance: { relative: 1e-11, why: 'quadrature' },
});
check('simulation.stop', {
  formula: 'simulation/stop',
  ...program('integrate.quad of the force'),
  given: { x: { value: fixture.stop.places, unit: 'm' } },
  got: ({ x }) => stop({ outward: '9 mm', inward: '8 mm', stiffness: 200 }).energy(x),
  expected: fixture.stop.energy,
  unit: 'm²',
  tolerance: { absolute: 1e-15, why: 'quadrature; the greatest is 4e-4' },
});

for (const [name, hold, expected] of [
  ['zero', zeroOrderHold, fixture.holds.zero],
  ['first', firstOrderHold, fixture.holds.first],
] as const) {
  check(`simulation.hold.${name}`, {
    formula: 'simulation/holdTransfer',
    ...program('integrate.quad of the pulse of the hold'),
    given: {
      parts: { value: fixture.holds.parts.join(' '), unit: 'of the sample rate' },
      hold: { value: name, unit: '' },
    },
    got: () =>
      fixture.holds.parts.flatMap((part) => {
        const { re, im } = holdTransfer(hold, part * 48_000, 48_000);
        return [re, im];
      }),
    expected: expected.flat(),
    unit: '1',
    tolerance: { absolute: 1e-13, why: 'quadrature' },
  });
}

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const { linear, heat } = fixture;
const drivers = driver(linear.driver as unknown as Parameters<typeof driver>[0]);
for (const [name, hold, expected] of [
  ['zoh', zeroOrderHold, linear.zoh],
  ['foh', firstOrderHold, linear.foh],
] as const) {
  check(`simulation.linear.${name}`, {
    formula: 'simulation/compileLinear',
    ...program('signal.cont2discrete on the equations of motion'),
    given: { hold: { value: name, unit: '' }, rate: { value: linear.rate, unit: 'Hz' } },
    got: () => {
      const box = closedBox({ drivers, netVolume: si('volume', linear.volume) }, air);
      const outputs = ['pressure', 'displacement', 'current'];
      const { run, start } = compileLinear(box, { sampleRate: si('frequency', linear.rate), outputs, hold });
      const out = outputs.map(() => new Float64Array(linear.drive.length));
      run(start(), Float64Array.from(linear.drive), out);
      return out.flatMap((column, i) => [...column].map((value) => value / Math.max(...expected[i]!.map(Math.abs))));
    },
    expected: expected.flatMap((column) => column.map((value) => value / Math.max(...column.map(Math.abs)))),
    unit: 'of the greatest value of each output',
    tolerance: { absolute: 1e-12, why: 'rounding of two ways to the same exponential' },
  });
}

check('simulation.heat', {
  formula: 'simulation/compileNonlinear',
  ...program('integrate.solve_ivp at 1e-12'),
  given: { power: { value: heat.power, unit: 'W' }, after: { value: heat.times.join(' '), unit: 's' } },
  got: () => {
    const { coilRise, coilTime, magnetRise, magnetTime } = heat;
    const read = thermalModel({
      coilToMagnet: si('thermalResistance', coilRise),
      magnetToAir: si('thermalResistance', magnetRise),
      coilTime: si('time', coilTime),
      magnetTime: si('time', magnetTime),
      coefficient: si('temperatureCoefficient', 1e-6),
    });
    // A blocked coil of 5 Ω that takes 10 V, and does not change: 20 W.
    const network = {
      topology: {
        elements: [
          { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] },
          branch('resistor', 'Re', ['drive', 'coil'], { stands: 'impedance' }),
          { kind: 'motor', name: 'Bl', electrical: ['coil', 'ground'], mechanical: ['cone', 'ground'] },
          branch('mass', 'Mms', ['cone', 'ground']),
          branch('spring', 'Cms', ['cone', 'ground']),
        ],
        probes: {},
        outlets: [],
      },
      values: { Re: 5, Bl: 1e-9, Mms: 1, Cms: 1 },
    } as const;
    const { run, start } = compileNonlinear(
      { network, air },
      { sampleRate: '1 kHz', outputs: ['coilRise', 'magnetRise'], heat: read },
    );
    const out = [0, 1].map(() => new Float64Array(5001));
    run(start(), new Float64Array(5001).fill(10), out);
    // The drive rises within the first sample, so that half of it is lost.
    return heat.times.flatMap((t) => [out[0]![t * 1000]!, out[1]![t * 1000]!]);
  },
  expected: heat.times.flatMap((_, i) => [heat.coil[i]!, heat.magnet[i]!]),
  unit: 'K',
  tolerance: { relative: 1e-3, why: 'the first sample of the drive, of 1000 and 5000' },
});

const { harmonics } = fixture.quadratic;
check('simulation.quadratic-vent', {
  formula: 'simulation/steadyState',
  ...program('integrate.quad of sgn(cos) √|cos|'),
  given: { K: { value: 2, unit: '1' }, pressure: { value: 1000, unit: 'Pa' } },
  got: () => {
    const state = pressedVent();
    const { amplitudes } = state.ventFlow!;
    return [amplitudes[1]!, amplitudes[3]! / amplitudes[1]!, amplitudes[5]! / amplitudes[1]!];
  },
  expected: [harmonics[0]!, -harmonics[1]! / harmonics[0]!, harmonics[2]! / harmonics[0]!],
  unit: 'flow over √(pressure/K); third and fifth over it',
  tolerance: { relative: 1e-3, why: 'the mass of the air, where the flow turns' },
});

/** A vent with hardly any mass, pressed by a slow pressure of 1 Pa against a loss of U|U|: through a motor that is fed by a current. */
function pressedVent() {
  const network = {
    topology: {
      elements: [
        { kind: 'source', name: 'drive', nodes: ['drive', 'ground'] },
        branch('resistor', 'Re', ['drive', 'coil'], { stands: 'impedance' }),
        { kind: 'motor', name: 'Bl', electrical: ['coil', 'ground'], mechanical: ['cone', 'ground'] },
        branch('mass', 'Mms', ['cone', 'ground']),
        branch('spring', 'Cms', ['cone', 'ground']),
        { kind: 'piston', name: 'Sd', mechanical: ['cone', 'ground'], front: 'box', rear: 'ground' },
        branch('acousticCompliance', 'Cab', ['box', 'ground']),
        branch('acousticMass', 'vent', ['box', 'ground']),
      ],
      probes: { ventFlow: { of: 'flow', element: 'vent' } },
      outlets: [],
    },
    values: { Re: 5e4, Bl: 1, Mms: 1e-4, Cms: 1e6, Sd: 1, Cab: 1e-4, vent: 1e-4 },
  } as const;
  const { density } = standardAir;
  // ρK/2S² is 1.
  const loss = quadraticVentLoss({ area: si('area', Math.sqrt(density)), outward: 2 });
  const state = steadyState({ network, air: standardAir }, {
    ...{ base: '1 Hz', tones: [{ multiple: 1, voltageRms: si('voltageRms', 5e4 * Math.SQRT1_2) }] },
    ...{ outputs: ['ventFlow'], losses: { vent: loss }, steps: 20_000, orders: 5, mostPeriods: 50 },
  } as const);
  if (!state.ok) throw new Error(state.because[0]?.text);
  return state.harmonics;
}

const { fourier } = fixture;
check('simulation.harmonics', {
  formula: 'simulation/harmonicsOf',
  ...program('numpy.fft.rfft'),
  given: {
    period: { value: 'exp(sin) and a third harmonic', unit: '' },
    samples: { value: fourier.period.length, unit: '' },
  },
  got: () => {
    const { amplitudes, phases } = harmonicsOf(fourier.period, 8);
    return [...amplitudes, ...phases.subarray(1, 5)];
  },
  expected: [...fourier.amplitudes, ...fourier.phases],
  unit: '1, rad',
  tolerance: { absolute: 1e-13, why: 'rounding of sums of 48 numbers' },
});
check('simulation.distortion', {
  formula: 'simulation/harmonicDistortion',
  ...program('numpy.fft.rfft'),
  given: { amplitudes: { value: fourier.amplitudes.length, unit: 'orders' } },
  got: () => {
    const { byOrder, total } = harmonicDistortion(harmonicsOf(fourier.period, 8));
    return [byOrder[2]!, byOrder[3]!, total];
  },
  expected: fourier.distortion,
  unit: 'of the fundamental',
  tolerance: rounding,
});
check('simulation.modulation', {
  formula: 'simulation/modulationDistortion',
  ...program('numpy.fft.rfft of a tone that is modulated'),
  given: { second: { value: 0.2, unit: '1' }, third: { value: 0.06, unit: '1' } },
  got: () => {
    const { second, third } = modulationDistortion(harmonicsOf(fourier.modulated, 30), 3, 15);
    return [second, third];
  },
  expected: fourier.modulation,
  unit: 'of the high tone',
  tolerance: rounding,
});
check('simulation.vent-loss', {
  formula: 'simulation/quadraticVentLoss',
  ...program('½ρK u|u| by numpy'),
  given: { flow: { value: fixture.loss.flows, unit: 'm³/s' } },
  got: ({ flow }) => filled(quadraticVentLoss({ area: '60 cm²', outward: 1.5, inward: 1.1 }, air).at, flow),
  expected: fixture.loss.pressures,
  unit: 'Pa',
  tolerance: rounding,
});
