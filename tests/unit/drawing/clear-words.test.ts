/** Words along the edges of a board are crossed by no line to a length, and by none to what stands beside the drawing. */
import { outlineDrawing, pieceDrawing, toSvg } from '@airspring/workshop/drawing';
import { butt, mdf, panelBox } from '@airspring/workshop/panel';
import { expect, test } from 'vitest';

const LETTER = 0.6;
type Box = readonly [left: number, right: number, top: number, bottom: number];

/** Texts as the rectangles around them, and thin lines by their ends, mm on paper. */
function read(svg: string) {
  const texts = [
    ...svg.matchAll(/<text [^>]*x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)" text-anchor="(\w+)"([^>]*)>([^<]*)</g),
  ];
  const words = texts.map(([, x, y, size, anchor, more, text]): { text: string; box: Box } => {
    const [high, long] = [Number(size), text!.length * Number(size) * LETTER];
    const [at, middle] = [Number(x), Number(y) - high * 0.35];
    const from = anchor === 'start' ? 0 : anchor === 'middle' ? -long / 2 : -long;
    // Upright texts lead upwards.
    const box: Box = more!.includes('rotate')
      ? [at - high / 2, at + high / 2, middle - from - long, middle - from]
      : [at + from, at + from + long, middle - high / 2, middle + high / 2];
    return { text: text!, box };
  });
  const lines = [...svg.matchAll(/<path d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)(?:h2)?" stroke-width="0.1/g)].map(
    (one) => one.slice(1, 5).map(Number) as [number, number, number, number],
  );
  return { words, lines };
}

/** Whether a line passes through a rectangle, but for a hair at its edge. */
function crosses([x, y, toX, toY]: readonly number[], [left, right, top, bottom]: Box): boolean {
  for (let i = 0; i <= 400; i++) {
    const [atX, atY] = [x! + ((toX! - x!) * i) / 400, y! + ((toY! - y!) * i) / 400];
    if (atX > left + 0.2 && atX < right - 0.2 && atY > top + 0.2 && atY < bottom - 0.2) return true;
  }
  return false;
}

const touched = (svg: string) => {
  const { words, lines } = read(svg);
  return words.filter(({ box }) => lines.some((line) => crosses(line, box))).map(({ text }) => text);
};

/** Words that lie over others. */
const overlapping = (svg: string) => {
  const { words } = read(svg);
  return words.filter(({ box: [left, right, top, bottom] }, i) =>
    words.some(
      ({ box: other }, j) =>
        j > i && left < other[1] - 0.2 && right > other[0] + 0.2 && top < other[3] - 0.2 && bottom > other[2] + 0.2,
    ),
  );
};

test.each(['mm', 'cm', 'in'] as const)('on a front with three holes in a low box, in %s', (unit) => {
  const hole = (part: string, across: number, up: number, diameter: number) =>
    ({ part, face: 'front', across: `${across} mm`, up: `${up} mm`, opening: { diameter: `${diameter} mm` } }) as const;
  const box = panelBox({
    outer: { width: '615 mm', height: '260 mm', depth: '480 mm' },
    thickness: '18 mm',
    joint: butt,
    board: mdf,
    cutouts: [hole('vent', 80, 180, 120), hole('driver', 287, 113, 186), hole('driver', 502, 113, 186)],
  });
  if (!box.ok) throw new Error('no box');
  const front = box.pieces.find(({ name }) => name === 'front')!;
  const svg = toSvg(pieceDrawing(front), { unit });
  expect(read(svg).words.map(({ text }) => text)).toEqual(
    expect.arrayContaining([
      'covers left',
      'covers right',
      'covers top',
      'covers bottom',
      '0',
      { mm: '113', cm: '11.3', in: '4.449' }[unit],
    ]),
  );
  expect(touched(svg)).toEqual([]);
  expect(overlapping(svg)).toEqual([]);
});

test('the cover of a cylinder is pointed at from the side of its words', () => {
  const outline = Array.from({ length: 48 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 48;
    return [0.2 + 0.2 * Math.cos(angle), 0.2 + 0.2 * Math.sin(angle)] as const;
  });
  const drawing = outlineDrawing({ name: 'top', thickness: 0.015, outline, meets: outline.map(() => 'bent') });
  const [covers] = drawing.callouts;
  expect(covers!.text).toBe('covers bent');
  expect(covers!.at[0]).toBeCloseTo(0.4, 9);
});
