/** A time in a piece, as 2:05.3. */
export function clock(seconds: number, digits = 1): string {
  const parts = Math.round(seconds * 10 ** digits);
  const minutes = Math.floor(parts / (60 * 10 ** digits));
  const rest = (parts / 10 ** digits - 60 * minutes).toFixed(digits);
  return `${minutes}:${rest.padStart(digits === 0 ? 2 : 3 + digits, '0')}`;
}
