/** Layouts that a panel saw can cut: nothing overlaps, the kerf is kept, and few sheets are needed. */
import { randomNumbers } from '@airspring/core/numeric';
import { si } from '@airspring/core/quantity';
import { type NestedPart, type NestedSheet, nest } from '@airspring/workshop/nesting';
import { expect, test } from 'vitest';

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
