/** Two significant digits of the values in a decade of a series. */
type Decade = readonly number[];

/** The series of preferred values in which capacitors are sold (IEC 60063). */
export const series = {
  E6: [10, 15, 22, 33, 47, 68],
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
} as const satisfies Readonly<Record<string, Decade>>;

/** The value at a place in a series, where place 0 is 10 in the unit. */
export function preferredAt(decade: Decade, place: number, unit: number): number {
  const tens = Math.floor(place / decade.length);
  const digits = decade[place - tens * decade.length]!;
  // Division keeps 22 / 1e6 the double nearest to 22e-6.
  return (digits * 10 ** tens) / (1 / unit);
}

/** The place in a series, as a real number: it runs evenly in the logarithm between neighbouring values. */
export function placeOf(decade: Decade, value: number, unit: number): number {
  const many = decade.length;
  const tens = Math.floor(Math.log10(value / unit / decade[0]!) + 1e-9);
  const digits = value / unit / 10 ** tens;
  const above = decade.findIndex((one) => one > digits * (1 + 1e-9));
  const low = (above < 0 ? many : above) - 1;
  const [from, to] = [decade[low]!, decade[low + 1] ?? 10 * decade[0]!];
  const between = Math.log(digits / from) / Math.log(to / from);
  return tens * many + low + (Math.abs(between) < 1e-6 ? 0 : between);
}
