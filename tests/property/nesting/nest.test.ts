/** Layouts that a panel saw can cut: nothing overlaps, the kerf is kept, and few sheets are needed. */
import { randomNumbers } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { type NestedPart, type NestedSheet, nest } from '@airspring/workshop/nesting';
import type { MaxRectsPacker as Packer } from 'maxrects-packer';
import { expect, test } from 'vitest';

/** The file that its package names for Node is no module, though the package says so. */
const packing: string = 'maxrects-packer/dist/maxrects-packer.mjs';
const { MaxRectsPacker }: { readonly MaxRectsPacker: typeof Packer } = await import(packing);

const SHEET = { length: si('length', 2.5), width: si('length', 1.25) } as const;
const KERF = si('length', 0.003);
const NEARLY = 1e-9;

/** Forty panels of seeded sizes, four of ten with a grain. */
function partsOf(seed: number) {
  const next = randomNumbers(seed);
  return Array.from({ length: 40 }, (_, i) => {
    const [a, b] = [0.12 + 0.56 * next(), 0.12 + 0.56 * next()].map((edge) => Math.round(edge * 1e3) / 1e3);
    return { name: `part ${i}`, length: si('length', a!), width: si('length', b!), grained: next() < 0.4 };
  });
}

interface Piece {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** Saws a sheet along its list of cuts: each must run from edge to edge of one piece that is there. Returns what then lies on the table. */
function sawnBy({ length, width, cuts }: NestedSheet, kerf: number): Piece[] {
  let pieces: Piece[] = [{ x: 0, y: 0, length, width }];
  for (const { across, at, from, to } of cuts) {
    const turned = across === 'y';
    const lies = ({ x, y, length: long, width: wide }: Piece) => (turned ? [y, wide, x, long] : [x, long, y, wide]);
    const met = pieces.filter((piece) => {
      const [begin, size, low, along] = lies(piece) as [number, number, number, number];
      const inside = at > begin - NEARLY && at < begin + size - NEARLY;
      return inside && Math.abs(low - from) < NEARLY && Math.abs(low + along - to) < NEARLY;
    });
    expect(met).toHaveLength(1);
    const [piece] = met as [Piece];
    const [begin, size] = lies(piece) as [number, number];
    const parts = [
      [begin, at - begin],
      [at + kerf, begin + size - at - kerf],
    ] as const;
    const left = parts
      .filter(([, wide]) => wide > NEARLY)
      .map(([start, wide]) => (turned ? { ...piece, y: start, width: wide } : { ...piece, x: start, length: wide }));
    pieces = [...pieces.filter((one) => one !== piece), ...left];
  }
  return pieces;
}

/** Whether cuts from edge to edge, each as wide as the kerf, part all rectangles: found from the places alone. */
function sawn(parts: readonly NestedPart[]): boolean {
  if (parts.length < 2) return true;
  for (const [at, size] of [
    ['x', 'length'],
    ['y', 'width'],
  ] as const) {
    for (const { [at]: from, [size]: long } of parts) {
      const cut = from + long;
      const before = parts.filter((one) => one[at] + one[size] <= cut + NEARLY);
      const after = parts.filter((one) => one[at] >= cut + KERF - NEARLY);
      if (after.length > 0 && before.length + after.length === parts.length) return sawn(before) && sawn(after);
    }
  }
  return false;
}

function judge({ parts }: NestedSheet): void {
  for (const one of parts) {
    expect(one.x).toBeGreaterThanOrEqual(-NEARLY);
    expect(one.y).toBeGreaterThanOrEqual(-NEARLY);
    expect(one.x + one.length).toBeLessThanOrEqual(SHEET.length + NEARLY);
    expect(one.y + one.width).toBeLessThanOrEqual(SHEET.width + NEARLY);
  }
  expect(sawn(parts)).toBe(true);
}

test('twenty cases of forty panels: sawn from edge to edge, the grain kept, sheets near the bound of the area', () => {
  let [sheets, bound] = [0, 0];
  for (let seed = 1; seed <= 20; seed++) {
    const parts = partsOf(seed);
    const nesting = nest({ parts, sheets: [SHEET], kerf: KERF });
    if (!nesting.ok) throw new Error(nesting.because[0]?.text);
    nesting.sheets.forEach(judge);
    const placed = nesting.sheets.flatMap((sheet) => sheet.parts);
    expect(placed.map(({ name }) => name).sort()).toEqual(parts.map(({ name }) => name).sort());
    for (const { name, length, width, grained } of parts) {
      const found = placed.find((one) => one.name === name)!;
      const turned = Math.abs(found.length - length) > NEARLY || Math.abs(found.width - width) > NEARLY;
      expect([found.length, found.width].sort()).toEqual([length, width].sort());
      if (grained) expect(turned).toBe(false);
    }
    sheets += nesting.sheets.length;
    bound += nesting.sheetsAtLeast;
  }
  expect(sheets).toBeLessThanOrEqual(1.08 * bound);
});

test('a part that is larger than the sheet, and sheets that run out, are told', () => {
  const large = nest({ parts: [{ name: 'door', length: '3 m', width: '1 m' }], sheets: [SHEET], kerf: KERF });
  expect(large.ok ? '' : large.because[0]?.code).toBe('part-larger-than-sheet');
  const few = nest({
    parts: [{ name: 'side', length: '1.2 m', width: '1.2 m', count: 3 }],
    sheets: [{ ...SHEET, count: 1 }],
    kerf: KERF,
  });
  expect(few.ok ? '' : few.because[0]?.code).toBe('sheets-run-out');
});

test('the list of cuts, sawn one after the other, leaves each part by itself', () => {
  for (const [seed, kerf, trim] of [
    [21, 0.003, 0.01],
    [22, 0.0022, 0],
    [23, 0.006, 0.02],
    [24, 0, 0.005],
  ] as const) {
    const parts = partsOf(seed);
    const nesting = nest({ parts, sheets: [SHEET], kerf: si('length', kerf), trim: si('length', trim) });
    if (!nesting.ok) throw new Error(nesting.because[0]?.text);
    for (const sheet of nesting.sheets) {
      const pieces = sawnBy(sheet, kerf);
      const near = (one: Piece, other: Piece) =>
        (['x', 'y', 'length', 'width'] as const).every((key) => Math.abs(one[key] - other[key]) < NEARLY);
      for (const part of [...sheet.parts, ...sheet.offcuts])
        expect(pieces.filter((one) => near(one, part))).toHaveLength(1);
    }
  }
});

test('beside a packing library that need not be sawn: no more sheets over all cases, and its own layouts fail our judge', () => {
  let [ours, theirs, unsawn] = [0, 0, 0];
  for (let seed = 1; seed <= 20; seed++) {
    const parts = partsOf(seed).map((part) => ({ ...part, grained: false }));
    const nesting = nest({ parts, sheets: [SHEET], kerf: KERF });
    if (!nesting.ok) throw new Error(nesting.because[0]?.text);
    const packer = new MaxRectsPacker(2500, 1250, 3, { smart: false, pot: false, square: false, allowRotation: true });
    for (const { length, width } of parts) packer.add(1e3 * length, 1e3 * width, undefined);
    ours += nesting.sheets.length;
    theirs += packer.bins.length;
    const places = packer.bins.map(({ rects }) =>
      rects.map(({ x, y, width, height }) => ({ x: x / 1e3, y: y / 1e3, length: width / 1e3, width: height / 1e3 })),
    );
    unsawn += places.filter((bin) => !sawn(bin as unknown as NestedPart[])).length;
  }
  expect(ours).toBeLessThanOrEqual(theirs);
  expect(unsawn).toBeGreaterThan(0);
});
