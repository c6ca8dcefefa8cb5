import { axesOf, boardOf, type Hole } from '../kind/build-record.js';
import type { Design } from '../record/design-record.js';
import type { Phrasing } from '../words/phrasing.js';
import { escaped, mm } from './markup.js';

/** Size of the board that a hole is in, across and up. */
const boardSize = ({ box: { outer } }: Design, { board, face }: Hole): readonly [across: number, up: number] =>
  board?.size ?? (axesOf(face).map((axis) => outer[axis]!) as [number, number]);

/** How far the edges of a panel stand back from those of its face, across and up: front and back cover the others, top and bottom the sides. */
function setbackOf({ box }: Design, { board, face }: Hole): readonly [across: number, up: number] {
  if (board !== undefined || box.shape !== undefined || face === 'front' || face === 'back') return [0, 0];
  const setback = box.joint?.setback ?? box.panelThickness;
  return face === 'top' || face === 'bottom' ? [0, setback] : [setback, setback];
}

/** The edge of a board: a rectangle, or the outline of a panel that is none. */
function boardPath({ box }: Design, name: string, across: number, up: number): string {
  const outline = box.shape?.panels.find((panel) => panel.name === name)?.outline;
  if (outline === undefined) return `M0 0H${mm(across)}V${mm(up)}H0Z`;
  return `M${outline.map(([x, y]) => `${mm(x)} ${mm(up - y)}`).join('L')}Z`;
}

/** Widest drawing on a sheet, mm on paper. */
const WIDEST = 170;
const TALLEST = 110;
/** Width on paper of a hole that holds its words, m. */
const ROOMY = 0.03;
const SCALES = [1, 2, 2.5, 5, 10, 20];

/** The scale at which a panel fits on the sheet: one to this. */
const scaleOf = ([across, up]: readonly [number, number]): number =>
  SCALES.find((scale) => (across * 1e3) / scale <= WIDEST && (up * 1e3) / scale <= TALLEST) ?? 50;

const sides = (hole: Hole): readonly [number, number] =>
  hole.form === 'circle' ? [hole.diameter, hole.diameter] : hole.sides;

function outline(hole: Hole, up: number): string {
  const [x, y] = [hole.across, up - hole.up];
  const [wide, tall] = sides(hole);
  const cross = `<path class="axis" d="M${mm(x - wide * 0.6)} ${mm(y)}H${mm(x + wide * 0.6)}M${mm(x)} ${mm(y - tall * 0.6)}V${mm(y + tall * 0.6)}"/>`;
  const shape =
    hole.form === 'circle'
      ? `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(wide / 2)}"/>`
      : `<path d="M${mm(x - wide / 2)} ${mm(y - tall / 2)}h${mm(wide)}v${mm(tall)}h${mm(-wide)}Z"/>`;
  return shape + cross;
}

/** A panel from outside, or a board inside, with its holes and their centres, to a round scale, which is printed. */
export function panelDrawing(design: Design, name: string, say: Phrasing): string {
  const holes = design.box.holes.filter((hole) => boardOf(hole) === name);
  const [across, up] = boardSize(design, holes[0] as Hole);
  const scale = scaleOf([across, up]);
  const [beside, below] = setbackOf(design, holes[0] as Hole);
  const sawn = [across - 2 * beside, up - 2 * below] as const;
  // What is sawn is smaller than the face, where other panels cover its edges.
  const covered = beside + below > 0;
  const size = covered ? `${say.sizes(sawn)}, in its face of ${say.sizes([across, up])}` : say.sizes(sawn);
  const label = `The ${name}${holes[0]?.board ? '' : ' panel'}, ${size}, 1 : ${scale}`;
  const edge = covered
    ? `<path class="axis" d="M${mm(beside)} ${mm(below)}h${mm(sawn[0])}v${mm(sawn[1])}h${mm(-sawn[0])}Z"/>`
    : '';
  const paper = (metres: number) => (metres * 1e3) / scale;
  // A line of 0.3 mm and letters of 3 mm on paper, whatever the scale.
  const style = `stroke-width:${0.3 * scale};font-size:${3 * scale}px`;
  const texts = holes.map((hole) => {
    const size = hole.form === 'circle' ? `⌀ ${say.length(hole.diameter)}` : say.sizes(hole.sides);
    const place = `${say.bareLength(hole.across)} | ${say.bareLength(hole.up)}`;
    const at = `x="${mm(hole.across)}" text-anchor="middle"`;
    // In a hole that is too small for them the words stand below it.
    const inside = sides(hole)[0] / scale > ROOMY;
    const y = up - hole.up + (inside ? 0 : sides(hole)[1] / 2 + 0.006 * scale);
    return `<text ${at} y="${mm(y - 0.002 * scale)}">${escaped(hole.what)} ${size}</text><text ${at} y="${mm(y + 0.0025 * scale)}">${place}</text>`;
  });
  return `<figure><svg class="panel" role="img" aria-label="${escaped(label)}" width="${paper(across).toFixed(2)}mm" height="${paper(up).toFixed(2)}mm" viewBox="0 0 ${mm(across)} ${mm(up)}" style="${style}" xmlns="http://www.w3.org/2000/svg"><path class="board" d="${boardPath(design, name, across, up)}"/>${edge}${holes.map((hole) => outline(hole, up)).join('')}${texts.join('')}</svg><figcaption>${escaped(label)}. Centres: from the ${holes[0]?.from[0] ?? 'left'} | from the ${holes[0]?.from[1] ?? 'bottom'} edge${covered ? ' of the face' : ''}, ${say.lengthUnit}.</figcaption></figure>`;
}
