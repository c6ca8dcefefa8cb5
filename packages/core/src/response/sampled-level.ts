import type { ComplexColumn } from '../numeric/index.js';
import { turns } from './extremum.js';
import type { LevelOf } from './level.js';

/** Samples of a level over frequency, with the tops and dips between them. */
export interface SampledLevel {
  readonly level: LevelOf;
  readonly grid: ArrayLike<number>;
  readonly levels: ArrayLike<number>;
}

/** Samples a level on a grid and adds every top and dip between the samples. `columns` are those of all probes there. */
export function sampledLevel(level: LevelOf, grid: Float64Array, columns: readonly ComplexColumn[]): SampledLevel {
  const levels = level.column(grid, columns);
  const turned = [...turns(grid, levels, 1, level.slope), ...turns(grid, levels, -1, level.slope)];
  if (turned.length === 0) return { level, grid, levels };
  const all = new Float64Array(grid.length + turned.length);
  all.set(grid);
  all.set(turned, grid.length);
  all.sort();
  // Both rise, so that one walk along the grid finds the samples among them; only the turns are worked out.
  let next = 0;
  return { level, grid: all, levels: all.map((f) => (f === grid[next] ? levels[next++]! : level.at(f))) };
}
