import { format, inUnit, type Length, si } from '@airspring/core/quantity';
import { innerSize } from '@airspring/core/space';
import { type Nesting, nest, partsOf } from '@airspring/workshop/nesting';
import {
  butt,
  cutList,
  type Joint,
  mdf,
  mitre,
  type PanelBox,
  panelBox,
  rabbet,
} from '@airspring/workshop/panel';

/** What may be changed. */
export const inputs = {
  thickness: {
    kind: 'length',
    label: 'Thickness of the board, as measured',
    value: '17.7 mm',
    least: '15 mm',
    greatest: '18 mm',
    step: '0.1 mm',
  },
  kerf: {
    kind: 'length',
    label: 'Width of the saw cut',
    value: '3 mm',
    least: '1 mm',
    greatest: '6 mm',
    step: '0.5 mm',
  },
  sheet: {
    kind: 'length',
    label: 'Width of the sheet',
    value: '800 mm',
    least: '500 mm',
    greatest: '1250 mm',
    step: '10 mm',
  },
} as const;

interface Wish {
  readonly thickness: Length;
  readonly kerf: Length;
  readonly sheet: Length;
}

/** Box C of the whale bench, and the thickness it was designed for. */
export const outer = {
  width: '402 mm',
  height: '340 mm',
  depth: '402 mm',
} as const;
const called = si('length', 0.018);
/** Where its holes are, from the left and from the bottom. Invented. */
export const cutouts = [
  {
    part: 'driver',
    face: 'front',
    across: '136 mm',
    up: '136 mm',
    opening: { diameter: '232 mm' },
  },
  {
    part: 'vent',
    face: 'front',
    across: '343 mm',
    up: '281 mm',
    opening: { diameter: '78 mm' },
  },
] as const;
const long = '1250 mm' as const;
/** Off each edge of a sheet, which is seldom straight (common practice). */
const trim = '10 mm' as const;

/** The box of boards as thick as they were measured. */
export function boxOf(
  { thickness }: Pick<Wish, 'thickness'>,
  joint: Joint = butt,
): PanelBox {
  const box = panelBox({ outer, thickness, joint, cutouts, board: mdf });
  if (!box.ok) throw new Error(box.because[0]?.text);
  return box;
}

/** The pieces on sheets, by cuts from edge to edge. */
export function laid({ kerf, sheet }: Wish, box: PanelBox): Nesting {
  const parts = partsOf(cutList(box)).flatMap((group) => group.parts);
  const laidOut = nest({
    parts,
    sheets: [{ length: long, width: sheet }],
    kerf,
    trim,
  });
  if (!laidOut.ok) throw new Error(laidOut.because[0]?.text);
  return laidOut;
}

const short = (length: number) =>
  String(Number(inUnit('length', si('length', length), 'mm').toFixed(2)));
const mm = (length: number) => `${short(length)} mm`;
const pieceOf = ({ pieces }: PanelBox, name: string) => {
  const piece = pieces.find((one) => one.name === name);
  if (!piece) throw new Error(`there is no ${name}`);
  return piece;
};
const sizeOf = (box: PanelBox, name: string) => {
  const { width, height } = pieceOf(box, name);
  return `${short(width)} × ${short(height)} mm`;
};

/** What becomes of sides that were cut for the thickness of the design. */
function mistaken(thickness: number): string {
  const off = 2 * (called - thickness);
  return off < 5e-5
    ? 'is exactly as high as what it covers'
    : `stands out ${mm(off)} above the top`;
}

/** What follows from the sizes alone. */
export function answers(wish: Wish, box = boxOf(wish)) {
  const { thickness } = wish;
  const side = pieceOf(box, 'left');
  const litres = (panel: Length) => {
    const { width, height, depth } = innerSize({ outer, thickness: panel });
    return width * height * depth;
  };
  const more = litres(thickness) - litres(called);
  const volume = (value: number) =>
    format('volume', si('volume', value), 'L');
  const weigh = box.pieces.reduce((sum, { volume: v }) => sum + v, 0);
  const half = rabbet({ depth: si('length', thickness / 2) });
  const [stepped, mitred] = [boxOf(wish, half), boxOf(wish, mitre)];
  return {
    front: sizeOf(box, 'front'),
    top: sizeOf(box, 'top'),
    side: sizeOf(box, 'left'),
    sideHeight: mm(side.height),
    sideDepth: mm(side.width),
    wide: mm(side.place.greatest[0] - side.place.least[0]),
    depthSum: mm(2 * thickness + side.width),
    heightSum: mm(2 * thickness + side.height),
    mistaken: mistaken(thickness),
    air: volume(litres(thickness)),
    more: more < 5e-6 ? 'as much as' : `${volume(more)} more than`,
    mass: `${(weigh * mdf.density).toFixed(1)} kg`,
    step: mm(thickness / 2),
    rabbetTop: sizeOf(stepped, 'top'),
    rabbetSide: sizeOf(stepped, 'left'),
    mitreTop: sizeOf(mitred, 'top'),
    mitreSide: sizeOf(mitred, 'left'),
  };
}

const counted = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** What the layout on sheets says. */
export function answersOfLayout({ kerf }: Wish, layout: Nesting) {
  const { sheets, waste, sheetsAtLeast, sheetArea, usedArea } = layout;
  const cuts = sheets.reduce((sum, one) => sum + one.cuts.length, 0);
  const plural = (n: number) =>
    `${counted[n] ?? n} ${n > 1 ? 'sheets' : 'sheet'}`;
  // A saw makes dust of what its blade takes away.
  const dust = sheets
    .flatMap((one) => one.cuts)
    .reduce((sum, { from, to }) => sum + (to - from) * kerf, 0);
  const least = plural(sheetsAtLeast);
  return {
    sheets: plural(sheets.length),
    waste: `${Math.round(100 * waste)} %`,
    cuts: `${cuts} cuts`,
    least:
      sheets.length > sheetsAtLeast
        ? `By area alone ${least} would do, but no layout by straight cuts was found on so few`
        : 'By area alone no fewer sheets would do',
    used: format('area', usedArea, 'm²'),
    bought: format('area', sheetArea, 'm²'),
    dust: format('area', si('area', dust), 'cm²', 2),
  };
}
