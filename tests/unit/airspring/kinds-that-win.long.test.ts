import { design } from 'airspring';
import { expect, test } from 'vitest';
import pipe from '../../../packages/airspring/briefs/classroom-organ-pipe.json' with { type: 'json' };
import { metByWeights } from '../../arbitrary/brief.js';

/** Where a second-order high-pass has fallen by 6 dB, over its corner. */
function fallenBySix(Q: number): number {
  // |H|² = x⁴/((1 − x²)² + x²/Q²) = 10^−0.6, solved for x².
  const share = 10 ** -0.6;
  const [a, b, c] = [1 - share, share * (2 - 1 / Q ** 2), -share];
  return Math.sqrt((-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a));
}

test('below what a closed box of any volume reaches, a line of a quarter wave wins', () => {
  // In an endless volume the driver has its own resonance and its own quality factor.
  const deepest = 52 * fallenBySix(0.42);
  const lowest = 46;
  expect(lowest).toBeLessThan(0.95 * deepest);
  const brief = {
    ...pipe,
    wanted: { ...pipe.wanted, lowest: `${lowest} Hz` },
    box: { kinds: ['closed', 'line'] },
    line: { folds: [1] },
  };
  const { designs } = metByWeights(brief, 1);
  expect(designs.map(({ kind }) => kind)).toEqual(['line']);
  const length = Number(designs[0]?.numbers[0]?.value[0]?.[0]);
  const quarter = 343.4 / (4 * lowest);
  expect(length / quarter).toBeGreaterThan(0.6);
  expect(length / quarter).toBeLessThan(1.1);
  const { line: _, ...rest } = brief;
  expect(design({ ...rest, box: { kinds: ['closed'] } }).ok).toBe(false);
});

test('in half the air an isobaric pair has the response of one driver, and wins where only that half is there', () => {
  const drivers = (wirings: readonly object[]) =>
    pipe.drivers.map((driver) => ({ ...driver, Vas: '40 L', displacedVolume: '0.1 L', wirings }));
  const [one, pair] = [{}, { parallel: 2, isobaric: true }];
  const { line: _, ...rest } = pipe;
  const brief = (wirings: readonly object[], litres: number) => ({
    ...rest,
    drivers: drivers(wirings),
    space: { width: '500 mm', height: '500 mm', depth: '500 mm', panelThickness: '15 mm', volume: `${litres} L` },
    wanted: { ...pipe.wanted, lowest: '70 Hz', highest: '300 Hz', level: '75 dB', rise: '1 dB' },
    box: { kinds: ['closed'] },
  });
  const airOf = (wiring: object) => {
    const designs = metByWeights(brief([wiring], 100), 5).designs;
    return Math.min(...designs.map(({ box }) => box.netVolume));
  };
  const [alone, together] = [airOf(one), airOf(pair)];
  expect(together / alone).toBeCloseTo(0.5, 1);
  expect(() => metByWeights(brief([one], 22), 5)).toThrow('no box meets the brief');
  const small = metByWeights(brief([one, pair], 22), 5);
  expect(small.designs.map(({ drivers }) => drivers.isobaric)).toEqual(small.designs.map(() => true));
});
