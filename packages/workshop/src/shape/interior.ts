import { si } from '@airspring/core/quantity';
import { type Face, faces, type Interior, type Solid } from '@airspring/core/space';
import { boundsOf } from '../outline/index.js';
import { axesOf, type BoxShape, cuboidFaces } from './box-shape.js';
import { type Cast, type Profile, profileOf } from './profile.js';

/** Lengths that are no more than rounding, m. */
const NEAR = 1e-9;
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
  const castOf = ({ form, axis, least, greatest }: Solid): Cast => ({
    round: form === 'cylinder' && axis === names[along],
    low: [least[across], least[up]],
    high: [greatest[across], greatest[up]],
  });
  /** The layers that a range along the axis meets. */
  const met = (from: number, to: number): readonly { readonly profile: Profile }[] => {
    const some = layers.filter((layer) => layer.to > from + NEAR && layer.from < to - NEAR);
    return some.length > 0
      ? some
      : layers.filter((layer) => layer.to >= from - NEAR && layer.from <= to + NEAR).slice(0, 1);
  };
  return {
    faces: facesOf(shape),
    contains: (solid) => {
      const [from, to] = [solid.least[along], solid.greatest[along]];
      if (from < low - NEAR || to > high + NEAR) return false;
      const cast = castOf(solid);
      return met(from, to).every(({ profile }) => profile.holds(cast));
    },
    way: (solid, towards) => {
      const face = faces.indexOf(towards);
      const [axis, isFar] = [face >> 1, (face & 1) === 1];
      const cast = castOf(solid);
      const [from, to] = [solid.least[along], solid.greatest[along]];
      if (axis !== along) {
        const way = (profile: Profile) => profile.way(cast, axis === across ? 0 : 1, isFar);
        return si('length', Math.max(0, Math.min(...met(from, to).map(({ profile }) => way(profile)))));
      }
      let end: number = isFar ? to : from;
      for (const { profile, from, to } of isFar ? layers : layers.toReversed()) {
        if (isFar ? to <= end + NEAR : from >= end - NEAR) continue;
        if (!profile.holds(cast)) break;
        end = isFar ? to : from;
      }
      return si('length', Math.max(0, isFar ? end - to : from - end));
    },
  };
}

/** The faces of the cuboid around a box on which one of its panels lies. */
function facesOf(shape: BoxShape): readonly Face[] {
  const names = cuboidFaces[shape.along];
  const onSides = shape.outer.flatMap(({ outline }) => {
    const bounds = boundsOf(shape.outer.flatMap((layer) => layer.outline));
    return outline.flatMap((corner, i) => {
      const next = outline[(i + 1) % outline.length]!;
      return ([0, 1] as const).flatMap((k) =>
        ([0, 1] as const).flatMap((side) => {
          const at = bounds[side][k];
          return Math.abs(corner[k] - at) < NEAR && Math.abs(next[k] - at) < NEAR ? [names[2 * k + side]!] : [];
        }),
      );
    });
  });
  const all = new Set([...onSides, ...names.slice(4)]);
  return faces.filter((face) => all.has(face));
}
