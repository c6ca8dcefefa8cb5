/** What was read, without the parts that have faults: anything may be missing, and a place in a list may be empty. */
export type Faultless<T> = T extends string | number | boolean
  ? T
  : T extends readonly (infer Item)[]
    ? readonly (Faultless<Item> | undefined)[]
    : { readonly [Name in keyof T]?: Faultless<NonNullable<T[Name]>> };

/** The faulty paths as a tree; each leaf is a place with a fault. */
type Tree = Map<PropertyKey, Tree>;

function treeOf(paths: readonly (readonly PropertyKey[])[]): Tree {
  const tree: Tree = new Map();
  for (const path of paths) {
    let at = tree;
    for (const [i, key] of path.entries()) {
      const branch = at.get(key);
      // Something that contains it already has a fault.
      if (branch?.size === 0) break;
      const next: Tree = i === path.length - 1 ? new Map() : (branch ?? new Map());
      at.set(key, next);
      at = next;
    }
  }
  return tree;
}

/** A copy without the leaves of the tree, made in one walk. */
function without(value: unknown, tree: Tree): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  const part = (key: PropertyKey, item: unknown) => {
    const branch = tree.get(key);
    if (branch === undefined) return item;
    return branch.size === 0 ? undefined : without(item, branch);
  };
  if (Array.isArray(value)) return value.map((item, i) => part(i, item));
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, item]) => {
      const left = part(key, item);
      return left === undefined ? [] : [[key, left]];
    }),
  );
}

/** A copy without the values at these paths. No path may be the root. */
export const faultlessOf = <T>(value: T, faulty: readonly (readonly PropertyKey[])[]): Faultless<T> =>
  without(value, treeOf(faulty)) as Faultless<T>;
