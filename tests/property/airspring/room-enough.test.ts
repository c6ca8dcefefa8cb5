import type { Brief } from 'airspring';
import { expect } from 'vitest';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { fc, test } from '../../arbitrary/property.js';

/** Vents beside one block of drivers, beside two drivers, and in both chambers of a divided box. */
const variants = (
  [
    {},
    { drivers: [{ ...demo.drivers[0], wirings: [{ parallel: 2 }], faces: ['left', 'right'], spread: 'opposed' }] },
    { box: { kinds: ['parallel-band-pass'] } },
    { box: { kinds: ['series-band-pass'] } },
    { box: { kinds: ['slot-vented'] } },
  ] as Partial<Brief>[]
)
  .flatMap((changed) => searchFor({ ...demo, ...changed }).variants)
  .filter(({ geometric }) => geometric.length > 0);

const part = fc.double({ min: 0, max: 1, noNaN: true });

test.prop([fc.constantFrom(...variants), fc.array(part, { minLength: 9, maxLength: 9 })], { numRuns: 2000 })(
  'a search that is told which length is enough says whether it fits, as the longest does',
  ({ room, least, acoustic, geometric }, parts) => {
    const [width = 0, height = 0, depth = 0] = least.map((edge, axis) => edge + 0.45 * parts[axis]!);
    const values = [...acoustic, ...geometric].map(({ from, to }, i) => from * (to / from) ** parts[4 + i]!);
    const point = [width * height * depth * 0.8, ...values];
    const longest = room(width, height, depth, point);
    const lengths = [0.5, 0.9, 1 - 1e-6, 1, 1 + 1e-6, 1.1].map((share) => share * longest);
    for (const enough of [...lengths, parts[3]!]) {
      if (enough > 0) expect(room(width, height, depth, point, enough) >= enough).toBe(longest >= enough);
    }
  },
);

const quick = variants.flatMap((variant) => (variant.fits ? [{ ...variant, fits: variant.fits }] : []));
const PANEL = 0.018;

test.prop([fc.constantFrom(...quick), fc.array(part, { minLength: 9, maxLength: 9 })], { numRuns: 200 })(
  'the quick answer to whether a box fits is that of placing it',
  ({ fits, place, parts: partsOf, least, span, acoustic, geometric }, parts) => {
    const [width = 0, height = 0, depth = 0] = least.map((edge, axis) => edge + 0.35 * parts[axis]!);
    const values = [...acoustic, ...geometric].map(({ from, to }, i) => from * (to / from) ** parts[4 + i]!);
    const inner = [width, height, depth] as const;
    const edges = [width + 2 * PANEL, height + 2 * PANEL, depth + 2 * PANEL] as const;
    // More air asks for a shorter vent: from far too long to short.
    for (const times of [1, 2, 4, 8, 16].map((whole) => whole * (0.5 + parts[3]!))) {
      const point = [width * height * depth * times, ...values, ...(span ? [inner[span.edge]] : [])];
      if (partsOf(point, { extent: 0, taken: 0, effort: 0 }))
        expect(fits(...inner, point)).toBe(place(edges, point).ok);
    }
  },
);

test('such vents are among the boxes that are asked', () => {
  expect(new Set(variants.map(({ kind }) => kind.name))).toEqual(
    new Set(['vented', 'slot-vented', 'parallel-band-pass', 'series-band-pass']),
  );
  expect(new Set(quick.map(({ kind }) => kind.name))).toEqual(new Set(['vented', 'slot-vented']));
});
