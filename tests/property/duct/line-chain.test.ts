import { standardAir } from '@airspring/core/air';
import {
  alongWalls,
  compileLine,
  compileOpenLine,
  compileRadiation,
  compileSteppedLine,
  conicalProfile,
  exponentialProfile,
  flanged,
  flangedRadiation,
  flared,
  flaredProfile,
  lineConstants,
  mutualLength,
  pistonRadiation,
  profileMass,
  rectangularPiston,
  roundSection,
  slitSection,
  smallOpening,
  unflanged,
  unflangedRadiation,
  withNeighbours,
  withoutLoss,
} from '@airspring/core/duct';
import { complexColumn } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import fc from 'fast-check';
import { expect } from 'vitest';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { test } from '../../arbitrary/property.js';
import { anyFrequency, anyLength } from '../../arbitrary/vent.js';
import { allFinite, answered } from '../answered.js';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const m = (value: number) => si('length', value);
const columns = (n: number) => ({ A: complexColumn(n), B: complexColumn(n), C: complexColumn(n), D: complexColumn(n) });
const off = (a: number, b: number) => Math.abs(a / b - 1);
const radiations = fc.constantFrom(
  pistonRadiation,
  unflangedRadiation,
  flangedRadiation,
  smallOpening(flanged),
  smallOpening(unflanged, 4 * Math.PI),
);

/** AD − BC of a chain matrix at one frequency. */
function determinant({ A, B, C, D }: ReturnType<typeof columns>): [number, number] {
  const [a, b, c, d] = [A, B, C, D].map(({ re, im }) => [re[0]!, im[0]!] as const) as [
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
  ];
  return [a[0] * d[0] - a[1] * d[1] - b[0] * c[0] + b[1] * c[1], a[0] * d[1] + a[1] * d[0] - b[0] * c[1] - b[1] * c[0]];
}

test.prop([between(0.002, 0.1), between(0.01, 1), between(5, 2000)])('a line is reciprocal', (a, L, f) => {
  const out = columns(1);
  compileLine({ section: roundSection({ diameter: m(2 * a) }), length: m(L) })(Float64Array.of(f), out);
  const [re, im] = determinant(out);
  const scale = Math.hypot(out.A.re[0]!, out.A.im[0]!) ** 2;
  expect(Math.hypot(re - 1, im)).toBeLessThan(1e-12 * Math.max(1, scale));
});

test.prop([between(0.01, 0.05), between(0.01, 0.05), between(0.05, 0.5), between(5, 1000)])(
  'a stepped line is reciprocal, and its mirror image has A and D exchanged',
  (a, b, L, f) => {
    const [there, back] = [columns(1), columns(1)];
    const cone = (from: number, to: number) =>
      conicalProfile({ innerDiameter: m(2 * from), outerDiameter: m(2 * to), length: m(L) });
    compileSteppedLine(cone(a, b), 20)(Float64Array.of(f), there);
    compileSteppedLine(cone(b, a), 20)(Float64Array.of(f), back);
    const [re, im] = determinant(there);
    expect(Math.hypot(re - 1, im)).toBeLessThan(1e-9);
    const size = Math.hypot(there.A.re[0]!, there.D.re[0]!);
    expect(Math.abs(there.A.re[0]! - back.D.re[0]!)).toBeLessThan(1e-10 * size);
    expect(off(there.B.im[0]!, back.B.im[0]!)).toBeLessThan(1e-9);
  },
);

test.prop([between(0.001, 0.1), between(0.5, 5000)])('friction slows and weakens; without it, neither', (a, f) => {
  const section = roundSection({ diameter: m(2 * a) });
  const lossy = lineConstants({ section, frequency: si('frequency', f) });
  const free = lineConstants({ section: withoutLoss(section), frequency: si('frequency', f) });
  expect(lossy.attenuation).toBeGreaterThan(0);
  expect(lossy.phaseVelocity).toBeLessThan(free.phaseVelocity);
  expect(free.attenuation).toBe(0 * free.attenuation);
  expect(off(free.phaseVelocity, standardAir.speedOfSound)).toBeLessThan(1e-14);
});

test.prop([between(0.001, 0.02), between(1, 1000), between(0.2, 5)])('scaling: metres × s, seconds × s²', (a, f, s) => {
  // A layer thickness scales as the root of time: with metres × s and the same air, frequency goes as 1/s².
  const at = (radius: number, frequency: number) => {
    const { attenuation, phaseConstant } = lineConstants({
      section: roundSection({ diameter: m(2 * radius) }),
      frequency: si('frequency', frequency),
    });
    return attenuation / phaseConstant;
  };
  expect(off(at(a * s, f / (s * s)), at(a, f))).toBeLessThan(1e-11);
});

test.prop([between(0.05, 3), between(0.1, 1)])('wide slit and wide tube: loss goes as perimeter over area', (h, w) => {
  const height = 0.02 + 0.01 * h;
  const frequency = si('frequency', 200 + 100 * w);
  const slit = lineConstants({ section: slitSection({ width: m(10), height: m(height) }), frequency });
  const round = lineConstants({ section: roundSection({ diameter: m(2 * height) }), frequency });
  expect(off(slit.attenuation, round.attenuation)).toBeLessThan(0.02);
});

test.prop([between(0.002, 0.1), between(0.02, 1), between(5, 3000), radiations, radiations])(
  'an open line takes power and gives none',
  (a, L, f, inner, outer) => {
    const end = (radiation: typeof inner) => ({ opening: { radius: a }, radiation });
    const chain = compileLine({ section: roundSection({ diameter: m(2 * a) }), length: m(L) });
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    compileOpenLine({ chain, inner: end(inner), outer: end(outer) })(Float64Array.of(f), re, im);
    expect(re[0]).toBeGreaterThan(0);
  },
);

test.prop([between(1, 50)])('a rectangle is lighter the longer it is', (aspect) => {
  expect(rectangularPiston({ radius: 0.05, aspect: aspect * 1.01 }, 0)).toBeLessThan(
    rectangularPiston({ radius: 0.05, aspect }, 0),
  );
  expect(alongWalls('one')({ radius: 0.05, aspect }, 0)).toBeGreaterThan(
    rectangularPiston({ radius: 0.05, aspect }, 0),
  );
  expect(alongWalls('two')({ radius: 0.05, aspect }, 0)).toBeGreaterThan(
    alongWalls('one')({ radius: 0.05, aspect }, 0),
  );
});

test.prop([between(0.01, 0.1), between(2, 50), between(1.01, 2)])(
  'a neighbour farther off adds less',
  (a, x, factor) => {
    const near = mutualLength({ diameter: m(2 * a), distance: m(a * x * (1 + 1e-12)) });
    expect(mutualLength({ diameter: m(2 * a), distance: m(a * x * factor) })).toBeLessThan(near);
    expect(near).toBeLessThanOrEqual(0.2724 * a);
  },
);

test.prop([between(0.01, 0.1), between(0.001, 0.2), between(1.01, 2)])('a wider flare acts shorter', (a, R, factor) => {
  const at = (radius: number) => flared({ radius: m(radius) })({ radius: a }, 0);
  expect(at(R * factor)).toBeLessThan(at(R));
  expect(at(R) + R).toBeGreaterThan(flanged({ radius: a }, 0));
});

test.prop([anyLength, anyLength, anyFrequency, radiations], { numRuns: fuzzRuns })(
  'any line',
  (d, L, frequency, radiation) => {
    const f = Float64Array.of(frequency);
    for (const section of [roundSection({ diameter: d }), slitSection({ width: d, height: L })]) {
      allFinite(lineConstants({ section, frequency }));
      const out = columns(1);
      const chain = compileLine({ section, length: L });
      chain(f, out);
      allFinite(out);
      const end = { opening: { radius: d / 2 }, radiation };
      const [re, im] = [new Float64Array(1), new Float64Array(1)];
      compileOpenLine({ chain, inner: end, outer: end })(f, re, im);
      allFinite([re, im]);
    }
    const column = complexColumn(1);
    compileRadiation({ diameter: d, radiation })(f, column);
    allFinite(column);
    expect(column.re[0]).toBeGreaterThanOrEqual(0);
  },
);

test.prop([anyLength, anyLength, anyLength, anyFrequency], { numRuns: fuzzRuns })(
  'any profile',
  (a, b, length, frequency) => {
    const taper = { innerDiameter: a, outerDiameter: b, length };
    const profiles = [
      conicalProfile(taper),
      exponentialProfile(taper),
      answered(() => flaredProfile({ diameter: a, length, outerFlare: b })),
    ];
    for (const profile of profiles) {
      if (profile === undefined) continue;
      allFinite(profileMass(profile));
      const out = columns(1);
      compileSteppedLine(profile, 5)(Float64Array.of(frequency), out);
      allFinite(out);
    }
  },
);

test.prop([anyLength, anyLength, between(1, 1e9), anyFrequency], { numRuns: fuzzRuns })(
  'any end',
  (radius, length, aspect, f) => {
    const opening = { radius, aspect };
    const k = (2 * Math.PI * f) / 343;
    allFinite(rectangularPiston(opening, k));
    allFinite([alongWalls('one')(opening, k), alongWalls('two')(opening, k)]);
    allFinite(flared({ radius: length })(opening, k));
    allFinite(answered(() => withNeighbours(flanged, [length])(opening, k)));
    allFinite(answered(() => mutualLength({ diameter: radius, distance: length })));
  },
);
