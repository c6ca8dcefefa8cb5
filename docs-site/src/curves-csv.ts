import type { Met } from 'airspring';

const columns = [
  ['level at 1 m in half space, dB', 'levelHalfSpace'],
  ['cone travel peak, m', 'displacementPeak'],
  ['air speed peak, m/s', 'airSpeedPeak'],
  ['impedance, ohm', 'impedance'],
  ['greatest level, dB', 'greatestLevel'],
] as const;

/** The curves of all boxes as comma-separated values, a row a frequency. */
export function curvesCsv({ designs }: Met): string {
  const shown = designs.flatMap(({ name, curves }) =>
    columns.flatMap(([words, key]) => {
      const values = curves[key];
      return values ? [{ head: `"${name}: ${words}"`, values }] : [];
    }),
  );
  const rows = (designs[0]?.curves.frequencies ?? []).map((f, i) =>
    [f, ...shown.map(({ values }) => values[i]!)].map((value) => String(Number(value.toPrecision(6)))).join(','),
  );
  return `${[['"frequency, Hz"', ...shown.map(({ head }) => head)].join(','), ...rows].join('\n')}\n`;
}
