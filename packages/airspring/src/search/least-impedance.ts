import { type ComplexColumn, complexColumn } from '@airspring/core/numeric';
import { logarithmicGrid } from '@airspring/core/quantity';
import type { Job } from '../job/job.js';
import { loadRange } from '../job/load.js';
import type { compileVariant } from './compiled-variant.js';
import { compileGreatest } from './greatest.js';

const LOAD_POINTS = 48;

/** The least impedance of the box whose numbers are loaded, without the source resistance. */
export function compileLeastImpedance(
  { wanted, amplifier }: Job,
  { probes, sweep }: ReturnType<typeof compileVariant>,
) {
  const grid = logarithmicGrid(...loadRange(wanted.highest), LOAD_POINTS);
  const greatestOf = compileGreatest(grid);
  const columns = probes.map(() => complexColumn(LOAD_POINTS));
  const { re, im } = columns[probes.indexOf('current')] as ComplexColumn;
  const admittances = new Float64Array(LOAD_POINTS);
  return (): number => {
    sweep(grid, columns);
    for (let i = 0; i < LOAD_POINTS; i++) {
      const size = re[i]! ** 2 + im[i]! ** 2;
      admittances[i] = 1 / Math.hypot(re[i]! / size - amplifier.sourceResistance, im[i]! / size);
    }
    return 1 / greatestOf(admittances, 0);
  };
}
