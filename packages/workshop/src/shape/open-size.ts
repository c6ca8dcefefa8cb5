import { type Impossible, impossible } from '@airspring/core/fault';
import { bracketedRoot } from '@airspring/core/numeric';
import {
  format,
  type Length,
  type LengthInput,
  positive,
  readFields,
  si,
  type VolumeInput,
} from '@airspring/core/quantity';
import { type ContentsInput, innerVolumeFor } from '@airspring/core/space';
import { type BoxShape, type BoxShapeInput, boxShape } from './box-shape.js';
import { innerVolumeOf } from './volumes.js';

export interface OpenSizeInput {
  /** The box for each value of the size that is open. */
  readonly box: (size: Length) => BoxShapeInput;
  /** Where the size may lie. A larger size must not hold less. */
  readonly from: LengthInput;
  readonly to: LengthInput;
  readonly netVolume: VolumeInput;
  readonly contents?: ContentsInput;
}

/** A box of the wanted air, and the size that was open. */
export interface OpenSize {
  readonly ok: true;
  readonly size: Length;
  readonly shape: BoxShape;
}

const range = { from: positive('length'), to: positive('length') };
const litres = (volume: number): string => format('volume', si('volume', volume), 'L', 4);
const millimetres = (size: number): string => format('length', si('length', size), 'mm', 4);

/**
 * The one size of a box that is left open, for a wanted net volume: its length, its height, the slant of a side, or any other.
 *
 * $$V_i(s) = V_i$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $s$ | m | the size |
 * | $V_i$ | m³ | inner volume for the wanted net volume with its contents |
 *
 * @validity a volume that does not fall as the size grows. Where it grows in proportion, as with a length, the size is exact; otherwise
 * it is bracketed to the last digits
 * @returns the size and the box, or why none has that volume, in numbers
 * @throws InputError of the box, the volume and the contents
 * @source brent1973 ch. 4, for the bracket
 * @example openSize({ box: (length) => ({ along: 'width', outer: { ...wedge({ across: '400 mm', up: '340 mm' }), length }, thickness: '18 mm' }), from: '100 mm', to: '2 m', netVolume: '30 L' })
 */
export function openSize({ box, from, to, netVolume, contents }: OpenSizeInput): OpenSize | Impossible {
  const { from: least, to: most } = readFields('size', { from, to }, range);
  const wanted = innerVolumeFor({ netVolume, ...(contents && { contents }) });
  const at = (size: number) => boxShape(box(si('length', size)));
  /** No panels that leave nothing hold any air. */
  const heldAt = (size: number): number => {
    const shape = at(size);
    return shape.ok ? innerVolumeOf(shape) : 0;
  };
  const [low, high] = [heldAt(least), heldAt(most)];
  if (high < wanted) {
    const whole = at(most);
    if (!whole.ok) return whole;
    const text = `The air and what is in it take ${litres(wanted)} inside. At the greatest size, ${millimetres(most)}, the box holds ${litres(high)}. Allow a greater size, or less air.`;
    return impossible('too-small', text);
  }
  if (low > wanted) {
    const text = `The air and what is in it take ${litres(wanted)} inside. Even at the least size, ${millimetres(least)}, the box holds ${litres(low)}. Allow a smaller size, or more air.`;
    return impossible('too-large', text);
  }
  const root = bracketedRoot((size) => heldAt(size) - wanted, least, most);
  if (!root.ok) return root;
  const shape = at(root.x);
  return shape.ok ? { ok: true, size: si('length', root.x), shape } : shape;
}
