import { closedResonance, fourthOrderBandPassFamily } from '@airspring/core/enclosure';
import { si } from '@airspring/core/quantity';
import { across, fields } from './band-pass-fields.js';
import { bandPassVariants } from './band-pass-variant.js';
import type { BoxKind } from './box-kind.js';

/** A band-pass box of fourth order: drivers in a partition, a closed chamber behind them, a vented one in front. */
export const bandPass: BoxKind<typeof fields> = {
  name: 'band-pass',
  byName: true,
  called: 'a band-pass box',
  fields,
  across: across('band-pass', 'closed'),
  variants: (job, choice) =>
    bandPassVariants(
      {
        kind: bandPass,
        family: fourthOrderBandPassFamily,
        rear: 'closed',
        spec: ({ drivers, sourceResistance, front, rear, ventArea, losses: { QL, QA, QP } }) => ({
          drivers,
          rearVolume: si('volume', rear.volume),
          rearFillGain: 1,
          frontVolume: si('volume', front.volume),
          frontTuning: si('frequency', front.tuning),
          frontQL: QL,
          ...(QA !== undefined && { frontQA: QA }),
          ...(QP !== undefined && { frontQP: QP }),
          ...(ventArea !== undefined && { frontVentArea: si('area', ventArea) }),
          sourceResistance: si('resistance', sourceResistance),
        }),
        pointOf: ({ rearVolume, frontVolume, frontTuning }) => {
          const netVolume = rearVolume + frontVolume;
          return [netVolume, frontTuning, rearVolume / netVolume];
        },
        dip: 'the tuning of the vented chamber',
        numbers: ({ drivers, rear }, { air }) => {
          const { fc, Qtc } = closedResonance({ drivers, netVolume: si('volume', rear.volume) }, air);
          return [
            { what: 'resonance of the driver in the closed chamber (fc)', value: [[fc, 'frequency']] },
            { what: 'quality factor of the driver there (Qtc)', value: [[Qtc, 'ratio']] },
          ];
        },
      },
      job,
      choice,
    ),
};
