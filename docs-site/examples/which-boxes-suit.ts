import {
  bessel,
  boomBox,
  boxesThatSuit,
  butterworth,
  candidate,
  chebyshev,
  quasiThirdOrder,
  type Suited,
  subChebyshev,
  superBoomBox,
} from '@airspring/core/alignment';
import { completeDriver } from '@airspring/core/driver';
import { closedFamily, ventedFamily } from '@airspring/core/enclosure';
import {
  decimalText,
  type Frequency,
  format,
  type Volume,
} from '@airspring/core/quantity';

/** What may be changed. The driver is invented. */
export const inputs = {
  Qts: {
    kind: 'ratio',
    label: 'Total quality factor of the driver (Qts)',
    value: '0.36 1',
    least: '0.18 1',
    greatest: '0.6 1',
    step: 1.01,
  },
  QL: {
    kind: 'ratio',
    label: 'Quality factor of the leaks (QL)',
    value: '7 1',
    least: '3 1',
    greatest: '30 1',
    step: 1.03,
  },
} as const;

interface Wish {
  readonly Qts: number;
  readonly QL: number;
}

export function driverOf(Qts: number) {
  const sheet = completeDriver({
    fs: '28 Hz',
    Qts,
    Qms: 5,
    Vas: '75 L',
    Sd: '330 cm²',
    Re: '5.6 Ω',
  });
  if (!sheet.ok) throw new Error(sheet.because[0]?.text);
  return sheet.driver;
}

/** Every alignment of the table, in the family of boxes that it is for. */
export const candidatesOf = (QL: number) => [
  ...[butterworth(2), bessel(2), chebyshev(2, { ripple: 1 })].map((one) =>
    candidate(one, closedFamily),
  ),
  ...[
    quasiThirdOrder,
    butterworth(4),
    chebyshev(4),
    subChebyshev(4),
    boomBox,
    superBoomBox,
  ].map((one) => candidate(one, ventedFamily, { QL })),
];

export const solve = ({ Qts, QL }: Wish): readonly Suited[] =>
  boxesThatSuit(driverOf(Qts), candidatesOf(QL));

/** What the spec of a box of either family says. */
interface Sizes {
  readonly netVolume: Volume;
  readonly fb?: Frequency;
}

const hertz = (frequency: number) => format('frequency', frequency, 'Hz');

/** Each cell of the table by its name, such as `QB3_air`, and the first paragraph. */
interface Answers {
  readonly [cell: `${string}_${string}`]: string;
  readonly count: string;
  readonly smallest: string;
  readonly deepest: string;
}

/** One row of the table, in words. */
function rowOf({ result }: Suited) {
  if (!result.ok)
    return {
      air: '–',
      fb: '–',
      f3: '–',
      note: result.because[0]?.text ?? '',
    };
  const { system, f3, deviation, parameters, others } = result;
  const { netVolume, fb } = system.spec as unknown as Sizes;
  const decided = Object.entries(parameters).map(
    ([name, value]) => `${name} ${decimalText(value, 3)}`,
  );
  const off = deviation?.rms ?? 0;
  const notes = [
    off < 1e-6
      ? 'exact'
      : `${off < 0.005 ? 'less than 0.01' : off.toFixed(2)} dB off (rms)`,
    ...decided,
    ...(others.length > 0 ? [`${others.length} more such boxes`] : []),
  ];
  return {
    air: format('volume', netVolume, 'L'),
    fb: fb === undefined ? 'closed' : hertz(fb),
    f3: f3.ok ? hertz(f3.frequency) : 'nowhere',
    note: notes.join(', '),
  };
}

export function answers(wish: Wish, found = solve(wish)): Answers {
  const boxes = found.flatMap(({ alignment, result }) => {
    if (!result.ok || !result.f3.ok) return [];
    const { netVolume } = result.system.spec as unknown as Sizes;
    const f3 = result.f3.frequency;
    return [{ name: alignment.name, netVolume, f3 }];
  });
  const best = (of: (box: (typeof boxes)[0]) => number) =>
    [...boxes].sort((a, b) => of(a) - of(b))[0];
  const told = (box: (typeof boxes)[0] | undefined) =>
    box === undefined
      ? 'no box'
      : `${box.name}, with ${format('volume', box.netVolume, 'L')} and ${hertz(box.f3)}`;
  const rows = found.flatMap((one) =>
    Object.entries(rowOf(one)).map(([column, text]) => [
      `${one.alignment.name}_${column}`,
      text,
    ]),
  );
  return {
    ...(Object.fromEntries(rows) as Answers),
    count: `${boxes.length} of ${found.length}`,
    smallest: told(best(({ netVolume }) => netVolume)),
    deepest: told(best(({ f3 }) => f3)),
  };
}
