import { NANOMETRE } from '@airspring/core/quantity';
import type { Nesting, SawCut } from '../nesting/index.js';
import type { Says } from './says.js';

/** Where the piece that a cut divides begins: behind the last cut in the same direction that crosses its way, or at the edge of the sheet. */
function beginOf(cut: SawCut, before: readonly SawCut[], kerf: number): number {
  const ends = before
    .filter(
      ({ across, at, from, to }) =>
        across === cut.across &&
        at + kerf <= cut.at + NANOMETRE &&
        from <= cut.from + NANOMETRE &&
        to >= cut.to - NANOMETRE,
    )
    .map(({ at }) => at + kerf);
  return Math.max(0, ...ends);
}

/** The cuts of a sheet in their order: where the saw stands on the sheet, and how wide the piece before the blade is. */
export const cutsTold = ({ cuts }: Nesting['sheets'][number], kerf: number, says: Says): string[] =>
  cuts.map((cut, i) => {
    const begin = beginOf(cut, cuts.slice(0, i), kerf);
    return `${says(cut.at)} from the ${cut.across === 'x' ? 'left' : 'lower'} edge; ${says(cut.at - begin)}`;
  });
