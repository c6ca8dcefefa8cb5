import { visible } from '@airspring/core/fault';
import type { ReadWorkshop } from '../brief/workshop.js';
import type { Job } from '../job/job.js';
import type { DesignVent, Panel } from '../kind/build-record.js';
import { tellsPieces } from '../kind/round-vent-words.js';
import { cautions } from '../record/cautions.js';
import type { Design } from '../record/design-record.js';
import { asCut } from '../record/shaped-panels.js';
import { bentText, cutsText, jointsText, surfacesText } from '../words/build-text.js';
import { summary } from '../words/design-text.js';
import { impedanceText } from '../words/impedance-text.js';
import { type Phrasing, phrasing } from '../words/phrasing.js';
import { driverData } from './driver-data.js';
import { impedanceOf, loadSentence, playingSentences, protectionOf } from './played-work.js';

/** The cautions of a work, by the step at which each is due. */
const STEPS = ['dust', 'weight', 'fumes', 'mains', 'hearing', 'travel'] as const;
type Cautions = Partial<Record<(typeof STEPS)[number], string>>;

const ventOf = ({ face, clearance: __, spare: ___, bend, ...vent }: DesignVent) => ({
  ...vent,
  ...(bend && {
    bend: {
      radius: bend.radius,
      firstLeg: bend.firstLeg,
      secondLeg: bend.secondLeg,
      from: face,
      towards: bend.towards,
    },
  }),
});

const rowsOf = (design: Design, say: Phrasing): [string, string][] => {
  const { box, response, loudness, opening, numbers } = design;
  return [
    ['outside, width × height × depth', say.sizes(box.outer)],
    ['inside', say.sizes(box.inner)],
    ['air in the finished box', say.volume(box.netVolume)],
    ...numbers.map(({ what, value }): [string, string] => [what, say.phrase(value)]),
    ['reaches down to', say.reach(response.depth, response.endOfSearch)],
    ...(response.f3 === undefined ? [] : ([['f3 (half power)', say.hertz(response.f3)]] as [string, string][])),
    ['loudest steady tone at every frequency of the band, at 1 m', say.decibels(loudness.level)],
    ...(opening
      ? [
          ['quiet up to, by every published onset of noise', say.decibels(opening.noise.quiet.level)] as [
            string,
            string,
          ],
        ]
      : []),
  ];
};

/** A board as the cut list of the workshop has it, the longer size first. */
function boardOf(
  { name, count, length, width, thickness, surfaces, ...panel }: Panel,
  box: Design['box'],
  say: Phrasing,
) {
  const first = ([one, other]: readonly [number, number]) =>
    length < width ? ([other, one] as const) : ([one, other] as const);
  const both = surfaces && { outer: first(surfaces.outer), inner: first(surfaces.inner) };
  const cuts = cutsText({ ...panel, ...(both && { surfaces: both }) }, say);
  return {
    // Length and width have columns of their own.
    name: name.replace(/ \(.* × .*\)$/, ''),
    count,
    length,
    width,
    thickness: thickness ?? box.panelThickness,
    ...(cuts !== '' && { cuts }),
  };
}

/** The panels of a box that is no cuboid, each by itself, since holes are in one of equal ones alone. */
const shapedBoards = (box: Design['box'], say: Phrasing) =>
  (box.shape?.panels ?? []).map((panel) => ({ ...boardOf(asCut(panel), box, say), thickness: panel.thickness, panel }));

/** The panel across the axis that is glued on last: one without a hole, where there is one. */
function closingPanel({ shape, holes }: Design['box']): { readonly closes?: string } {
  const ends = (shape?.panels ?? []).slice(-2).toReversed();
  const closed = ends.find(
    ({ name, face }) => !holes.some((hole) => (hole.board ? hole.board.name === name : hole.face === face)),
  );
  const last = closed ?? ends[0];
  return last ? { closes: last.name } : {};
}

/**
 * A design as the workshop needs it: numbers in SI units, and sentences as they are printed. `@airspring/workshop/dossier` makes
 * pages and files of it.
 *
 * @example workOf(answer.designs[0], job)
 */
export function workOf(
  design: Design,
  job: Pick<Job, 'title' | 'units' | 'sections' | 'space' | 'wanted' | 'choices' | 'written'>,
) {
  const { title, units, sections, space, wanted } = job;
  const say = phrasing(units);
  const { box, drivers, vent } = design;
  const [width, height, depth] = box.outer;
  const tools = sections.workshop as ReadWorkshop | undefined;
  // Every box is glued.
  const due: Cautions = Object.fromEntries(
    STEPS.filter((step) => design.cautions.includes(cautions[step]) || step === 'fumes').map((step) => [
      step,
      cautions[step],
    ]),
  );
  const { printer } = sections as { readonly printer?: { readonly height: number; readonly width: number } };
  return {
    title: visible(title),
    name: `Box ${design.name}`,
    summary: visible(summary(design, say)),
    numbers: rowsOf(design, say),
    box: {
      outer: { width, height, depth },
      thickness: box.panelThickness,
      netVolume: box.netVolume,
      bracing: space.bracing,
      ...(box.placed && { placed: box.placed }),
      ...(box.chambers && { chambers: box.chambers }),
      holes: box.holes,
      solids: box.solids.map(({ part, least, greatest }) => ({
        what: part === 'clearance' ? 'air' : part,
        least,
        greatest,
      })),
      ...(box.shape && {
        joints: visible(`${jointsText(box, say)}${bentText(box, say)} ${surfacesText(box)}`),
        ...closingPanel(box),
        ...(box.shape.prisms && { prisms: box.shape.prisms }),
      }),
      boards: [...shapedBoards(box, say), ...box.boards.map((board) => boardOf(board, box, say))],
    },
    band: { from: wanted.lowest, to: wanted.highest },
    drivers: {
      name: visible(drivers.name),
      count: drivers.count,
      series: drivers.series,
      parallel: drivers.parallel,
      isobaric: drivers.isobaric,
      outerDiameter: drivers.outerDiameter,
      cutoutDiameter: drivers.cutoutDiameter,
      data: driverData(job, drivers.index, say),
    },
    load: loadSentence(design, say),
    vents: (vent ? [vent] : (design.vents ?? [])).map(ventOf),
    ...(design.weights && { weights: design.weights }),
    building: design.told.building
      .filter((phrase) => !tellsPieces(phrase))
      .map((phrase) => visible(say.phrase(phrase))),
    ...(design.filled && { filled: design.filled }),
    assumed: design.assumed.map((phrase) => visible(say.phrase(phrase))),
    playing: playingSentences(design, say),
    ...protectionOf(design, say),
    impedance: impedanceOf(design, impedanceText(design, say)),
    cautions: due,
    tools: { ...tools, ...(printer && { printer }) },
    unit: units.length,
    volumeUnit: units.volume,
  };
}
