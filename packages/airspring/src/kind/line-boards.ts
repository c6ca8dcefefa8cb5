import type { Solid } from '@airspring/core/space';
import type { Panel } from './build-record.js';
import { depthsOf, type LineForm } from './line-form.js';
import { metres } from './placing.js';

/** A slanting board is drawn as so many short ones, since a solid lies along the edges of its box. */
const SLICES = 12;

interface Boards {
  readonly form: LineForm;
  readonly folds: number;
  readonly board: number;
  /** Depth of the channel at the closed end, m. */
  readonly first: number;
  readonly mouth: number;
}

/** A board between two channels, m: where it begins and ends in height, and where its front is at both ends. */
interface LineBoard {
  readonly low: number;
  readonly high: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * The boards between the channels. Each leaves a gap as deep as the channel that it leads into; the last one at the bottom, below the open
 * channel.
 */
function boardsOf(
  [, height]: readonly [number, number, number],
  { form, folds, board: t, first, mouth }: Boards,
): LineBoard[] {
  const channels = folds + 1;
  // Depth of the channels in front at the bottom and at the top.
  let [bottom, top] = [t, t];
  return Array.from({ length: folds }, (_, i) => {
    const isGapBelow = (folds - i) % 2 === 1;
    const [begins, ends] = depthsOf(form, i, channels, mouth).map((one) => one * first) as [number, number];
    // A channel that ends below begins at the top.
    bottom += isGapBelow ? ends : begins;
    top += isGapBelow ? begins : ends;
    const gap = first * form.after(i + 1, channels, mouth);
    const at = (up: number) => bottom + ((top - bottom) * (up - t)) / (height - 2 * t);
    const [low, high] = isGapBelow ? [t + gap, height - t] : [t, height - t - gap];
    const one = { low, high, lower: at(low), upper: at(high) };
    bottom += t;
    top += t;
    return one;
  });
}

/** The inner boards of a line, as solids and as they are cut. */
export function lineBoards(
  edges: readonly [number, number, number],
  told: Boards,
): { solids: Solid[]; panels: Panel[] } {
  const { form, board: t } = told;
  const [width] = edges;
  const corner = (...at: number[]) => at.map(metres) as unknown as Solid['least'];
  const boards = boardsOf(edges, told);
  const solids = boards.flatMap(({ low, high, lower, upper }) => {
    const slices = form.slants ? SLICES : 1;
    return Array.from({ length: slices }, (_, k): Solid => {
      const [from, to] = [k / slices, (k + 1) / slices].map((share) => low + share * (high - low)) as [number, number];
      const near = lower + ((upper - lower) * (k + 0.5)) / slices;
      return {
        part: 'board',
        form: 'cuboid',
        least: corner(t, from, near),
        greatest: corner(width - t, to, near + t),
      };
    });
  });
  const lengths = boards.map(({ low, high, lower, upper }) => Math.hypot(high - low, upper - lower));
  const alike = [...new Set(lengths.map((one) => one.toFixed(9)))];
  const panels = alike.map((one) => ({
    name: 'inner boards of the line (width × height)',
    count: lengths.filter((length) => length.toFixed(9) === one).length,
    length: width - 2 * t,
    width: Number(one),
  }));
  return { solids, panels };
}
