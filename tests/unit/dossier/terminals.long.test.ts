/** The hole for the terminals: of a stated size, in cut list, drawing and file for the saw, and clear of all that the design has there. */
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import { terminalCup } from '@airspring/workshop/solid';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { plainWork } from '../../arbitrary/work.js';

type Box = NonNullable<Work['box']>;
type Circle = { readonly layer: string; readonly at: readonly [number, number]; readonly radius: number };

/** The circles of a drawing file, m. */
function circlesOf(dxf: unknown): Circle[] {
  const lines = String(dxf)
    .split(/\r?\n/)
    .map((line) => line.trim());
  return lines.flatMap((line, i) => {
    if (line !== 'CIRCLE' || lines[i - 1] !== '0') return [];
    const value = (code: string) => lines[lines.findIndex((one, k) => k > i && (k - i) % 2 === 1 && one === code) + 1];
    const metres = (code: string) => Number(value(code)) / 1e3;
    return [{ layer: value('8')!, at: [metres('10'), metres('20')], radius: metres('40') }];
  });
}

async function built(work: Work) {
  const { files, notes } = await filesToBuildFrom(work);
  const of = (path: string) => String(files.find((file) => file.path === path)?.contents ?? '');
  return { of, notes, page: of('build.html').replace(/\u00a0/g, ' ') };
}

/** Distance from a place to a rectangle, 0 inside. */
const apart = ([x, y]: readonly [number, number], low: readonly number[], high: readonly number[]): number =>
  Math.hypot(Math.max(low[0]! - x, x - high[0]!, 0), Math.max(low[1]! - y, y - high[1]!, 0));

const faces = ['back', 'left', 'right', 'top'] as const;
const bought = { hole: 0.057, flange: 0.085, reach: 0.04 };
const cup = terminalCup();
const printed = { hole: cup.hole, flange: cup.flangeDiameter, reach: cup.reach };
const metres = (least: number, most: number) => fc.integer({ min: least, max: most }).map((size) => size / 1e3);

test('the hole is told in the cut list, drawn and cut, and clear of what stands inside and of what is on the back', async () => {
  const placed = { found: 0, not: 0 };
  await fc.assert(
    fc.asyncProperty(
      fc.record({
        edges: fc.tuple(metres(160, 500), metres(160, 500), metres(120, 500)),
        solid: fc.tuple(metres(0, 400), metres(0, 400), metres(0, 400), metres(30, 300), metres(30, 300)),
        what: fc.constantFrom('driver', 'board', 'air', 'radiator'),
        besides: fc.option(fc.tuple(metres(80, 400), metres(80, 400))),
        isPrinted: fc.boolean(),
        asBoard: fc.boolean(),
      }),
      async ({ edges: [width, height, depth], solid: [x, y, z, wide, high], what, besides, isPrinted, asBoard }) => {
        const standing = { name: 'shelf', what, least: [x, y, z], greatest: [x + wide, y + high, depth - 0.018] };
        const other = {
          what: 'vent',
          face: 'back',
          from: ['left', 'bottom'],
          form: 'circle',
          diameter: 0.066,
        } as const;
        const flange = 0.09;
        const fits = besides && besides[0] + 0.05 < width && besides[1] + 0.05 < height;
        const vent = {
          ...{ count: 1, diameter: 0.06, outerDiameter: 0.066, flangeDiameter: flange },
          ...{ length: 0.08, pieces: [0.08], fb: 40 },
        };
        const box: Partial<Box> = {
          outer: { width, height, depth },
          holes: fits ? [{ ...other, across: besides[0], up: besides[1] }] : [],
          ...(asBoard ? { placed: [standing] } : { solids: [standing] }),
        };
        const tools = { ...(isPrinted && { terminals: {} }), printer: { width: 0.25, height: 0.25 } };
        const { of, page, notes } = await built(plainWork({ tools, vents: fits ? [vent] : [] }, box));
        if (notes.some((note) => note.includes('drawings have no holes'))) return;
        const sizes = isPrinted ? printed : bought;
        const mm = (size: number) => `${Number((1e3 * size).toFixed(1))} mm`;
        if (!isPrinted) expect(page).toContain(`assume a hole of ${mm(sizes.hole)}`);
        const cut = (face: string) =>
          circlesOf(of(`panels/${face}.dxf`)).filter(({ radius }) => Math.abs(2 * radius - sizes.hole) < 1e-6);
        const told = /Its hole goes in the (\w+), ([\d.]+) mm from the (\w+) and ([\d.]+) mm from the (\w+)/.exec(page);
        const rows = of('cut-list.csv').split('\r\n');
        const listed = rows.filter((row) => row.includes('terminals'));
        if (told === null) {
          placed.not++;
          expect(page).toContain(
            `Cut one of ${mm(sizes.hole)} for the terminals as well, low on a panel that stays free`,
          );
          expect([listed, faces.flatMap(cut)]).toEqual([[], []]);
          return;
        }
        placed.found++;
        const face = told[1] as (typeof faces)[number];
        const at = [Number(told[2]) / 1e3, Number(told[4]) / 1e3] as const;
        expect(page).not.toContain('for the terminals as well');
        expect(listed).toHaveLength(1);
        expect(listed[0]!.startsWith(`${face},1,`)).toBe(true);
        const [hole] = cut(face);
        expect(hole!.layer).toBe('cut');
        const cover = circlesOf(of(`panels/${face}.dxf`)).find(
          ({ layer, radius }) => layer === 'note' && Math.abs(2 * radius - sizes.flange) < 1e-6,
        );
        expect(cover?.at).toEqual(hole!.at);
        // The front and the back cover the others; the back is seen from behind.
        if (face === 'back') {
          expect(hole!.at[0]).toBeCloseTo(width - at[0], 6);
          expect(hole!.at[1]).toBeCloseTo(at[1], 6);
        }
        const edges = [width, height, depth];
        const [axes, inwards] = { back: [[0, 1], 2], left: [[2, 1], 0], right: [[2, 1], 0], top: [[0, 2], 1] }[
          face
        ] as [[number, number], number];
        for (const k of [0, 1] as const) {
          const nearest = Math.min(at[k], edges[axes[k]]! - at[k]);
          expect(nearest).toBeGreaterThanOrEqual(sizes.flange / 2);
          expect(nearest).toBeGreaterThanOrEqual(0.018 + sizes.hole / 2);
        }
        // Whatever stands where the cup and its wires are is beside its hole.
        const deep = sizes.reach + 0.025;
        const { least, greatest } = standing;
        const behind = face === 'left' ? least[0]! < deep : greatest[inwards]! > edges[inwards]! - deep;
        const plane = (corner: readonly number[]) => axes.map((axis) => corner[axis]!);
        if (behind) expect(apart(at, plane(least), plane(greatest))).toBeGreaterThanOrEqual(sizes.hole / 2 - 1e-9);
        if (fits && face === 'back')
          expect(Math.hypot(at[0] - besides[0], at[1] - besides[1])).toBeGreaterThanOrEqual(
            (flange + sizes.flange) / 2,
          );
      },
    ),
    { numRuns: cases(12) },
  );
  expect(placed.found).toBeGreaterThan(0);
});

test('in a divided box the hole opens into the closed chamber, where the magnet stands', async () => {
  const across = { width: 0.36, height: 0.4, depth: 0.48 };
  for (const [vented, closed] of [
    [true, false],
    [false, true],
  ] as const) {
    const chambers = [
      { name: 'one', across: 'width', from: 0.018, to: 0.18, vented },
      { name: 'other', across: 'width', from: 0.198, to: 0.342, vented: closed },
    ].map((one) => ({ ...one, netVolume: 0.01, bracing: 0, bracingIn: ['box', 'bracing'] as const }) as const);
    const { page } = await built(
      plainWork({}, { outer: across, holes: [], chambers: chambers as NonNullable<Box['chambers']> }),
    );
    const [, face, at] = /Its hole goes in the (\w+), ([\d.]+) mm from the left/.exec(page)!;
    expect(face).toBe('back');
    const own = chambers.find((one) => !one.vented)!;
    expect(Number(at) / 1e3 - 0.0285).toBeGreaterThanOrEqual(own.from);
    expect(Number(at) / 1e3 + 0.0285).toBeLessThanOrEqual(own.to);
  }
});

test('a box without room behind any panel says so, and tells the size', async () => {
  const full = [{ least: [0.018, 0.018, 0.018], greatest: [0.342, 0.382, 0.462] }];
  const { page, of } = await built(plainWork({}, { solids: full, holes: [] }));
  expect(faces.flatMap((face) => circlesOf(of(`panels/${face}.dxf`)))).toEqual([]);
  expect(page).toContain(
    'Cut one of 57 mm for the terminals as well, where a flatter cup has room: no place on the back',
  );
});

test('the frame of a driver and the flange of a vent are drawn around their holes, and nothing is cut there', async () => {
  const vent = {
    ...{ count: 1, diameter: 0.06, outerDiameter: 0.066, flangeDiameter: 0.09, length: 0.12, pieces: [0.12], fb: 40 },
  };
  const hole = { what: 'vent', face: 'front', across: 0.07, up: 0.07, form: 'circle', diameter: 0.07 } as const;
  const holes = [...plainWork().box!.holes, { ...hole, from: ['left', 'bottom'] as const }];
  const { of, page } = await built(plainWork({ vents: [vent] }, { holes }));
  const circles = circlesOf(of('panels/front.dxf'));
  const around = (layer: string) =>
    circles
      .filter((one) => one.layer === layer)
      .map(({ at, radius }) => [...at, radius].map((size) => Math.round(1e4 * size)));
  // The flange of the printed vent is as wide as its file for the printer.
  const stl = (await filesToBuildFrom(plainWork({ vents: [vent] }, { holes }))).files.find(({ path }) =>
    path.endsWith('vent.stl'),
  )!.contents as Uint8Array;
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  const xs = Array.from({ length: view.getUint32(80, true) * 3 }, (_, i) =>
    view.getFloat32(84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3), true),
  );
  const wide = Math.max(...xs) - Math.min(...xs);
  expect(around('cut')).toEqual([
    [1800, 2500, 1160],
    [700, 700, 350],
  ]);
  expect(around('note')).toEqual([
    [1800, 2500, 1310],
    [700, 700, Math.round(5 * wide)],
  ]);
  for (const words of ['its frame: ⌀ 262, not cut', 'its flange: ⌀ 90, not cut', 'nothing is cut there'])
    expect(page).toContain(words);
  // Nothing of it is on the sheet that is sawn.
  expect(circlesOf(of('sheets/mdf-1.dxf')).filter(({ layer }) => layer === 'note')).toEqual([]);
});
