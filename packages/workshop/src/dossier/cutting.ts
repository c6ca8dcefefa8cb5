import { format } from '@airspring/core/quantity';
import { boxDrawing, type Drawing, pieceDrawing, sheetDrawing, toSvg } from '../drawing/index.js';
import type { Nesting } from '../nesting/index.js';
import type { Piece } from '../panel/index.js';
import { elbowsBehind } from './elbow-mark.js';
import { insideBoards } from './inside-boards.js';
import { caution, columns, figure, paragraph, section, table } from './markup.js';
import { meetingsOn } from './meeting-boards.js';
import { cutsTold } from './saw-cuts.js';
import { type Sawing, usual } from './sawing.js';
import type { Says } from './says.js';
import { shapedDrawings } from './shaped-boards.js';
import { slug } from './slug.js';
import type { Work, WorkTools } from './work.js';

/** What a sheet is called among those of its board. */
export const sheetName = ({ sheets }: Pick<Nesting, 'sheets'>, i: number): string =>
  sheets.length > 1 ? `sheet ${i + 1} of ${sheets.length}` : 'sheet';

/** The path of the files of a sheet, without its ending: boards of one name are told by their thickness. */
export function sheetPath(
  { sheets }: Pick<Sawing, 'sheets'>,
  { board, thickness }: Sawing['sheets'][number],
  i: number,
) {
  const name = slug(board) || 'board';
  const alike = sheets.filter((one) => (slug(one.board) || 'board') === name).length > 1;
  return `sheets/${name}${alike ? `-${slug(format('length', thickness, 'mm', 4))}` : ''}-${i + 1}`;
}

/** The view of the whole box. */
export const boxFigure = ({ box }: Sawing, { box: work, unit }: Work): string => {
  if (box === undefined || work === undefined) return '';
  const solids = (work.solids ?? []).filter(({ what }) => what !== 'air' && what !== 'board');
  const inside = [...solids, ...insideBoards(work)];
  const shaded = inside.length > 0 ? ' What stands inside is shaded, by the cuboids around it.' : '';
  return figure(
    toSvg(boxDrawing(box, { inside }), { width: '170 mm', height: '150 mm', unit }),
    `The box from the front, from the right and from above.${shaded}`,
  );
};

/** The drawing of a panel, with what stands behind it. */
export const panelDrawing = (piece: Piece, { box }: Sawing, work: Work): Drawing =>
  pieceDrawing(piece, {
    pointing: elbowsBehind(piece, work),
    meeting: box && work.box ? meetingsOn(piece, box, work.box) : [],
  });

/** What is cut, from which sheets, and where the holes are. */
export function cuttingSection(work: Work, sawing: Sawing, says: Says): string {
  const { rows, sheets, unnested, box, mass } = sawing;
  const list = table(
    ['', 'piece', 'length', 'width', 'thick', 'edges'],
    rows.map(({ names, count, length, width, thickness, edges }) => [
      `${count} ×`,
      [...new Set(names)].join(', '),
      says(length),
      says(width),
      says(thickness),
      edges.join('; ') || 'square',
    ]),
  );
  const tools = work.tools;
  const taken = assumedOf(tools, says);
  const cut = sheets.flatMap(({ board, thickness, nesting }) => {
    const words = `${nesting.sheets.length} ${nesting.sheets.length > 1 ? 'sheets' : 'sheet'} of ${board}, ${says(thickness)} thick. ${Math.round(100 * nesting.waste)} % of it is left over or sawdust. By area alone at least ${nesting.sheetsAtLeast} ${nesting.sheetsAtLeast > 1 ? 'sheets are' : 'sheet is'} needed.`;
    const trimmed = nesting.trim > 0 ? ' The first four cuts trim the sheet.' : '';
    return [
      paragraph(words),
      paragraph(
        `Saw along the numbered lines in their order, each from edge to edge.${trimmed} The list tells how far the near side of the blade stands from an edge of the sheet as it is drawn, and after that the width of the piece between fence and blade. The blade takes ${says(nesting.kerf)} more.`,
      ),
      ...nesting.sheets.flatMap((sheet, i) => {
        const boards = sawing.shaped.map(({ panel }) => ({ board: panel, cutouts: [] }));
        const drawing = sheetDrawing(sheet, { name: sheetName(nesting, i), boards });
        return [
          figure(toSvg(drawing, { width: '175 mm', height: '110 mm', unit: work.unit })),
          columns(cutsTold(sheet, nesting.kerf, says)),
        ];
      }),
    ];
  });
  const off = unnested.map(({ board, thickness }) =>
    paragraph(
      `The pieces of ${board}, ${says(thickness)} thick, are on no sheet: "What these pages leave out" tells why. Saw them to the sizes of the cut list.`,
    ),
  );
  const met = (piece: Piece) => (work.box && box ? meetingsOn(piece, box, work.box) : []);
  const shown = (box?.pieces ?? []).filter((piece) => piece.cutouts.length > 0 || met(piece).length > 0);
  const drawings = shown.map((piece) => {
    // One hole for terminals needs less room than drivers and vents.
    const small = piece.cutouts.every(({ part }) => part === 'terminals') && met(piece).length === 0;
    const height = small ? '80 mm' : '115 mm';
    return figure(toSvg(panelDrawing(piece, sawing, work), { width: '175 mm', height, unit: work.unit }));
  });
  const bands = shown.some((piece) => met(piece).length > 0)
    ? ' A shaded band is where a board inside is glued to the other side of the panel; seen from there, left and right change places.'
    : '';
  const shaped = shapedDrawings(sawing.shaped, work).map(({ drawing }) =>
    figure(toSvg(drawing, { width: '175 mm', height: '115 mm', unit: work.unit })),
  );
  const listed = sawing.listed.map((hole) => [
    hole.what,
    hole.board?.name ?? hole.face,
    hole.form === 'circle' ? says(hole.diameter) : hole.sides.map(says).join(' × '),
    `${says(hole.across)} from ${hole.from[0]}, ${says(hole.up)} from ${hole.from[1]}`,
  ]);
  return [
    section(
      'Cut',
      [
        caution(work.cautions.dust),
        list,
        ...(work.box?.joints === undefined ? [] : [paragraph(work.box.joints)]),
        ...(shaped.length > 0
          ? [
              paragraph(
                'The drawings show each panel from outside, to the scale that stands at it, in the rectangle that it is sawn from. Distances are from the lower left corner. To measure on a drawing, print it without fitting it to the page.',
              ),
              ...shaped,
            ]
          : []),
        paragraph(`All pieces together weigh about ${mass.toFixed(1)} kg.`),
        caution(work.cautions.weight),
        ...(taken.length > 0 ? [paragraph(`Assumed of the workshop (common practice): ${taken.join(', ')}.`)] : []),
        '<h3>On the sheet</h3>',
        ...cut,
        ...off,
      ].join('\n'),
      // Without a picture of the box the cover leaves room, and all that follows moves up.
      box ? undefined : 'flows',
    ),
    ...(drawings.length + listed.length > 0
      ? [
          section(
            'Holes',
            [
              ...(drawings.length > 0
                ? [
                    paragraph(
                      `Drawings show each panel from outside, to the scale that stands at it. Distances of holes are from the lower left corner.${bands} To measure on a drawing, print it without fitting it to the page; only one at 1 : 1 is a template. A thin circle around a hole is the edge of the frame or the flange that will cover it: nothing is cut there.`,
                    ),
                  ]
                : []),
              ...drawings,
              ...(listed.length > 0
                ? ['<h3>Openings that no drawing shows</h3>', table(['hole', 'board', 'size', 'centre'], listed)]
                : []),
            ].join('\n'),
            // A short list needs no sheet of its own, nor does what follows a short page.
            drawings.length === 0 ? 'on' : sheets.length === 0 ? 'flows' : undefined,
          ),
        ]
      : []),
  ].join('\n');
}

/** What was assumed of a workshop that the brief does not describe. */
function assumedOf({ sheets, kerf, trim, board }: WorkTools, says: Says): string[] {
  const [sheet] = usual.sheets;
  return [
    ...(sheets === undefined ? [`sheets of ${says(sheet.length)} × ${says(sheet.width)}`] : []),
    ...(kerf === undefined ? [`a saw that cuts ${says(usual.kerf)} wide`] : []),
    ...(trim === undefined ? [`${says(usual.trim)} trimmed off each edge of a sheet`] : []),
    ...(board === undefined ? ['fibreboard, for the weight'] : []),
  ];
}
