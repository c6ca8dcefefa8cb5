/**
 * A test over generated cases. The runner's own binding of fast-check builds every combination of its test functions anew for each
 * file, which takes longer than most properties.
 */
import * as fc from 'fast-check';
import { test as one } from 'vitest';

export { fc };

type Arbitraries<Values> = { readonly [K in keyof Values]: fc.Arbitrary<Values[K]> };

function prop<Values extends readonly [unknown, ...unknown[]]>(
  arbitraries: Arbitraries<Values>,
  { numRuns, examples = [] }: { readonly numRuns?: number; readonly examples?: readonly Values[] } = {},
) {
  const values = fc.tuple(...(arbitraries as readonly fc.Arbitrary<unknown>[])) as unknown as fc.Arbitrary<Values>;
  return (name: string, holds: (...values: Values) => unknown, timeout?: number): void =>
    one(
      name,
      async () => {
        const isAsync = holds.constructor.name === 'AsyncFunction';
        const told = (result: unknown) => result as boolean | undefined;
        await fc.assert<[Values]>(
          isAsync
            ? fc.asyncProperty(values, async (some) => told(await holds(...some)))
            : fc.property(values, (some) => told(holds(...some))),
          { ...(numRuns !== undefined && { numRuns }), examples: examples.map((some) => [some]) },
        );
      },
      timeout,
    );
}

export const test = Object.assign(one, { prop });
