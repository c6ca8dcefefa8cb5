import type { Impossible } from '@airspring/core/fault';
import { si } from '@airspring/core/quantity';
import { type Fit, fit } from '@airspring/core/space';
import type { Job } from '../brief/job.js';
import { type Kin, PLAY, reachOf, ventBody, withPlay } from './candidate.js';

const metres = (value: number) => si('length', value);

/** What is placed: a box of so many metres, and its vent. */
export interface Placed {
  readonly kin: Kin;
  readonly edges: readonly [number, number, number];
  readonly diameter: number;
  readonly ventLength: number;
}

/** Where drivers and vent stand in a box, or why they do not: the full judgement of core, for boxes that matter. */
export function place(job: Job, { kin, edges, diameter, ventLength }: Placed): Fit | Impossible {
  const { outerDiameter, cutoutDiameter } = kin.offer.drivers.driver;
  const body = withPlay(ventBody(job, diameter));
  return fit({
    outer: { width: metres(edges[0]), height: metres(edges[1]), depth: metres(edges[2]) },
    thickness: metres(job.space.panelThickness),
    driver: {
      outerDiameter: outerDiameter ?? metres(0),
      cutoutDiameter: cutoutDiameter ?? metres(0),
      depth: metres(reachOf(kin.offer.drivers)),
      count: kin.offer.drivers.fronts,
    },
    ...(kin.family === 'vented' && {
      vent: {
        diameter: metres(diameter),
        wall: metres(job.vent.wall + PLAY),
        flangeDiameter: metres(body.flangeDiameter),
        bendRadius: metres(body.bendRadius),
        bends: job.vent.bends > 0 ? ('one-bend' as const) : ('straight' as const),
        count: kin.vents,
        faces: job.vent.faces,
        length: metres(ventLength),
      },
    }),
  });
}
