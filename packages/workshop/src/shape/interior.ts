import { NANOMETRE, si } from '@airspring/core/quantity';
import { type Face, faces, type Interior, type Solid } from '@airspring/core/space';
import { boundsOf } from '../outline/index.js';
import { axesOf, type BoxShape, cuboidFaces } from './box-shape.js';
import { type Cast, profileOf } from './profile.js';

const names = ['x', 'y', 'z'] as const;

/**
 * The inside of a box as core's `fit` and `longestVent` take it. Parts stand on those of its panels that lie on a face of the cuboid
 * around it, with the same thickness as on all faces.
 *
 * @validity any shape of this floor; a slanted or bent panel holds no part
 * @source own geometry of prisms
 * @example fit({ outer: cuboidAround(shape), thickness: '18 mm', interior: interiorOf(shape), driver }).ok // true
 */
export function interiorOf(shape: BoxShape): Interior {
  const [across, up, along] = axesOf[shape.along] as readonly [0, 1, 2];
  const layers = shape.inner.map(({ outline, from, to }) => ({ profile: profileOf(outline), from, to }));
  const [low, high] = [layers[0]!.from, layers.at(-1)!.to];
  const cast: Cast = { round: false, low: [0, 0], high: [0, 0] };
  function write({ form, axis, least, greatest }: Solid): void {
    cast.round = form === 'cylinder' && axis === names[along];
    cast.low[0] = least[across];
    cast.low[1] = least[up];
    cast.high[0] = greatest[across];
    cast.high[1] = greatest[up];
  }
  /** Whether a layer has a part of a range along the axis; a flat one may lie between two layers. */
  const meets = (layer: { readonly from: number; readonly to: number }, from: number, to: number): boolean =>
    to - from > 2 * NANOMETRE
      ? layer.to > from + NANOMETRE && layer.from < to - NANOMETRE
      : layer.to >= from - NANOMETRE && layer.from <= to + NANOMETRE;

  return {
    faces: facesOf(shape),
    contains: (solid) => {
      const from = solid.least[along];
      const to = solid.greatest[along];
      if (from < low - NANOMETRE || to > high + NANOMETRE) return false;
      write(solid);
      for (let i = 0; i < layers.length; i++) {
        const layer = layers[i]!;
        if (meets(layer, from, to) && !layer.profile.holds(cast)) return false;
      }
      return true;
    },
    way: (solid, towards) => {
      const face = faces.indexOf(towards);
      const isFar = (face & 1) === 1;
      const from: number = solid.least[along];
      const to: number = solid.greatest[along];
      write(solid);
      if (face >> 1 !== along) {
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i < layers.length; i++) {
          const layer = layers[i]!;
          if (!meets(layer, from, to)) continue;
          least = Math.min(least, layer.profile.way(cast, face >> 1 === across ? 0 : 1, isFar));
        }
        return si('length', Math.max(0, least));
      }
      let end = isFar ? to : from;
      for (let n = 0; n < layers.length; n++) {
        const layer = layers[isFar ? n : layers.length - 1 - n]!;
        if (isFar ? layer.to <= end + NANOMETRE : layer.from >= end - NANOMETRE) continue;
        if (!layer.profile.holds(cast)) break;
        end = isFar ? layer.to : layer.from;
      }
      return si('length', Math.max(0, isFar ? end - to : from - end));
    },
  };
}

/** The faces of the cuboid around a box on which one of its flat panels lies: a side of a bent one is a mere line on it. */
function facesOf(shape: BoxShape): readonly Face[] {
  const names = cuboidFaces[shape.along];
  const onSides = shape.outer.flatMap(({ outline, bent }) => {
    const bounds = boundsOf(shape.outer.flatMap((layer) => layer.outline));
    return outline.flatMap((corner, i) => {
      if (bent.some(({ first, count }) => i >= first && i < first + count)) return [];
      const next = outline[(i + 1) % outline.length]!;
      return ([0, 1] as const).flatMap((k) =>
        ([0, 1] as const).flatMap((side) => {
          const at = bounds[side][k];
          return Math.abs(corner[k] - at) < NANOMETRE && Math.abs(next[k] - at) < NANOMETRE
            ? [names[2 * k + side]!]
            : [];
        }),
      );
    });
  });
  const all = new Set([...onSides, ...names.slice(4)]);
  return faces.filter((face) => all.has(face));
}

/** A hole stays this far from the joint between two panels of one face, m (common practice). */
const SEAM_PLAY = 0.002;

/**
 * The same inside for a stack, of which several panels may lie on one face: a driver or a vent stands in one of them, and its hole never
 * runs over the joint to the next one.
 */
export function clearOfSeams(shape: BoxShape, interior: Interior): Interior {
  if (shape.outer.length === 1) return interior;
  const [across, up, along] = axesOf[shape.along];
  const bounds = boundsOf(shape.outer.flatMap(({ outline }) => outline));
  const walls = shape.outer.map((layer, i) => {
    const { from, to } = shape.inner[i]!;
    const last = i === shape.outer.length - 1;
    const own = boundsOf(layer.outline);
    const inside = boundsOf(layer.within);
    // Parts stand on the faces of the cuboid alone.
    const [least, greatest] = ([0, 1] as const).map((side) =>
      ([0, 1] as const).map((k) =>
        Math.abs(own[side][k] - bounds[side][k]) < NANOMETRE ? inside[side][k] : Number.NaN,
      ),
    ) as [[number, number], [number, number]];
    return {
      least,
      greatest,
      // The ends of the box are no joint within a face.
      from: i === 0 ? from : Math.max(from, layer.from) + SEAM_PLAY,
      to: last ? to : Math.min(to, layer.to) - SEAM_PLAY,
    };
  });
  /** Whether a solid begins or ends at a wall: the search asks for solids that are a nanometre smaller. */
  const isAt = (one: number, other: number) => Math.abs(one - other) < 3 * NANOMETRE;
  const standsOn = ({ form, axis, least, greatest }: Solid) =>
    ([0, 1] as const).flatMap((k) => {
      const at = (k === 0 ? across : up)!;
      // A row of drivers is asked for by the cuboid around it.
      if (form === 'cylinder' && axis !== names[at]) return [];
      return walls.filter((wall) => isAt(least[at]!, wall.least[k]) || isAt(greatest[at]!, wall.greatest[k]));
    });
  return {
    ...interior,
    contains: (solid) =>
      interior.contains(solid) &&
      standsOn(solid).every(({ from, to }) => {
        const [low, high] = [solid.least[along!]!, solid.greatest[along!]!];
        const isBeside = high <= from - SEAM_PLAY || low >= to + SEAM_PLAY;
        return isBeside || (low >= from - NANOMETRE && high <= to + NANOMETRE);
      }),
  };
}
