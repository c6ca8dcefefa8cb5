import { expect, test } from 'vitest';
import { agreementOutside, agreementWithin, disagreeing } from '../../../benchmarks/agreement.js';
import { outsidePeers } from '../../../benchmarks/peers/outside.js';

const peers = outsidePeers();

test('the elimination plan, the kernel in WebAssembly and the naive form give the numbers of the polynomials', () => {
  const found = agreementWithin();
  expect(found).toHaveLength(4);
  expect(disagreeing(found)).toEqual([]);
});

for (const [name, sets] of Object.entries({ c: 3, simd: 3, numpy: 4 })) {
  const peer = peers[name as keyof typeof peers];
  const missing = { ok: false, because: 'not asked' } as const;
  test.skipIf(!peer.ok)(`${name} gives our numbers${peer.ok ? '' : `: ${peer.because}`}`, () => {
    const found = agreementOutside({ c: missing, simd: missing, numpy: missing, [name]: peer });
    expect(found).toHaveLength(sets);
    expect(disagreeing(found)).toEqual([]);
  });
}

test('a peer that is off by a part in a million is found', () => {
  const [plan] = agreementWithin();
  if (plan === undefined) throw new Error('no agreement');
  expect(disagreeing([{ ...plan, worst: 1e-6 }])).toHaveLength(1);
  expect(disagreeing([{ ...plan, worst: Number.NaN }])).toHaveLength(1);
  expect(disagreeing([{ ...plan, delay: 1e-6, delayTolerance: 1e-9 }])).toHaveLength(1);
});
