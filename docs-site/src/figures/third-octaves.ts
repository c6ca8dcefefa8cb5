import type { Design } from 'airspring';

const CUSTOMARY = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200];

/** A column at a frequency, straight in log f between its points; nothing outside of them. */
export function between(frequencies: readonly number[], values: readonly number[], f: number): number | undefined {
  const right = frequencies.findIndex((each) => each >= f * (1 - 1e-9));
  if (right < 0 || (right === 0 && frequencies[0]! > f * (1 + 1e-9))) return undefined;
  if (right === 0) return values[0];
  const [low, high] = [frequencies[right - 1]!, frequencies[right]!];
  const part = Math.log(f / low) / Math.log(high / low);
  return values[right - 1]! * (1 - part) + values[right]! * part;
}

/** Curves as a table, at the customary third octaves that all of them reach. */
export function thirdOctaves(
  designs: readonly Design[],
  column: (design: Design) => readonly number[],
  write: (value: number, design: Design, f: number) => string,
): { heads: string[]; rows: string[][] } {
  const rows = CUSTOMARY.flatMap((f) => {
    const cells = designs.map((design) => {
      const value = between(design.curves.frequencies, column(design), f);
      return value === undefined ? undefined : write(value, design, f);
    });
    return cells.every((cell) => cell !== undefined) ? [[String(f), ...cells]] : [];
  });
  return { heads: ['Hz', ...designs.map(({ name }) => name)], rows };
}
