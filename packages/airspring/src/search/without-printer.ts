import { anyBox } from './best.js';
import type { Box } from './box.js';
import { type Search, searchOf } from './search.js';

/** The search of a brief as if its printer took every part, and a box of it that meets every wish; `undefined` where there is none. */
export function metWithoutPrinter(search: Search): { readonly search: Search; readonly box: Box } | undefined {
  const { printer, ...sections } = search.job.sections;
  if (printer === undefined) return undefined;
  const free = searchOf({ ...search.job, sections }, search, search.sounds);
  const box = anyBox(free);
  return box && { search: free, box };
}
