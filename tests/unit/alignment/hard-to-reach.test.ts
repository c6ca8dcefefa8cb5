/** Boxes that a search strays from: each is answered in words, and a refusal says where no box can be built for the driver it names. */
import {
  type Alignment,
  butterworth,
  chebyshev,
  quasiThirdOrder,
  sixthOrderBandPass,
  solveAlignment,
  subChebyshev,
} from '@airspring/core/alignment';
import { driver, group } from '@airspring/core/driver';
import { closedFamily, type Drivers, passiveRadiatorFamily, seriesBandPassFamily } from '@airspring/core/enclosure';
import { expect, test, vi } from 'vitest';

// They search from every start.
vi.setConfig({ testTimeout: 60_000 });

type Parts = readonly [Sd: number, Mms: number, Cms: number, Rms: number, Re: number, Bl: number];
const of = ([Sd, Mms, Cms, Rms, Re, Bl]: Parts) => driver({ Sd, Mms, Cms, Rms, Re, Bl } as never);

/** A driver of 30 Hz and a total quality factor. */
function ofQuality(Q: number) {
  const w = 2 * Math.PI * 30;
  return of([0.03, 0.06, 1 / (w ** 2 * 0.06), 1.5, 6, Math.sqrt(6 * ((w * 0.06) / Q - 1.5))]);
}

const heavy = { Sd: 0.0285, fs: 12.5, Vas: 0.2, Qms: 17 } as never;

/** What is said of a box with a passive radiator that cannot be. */
function refusal(alignment: Alignment, drivers: Drivers = ofQuality(0.45), radiator = heavy): string | undefined {
  const found = solveAlignment(alignment, passiveRadiatorFamily, { drivers, radiator });
  return found.ok ? 'found' : found.because[0]?.text;
}

test('a search that strays beyond the largest number ends, and blames no input', () => {
  const drivers = of([
    0.015005494925063078, 0.014803316541613433, 0.000920930335233133, 6.3777114840943385, 5.175489200077488,
    7.221097626451781,
  ]);
  const input = { drivers, frontQA: 9.725903009161756 };
  const ripple = 5.11530147287985;
  expect(solveAlignment(sixthOrderBandPass({ ripple }), seriesBandPassFamily, input)).toHaveProperty('ok');
});

test('a search that stood still far from a box is no box', () => {
  const drivers = of([
    0.023048643196027032, 0.013722300817773939, 0.0018005685714186927, 0.7656744835949835, 3.8493072415031984,
    6.918736004817948,
  ]);
  const radiator = {
    Sd: 0.04358347671250479,
    fs: 15.170621865049498,
    Vas: 0.06688774406852059,
    Qms: 2.848366150001687,
  };
  expect(refusal(quasiThirdOrder, group(drivers, { series: 2, parallel: 2 }), radiator as never)).toMatch(
    /^A total Q of 0\.209 is above 0\.182, /,
  );
});

test('a total Q is not named as one that is taken if its box cannot be built', () => {
  const less = 'addedMass -0.00232 in SI units, which is less than none.';
  expect(refusal(butterworth(4))).toBe(`At the total Q of 0.355 that B4 takes, its box has ${less}`);
  expect(refusal(subChebyshev(4))).toBe(
    `A total Q of 0.450 is above 0.354, the highest that SC4 takes without losses. That one cannot be built: its box has ${less}`,
  );
});

test('one number that is missing is told in the singular', () => {
  const found = solveAlignment(chebyshev(2), closedFamily, { drivers: ofQuality(0.45) });
  expect(found).toMatchObject({ ok: false, because: [{ text: expect.stringMatching(/^C2 needs 1 number that/) }] });
});
