import type { Fault } from '@airspring/core/fault';
import type { Faultless } from './faultless.js';
import type { Brief, ReadBrief } from './schema.js';

const EDGES = ['width', 'height', 'depth'] as const;

/** Faults between fields that each are right alone, as far as they were read; told as they were written. */
export function faultsAcross(written: Brief, { wanted = {}, vent = {}, space = {} }: Faultless<ReadBrief>): Fault[] {
  const faults: Fault[] = [];
  const contradicts = (path: string, got: unknown, expected: string) =>
    faults.push({ code: 'inconsistent', path, got, expected, remedy: 'Correct one of the two.' });

  if (wanted.lowest !== undefined && wanted.highest !== undefined && wanted.lowest >= wanted.highest) {
    const { lowest, highest } = written.wanted;
    contradicts('wanted.lowest', lowest, `less than wanted.highest, ${highest}`);
  }
  if (vent.smallest !== undefined && vent.largest !== undefined && vent.smallest > vent.largest) {
    contradicts('vent.smallest', written.vent?.smallest, `at most vent.largest, ${written.vent?.largest}`);
  }
  const edges = EDGES.filter((edge) => space[edge] !== undefined);
  const [least] = edges.sort((a, b) => (space[a] as number) - (space[b] as number));
  if (least !== undefined && 2 * (space.panelThickness ?? 0) >= (space[least] as number)) {
    const half = `less than half of space.${least}, ${written.space[least]}`;
    contradicts('space.panelThickness', written.space.panelThickness, half);
  }
  return faults;
}
