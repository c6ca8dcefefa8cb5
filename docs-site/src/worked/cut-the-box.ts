import { pieceDrawing, sheetDrawing, toDxf, toSvg } from '@airspring/workshop/drawing';
import { cutList, cutListCsv } from '@airspring/workshop/panel';
import { answers, answersOfLayout, boxOf, inputs, laid } from '../../examples/cut-the-box.js';
import { once } from '../example/once.js';
import { worked } from '../example/worked.js';
import { bothWidths } from '../figures/both-widths.js';
import { drawFromAbove, drawFront } from '../figures/box-of-panels.js';
import { sheetLayout } from '../figures/sheet-layout.js';

type Wish = Parameters<typeof laid>[0];
const boxFor = once((wish: Wish) => boxOf(wish));
const answered = once((wish: Wish) => answers(wish, boxFor(wish)));
const layoutOf = once((wish: Wish) => laid(wish, boxFor(wish)));

export default worked({
  inputs,
  parts: (wish) => [() => boxFor(wish), () => answered(wish)],
  answers: (wish) => {
    const texts = answered(wish);
    return { ...texts, said: `The top is ${texts.top}, a side ${texts.side}.` };
  },
  figures: {},
  pictures: {
    box: (wish) => {
      const box = boxFor(wish);
      const { wide, sideDepth, front } = answered(wish);
      return `<div class="views">${drawFromAbove(box, `The box cut across and seen from above: the sides, ${sideDepth} deep, stand between a front and a back of ${wide} each.`)}${drawFront(box, `The front, ${front}, with its holes for the driver and the vent by their centres and diameters.`)}</div>`;
    },
  },
  slow: (wish) => {
    const layout = layoutOf(wish);
    const texts = answersOfLayout(wish, layout);
    return {
      answers: texts,
      pictures: {
        sheets: layout.sheets
          .map((sheet) =>
            bothWidths((width) =>
              sheetLayout(
                sheet,
                `${sheet.name} of ${texts.sheets}: ${sheet.parts.map(({ name }) => name).join(', ')}, to be sawn by ${sheet.cuts.length} cuts from edge to edge.`,
                width,
              ),
            ),
          )
          .join(''),
      },
    };
  },
  files: {
    'cut-list.csv': { type: 'text/csv', make: (wish) => cutListCsv(cutList(boxFor(wish))) },
    'sheet-1.dxf': {
      type: 'image/vnd.dxf',
      make: (wish) => {
        const [sheet] = layoutOf(wish).sheets;
        if (!sheet) throw new Error('There is no sheet.');
        return toDxf(sheetDrawing(sheet, { pieces: boxFor(wish).pieces }));
      },
    },
    'drawings.zip': {
      type: 'application/zip',
      make: async (wish) => {
        const { archiveOf } = await import('@airspring/workshop/dossier');
        const { pieces } = boxFor(wish);
        const drawings = [
          ...pieces.map((piece) => [`panels/${piece.name}`, pieceDrawing(piece)] as const),
          ...layoutOf(wish).sheets.map(
            (sheet, i) => [`sheets/sheet-${i + 1}`, sheetDrawing(sheet, { pieces })] as const,
          ),
        ];
        const files = drawings.map(async ([path, drawing]) => [
          { path: `${path}.svg`, contents: toSvg(drawing) },
          { path: `${path}.dxf`, contents: await toDxf(drawing) },
        ]);
        return archiveOf((await Promise.all(files)).flat(), 'drawings');
      },
    },
  },
});
