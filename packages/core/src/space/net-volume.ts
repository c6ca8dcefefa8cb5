import { type Impossible, impossible, refuse } from '../fault/index.js';
import {
  format,
  nested,
  optional,
  positive,
  readFields,
  si,
  type Volume,
  type VolumeInput,
} from '../quantity/index.js';
import {
  cuboidVolume,
  innerEdges,
  type SizeInput,
  sizeList,
  sizeShape,
  type ThicknessInput,
  thicknessField,
  wallsByAxis,
} from './cuboid.js';
import {
  type Contents,
  type ContentsInput,
  contentsShape,
  displacedVolumes,
  judgeContents,
} from './displaced-volume.js';

export interface NetVolumeInput {
  readonly outer: SizeInput;
  readonly thickness: ThicknessInput;
  readonly contents?: ContentsInput;
}

/** The volume of air in a box, and the volumes that take up the rest. */
export interface NetVolume {
  readonly ok: true;
  readonly netVolume: Volume;
  readonly innerVolume: Volume;
  readonly displacedByDriver: Volume;
  /** Warns that the volume of a driver was estimated from two sizes. */
  readonly driverEstimated: boolean;
  readonly displacedByRadiator: Volume;
  readonly displacedByVent: Volume;
  readonly displacedByBracing: Volume;
  readonly displacedByChamber: Volume;
  readonly displacedByFill: Volume;
}

/** The inside of a box of any shape, and what is in it. */
export interface NetVolumeWithinInput {
  readonly innerVolume: VolumeInput;
  readonly contents?: ContentsInput;
}

/** The fields of a cuboid box and what is in it. */
export const boxShape = {
  outer: nested(sizeShape),
  thickness: thicknessField,
  contents: optional(nested(contentsShape)),
};
const withinShape = { innerVolume: positive('volume'), contents: boxShape.contents };
const forShape = { netVolume: positive('volume'), contents: boxShape.contents };
const nothing: Contents = {};

/**
 * Compiles the net volume of a cuboid box for many sizes. It takes the outer edges and the volume of what is inside, and returns m³.
 * A result of zero or less means that no air is left.
 *
 * @validity cuboids
 * @source own geometry of a cuboid
 * @example compileNetVolume([0.018, 0.018, 0.018, 0.018, 0.018, 0.018])(0.336, 0.436, 0.386, 0.002) // 0.04 m³
 */
export function compileNetVolume(thickness: readonly number[], bracingFraction = 0) {
  const [x, y, z] = wallsByAxis(thickness);
  const share = 1 - bracingFraction;
  return (width: number, height: number, depth: number, displaced: number): number =>
    Math.max(0, width - x) * Math.max(0, height - y) * Math.max(0, depth - z) * share - displaced;
}

/**
 * Net air volume of a cuboid box.
 *
 * $$ V_b = W_i H_i D_i\,(1 - \beta) - V_{driver} - V_{radiator} - V_{vent} - V_{bracing} - V_{chamber} - m/\rho $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $W_i, H_i, D_i$ | `outer` | m | edges, less the panels |
 * | $\beta$ | `contents.bracing.fraction` | 1 | part of the inner volume that bracing takes |
 * | $V_{driver}$ | `contents.driver` | m³ | given, or estimated as a cut-off cone, $7\pi d^2 h/48$ |
 * | $V_{radiator}$ | `contents.radiator` | m³ | as a driver |
 * | $V_{vent}$ | `contents.vent` | m³ | outer cross-section × length inside: the vent's own air is not the box's |
 * | $V_{chamber}$ | `contents.chamber` | m³ | what is closed off, with its boards |
 * | $m, \rho$ | `contents.fill` | kg, kg/m³ | mass of the filling, and density of its fibres |
 *
 * @validity exact for flat panels and given volumes; an estimated driver is good to about a third
 * @neglects lining, terminals, wires, the corner of a folded slot; that a filling also changes how air is compressed
 * @returns volumes in m³, or why nothing is left
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `conflict`, `inconsistent`
 * @source own geometry of a cuboid
 * @example netVolume({ outer: { width: '336 mm', height: '436 mm', depth: '386 mm' }, thickness: '18 mm' }) // 0.042 m³
 */
export function netVolume(input: NetVolumeInput): NetVolume | Impossible {
  const { outer, thickness, contents = nothing } = readFields('box', input, boxShape);
  refuse(judgeContents(contents, 'box.contents'));
  const inner = cuboidVolume(innerEdges(outer, thickness, 'box.outer'));
  const { all, fraction } = displacedVolumes(contents);
  return airIn(inner, compileNetVolume(thickness, fraction)(...sizeList(outer), all), contents);
}

/**
 * Net air volume of a box of any shape whose inner volume is known.
 *
 * $$ V_b = V_i\,(1 - \beta) - V_{driver} - V_{radiator} - V_{vent} - V_{bracing} - V_{chamber} - m/\rho $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $V_i$ | `innerVolume` | m³ | volume within the panels |
 * | $V_{chamber}$ | `contents.chamber` | m³ | what is closed off, with its boards |
 * | $m, \rho$ | `contents.fill` | kg, kg/m³ | mass of the filling, and density of its fibres |
 *
 * The other symbols are those of {@link netVolume}.
 *
 * @validity exact for given volumes; an estimated driver is good to about a third
 * @neglects terminals, wires, the corner of a folded slot; that a filling also changes how air is compressed
 * @returns volumes in m³, or why nothing is left
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `conflict`
 * @source own geometry
 * @example netVolumeWithin({ innerVolume: '45 L', contents: { chamber: '3 L' } }) // 0.042 m³
 */
export function netVolumeWithin(input: NetVolumeWithinInput): NetVolume | Impossible {
  const { innerVolume, contents = nothing } = readFields('box', input, withinShape);
  refuse(judgeContents(contents, 'box.contents'));
  const { all, fraction } = displacedVolumes(contents);
  return airIn(innerVolume, innerVolume * (1 - fraction) - all, contents);
}

/**
 * Inner volume of a box of any shape for a wanted net volume: the inverse of {@link netVolumeWithin}.
 *
 * $$ V_i = \frac{V_b + V_{driver} + V_{radiator} + V_{vent} + V_{bracing} + V_{chamber} + m/\rho}{1 - \beta} $$
 *
 * The symbols are those of {@link netVolumeWithin}.
 *
 * @validity as {@link netVolumeWithin}
 * @neglects as {@link netVolumeWithin}
 * @returns m³
 * @throws InputError `unit`, `not-finite`, `not-positive`, `out-of-range`, `empty`, `conflict`
 * @source own geometry
 * @example innerVolumeFor({ netVolume: '42 L', contents: { chamber: '3 L' } }) // 0.045 m³
 */
export function innerVolumeFor(input: { readonly netVolume: VolumeInput; readonly contents?: ContentsInput }): Volume {
  const { netVolume: net, contents = nothing } = readFields('box', input, forShape);
  refuse(judgeContents(contents, 'box.contents'));
  const { all, fraction } = displacedVolumes(contents);
  return si('volume', (net + all) / (1 - fraction));
}

/** The record of the air in a box, or why there is none. */
function airIn(inner: Volume, net: number, contents: Contents): NetVolume | Impossible {
  const taken = displacedVolumes(contents);
  const bracing = taken.bracing + taken.fraction * inner;
  if (net <= 0) {
    const all = taken.all + taken.fraction * inner;
    const text = `The inner volume is ${litres(inner)}, but the parts in it take ${litres(all)}. Use a larger box, a shorter or narrower vent, or less bracing.`;
    return impossible('volume-eaten-up', text);
  }
  return {
    ok: true,
    netVolume: si('volume', net),
    innerVolume: inner,
    displacedByDriver: si('volume', taken.driver),
    driverEstimated: contents.driver !== undefined && contents.driver.displacedVolume === undefined,
    displacedByRadiator: si('volume', taken.radiator),
    displacedByVent: si('volume', taken.vent),
    displacedByBracing: si('volume', bracing),
    displacedByChamber: si('volume', taken.chamber),
    displacedByFill: si('volume', taken.fill),
  };
}

const litres = (volume: number) => format('volume', volume, 'L', 4);
