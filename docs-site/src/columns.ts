/** How a table is set: columns of numbers, their one unit, and what a telephone does with its rows. */

/** A column that holds nothing but numbers, and dashes where there is none. */
export interface Numbers {
  /** The one unit of all its cells; it stands in the head instead. */
  readonly unit: string;
  readonly cells: readonly { readonly text: string; readonly pad: string }[];
}

const UNIT = '%|°C?|dB|Pa|(?:k|m|µ)?(?:Hz|V|A|W|Ω|H|s|g)|L|(?:c|m)?m[²³]?|m/s|rad/s|kg|kg/m³|W/m²';
const NUMBER = new RegExp(`^([−+±]?\\d+)(\\.\\d+)?((?: × 10[⁻⁰¹²³⁴-⁹]+)?)(?: (${UNIT}))?$`);
const NONE = /^[–—]?$/;

/** What the cells of a column have in common; undefined where one of them holds words. */
export function numbersOf(cells: readonly string[]): Numbers | undefined {
  const texts = cells.map((cell) => cell.replaceAll('\u00a0', ' ').trim());
  const found = texts.map((text) => NUMBER.exec(text));
  if (!found.some(Boolean) || texts.some((text, i) => !found[i] && !NONE.test(text))) return undefined;
  const units = new Set(
    found.flatMap((match) =>
      match && Number(`${match[1]}${match[2] ?? ''}`.replace('−', '-')) !== 0 ? [match[4] ?? ''] : [],
    ),
  );
  const unit = units.size === 1 ? ([...units][0] as string) : '';
  const powers = found.some((match) => match?.[3]);
  const longest = Math.max(...found.map((match) => match?.[2]?.length ?? 0));
  return {
    unit,
    cells: texts.map((_, i) => {
      const text = cells[i] as string;
      const decimals = found[i]?.[2] ?? '';
      // What is lacking is set and not seen: points stand below each other in every face.
      const pad =
        found[i] && longest > 0 && !powers && units.size === 1 ? '.'.padEnd(longest, '0').slice(decimals.length) : '';
      return { text: unit === '' ? text : text.replace(new RegExp(`[\\u00a0 ]${unit}$`), ''), pad };
    }),
  };
}

/** A cell of more characters has a line of its own in such a block. */
export const LONG = 24;
/** So many characters stand beside each other on a telephone. */
const TELEPHONE = 42;
const longestWord = (text: string): number => Math.max(0, ...text.split(' ').map((word) => word.length));

/** Whether columns, each its head and its cells, are too many for a telephone: there every row becomes a block. */
export const isWide = (columns: readonly (readonly string[])[]): boolean =>
  columns.reduce(
    (sum, [head = '', ...cells]) =>
      sum +
      2 +
      Math.max(longestWord(head), ...cells.map((cell) => Math.max(longestWord(cell), Math.min(cell.length, 16)))),
    0,
  ) > TELEPHONE;

/**
 * Class and style of a table: `n2` where the second column holds numbers, and where rows become blocks, `rows` and the heads
 * that stand before their cells. Said once for the table: for each cell it would be half of a page's weight.
 */
export function tableLook(heads: readonly string[], numbers: readonly (Numbers | undefined)[], wide: boolean) {
  const names = [...(wide ? ['rows'] : []), ...numbers.flatMap((column, k) => (column ? [`n${k + 1}`] : []))];
  // The name of a row says what it is; a number does not.
  const told = heads.flatMap((head, k) =>
    wide && (k > 0 || numbers[k]) ? [`--h${k + 1}:"${head.replace(/["\\\n]/g, ' ')}"`] : [],
  );
  return { names, style: told.join(';') };
}
