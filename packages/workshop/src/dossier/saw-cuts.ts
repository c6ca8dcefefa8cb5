import type { Nesting, SawCut } from '../nesting/index.js';
import type { Says } from './says.js';

const NANOMETRE = 1e-9;

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

/** The cuts of a sheet in their order, a row each: where the saw stands on the sheet, and how wide the piece before the blade is. */
export const cutRows = ({ cuts }: Nesting['sheets'][number], kerf: number, says: Says): string[][] =>
  cuts.map((cut, i) => {
    const { across, at, from, to } = cut;
    const begin = beginOf(cut, cuts.slice(0, i), kerf);
    const [edge, along] = across === 'x' ? ['left', 'upright'] : ['lower', 'along'];
    return [
      String(i + 1),
      along,
      `${says(at)} from the ${edge} edge`,
      `${says(from)} to ${says(to)}`,
      says(at - begin),
    ];
  });
