import { decimalText } from '@airspring/core/quantity';
import { boardOf, type Panel } from '../kind/build-record.js';
import { capital, inWords } from '../kind/wording.js';
import { cautions } from '../record/cautions.js';
import type { Design } from '../record/design-record.js';
import type { FreeOutside } from '../record/free-outside.js';
import { caution, paragraph, table } from './layout.js';
import type { Phrasing } from './phrasing.js';

/** A caution of this design at the step where it is due; nothing when the design does not need it. */
export const cautionOf = (design: Pick<Design, 'cautions'>, text: string): string[] =>
  design.cautions.includes(text) ? [caution(text)] : [];

/** The drivers of a design: how many there are, and how they are wired. */
export function driversText({
  name,
  count,
  series,
  parallel,
  isobaric,
}: Pick<Design['drivers'], 'name' | 'count' | 'series' | 'parallel' | 'isobaric'>): string {
  const wiring =
    series > 1 && parallel > 1
      ? [`wired as ${inWords(parallel)} parallel groups of ${inWords(series)} in series`]
      : [...(series > 1 ? ['wired in series'] : []), ...(parallel > 1 ? ['wired in parallel'] : [])];
  const pairs = isobaric ? [count > 2 ? 'mounted as isobaric pairs' : 'mounted as an isobaric pair'] : [];
  const how = [...wiring, ...pairs].join(', ');
  return `${inWords(count)} "${name}"${how === '' ? '' : ` (${how})`}`;
}

/** What a box is that is no cuboid, as a sentence after its sizes. */
export const shapeText = ({ shape }: Design['box'], say: Phrasing): string =>
  shape ? ` These are the edges of the cuboid around it: it is ${say.phrase(shape.called)}.` : '';

const JOINTS = { butt: 'butt joints', rabbet: 'rabbets', mitre: 'mitres on all edges' } as const;

/** How the panels of a box go together. */
export const jointsText = ({ shape, joint, open, panelThickness }: Design['box'], say: Phrasing): string => {
  if (shape) {
    const [first, second] = shape.panels.slice(-2).map(({ name }) => name);
    const asked =
      shape.jointLeftOut === undefined
        ? ''
        : ` The brief asks for ${JOINTS[shape.jointLeftOut]} ("workshop.joint"). These pages make that joint for cuboids only: this box is joined as told here.`;
    if (shape.panels.some(({ opening }) => opening)) {
      return `The ${first} and the ${second} panel cover the sections at the ends of the box, and a shelf covers the larger section where it meets a smaller one, around an opening for the air. The other panels stand between these and meet in mitres.${asked}`;
    }
    return `The ${first} and the ${second} panel cover the whole section of the box. ${shape.panels.length > 3 ? 'The others lie between them and meet in mitres.' : 'The other lies between them.'}${asked}`;
  }
  if (joint?.name === 'mitre')
    return 'All edges are cut at 45° and meet in mitres. Sizes are those of the outer surfaces.';
  const covers = open
    ? 'The front covers the whole box, which has no back. The top and the bottom stand behind it. The sides fill what is left.'
    : 'The front and the back cover the whole box. The top and the bottom lie between them. The sides fill what is left.';
  if (joint === undefined) return covers;
  return `${covers} A covered panel stands in a rabbet ${say.length(panelThickness - joint.setback)} deep and ${say.length(panelThickness)} wide: cut it along all edges of the front and the back, and along the left and the right edge of the top and the bottom.`;
};

/** What must stay free outside, where a box opens downwards or backwards. */
const outsideText = ({ bottom, back }: FreeOutside, say: Phrasing): string[] => [
  ...(bottom === undefined
    ? []
    : [
        `The bottom is open: stand the box on feet that leave at least ${say.length(bottom)} free below it (common practice).`,
      ]),
  ...(back === undefined
    ? []
    : [`The back is open: leave at least ${say.length(back)} free behind it (common practice).`]),
];

/** The smallest angle between surface and cut that a tilted blade makes, rad (common practice). */
const MOST_TILT = Math.PI / 4;

/** What the listed sizes of the panels of a box that is no cuboid are. */
export const surfacesText = ({ shape }: Design['box']): string => {
  const flat = shape?.panels.filter(({ bent }) => bent === undefined).flatMap(({ angles }) => angles) ?? [];
  const sharp = flat.some((angle) => angle < MOST_TILT - 1e-9)
    ? ' Blades of most saws tilt by 45° at most, which leaves an angle of 45°: saw there with an allowance, and plane the edge to a smaller angle (common practice).'
    : '';
  return `Sizes are those of the least rectangle that holds a whole panel. Where its outer surface or its inner one is smaller than that, both are told. An angle is that between the outer surface and the cut, 90° where none is told: with less the outer surface is the larger one at that edge, with more the inner one.${sharp}`;
};

/** Thickness of the thin boards that a bent panel is glued of, and of what grooves leave of a board, m (common practice). */
const [LAYER, LEFT] = [0.003, 0.002];

/** How a bent panel is made. */
export function bentText({ panels, panelThickness }: Design['box'], say: Phrasing): string {
  return panels
    .flatMap(({ name, bent, surfaces, length }) => {
      if (bent === undefined) return [];
      const [outer, inner] = [surfaces?.outer[0] ?? length, surfaces?.inner[0] ?? length];
      const count = Math.max(2, Math.round(panelThickness / LAYER));
      const layers = Array.from({ length: count }, (_, i) =>
        say.bareLength(outer + ((inner - outer) * (i + 0.5)) / count),
      );
      const sides =
        bent.hollow === 'both' ? 'each side where it is hollow' : `its ${bent.hollow} side, which is the hollow one,`;
      const closing = (panelThickness - LEFT) * bent.turn;
      return [
        ` Glue the ${name} panel of thin boards over a form, or groove ${sides} until it bends, and fill the grooves with glue (common practice).`,
        ` Laid flat, its outer surface is ${say.length(outer)} long and its inner one ${say.length(inner)}. In the middle of each of ${count} layers of ${say.length(panelThickness / count)} that makes ${layers.join(', ')} ${say.lengthUnit}, from the outer one inwards.`,
        ...(bent.hollow === 'both'
          ? []
          : [
              ` Grooves that leave ${say.length(LEFT)} of the board close when all of them together are ${say.length(closing)} wide.`,
            ]),
        ' Cut the board or each layer a few millimetres longer than listed, and trim its ends to their angles once the glue has set.',
      ];
    })
    .join('');
}

const degrees = (angle: number): string => `${decimalText((angle * 180) / Math.PI, 3)}°`;

/** The cuts of a panel that are not square, and the sizes of its surfaces where they differ from that of its blank. */
export const cutsText = (
  { angles = [], meets = [], bent, surfaces }: Pick<Panel, 'angles' | 'meets' | 'bent' | 'surfaces'>,
  say: Phrasing,
): string => {
  const edges = ['lower edge', 'right edge', 'upper edge', 'left edge'];
  const oblique = angles.flatMap((angle, i) =>
    Math.abs(angle - Math.PI / 2) > 1e-9 ? [`${degrees(angle)} at the ${meets[i] || edges[i]}`] : [],
  );
  const around = bent ? [`bent by ${degrees(bent.turn)} in all`] : [];
  const both = surfaces
    ? [`outer surface ${say.sizes(surfaces.outer)}`, `inner surface ${say.sizes(surfaces.inner)}`]
    : [];
  return [...around, ...oblique, ...both].join(', ');
};

/** Short sides that turn by less than this are those of an arc, rad. */
const MOST_TURN = (16 * Math.PI) / 180;

/** The corners of an outline where it turns, and whether an arc leads on to the next one. */
function turnsOf(outline: NonNullable<Panel['outline']>) {
  const at = (i: number) => outline[(i + outline.length) % outline.length]!;
  const direction = (i: number) => Math.atan2(at(i + 1)[1] - at(i)[1], at(i + 1)[0] - at(i)[0]);
  const turns = outline.flatMap((corner, i) => {
    const turn = Math.abs(direction(i) - direction(i - 1));
    return Math.min(turn, 2 * Math.PI - turn) > MOST_TURN ? [{ corner, i }] : [];
  });
  return turns.map(({ corner, i }, n) => {
    const next = turns[n + 1]?.i ?? turns[0]!.i + outline.length;
    return { corner, arc: next > i + 1 };
  });
}

/** The corners of one figure. */
function cornersText(figure: NonNullable<Panel['outline']>, say: Phrasing): string {
  const turns = turnsOf(figure);
  if (turns.length === 0) return 'a circle';
  const corners = turns.map(
    ({ corner: [x, y], arc }) => `${say.bareLength(x)} | ${say.bareLength(y)}${arc ? ' and on in an arc' : ''}`,
  );
  return `${corners.join(', ')} ${say.lengthUnit}`;
}

/** The corners of the panels that are no rectangles, and of their openings. */
export const outlinesText = ({ panels }: Design['box'], say: Phrasing): string[] =>
  panels.flatMap(({ name, outline, opening }) => [
    ...(outline ? [`${capital(name)}: ${cornersText(outline, say)}.`] : []),
    ...(opening ? [`Opening in the ${name}: ${cornersText(opening, say)}.`] : []),
  ]);

/** Panels to cut and holes to make in them. */
export function cutList({ box, drivers }: Design, say: Phrasing): string[] {
  const panels = box.panels.map((panel) => [
    `${panel.count} ×`,
    panel.thickness === undefined ? panel.name : `${panel.name}, ${say.length(panel.thickness)} thick`,
    say.sizes([panel.length, panel.width]),
    ...(box.shape ? [cutsText(panel, say)] : []),
  ]);
  const rectangular = box.holes.some(({ form }) => form === 'rectangle');
  const round = rectangular ? 'round ' : '';
  const cones = [
    ...new Set(box.holes.flatMap(({ what, form }) => (what === 'vent' || form === 'rectangle' ? [] : [what]))),
  ];
  const holes = box.holes.map((hole) => [
    hole.what,
    boardOf(hole),
    hole.form === 'circle' ? `${round}${say.length(hole.diameter)}` : say.sizes(hole.sides),
    `${say.length(hole.across)} from ${hole.from[0]}, ${say.length(hole.up)} from ${hole.from[1]}`,
  ]);
  return [
    paragraph(
      `Cut from ${say.length(box.panelThickness)} board. ${jointsText(box, say)}${box.shape ? `${bentText(box, say)} ${surfacesText(box)}` : box.open ? '' : ' Put the back on last.'}`,
    ),
    table(box.shape ? 'rlrl' : 'rlr', panels),
    ...(box.shape
      ? [paragraph(`Corners of panels that are no rectangles, across | up: ${outlinesText(box, say).join(' ')}`)]
      : []),
    paragraph(
      `Cut these holes. Their centres are measured on the outside${box.shape ? ' of the panel' : ', from the outer edges of the box'}, with left and right as seen from the front.${rectangular ? ' The two sides of a rectangular hole are listed in the order of the two measures of its centre.' : ''}`,
    ),
    table('llrl', [['hole', 'panel', rectangular ? 'size' : 'diameter', 'centre'], ...holes]),
    paragraph(
      `Every cutout for a ${cones.join(' or a ')} is at least ${say.length(box.cutoutLeft)} away from the nearest inner panel surface.`,
    ),
    ...outsideText(box.freeOutside, say).map(paragraph),
    ...(drivers.forcesCancel
      ? [
          paragraph(
            'The drivers stand back to back on opposite panels, on common axes, so that the forces of their cones on the box cancel.',
          ),
        ]
      : []),
    paragraph(
      `${box.shape ? '' : `The box is ${say.sizes(box.inner)} inside${box.open ? ', up to its open back' : ''}. `}${box.open ? '' : `With everything in place it holds ${say.volume(box.netVolume)} of air. `}The outer diameter of ${drivers.count > 1 ? 'each driver' : 'the driver'} is ${say.length(drivers.outerDiameter)}. This list leaves out screws, seals, braces, ${drivers.isobaric ? `the tube that joins the drivers of ${drivers.count > 2 ? 'each' : 'the'} pair, ` : ''}and a hole for the cable, which must be sealed.`,
    ),
  ];
}

/** The parts that the kind of box adds, and what was assumed. */
export const partsText = ({ told, assumed }: Design, say: Phrasing): string[] => [
  ...told.building.map((phrase) => paragraph(say.phrase(phrase))),
  ...(assumed.length > 0
    ? [
        `Assumed, because the brief does not say:\n${table(
          'l',
          assumed.map((phrase) => [say.phrase(phrase)]),
        )}`,
      ]
    : []),
];

/** Everything that has to be cut and printed, with its cautions. */
export const buildText = (design: Design, say: Phrasing): string[] => [
  ...cutList(design, say),
  ...cautionOf(design, cautions.dust),
  ...cautionOf(design, cautions.weight),
  ...partsText(design, say),
  ...cautionOf(design, cautions.fumes),
];
