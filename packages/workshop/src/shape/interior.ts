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
