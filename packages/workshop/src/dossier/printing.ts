import { si } from '@airspring/core/quantity';
import { type Part, preview, stl, threeMf, volumeOf } from '../mesh/index.js';
import { roundFlare, type VentSolidInput, ventSolid } from '../solid/index.js';
import type { BuildFile } from './file.js';
import type { Work, WorkTools, WorkVent } from './work.js';

/** A vent as the printer makes it. */
export interface Printing {
  readonly vent: WorkVent;
  readonly parts: readonly Part[];
  /** The vent in one piece, for a picture. */
  readonly picture: string;
}

const metres = (value: number) => si('length', value);

/** How coarse a picture may be, m. */
const COARSE = metres(5e-4);

const flareOf = (radius: number) => (radius > 0 ? roundFlare({ radius: metres(radius) }) : undefined);

const drawn = (vent: WorkVent, { nozzle }: WorkTools): VentSolidInput => ({
  diameter: metres(vent.diameter),
  length: metres(vent.length),
  wall: metres((vent.outerDiameter - vent.diameter) / 2),
  nozzle: nozzle === undefined ? undefined : metres(nozzle),
  outerFlare: vent.flare && flareOf(vent.flare.outer),
  innerFlare: vent.flare && flareOf(vent.flare.inner),
  flange: { diameter: metres(vent.flangeDiameter) },
  ...(vent.bend && {
    bends: [
      {
        leg: metres(vent.bend.firstLeg),
        angle: si('angle', Math.PI / 2),
        centreLineRadius: metres(vent.bend.radius),
      },
    ],
  }),
});
