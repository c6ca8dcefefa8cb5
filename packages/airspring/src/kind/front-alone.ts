import type { Fault } from '@airspring/core/fault';
import type { DriverChoice, Job, Written } from '../job/job.js';

export const LINES: readonly string[] = ['line', 'stepped-line', 'tapered-line'];
const FRONT_ALONE: readonly string[] = [...LINES, 'open-baffle'];

/** Drivers on the front alone, where a brief lets them stand there together. */
export function onFront(choice: DriverChoice): DriverChoice | undefined {
  const { faces, spread } = choice.seating;
  if (!faces.includes('front') || (spread !== 'one-face' && faces.length > 1)) return undefined;
  return { ...choice, seating: { faces: ['front'], spread: 'one-face' } };
}

/** A brief for such kinds of box alone whose drivers may not stand there; told once, by the first of the kinds. */
export const acrossFront =
  (name: string) =>
  (_written: Written, read: Partial<Job['sections']>): Fault[] => {
    const { box, drivers = [] } = read as {
      box?: { kinds?: readonly string[] };
      drivers?: readonly ({ faces?: readonly string[]; spread?: string } | undefined)[];
    };
    const { kinds = [] } = box ?? {};
    if (kinds[0] !== name || !kinds.every((kind) => FRONT_ALONE.includes(kind))) return [];
    const since = `since ${kinds.map((kind) => (LINES.includes(kind) ? 'a line begins behind the front' : 'the front of an open baffle is its board'))[0]}`;
    return drivers.flatMap((driver, i): Fault[] => {
      const { faces, spread = 'one-face' } = driver ?? {};
      if (faces === undefined) return [];
      if (!faces.includes('front')) {
        const remedy = 'Add front, or name another kind of box.';
        const expected = `front among them, ${since}`;
        return [{ code: 'inconsistent', path: `drivers[${i}].faces`, got: faces, expected, remedy }];
      }
      if (spread === 'one-face' || faces.length === 1) return [];
      const remedy = 'Leave spread out, or name another kind of box.';
      const expected = `one-face, ${since}`;
      return [{ code: 'inconsistent', path: `drivers[${i}].spread`, got: spread, expected, remedy }];
    });
  };
