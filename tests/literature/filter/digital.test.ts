/** Digital filters and their rounding, against a numeric library. */
import {
  besselShape,
  biquads,
  butterworthShape,
  compileBiquads,
  type DigitalFilter,
  digitalDeviation,
  highPass,
  linkwitzRileyShape,
  lowPass,
  type SinglePrecision,
  shapeByQ,
  singlePrecision,
} from '@airspring/core/filter';
import { polynomialProduct } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import { check } from '../../ledger/check.js';
import fixtures from './digital.json' with { type: 'json' };

const scipy = { key: 'scipy', locator: 'scipy.signal: bilinear_zpk, zpk2sos, freqz_zpk, lfilter' } as const;
const hertz = (f: number) => si('frequency', f);
const shapes = { butter: butterworthShape, lr: linkwitzRileyShape, bessel: besselShape } as const;
const product = (list: readonly number[]) => list.reduce((done, one) => done * one, 1);

for (const [i, row] of fixtures.filters.entries()) {
  const make = row.kind === 'low-pass' ? lowPass : highPass;
  const filter = () => make(shapes[row.family as keyof typeof shapes](row.order), hertz(row.corner));
  const options = { sampleRate: hertz(row.rate), ...(row.exactAt > 0 && { exactAt: hertz(row.exactAt) }) };
  const digital = () => biquads(filter(), options);
  const program = {
    source: scipy,
    status: 'derived',
    kind: 'program',
    given: {
      filter: { value: `${row.family} ${row.kind} of order ${row.order}`, unit: '' },
      corner: { value: row.corner, unit: 'Hz' },
      rate: { value: row.rate, unit: 'Hz' },
    },
  } as const;
  const coefficients: Record<string, (found: DigitalFilter) => readonly number[]> = {
    a1: ({ sections }) => sections.map(({ a1 }) => a1),
    a2: ({ sections }) => sections.map(({ a2 }) => a2),
    numerator: ({ sections }) => {
      const factors = sections.map(({ b0, b1, b2 }) => (b2 === 0 ? [1, b1 / b0] : [1, b1 / b0, b2 / b0]));
      return Array.from(factors.reduce<ArrayLike<number>>(polynomialProduct, [1]));
    },
  };
  for (const [name, of] of Object.entries(coefficients))
    check(`filter.biquads.${i}.${name}`, {
      ...program,
      formula: 'filter/biquads',
      got: () => of(digital()),
      expected: row[name as 'a1'],
      unit: '1',
      tolerance: { absolute: 2e-8, why: 'poles that coincide are roots to half the digits on one side' },
    });
  check(`filter.biquads.${i}.gain`, {
    ...program,
    formula: 'filter/biquads',
    got: () => product(digital().sections.map(({ b0 }) => b0)),
    expected: row.gain,
    unit: '1',
    tolerance: { relative: 1e-12, why: 'double precision on both sides' },
  });
  const probes = frequencyGrid(row.probes);
  for (const part of ['re', 'im'] as const)
    check(`filter.compile-biquads.${i}.${part}`, {
      ...program,
      formula: 'filter/compileBiquads',
      got: () => {
        const column = { re: new Float64Array(probes.length).fill(1), im: new Float64Array(probes.length) };
        compileBiquads(digital())(probes, column);
        return column[part];
      },
      expected: row[part],
      unit: '1',
      tolerance: { absolute: 2e-10, why: 'coefficients of 53 bits, with poles within 0.003 of 1' },
    });
  const [from, to] = row.band as [number, number];
  const deviation = () => digitalDeviation(filter(), digital(), { from: hertz(from), to: hertz(to) });
  for (const [name, unit] of [
    ['level', 'dB'],
    ['levelAt', 'Hz'],
    ['phase', 'rad'],
    ['phaseAt', 'Hz'],
  ] as const)
    check(`filter.digital-deviation.${i}.${name}`, {
      ...program,
      formula: 'filter/digitalDeviation',
      got: () => deviation()[name],
      expected: row[name],
      unit,
      tolerance:
        name === 'level'
          ? { absolute: 1e-9, why: 'coefficients of 53 bits, with poles within 0.003 of 1' }
          : { relative: 1e-6, why: 'a small difference of two responses' },
    });
}

for (const [i, row] of fixtures.single.entries()) {
  const shape = row.order === 1 ? shapeByQ({ order: 1 }) : butterworthShape(2);
  const found = () =>
    singlePrecision(biquads(highPass(shape, hertz(row.corner)), { sampleRate: hertz(row.rate) })) as SinglePrecision;
  const [exactF0, exactQ] = row.exact as [number, number];
  const [f0, Q] = row.rounded as [number, number];
  const [b0, b1, b2] = row.b as [number, number, number];
  const [, a1, a2] = row.a as [number, number, number];
  const expected: readonly [string, (of: SinglePrecision) => number, number, string, number][] = [
    ['b0', ({ rounded }) => rounded.sections[0]!.b0, b0, '1', 0],
    ['b1', ({ rounded }) => rounded.sections[0]!.b1, b1, '1', 0],
    ...(row.order === 2
      ? ([
          ['b2', ({ rounded }) => rounded.sections[0]!.b2, b2, '1', 0],
          ['a2', ({ rounded }) => rounded.sections[0]!.a2, a2, '1', 0],
          ['exact.Q', ({ poles }) => poles[0]!.exact.Q!, exactQ, '1', 1e-8],
          ['rounded.Q', ({ poles }) => poles[0]!.rounded.Q!, Q, '1', 1e-9],
        ] as [string, (of: SinglePrecision) => number, number, string, number][])
      : []),
    ['a1', ({ rounded }) => rounded.sections[0]!.a1, a1, '1', 0],
    ['sampleRate', ({ rounded }) => rounded.sampleRate, row.rate, 'Hz', 0],
    ['exact.f0', ({ poles }) => poles[0]!.exact.f0, exactF0, 'Hz', 1e-8],
    ['rounded.f0', ({ poles }) => poles[0]!.rounded.f0, f0, 'Hz', 1e-9],
    ['level', ({ deviation }) => deviation.level, row.level, 'dB', 1e-6],
    ['levelAt', ({ deviation }) => deviation.levelAt, row.levelAt, 'Hz', 1e-6],
    ['phase', ({ deviation }) => deviation.phase, row.phase, 'rad', 1e-6],
    ['phaseAt', ({ deviation }) => deviation.phaseAt, row.phaseAt, 'Hz', 1e-6],
    ['noiseGain', ({ noiseGain }) => noiseGain, row.noiseGain, 'dB', 1e-8],
  ];
  for (const [name, got, value, unit, relative] of expected)
    check(`filter.single-precision.${i}.${name}`, {
      formula: 'filter/singlePrecision',
      source: { key: 'scipy', locator: 'coefficients as numpy.float32, roots in 40 digits, lfilter' },
      status: 'derived',
      kind: name === 'sampleRate' ? 'identity' : 'program',
      given: {
        order: { value: row.order, unit: '1' },
        corner: { value: row.corner, unit: 'Hz' },
        rate: { value: row.rate, unit: 'Hz' },
      },
      got: () => got(found()),
      expected: value,
      unit,
      tolerance: { relative, why: 'the same 32 bits on both sides; poles lie next to 1' },
    });
}
