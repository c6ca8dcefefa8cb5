import { si } from '@airspring/core/quantity';
import { innerSize } from '@airspring/core/space';
import { tuning } from '@airspring/core/vent';
import type { Design } from '../answer.js';
import type { Build } from '../box/build.js';
import { PLAY, ventBody } from '../box/candidate.js';
import { place } from '../box/placement.js';
import type { Job } from '../brief/job.js';
import { points } from '../search/wishes.js';
import { cautionsOf } from './cautions.js';
import { holesOf, panelsOf } from './cut-list.js';
import { marginsOf, partMargins } from './margins.js';
import { soundOf } from './sound.js';
import { ventOf } from './vent-record.js';

const CHAMBER = {
  code: 'neglected',
  text: 'The walls of the chamber between the drivers of an isobaric pair, and the spring and mass of its air. Counted is the room of a tube as wide as the cutout, with one driver at each end of it.',
} as const;

/** The tuning of a build by the public formula; `undefined` for a closed box. */
function tuningOf(job: Job, { kin, diameter, ventLength, netVolume }: Build) {
  if (kin.family === 'closed') return undefined;
  const metres = (value: number) => si('length', value);
  const found = tuning(
    {
      vent: {
        diameter: metres(diameter),
        count: kin.vents,
        wall: metres(job.vent.wall),
        length: metres(ventLength),
      },
      netVolume: si('volume', netVolume),
      panelThickness: metres(job.space.panelThickness),
    },
    job.air,
  );
  return found.ok ? found : undefined;
}

/** Makes the record of a design from a build: everything a reader needs, from the public functions of core. */
export function assemble(job: Job, build: Build, name: string, leaning: string, words: readonly string[]): Design {
  const { kin, edges, netVolume, diameter, criteria } = build;
  const { space, wanted } = job;
  const { drivers } = kin.offer;
  const one = drivers.driver;
  const tuned = tuningOf(job, build);
  const fb = tuned?.fb ?? 0;
  const placement = place(job, build);
  if (!placement.ok) {
    const why = placement.because.map(({ text }) => text).join(' ');
    throw new Error(`a design that does not fit left the search: ${why}`);
  }
  const vent = ventOf(job, { ...build, fb }, placement);
  const sound = soundOf(job, build, fb);
  const [width, height, depth] = edges.map((edge) => si('length', edge)) as [never, never, never];
  const inner = innerSize({ outer: { width, height, depth }, thickness: si('length', space.panelThickness) });

  return {
    name,
    leaning,
    words,
    family: kin.family,
    drivers: {
      name: kin.offer.name,
      count: drivers.count,
      series: drivers.series,
      parallel: drivers.parallel,
      isobaric: drivers.isobaric,
      Xmax: one.Xmax ?? 0,
      Pe: one.Pe ?? 0,
      outerDiameter: one.outerDiameter ?? 0,
      cutoutDiameter: one.cutoutDiameter ?? 0,
    },
    box: {
      outer: edges,
      inner: Object.values(inner) as unknown as readonly [number, number, number],
      panelThickness: space.panelThickness,
      outerVolume: criteria.volume,
      netVolume,
      panels: panelsOf(edges, space.panelThickness),
      holes: holesOf(placement, one.cutoutDiameter ?? 0, ventBody(job, diameter).outerDiameter + 2 * PLAY),
    },
    ...(vent && { vent }),
    ...sound,
    points: points(job, job.weights, criteria),
    margins: [
      ...marginsOf(job, build),
      ...partMargins(job, build, sound.atWantedLevel, placement.slack.driverDepth, vent),
    ],
    warnings: [...job.air.warnings, ...(tuned?.warnings ?? []), ...(drivers.isobaric ? [CHAMBER] : [])],
    cautions: cautionsOf(Math.max(wanted.level, sound.loudness.level), kin.family === 'vented'),
  };
}
