import type { Impossible } from '@airspring/core/fault';
import { NANOMETRE, si } from '@airspring/core/quantity';
import type { Interior, ShapeChoice, SpaceShape } from '@airspring/core/space';
import { areaOf } from '../outline/index.js';
import { type Along, axesOf, type BoxShape, boxShape, cuboidFaces } from './box-shape.js';
import { clearOfSeams, interiorOf } from './interior.js';
import { panelsOf } from './panels.js';
import type { Section } from './section.js';
import { innerVolumeOf, outerVolumeOf } from './volumes.js';

export type Space = Parameters<ShapeChoice['shape']>[1];

/** A section with its length along the axis, m; one of several is open. */
export interface Drawn {
  readonly section: Section;
  readonly length?: number | undefined;
}

/** Longer than any panel is thick, so that the panels across the axis leave some air, m. */
const LONG = 10;

/** A volume over that of the cuboid: in proportion up to a knee, where the open layer begins, and beyond it by what its section adds. */
interface Volumes {
  readonly of: (cuboid: number) => number;
  readonly inverse: (volume: number) => number;
}
function volumesFrom(cuboid: number, volume: number, share: number): Volumes {
  return {
    of: (at) => (at < cuboid ? (at * volume) / cuboid : volume + (at - cuboid) * share),
    inverse: (at) => (at < volume ? (at * cuboid) / volume : cuboid + (at - volume) / share),
  };
}

/** The shape of sections that stand on each other and fill a space across the axis, and of which one may have any length along it. */
export function drawnOut(
  layers: readonly Drawn[],
  along: Along,
  called: SpaceShape['called'],
  { outer, panelThickness: thickness }: Space,
): SpaceShape | Impossible {
  const open = layers.findIndex(({ length }) => length === undefined);
  const fixed = layers.reduce((sum, { length = 0 }) => sum + length, 0);
  const shapeOf = (length: number): BoxShape | Impossible =>
    boxShape({
      along,
      outer: layers.map((layer) => ({ ...layer.section, length: si('length', layer.length ?? length - fixed) })),
      thickness: si('length', thickness),
    });
  const whole = shapeOf(fixed + LONG);
  if (!whole.ok) return whole;
  const [across, up, axis] = axesOf[along];
  const around = outer[across]! * outer[up]!;
  const within = (outer[across]! - 2 * thickness) * (outer[up]! - 2 * thickness);
  const [own, air] = [whole.outer[open]!, whole.inner[open]!];
  const [ownArea, airArea] = [areaOf(own.outline), areaOf(air.outline)];
  // Where nothing else is in the stack, there is none of it without the open layer.
  const alone = layers.length === 1;
  const least = alone ? 2 * thickness : fixed + LONG - (air.to - air.from);
  const outerVolumes = alone
    ? volumesFrom(0, 0, ownArea / around)
    : volumesFrom(around * fixed, outerVolumeOf(whole) - ownArea * LONG, ownArea / around);
  const innerVolumes = alone
    ? volumesFrom(0, 0, airArea / within)
    : volumesFrom(
        within * (least - 2 * thickness),
        innerVolumeOf(whole) - airArea * (air.to - air.from),
        airArea / within,
      );
  const made = (length: number): BoxShape | undefined => {
    const shape = length > least + NANOMETRE ? shapeOf(length) : undefined;
    return shape?.ok ? shape : undefined;
  };
  let last: { readonly length: number; readonly interior: Interior } | undefined;
  return {
    called,
    open: along,
    faces: interiorOf(whole).faces,
    airIn: innerVolumes.of,
    cuboidFor: innerVolumes.inverse,
    outerIn: outerVolumes.of,
    interior: (edges) => {
      const length = edges[axis]!;
      if (last?.length !== length) {
        const shape = made(length);
        // Between panels that leave nothing, no part stands.
        const none: Interior = { faces: cuboidFaces[along], contains: () => false, way: () => si('length', 0) };
        last = { length, interior: shape ? clearOfSeams(shape, interiorOf(shape)) : none };
      }
      return last.interior;
    },
    panels: (edges) => {
      const shape = made(edges[axis]!);
      return shape ? panelsOf(shape) : [];
    },
    prisms: (edges) => {
      const shape = made(edges[axis]!);
      return (
        shape && { along, layers: shape.outer.map(({ outline, from, to, bent }) => ({ outline, from, to, bent })) }
      );
    },
  };
}
