/** A drawing takes the scale that its lines ask for: words go into more lines instead. */
import { type Drawing, toSvg } from '@airspring/workshop/drawing';
import { expect, test as plain } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { fc, test } from '../../arbitrary/property.js';

const drawingOf = (wide: number, high: number, title: string, subtitle: string): Drawing => ({
  title,
  subtitle,
  description: 'a rectangle',
  shapes: [
    {
      purpose: 'cut',
      form: 'path',
      closed: true,
      corners: (
        [
          [0, 0],
          [wide, 0],
          [wide, high],
          [0, high],
        ] as const
      ).map((at) => ({ at })),
    },
  ],
  dimensions: [],
  labels: [],
  callouts: [],
});
const scaleOf = (svg: string) => Number(svg.match(/scale\s1\s:\s(\d+)/)?.[1]);
const widthOf = (svg: string) => Number(svg.match(/width="([\d.]+)mm"/)?.[1]);

const edge = fc.integer({ min: 20, max: 2000 }).map((mm) => mm / 1e3);
const words = fc.integer({ min: 1, max: 60 }).map((count) => Array.from({ length: count }, () => 'section').join(' '));
test.prop([edge, edge, words, words], { numRuns: cases(60) })(
  'long words leave the scale of a wide drawing as it is, and stay on the paper',
  (wide, high, title, subtitle) => {
    const options = { width: '178 mm', height: '2 m' } as const;
    const [short, long] = [drawingOf(wide, high, 'a', 'b'), drawingOf(wide, high, title, subtitle)].map((drawing) =>
      toSvg(drawing, options),
    );
    expect(scaleOf(long!)).toBe(scaleOf(short!));
    expect(widthOf(long!)).toBeLessThanOrEqual(178);
  },
);

plain('where a word alone is wider than the paper, the drawing is not shrunk to nothing for it', () => {
  expect(scaleOf(toSvg(drawingOf(0.1, 0.1, 'W'.repeat(90), 'b'), { width: '120 mm' }))).toBe(1);
});
