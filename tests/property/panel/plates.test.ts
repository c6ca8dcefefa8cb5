/** Laws of panels as plates: bounds by parts of the panel, scaling, and which way each change moves a resonance. */
import { si } from '@airspring/core/quantity';
import {
  birchPlywood,
  mdf,
  type PlateInput,
  panelResonance,
  particleBoard,
  plateResonances,
} from '@airspring/workshop/panel';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';

const m = (metres: number) => si('length', metres);
const first = (input: PlateInput) => plateResonances({ ...input, count: 1 }).frequencies[0]! as number;
/** Of upper bounds, each within 0.1 %. */
const NEARLY = 2e-3;

const panels = fc
  .record({
    width: fc.double({ min: 0.5, max: 0.7, noNaN: true }),
    height: fc.double({ min: 0.4, max: 0.7, noNaN: true }),
    thickness: fc.double({ min: 0.006, max: 0.025, noNaN: true }),
    board: fc.constantFrom(mdf, birchPlywood, particleBoard),
    grain: fc.constantFrom('width' as const, 'height' as const),
  })
  .map(({ width, height, thickness, ...rest }) => ({
    width: m(width),
    height: m(height),
    thickness: m(thickness),
    ...rest,
  }));
const shares = fc.double({ min: 0.25, max: 0.75, noNaN: true });

test('a panel over a line lies between its larger part with that edge free to turn, and with it clamped', () => {
  fc.assert(
    fc.property(panels, shares, fc.constantFrom('simple' as const, 'clamped' as const), (panel, share, hold) => {
      const whole = first({ ...panel, edges: hold, braces: [{ across: 'width', at: m(share * panel.width) }] });
      const parts = (shared: 'simple' | 'clamped') =>
        Math.min(
          ...[share, 1 - share].map((part, i) => {
            const [left, right] = i === 0 ? [hold, shared] : [shared, hold];
            const edges = { left, right, bottom: hold, top: hold };
            return first({ ...panel, width: m(part * panel.width), edges });
          }),
        );
      expect(whole).toBeGreaterThan(parts('simple') * (1 - NEARLY));
      expect(whole).toBeLessThan(parts('clamped') * (1 + NEARLY));
    }),
    { numRuns: cases(3) },
  );
});

test('a bar does no more than a line that cannot move, a clamped edge never lowers, and a range is in order', () => {
  fc.assert(
    fc.property(panels, shares, fc.double({ min: 0.02, max: 0.1, noNaN: true }), (panel, share, deep) => {
      const at = { across: 'height', at: m(share * panel.height) } as const;
      const withBar = (depth: number) =>
        first({ ...panel, braces: [{ ...at, bar: { depth: m(depth), thickness: m(0.015) } }] });
      const line = first({ ...panel, braces: [at] });
      expect(withBar(deep)).toBeLessThan(line * (1 + NEARLY));
      expect(first({ ...panel, edges: 'clamped' })).toBeGreaterThan(first(panel) * (1 - NEARLY));
      const { lowest, simple, clamped, highest } = panelResonance(panel);
      expect(lowest).toBeLessThanOrEqual(simple);
      expect(simple).toBeLessThan(clamped);
      expect(clamped).toBeLessThanOrEqual(highest);
    }),
    { numRuns: cases(3) },
  );
});

test('frequencies grow as the thickness, and fall as the square of the size; a quarter turn changes nothing', () => {
  fc.assert(
    fc.property(panels, fc.double({ min: 0.5, max: 2, noNaN: true }), (panel, by) => {
      const { width, height, thickness, grain } = panel;
      const whole = first(panel);
      expect(first({ ...panel, thickness: m(thickness * 0.7) }) / whole).toBeCloseTo(0.7, 9);
      const scaled = { ...panel, width: m(by * width), height: m(by * height), thickness: m(by * thickness) };
      expect((first(scaled) * by) / whole).toBeCloseTo(1, 9);
      const turned = { ...panel, width: height, height: width, grain: grain === 'width' ? 'height' : 'width' } as const;
      expect(first(turned) / whole).toBeCloseTo(1, 9);
    }),
    { numRuns: cases(3) },
  );
});

test('what is no panel is refused with its path', () => {
  const panel = { width: '300 mm', height: '400 mm', thickness: '18 mm' } as const;
  const paths = (input: unknown) => {
    try {
      plateResonances(input as PlateInput);
    } catch (error) {
      return (error as { faults: { path: string }[] }).faults.map(({ path }) => path);
    }
    return [];
  };
  expect(paths({ ...panel, thickness: '90 mm' })).toEqual(['panel.thickness']);
  expect(paths({ ...panel, braces: [{ across: 'width', at: '2 mm' }] })).toEqual(['panel.braces[0].at']);
  expect(paths({ ...panel, braces: 'one' })).toEqual(['panel.braces']);
  expect(paths({ ...panel, edges: 'glued' })).toEqual(['panel.edges']);
  expect(paths({ ...panel, edges: { left: 'simple', right: 'simple', top: 'simple' } })).toEqual([
    'panel.edges.bottom',
  ]);
  expect(paths({ ...panel, count: 20, width: '3 kg' })).toEqual(['panel.width', 'panel.count']);
});
