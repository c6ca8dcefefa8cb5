import { completeDriver } from '@airspring/core/driver';
import { closedBox } from '@airspring/core/enclosure';
import { probeGradient } from '@airspring/core/network';
import { type CutoffOptions, cutoffGradient, greatestGradient } from '@airspring/core/response';
import { expect, test } from 'vitest';

const found = completeDriver({ fs: '24 Hz', Qts: 0.36, Qes: 0.4, Vas: '70 L', Sd: '330 cm²', Re: '5.6 Ω' });
if (!found.ok) throw new Error('not enough');
const box = closedBox({ drivers: found.driver, netVolume: '40 L' });
const fault = (code: string, path: string) =>
  expect.objectContaining({ faults: [expect.objectContaining({ code, path })] });

test('a band the wrong way round is refused, not narrowed to its lower end', () => {
  const options = { probe: 'coneVelocity', from: '100 Hz', to: '50 Hz' } as const;
  expect(() => greatestGradient(box, options)).toThrow(fault('unsorted', 'to'));
});

test('a probe that is not there is named, not called undamped', () => {
  const options = { probe: 'nobody', from: '30 Hz', to: '50 Hz' } as const;
  expect(() => greatestGradient(box, options)).toThrow(fault('empty', 'network.probes.nobody'));
  for (const name of ['nobody', 'constructor']) {
    expect(() => probeGradient(box.network, name, 30)).toThrow(fault('empty', `network.probes.${name}`));
  }
});

test('a cut-off from another reference than the asymptote is refused, not differentiated as if from it', () => {
  const options: CutoffOptions = { reference: 'maximum' };
  expect(() => cutoffGradient(box, options)).toThrow(fault('inconsistent', 'cutoff.reference'));
  expect(cutoffGradient(box, { reference: 'asymptote' } as CutoffOptions)).toMatchObject({ ok: true });
});

test('two neighbours of equal value are one extremum: no kink', () => {
  const options = { probe: 'terminalVoltage', from: '30 Hz', to: '50 Hz' } as const;
  const flat = greatestGradient(box, options);
  expect(flat).toMatchObject({ ok: true, value: expect.closeTo(1, 14) });
  expect(flat).not.toHaveProperty('oneSided');
});
