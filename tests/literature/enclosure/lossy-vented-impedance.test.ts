import { lossyVentedImpedance, ventedBox, ventedImpedanceQuality } from '@airspring/core/enclosure';
import { features } from '@airspring/core/response';
import { expect, test } from 'vitest';
import { check } from '../../ledger/check.js';
import motions from './lossy-vented-impedance.json' with { type: 'json' };
import { paperAir, physical } from './textbook.js';

// Boxes that lose, worked out from the motion of their cones: script lossy-vented-impedance.py.
type Motion = (typeof motions)[number] & { readonly QA?: number; readonly QP?: number };
const readings = [
  'lowerPeak',
  'dip',
  'upperPeak',
  'peakImpedance',
  'flankFrequency',
  'flankImpedance',
  'Re',
] as const satisfies readonly (keyof Motion)[];
const units = { peakImpedance: 'Ω', flankImpedance: 'Ω', Re: 'Ω' } as Readonly<Record<string, string>>;

for (const [known, sets] of [
  [['QL'], motions.filter((one: Motion) => one.QA === undefined)],
  [['QL', 'QA', 'QP'], motions.filter((one: Motion) => one.QA !== undefined)],
  [['Qms'], motions.filter((one: Motion) => one.QA === undefined && one.QL < 100)],
] as const) {
  const found = ['fb', 'fs', 'alpha', 'Qes', 'Qts', known[0] === 'QL' ? 'Qms' : 'QL'] as const;
  const column = (field: keyof Motion) => (sets as readonly Motion[]).map((one) => one[field]!);
  for (const name of found) {
    check(`enclosure.lossy-vented-impedance.${name}.from-${known.join('-')}`, {
      formula: 'enclosure/lossyVentedImpedance',
      source: { key: 'scipy', locator: 'peaks and dip by minimize_scalar, script lossy-vented-impedance.py' },
      status: 'derived',
      kind: 'program',
      given: Object.fromEntries(
        [...readings, ...known].map((field) => [
          field,
          { value: column(field), unit: units[field] ?? (/^[QR]/.test(field) ? '1' : 'Hz') },
        ]),
      ),
      got: (given) => {
        const told = lossyVentedImpedance(given as never);
        if (!told.ok) throw new Error(told.because[0]!.text);
        return told[name];
      },
      expected: column(name),
      unit: name === 'fb' || name === 'fs' ? 'Hz' : '1',
      tolerance: {
        relative: name.startsWith('Q') ? 1e-6 : 1e-7,
        why: 'turns of a curve are found to some 1e-8 of their frequency, and losses by their flatness',
      },
    });
  }
}

test('without losses it is what the formulas without losses tell', () => {
  const read = {
    lowerPeak: '18 Hz',
    dip: '27 Hz',
    upperPeak: '45 Hz',
    peakImpedance: '60 Ω',
    flankFrequency: '52 Hz',
    flankImpedance: '25 Ω',
    Re: '6 Ω',
  } as const;
  const found = lossyVentedImpedance(read);
  if (!found.ok) throw new Error('has no answer');
  const { Qes, Qms, Qts } = ventedImpedanceQuality(read);
  expect(found.Qes).toBeCloseTo(Qes, 10);
  expect(found.Qms).toBeCloseTo(Qms, 10);
  expect(found.Qts).toBeCloseTo(Qts, 10);
  expect(found.fs).toBeCloseTo(30, 10);
  expect(found.QL).toBe(Infinity);
  expect(() => lossyVentedImpedance({ ...read, QL: 7, Qms: 5 })).toThrow(/either QL or Qms/);
  expect(() => lossyVentedImpedance({ ...read, dip: '17 Hz', QL: 7 })).toThrow(/between the peaks/);
  // A peak so high is more than a leak of that size leaves, whatever the suspension: it is told as a negative loss.
  const high = lossyVentedImpedance({ ...read, peakImpedance: '150 Ω', QL: 7 });
  expect(high.ok && high.Qms).toBeLessThan(0);
  const wild = {
    ...read,
    lowerPeak: '23.1 Hz',
    dip: '30 Hz',
    upperPeak: '68.3 Hz',
    flankFrequency: '78.6 Hz',
  } as const;
  expect(lossyVentedImpedance({ ...wild, flankImpedance: '6.55 Ω', QL: 1 }).ok).toBe(false);
});

test('a box with what was found has the peaks and the dip that were read', () => {
  const read = {
    lowerPeak: '21.2 Hz',
    dip: '35.1 Hz',
    upperPeak: '69.3 Hz',
    peakImpedance: '23.5 Ω',
    flankFrequency: '78 Hz',
    flankImpedance: '14.6 Ω',
    Re: '3.1 Ω',
  } as const;
  const found = lossyVentedImpedance({ ...read, QL: 7 });
  if (!found.ok) throw new Error('has no answer');
  const { fs, fb, alpha, Qes, Qms } = found;
  const drivers = physical({ fs, Qms, Qes, Vas: alpha * 0.022, Sd: 0.0133, Re: 3.1 }, paperAir);
  const { impedanceMaxima, impedanceMinima } = features(
    ventedBox({ drivers, netVolume: '22 L', fb, QL: 7 }, paperAir),
    {
      from: '5 Hz',
      to: '200 Hz',
    },
  );
  expect(impedanceMaxima.map(({ frequency }) => frequency.toFixed(3))).toEqual(['21.200', '69.300']);
  expect(Math.max(...impedanceMaxima.map(({ value }) => value))).toBeCloseTo(23.5, 4);
  expect(impedanceMinima.map(({ frequency }) => frequency.toFixed(2))).toContain('35.10');
});
