/** The total quality factors that a refusal names, each held against a solve at it and a little beyond it. */
import {
  type Alignment,
  bandPass,
  butterworth,
  chebyshev,
  sixthOrderBandPass,
  solveAlignment,
  subChebyshev,
} from '@airspring/core/alignment';
import { driver } from '@airspring/core/driver';
import {
  closedFamily,
  type Family,
  fourthOrderBandPassFamily,
  parallelBandPassFamily,
  ventedFamily,
} from '@airspring/core/enclosure';
import { expect, test, vi } from 'vitest';

// They search from every start.
vi.setConfig({ testTimeout: 60_000 });

/** A driver of 40 Hz with its total and its mechanical quality factor. */
function of(Q: number, Qms: number) {
  const [w, Mms] = [2 * Math.PI * 40, 0.05];
  const Bl = Math.sqrt(w * Mms * 6 * (1 / Q - 1 / Qms));
  return driver({ Mms, Cms: 1 / (w * w * Mms), Rms: (w * Mms) / Qms, Sd: 0.03, Re: 6, Bl } as never);
}

const answer = (alignment: Alignment, family: Family<never>, losses: object, Q: number, Qms: number): string => {
  const found = solveAlignment(alignment, family as never, { drivers: of(Q, Qms), ...losses } as never);
  return found.ok ? 'a box' : found.because[0]!.text;
};

const C4 = [chebyshev(4), ventedFamily, { QL: 2 }] as const;

test.each<[string, Alignment, unknown, object, readonly number[]]>([
  ['C4 in a vented box with a great leak', ...C4, [0.3, 0.605, 3, 11, 18]],
  ['SC4 in a vented box with a great leak', subChebyshev(4), ventedFamily, { QL: 2 }, [0.2, 0.6]],
  ['BP4 of a given width', bandPass({ Q: 0.3 }), fourthOrderBandPassFamily, { frontQL: 7 }, [0.4]],
  ['BP6 with a leak between its chambers', sixthOrderBandPass(), parallelBandPassFamily, { rearQL: 2.85 }, [0.19, 0.9]],
])('%s: a bound that a refusal names has a box, and none is beyond it', (_, alignment, family, losses, refused) => {
  const solve = (Q: number) => answer(alignment, family as never, losses, Q, 20 * Q);
  for (const Q of refused) {
    const text = solve(Q);
    const [, word, end] = /(above|below) ([\d.]+), the/.exec(text) ?? [];
    const [, high, low] = /up to ([\d.]+) and again from ([\d.]+) /.exec(text) ?? [];
    const [top, bottom] = [word === 'above' ? end : high, word === 'below' ? end : low];
    expect(top ?? bottom, text).toBeDefined();
    if (top)
      expect([solve(Number(top)), solve(Number(top) * 1.01)], text).toEqual(['a box', expect.stringMatching(' Q ')]);
    if (bottom)
      expect([solve(Number(bottom)), solve(Number(bottom) * 0.99)], text).toEqual([
        'a box',
        expect.stringMatching(' Q '),
      ]);
  }
});

test('a gap in what an alignment takes is told with both its ends, whatever the mechanical quality factor', () => {
  const gap = /^C4 takes a total Q up to 0\.600 and again from 11\.4 at QL 2; the driver has 3\.00\.$/;
  for (const Qms of [4, 20, 200]) expect(answer(...(C4 as never as [Alignment, never, object]), 3, Qms)).toMatch(gap);
});

test('a total Q above the mechanical one of the driver is told as such, and not as no box', () => {
  const fixed = (Qms: number) => answer(chebyshev(4, { ripple: 8 }), ventedFamily as never, { QL: 2 }, 0.5, Qms);
  expect(fixed(20)).toBe('C4 takes a total Q of 12.3 at QL 2; the driver has 0.500.');
  expect(fixed(2)).toBe(
    'C4 takes a total Q of 12.3 at QL 2; the driver has 0.500, and its Qms of 2.00 allows no more.',
  );
});

test('a quality factor that is rounded like the bound beside it is not told as above itself', () => {
  expect(answer(butterworth(2), closedFamily as never, {}, Math.SQRT1_2, 5)).toBe(
    'A total Q of 0.707 is just above the highest that B2 takes without losses.',
  );
  expect(answer(butterworth(2), closedFamily as never, {}, 0.72, 5)).toMatch(/0\.720 is above 0\.707, the highest/);
});
