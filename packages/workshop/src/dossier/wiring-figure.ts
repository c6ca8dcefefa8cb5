import type { Work } from './work.js';

const STEP = 64;
const ROW = 46;

/** One voice coil as a circle with its signs: where a branch of them stands, how far along it. */
const coil = (x: number, y: number): string =>
  `<circle cx="${x}" cy="${y}" r="15"/><text x="${x - 20}" y="${y - 7}">+</text><text x="${x + 20}" y="${y - 7}">−</text>`;

/** Branches of voice coils in series, side by side, between the two terminals of the amplifier. */
export function wiringFigure({ drivers: { series, parallel } }: Pick<Work, 'drivers'>): string {
  const left = 70;
  const right = left + STEP * series + 20;
  const rows = Array.from({ length: parallel }, (_, k) => 34 + ROW * k);
  const branch = (y: number) => {
    const centres = Array.from({ length: series }, (_, k) => left + STEP * (k + 0.5) + 10);
    const stops = [left, ...centres.flatMap((x) => [x - 15, x + 15]), right];
    const wires = stops.flatMap((x, i) => (i % 2 === 0 ? [`M${x} ${y}H${stops[i + 1]}`] : []));
    return `<path d="${wires.join('')}"/>${centres.map((x) => coil(x, y)).join('')}`;
  };
  const [first, last] = [rows[0]!, rows.at(-1)!];
  const bottom = last + 44;
  const frame = `<path d="M20 ${first}H${left}V${last}M${right} ${last}V${first}M${right} ${last}V${bottom}H20"/>`;
  const words = `${parallel > 1 ? `${parallel} branches side by side, ` : ''}${series > 1 ? `${series} voice coils one after the other` : 'one voice coil'}${parallel > 1 ? ' each' : ''}`;
  return `<svg class="wiring" role="img" aria-label="${words}" viewBox="0 0 ${right + 20} ${bottom + 16}" width="${((right + 20) / 4).toFixed(0)}mm" xmlns="http://www.w3.org/2000/svg">${frame}${rows.map(branch).join('')}<circle class="end" cx="20" cy="${first}" r="4"/><circle class="end" cx="20" cy="${bottom}" r="4"/><text x="20" y="${first - 9}">+</text><text x="20" y="${bottom - 9}">−</text></svg>`;
}
