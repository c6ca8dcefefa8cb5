import { depthsOf, type LineForm, lengthOf, type Stretch } from './line-form.js';
import type { Phrase } from './phrase.js';

/** Air in a line over its section at the closed end, m. */
export const spread = (stretches: readonly Stretch[]): number =>
  stretches.reduce((sum, { length, from, to }) => sum + (length * (from + to)) / 2, 0);

/**
 * A line that is folded in a box: channels side by side, from the front to the back, as high and as wide as the box. Along its centre it
 * is as long as its channels and the boards between them, L = n h + (n − 1) t. Lengths in m.
 */
export function foldedLine(form: LineForm, folds: number, board: number) {
  const channels = folds + 1;
  const folding = (length: number) => ({ channels, height: (length - folds * board) / channels, board });
  const lengthIn = (height: number): number => lengthOf({ channels, height, board });
  /** Depths of all channels over that of the closed end: what they fill of the depth of the box. */
  const across = (mouth: number): number =>
    Array.from({ length: channels }, (_, i) => depthsOf(form, i, channels, mouth)).reduce(
      (sum, [begins, ends]) => sum + (begins + ends) / 2,
      0,
    );
  /** Depth at the closed end in a box of a depth. */
  const depthIn = (depth: number, mouth: number): number => (depth - folds * board) / across(mouth);
  /** The boards take so much of the air of the box, for a depth at the closed end. */
  const takenBy = (width: number, height: number, depth: number, mouth: number): number =>
    Array.from({ length: folds }, (_, i) => height - depth * form.after(i + 1, channels, mouth)).reduce(
      (sum, left) => sum + board * width * left,
      0,
    );
  return { channels, folding, lengthIn, across, depthIn, takenBy };
}

/** What a stated place of the driver asks of its channel, and the greatest length of the line and height of a channel that there may be. */
interface Channel {
  /** As a share of the length. */
  readonly at: number;
  /** How far the middle of the driver must stay from both ends. */
  readonly clear: number;
  readonly folds: number;
  readonly board: number;
  readonly longest: number;
  readonly height: number;
}

/** The height of the channel that keeps both ends clear of the driver, as a sentence, where the space and the length of the line leave less. */
export function channelFor({ at, clear, folds, board, longest, height }: Channel): Phrase | undefined {
  const channels = folds + 1;
  const boards = folds * board;
  const least = Math.max((clear / at - boards) / channels, (clear + at * boards) / (1 - at * channels));
  const most = Math.min((longest - boards) / channels, height);
  if (!(least > most)) return undefined;
  return [
    `A driver at ${at} of the length (line.driverAt) must keep its middle `,
    [clear, 'length'],
    ` from both ends of its channel. With ${folds} ${folds === 1 ? 'fold' : 'folds'} that takes a channel `,
    [least, 'length'],
    ' high; in this brief no channel is higher than ',
    [most, 'length'],
    '.',
  ];
}
