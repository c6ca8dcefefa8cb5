import { boundedMinimum } from '@airspring/core/numeric';
import { type Frequency, type Length, si } from '@airspring/core/quantity';
import { type BraceOnPanelInput, type PlateInput, readPlate, resonancesOf } from './plate-resonances.js';

/** A panel without braces, and the bar of the one that it gets. */
export interface BestBraceInput extends Omit<PlateInput, 'braces' | 'count'>, Pick<BraceOnPanelInput, 'bar'> {
  /** The edge that it shall divide. Default: the one where it gains more. */
  readonly across?: 'width' | 'height' | undefined;
}

/** Where one brace raises the first resonance of a panel most. */
export interface BestBrace {
  readonly across: 'width' | 'height';
  /** From the left or the lower edge. */
  readonly at: Length;
  readonly without: Frequency;
  readonly frequency: Frequency;
  /** The second one over the first. */
  readonly gain: number;
}

/** How far from an edge a brace is looked for, in parts of the side; and how finely. */
const [NEAR, FINE] = [0.2, 1e-3];

/**
 * Where a brace from edge to edge raises the first resonance of a panel most: which side it divides, and where. Mostly it runs
 * along the longer side. With edges alike on both sides that is the middle; beside an edge that may not turn it is further away from it.
 *
 * @validity as `plateResonances`
 * @neglects resonances above the first: both halves of a panel that is divided in its middle have the same ones
 * @throws InputError as `plateResonances`
 * @source own derivation: the greatest first frequency of `plateResonances` over the place of the brace
 * @example bestBrace({ width: '300 mm', height: '400 mm', thickness: '18 mm', bar: { depth: '80 mm', thickness: '18 mm' } }).gain
 */
export function bestBrace({ bar, across, ...panel }: BestBraceInput): BestBrace {
  const middle = si('length', readPlate(panel)[across === 'height' ? 'height' : 'width'] / 2);
  const read = readPlate({ ...panel, braces: [{ across: across ?? 'width', at: middle, bar }] });
  const { braces, ...bare } = read;
  const without = resonancesOf(bare, 1)[0]!;
  const found = (across ? [across] : (['width', 'height'] as const)).map((across) => {
    const side = bare[across];
    const first = (at: number) =>
      resonancesOf({ ...bare, braces: [{ ...braces![0]!, across, at: si('length', at) }] }, 1)[0]!;
    const { x, value } = boundedMinimum((at) => -first(at), NEAR * side, (1 - NEAR) * side, FINE);
    return { across, at: si('length', x), frequency: si('frequency', -value) };
  });
  const best = found.reduce((one, other) => (other.frequency > one.frequency ? other : one));
  return { ...best, without, gain: best.frequency / without };
}
