/** Elements over frequency: what they may fill, and what is said of one that fills no number. */
import {
  compile,
  compileGradient,
  compilePolynomials,
  gradientColumns,
  type Law,
  type Line,
  type Network,
  valuesOf,
} from '@airspring/core/network';
import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { compiledSystem, probeColumns } from '@airspring/core/response';
import { describe, expect, test } from 'vitest';
import { chained, listed, type Numbered, networkOf, outletsOf, partsOf, probesOf } from '../../arbitrary/network-of.js';
import { byPlan, byPolynomials, worst } from '../../circuit/compare.js';
import { driver, eddy, seamVented, withEddy } from '../../circuit/seam-cases.js';

const { network } = seamVented;
const grid = Float64Array.from({ length: 600 }, (_, i) => 8 * 1.008 ** i);
const roads = [
  ['polynomials', byPolynomials],
  ['elimination', byPlan],
] as const;
const beside = (one: Numbered): Network => networkOf([...partsOf(network), one], probesOf(network), outletsOf(network));

describe('a kernel that fills no number is named', () => {
  const at = (bad: number) =>
    listed('lining', ['box', 'ground'], (frequencies, re) => {
      frequencies.forEach((f, i) => {
        re[i] = f > 30 && f < 31 ? bad : 1e-7;
      });
    });
  const fault = (path: string) =>
    expect.objectContaining({ faults: [expect.objectContaining({ code: 'not-finite', path })] });
  test.each([NaN, Infinity, -Infinity])('%d', (bad) => {
    for (const [, road] of roads) expect(() => road(beside(at(bad)), grid)).toThrow(fault('elements.lining'));
    const gradient = compileGradient(beside(at(bad)), 'radiatedFlow');
    expect(() => gradient.sweep(grid, gradientColumns(gradient, grid.length))).toThrow(fault('elements.lining'));
    const system = { ...seamVented, compile, network: beside(at(bad)) };
    expect(() => probeColumns(compiledSystem(system), grid)).toThrow(/lining/);
    // Elsewhere it answers.
    for (const [, road] of roads) expect(road(beside(at(bad)), Float64Array.of(20)).current!.re[0]).toBeGreaterThan(0);
  });
  test('a line, and a slope', () => {
    const line = chained('tube', ['box', 'end'], (frequencies, { A, D }) => {
      frequencies.forEach((_, i) => {
        A.re[i] = NaN;
        D.re[i] = 1;
      });
    });
    const load = listed('load', ['end', 'ground'], (_f, re) => re.fill(1e-6));
    const given = networkOf([...partsOf(network), line, load], probesOf(network), outletsOf(network));
    expect(() => byPlan(given, grid)).toThrow(fault('elements.tube'));
    const slope: Law = {
      ...listed('lining', ['box', 'ground'], (_f, re) => re.fill(1e-7)),
      slope: (_values, _at, _frequencies, out) => {
        out.re.fill(NaN);
      },
    };
    const gradient = compileGradient(beside(slope), 'radiatedFlow');
    expect(() => gradient.sweep(grid, gradientColumns(gradient, grid.length))).toThrow(fault('elements.lining'));
  });
});

describe('a kernel that adds to what is there finds nothing there', () => {
  const set = listed('lining', ['box', 'ground'], (frequencies, re, im) => {
    frequencies.forEach((f, i) => {
      re[i] = 1e-7;
      im[i] = 1e-9 * f;
    });
  });
  const added = listed('lining', ['box', 'ground'], (frequencies, re, im) => {
    frequencies.forEach((f, i) => {
      re[i]! += 1e-7;
      im[i]! += 1e-9 * f;
    });
  });
  test.each(roads)('by %s: the same in a long sweep as alone, and swept again', (_, road) => {
    const [long, expected] = [road(beside(added), grid), road(beside(set), grid)];
    for (const name of Object.keys(long)) {
      expect(long[name]).toEqual(expected[name]);
      for (const i of [0, 127, 128, 255, 256, 257, 511, 599]) {
        const alone = road(beside(added), Float64Array.of(grid[i]!))[name]!;
        expect(alone.re[0]! / long[name]!.re[i]!).toBeCloseTo(1, 12);
      }
    }
  });
  test('in a gradient too, a line too', () => {
    const line = (adds: boolean): Line =>
      chained('tube', ['box', 'ground'], (frequencies, { A, B, C, D }) => {
        frequencies.forEach((f, i) => {
          const s = 1e-3 * f;
          for (const [{ re, im }, x, y] of [
            [A, 1, 0],
            [B, 1e5, 3e3 * s],
            [C, 0, 1e-7 * s],
            [D, 1, 1e-3 * s],
          ] as const) {
            re[i] = adds ? re[i]! + x : x;
            im[i] = adds ? im[i]! + y : y;
          }
        });
      });
    for (const [a, b] of [
      [added, set],
      [line(true), line(false)],
    ] as const) {
      const [got, want] = [a, b].map((one) => {
        const gradient = compileGradient(beside(one), 'radiatedFlow');
        const out = gradientColumns(gradient, grid.length);
        gradient.sweep(grid, out);
        return out;
      });
      expect(got).toEqual(want);
    }
  });
});

describe('a coil law', () => {
  test.each(roads)('by %s is the inductance that it says, and its power of one is that', (_, road) => {
    const L = 1.3e-3;
    const whole = networkOf(
      partsOf(withEddy(network, [L, 1])).map(
        (one): Numbered =>
          one.kind === 'law'
            ? { kind: 'inductor', name: one.name, nodes: one.nodes, values: L, stands: 'impedance' }
            : one,
      ),
      probesOf(network),
      outletsOf(network),
    );
    const [a, b] = [road(withEddy(network, [L, 1]), grid), byPolynomials(whole, grid)];
    for (const name of Object.keys(a)) expect(worst(b[name]!, a[name]!), name).toBeLessThan(1e-9);
  });
  test('as an admittance and as an impedance it is the same, where it is something', () => {
    const { fill } = eddy('x', ['a', 'b']);
    const inverse: Law = {
      ...eddy('eddy Bl', ['a', 'b']),
      stands: 'admittance',
      fill: (values, at, frequencies, out) => {
        fill(values, at, frequencies, out);
        frequencies.forEach((_, i) => {
          const size = out.re[i]! ** 2 + out.im[i]! ** 2;
          [out.re[i], out.im[i]] = [out.re[i]! / size, -out.im[i]! / size];
        });
      },
    };
    const coil = withEddy(network, [0.02, 0.7]);
    const other = networkOf(
      partsOf(coil).map(
        (one): Numbered => (one.kind === 'law' ? { ...inverse, nodes: one.nodes, values: [0.02, 0.7] } : one),
      ),
      probesOf(coil),
      outletsOf(coil),
    );
    for (const [, road] of roads) {
      const [a, b] = [road(coil, grid), road(other, grid)];
      for (const name of Object.keys(a)) expect(worst(a[name]!, b[name]!), name).toBeLessThan(1e-9);
    }
    expect(driver.Re).toBeGreaterThan(5);
  });
  test('with its own slope a gradient has the slope, without it a difference quotient of it', () => {
    const own = networkOf(
      partsOf(withEddy(network, [0.02, 0.7])).map((one): Numbered => {
        if (one.kind !== 'law') return one;
        const slope: NonNullable<Law['slope']> = (values, at, frequencies, out) => {
          one.fill(values, at, frequencies, out);
          frequencies.forEach((_, i) => {
            out.re[i]! *= values[at + 1]!;
            out.im[i]! *= values[at + 1]!;
          });
        };
        return { ...one, slope };
      }),
      probesOf(network),
      outletsOf(network),
    );
    const column = (given: Network) => {
      const gradient = compileGradient(given, 'current');
      const out = { ...gradientColumns(gradient, grid.length), byNumber: [] };
      gradient.sweep(grid, out);
      return out.byFrequency;
    };
    expect(worst(column(own), column(withEddy(network, [0.02, 0.7])))).toBeLessThan(1e-8);
    expect(complexColumn(1).re).toHaveLength(1);
  });
});

describe('what is kept from one sweep to the next is kept for the same numbers and frequencies alone', () => {
  const other = { ...withEddy(network, [0.02, 0.7]) };
  const { slots, network: make, probes } = compilePolynomials(other.topology)!;
  const numbers = valuesOf(slots, other.values);
  const changed = Float64Array.from(numbers);
  changed[slots.of.get(other.topology.elements.find(({ kind }) => kind === 'law')!.name)!.at]! *= 1.5;
  const sweptBy = (compiled: ReturnType<typeof make>, frequencies: Float64Array): readonly ComplexColumn[] => {
    const out = [...probes, 'slope'].map(() => complexColumn(frequencies.length));
    expect(compiled.sweep(frequencies, out.slice(0, -1))).toBe(-1);
    expect(compiled.slope(0, frequencies, out.at(-1)!)).toBe(-1);
    return out;
  };
  const afresh = (values: Float64Array, frequencies: Float64Array) => sweptBy(make(values), frequencies);

  test.each([1, 600])('%d frequencies', (count) => {
    const compiled = make(numbers);
    const frequencies = grid.slice(0, count);
    expect(sweptBy(compiled, frequencies)).toEqual(afresh(numbers, frequencies));
    compiled.load(changed);
    expect(sweptBy(compiled, frequencies)).toEqual(afresh(changed, frequencies));
    // The same list with another number in it.
    frequencies[count - 1]! *= 1.001;
    expect(sweptBy(compiled, frequencies)).toEqual(afresh(changed, frequencies));
    expect(sweptBy(compiled, frequencies.slice(0, 1))).toEqual(afresh(changed, frequencies.slice(0, 1)));
    expect(sweptBy(compiled, frequencies)).toEqual(afresh(changed, frequencies));
  });
  test('a sweep of more frequencies than are kept is that of its pieces', () => {
    const many = Float64Array.from({ length: 2500 }, (_, i) => 5 + 0.1 * i);
    const [whole, compiled] = [afresh(numbers, many), make(numbers)];
    for (const [from, to] of [
      [0, 900],
      [900, 1100],
      [1100, 2500],
    ] as const) {
      sweptBy(compiled, many.slice(from, to)).forEach(({ re, im }, k) => {
        expect({ re, im }).toEqual({ re: whole[k]!.re.slice(from, to), im: whole[k]!.im.slice(from, to) });
      });
    }
  });
});

test('a law across the source changes nothing else, and is still asked for numbers', () => {
  // All probes but the current of the source itself.
  const { current: _, ...others } = probesOf(network);
  const made = (parts: readonly Numbered[]) => networkOf([...partsOf(network), ...parts], others, outletsOf(network));
  const across = (value: number) => made([listed('lining', ['drive', 'ground'], (_f, re) => re.fill(value))]);
  const [got, expected] = [byPolynomials(across(1e-3), grid), byPolynomials(made([]), grid)];
  for (const name of Object.keys(expected)) {
    expect(worst(got[name]!, expected[name]!), name).toBeLessThan(1e-12);
  }
  expect(() => byPolynomials(across(NaN), grid)).toThrow(/lining/);
});
