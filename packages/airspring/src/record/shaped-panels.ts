import { NANOMETRE } from '@airspring/core/quantity';
import type { ShapedPanel, SpaceShape } from '@airspring/core/space';
import { axesOf, type Hole, type Panel } from '../kind/build-record.js';

/** A square cut differs from a right angle by no more than this, rad. */
const ROUNDING = 1e-9;

type Outline = ShapedPanel['outline'];

const sizeOf = (outline: Outline): readonly [across: number, up: number] => {
  const reach = (k: 0 | 1) =>
    Math.max(...outline.map((corner) => corner[k])) - Math.min(...outline.map((corner) => corner[k]));
  return [reach(0), reach(1)];
};

const isRectangle = (outline: Outline, [across, up]: readonly [number, number]): boolean =>
  outline.length === 4 && outline.every(([x, y]) => (x === 0 || x === across) && (y === 0 || y === up));

/** Whether two sizes differ by more than rounding. */
const differ = (one: readonly [number, number], other: readonly [number, number]): boolean =>
  one.some((size, k) => Math.abs(size - other[k]!) > NANOMETRE);

/** A panel of a box that is no cuboid, as it is cut. */
export function asCut(panel: ShapedPanel): Panel {
  const outer = sizeOf(panel.outline);
  const inner = sizeOf(panel.inner);
  return {
    name: panel.name,
    count: 1,
    length: panel.blank[0],
    width: panel.blank[1],
    ...(!isRectangle(panel.outline, outer) && { outline: panel.outline }),
    ...((differ(outer, panel.blank) || differ(inner, panel.blank)) && { surfaces: { outer, inner } }),
    ...(panel.angles.some((angle) => Math.abs(angle - Math.PI / 2) > ROUNDING) && {
      angles: panel.angles,
      meets: panel.meets,
    }),
    ...(panel.bent && { bent: panel.bent }),
    ...(panel.opening && { opening: panel.opening }),
  };
}

/** The panels of a box that is no cuboid, as they are cut; equal ones together. */
export function panelsOfShape(shape: SpaceShape, edges: readonly [number, number, number]): Panel[] {
  const cut = shape.panels(edges).map(asCut);
  const alike = new Map<string, Panel>();
  for (const panel of cut) {
    const { name, ...rest } = panel;
    const key = JSON.stringify(rest);
    const same = alike.get(key);
    alike.set(key, same ? { ...same, name: `${same.name} and ${name}`, count: same.count + 1 } : panel);
  }
  return [...alike.values()];
}

/** A hole measured from the edges of the panel that it is in, where that panel covers only a part of its face. */
export function onPanelOf(shape: SpaceShape, edges: readonly [number, number, number]): (hole: Hole) => Hole {
  const panels = shape.panels(edges);
  return (hole) => {
    const panel = panels.find(({ face, from, outline }) => {
      if (face !== hole.face || from === undefined) return false;
      const [across, up] = sizeOf(outline);
      return hole.across > from[0] && hole.across < from[0] + across && hole.up > from[1] && hole.up < from[1] + up;
    });
    if (panel?.from === undefined) return hole;
    const size = sizeOf(panel.outline);
    const whole = axesOf(hole.face).every((axis, k) => Math.abs(size[k]! - edges[axis]!) < NANOMETRE);
    if (whole) return hole;
    const [across, up] = panel.from;
    const board = { name: panel.name, size, from: [across, up, 0] as const };
    return { ...hole, across: hole.across - across, up: hole.up - up, board };
  };
}
