import { nest, partsOf } from '@airspring/workshop/nesting';
import { cutList, cutListCsv, panelBox } from '@airspring/workshop/panel';

const mm = (metres: number) => String(Number((metres * 1e3).toFixed(1)));
const box = panelBox({
  outer: { width: '402 mm', height: '340 mm', depth: '402 mm' },
  thickness: '17.7 mm',
});
if (box.ok) {
  for (const name of ['front', 'top', 'left']) {
    const piece = box.pieces.find((one) => one.name === name);
    if (piece)
      console.log(name, `${mm(piece.width)} × ${mm(piece.height)} mm`);
  }
  const rows = cutList(box);
  const sheets = nest({
    parts: partsOf(rows).flatMap(({ parts }) => parts),
    sheets: [{ length: '1250 mm', width: '800 mm' }],
    kerf: '3 mm',
    trim: '10 mm',
  });
  if (sheets.ok)
    console.log(
      `on ${sheets.sheets.length} sheet,`,
      `${Math.round(100 * sheets.waste)} % is left over or sawdust`,
    );
  console.log(cutListCsv(rows).split('\r\n').length - 2, 'rows to cut');
}
