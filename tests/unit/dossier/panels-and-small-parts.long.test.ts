/** What the pages say of panels and small parts: words that agree with their numbers, holes where they belong, files that are named. */
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { plainWork } from '../../arbitrary/work.js';

async function built(input: Work) {
  const { files, notes } = await filesToBuildFrom(input);
  const page = (files[0]!.contents as string).replace(/\u00a0/g, ' ');
  return { page, notes, files: new Map(files.map(({ path, contents }) => [path, contents])) };
}

/** The circles of a drawing file: middle and radius, mm. */
function circlesOf(dxf: unknown): number[][] {
  const lines = String(dxf)
    .split(/\r?\n/)
    .map((line) => line.trim());
  return lines.flatMap((line, i) => {
    if (line !== 'CIRCLE' || lines[i - 1] !== '0') return [];
    const value = (code: string) =>
      Number(lines[lines.findIndex((one, k) => k > i && (k - i) % 2 === 1 && one === code) + 1]);
    return [[value('10'), value('20'), value('40')]];
  });
}

test('words about panels that ring never contradict the numbers beside them', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.record({
        edges: fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 160, max: 700 }))),
        thickness: fc.integer({ min: 6, max: 22 }),
        to: fc.integer({ min: 40, max: 500 }),
        bracing: fc.constantFrom(0, 0.5e-3, 5e-3),
      }),
      async ({ edges: [width, height, depth], thickness, to, bracing }) => {
        const outer = { width: width! / 1e3, height: height! / 1e3, depth: depth! / 1e3 };
        const { page } = await built(
          plainWork({ band: { from: 30, to } }, { outer, thickness: thickness / 1e3, bracing, holes: [] }),
        );
        const text = page.slice(page.indexOf('Panels that ring'));
        const told = [...text.matchAll(/<td>(\d+) to (\d+) Hz<\/td><td>([^<]+)<\/td>/g)];
        expect(told.length).toBeGreaterThan(2);
        for (const [, low, high, words] of told) {
          const expected =
            Number(low) > to
              ? 'above the band'
              : Number(high) < 30
                ? 'below the band'
                : Number(low) >= 30 && Number(high) <= to
                  ? 'in the band'
                  : 'may be in the band';
          expect(words).toBe(expected);
        }
        const first = [...text.matchAll(/mm<\/td><td>(\d+) to (\d+) Hz<\/td><td>([^<]+)<\/td>/g)];
        const rings = first.some(([, , , words]) => words!.includes('in the band'));
        expect(text.includes('No brace is needed')).toBe(!rings);
        const taken = Number(/It takes ([\d.]+) L of air/.exec(text)?.[1]) / 1e3;
        if (bracing >= taken + 1e-4) expect(text).toContain('which the design keeps free');
        if (bracing < taken - 1e-4) expect(text).toContain('write that volume into the brief');
        expect(text).not.toMatch(/undefined|NaN|Infinity|\[object/);
      },
    ),
    { numRuns: cases(3) },
  );
});

test('nothing is said of panels where there is no band, and of boxes that are too small for plates', async () => {
  const { band: _, ...without } = plainWork();
  expect((await built(without)).page).not.toContain('Panels that ring');
  const small = { outer: { width: 0.09, height: 0.3, depth: 0.3 }, holes: [] };
  expect((await built(plainWork({}, small))).page).not.toContain('Panels that ring');
});

test('bolts are drilled around the driver, a gasket has the same ones, and a cup has its hole in the back', async () => {
  const tools = {
    bolts: { count: 8, circle: 0.247, hole: 0.0055 },
    terminals: {},
    printer: { width: 0.3, height: 0.25 },
  };
  // A magnet stands behind the middle of the back, low down.
  const solids = [{ least: [0.1, 0, 0.3], greatest: [0.26, 0.2, 0.462] }];
  const { page, files, notes } = await built(plainWork({ tools }, { solids }));
  expect(notes).toEqual([]);
  const bolts = (dxf: unknown) => circlesOf(dxf).filter(([, , r]) => Math.abs(r! - 2.75) < 1e-6);
  const onFront = bolts(files.get('panels/front.dxf'));
  const onGasket = bolts(files.get('small-parts/gasket.dxf'));
  expect(onFront).toHaveLength(8);
  const sorted = (list: number[][]) => list.map(([x, y]) => `${x!.toFixed(3)} ${y!.toFixed(3)}`).sort();
  expect(sorted(onFront.map(([x, y]) => [x! - 180, y! - 250]))).toEqual(sorted(onGasket));
  const [[x, y, r]] = circlesOf(files.get('panels/back.dxf')).filter(([, , one]) => one! > 20) as [number[]];
  // Its hole is that of the page, and the magnet, which is 160 mm wide and ends 200 mm up, is not behind it.
  expect(page).toContain(`<td>hole in the panel</td><td>${Number((2 * r!).toFixed(1))} mm</td>`);
  const clear = y! - r! >= 200 - 1e-6 || x! + r! <= 360 - 260 + 1e-6 || x! - r! >= 360 - 100 - 1e-6;
  expect(clear).toBe(true);
  for (const name of ['gasket.stl', 'gasket.3mf', 'gasket.dxf', 'terminal-cup.stl', 'terminal-cup.3mf']) {
    expect(page).toContain(`<li>small-parts/${name}</li>`);
    expect(files.has(`small-parts/${name}`)).toBe(true);
  }
  expect(page).toContain('two binding posts');
});

test('a panel without room for bolts is sawn without them, and a gasket that the printer cannot make is cut', async () => {
  const tools = { bolts: { count: 24, circle: 0.247, hole: 0.0055 } };
  const near = { holes: [{ ...plainWork().box!.holes[0]!, across: 0.14 }] };
  const { page, files, notes } = await built(plainWork({ tools }, near as never));
  expect(notes.join(' ')).toMatch(/bolts of the drivers are not drawn.*left panel/);
  expect(notes.join(' ')).toContain('cut it by its drawing');
  expect(files.has('panels/front.dxf')).toBe(true);
  expect(files.has('small-parts/gasket.dxf')).toBe(true);
  expect(files.has('small-parts/gasket.stl')).toBe(false);
  expect(page).toContain('a soft gasket for each driver');
});

test('bolts without room in the frame are told by the field of the brief', async () => {
  const { notes } = await built(plainWork({ tools: { bolts: { count: 8, circle: 0.236, hole: 0.005 } } }));
  const text = notes.join(' ');
  expect(text).toContain('A small part is not made: workshop.bolts');
  expect(text).not.toContain('gasket.bolts');
});

test('holes that are only listed are told beside those that are drawn', async () => {
  const inside = {
    ...plainWork().box!.holes[0]!,
    board: { name: 'partition', size: [0.324, 0.364], from: [0.018, 0.018, 0.2] },
    across: 0.16,
    diameter: 0.1,
  } as const;
  const partition = { name: 'partition', count: 1, length: 0.364, width: 0.324, thickness: 0.018 };
  const both = await built(plainWork({}, { holes: [...plainWork().box!.holes, inside], boards: [partition] }));
  expect(both.page).toContain('on the side that the drawings show, and of those that no drawing shows as listed under');
  expect((await built(plainWork())).page).not.toContain('those that no drawing shows');
});

test('the panels that ring follow the holes, also where a page ends between them', async () => {
  const { page } = await built(plainWork());
  expect(page).toContain('<section class="flows"><h2>Panels that ring</h2>');
});

test('weights of radiators are discs, with the mass that they shall have', async () => {
  const { page, files } = await built(plainWork({ weights: { count: 2, mass: 0.12, coneDiameter: 0.205 } }));
  expect(page).toContain('<td>they shall weigh together</td><td>120 g</td>');
  expect(page).toContain('100 % infill');
  expect(files.has('small-parts/weight.stl')).toBe(true);
  const [, low, high] = /will weigh (\d+) g to (\d+) g/.exec(page)!;
  expect(Number(low)).toBeLessThan(120);
  expect(Number(high)).toBeGreaterThan(120);
});

test('the opening of a slot along panels is drawn, its boards have a step, and the leak test closes it', async () => {
  const slot = {
    what: 'vent',
    face: 'front',
    across: 0.18,
    up: 0.0255,
    from: ['left', 'bottom'],
    form: 'rectangle',
    sides: [0.324, 0.015],
  };
  const boards = [{ name: 'long board of the slot', count: 1, length: 0.3, width: 0.324, thickness: 0.018 }];
  const { page, files, notes } = await built(
    plainWork({}, { holes: [...plainWork().box!.holes, slot], boards } as never),
  );
  expect(notes).toEqual([]);
  expect(page).not.toContain('Openings that no drawing shows');
  expect(files.get('panels/front.svg')).toContain('vent');
  expect(page).toContain('spacers sawn 15 mm wide');
  expect(page).toContain('closes the slot with a flat board');
  const free = { ...slot, up: 0.06, across: 0.18, sides: [0.2, 0.056] };
  const tube = await built(plainWork({}, { holes: [{ ...plainWork().box!.holes[0]! }, free], boards } as never));
  expect(tube.page).toContain('to a tube around spacers sawn 20 mm wide');
});

test('each cut of a sheet is told by its distances: pieces that follow each other add up to the sheet', async () => {
  const { page, files } = await built(
    plainWork({}, { outer: { width: 0.4, height: 0.3, depth: 0.25 }, thickness: 0.018, holes: [] }),
  );
  const told = page.matchAll(/<li>([\d.]+) mm from the (left|lower) edge; ([\d.]+) mm<\/li>/g);
  const rows = [...told].map(([, at, edge, before]) => ({ at: Number(at), edge, before: Number(before) }));
  expect(rows.length).toBeGreaterThan(8);
  const kerf = 3;
  rows.forEach(({ at, edge, before }, i) => {
    // The piece before the blade begins at the edge of the sheet, or where an earlier saw line of the same direction ended.
    const ends = rows.slice(0, i).filter((one) => one.edge === edge && one.at < at);
    const begins = [0, ...ends.map((one) => one.at + kerf)];
    expect(begins.some((begin) => Math.abs(at - begin - before) < 0.11)).toBe(true);
  });
  // The edges of each piece of the cut list are among the widths.
  const sizes = [...String(files.get('cut-list.csv')).matchAll(/,([\d.]+),([\d.]+),18,/g)];
  expect(sizes.length).toBeGreaterThan(2);
  for (const edge of sizes.flatMap(([, length, width]) => [Number(length), Number(width)]))
    expect(rows.map(({ before }) => before)).toContain(edge);
});

test('without bolts in the brief the frame is the template; with them the drawing shows their holes', async () => {
  const { page } = await built(plainWork({}, {}));
  expect(page).toContain('the frame of the driver is its own template');
  expect(page).toContain('the holes in the frame of the driver tell how many');
  const told = await built(plainWork({ tools: { bolts: { count: 6, circle: 0.19, hole: 0.005 } } }, {}));
  expect(told.page).not.toContain('is its own template');
  expect(told.page).toContain('for holes of 5 mm');
});

test('the arm of an elbow is marked on the drawing of its panel, and the words turn it the same way', async () => {
  const vent = (from: 'front' | 'back', towards: 'top' | 'left') => ({
    count: 1,
    diameter: 0.03,
    outerDiameter: 0.034,
    flangeDiameter: 0.05,
    length: 0.16,
    bend: { radius: 0.034, firstLeg: 0.04, secondLeg: 0.06, from, towards } as const,
    pieces: [0.16],
    fb: 35,
  });
  const hole = (face: 'front' | 'back') =>
    ({ what: 'vent', face, across: 0.1, up: 0.1, from: ['left', 'bottom'], form: 'circle', diameter: 0.056 }) as const;
  const { page, files } = await built(
    plainWork(
      { vents: [vent('front', 'top'), vent('back', 'left')] },
      { outer: { width: 0.4, height: 0.3, depth: 0.25 }, thickness: 0.018, holes: [hole('front'), hole('back')] },
    ),
  );
  for (const [face, towards, other] of [
    ['front', 'top', 'left'],
    ['back', 'left', 'top'],
  ]) {
    expect(page).toContain(`inside, the arm points to the ${towards}`);
    expect(page).toContain(`the ${towards} panel, as the arrow on the drawing of the ${face} shows`);
    expect(String(files.get(`panels/${face}.svg`))).toContain(`the arm points to the ${towards}`);
    expect(String(files.get(`panels/${face}.svg`))).not.toContain(`the arm points to the ${other}`);
  }
  expect(String(files.get('panels/top.svg'))).not.toContain('the arm points');
});

test('where boards inside are glued to a panel its drawing has a band, as it is seen from outside, and nothing is cut there', async () => {
  // Invented: along the bottom 40 to 58 mm up and from the front to 0.3 m, a partition from 0.4 m on, and a brace.
  const placed = [{ name: 'long board', least: [0.018, 0.04, 0.018], greatest: [0.342, 0.058, 0.3] }];
  const partition = { name: 'partition', size: [0.324, 0.364], from: [0.018, 0.018, 0.4] } as const;
  const inBoard = {
    ...{ what: 'driver', face: 'front', board: partition, across: 0.16, up: 0.18, from: ['left', 'bottom'] },
    ...{ form: 'circle', diameter: 0.2 },
  } as const;
  const { files, page } = await built(
    plainWork({ tools: { brace: { across: 'depth', at: 0.2 } } }, { holes: [inBoard], placed, bracing: 0 } as never),
  );
  const drawing = (name: string) => {
    const svg = String(files.get(`panels/${name}.svg`)).replace(/\u00a0/g, ' ');
    const scale = Number(/scale 1 : ([\d.]+)/.exec(svg)![1]);
    const bands = [...svg.matchAll(/d="M([\d.-]+) ([\d.-]+)L([\d.-]+) [\d.-]+L[\d.-]+ ([\d.-]+)L[^"]+Z"[^>]*fill/g)];
    return bands.map((band) => {
      const [left, bottom, right, top] = band.slice(1).map((at) => Number(at) * scale) as [
        number,
        number,
        number,
        number,
      ];
      return [left, right, -bottom, -top].map((at) => Math.round(at) + 0);
    });
  };
  // The front covers the panels beside it; these begin behind it, and the right one is seen with its front at the left.
  expect(drawing('front')).toEqual([[18, 342, 40, 58]]);
  const right = drawing('right');
  expect(right).toEqual([
    [382, 400, 0, 364],
    [0, 282, 22, 40],
    [173, 191, 0, 364],
  ]);
  // Of the left panel, which is 444 mm wide, the same bands are seen from the other side.
  expect(drawing('left')).toEqual(right.map(([from, to, low, high]) => [444 - to!, 444 - from!, low, high]));
  expect(drawing('back')).toEqual([]);
  expect(page).toContain('A shaded band is where a board inside is glued');
  // Nothing but the outline is cut in a panel without holes.
  const dxf = String(files.get('panels/right.dxf'))
    .split(/\r?\n/)
    .map((line) => line.trim());
  const layers = dxf.flatMap((line, i) => (line === 'LWPOLYLINE' ? [dxf[dxf.indexOf('8', i) + 1]] : []));
  expect(layers.filter((one) => one === 'cut')).toHaveLength(1);
  expect(layers.filter((one) => one === 'note')).toHaveLength(3);
});
