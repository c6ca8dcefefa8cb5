/** The motion of a nonlinear driver against an adaptive solver, and the order at which it comes to it. */
import { type Air, standardAir } from '@airspring/core/air';
import { driver } from '@airspring/core/driver';
import { ventedBox } from '@airspring/core/enclosure';
import { thermalModel } from '@airspring/core/limit';
import { si } from '@airspring/core/quantity';
import {
  compileNonlinear,
  forceFactorCurve,
  inductanceCurve,
  quadraticVentLoss,
  stiffnessCurve,
  stop,
} from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import fixture from './motion.json' with { type: 'json' };

const air: Air = { ...standardAir, density: si('density', 1.2), speedOfSound: si('speed', 343) };
const check = checkIn(air);
const { Le, ...without } = fixture.driver;
const reach = si('displacementPeak', fixture.reach);
const curve = (coefficients: readonly number[]) => ({ reach, coefficients });
const { ventArea } = fixture.box;
const time = (seconds: number) => si('time', seconds);

type Name = keyof typeof fixture.cases;
const isWhole = (name: Name) => name !== 'motor, suspension and vent';

function simulation(name: Name, rate: number) {
  const drivers = driver((isWhole(name) ? fixture.driver : without) as unknown as Parameters<typeof driver>[0]);
  const box = ventedBox({ ...fixture.box, drivers } as unknown as Parameters<typeof ventedBox>[0], air);
  const { coilRise, coilTime, magnetRise, magnetTime, perKelvin } = fixture.heat;
  const { outward, inward, stiffness } = fixture.stop;
  return compileNonlinear(box, {
    sampleRate: si('frequency', rate),
    outputs: Object.keys(fixture.cases[name].columns),
    forceFactor: forceFactorCurve(curve(fixture.curves.forceFactor)),
    stiffness: stiffnessCurve(curve(fixture.curves.stiffness)),
    losses: { vent: quadraticVentLoss({ area: si('area', ventArea), ...fixture.loss }, air) },
    ...(isWhole(name) && {
      inductance: inductanceCurve(curve(fixture.curves.inductance)),
      heat: thermalModel({
        coilToMagnet: si('thermalResistance', coilRise),
        magnetToAir: si('thermalResistance', magnetRise),
        coilTime: time(coilTime),
        magnetTime: time(magnetTime),
        coefficient: si('temperatureCoefficient', perKelvin),
      }),
      stop: stop({ outward: si('displacementPeak', outward), inward: si('displacementPeak', inward), stiffness }),
    }),
  });
}

/** Each output at the times of the fixture. */
function played(
  name: Name,
  rate: number,
): { readonly columns: readonly (readonly number[])[]; readonly farthest: number } {
  const { volts, frequency, times } = fixture.cases[name];
  const { run, start, outputs } = simulation(name, rate);
  const length = Math.round(times.at(-1)! * rate);
  // A block starts from rest at the sample before its first.
  const drive = Float64Array.from({ length }, (_, n) => volts * Math.sin((2 * Math.PI * frequency * (n + 1)) / rate));
  const out = outputs.map(() => new Float64Array(length));
  const { ok, farthest } = run(start(), drive, out);
  if (!ok) throw new Error('a sample has no solution');
  return { columns: out.map((column) => times.map((t) => column[Math.round(t * rate) - 1]!)), farthest };
}

for (const name of Object.keys(fixture.cases) as Name[]) {
  const { columns, volts, frequency } = fixture.cases[name];
  Object.entries(columns).forEach(([output, expected], i) => {
    const most = Math.max(...expected.map(Math.abs));
    check(`simulation.motion.${name.replaceAll(/\W+/g, '-')}.${output}`, {
      formula: 'simulation/compileNonlinear',
      source: { key: 'scipy', locator: 'integrate.solve_ivp, DOP853 at 1e-12; script motion.py' },
      status: 'derived',
      kind: 'program',
      given: {
        case: { value: name, unit: '' },
        output: { value: output, unit: '' },
        drive: { value: volts, unit: 'V' },
        frequency: { value: frequency, unit: 'Hz' },
      },
      got: () => played(name, 96_000).columns[i]!.map((value) => value / most),
      expected: expected.map((value) => value / most),
      unit: 'of the greatest value',
      tolerance: {
        absolute: isWhole(name) ? 2e-5 : 2e-6,
        why: 'second order at 96 kHz; a blow on the stop begins within an interval',
      },
    });
  });
}

test('the stop is met', () => {
  expect(played('inductance, heat and stop too', 48_000).farthest).toBeGreaterThan(fixture.stop.outward);
});

test('the error falls as the square of the interval', () => {
  const name = 'motor, suspension and vent';
  const rates = [12_000, 24_000, 48_000, 96_000, 192_000];
  const errors = rates.map((rate) => {
    const { columns } = played(name, rate);
    return Math.max(
      ...Object.values(fixture.cases[name].columns).flatMap((expected, i) => {
        const most = Math.max(...expected.map(Math.abs));
        return expected.map((value, k) => Math.abs(columns[i]![k]! - value) / most);
      }),
    );
  });
  for (let i = 1; i < errors.length; i++)
    expect(Math.log2(errors[i - 1]! / errors[i]!), `${rates[i]}`).toBeCloseTo(2, 1);
});
