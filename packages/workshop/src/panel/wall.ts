import { type Face, faces } from '@airspring/core/space';
import type { BoxOfPanels } from './panel-box-input.js';

/** How a wall is made, from the outer edge of the box inwards, m. */
export interface Wall {
  /** How far the panel stands back. */
  readonly recess: number;
  readonly panel: number;
  readonly layer: number;
}

export const wallOf = ({ recess, thickness, innerLayer }: BoxOfPanels, face: Face): Wall => ({
  recess: recess[face] ?? 0,
  panel: thickness[faces.indexOf(face)]!,
  layer: innerLayer[face] ?? 0,
});

export const depthOf = ({ recess, panel, layer }: Wall): number => recess + panel + layer;

/** Whether one panel covers the other where both meet. */
export const covers = ({ covering }: BoxOfPanels, one: Face, other: Face): boolean =>
  covering.indexOf(one) < covering.indexOf(other);
