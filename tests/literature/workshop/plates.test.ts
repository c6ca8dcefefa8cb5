/** Panels as plates: against a printed table, and against `plates.py` beside this file, which solves the same problems in other ways. */
import { si } from '@airspring/core/quantity';
import {
  bestBrace,
  board,
  boxResonances,
  type PlateInput,
  panelBox,
  panelResonance,
  plateResonances,
  windowBrace,
} from '@airspring/workshop/panel';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { check } from '../../ledger/check.js';
import fixtures from './plates.json' with { type: 'json' };

const { plain, lines, bars, clamped, bests, program } = fixtures;
type Panel = (typeof plain)[number]['panel'];
const by = (how: string) => ({ key: 'scipy', locator: `${program}: ${how}; tests/literature/workshop/plates.py` });
const base = { formula: 'panel/plateResonances', status: 'derived', kind: 'program', unit: 'Hz' } as const;
const rows = (list: readonly unknown[]) => ({ row: { value: list.map((_, i) => i), unit: 'row' } });
const m = (metres: number) => si('length', metres);

const boardOf = ({ along, across, shear, nu, density }: Panel) =>
  board({
    name: 'a board',
    density: si('density', density),
    modulusAlong: si('elasticModulus', along),
    modulusAcross: si('elasticModulus', across),
    shearModulus: si('elasticModulus', shear),
    poissonRatio: si('ratio', nu),
    modulusRange: [0.7, 1.4],
    densityRange: [0.8, 1.1],
  });
/** The length of the fixtures is the width here, and the grain runs along it. */
const plate = (panel: Panel) => ({
  width: m(panel.length),
  height: m(panel.width),
  thickness: m(panel.thickness),
  board: boardOf(panel),
  grain: 'width' as const,
});
/** The same, turned by a quarter. */
const turned = (panel: Panel) => ({
  ...plate(panel),
  width: m(panel.width),
  height: m(panel.length),
  grain: 'height' as const,
});
/** The higher frequencies of a panel are found together, once. */
const higherOnes = memory((input: string) => plateResonances({ ...JSON.parse(input), count: 4 }).frequencies);
const nth = (input: PlateInput, n: number) =>
  n === 0 ? plateResonances({ ...input, count: 1 }).frequencies[0]! : higherOnes(JSON.stringify(input))[n]!;
const first = {
  relative: 1e-3,
  why: 'a few shapes along each side: upper bounds, within 0.1 % for the first frequency',
} as const;
const higher = {
  relative: 5e-3,
  why: 'a few shapes along each side: upper bounds, within 0.5 % for higher ones',
} as const;

for (const n of [0, 1, 3])
  check(`panel.plate.edges-${n + 1}`, {
    ...base,
    source: by(`polynomials over each side of a panel held in five ways, frequency ${n + 1}`),
    given: rows(plain),
    got: ({ row }) => {
      const { panel, edges } = plain[row]!;
      const [left, right, bottom, top] = edges as ('simple' | 'clamped')[];
      return nth({ ...plate(panel), edges: { left: left!, right: right!, bottom: bottom!, top: top! } }, n);
    },
    expected: plain.map(({ frequencies }) => frequencies[n]!),
    tolerance: n === 0 ? first : higher,
  });

for (const n of [0, 1, 2]) {
  check(`panel.plate.line-${n + 1}`, {
    ...base,
    source: by(`the exact solution of Lévy for a line across a panel that cannot move, frequency ${n + 1}`),
    given: rows(lines),
    got: ({ row }) => {
      const { panel, ends, at } = lines[row]!;
      const [left, right] = ends as ('simple' | 'clamped')[];
      const edges = { left: left!, right: right!, bottom: 'simple', top: 'simple' } as const;
      return nth({ ...plate(panel), edges, braces: [{ across: 'width', at: m(at) }] }, n);
    },
    expected: lines.map(({ frequencies }) => frequencies[n]!),
    tolerance: n === 0 ? first : higher,
  });
  check(`panel.plate.bar-${n + 1}`, {
    ...base,
    source: by(`the exact solution of Lévy for a bar across a panel, frequency ${n + 1}`),
    given: rows(bars),
    got: ({ row }) => {
      const { panel, at, bar } = bars[row]!;
      const braces = [
        { across: 'height', at: m(at), bar: { depth: m(bar.depth), thickness: m(bar.thickness) } },
      ] as const;
      return nth({ ...turned(panel), braces }, n);
    },
    expected: bars.map(({ frequencies }) => frequencies[n]!),
    tolerance: n === 0 ? first : higher,
  });
  check(`panel.plate.clamped-line-${n + 1}`, {
    ...base,
    source: by(`polynomials on both sides of a line across a clamped panel, frequency ${n + 1}`),
    given: rows(clamped),
    got: ({ row }) => {
      const { panel, at } = clamped[row]!;
      return nth({ ...plate(panel), edges: 'clamped', braces: [{ across: 'width', at: m(at) }] }, n);
    },
    expected: clamped.map(({ frequencies }) => frequencies[n]!),
    tolerance: n === 0 ? first : higher,
  });
}

/** A square plate of 1 m in units in which its frequency is B over 2π. */
const squarePlate = {
  width: m(1),
  height: m(1),
  thickness: m(0.01),
  board: board({
    name: 'a plate',
    density: si('density', 1000),
    modulusAlong: si('elasticModulus', (1e3 * (1 - 0.09)) / 1e-4),
    poissonRatio: si('ratio', 0.3),
  }),
};
const printed = {
  clamped: ['10.40', '21.21', '31.29', '38.04', '38.22'],
  simple: ['5.70', '14.26', '22.82'],
} as const;
for (const edges of ['clamped', 'simple'] as const) {
  check(`panel.plate.printed.${edges}`, {
    ...base,
    source: { key: 'harris2002', locator: `table of thin flat plates: square, ${edges} on all edges, B` },
    status: 'seen',
    kind: 'table',
    given: { mode: { value: printed[edges].map((_, i) => i + 1), unit: '1' } },
    got: ({ mode }) => {
      // Two modes of a square plate are one: the table names it once.
      const { frequencies } = plateResonances({ ...squarePlate, edges, count: 6 });
      return 2 * Math.PI * frequencies[[0, 1, 3, 4, 5][(mode as number) - 1]!]!;
    },
    printed: printed[edges],
    unit: '1',
    tolerance: {
      relative: 2.5e-3,
      why: 'the printed series lies 0.1 to 0.2 % above the exact values of a simply supported plate, π²(m² + n²)/√12, and above ours throughout',
    },
  });
}

const glued = { ...plate(plain[0]!.panel) };
const frequencyOf = (edges: readonly string[]) =>
  plain.find((one) => one.panel.length === 0.4 && one.edges.join() === edges.join())!.frequencies[0]!;
const ends = {
  simple: frequencyOf(['simple', 'simple', 'simple', 'simple']),
  clamped: frequencyOf(['clamped', 'clamped', 'clamped', 'clamped']),
};
for (const [end, expected] of Object.entries({
  ...ends,
  lowest: ends.simple * Math.sqrt(0.7 / 1.1),
  highest: ends.clamped * Math.sqrt(1.4 / 0.8),
}))
  check(`panel.range.${end}`, {
    ...base,
    formula: 'panel/panelResonance',
    source: by(`${end}: both ways to hold the edges, times the root of stiffness over mass`),
    given: { thickness: { value: 0.018, unit: 'm' } },
    got: () => panelResonance(glued)[end as 'simple'],
    expected,
    tolerance: first,
  });

// Anew for each check, so that each feels a change of the formula.
const found = (row: number) => {
  const {
    panel,
    ends: [left, right],
  } = bests[row]!;
  const edges = { left, right, bottom: 'simple', top: 'simple' } as never;
  // Along the longer side of the first panel a brace gains more, and that is found unasked.
  return bestBrace({ ...plate(panel), edges, ...(row > 0 && { across: 'width' }) });
};
const best = { ...base, formula: 'panel/bestBrace', given: rows(bests) } as const;
check('panel.best.place', {
  ...best,
  source: by('the greatest first frequency of the exact solution over the place of the line'),
  got: ({ row }) => found(row).at,
  expected: bests.map(({ at }) => at),
  unit: 'm',
  tolerance: { relative: 5e-3, why: 'a maximum is flat: the place is looked for to a thousandth of the side' },
});
check('panel.best.frequency', {
  ...best,
  source: by('the greatest first frequency of the exact solution'),
  got: ({ row }) => found(row).frequency,
  expected: bests.map(({ frequency }) => frequency),
  tolerance: first,
});
check('panel.best.without', {
  ...best,
  source: by('polynomials over each side, without a line'),
  got: ({ row }) => found(row).without,
  expected: bests.map(({ without }) => without),
  tolerance: first,
});
check('panel.best.gain', {
  ...best,
  source: by('the exact solution with the line over polynomials without it'),
  got: ({ row }) => found(row).gain,
  expected: bests.map(({ frequency, without }) => frequency / without),
  unit: '1',
  tolerance: { relative: 2e-3, why: 'of two upper bounds, each within 0.1 %' },
});

/** A box whose left and right panels are the first panel of the fixtures, alone and with a window brace across its depth. */
const boxOf = (border?: number) => {
  const { panel } = plain[0]!;
  const t = panel.thickness;
  const made = panelBox({
    outer: { width: m(0.3), height: m(panel.width + 2 * t), depth: m(panel.length + 2 * t) },
    thickness: m(t),
    board: boardOf(panel),
    ...(border && { braces: [{ across: 'depth', at: m(t + 0.16), form: windowBrace({ border: m(border) }) }] }),
  });
  if (!made.ok) throw new Error(made.because[0]?.text);
  return boxResonances(made).find(({ face }) => face === 'right')!;
};
check('panel.box.simple', {
  ...base,
  formula: 'panel/boxResonances',
  source: by('the clear sizes of the side of a box, without and with a bar of 60 mm at 0.16 m'),
  given: { border: { value: [0, 0.06], unit: 'm' } },
  got: ({ border }) => boxOf(border as number).resonance.simple,
  expected: [ends.simple, bars[1]!.frequencies[0]!],
  tolerance: first,
});
for (const [end, expected] of Object.entries({
  clamped: ends.clamped,
  lowest: ends.simple * Math.sqrt(0.7 / 1.1),
  highest: ends.clamped * Math.sqrt(1.4 / 0.8),
}))
  check(`panel.box.${end}`, {
    ...base,
    formula: 'panel/boxResonances',
    source: by('the same side without a brace'),
    given: { border: { value: 0, unit: 'm' } },
    got: () => boxOf().resonance[end as 'clamped'],
    expected,
    tolerance: first,
  });
check('panel.box.size', {
  ...base,
  formula: 'panel/boxResonances',
  source: by('the clear sizes of the side, and where its brace stands'),
  given: { border: { value: 0.06, unit: 'm' } },
  got: ({ border }) => {
    const { width, height, thickness, braces } = boxOf(border as number);
    return width + 10 * height + 100 * thickness + 1000 * braces[0]!.at;
  },
  expected: 0.4 + 10 * 0.3 + 100 * 0.018 + 1000 * 0.16,
  unit: 'm',
  tolerance: { relative: 1e-9, why: 'double precision' },
});
