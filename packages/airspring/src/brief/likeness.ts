/** How many letters must be inserted, removed, changed or swapped with their neighbour to turn one word into the other. */
function distance(a: string, b: string): number {
  let [beforeLast, last] = [[] as number[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, beforeLast[j - 2]! + 1);
      }
      row.push(least);
    }
    [beforeLast, last] = [last, row];
  }
  return last[b.length]!;
}

/** A word without the differences of hurried writing: case, blanks, underscores and hyphens. */
const loose = (word: string): string => word.toLowerCase().replace(/[\s_-]/g, '');

/**
 * The known word that was probably meant, or `undefined` when none is near. A third of the letters may differ.
 *
 * @example likeliest('vas', ['fs', 'Vas']) // 'Vas'
 */
export function likeliest(written: string, known: readonly string[]): string | undefined {
  if (written.length > 40) return undefined;
  const ranked = known
    .map((word) => ({ word, far: distance(loose(written), loose(word)) }))
    .filter(({ word, far }) => far <= Math.floor(Math.max(word.length, written.length) / 3))
    .sort((a, b) => a.far - b.far);
  return ranked[0]?.word;
}
