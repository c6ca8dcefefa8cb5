import type { Fault } from '../fault/index.js';
import { type Field, type Fields, type LengthInput, nested, notNegative, optional } from '../quantity/index.js';
import { slotAlongs } from '../vent/slot-boards.js';
import { faces, type SizeInput, sizeShape, type ThicknessInput, thicknessField } from './cuboid.js';
import type { Interior } from './interior.js';
import { interiorField, judgeInterior } from './interior-input.js';
import { bodiesField, judgeBodies, type RoundBody, type RoundBodyInput, roundBodies } from './round-body.js';
import { judgeVent, type ReadVent } from './vent-body.js';

/** The space, and what must fit in it. */
export interface SpaceInput {
  readonly outer: SizeInput;
  readonly thickness: ThicknessInput;
  /** Equal drivers, or a list of different drivers. */
  readonly driver: RoundBodyInput | readonly RoundBodyInput[];
  /** Equal passive radiators, or a list of different ones. */
  readonly radiator?: RoundBodyInput | readonly RoundBodyInput[];
  /** Least gap between flanges and frames on one face; default 5 mm. */
  readonly gap?: LengthInput;
  /** Least distance between a flange or frame and the edges of its panel; default 5 mm. */
  readonly edgeMargin?: LengthInput;
  /**
   * Least distance between a cutout and the inner side of the neighbouring panel; default 2 mm (common practice), so that the
   * basket still goes in when a cut is half a millimetre off. It does not apply to slots that lie along a panel.
   */
  readonly cutoutMargin?: LengthInput;
}

/** A space that may have an interior of its own. */
export interface ShapedSpaceInput extends SpaceInput {
  /**
   * An interior of your own within the cuboid that the panels leave, such as one with a sloping front; default that cuboid. Parts
   * stand only on its faces, each of which lies on a panel. A slot in it has four boards of its own.
   */
  readonly interior?: Interior;
}

export const spaceShape = {
  outer: nested(sizeShape),
  thickness: thicknessField as Field<readonly number[]>,
  driver: bodiesField,
  radiator: optional(bodiesField),
  gap: optional(notNegative('length')),
  edgeMargin: optional(notNegative('length')),
  cutoutMargin: optional(notNegative('length')),
};
export const shapedSpaceShape = { ...spaceShape, interior: optional(interiorField) };
type ReadSpace = Fields<typeof spaceShape> & Pick<Partial<Fields<typeof shapedSpaceShape>>, 'interior'>;

/** Plain SI numbers of the parts on the panels, the panels and the rules. Faces are places in the list of faces. */
export interface Layout {
  /** By face: left, right, bottom, top, front, back. */
  readonly thickness: readonly number[];
  readonly gap: number;
  readonly edgeMargin: number;
  readonly cutoutMargin: number;
  readonly bodies: readonly RoundBody[];
  /** What is within the cuboid of these inner edges, where that is no cuboid. */
  readonly interior?: (inner: readonly [number, number, number]) => Interior;
  readonly vent: {
    readonly count: number;
    readonly faces: readonly number[];
    readonly bend: boolean;
    /** Panels of the box that serve as boards of a slot. */
    readonly walls: 0 | 1 | 2 | 3;
  };
}

const interiorOf = ({ interior }: ReadSpace) => interior && { interior: () => interior };

/** Fills in the defaults. */
export const layoutOf = (space: ReadSpace, vent?: ReadVent): Layout => ({
  thickness: space.thickness,
  gap: space.gap ?? 0.005,
  edgeMargin: space.edgeMargin ?? 0.005,
  cutoutMargin: space.cutoutMargin ?? 0.002,
  ...interiorOf(space),
  bodies: [...roundBodies('driver', space.driver), ...roundBodies('radiator', space.radiator)],
  vent: {
    count: vent?.count ?? 1,
    faces: (vent?.faces ?? ['front']).map((name) => faces.indexOf(name)),
    bend: vent?.bends !== 'straight',
    walls: slotAlongs.indexOf(
      (vent !== undefined && 'along' in vent && vent.along) || 'none',
    ) as Layout['vent']['walls'],
  },
});

/** Sizes that contradict each other. */
export const judgeSpace = ({ driver, radiator, interior }: ReadSpace, path: string, vent?: ReadVent): Fault[] => [
  ...judgeBodies(driver, `${path}.driver`),
  ...judgeBodies(radiator, `${path}.radiator`),
  ...(vent === undefined ? [] : judgeVent(vent, `${path}.vent`)),
  ...(interior === undefined ? [] : judgeInterior(interior, { driver, radiator, vent }, path)),
];
