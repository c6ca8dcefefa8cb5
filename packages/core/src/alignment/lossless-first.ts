import type { ShapeRoot } from './roots.js';

/** Shares of the losses through which a solution is followed from the box without losses. */
const SHARES = [1e-6, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875];

const distance = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.hypot(...Array.from(a, (value, i) => value - b[i]!));

/** A spec with a share of its losses: their quality factors are divided by it. */
export function withShareOfLosses<Spec>(spec: Spec, losses: readonly string[], share: number): Spec {
  const fields = losses.filter((name) => (spec as Record<string, unknown>)[name] !== undefined);
  return {
    ...spec,
    ...Object.fromEntries(fields.map((name) => [name, (spec as Record<string, number>)[name]! / share])),
  };
}

/** A spec without its losses. */
export const withoutLosses = <Spec>(spec: Spec, losses: readonly string[]): Spec =>
  Object.fromEntries(Object.entries(spec as object).filter(([name]) => !losses.includes(name))) as Spec;

/** The losses of a spec, for people: 'at QL 7, QA 50'. */
export function lossesTold<Spec>(spec: Spec, losses: readonly string[]): string {
  const told = losses.flatMap((name) => {
    const quality = (spec as Record<string, number | undefined>)[name];
    return quality === undefined ? [] : [`${name} ${Number(quality.toPrecision(3))}`];
  });
  return told.length === 0 ? 'without losses' : `at ${told.join(', ')}`;
}

/** Puts the solution first that goes over into that of the box without losses when they become small. */
export function losslessFirst<Spec>(
  roots: readonly ShapeRoot<Spec>[],
  rootsAt: (share: number) => readonly ShapeRoot<Spec>[],
): readonly ShapeRoot<Spec>[] {
  if (roots.length < 2) return roots;
  const followed = SHARES.reduce<ArrayLike<number> | undefined>((before, share) => {
    const [first, ...more] = rootsAt(share);
    if (first === undefined || before === undefined) return first?.place ?? before;
    return more.reduce((best, one) => (distance(one.place, before) < distance(best.place, before) ? one : best), first)
      .place;
  }, undefined);
  if (followed === undefined) return roots;
  return [...roots].sort((a, b) => distance(a.place, followed) - distance(b.place, followed));
}
