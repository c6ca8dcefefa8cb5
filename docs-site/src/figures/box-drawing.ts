import type { Design, Hole } from 'airspring';
import type { BriefFacts } from '../brief-facts.js';
import { html, type Markup } from '../html.js';
import { say } from '../say.js';
import { along, centreLine, centreOf, cornersOf, opposite, outwards, type Point } from './box-geometry.js';
import type { Figure } from './figure.js';

/** A view of the box: which edges it shows, and where a point lies on it, right and down. */
interface View {
  readonly name: string;
  readonly size: readonly [across: number, down: number];
  /** What the brief calls its edges. */
  readonly edges: readonly [across: string, down: string];
  readonly at: (point: Point) => readonly [number, number];
  readonly seen: Hole['face'];
}

/** Front, right side beside it, and above over it, as joiners draw. */
const viewsOf = ([width, height, depth]: Design['box']['outer']): { above: View; front: View; side: View } => ({
  above: {
    name: 'from above',
    size: [width, depth],
    edges: ['width', 'depth'],
    at: ([x, , z]) => [x, depth - z],
    seen: 'top',
  },
  front: {
    name: 'from the front',
    size: [width, height],
    edges: ['width', 'height'],
    at: ([x, y]) => [x, height - y],
    seen: 'front',
  },
  side: {
    name: 'from the right',
    size: [depth, height],
    edges: ['depth', 'height'],
    at: ([, y, z]) => [z, height - y],
    seen: 'right',
  },
});

const px = (value: number): string => value.toFixed(1);

function vents(design: Design, view: View, scale: number): Markup[] {
  const { vent, box } = design;
  if (!vent) return [];
  return box.holes.flatMap((hole) => {
    if (hole.what !== 'vent') return [];
    const centre = centreOf(hole, box.outer);
    const path = centreLine(centre, vent).map((point) =>
      view
        .at(point)
        .map((value) => px(value * scale))
        .join(' '),
    );
    const [x, y] = view.at(centre).map((value) => px(value * scale)) as [string, string];
    const tube = (diameter: number, part: string) =>
      html`<path class="${part}" d="M${path.join('L')}" stroke-width="${px(diameter * scale)}"/>`;
    const ring = (diameter: number, part: string) =>
      html`<circle class="${part}" cx="${x}" cy="${y}" r="${px((diameter / 2) * scale)}"/>`;
    const hidden = view.seen === hole.face ? ' hidden' : '';
    // A leg along the line of sight is seen as a ring, where its end lies.
    const end = centreLine(centre, vent).at(-1) as Point;
    const endOn = vent.bend?.towards === view.seen || vent.bend?.towards === opposite[view.seen];
    const [endX, endY] = view.at(end).map((value) => px(value * scale)) as [string, string];
    const open = [vent.outerDiameter, vent.diameter].map(
      (diameter, i) =>
        html`<circle class="${i === 0 ? 'tube-end' : 'bore-end'}" cx="${endX}" cy="${endY}" r="${px((diameter / 2) * scale)}"/>`,
    );
    return [
      tube(vent.outerDiameter, `tube${hidden}`),
      tube(vent.diameter, `bore${hidden}`),
      html`<path class="centre" d="M${path.join('L')}"/>`,
      ...(endOn ? open : []),
      ...(view.seen === hole.face
        ? [ring(vent.flangeDiameter, 'flange'), ring(vent.outerDiameter, 'tube-end'), ring(vent.diameter, 'bore-end')]
        : []),
    ];
  });
}

function drivers(design: Design, view: View, scale: number, depth: number): Markup[] {
  const { box, drivers: sizes } = design;
  return box.holes.flatMap((hole) => {
    if (hole.what !== 'driver') return [];
    const centre = centreOf(hole, box.outer);
    const [x, y] = view.at(centre).map((value) => px(value * scale)) as [string, string];
    if (view.seen === hole.face && !hole.board) {
      return [sizes.outerDiameter, sizes.cutoutDiameter].map(
        (diameter, i) =>
          html`<circle class="${i === 0 ? 'driver' : 'cutout'}" cx="${x}" cy="${y}" r="${px((diameter / 2) * scale)}"/>`,
      );
    }
    // On the far side, and in a board inside, only the cutout is seen, through the box.
    if (view.seen === hole.face || view.seen === opposite[hole.face])
      return [ringOf('cutout', x, y, sizes.cutoutDiameter * scale)];
    const out = outwards[hole.face];
    const end = along(centre, out, -depth);
    const [endX, endY] = view.at(end).map((value) => px(value * scale)) as [string, string];
    return [
      html`<path class="driver-body" d="M${x} ${y}L${endX} ${endY}" stroke-width="${px(sizes.cutoutDiameter * scale)}"/>`,
    ];
  });
}

const ringOf = (part: string, x: string, y: string, diameter: number): Markup =>
  html`<circle class="${part}" cx="${x}" cy="${y}" r="${px(diameter / 2)}"/>`;

/** Holes that are neither a driver's nor a tube's: their outline where one looks at them, else a gap in the panel. */
function openings({ box, vent }: Design, view: View, scale: number): Markup[] {
  const place = (point: Point) => view.at(point).map((value) => value * scale) as [number, number];
  return box.holes.flatMap((hole) => {
    if (hole.what === 'driver' || (hole.what === 'vent' && vent)) return [];
    const centre = centreOf(hole, box.outer);
    const [x, y] = place(centre);
    const [[left, top], [right, bottom]] = cornersOf(hole, centre).map(place) as [[number, number], [number, number]];
    if (view.seen === hole.face || (hole.form === 'circle' && view.seen === opposite[hole.face])) {
      if (hole.form === 'rectangle') return [rectangle('cutout', left, top, right, bottom)];
      return [ringOf('cutout', px(x), px(y), hole.diameter * scale)];
    }
    const [endX, endY] = place(along(centre, outwards[hole.face], -box.panelThickness));
    const wide = Math.abs(endX - x) > Math.abs(endY - y) ? bottom - top : right - left;
    return [
      html`<path class="bore" d="M${px(x)} ${px(y)}L${px(endX)} ${px(endY)}" stroke-width="${px(Math.abs(wide))}"/>`,
    ];
  });
}

const rectangle = (part: string, left: number, top: number, right: number, bottom: number): Markup =>
  html`<path class="${part}" d="M${px(left)} ${px(top)}H${px(right)}V${px(bottom)}H${px(left)}Z"/>`;

/** Boards inside with holes in them, as outlines. */
function boards({ box }: Design, view: View, scale: number): Markup[] {
  const each = new Map(
    box.holes.flatMap((hole) => (hole.board ? [[hole.board.name, { ...hole, board: hole.board }]] : [])),
  );
  return [...each.values()].map((hole) => {
    const corners = [
      centreOf({ ...hole, across: 0, up: 0 }, box.outer),
      along(
        centreOf({ ...hole, across: hole.board.size[0], up: hole.board.size[1] }, box.outer),
        outwards[hole.face],
        -box.panelThickness,
      ),
    ];
    const [[left, top], [right, bottom]] = corners.map((point) => view.at(point).map((value) => value * scale)) as [
      [number, number],
      [number, number],
    ];
    return rectangle('behind', left, top, right, bottom);
  });
}

/** A vent that is no tube, boards inside, and what passive radiators need, as outlines behind the panels. */
function behind({ box, vent }: Design, view: View, scale: number): Markup[] {
  return box.solids.flatMap(({ part, least, greatest }) => {
    if (part !== 'radiator' && part !== 'board' && (part !== 'vent' || vent)) return [];
    const [from, to] = [least, greatest].map((corner) => view.at(corner).map((value) => value * scale));
    const [[left, top], [right, bottom]] = [from, to] as [[number, number], [number, number]];
    return [rectangle('behind', left, top, right, bottom)];
  });
}

/** Names that stand in the view whose face holds them. */
function names(design: Design, view: View, scale: number): Markup[] {
  return design.box.holes.flatMap((hole) => {
    if (hole.face !== view.seen || hole.board) return [];
    const [x, y] = view.at(centreOf(hole, design.box.outer));
    return [html`<text x="${px(x * scale)}" y="${px(y * scale + 4)}" text-anchor="middle">${hole.what}</text>`];
  });
}

function drawView(design: Design, view: View, scale: number, depth: number): Markup {
  const [across, down] = view.size.map((value) => value * scale) as [number, number];
  const t = design.box.panelThickness * scale;
  const outline = `M0 0H${px(across)}V${px(down)}H0Z`;
  const inside = `M${px(t)} ${px(t)}V${px(down - t)}H${px(across - t)}V${px(t)}Z`;
  const whole = view.seen === 'front';
  return html`${
    whole
      ? html`<path class="panel" d="${outline}"/><path class="behind" d="${inside}"/>`
      : html`<path class="wood" d="${outline}${inside}"/><path class="edge" d="${outline}${inside}"/>`
  }${vents(design, view, scale)}${behind(design, view, scale)}${boards(design, view, scale)}${openings(design, view, scale)}${drivers(design, view, scale, depth)}${names(design, view, scale)}`;
}

/** What the shades mean, for the empty corner over the side view. */
const keyOf = ({ vent }: Design): string[] => [
  ...(vent ? ['green: tube of the vent'] : []),
  'grey: kept free for the driver',
  'broken: inner edges, cut-out',
];

const GAP = 34;
const MARGIN = { left: 24, top: 4, right: 4, bottom: 26 };

/** What a box without tubes has in its panels beside drivers. */
function openingWords({ box }: Design): string {
  const faces = box.holes.flatMap(({ what, face }) => (what === 'driver' ? [] : [`${what} on the ${face}`]));
  return faces.length > 0 ? `it has a ${faces.join(', a ')}` : 'it has no vent';
}

/** The box from three sides, driver and vent to scale. */
export function boxFigure(design: Design, facts: BriefFacts): Figure {
  const { box, vent, drivers: sizes } = design;
  const [width, height, depth] = box.outer;
  const mm = (value: number) => say('length', value, facts.length, 4);
  const driverDepth = facts.drivers.get(sizes.name)?.depth ?? 0;
  const bend = vent?.bend;
  const ventWords = !vent
    ? openingWords(design)
    : bend
      ? `the vent runs ${mm(bend.firstLeg)} inwards from the ${vent.face}, turns ${bend.towards} about a radius of ${mm(bend.radius)}, and goes on for ${mm(bend.secondLeg)}`
      : `the vent runs straight for ${mm(vent.length)} inwards from the ${vent.face}`;
  const label = `${mm(width)} wide, ${mm(height)} high, ${mm(depth)} deep outside; ${ventWords}.`;
  const title = `Box ${design.name} from above, the front and the right`;
  const views = viewsOf(box.outer);

  const draw = (total: number): string => {
    const beside = total >= 500;
    const room = total - MARGIN.left - MARGIN.right - (beside ? GAP : 0);
    const scale = Math.min(room / (beside ? width + depth : Math.max(width, depth)), 0.72 / 1e-3);
    const s = (value: number) => value * scale;
    const places: readonly (readonly [View, number, number])[] = beside
      ? [
          [views.above, 0, 0],
          [views.front, 0, s(depth) + GAP],
          [views.side, s(width) + GAP, s(depth) + GAP],
        ]
      : [
          [views.above, 0, 0],
          [views.front, 0, s(depth) + GAP],
          [views.side, 0, s(depth + height) + 2 * GAP],
        ];
    const [, , lastY] = places[2] as readonly [View, number, number];
    const tall = lastY + s(height) + MARGIN.top + MARGIN.bottom;
    const words = (view: View, x: number, y: number) => {
      const [across, down] = view.size;
      const [right, below] = [x + s(across), y + s(down)];
      return html`<path class="dimension" data-edge="${view.edges[0]}" d="M${px(x)} ${px(below + 5)}H${px(right)}"/><path class="dimension" data-edge="${view.edges[1]}" d="M${px(x - 5)} ${px(y)}V${px(below)}"/>
<text class="view" data-edge="${view.edges[0]}" x="${px(x + s(across) / 2)}" y="${px(y + s(down) + 17)}" text-anchor="middle">${view.name}: ${mm(across)}</text>
<text class="view" data-edge="${view.edges[1]}" transform="translate(${px(x - 8)} ${px(y + s(down) / 2)}) rotate(-90)" text-anchor="middle">${mm(down)}</text>`;
    };
    const key = beside
      ? keyOf(design).map(
          (line, i) =>
            html`<text class="view" x="${px(s(width) + GAP)}" y="${px(s(depth) - 20 * (keyOf(design).length - i) + 14)}">${line}</text>`,
        )
      : [];
    return html`<svg class="drawing" role="img" aria-label="${`${title}: ${label}`}" width="${total}" height="${px(tall)}" viewBox="0 0 ${total} ${px(tall)}" xmlns="http://www.w3.org/2000/svg">
<g transform="translate(${MARGIN.left} ${MARGIN.top})">${places.map(([view, x, y]) => html`<g transform="translate(${px(x)} ${px(y)})">${drawView(design, view, scale, driverDepth)}</g>${words(view, x, y)}`)}${key}</g></svg>`
      .markup;
  };
  return {
    id: `box-${design.name}`,
    title,
    label,
    note: 'To scale. The views from above and from the right look through the panels. Grey marks the cylinder kept free for the driver.',
    draw,
  };
}
