/** Our curves, springs and losses obey their laws; a value that breaks one law is found by it, and refused. */
import {
  type CoilCurve,
  coilCurveLaws,
  compileNonlinear,
  forceFactorCurve,
  inductanceCurve,
  type MomentaryLoss,
  momentaryLossLaws,
  quadraticVentLoss,
  type Spring,
  springLaws,
  stiffnessCurve,
  stop,
} from '@airspring/transient/simulation';
import { expect, test } from 'vitest';
import { faultsOf } from '../../refusal/faults.js';
import { vented } from './boxes.js';

const broken = (laws: ReturnType<typeof springLaws>) => laws.filter(({ holds }) => !holds).map(({ law }) => law);

const curve: CoilCurve = forceFactorCurve({ reach: '10 mm', coefficients: [0.1, -0.3] });
const spring: Spring = stiffnessCurve({ reach: '10 mm', coefficients: [0.1, 0.8, 0, 0.4] });
const blow = stop({ outward: '8 mm', inward: '7 mm', stiffness: 50 });
const loss = quadraticVentLoss({ area: '60 cm²', outward: 1.5, inward: 1 });

test('ours obey', () => {
  expect(broken(coilCurveLaws(curve))).toEqual([]);
  expect(broken(coilCurveLaws(inductanceCurve({ reach: '10 mm', coefficients: [-0.3] })))).toEqual([]);
  for (const one of [spring, blow]) expect(broken(springLaws(one))).toEqual([]);
  expect(broken(momentaryLossLaws(loss))).toEqual([]);
  expect(broken(momentaryLossLaws(quadraticVentLoss({ area: '60 cm²', outward: 1, inward: 0 })))).toEqual([]);
});

/** A spring that tells its energy and force alone: the mean force then comes from these. */
const { between: _, ...told } = stiffnessCurve({ reach: '10 mm', coefficients: [0.1, 0.8, 0, 0.4] });
test('a spring need not know its mean force', () => expect(broken(springLaws(told))).toEqual([]));

const changed =
  (at: CoilCurve['at'], value: (x: number, was: number) => number, slope: (x: number, was: number) => number) =>
  (x: number, out: Float64Array) => {
    at(x, out);
    [out[0], out[1]] = [value(x, out[0]!), slope(x, out[1]!)];
  };
const same = (_: number, was: number) => was;

test.each<[string, CoilCurve]>([
  ['has a reach above zero', { ...curve, reach: Number.NaN }],
  ['is 1 at rest', { ...curve, at: changed(curve.at, (_, was) => was + 0.1, same) }],
  ['is above zero', { ...curve, at: changed(curve.at, (x, was) => was - (x > 0.011 ? 5 : 0), same) }],
  ['its slope is that of its value', { ...curve, at: changed(curve.at, same, (_, was) => 2 * was) }],
])('a curve that lies: %s', (law, liar) => {
  expect(broken(coilCurveLaws(liar))).toContain(law);
  expect(faultsOf(() => compileNonlinear(vented, { ...options, forceFactor: liar }))[0]?.path).toBe(
    'nonlinear.forceFactor',
  );
});

test('a curve that answers twice in two ways is found', () => {
  let calls = 0;
  const liar = { ...curve, at: changed(curve.at, (_, was) => was * (1 + 1e-12 * calls++), same) };
  expect(broken(coilCurveLaws(liar))).toEqual(['gives the same answer twice']);
});

const options = { sampleRate: '48 kHz', outputs: ['displacement'] } as const;

test.each<[string, Spring]>([
  ['has a reach above zero', { ...spring, reach: 0 }],
  ['stores nothing at rest', { ...told, energy: (x) => told.energy(x) + 1e-9 }],
  [
    'stores no energy below zero',
    {
      ...told,
      energy: (x) => -told.energy(x),
      at: changed(
        told.at,
        (_, f) => -f,
        (_, k) => -k,
      ),
    },
  ],
  [
    'pulls back',
    {
      ...told,
      energy: (x) => -told.energy(x),
      at: changed(
        told.at,
        (_, f) => -f,
        (_, k) => -k,
      ),
    },
  ],
  ['its force is the slope of its energy', { ...told, energy: (x) => 1.1 * told.energy(x) }],
  ['its slope is that of its force', { ...told, at: changed(told.at, same, (_, k) => 1.1 * k) }],
  [
    'over each move it takes in what its energy rises by',
    { ...told, between: (from, to, out) => told.at((from + to) / 2, out) },
  ],
  [
    'the slope of the mean force is that of the mean force',
    {
      ...spring,
      between: (from, to, out) => {
        spring.between?.(from, to, out);
        out[1] = 1.2 * out[1]!;
      },
    },
  ],
])('a spring that lies: %s', (law, liar) => {
  expect(broken(springLaws(liar))).toContain(law);
  expect(faultsOf(() => compileNonlinear(vented, { ...options, stiffness: liar }))[0]).toMatchObject({
    code: 'inconsistent',
    path: 'nonlinear.stiffness',
  });
});

test.each<[string, MomentaryLoss]>([
  ['is finite', { ...loss, at: changed(loss.at, (flow, p) => (flow > 0.5 ? Number.NaN : p), same) }],
  [
    'gives no energy',
    {
      ...loss,
      at: changed(
        loss.at,
        (_, p) => -p,
        (_, r) => -r,
      ),
    },
  ],
  ['takes nothing in still air', { ...loss, at: changed(loss.at, (_, p) => p + 1e-6, same) }],
  ['loses no less at a greater flow', { ...loss, at: changed(loss.at, (flow, p) => p / (1 + 1e3 * flow ** 4), same) }],
  ['its slope is that of its pressure', { ...loss, at: changed(loss.at, same, (_, r) => r / 2) }],
])('a loss that lies: %s', (law, liar) => {
  expect(broken(momentaryLossLaws(liar))).toContain(law);
  const faults = faultsOf(() => compileNonlinear(vented, { ...options, losses: { vent: liar } }));
  expect(faults[0]).toMatchObject({ code: 'inconsistent', path: 'nonlinear.losses.vent' });
  expect(faults.map(({ expected }) => expected)).toContain(`a model that ${law}`);
});

test('an exception breaks a law', () => {
  const thrower = () => {
    throw new Error('no value');
  };
  expect(broken(coilCurveLaws({ ...curve, at: thrower })).length).toBeGreaterThan(3);
});
