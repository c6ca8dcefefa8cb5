import { refuse } from '../fault/index.js';
import { oneOf, positive, readFields, si, type VolumeInput } from '../quantity/index.js';
import { axisNames, innerEdges, type Size, sizeList, sizeRecord, wallsByAxis } from './cuboid.js';
import { displacedVolumes, judgeContents } from './displaced-volume.js';
import { boxShape, type NetVolumeInput } from './net-volume.js';

/** Which outer edges may change: one edge, while the two others stay, or all three in proportion. */
export type ShapeRule = 'width' | 'height' | 'depth' | 'proportional';

export interface SizeForNetVolumeInput extends NetVolumeInput {
  readonly netVolume: VolumeInput;
  /** The edge that `shape` names is only a starting value; with `proportional` all three are. */
  readonly shape: ShapeRule;
}

const shape = { ...boxShape, netVolume: positive('volume'), shape: oneOf<ShapeRule>(...axisNames, 'proportional') };

/**
 * Compiles the outer size for a wanted net volume. It takes the net and the displaced volume, and writes the three outer edges to `out`.
 *
 * Proportional: $(sW - t_x)(sH - t_y)(sD - t_z) = V$ rises and curves upwards wherever all three factors are positive,
 * so Newton's steps from an upper bound fall to its root without overshooting.
 *
 * @validity cuboids
 * @source own geometry of a cuboid
 * @example compileSizeForNetVolume([0.3, 0.4, 0.35], thickness, 'proportional')(0.04, 0.002, out)
 */
export function compileSizeForNetVolume(
  outer: readonly [number, number, number],
  thickness: readonly number[],
  rule: ShapeRule,
  bracingFraction = 0,
) {
  const walls = wallsByAxis(thickness);
  const [a, b, c] = [walls[0] / outer[0], walls[1] / outer[1], walls[2] / outer[2]];
  const edges = outer[0] * outer[1] * outer[2];
  const solved = rule === 'proportional' ? -1 : axisNames.indexOf(rule);
  const area = outer.reduce((product, edge, axis) => (axis === solved ? product : product * (edge - walls[axis]!)), 1);
  return (net: number, displaced: number, out: Float64Array): void => {
    const inner = (net + displaced) / (1 - bracingFraction);
    for (let axis = 0; axis < 3; axis++) out[axis] = outer[axis]!;
    if (solved >= 0) {
      out[solved] = inner / area + walls[solved]!;
      return;
    }
    const volume = inner / edges;
    let scale = Math.max(a, b, c) + Math.cbrt(volume);
    for (let step = 0; step < 100; step++) {
      const x = scale - a;
      const y = scale - b;
      const z = scale - c;
      const next = scale - (x * y * z - volume) / (x * y + y * z + z * x);
      if (!(next < scale)) break;
      scale = next;
    }
    for (let axis = 0; axis < 3; axis++) out[axis] = scale * outer[axis]!;
  };
}

/**
 * Outer size of a cuboid box that holds a wanted net volume: the inverse of {@link netVolume}. The parts
 * inside, including the whole vent, are part of the equation, so nothing has to be iterated by hand.
 *
 * $$ (W - t_x)(H - t_y)(D - t_z)(1 - \beta) = V_b + V_{driver} + V_{radiator} + V_{vent} + V_{bracing} $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V_b$ | `netVolume` | m³ | wanted air volume |
 * | $W, H, D$ | `outer` | m | outer edges; `shape` says which of them is solved for |
 * | $t_x, t_y, t_z$ | `thickness` | m | both panels across each axis |
 * | $\beta$ | `contents.bracing.fraction` | 1 | part of the inner volume that bracing takes |
 *
 * @validity exact for flat panels and given volumes
 * @neglects as {@link netVolume}; use {@link fit} to find out whether the contents fit
 * @returns width, height, depth outside, in m
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `conflict`, `inconsistent`
 * @source own geometry of a cuboid
 * @example sizeForNetVolume({ netVolume: '42 L', outer: { width: '336 mm', height: '436 mm', depth: '1 mm' }, thickness: '18 mm', shape: 'depth' }).depth // 0.386
 */
export function sizeForNetVolume(input: SizeForNetVolumeInput): Size {
  const { outer, thickness, contents = {}, netVolume: net, shape: rule } = readFields('box', input, shape);
  refuse(judgeContents(contents, 'box.contents'));
  if (rule !== 'proportional') {
    // The two edges that stay must leave some space; the third edge does not matter here.
    innerEdges({ ...outer, [rule]: si('length', 1e4) }, thickness, 'box.outer');
  }
  const taken = displacedVolumes(contents);
  const out = new Float64Array(3);
  compileSizeForNetVolume(sizeList(outer), thickness, rule, taken.fraction)(net, taken.all, out);
  return sizeRecord([out[0]!, out[1]!, out[2]!]);
}
