/** A stretch of a line: its length over the centre, m, and its depth at both ends, over that at the closed end. */
export interface Stretch {
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/** How a line is folded: so many channels of one height, with boards of one thickness between them, m. */
export interface Folding {
  readonly channels: number;
  readonly height: number;
  readonly board: number;
}

/** How the depth of the channels of a line changes from its closed end to its mouth. It is as wide as its box throughout. */
export interface LineForm {
  /** What a sentence says of its depth: 'of one depth'. */
  readonly told: 'uniform' | 'stepped' | 'tapered';
  /** The numbers of folds for which a cuboid holds it. */
  readonly folds: (folds: number) => boolean;
  /** Stretches from the closed end on; `mouth` is the section of the mouth over that of the closed end. */
  readonly stretches: (folding: Folding, mouth: number) => readonly Stretch[];
  /** The depth after so many channels, over that at the closed end: where a channel ends, and at the fold that follows it. */
  readonly after: (channel: number, channels: number, mouth: number) => number;
  /** Whether the boards between its channels slant. */
  readonly slants: boolean;
}

export const lengthOf = ({ channels, height, board }: Folding): number => channels * height + (channels - 1) * board;

/** One section from end to end. */
export const uniform: LineForm = {
  told: 'uniform',
  folds: () => true,
  stretches: (folding) => [{ length: lengthOf(folding), from: 1, to: 1 }],
  after: () => 1,
  slants: false,
};

/** Two sections: so many channels of one depth, then the rest of another. The fold between them has the second depth. */
export const stepped = (wide: (channels: number) => number): LineForm => ({
  told: 'stepped',
  folds: (folds) => folds > 0,
  stretches: ({ channels, height, board }, mouth) => {
    const first = wide(channels);
    return [
      { length: first * height + (first - 1) * board, from: 1, to: 1 },
      { length: (channels - first) * (height + board), from: mouth, to: mouth },
    ];
  },
  after: (channel, channels, mouth) => (channel < wide(channels) ? 1 : mouth),
  slants: false,
});

/** Its section changes evenly along it. Slanting boards leave the same depth at the top and at the bottom if they are odd in number. */
export const tapered: LineForm = {
  told: 'tapered',
  folds: (folds) => folds % 2 === 1,
  stretches: (folding, mouth) => [{ length: lengthOf(folding), from: 1, to: mouth }],
  after: (channel, channels, mouth) => 1 + ((mouth - 1) * channel) / channels,
  slants: true,
};

/** Depths of a channel at its beginning and at its end, over that at the closed end of the line. */
export const depthsOf = (
  form: LineForm,
  channel: number,
  channels: number,
  mouth: number,
): readonly [begins: number, ends: number] => {
  const begins = form.after(channel, channels, mouth);
  return form.slants ? [begins, form.after(channel + 1, channels, mouth)] : [begins, begins];
};

/** A stretch of a line between two distances from its closed end. */
export function between(stretches: readonly Stretch[], begin: number, end: number): Stretch[] {
  let start = 0;
  return stretches.flatMap(({ length, from, to }) => {
    const at = (x: number) => from + ((to - from) * (x - start)) / length;
    const [low, high] = [Math.max(begin, start), Math.min(end, start + length)];
    const cut = high - low > 1e-9 ? [{ length: high - low, from: at(low), to: at(high) }] : [];
    start += length;
    return cut;
  });
}

/** The depth at a distance from the closed end, over that there. */
export function depthAt(stretches: readonly Stretch[], distance: number): number {
  let start = 0;
  for (const { length, from, to } of stretches) {
    if (distance <= start + length) return from + ((to - from) * (distance - start)) / length;
    start += length;
  }
  return stretches.at(-1)!.to;
}
