import { type EndCorrection, finiteFlange, flanged, mutualLength, type Opening } from '@airspring/core/duct';
import { metres } from './placing.js';

/** Neighbours add half as much to an end in free air as to one in a wall, since no wall mirrors them. */
const IN_FREE_AIR = 0.5;

/** End corrections of the vents of a row. */
interface Ends {
  readonly innerEnd: EndCorrection;
  readonly outerEnd: EndCorrection;
}

/**
 * End corrections of equal round vents in a row, with what the vents add to each other's ends. Every vent gets the mean of the
 * row, since the same pressure drives all of them.
 *
 * @source pritchard1960, by core's `mutualLength`; the mean, and the half for inner ends, are our own
 */
export function endsInRow(
  count: number,
  pitch: number,
  diameter: number,
  { innerEnd, outerEnd }: Ends = { innerEnd: finiteFlange, outerEnd: flanged },
): Ends {
  const neighbours = Array.from({ length: count - 1 }, (_, i) => {
    const distance = (i + 1) * pitch;
    const length = mutualLength({ diameter: metres(diameter), distance: metres(distance) });
    // Of `count` vents, `count − n` have a neighbour n places on, and as many n places back.
    return { distance, length: ((2 * (count - 1 - i)) / count) * length };
  });
  const among = (end: EndCorrection, part: number): EndCorrection => {
    const beside = (opening: Opening, k: number) =>
      neighbours.reduce((sum, { distance, length }) => sum + part * length * Math.cos(k * distance), end(opening, k));
    return count > 1 ? Object.assign(beside, end, { sources: [...end.sources, 'pritchard1960'] }) : end;
  };
  return { innerEnd: among(innerEnd, IN_FREE_AIR), outerEnd: among(outerEnd, 1) };
}
