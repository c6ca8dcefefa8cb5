import type { SpaceShape } from '@airspring/core/space';

/** The volumes of a job's boxes, for those of the cuboids around them: the same where no shape is asked for. */
const same = (cuboid: number): number => cuboid;
export const volumesIn = ({
  space: { shape },
}: {
  readonly space: { readonly shape?: SpaceShape };
}): Pick<SpaceShape, 'airIn' | 'cuboidFor' | 'outerIn'> => shape ?? { airIn: same, cuboidFor: same, outerIn: same };
