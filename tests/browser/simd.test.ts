/** The kernel in WebAssembly in a page, and in a page that forbids it. */
import { fileURLToPath } from 'node:url';
import type { Impossible } from '@airspring/core/fault';
import type { SimdSweep } from '@airspring/core/simd';
import { build, type Rollup } from 'vite';
import { beforeAll, describe, expect, test } from 'vitest';
import { sweepRows } from '../../packages/core/src/network/index.js';
import { complexColumn } from '../../packages/core/src/numeric/index.js';
import { hasBrowser, site } from './browser.js';

/** What the page makes of the module. */
interface Kernel {
  readonly simdSweep: () => Pick<SimdSweep, 'ok' | 'sweepRows'> & Partial<Pick<Impossible, 'because'>>;
}

describe.skipIf(!hasBrowser)('the kernel in WebAssembly', () => {
  const { address, visit } = site();
  let code = '';
  beforeAll(async () => {
    const entry = fileURLToPath(new URL('../../packages/core/src/simd/index.ts', import.meta.url));
    const lib = { entry, formats: ['es' as const] };
    const made = await build({ configFile: false, logLevel: 'silent', build: { write: false, lib } });
    code = (made as Rollup.RollupOutput[])[0]!.output[0].code;
  });

  const coefficients = [1, 0.4, 2, 0.3, 0.9, 0.1, 0, 0, 1, 0, 0.2, 0];
  const frequencies = Array.from({ length: 201 }, (_, i) => 0.01 * 1.03 ** i);

  test.each([
    ['runs in a page that allows it', "script-src 'self' 'wasm-unsafe-eval'", true],
    ['leaves a page that forbids it the kernel in TypeScript', "script-src 'self'", false],
  ])('it %s, with the numbers of Node', async (_, policy, runs) => {
    const { page } = await visit('/404.html');
    await page.route('**/kernel.html', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<p>', headers: { 'content-security-policy': policy } }),
    );
    await page.route('**/kernel.js', (route) => route.fulfill({ contentType: 'text/javascript', body: code }));
    await page.goto(`${address()}/kernel.html`);
    await page.evaluate("import('/kernel.js').then((kernel) => Object.assign(window, kernel))");
    const found = await page.evaluate(
      ([coefficients, frequencies]) => {
        const { ok, because, sweepRows } = (globalThis as unknown as Kernel).simdSweep();
        const column = () => ({ re: new Float64Array(frequencies.length), im: new Float64Array(frequencies.length) });
        const out = column();
        sweepRows(Float64Array.from(coefficients), 6, 2, Float64Array.from(frequencies), [out], column());
        return { ok, why: because?.[0]?.text ?? '', numbers: [...out.re, ...out.im] };
      },
      [coefficients, frequencies] as const,
    );
    const out = complexColumn(frequencies.length);
    const work = complexColumn(frequencies.length);
    sweepRows(Float64Array.from(coefficients), 6, 2, Float64Array.from(frequencies), [out], work);
    expect(found.numbers).toEqual([...out.re, ...out.im]);
    expect(found.ok).toBe(runs);
    expect(found.why).toContain(runs ? '' : 'Content Security Policy');
    await page.close();
  });
});
