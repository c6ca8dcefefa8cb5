const NAMES = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'];

/** A note of equal temperament, counted in semitones from A4 of 440 Hz. */
export const semitoneOf = (frequency: number): number => Math.round(12 * Math.log2(frequency / 440));
export const frequencyOf = (semitone: number): number => 440 * 2 ** (semitone / 12);

/** 'E1' is the lowest string of a double bass, 41.2 Hz. */
export function noteName(semitone: number): string {
  const fromC = semitone + 57;
  return `${NAMES[((fromC % 12) + 12) % 12]}${Math.floor(fromC / 12)}`;
}
