import type { Fault } from '../fault/index.js';
import {
  count,
  type DensityInput,
  type Field,
  type Fields,
  type LengthInput,
  type MassInput,
  nested,
  notNegative,
  optional,
  positive,
  type RatioInput,
  type VolumeInput,
} from '../quantity/index.js';

/** A driver or a passive radiator. */
interface BodyContentsInput {
  /** As the data sheet states it. Without it, the volume is estimated from the two sizes below. */
  readonly displacedVolume?: VolumeInput;
  readonly cutoutDiameter?: LengthInput;
  /** Depth behind the panel, inside the box. */
  readonly depthInside?: LengthInput;
  /** Default 1. */
  readonly count?: number;
}

/** A vent: a round tube, or a slot by the outer edges of its air and its own boards. */
type VentContentsInput = (
  | { readonly outerDiameter: LengthInput }
  /** Outer size across the slot. A panel of the box that serves as a board is not counted. */
  | { readonly outerWidth: LengthInput; readonly outerHeight: LengthInput }
) & {
  /** Length along the centre line, without the part within the panel. */
  readonly lengthInside: LengthInput;
  /** Default 1. */
  readonly count?: number;
};

/** What is inside the box and takes up air. */
export interface ContentsInput {
  readonly driver?: BodyContentsInput;
  /** Passive radiators. */
  readonly radiator?: BodyContentsInput;
  readonly vent?: VentContentsInput;
  readonly bracing?: {
    readonly volume?: VolumeInput;
    /** Fraction of the inner volume. */
    readonly fraction?: RatioInput;
  };
  /** What is closed off from the air, such as a chamber for an amplifier, with its own boards. */
  readonly chamber?: VolumeInput;
  /** Filling: its fibres take up their mass over their density. Default density 1380 kg/m³, that of polyester (common practice). */
  readonly fill?: { readonly mass: MassInput; readonly fibreDensity?: DensityInput };
}

const bodyField = optional(
  nested({
    displacedVolume: optional(notNegative('volume')),
    cutoutDiameter: optional(positive('length')),
    depthInside: optional(notNegative('length')),
    count: optional(count(8)),
  }),
);
const alongShape = { lengthInside: notNegative('length'), count: optional(count(3)) };
const tube = nested({ ...alongShape, outerDiameter: positive('length') });
const slot = nested({ ...alongShape, outerWidth: positive('length'), outerHeight: positive('length') });
type VentContents = ReturnType<typeof tube.read> | ReturnType<typeof slot.read>;
const ventContents: Field<NonNullable<VentContents>> = {
  optional: false,
  read: (faults, value, path) =>
    typeof value === 'object' && value !== null && ('outerWidth' in value || 'outerHeight' in value)
      ? slot.read(faults, value, path)
      : tube.read(faults, value, path),
};

export const contentsShape = {
  driver: bodyField,
  radiator: bodyField,
  vent: optional(ventContents),
  bracing: optional(nested({ volume: optional(notNegative('volume')), fraction: optional(notNegative('ratio')) })),
  chamber: optional(notNegative('volume')),
  fill: optional(nested({ mass: notNegative('mass'), fibreDensity: optional(positive('density')) })),
};
export type Contents = Fields<typeof contentsShape>;

/** Faults of contents with too many fields or too few. */
export function judgeContents(contents: Contents, path: string): Fault[] {
  const faults: Fault[] = [];
  for (const part of ['driver', 'radiator'] as const) {
    const body = contents[part];
    if (!body) continue;
    const sizes = [body.cutoutDiameter, body.depthInside].filter((size) => size !== undefined).length;
    if (body.displacedVolume === undefined && sizes < 2) {
      const expected = 'displacedVolume, or cutoutDiameter and depthInside';
      const remedy = 'Read it from the sheet, or measure the two sizes for an estimate.';
      faults.push({ code: 'empty', path: `${path}.${part}`, got: body, expected, remedy });
    }
    if (body.displacedVolume !== undefined && sizes > 0) {
      const expected = 'either displacedVolume or the two sizes';
      const remedy = 'Keep the volume; the sizes only estimate it.';
      faults.push({ code: 'conflict', path: `${path}.${part}`, got: body, expected, remedy });
    }
  }
  const { bracing } = contents;
  if (bracing?.fraction !== undefined && bracing.fraction >= 1) {
    const remedy = 'Give the fraction of the inner volume that the wood takes.';
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
 * Volume of a driver from two sizes, as a truncated cone that narrows to half its diameter. This is an estimate by common
 * practice: it leaves out frame, magnet and the hollow of the cone, so the true volume may be a third more or less.
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

/** Volume of a vent with the air in it, which does not belong to the box. */
function ventVolume(vent: NonNullable<Contents['vent']>): number {
  const area = 'outerDiameter' in vent ? (Math.PI / 4) * vent.outerDiameter ** 2 : vent.outerWidth * vent.outerHeight;
  return (vent.count ?? 1) * area * vent.lengthInside;
}

const bodyVolume = (body: Contents['driver']): number =>
  body === undefined
    ? 0
    : (body.count ?? 1) *
      (body.displacedVolume ?? estimatedDriverVolume(body.cutoutDiameter ?? 0, body.depthInside ?? 0));

/** Density of polyester fibres, kg/m³ (common practice). */
const POLYESTER = 1380;

/** The volumes taken, m³. `fraction` is the part that grows with the box. */
export function displacedVolumes({ driver, radiator, vent, bracing, chamber, fill }: Contents) {
  const taken = {
    driver: bodyVolume(driver),
    radiator: bodyVolume(radiator),
    vent: vent === undefined ? 0 : ventVolume(vent),
    bracing: bracing?.volume ?? 0,
    chamber: chamber ?? 0,
    fill: fill === undefined ? 0 : fill.mass / (fill.fibreDensity ?? POLYESTER),
  };
  const all = taken.driver + taken.radiator + taken.vent + taken.bracing + taken.chamber + taken.fill;
  return { ...taken, all, fraction: bracing?.fraction ?? 0 };
}
