/** The air and the readings that the checks of rooms share. */
import { standardAir } from '@airspring/core/air';
import type { FilterKernel } from '@airspring/core/filter';
import type { ComplexColumn } from '@airspring/core/numeric';
import { frequencyGrid, si } from '@airspring/core/quantity';
import fixtures from './room.json' with { type: 'json' };

export { default as fixtures } from './room.json' with { type: 'json' };

/** Air at 20 °C in the round figures of the fixtures. */
export const roundAir = {
  ...standardAir,
  density: si('density', fixtures.density),
  speedOfSound: si('speed', fixtures.speedOfSound),
};

export const metres = (value: number) => si('length', value);
export const hertz = (value: number) => si('frequency', value);

/** What a kernel multiplies by. */
export function multiplied(kernel: FilterKernel, frequencies: readonly number[]): ComplexColumn {
  const grid = frequencyGrid(frequencies);
  const column = { re: new Float64Array(grid.length).fill(1), im: new Float64Array(grid.length) };
  kernel(grid, column);
  return column;
}

export const numpy = { key: 'numpy', locator: 'room.py, in plain complex numbers' } as const;
export const scipy = { key: 'scipy', locator: 'room.py: buttap and freqs_zpk, brentq' } as const;
export const byProgram = { status: 'derived', kind: 'program' } as const;
