import { capital, type Dimension, type Drawing, millimetres as mm } from './drawing.js';

/** A flat board whose outer surface is no rectangle, m. */
export interface OutlinedBoard {
  readonly name: string;
  readonly thickness: number;
  /** Its corners; an arc is many of them. */
  readonly outline: readonly (readonly [across: number, up: number])[];
}

/** Corners that turn by less are those of an arc, rad. */
const ARC = (16 * Math.PI) / 180;

/** The corners at which an outline turns sharply. */
function turnsOf(outline: OutlinedBoard['outline']): OutlinedBoard['outline'] {
  return outline.filter(([x, y], i) => {
    const [before, after] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!];
    const turn = Math.atan2(after[1] - y, after[0] - x) - Math.atan2(y - before[1], x - before[0]);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > ARC;
  });
}

const distinct = (all: readonly number[]): number[] =>
  [...new Map(all.map((at) => [Math.round(at * 1e4), at])).values()].sort((a, b) => a - b);

/**
 * A board by its outline, with the places of its corners counted from the lower left.
 *
 * @example toSvg(outlineDrawing({ name: 'left', thickness: 0.015, outline: [[0, 0], [0.36, 0], [0.2, 0.48], [0, 0.48]] }))
 */
export function outlineDrawing({ name, thickness, outline }: OutlinedBoard): Drawing {
  const least = [0, 1].map((k) => Math.min(...outline.map((corner) => corner[k]!))) as [number, number];
  const from = outline.map(([x, y]) => [x - least[0], y - least[1]] as const);
  const size = [0, 1].map((k) => Math.max(...from.map((corner) => corner[k]!))) as [number, number];
  const turns = turnsOf(from);
  const running = (k: 0 | 1): Dimension => ({
    kind: 'running',
    along: k === 0 ? 'x' : 'y',
    ends: distinct([0, ...turns.map((corner) => corner[k]), size[k]]),
    beside: 0,
    side: k === 0 ? 'below' : 'left',
    row: 0,
  });
  const sizes = `${mm(size[0])} × ${mm(size[1])}`;
  return {
    title: `${capital(name)}: ${sizes} × ${mm(thickness)} mm`,
    subtitle: 'outer surface; lengths in mm',
    description: `The ${name}, ${sizes} mm around, with ${turns.length} corners.`,
    shapes: [{ purpose: 'cut', form: 'path', closed: true, corners: from.map((at) => ({ at })) }],
    dimensions: [running(0), running(1)],
    labels: [],
    callouts: [],
  };
}
