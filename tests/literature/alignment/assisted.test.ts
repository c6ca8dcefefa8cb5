/** Vented boxes behind an auxiliary high-pass: every way in which the poles of a shape are shared between box and filter. */
import { type Alignment, butterworth, chebyshev, solveAlignment } from '@airspring/core/alignment';
import { ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { butterworthShape, highPass, sectionsOf } from '@airspring/core/filter';
import { expect, test } from 'vitest';
import { checkIn } from '../../ledger/check.js';
import { fs, paperAir, physical, split } from '../enclosure/textbook.js';
import table from './assisted.json' with { type: 'json' };

const check = checkIn(paperAir);

const source = { key: 'thiele1971a', locator: 'assisted alignments of fifth and sixth order' };

/** Of all boxes that suit the driver of a row, the nearest to it: h, alpha, f3/fs, corner of the filter over f3, its Q. */
function nearest(type: Alignment, order: 1 | 2, QL: number, Qts: number, alpha: number): readonly number[] {
  const drivers = physical({ fs, ...split(Qts, 8), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
  const input = { drivers, ...(QL > 0 && { QL }) };
  const found = solveAlignment(type, ventedFamily, input, { air: paperAir, highPass: { order } });
  if (!found.ok) throw new Error(found.because[0]?.text);
  const boxes = [found, ...found.others].map(({ system, f3, highPass }) => {
    const ratios = ventedRatios(system.spec, paperAir);
    const [constant, slope] = highPass!.denominator as readonly number[];
    const corner = order === 1 ? constant! : Math.sqrt(constant!);
    const cutoff = f3.ok ? f3.frequency : Number.NaN;
    const Q = order === 1 ? 0 : corner / slope!;
    return [ratios.h, ratios.alpha, cutoff / fs, corner / (2 * Math.PI * cutoff), Q];
  });
  return boxes.reduce((best, one) => (Math.abs(one[1]! - alpha) < Math.abs(best[1]! - alpha) ? one : best));
}

const rows = table.rows as unknown as readonly (readonly [string, ...number[]])[];
rows.forEach(([family, QL, ripple, Qts, h, alpha, f3, aux, Qaux], i) => {
  const order = family.endsWith('5') ? 1 : 2;
  check(`alignment.assisted.${family}.${i}`, {
    formula: 'alignment/solveAlignment',
    source,
    status: 'derived',
    kind: 'table',
    given: { QL: { value: QL!, unit: '1, 0 for no leak' }, ripple: { value: ripple!, unit: 'dB' } },
    got: () => {
      const type = family.startsWith('B') ? butterworth(order + 4) : chebyshev(order + 4, { ripple: ripple! });
      const found = nearest(type, order, QL!, Qts!, alpha!);
      return order === 1 ? found.slice(0, 4) : found;
    },
    expected: order === 1 ? [h!, alpha!, f3!, aux!] : [h!, alpha!, f3!, aux!, Qaux!],
    unit: '1',
    tolerance: { relative: 1e-9, why: 'the table has ten digits' },
  });
});

test('the auxiliary filter of B6 is one section of the whole response, at its corner', () => {
  const sections = sectionsOf(highPass(butterworthShape(6), '25 Hz')).map(({ Q }) => Q!);
  const sixth = rows.filter(([family]) => family === 'B6');
  expect(sixth.length).toBeGreaterThan(0);
  for (const [, QL, , Qts, , alpha] of sixth) {
    const found = nearest(butterworth(6), 2, QL!, Qts!, alpha!);
    expect(found[3]).toBeCloseTo(1, 6);
    expect(Math.min(...sections.map((Q) => Math.abs(Q - found[4]!)))).toBeLessThan(1e-6);
  }
});
