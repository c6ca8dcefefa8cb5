import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { standard } from '../../../packages/airspring/src/kind/standard.js';
import { conflictOf } from '../../../packages/airspring/src/search/conflict.js';
import { searchOf } from '../../../packages/airspring/src/search/search.js';
import { demo } from '../../arbitrary/brief.js';

test('an edge shorter than the drivers need is known to conflict, without a search for a box that meets it', () => {
  let searches = 0;
  const [driver] = demo.drivers;
  const brief = {
    ...demo,
    drivers: [{ ...driver!, faces: ['front'] }],
    space: { ...demo.space, height: '260 mm' },
    box: { kinds: ['closed', 'vented'] },
  };
  const search = searchOf(readBrief(brief, standard), {
    kinds: standard,
    models: standardModels,
    progress: ({ what, count }) => {
      if (what === 'combination' && count === 1) searches++;
    },
  });
  expect(conflictOf(search).wishes.map(({ path }) => path)).toEqual(['space.height']);
  // That for the deepest box.
  expect(searches).toBe(1);
});
