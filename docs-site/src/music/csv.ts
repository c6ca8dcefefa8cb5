import { type BoxAccount, verdicts } from './account.js';
import type { Heard } from './heard.js';

/** The timeline as a table: a row for each slice, SI units. */
export function timelineCsv(heard: Heard, accounts: readonly BoxAccount[], drive: number): string {
  const columns = heard.boxes.flatMap((box, i) => {
    const name = `${'AB'[i]} ${box.short}`;
    const each = verdicts(box, drive);
    const peak = (output: string, words: string) => {
      const values = box.peak[output];
      return values
        ? [{ head: `${name}: ${words}`, cell: (k: number) => String(Number((drive * values[k]!).toPrecision(6))) }]
        : [];
    };
    const { rise } = accounts[i] ?? {};
    return [
      ...peak('ventAirSpeed', 'air speed peak, m/s'),
      ...(each ? [{ head: `${name}: vent`, cell: (k: number) => each[k]! }] : []),
      ...(each
        ? [{ head: `${name}: tone of the air in the vent, Hz`, cell: (k: number) => box.tone[k]!.toFixed(1) }]
        : []),
      ...peak('displacement', 'cone travel peak, m'),
      ...peak('voltage', 'voltage peak, V'),
      ...peak('current', 'current peak, A'),
      ...(rise ? [{ head: `${name}: coil above the air, K`, cell: (k: number) => rise[k]!.toFixed(2) }] : []),
    ];
  });
  const count = heard.boxes[0]?.tone.length ?? 0;
  const heads = ['"from, s"', ...columns.map(({ head }) => `"${head.replaceAll('"', '""')}"`)];
  const rows = Array.from({ length: count }, (_, k) => [
    (k * heard.slice).toFixed(1),
    ...columns.map(({ cell }) => cell(k)),
  ]);
  return `${[heads, ...rows].map((row) => row.join(',')).join('\n')}\n`;
}
