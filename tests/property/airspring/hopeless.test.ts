import type { Brief } from 'airspring';
import { describe, expect } from 'vitest';
import { WITHIN } from '../../../packages/airspring/src/search/axis.js';
import { anyBox } from '../../../packages/airspring/src/search/best.js';
import { costOfMeeting } from '../../../packages/airspring/src/search/cost.js';
import { explore } from '../../../packages/airspring/src/search/explore.js';
import { yieldedLeast } from '../../../packages/airspring/src/search/later-band.js';
import { missed } from '../../../packages/airspring/src/search/wishes.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { fuzzRuns } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

/** Each run is several whole searches. */
const RUNS = Math.min(60, Math.ceil(fuzzRuns / 60));
const mm = (value: number) => `${value} mm`;

/** Briefs that ask about as much as a box can give: some can be met, and more cannot. */
const briefs: fc.Arbitrary<Brief> = fc
  .record({
    width: fc.integer({ min: 290, max: 480 }),
    height: fc.integer({ min: 290, max: 420 }),
    depth: fc.integer({ min: 240, max: 420 }),
    lowest: fc.integer({ min: 26, max: 40 }),
    level: fc.integer({ min: 90, max: 103 }),
    airSpeed: fc.integer({ min: 8, max: 17 }),
    kinds: fc.constantFrom(['vented'], ['closed', 'vented'], ['flared-vented']),
  })
  .map(({ width, height, depth, lowest, level, airSpeed, kinds }) => ({
    ...demo,
    space: { width: mm(width), height: mm(height), depth: mm(depth), panelThickness: '18 mm' },
    wanted: { ...demo.wanted, lowest: `${lowest} Hz`, level: `${level} dB` },
    vent: { ...demo.vent, airSpeed: `${airSpeed} m/s` },
    box: { ...demo.box, kinds },
  }));

describe('what a search leaves out', { timeout: 600_000 }, () => {
  test.prop([briefs], { numRuns: RUNS })('no box that is too far from a brief leads to one that meets it', (brief) => {
    // Searches of one brief share what they know of room: it changes no answer.
    const search = searchFor(brief);
    const [box] = explore(search, [{ ...costOfMeeting, most: Infinity }], WITHIN);
    const found = box !== undefined && missed(box.excess) === 0;
    if (found) expect(anyBox(search)).toBeDefined();
  });

  test.prop([briefs], { numRuns: Math.ceil(RUNS / 4) })(
    'no beginning of the band that is left out yields less than the one that is taken',
    (brief) => {
      const search = searchFor(brief);
      if (anyBox(search) !== undefined) return;
      const whole = yieldedLeast(search, Infinity);
      if (whole === undefined) return;
      // A thousandth of what yields most.
      expect(yieldedLeast(search)?.cost ?? Infinity).toBeLessThan(whole.cost + 1e-3);
    },
  );
});
