import { type ComplexColumn, complexColumn } from '../numeric/index.js';

/** Hands out columns of one length. */
export type TakeColumn = () => ComplexColumn;

/** Columns that serve one set of numbers after another: `restart` takes all of them back. They keep their old contents. */
export function columnRoom(length: number): { readonly take: TakeColumn; readonly restart: () => void } {
  const columns: ComplexColumn[] = [];
  let used = 0;
  return {
    take: () => {
      const column = columns[used] ?? complexColumn(length);
      columns[used++] = column;
      return column;
    },
    restart: () => {
      used = 0;
    },
  };
}
