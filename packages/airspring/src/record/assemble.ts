import { si } from '@airspring/core/quantity';
import { type Fit, innerSize } from '@airspring/core/space';
import type { Heard } from '../job/heard.js';
import type { Job } from '../job/job.js';
import type { Hole } from '../kind/build-record.js';
import { forcesCancel } from '../kind/forces-cancel.js';
import type { Phrase } from '../kind/phrase.js';
import { wavesLeftOut } from '../kind/vent-waves.js';
import type { Box } from '../search/box.js';
import { pointsOf } from '../search/points.js';
import type { Search } from '../search/search.js';
import { alignmentsNear, goalReached } from './alignments.js';
import { cautionsOf } from './cautions.js';
import { driverHoles, jointLeftOut, jointOf, panelsOf } from './cut-list.js';
import type { Guard } from './design-parts.js';
import type { Design } from './design-record.js';
import { uncertainOf } from './estimate.js';
import { freeOutsideOf } from './free-outside.js';
import { partMargins, wishMargins } from './margins.js';
import { playingOf } from './playing.js';
import { onPanelOf, panelsOfShape } from './shaped-panels.js';
import { soundOf } from './sound.js';

const CHAMBER = {
  code: 'neglected',
  text: 'The walls of the chamber between the drivers of an isobaric pair are left out, and so are the spring and the mass of the air in it. The volume it takes is that of a tube as wide as the cutout, with one driver at each end.',
} as const;

/** Whether this drive can push the cone beyond its travel. */
export const travels = ({ lowestSafeFrequency, neverSafe }: Guard): boolean =>
  lowestSafeFrequency !== undefined || neverSafe === true;

/** Makes the record of a design from a box: everything a reader needs, from the public functions of core. */
export function assemble(search: Search, box: Box, name: string, leaning: string, words: readonly string[]): Design {
  const { job } = search;
  const { variant, edges, point, criteria } = box;
  const { space, wanted } = job;
  const { drivers } = variant.choice;
  const one = drivers.driver;
  const fit = variant.place(edges, point);
  if (!fit.ok) {
    const why = fit.because.map(({ text }) => text).join(' ');
    throw new Error(`the search returned a design that does not fit: ${why}`);
  }
  const {
    vent,
    vents,
    weights,
    filled,
    holes,
    boards = [],
    open,
    chambers,
    placed,
    summary,
    brief,
    building,
    playing,
    dip,
    numbers,
    assumed,
    ...own
  } = variant.record({
    edges,
    point,
    fit,
  });
  const { shape } = space;
  const prisms = shape?.prisms?.(edges);
  const onPanel = shape ? onPanelOf(shape, edges) : (hole: Hole) => hole;
  const driversHoles = own.driverHoles ?? driverHoles(fit, one.cutoutDiameter ?? 0);
  const sound = soundOf(job, playingOf(box), own.givesOut);
  const uncertain = uncertainOf(search, box);
  const alignments = alignmentsNear(job, box);
  const goal = goalReached(job, box);
  const [width, height, depth] = edges.map((edge) => si('length', edge)) as [never, never, never];
  const inner = innerSize({ outer: { width, height, depth }, thickness: si('length', space.panelThickness) });
  // Where there is no back, the air reaches to the end of the sides.
  const further = open?.includes('back') ? space.panelThickness : 0;
  const { atFullVoltage } = sound.protection;
  const joint = jointOf(job);
  const leftOut = jointLeftOut(job);
  const cut = [...driversHoles, ...holes].map(onPanel);

  return {
    name,
    leaning,
    words,
    kind: variant.kind.name,
    called: variant.kind.called,
    told: {
      summary,
      brief,
      building,
      playing,
      ...(dip !== undefined && { dip }),
      ...(alignments?.length === 0 && own.noAlignment && { noAlignment: own.noAlignment }),
    },
    drivers: {
      name: variant.choice.name,
      index: variant.choice.driverIndex,
      count: drivers.count,
      series: drivers.series,
      parallel: drivers.parallel,
      isobaric: drivers.isobaric,
      Xmax: one.Xmax ?? 0,
      Pe: one.Pe ?? 0,
      outerDiameter: one.outerDiameter ?? 0,
      cutoutDiameter: one.cutoutDiameter ?? 0,
      forcesCancel: forcesCancel(driversHoles),
    },
    box: {
      outer: edges,
      inner: [inner.width, inner.height, inner.depth + further],
      panelThickness: space.panelThickness,
      ...(joint && { joint }),
      outerVolume: criteria.volume,
      netVolume: point[0]! + further * inner.width * inner.height,
      ...(shape && {
        shape: {
          called: shape.called,
          panels: shape.panels(edges),
          ...(prisms && { prisms }),
          ...(leftOut && { jointLeftOut: leftOut }),
        },
      }),
      panels: [
        ...(shape ? panelsOfShape(shape, edges) : panelsOf(edges, joint?.setback ?? space.panelThickness, open)),
        ...boards,
      ],
      boards,
      ...(open && { open }),
      ...(chambers && { chambers }),
      ...(placed && { placed }),
      holes: cut,
      freeOutside: freeOutsideOf(cut),
      solids: fit.solids,
      cutoutLeft: fit.slack.cutout,
    },
    ...(vent && { vent }),
    ...(vents && { vents }),
    ...(weights && { weights }),
    ...(filled && { filled }),
    numbers,
    ...(alignments && { alignments }),
    ...(goal && { goal }),
    assumed: [...assumedOf(job), ...assumed],
    ...sound,
    amplifier: amplifierOf(job),
    ...(uncertain && { uncertain }),
    points: pointsOf(job, job.weights, criteria),
    margins: [
      ...wishMargins(search, box),
      ...partMargins(job, variant, sound.atWantedLevel, driverSlack(fit), own.margins),
    ],
    warnings: [
      ...job.air.warnings,
      ...own.warnings,
      ...wavesLeftOut(job, variant, point),
      ...(drivers.isobaric ? [CHAMBER] : []),
    ],
    cautions: cautionsOf(Math.max(wanted.level, sound.loudness.level, sound.heard?.oneMetre.level ?? 0), {
      there: job.heard?.wanted ?? false,
      printed: own.printed,
      travels: travels(sound.protection) || travels(atFullVoltage),
    }),
  };
}

export function amplifierOf({ amplifier: { voltage, current, rated, filter } }: Job): Design['amplifier'] {
  return {
    voltage,
    ...(current < Infinity && { current }),
    ...(rated && { rated }),
    ...(filter && { filter: filter.name }),
  };
}

/** Room behind the drivers, where they have least. */
const driverSlack = ({ placement: { drivers } }: Fit): number => Math.min(...drivers.map(({ depthLeft }) => depthLeft));

/** What was assumed because the brief does not say it, whatever the kind of box. */
const assumedOf = ({ space, written, heard }: Job): Design['assumed'] => [
  ...((written.space as { cutoutPlay?: unknown }).cutoutPlay === undefined
    ? [
        [
          'Around each cutout, ',
          [space.cutoutPlay, 'length'],
          ' is kept clear, so that the basket still fits if the saw slips.',
        ] as const,
      ]
    : []),
  ...(heard ? assumedOfRoom(heard, written.room as { readonly walls?: unknown }) : []),
];

/** What was assumed of the room, each with its amount. */
function assumedOfRoom({ walls, volume, leakCorner, inStep }: Heard, written: { readonly walls?: unknown }): Phrase[] {
  const floor: Phrase = [
    'The box touches a floor, and no other wall is near: ',
    [inStep, 'level'],
    ' at the listener.',
  ];
  const rigid: Phrase = [
    `The ${walls.length > 1 ? 'walls near' : 'wall near'} the box reflect${walls.length > 1 ? '' : 's'} all: a reflection factor of `,
    [1, 'ratio'],
    '.',
  ];
  const tight: Phrase = ['The room does not leak: the corner of its leak is ', [0, 'edge'], '.'];
  return [
    ...(written.walls === undefined ? [floor] : []),
    ...(walls.length > 0 ? [rigid] : []),
    ...(volume !== undefined && leakCorner === undefined ? [tight] : []),
  ];
}
