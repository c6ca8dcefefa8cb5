import type { Fault } from '../fault/index.js';
import {
  count,
  type Fields,
  type LengthInput,
  nested,
  notNegative,
  optional,
  positive,
  type RatioInput,
  type VolumeInput,
} from '../quantity/index.js';

/** What stands inside the box and takes air from it. */
export interface ContentsInput {
  readonly driver?: {
    /** As the sheet says it; left out, it is estimated from the two sizes below. */
    readonly displacedVolume?: VolumeInput;
    readonly cutoutDiameter?: LengthInput;
    /** Behind the panel, inside the box. */
    readonly depthInside?: LengthInput;
    /** Default 1. */
    readonly count?: number;
  };
  readonly vent?: {
    readonly outerDiameter: LengthInput;
    /** Along the centre line, without what lies in the panel. */
    readonly lengthInside: LengthInput;
    /** Default 1. */
    readonly count?: number;
  };
  readonly bracing?: {
    readonly volume?: VolumeInput;
    /** Of the inner volume. */
    readonly fraction?: RatioInput;
  };
}

export const contentsShape = {
  driver: optional(
    nested({
      displacedVolume: optional(notNegative('volume')),
      cutoutDiameter: optional(positive('length')),
      depthInside: optional(notNegative('length')),
      count: optional(count(4)),
    }),
  ),
  vent: optional(
    nested({
      outerDiameter: positive('length'),
      lengthInside: notNegative('length'),
      count: optional(count(3)),
    }),
  ),
  bracing: optional(nested({ volume: optional(notNegative('volume')), fraction: optional(notNegative('ratio')) })),
};
export type Contents = Fields<typeof contentsShape>;

/** Contents that say too much or too little. */
export function judgeContents({ driver, bracing }: Contents, path: string): Fault[] {
  const faults: Fault[] = [];
  if (driver) {
    const sizes = [driver.cutoutDiameter, driver.depthInside].filter((size) => size !== undefined).length;
    if (driver.displacedVolume === undefined && sizes < 2) {
      const expected = 'displacedVolume, or cutoutDiameter and depthInside';
      const remedy = 'Read it from the sheet, or measure the two sizes for an estimate.';
      faults.push({ code: 'empty', path: `${path}.driver`, got: driver, expected, remedy });
    }
    if (driver.displacedVolume !== undefined && sizes > 0) {
      const expected = 'either displacedVolume or the two sizes';
      const remedy = 'Keep the volume: the sizes only estimate it.';
      faults.push({ code: 'conflict', path: `${path}.driver`, got: driver, expected, remedy });
    }
  }
  if (bracing?.fraction !== undefined && bracing.fraction >= 1) {
    const remedy = 'Give the part of the inner volume that wood takes.';
    faults.push({
      code: 'out-of-range',
      path: `${path}.bracing.fraction`,
      got: bracing.fraction,
      expected: 'less than 1',
      remedy,
    });
  }
  return faults;
}

/**
 * Volume of a driver from two sizes: a cone cut off at half its diameter. An estimate by common practice: frame, magnet
 * and the hollow of the cone are not looked at, so expect a third more or less.
 *
 * $$ V = \frac{7\pi}{48} d^2 h $$
 *
 * | symbol | field | unit | meaning |
 * | --- | --- | --- | --- |
 * | $d$ | `cutoutDiameter` | m | diameter of the cut-out |
 * | $h$ | `depthInside` | m | depth behind the panel |
 *
 * @validity ordinary cone drivers with the magnet behind the cone, within a third
 * @neglects frame, magnet, the hollow of the cone; refuses nothing
 * @returns m³
 * @source common practice
 * @example estimatedDriverVolume(0.17, 0.08) // 0.00106 m³
 */
export const estimatedDriverVolume = (cutoutDiameter: number, depthInside: number): number =>
  ((7 * Math.PI) / 48) * cutoutDiameter ** 2 * depthInside;

/** Volume of a round tube, its own air included: that air is not the box's. */
const tubeVolume = (outerDiameter: number, lengthInside: number): number =>
  (Math.PI / 4) * outerDiameter ** 2 * lengthInside;

/** Volumes taken, m³; `fraction` is the part that grows with the box. */
export function displacedVolumes({ driver, vent, bracing }: Contents) {
  const driverVolume =
    driver?.displacedVolume ?? estimatedDriverVolume(driver?.cutoutDiameter ?? 0, driver?.depthInside ?? 0);
  return {
    driver: (driver?.count ?? 1) * driverVolume,
    vent: (vent?.count ?? 1) * tubeVolume(vent?.outerDiameter ?? 0, vent?.lengthInside ?? 0),
    bracing: bracing?.volume ?? 0,
    fraction: bracing?.fraction ?? 0,
  };
}
