import { InputError } from '../fault/index.js';
import { bracketedRoot } from '../numeric/index.js';

/** How far a limit is passed at a strength of some kind: below 0 within it, 0 at it. */
export interface Bound {
  readonly name: string;
  readonly excess: (strength: number) => number;
  /** Whether it may be kept again above a strength at which it is passed. It is then looked for in steps of a twelfth. */
  readonly returns?: true;
}

const STEPS = 80;
const STEP = 1.09;

/**
 * The least strength at which one of several bounds is reached, and its place. `start` is a guess; where no bound is passed there the
 * search goes up, and there must be some strength at which one is.
 */
export function firstPassed(
  bounds: readonly Bound[],
  start: number,
): { readonly strength: number; readonly binding: number } {
  let high = start;
  for (let k = 0; !bounds.some(({ excess }) => excess(high) > 0); k++, high *= 1.5)
    if (k === 200) throw neverPassed(bounds);
  let [strength, binding] = [high, -1];
  const search = (place: number, low: number, to: number) => {
    const found = bracketedRoot(bounds[place]!.excess, low, to, 1e-13 * to);
    if (found.ok) [strength, binding] = [found.x, place];
  };
  bounds.forEach(({ excess, returns }, place) => {
    if (returns) {
      for (let k = STEPS; k > 0; k--) {
        const [low, to] = [strength * STEP ** -k, strength * STEP ** (1 - k)];
        if (excess(to) > 0) return search(place, k === STEPS ? 0 : low, to);
      }
    } else if (excess(strength) > 0) search(place, 0, strength);
  });
  return { strength, binding };
}

/** The fault of limits that no drive passes. */
export const neverPassed = (bounds: readonly Pick<Bound, 'name'>[]): InputError => {
  const got = bounds.map(({ name }) => name).join(', ');
  const expected = 'a limit that some drive passes';
  const remedy = 'Add a limit on the drive itself, such as voltageLimit.';
  return new InputError([{ code: 'inconsistent', path: 'limits', got, expected, remedy }]);
};
