/** Drivers told by the impedance of boxes that leak, made by numpy: what each is lies within the ranges told of it. */
import { standard } from 'airspring';
import { describe, expect, test } from 'vitest';
import { readStanding } from '../../../packages/airspring/src/standing/read.js';
import { demoStanding } from '../../arbitrary/standing.js';
import motions from '../../literature/enclosure/lossy-vented-impedance.json' with { type: 'json' };

type Motion = (typeof motions)[number] & { readonly QA?: number; readonly QP?: number };

/** What is told of the driver from exact readings of a box; its leaks are not stated. */
function toldOf({ QA, QP, ...one }: Motion) {
  const hertz = (value: number) => `${value} Hz`;
  const ohms = (value: number) => `${value} Ω`;
  const brief = {
    ...demoStanding,
    box: QA === undefined ? {} : { QA, QP },
    drivers: [{ name: 'unknown', coneDiameter: '130 mm', wirings: [{}] }],
    standing: {
      air: `${one.V * 1e3} L`,
      panelThickness: '15 mm',
      vents: [{ diameter: '60 mm', length: '150 mm' }],
      measured: {
        peaks: [hertz(one.lowerPeak), hertz(one.upperPeak)],
        tuning: hertz(one.dip),
        peakImpedance: ohms(one.peakImpedance),
        flank: { frequency: hertz(one.flankFrequency), impedance: ohms(one.flankImpedance) },
        Re: ohms(one.Re),
        within: { frequency: '0 Hz', length: '0 mm', impedance: 0, air: '0 L' },
      },
    },
  };
  return readStanding(brief, standard).measurement!;
}

describe.each(motions as readonly Motion[])('a box: QL $QL, Qms $Qms, fb $fb Hz, fs $fs Hz', (one) => {
  const { told, tuning } = toldOf(one);

  test('the truth lies in each range', () => {
    for (const field of ['fs', 'Qes', 'Qms', 'Qts', 'Vas'] as const) {
      const { from, to } = told.values.find((value) => value.field === field)!;
      expect(one[field], field).toBeGreaterThanOrEqual(from * (1 - 1e-5));
      expect(one[field], field).toBeLessThanOrEqual(to * (1 + 1e-5));
    }
  });

  test.runIf(one.QL === 7)('a box with the leak that is assumed tells its drivers themselves', () => {
    if (told.leaks.lessThanUsual) return;
    expect(tuning / one.fb).toBeCloseTo(1, 6);
    for (const field of ['fs', 'Qes', 'Qms', 'Qts', 'Vas'] as const) {
      expect(told.values.find((value) => value.field === field)!.value / one[field], field).toBeCloseTo(1, 5);
    }
  });
});
