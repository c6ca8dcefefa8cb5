import type { ChainColumns, Law, Line } from '../network/index.js';
import { type ComplexColumn, complexColumn } from '../numeric/index.js';
import { logarithmicGrid } from '../quantity/index.js';
import { type Curves, jumpFault, memoryFault, notFinite } from './curves.js';
import { type LawResult, tried } from './law.js';
import { lineLaws } from './line-laws.js';
import { phaseFault } from './phase-of-size.js';
import { parameterSlopeFault, slopeFault } from './slope.js';

/** Values and frequencies for trying an element over frequency. */
export interface LawElementTrial {
  /** One number for each of its parameters. */
  readonly values: readonly number[];
  /** Hz; default 2 Hz to 20 kHz. */
  readonly frequencies?: Float64Array;
}

/** The place of the element's parameters among the values of the trial. */
const AT = 3;

/** Columns that an element fills. */
export function elementCurves(element: Law | Line, values: readonly number[], at = AT): Curves {
  const all = Float64Array.from([...new Array<number>(at).fill(Number.NaN), ...values, Number.NaN]);
  return (frequencies) => {
    const column = () => complexColumn(frequencies.length);
    if (element.kind === 'law') {
      const out = column();
      element.fill(all, at, frequencies, out);
      return [out];
    }
    const chain: ChainColumns = { A: column(), B: column(), C: column(), D: column() };
    element.fill(all, at, frequencies, chain);
    return [chain.A, chain.B, chain.C, chain.D];
  };
}

/**
 * The laws of every element over frequency, including your own.
 *
 * It is finite and passive: a part without a source gives no power at any frequency, so the real part of its admittance or
 * impedance is not negative (@source desoer1969 ch. 9, positive real functions). It has no memory and no jumps, since it is a
 * formula that is analytic in frequency. Its phase has the sign that the rise of its size asks for, as that of every passive part
 * (@source bode1945 ch. 14). Its slopes, by frequency and by its parameters, are the derivatives of what it fills,
 * since delays and gradients are read from them. Each of its parameters has an effect. A line also obeys the laws of two-ports: it is reciprocal, and it is passive, whatever
 * is connected to its far end; far below its first resonance it is a mass where it is open and a spring where it is shut.
 *
 * @validity parameters for which the element is meant
 * @neglects whether the formula describes the real part, which no numbers can show; a lie between two of the frequencies
 * @returns one result for each law
 * @source desoer1969 (positive real functions; reciprocity)
 * @example lawElementLaws(losslessLine('duct', ['box', 'ground']), { values: [2e5, 0.001] })
 */
export function lawElementLaws(
  element: Law | Line,
  { values, frequencies = logarithmicGrid(2, 20_000, 301) }: LawElementTrial,
): readonly LawResult[] {
  const curves = elementCurves(element, values);
  const extent = `${frequencies.length} frequencies`;
  const of = (law: string, fault: () => string | undefined) => tried(law, extent, fault);
  return [
    of('as many values as parameters', () =>
      values.length === element.parameters.length
        ? undefined
        : `${values.length} values for ${element.parameters.join(', ')}`,
    ),
    of('finite', () => notFinite(curves(frequencies), frequencies)),
    of('without memory', () => memoryFault(curves, frequencies)),
    of('no jump', () => jumpFault(curves, frequencies)),
    of('changes nothing that it reads', () => changesInputs(element, values, frequencies)),
    of('reads its own slots', () => {
      const [here, there] = [curves(frequencies), elementCurves(element, values, 0)(frequencies)];
      return here.every((column, c) => equal(column, there[c] as ComplexColumn))
        ? undefined
        : 'its numbers change when its slots are elsewhere';
    }),
    of('each parameter matters', () => {
      const base = curves(frequencies);
      const idle = element.parameters.find((_, k) => {
        const moved = values.map((value, i) => (i === k ? (value === 0 ? 1e-3 : 1.1 * value) : value));
        return elementCurves(element, moved)(frequencies).every((column, c) => equal(column, base[c] as ComplexColumn));
      });
      return idle === undefined ? undefined : `${idle} changes nothing`;
    }),
    ...(element.kind === 'line'
      ? lineLaws(curves, frequencies)
      : [
          of('gives out no power', () => {
            const [column] = curves(frequencies) as [ComplexColumn];
            const i = frequencies.findIndex((_, k) => {
              const [re, im] = [column.re[k]!, column.im[k]!];
              return !(re >= -1e-12 * Math.abs(im));
            });
            return i < 0 ? undefined : `its real part is ${column.re[i]} at ${frequencies[i]} Hz`;
          }),
          of('its phase follows its size', () => phaseFault(curves(frequencies)[0] as ComplexColumn, frequencies)),
          of('its slope is that of its values', () => slopeFault(element, values, curves, frequencies)),
          of('its slopes by parameters are those of its values', () =>
            parameterSlopeFault(element, values, (own) => elementCurves(element, own), frequencies),
          ),
        ]),
  ];
}

const equal = (a: ComplexColumn, b: ComplexColumn): boolean =>
  a.re.every((value, i) => Object.is(value, b.re[i])) && a.im.every((value, i) => Object.is(value, b.im[i]));

/** Values, frequencies and the places beyond the last frequency belong to others and must not be changed. */
function changesInputs(element: Law | Line, values: readonly number[], frequencies: Float64Array): string | undefined {
  const [own, asked] = [Float64Array.from(values), frequencies.slice()];
  const column = () => {
    const longer = complexColumn(asked.length + 1);
    longer.re[asked.length] = 7;
    return longer;
  };
  const chain: ChainColumns = { A: column(), B: column(), C: column(), D: column() };
  if (element.kind === 'law') element.fill(own, 0, asked, chain.A);
  else element.fill(own, 0, asked, chain);
  if (!own.every((value, i) => Object.is(value, values[i]))) return 'its values are changed';
  if (!asked.every((value, i) => Object.is(value, frequencies[i]))) return 'it changes the frequencies';
  const beyond = Object.values(chain).some(({ re, im }) => re[asked.length] !== 7 || im[asked.length] !== 0);
  return beyond ? 'it writes beyond the last frequency' : undefined;
}
