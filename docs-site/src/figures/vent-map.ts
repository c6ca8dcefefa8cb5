import type { VentCell, VentVerdict } from '@airspring/core/limit';
import { format } from '@airspring/core/quantity';
import { html, type Markup } from '../html.js';
import { contour, type Stretch } from './contours.js';

/** Volumes across, tunings up; both at even distances, at the middle of their cells. */
export interface VentGrid {
  readonly columns: number;
  readonly rows: number;
  /** Volume by volume, as core gives them. */
  readonly cells: readonly VentCell[];
}

/** How many volumes and tunings: as the map rests, and while the reader drags. */
export const FINE = { columns: 36, rows: 24 } as const;
export const COARSE = { columns: 18, rows: 12 } as const;
/** What is marked on it. */
export interface MarkedBox {
  readonly netVolume: number;
  readonly fb: number;
  readonly words: string;
}

/** Edges of the map: litres across, hertz up. */
export const RANGE = { volume: [12, 48], tuning: [18, 48] } as const;
const TICKS = { volume: [15, 20, 25, 30, 35, 40, 45], tuning: [20, 25, 30, 35, 40, 45] };
const margin = { top: 26, right: 40, bottom: 40, left: 8 };
const heightOf = (width: number): number => Math.round(width * (width < 500 ? 0.9 : 0.62));
const px = (value: number): string => value.toFixed(1);

/** Each area by its colour and by its pattern, and in words. */
const AREAS: readonly {
  readonly verdict: VentVerdict;
  readonly words: string;
  readonly colour: string;
  readonly pattern: string;
}[] = [
  { verdict: 'straight', words: 'fits straight', colour: 'var(--speed)', pattern: '' },
  { verdict: 'bent', words: 'fits with a bend', colour: 'var(--level)', pattern: 'M0 8L8 0' },
  { verdict: 'too long', words: 'too long', colour: 'var(--impedance)', pattern: 'M4 0V8' },
  { verdict: 'too wide', words: 'no place beside the driver', colour: 'var(--heat)', pattern: 'M0 0L8 8M0 8L8 0' },
  { verdict: 'drivers too large', words: 'no place for the driver', colour: 'var(--ghost)', pattern: 'M0 2H8M0 6H8' },
  { verdict: 'box too large', words: 'box too large', colour: 'var(--soft)', pattern: 'M0 4H8' },
  { verdict: 'no length', words: 'no length tunes it', colour: 'var(--ghost)', pattern: 'M3 3H5V5H3Z' },
];

/** The middles of the cells of a grid. */
export const middles = (count: number, [low, high]: readonly [number, number]): number[] =>
  Array.from({ length: count }, (_, i) => low + ((i + 0.5) / count) * (high - low));

/** Where a value stands between two edges, from 0 to 1. */
export const shareOf = (value: number, [low, high]: readonly [number, number]): number => (value - low) / (high - low);

const areaOf = (verdict: VentVerdict) => AREAS.find((area) => area.verdict === verdict)!;

/** A cell in one line. */
export function reading({ netVolume, fb, diameter, length, pipeResonance, verdict }: VentCell): string {
  const vent = `${format('volume', netVolume, 'L')} at ${format('frequency', fb, 'Hz')}: ${format('length', diameter, 'mm')} wide`;
  if (length === undefined || pipeResonance === undefined) return `${vent}; ${areaOf(verdict).words}.`;
  return `${vent}, ${format('length', length, 'mm')} long, as a pipe ${format('frequency', pipeResonance, 'Hz')}; ${areaOf(verdict).words}.`;
}

const patternOf = (verdict: VentVerdict, id: string): string => `${id}-${verdict.replaceAll(' ', '-')}`;

/** The areas that a map has, with their names. */
function legend(cells: readonly VentCell[], id: string): Markup {
  const there = AREAS.filter(({ verdict }) => cells.some((cell) => cell.verdict === verdict));
  return html`<p class="map-legend">${there.map(({ verdict, words }) => html`<span><svg width="22" height="14" aria-hidden="true"><rect class="swatch" width="22" height="14" fill="url(#${patternOf(verdict, id)})"/></svg> ${words}</span>`)}</p>`;
}

/** Rows of equal verdicts as one rectangle each. */
function areas({ columns, rows, cells }: VentGrid, id: string, width: number, height: number): Markup[] {
  const [across, up] = [width / columns, height / rows];
  const drawn: Markup[] = [];
  for (let row = 0; row < rows; row++) {
    for (let from = 0; from < columns; ) {
      const { verdict } = cells[from * rows + row]!;
      let to = from + 1;
      while (to < columns && cells[to * rows + row]!.verdict === verdict) to++;
      drawn.push(
        html`<rect x="${px(from * across)}" y="${px(height - (row + 1) * up)}" width="${px((to - from) * across + 0.2)}" height="${px(up + 0.2)}" fill="url(#${patternOf(verdict, id)})"/>`,
      );
      from = to;
    }
  }
  return drawn;
}

/** Diameters at which a line is drawn, mm: four to nine of them. */
function diametersOf(cells: readonly VentCell[]): number[] {
  const all = cells.map(({ diameter }) => diameter * 1e3);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const step = [1, 2, 5, 10, 20].find((size) => (high - low) / size <= 8) ?? 50;
  return Array.from(
    { length: Math.floor(high / step) - Math.floor(low / step) },
    (_, i) => (Math.floor(low / step) + 1 + i) * step,
  );
}

/** The map as SVG, `total` pixels wide. */
export function drawVentMap(grid: VentGrid, box: MarkedBox, label: string, total: number): string {
  const { columns, rows, cells } = grid;
  const id = `map-${total}`;
  const [width, height] = [total - margin.left - margin.right, heightOf(total) - margin.top - margin.bottom];
  const x = (litres: number) => width * shareOf(litres, RANGE.volume);
  const y = (hertz: number) => height * (1 - shareOf(hertz, RANGE.tuning));
  const place = ([x0, y0, x1, y1]: Stretch) => [
    ((x0 + 0.5) / columns) * width,
    (1 - (y0 + 0.5) / rows) * height,
    ((x1 + 0.5) / columns) * width,
    (1 - (y1 + 0.5) / rows) * height,
  ];
  const lines = diametersOf(cells).flatMap((diameter) => {
    const stretches = contour(columns, rows, (i, k) => cells[i * rows + k]!.diameter * 1e3, diameter).map(place);
    if (stretches.length === 0) return [];
    const d = stretches
      .map((points) => `M${px(points[0]!)} ${px(points[1]!)}L${px(points[2]!)} ${px(points[3]!)}`)
      .join('');
    // Away from the edges, and from the box that is marked.
    const far = (points: readonly number[]) =>
      Math.abs(points[0]! - 0.4 * width) + (points[1]! < 14 || points[1]! > height - 14 ? width : 0);
    const at = stretches.reduce((best, points) => (far(points) < far(best) ? points : best));
    return [{ d, words: `${diameter} mm`, at }];
  });
  const [boxX, boxY] = [x(box.netVolume * 1e3), y(box.fb)];
  return html`<svg class="plot vent-map" role="img" aria-label="${label}" width="${total}" height="${heightOf(total)}" viewBox="0 0 ${total} ${heightOf(total)}" data-left="${margin.left}" data-top="${margin.top}" data-width="${width}" data-height="${height}" xmlns="http://www.w3.org/2000/svg"><defs>${AREAS.map(({ verdict, colour, pattern }) => html`<pattern id="${patternOf(verdict, id)}" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="ground" width="8" height="8" fill="${colour}"/><path d="${pattern}" stroke="${colour}" stroke-width="1.1"/></pattern>`)}</defs><g transform="translate(${margin.left} ${margin.top})">
<g shape-rendering="crispEdges">${areas(grid, id, width, height)}</g>
${lines.map(({ d }) => html`<path class="contour" d="${d}"/>`)}
${lines.map(({ words, at }) => html`<text class="halo soft" x="${px(at[0]!)}" y="${px(at[1]! + 4)}" text-anchor="middle">${words}</text>`)}
${TICKS.volume.map((at) => html`<path class="tick" d="M${px(x(at))} ${px(height)}v5"/><text class="soft" x="${px(x(at))}" y="${px(height + 19)}" text-anchor="middle">${at}</text>`)}
${TICKS.tuning.map((at) => html`<path class="tick" d="M${px(width)} ${px(y(at))}h4"/><text class="soft" x="${px(width + 8)}" y="${px(y(at) + 4)}">${at}</text>`)}
<text class="soft" x="${px(width)}" y="${px(height + 36)}" text-anchor="end">air in the box, L</text>
<text class="soft" x="${px(width + margin.right - 2)}" y="-10" text-anchor="end">tuning, Hz</text>
<path class="pointer" d="M0 0"/>
<g transform="translate(${px(boxX)} ${px(boxY)})"><circle class="marked" r="5"/><text class="halo words" x="9" y="-9" fill="var(--ink)">${box.words}</text></g></g></svg>${legend(cells, id)}`
    .markup;
}
