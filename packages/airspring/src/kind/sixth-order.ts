import type { Family, ParallelBandPassInput, ParallelBandPassSpec } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { across, fields } from './band-pass-fields.js';
import { bandPassVariants, type Chambers } from './band-pass-variant.js';
import type { BoxKind } from './box-kind.js';
import type { Point } from './point.js';

/** Both chambers with their vents, as the families of sixth order take them. It is made for each box of the lattice. */
function spec({
  drivers,
  sourceResistance,
  front,
  rear,
  ventArea,
  losses: { QL, QA, QP },
}: Chambers): ParallelBandPassSpec {
  const made: { -readonly [K in keyof ParallelBandPassSpec]: ParallelBandPassSpec[K] } = {
    drivers,
    rearVolume: si('volume', rear.volume),
    rearTuning: si('frequency', rear.tuning ?? 0),
    rearQL: QL,
    frontVolume: si('volume', front.volume),
    frontTuning: si('frequency', front.tuning),
    frontQL: QL,
    sourceResistance: si('resistance', sourceResistance),
  };
  if (QA !== undefined) made.rearQA = made.frontQA = QA;
  if (QP !== undefined) made.rearQP = made.frontQP = QP;
  if (ventArea !== undefined) made.rearVentArea = made.frontVentArea = si('area', ventArea);
  return made;
}

function pointOf({ rearVolume, rearTuning, frontVolume, frontTuning }: ParallelBandPassSpec): Point {
  const netVolume = rearVolume + frontVolume;
  return [netVolume, frontTuning, rearTuning / frontTuning, rearVolume / netVolume];
}

/** A kind of band-pass box of sixth order, whose rear vents lead outside or through the partition. */
export function sixthOrder(
  family: Family<ParallelBandPassSpec, ParallelBandPassInput>,
  rear: 'out' | 'through',
  { name, called }: Pick<BoxKind, 'name' | 'called'>,
): BoxKind<typeof fields> {
  const kind: BoxKind<typeof fields> = {
    name,
    byName: true,
    called,
    fields,
    across: across(name, rear),
    variants: (job, choice) =>
      bandPassVariants({ kind, family, rear, spec, pointOf, dip: 'the tunings of the chambers' }, job, choice),
  };
  return kind;
}
