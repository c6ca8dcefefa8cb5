/** Rows of alignment tables as they were read in print, all for QL = 7. */
import {
  type Alignment,
  bessel,
  butterworth,
  chebyshev,
  solveAlignment,
  subChebyshev,
} from '@airspring/core/alignment';
import { ventedFamily, ventedRatios } from '@airspring/core/enclosure';
import { checkIn } from '../../ledger/check.js';
import { fs, paperAir, physical, split } from '../enclosure/textbook.js';

const check = checkIn(paperAir);

/** QT, h, alpha, f3/fs and ripple of the box that an alignment gives a driver at QL = 7. */
function rowOf(type: Alignment, Qts: number): Readonly<Record<string, number>> {
  const drivers = physical({ fs, ...split(Qts), Vas: 0.06, Sd: 0.033, Re: 5.6 }, paperAir);
  const options = { air: paperAir, addResistance: true };
  const found = solveAlignment(type, ventedFamily, { drivers, QL: 7 }, options);
  if (!found.ok || !found.f3.ok) throw new Error(`no box of ${type.name}`);
  return { ...ventedRatios(found.system.spec, paperAir), f3: found.f3.frequency / fs, ...found.parameters };
}

for (const [id, formula, make, Qts, key, locator, printed, tolerance] of [
  [
    'B4',
    'alignment/butterworth',
    () => butterworth(4),
    0.3,
    'hobbytables',
    'list of single-point alignments, QL = 7',
    { QT: '0.4048', alpha: '1.0613' },
  ],
  [
    'B4.tuned-to-fs',
    'alignment/butterworth',
    () => butterworth(4),
    0.3,
    'hobbytables',
    'list of single-point alignments, QL = 7: fb and f3 over fs',
    { h: '1', f3: '1' },
    { absolute: 1e-12, why: 'the print is a whole number: the tuning and the cut-off are fs itself' },
  ],
  [
    'BE4',
    'alignment/bessel',
    () => bessel(4),
    0.3,
    'hobbytables',
    'list of single-point alignments, QL = 7',
    { QT: '0.3312', alpha: '1.9076', h: '0.97354', f3: '1.4941' },
  ],
  [
    'C4',
    'alignment/chebyshev',
    () => chebyshev(4),
    0.6,
    'student2023',
    'question 1: table values for a Qts of 0.6, QL = 7',
    { h: '0.68', alpha: '0.275', f3: '0.588', ripple: '0.46' },
  ],
  [
    'SC4',
    'alignment/subChebyshev',
    () => subChebyshev(4),
    0.4,
    'dickason',
    'vented-box table for SC4, QL = 7',
    { h: '1.0103', alpha: '1.1146', f3: '1.0215' },
  ],
] as const) {
  check(`alignment.read.${id}`, {
    formula,
    source: { key, locator },
    status: 'seen',
    kind: 'table',
    given: { QL: { value: 7, unit: '1' } },
    got: () => {
      const row = rowOf(make(), Qts);
      return Object.keys(printed).map((name) => row[name]!);
    },
    printed: Object.values(printed),
    unit: Object.keys(printed).join(', '),
    ...(tolerance && { tolerance }),
  });
}
