/** How many rows and how many formulas rest on what: the counts that the gate holds and the pages tell. */
import { isQuoted, type LedgerRow, type Standing, standingOf, standings } from './row.js';

type Standable = Pick<LedgerRow, 'formula' | 'status' | 'kind' | 'part' | 'source'>;

/** Number of rows by what they rest on. */
export function rowCounts(rows: readonly Standable[]): Readonly<Record<Standing, number>> {
  const count = (standing: Standing) => rows.filter((row) => standingOf(row) === standing).length;
  return {
    [standings.seen]: count(standings.seen),
    [standings.derived]: count(standings.derived),
    [standings.practice]: count(standings.practice),
  };
}

/** Number of rows whose value was read in print where another text or data file quotes it. */
export const quotedCount = (rows: readonly Standable[]): number => rows.filter(isQuoted).length;

/** The formulas of one floor: those with a result that was read in print, and those without. */
export interface FloorInPrint {
  readonly floor: string;
  readonly read: readonly string[];
  /** Those of `read` all of whose values were read where another text quotes them. */
  readonly quoted: readonly string[];
  /** The others, also those of whose result no more than a part was read. */
  readonly unread: readonly string[];
}

/**
 * By floor, which formulas ('floor/name') have a result that was read in print; a part of it does not count. `formulas` are those that must have a check;
 * formulas that the rows name besides are counted as well.
 */
export function readInPrint(rows: readonly Standable[], formulas: Iterable<string>): readonly FloorInPrint[] {
  const outside = rows.filter((row) => standingOf(row) !== undefined);
  const seen = outside.filter((row) => standingOf(row) === standings.seen && row.part === undefined);
  const read = new Set(seen.map(({ formula }) => formula));
  const atFirstHand = new Set(seen.filter((row) => !isQuoted(row)).map(({ formula }) => formula));
  const all = [...new Set([...formulas, ...outside.map(({ formula }) => formula)])].sort();
  const floorOf = (formula: string) => formula.slice(0, formula.indexOf('/'));
  return [...new Set(all.map(floorOf))].map((floor) => {
    const own = all.filter((formula) => floorOf(formula) === floor);
    const nameOf = (formula: string) => formula.slice(floor.length + 1);
    return {
      floor,
      read: own.filter((formula) => read.has(formula)).map(nameOf),
      quoted: own.filter((formula) => read.has(formula) && !atFirstHand.has(formula)).map(nameOf),
      unread: own.filter((formula) => !read.has(formula)).map(nameOf),
    };
  });
}

/** The floors whose physics and mathematics stand in textbooks and handbooks that anyone can open. */
const printedFloors: readonly string[] = ['air', 'numeric', 'duct', 'filter'];

/** One line where less than half of the formulas of those floors have a value that was read in print. */
export function tooFewInPrint(floors: readonly FloorInPrint[]): readonly string[] {
  const own = floors.filter(({ floor }) => printedFloors.includes(floor));
  const read = own.flatMap((one) => one.read).length;
  const unread = own.flatMap((one) => one.unread).length;
  if (read >= unread) return [];
  return [
    `${read} of ${read + unread} formulas of ${printedFloors.join(', ')} have a value read in print; it must be half`,
  ];
}
