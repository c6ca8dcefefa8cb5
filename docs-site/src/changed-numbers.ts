/** A number with its unit, as the page writes it. */
const numbers = /[−-]?\d+(?:\.\d+)?(?:\u00a0?(?:%|°|[a-zA-ZΩµ]+(?:\/[a-z]+)?[²³]?))?/g;

/** Where the numbers of a text stand that the text before did not say. */
export function changedNumbers(before: string, now: string): (readonly [from: number, to: number])[] {
  const left = new Map<string, number>();
  for (const [number] of before.matchAll(numbers)) left.set(number, (left.get(number) ?? 0) + 1);
  return [...now.matchAll(numbers)].flatMap(({ 0: number, index }) => {
    const known = left.get(number) ?? 0;
    if (known > 0) left.set(number, known - 1);
    return known > 0 ? [] : [[index, index + number.length] as const];
  });
}
