import type { VentCell } from '@airspring/core/limit';
import { format, si } from '@airspring/core/quantity';
import { fits, found, mapOf } from '../../examples/where-a-quiet-vent-fits.js';
import { type COARSE, drawVentMap, type FINE, middles, RANGE, reading, type VentGrid } from './vent-map.js';

export type Fineness = typeof FINE | typeof COARSE;

const litres = (value: number) => si('volume', value / 1e3);
const hertz = (value: number) => si('frequency', value);

/** The cells of some columns of the map of the whale bench. */
export const columnsOf = (level: number, { columns, rows }: Fineness, from: number, to: number): readonly VentCell[] =>
  mapOf(
    si('level', level),
    middles(columns, RANGE.volume).slice(from, to).map(litres),
    middles(rows, RANGE.tuning).map(hertz),
  );

/** The whole map at once. */
export const gridOf = (level: number, fineness: Fineness): VentGrid => ({
  ...fineness,
  cells: columnsOf(level, fineness, 0, fineness.columns),
});

/** What the map shows, in one sentence. */
export function labelOf(level: number, { cells }: VentGrid): string {
  const share = cells.filter(({ verdict }) => fits(verdict)).length / cells.length;
  const wide = cells.map(({ diameter }) => diameter);
  const [least, most] = [Math.min(...wide), Math.max(...wide)].map((width) => format('length', width, 'mm'));
  return `To be quiet at ${format('level', level, 'dB')} from 30 Hz upwards, the vent must be ${least} to ${most} wide; it fits in ${Math.round(100 * share)} % of this map.`;
}

const box = { ...found, words: 'the bench' };
export const drawBenchMap = (level: number, grid: VentGrid, total: number): string =>
  drawVentMap(grid, box, labelOf(level, grid), total);

/** One vent in words, for a volume in litres and a tuning in hertz. */
export const readingOf = (level: number, volume: number, tuning: number): string =>
  mapOf(si('level', level), [litres(volume)], [hertz(tuning)])
    .map(reading)
    .join('');

/** Some cells in numbers. */
export const numbersOf = (level: number) => ({
  heads: ['air', 'tuning', 'diameter', 'length', 'pipe resonance', 'the vent'],
  rows: mapOf(si('level', level), [20, 28, 36, 44].map(litres), [20, 26, 34, 44].map(hertz)).map(
    ({ netVolume, fb, diameter, length, pipeResonance, verdict }) => [
      format('volume', netVolume, 'L'),
      format('frequency', fb, 'Hz'),
      format('length', diameter, 'mm'),
      length === undefined ? '–' : format('length', length, 'mm'),
      pipeResonance === undefined ? '–' : format('frequency', pipeResonance, 'Hz'),
      verdict,
    ],
  ),
});
