import { describe, expect, test } from 'vitest';
import { throughHook } from '../../.config/instrument.js';
import { call, leavesOf, underMutant, watch } from './hook.js';

/** What a function gives when the numbers it returns are doubled. */
const doubled = <T>(f: (...args: never[]) => T, ...args: unknown[]) =>
  underMutant('duct/one', 2, () => call('duct/one', f, args)) as T;

describe('what a formula returns is multiplied', () => {
  test('numbers, however deep, and nothing else', () => {
    const value = {
      x: 1,
      list: [2, { y: 3 }],
      column: Float64Array.of(4),
      index: Int32Array.of(5),
      ok: true,
      name: 'a',
    };
    expect(doubled(() => value)).toEqual({
      x: 2,
      list: [4, { y: 6 }],
      column: Float64Array.of(8),
      index: Int32Array.of(5),
      ok: true,
      name: 'a',
    });
    expect(value.x).toBe(1);
  });
  test('columns and records that it fills, not those it reads', () => {
    const fill = (f: Float64Array, out: { re: Float64Array }, sizes: { x: number; kept: number }) => {
      out.re[0] = f[0]!;
      sizes.x = 5;
    };
    const [f, out, sizes] = [Float64Array.of(3), { re: new Float64Array(2) }, { x: 0, kept: 7 }];
    doubled(fill, f, out, sizes);
    expect([f, out.re, sizes]).toEqual([Float64Array.of(3), Float64Array.of(6, 0), { x: 10, kept: 7 }]);
  });
  test('what a returned function returns and fills, also when it was made before', () => {
    const make = () => (out: Float64Array) => {
      out[0] = 1;
      return 10;
    };
    const before = call('duct/one', make, []) as (out: Float64Array) => number;
    const out = new Float64Array(1);
    expect([before(out), out[0]]).toEqual([10, 1]);
    out[0] = 0;
    expect([underMutant('duct/one', 2, () => before(out)), out[0]]).toEqual([20, 2]);
  });
  test('only of the chosen formula, and only while it is chosen', () => {
    const one = watch('duct/one', () => 1);
    const other = watch('duct/other', () => 1);
    expect(underMutant('duct/one', 2, () => [one(), other()])).toEqual([2, 1]);
    expect(() => underMutant('duct/one', 2, () => JSON.parse('{'))).toThrow();
    expect(one()).toBe(1);
  });
  test('what is slow is computed once and multiplied anew, unless it writes into its arguments', () => {
    let calls = 0;
    const slow = (sizes: { x: number }) => {
      calls++;
      for (const from = performance.now(); performance.now() - from < 60; );
      return { y: sizes.x };
    };
    const by = (factor: number, x: number) => underMutant('duct/slow', factor, () => call('duct/slow', slow, [{ x }]));
    expect([by(2, 1), by(3, 1), by(2, 5), calls]).toEqual([{ y: 2 }, { y: 3 }, { y: 10 }, 2]);
    const filling = (sizes: { x: number }) => {
      sizes.x++;
      return slow(sizes);
    };
    const sizes = { x: 0 };
    underMutant('duct/filling', 1, () => call('duct/filling', filling, [sizes]));
    underMutant('duct/filling', 1, () => call('duct/filling', filling, [{ x: 0 }]));
    expect([sizes.x, calls]).toEqual([1, 4]);
  });
  test('one leaf alone, where one is chosen', () => {
    const make = () => ({ x: 1, list: [{ y: 2 }, { y: 3 }], f: (out: Float64Array) => out.fill(4).length });
    const run = () => {
      const made = call('duct/one', make, []) as ReturnType<typeof make>;
      const out = new Float64Array(1);
      return [made.x, ...made.list.map(({ y }) => y), made.f(out), out[0]];
    };
    expect(leavesOf('duct/one', run)).toEqual(['x', 'list[].y', 'f()(0)[]', 'f()']);
    expect(underMutant('duct/one', 2, run, 'x')).toEqual([2, 2, 3, 1, 4]);
    expect(underMutant('duct/one', 2, run, 'list[].y')).toEqual([1, 4, 6, 1, 4]);
    expect(underMutant('duct/one', 2, run, 'f()(0)[]')).toEqual([1, 2, 3, 1, 8]);
  });
  test('a function keeps what it carries', () => {
    const end = Object.assign((radius: number) => radius, { sources: ['a'] });
    expect({ ...watch('duct/end', end) }).toEqual({ sources: ['a'] });
  });
});

describe('the exported formulas of a module are called through the hook', () => {
  const hooked = throughHook(
    `import { x } from './x.js';
export function one(a, b = 1) { return inner(a) + b; }
function inner(a) { return one.length * a; }
export const two = (a) => a + 1, size = 3;
export const end = Object.assign(function end(a) { return a; }, { sources: [] });
export async function later() {}
export function unlisted() {}`,
    (name) => (['one', 'two', 'end', 'later'].includes(name) ? `duct/${name}` : undefined),
  );
  test.each([
    "export function one(...args) { return call('duct/one', one$0, args); }\nfunction one$0(a, b = 1) {",
    '\nfunction inner(a)',
    '\nexport async function later() {}',
    "export const two = watch('duct/two', (a) => a + 1), size = 3;",
    "export const end = watch('duct/end', Object.assign(function end(a) { return a; }, { sources: [] }));",
    '\nexport function unlisted() {}',
  ])('%s', (text) => expect(hooked).toContain(text));
});
