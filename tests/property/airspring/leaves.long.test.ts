import { expect, test } from 'vitest';
import { balanced, demo, searchFor } from '../../arbitrary/brief.js';

type Path = readonly (string | number)[];
type Tree = Readonly<Record<string | number, unknown>>;

const leavesOf = (value: unknown, path: Path = []): Path[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, one]) => leavesOf(one, [...path, Array.isArray(value) ? Number(key) : key]))
    : [path];
const at = (tree: unknown, path: Path): unknown => path.reduce((value, key) => (value as Tree)[key], tree);
const put = (tree: unknown, [key, ...rest]: Path, value: unknown): unknown => {
  const copy = (Array.isArray(tree) ? [...tree] : { ...(tree as Tree) }) as Record<string | number, unknown>;
  copy[key!] = rest.length > 0 ? put(copy[key!], rest, value) : value;
  return copy;
};

/** Leaves that no calculation reads: words, and the units that words are written in. */
const words = ['title', 'note', 'drivers.0.name', 'vent.faces.0', 'units.length', 'units.volume', 'version'];
/** Downwards where a fifth more contradicts another field, asks the impossible, or gives room that nothing was short of. */
const downwards = [
  'drivers.0.fs',
  'drivers.0.Qts',
  'drivers.0.cutoutDiameter',
  'drivers.0.Pe',
  'wanted.level',
  'printer.height',
];
/** Changed in another way: a fifth of nothing is nothing; a bend is whole; depth is idle until the driver meets the
 * back, and the least diameter until it is near the greatest. */
const otherwise: Readonly<Record<string, string | number>> = {
  'air.altitude': '500 m',
  'vent.bends': 0,
  'vent.smallest': '110 mm',
  'drivers.0.depth': '390 mm',
};

const leaves = leavesOf(demo).filter((path) => !words.includes(path.join('.')));
function changed(path: Path): unknown {
  const name = path.join('.');
  const value = at(demo, path);
  const factor = downwards.includes(name) ? 0.8 : 1.2;
  if (otherwise[name] !== undefined) return put(demo, path, otherwise[name]);
  if (typeof value === 'number') return put(demo, path, value * factor);
  const [number, unit] = (value as string).split(' ') as [string, string];
  return put(demo, path, `${Number((Number(number) * factor).toPrecision(12))} ${unit}`);
}
/** The answer for the weights of the brief alone: what changes it changes the whole. Nothing, where it cannot be met. */
const told = (brief: unknown): string => JSON.stringify(balanced(searchFor(brief)) ?? null);

const before = told(demo);
test('there is a leaf to change in each part of the brief', () => {
  expect(leaves.length).toBeGreaterThanOrEqual(42);
  expect(
    Object.keys(otherwise)
      .concat(downwards)
      .every((name) => leaves.some((path) => path.join('.') === name)),
  ).toBe(true);
});
test.each(leaves.map((path) => [path.join('.'), path] as const))(
  'a fifth of %s changes the answer',
  { timeout: 30_000 },
  (_, path) => {
    expect(told(changed(path)) === before).toBe(false);
  },
);
