import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { conflictOf } from '../../../packages/airspring/src/search/conflict.js';
import { nearestBrief } from '../../../packages/airspring/src/search/nearest.js';
import { type Progress, type Search, searchOf } from '../../../packages/airspring/src/search/search.js';
import { demo } from '../../arbitrary/brief.js';

/** How often a search of a brief is begun, and what it says. */
function counted<T>(brief: unknown, of: (search: Search) => T): [searches: number, T] {
  let searches = 0;
  const progress: Progress = ({ what, count }) => {
    if (what === 'combination' && count === 1) searches++;
  };
  const said = of(searchOf(readBrief(brief, standard), { kinds: standard, models: standardModels, progress }));
  return [searches, said];
}

const quiet = { ...demo, vent: { ...demo.vent, quiet: true } };

test('a conflict of seven wishes out of thirteen is found without a search that shows it more than once', () => {
  const [searches, { wishes }] = counted(quiet, (search) => conflictOf(search));
  expect(wishes).toHaveLength(7);
  expect(searches).toBeLessThan(20);
});

test('where a single wish yields, no search for a smaller step of it follows', () => {
  const [searches, nearest] = counted(quiet, (search) => nearestBrief(search));
  expect(nearest?.changes.map(({ path, to }) => [path, to])).toEqual([['space.volume', '55.4 L']]);
  // Three for the box to which the wishes yield least, and one for a brief in which the level does not yield.
  expect(searches).toBe(4);
});

test('an edge shorter than the drivers need is known to conflict, without a search for a box that meets it', () => {
  const [driver] = demo.drivers;
  const brief = {
    ...demo,
    drivers: [{ ...driver!, faces: ['front'] }],
    space: { ...demo.space, height: '260 mm' },
    box: { kinds: ['closed', 'vented'] },
  };
  const [searches, { wishes }] = counted(brief, (search) => conflictOf(search));
  expect(wishes.map(({ path }) => path)).toEqual(['space.height']);
  // That for the deepest box.
  expect(searches).toBe(1);
});
