import { runInNewContext } from 'node:vm';
import { driver } from '@airspring/core/driver';
import { systemOf, ventedFamily } from '@airspring/core/enclosure';
import { sweepRows } from '@airspring/core/network';
import { complexColumn } from '@airspring/core/numeric';
import { logarithmicGrid } from '@airspring/core/quantity';
import { respond } from '@airspring/core/response';
import { simdSweep } from '@airspring/core/simd';
import { compileBuilds, normal } from '@airspring/core/tolerance';
import { afterEach, expect, test, vi } from 'vitest';
import { bytes } from '../../../packages/core/src/simd/bytes.js';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** The WebAssembly of a page whose policy forbids to compile it. */
const forbidden = () => runInNewContext('WebAssembly', {}, { contextCodeGeneration: { wasm: false } });
/** That of a runtime without vectors: it knows no such instruction. */
const withoutVectors = () => ({
  Module: class {
    constructor() {
      throw new RangeError('invalid opcode');
    }
  },
});

test.each([
  ['is missing', () => undefined, 'TypeError'],
  ['is forbidden', forbidden, 'Wasm code generation disallowed'],
  ['has no vectors', withoutVectors, 'invalid opcode'],
])('where WebAssembly %s, the kernel is that of TypeScript, and a reason says so', (_, make, why) => {
  vi.stubGlobal('WebAssembly', make());
  const simd = simdSweep();
  expect(simd.sweepRows).toBe(sweepRows);
  expect(simd).toMatchObject({ ok: false, because: [{ code: 'no-webassembly', text: expect.stringContaining(why) }] });
});

const sheet = { Sd: '330 cm²', Mms: '86 g', Cms: '0.4 mm/N', Rms: '3.6 N·s/m', Re: '5.6 ohm', Bl: '14.3 T·m' } as const;
const box = { drivers: driver(sheet), netVolume: '60 L', fb: '28 Hz', QL: 7, ventArea: '60 cm²' } as const;
const grid = logarithmicGrid(10, 200, 200);

test('a family and a box take a kernel by the way in which they compile; columns and builds are equal to the last bit', () => {
  const { sweepRows } = simdSweep();
  const spied = vi.fn(sweepRows);
  const family = {
    ...ventedFamily,
    compile: (topology) => ventedFamily.compile(topology, spied),
  } satisfies typeof ventedFamily;
  const [plain, fast] = [systemOf(ventedFamily, box), systemOf(family, box)];
  expect(respond(fast, grid)).toEqual(respond(plain, grid));
  expect(spied).toHaveBeenCalled();

  spied.mockClear();
  const copy = { ...plain, compile: (topology) => plain.compile(topology, spied) } satisfies typeof plain;
  const builds = (system: typeof plain) => compileBuilds(system, { Cms: normal(0.08) }, grid)(7, 0, 20);
  expect(builds(copy)).toEqual(builds(plain));
  expect(spied).toHaveBeenCalledTimes(20);
});

test('two kernels have each a memory of their own', () => {
  const count = 40;
  const frequencies = Float64Array.from({ length: count }, (_, i) => 10 + i);
  const sweep = (kernel: typeof sweepRows, numerator: number) => {
    const out = complexColumn(count);
    kernel(Float64Array.of(1, 1, numerator, 0), 2, 100, frequencies, [out], complexColumn(count));
    return out;
  };
  const [one, two] = [simdSweep(), simdSweep()];
  const before = sweep(one.sweepRows, 1);
  const kept = before.re.slice();
  sweep(two.sweepRows, 5);
  sweep(one.sweepRows, 7);
  expect(before.re).toEqual(kept);
});

test('the module of bytes is about 2 kB', () => {
  expect(bytes.length).toBeGreaterThan(1000);
  expect(bytes.length).toBeLessThan(3000);
});
