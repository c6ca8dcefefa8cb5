import { type Air, standardAir } from '@airspring/core/air';
import { type FrequencyInput, format, positive, readFields, si } from '@airspring/core/quantity';
import { type RoomMode, roomModes } from '@airspring/core/room';
import { boundsOf } from '../outline/index.js';
import { axesOf, type BoxShape } from './box-shape.js';

/** The modes of the air in a box, and what was not computed. */
export interface BoxModes {
  readonly modes: readonly RoomMode[];
  readonly notComputed?: string;
}

const modesShape = { upTo: positive('frequency') };

/**
 * The modes of the air in a box with rigid walls. In a cuboid these are all of them. In any other prism they are those along its axis, which
 * are the same for every section; those across the section are not computed, and the record says so.
 *
 * $$f_n = \frac{n\,c}{2\,\ell}$$
 *
 * | symbol | unit | meaning |
 * | --- | --- | --- |
 * | $n$ | 1 | half waves along the axis |
 * | $\ell$ | m | length of the air along it |
 * | $c$ | m/s | speed of sound |
 *
 * @validity rigid walls, an empty box; the order counts half waves along width, height and depth. A stack of several sections has none that are computed
 * @source morse1968 normal modes of a rectangular room
 * @example boxModes(shape, '1 kHz').modes[0] // along the longest edge
 */
export function boxModes({ along, inner }: BoxShape, upTo: FrequencyInput, air: Air = standardAir): BoxModes {
  const { upTo: most } = readFields('modes', { upTo }, modesShape);
  if (inner.length > 1) {
    return { modes: [], notComputed: 'The modes of a stack of several sections are not computed.' };
  }
  const { outline, from, to } = inner[0]!;
  const [[left, low], [right, high]] = boundsOf(outline);
  const isCuboid =
    outline.length === 4 && outline.every(([x, y]) => (x === left || x === right) && (y === low || y === high));
  // Across a section that is no rectangle, a size whose lowest mode lies above the limit stands for 'none of these'.
  const none = air.speedOfSound / (4 * most);
  const edges: [number, number, number] = [0, 0, 0];
  const [across, up, axis] = axesOf[along];
  edges[across] = isCuboid ? right - left : none;
  edges[up] = isCuboid ? high - low : none;
  edges[axis] = to - from;
  const [length, width, height] = edges.map((edge) => si('length', edge)) as [never, never, never];
  const modes = roomModes({ length, width, height, upTo: most }, air);
  if (isCuboid) return { modes };
  const lowest = air.speedOfSound / (2 * Math.hypot(right - left, high - low));
  const notComputed = `Modes across the section are not computed; as a rule of thumb the lowest lies above ${format('frequency', si('frequency', lowest), 'Hz', 3)}.`;
  return { modes, notComputed };
}
