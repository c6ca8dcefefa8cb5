/** Nonlinear simulation against a circuit simulator with behavioural sources: harmonics of the same period after the same start. */
import {
  compileNonlinear,
  forceFactorCurve,
  harmonicsOf,
  inductanceCurve,
  quadraticVentLoss,
  stiffnessCurve,
} from '@airspring/transient/simulation';
import { describe, expect, test } from 'vitest';
import { check } from '../ledger/check.js';
import { vented } from '../unit/transient/boxes.js';
import { type NonlinearCircuit, simulateCircuit } from './nonlinear.js';

const RATE = 48_000;
const STEP = 1 / 24_000;
const PERIOD = 1 / 30;
const PERIODS = 4;
/** Harmonics above this part of the fundamental are compared. */
const LEAST = 1e-3;

const reach = 0.012;
const curves = {
  forceFactor: { reach, coefficients: [0.05, -0.4, 0, -0.1] },
  stiffness: { reach, coefficients: [0.1, 0.9] },
  inductance: { reach, coefficients: [-0.35, 0.05] },
};
const input = ({ coefficients }: { readonly coefficients: number[] }) => ({ reach: '12 mm', coefficients }) as const;
const [outward, inward] = [1.5, 1.1];
const vent = { area: 0.006, density: vented.air.density, outward, inward };

const cases = {
  'motor, suspension and vent': [{ volts: 20, frequency: 30 }],
  'moving inductance too': [{ volts: 30, frequency: 30 }],
  'two tones': [
    { volts: 14, frequency: 30 },
    { volts: 10, frequency: 150 },
  ],
} as const;
type Name = keyof typeof cases;
const moves = (name: Name) => name !== 'motor, suspension and vent';

/** Harmonics of the last period of a column of the circuit, whose times are not even. */
function harmonicsOverTime(time: Float64Array, column: Float64Array, most: number): Float64Array {
  const end = PERIODS * PERIOD;
  const start = end - PERIOD;
  return Float64Array.from({ length: most + 1 }, (_, k) => {
    const at = (t: number, y: number, turn: number) => y * Math.cos((2 * Math.PI * k * t) / PERIOD - turn);
    const sums = [0, Math.PI / 2].map((turn) => {
      let sum = 0;
      for (let i = 1; i < time.length; i++) {
        const [a, b] = [Math.max(time[i - 1]!, start), Math.min(time[i]!, end)];
        if (!(b > a)) continue;
        const between = (t: number) =>
          column[i - 1]! + ((column[i]! - column[i - 1]!) * (t - time[i - 1]!)) / (time[i]! - time[i - 1]!);
        sum += ((b - a) / 2) * (at(a, between(a), turn) + at(b, between(b), turn));
      }
      return sum / PERIOD;
    });
    return (k === 0 ? 1 : 2) * Math.hypot(...sums);
  });
}

async function byCircuit(name: Name) {
  const { inductance, ...others } = curves;
  const circuit: NonlinearCircuit = { network: vented.network, ...others, vent, ...(moves(name) && { inductance }) };
  const run = await simulateCircuit(circuit, cases[name], PERIODS * PERIOD + 2 * STEP, STEP);
  const column = (of: string, by = 1) =>
    harmonicsOverTime(run.get('time')!, run.get(of)!, 10).map((value) => Math.abs(by * value));
  return {
    displacement: column('v(x)', 1e-3),
    current: column('i(v_drive)'),
    ventAirSpeed: column('i(v_vent)', 1 / vent.area),
  };
}

function byOurs(name: Name) {
  const { run, start, outputs } = compileNonlinear(vented, {
    sampleRate: '48 kHz',
    outputs: ['displacement', 'current', 'ventAirSpeed'],
    forceFactor: forceFactorCurve(input(curves.forceFactor)),
    stiffness: stiffnessCurve(input(curves.stiffness)),
    losses: { vent: quadraticVentLoss({ area: '60 cm²', outward, inward }) },
    ...(moves(name) && { inductance: inductanceCurve(input(curves.inductance)) }),
  });
  const period = RATE * PERIOD;
  const voltage = (t: number) =>
    cases[name].reduce((sum, { volts, frequency }) => sum + volts * Math.sin(2 * Math.PI * frequency * t), 0);
  // A block starts from rest at the sample before its first.
  const drive = Float64Array.from({ length: PERIODS * period }, (_, n) => voltage((n + 1) / RATE));
  const out = outputs.map(() => new Float64Array(drive.length));
  const { ok } = run(start(), drive, out);
  if (!ok) throw new Error('a sample has no solution');
  return out.map((column) => harmonicsOf(column.subarray(-period), 10).amplitudes.map(Math.abs));
}

const names = Object.keys(cases) as Name[];
const circuits = new Map(await Promise.all(names.map(async (name) => [name, await byCircuit(name)] as const)));

describe('harmonics of the fourth period, down to −60 dB', () => {
  for (const name of names) {
    Object.entries(circuits.get(name)!).forEach(([output, expected], i) => {
      const fundamental = expected[1]!;
      const heard = [...expected.keys()].filter((k) => k > 0 && expected[k]! >= LEAST * fundamental);
      const level = (value: number) => 20 * Math.log10(value / fundamental);
      test(`${name}: ${output} has harmonics to compare`, () => {
        expect(heard.length).toBeGreaterThan(1);
      });
      check(`simulation.circuit.${name.replaceAll(/\W+/g, '-')}.${output}`, {
        formula: 'simulation/compileNonlinear',
        source: { key: 'ngspice', locator: '.tran with behavioural sources, trapezoidal rule, 41.7 µs' },
        status: 'derived',
        kind: 'program',
        given: {
          case: { value: name, unit: '' },
          output: { value: output, unit: '' },
          harmonics: { value: heard.join(' '), unit: '' },
        },
        got: () => {
          const ours = byOurs(name)[i]!;
          return heard.map((k) => level(ours[k]!));
        },
        expected: heard.map((k) => level(expected[k]!)),
        unit: 'dB re the fundamental of the circuit',
        tolerance: {
          absolute: name === 'two tones' ? 0.1 : 0.01,
          why: 'steps of both, and the tolerance of the simulator, at the least harmonic',
        },
      });
    });
  }
});
