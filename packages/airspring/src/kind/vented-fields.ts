import { airSpeedCustoms } from '@airspring/core/vent';
import * as v from 'valibot';
import { audible, lossQ } from '../brief/bounds.js';
import { quantity } from '../brief/quantity-text.js';

const opt = v.exactOptional;

/** Pins the tuning of the kinds of box that have one. */
export const pinnedTuning = opt(
  v.pipe(
    quantity('frequency', audible),
    v.description('the tuning that the box must have, within the rounding of its parts; default free'),
  ),
);

/** Leaks of a box that is no closed one, common practice. */
export const USUAL_QL = 7;

/** What a brief may say about every box that is tuned by vents. */
export const ventedFields = {
  box: {
    tuning: pinnedTuning,
    QL: opt(v.pipe(lossQ, v.description('quality factor of the leaks at the tuning; default 7, common practice'))),
    QA: opt(v.pipe(lossQ, v.description('quality factor of the absorption at the tuning; default no absorption'))),
    QP: opt(v.pipe(lossQ, v.description("quality factor of the vent's own loss at the tuning; default no loss"))),
  },
  airSpeed: opt(
    v.pipe(
      quantity('airSpeedPeak', { least: 0.1, greatest: 340, unit: 'm/s' }),
      v.description(
        'greatest air speed in the vent: peak in time, mean over its cross-section; default 17 m/s, common practice',
      ),
    ),
  ),
};

/** Asks for a vent that stays quiet by every published onset. */
export const quiet = opt(
  v.pipe(
    v.boolean(),
    v.description(
      'true: at the wanted level the air stays below every published onset of jets, turbulence and noise; default false',
    ),
  ),
);

/** The greatest air speed that a vent may have, peak. */
export const airSpeedOf = ({ airSpeed }: { readonly airSpeed?: number | undefined }): number =>
  airSpeed ?? airSpeedCustoms.usual.airSpeedPeak;
