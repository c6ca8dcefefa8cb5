/** A box that is no cuboid, as its pages show it: a drawing for every panel, its weight, where its panels ring, and how it is closed. */
import type { SpaceShape } from '@airspring/core/space';
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import { type Mesh, meshFaults, volumeOf } from '@airspring/workshop/mesh';
import { standardShapes } from '@airspring/workshop/shape';
import { expect, test } from 'vitest';
import { outsideOf } from '../../../packages/workshop/src/dossier/box-picture.js';
import { sawingOf } from '../../../packages/workshop/src/dossier/sawing.js';
import { mdf } from '../../../packages/workshop/src/panel/board.js';
import { plainWork } from '../../arbitrary/work.js';

const T = 0.015;
const [W, H, D] = [0.4, 0.42, 0.4];
const fields: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  wedge: { top: 0.18 },
  cylinder: {},
  corner: {},
  quarterRound: {},
  underSeat: { front: 0.28, step: 0.2 },
  wheelArch: { arch: 0.2 },
  outline: {
    along: 'depth',
    corners: [
      [0, 0],
      [W, 0],
      [W, 0.3],
      [0.2, 0.36],
      [0.2, H],
      [0, H],
    ],
  },
};
const stack = {
  along: 'height',
  layers: [
    {
      corners: [
        [0, 0],
        [W, 0],
        [W, D],
        [0, D],
      ],
      length: 0.2,
    },
    {
      corners: [
        [0, 0],
        [0.3, 0],
        [0.2, 0.25],
        [0, 0.25],
      ],
    },
  ],
};
const shapeOf = (name: string) =>
  standardShapes
    .find((one) => one.name === name)!
    .shape(fields[name] ?? stack, { outer: [W, H, D], panelThickness: T }) as SpaceShape;
const panelsOf = (name: string) => shapeOf(name).panels([W, H, D]);
type Hole = NonNullable<Work['box']>['holes'][number];
const round = (what: string, face: Hole['face'], across: number, up: number, diameter: number, board?: Hole['board']) =>
  ({ what, face, across, up, from: ['left', 'bottom'], form: 'circle', diameter, ...(board && { board }) }) as Hole;

const workOf = (name: string, holes: readonly Hole[], more: Partial<Work> = {}): Work => {
  const boards = panelsOf(name).map((panel) => ({
    name: panel.name,
    count: 1,
    length: panel.blank[0],
    width: panel.blank[1],
    thickness: T,
    panel,
  }));
  const outer = { width: W, height: H, depth: D };
  return plainWork(more, { outer, thickness: T, holes, boards, joints: 'They meet in mitres.', closes: 'left' });
};
const built = async (work: Work) => {
  const { files, notes } = await filesToBuildFrom(work);
  return { page: String(files[0]!.contents), notes, files: new Map(files.map((file) => [file.path, file.contents])) };
};

/** The figures of a DXF file: what is cut, mm. */
function dxfOf(contents: unknown) {
  const lines = String(contents)
    .split(/\r?\n/)
    .map((line) => line.trim());
  const pairs = Array.from({ length: lines.length >> 1 }, (_, i) => [lines[2 * i]!, lines[2 * i + 1]!] as const);
  const entities: { type: string; layer: string; points: number[][]; radius?: number }[] = [];
  for (const [code, value] of pairs) {
    if (code === '0') entities.push({ type: value, layer: '', points: [] });
    const last = entities.at(-1);
    if (last === undefined) continue;
    if (code === '8') last.layer = value;
    if (code === '10') last.points.push([Number(value)]);
    if (code === '20') last.points.at(-1)?.push(Number(value));
    if (code === '40') last.radius = Number(value);
  }
  const on = (layer: string, type: string) => entities.filter((one) => one.layer === layer && one.type === type);
  return {
    cut: on('cut', 'LWPOLYLINE'),
    circles: on('cut', 'CIRCLE'),
    pocket: on('pocket', 'LWPOLYLINE'),
    inside: on('inside', 'LWPOLYLINE'),
  };
}

test.each(Object.keys(fields))('every panel of a box has its drawing, as large as its blank: %s', async (name) => {
  const { page, files } = await built(workOf(name, []));
  for (const panel of panelsOf(name)) {
    const path = `panels/${panel.name.replace(' ', '-')}`;
    expect(page).toContain(`<li>${path}.svg</li>`);
    expect(String(files.get(`${path}.svg`))).not.toMatch(/NaN|undefined/);
    const { cut } = dxfOf(files.get(`${path}.dxf`));
    expect(cut).toHaveLength(1);
    for (const k of [0, 1]) {
      const all = cut[0]!.points.map((at) => at[k]!);
      expect(Math.min(...all)).toBeCloseTo(0, 6);
      expect(Math.max(...all)).toBeCloseTo(1e3 * panel.blank[k]!, 5);
    }
  }
  expect(page).not.toMatch(/NaN|undefined|\[object/);
});

test('the shelf of a stack is drawn with its opening, and the steps build layer on layer', async () => {
  const { page, files } = await built(workOf('stack', []));
  const { cut } = dxfOf(files.get('panels/shelf.dxf'));
  const [edge, opening] = cut.map(({ points }) => points);
  expect(edge).toHaveLength(4);
  // 15 mm of panel around the air of the upper layer; its slanted side leans by 100 mm over 250 mm.
  const wide = 15 * Math.hypot(1, 0.4);
  const corners = [
    [15, 15],
    [300 - 0.4 * 15 - wide, 15],
    [300 - 0.4 * 235 - wide, 235],
    [15, 235],
  ];
  corners.forEach((corner, i) => {
    expect(opening![i]![0]).toBeCloseTo(corner[0]!, 6);
    expect(opening![i]![1]).toBeCloseTo(corner[1]!, 6);
  });
  expect(page).toContain('then the shelf');
  expect(page).toContain('an opening takes its middle');
  expect(page).not.toMatch(/NaN|undefined|\[object/);
});

test('the cut list tells a panel with an opening from its twin, and a figure from its rectangle', async () => {
  const rectangle = [
    [0, 0],
    [W, 0],
    [W, D],
    [0, D],
  ] as const;
  const layers = (upper: readonly (readonly [number, number])[]) =>
    standardShapes
      .find(({ name }) => name === 'stack')!
      .shape(
        { along: 'height', layers: [{ corners: rectangle, length: 0.2 }, { corners: upper }] },
        { outer: [W, H, D], panelThickness: T },
      ) as SpaceShape;
  const listOf = async (shape: SpaceShape) => {
    const boards = shape.panels([W, H, D]).map((panel) => {
      const [length, width] = panel.blank;
      return { name: panel.name, count: 1, length, width, thickness: T, panel };
    });
    const outer = { width: W, height: H, depth: D };
    const tools = { board: 'birch plywood' };
    const box = { outer, thickness: T, holes: [], boards, joints: '', closes: 'top' };
    const { files, page } = await built(plainWork({ tools }, box));
    return { list: String(files.get('cut-list.csv')), page: page.replace(/\u00a0/g, ' ') };
  };
  const stepped = await listOf(
    layers([
      [0, 0],
      [0.3, 0],
      [0.3, 0.25],
      [0, 0.25],
    ]),
  );
  expect(stepped.list).toContain('shelf,1,400,400,15,birch plywood,along the length,,opening\r\n');
  expect(stepped.list).toContain('bottom,1,400,400,15,birch plywood,along the length,,\r\n');
  // As wide and as deep as the section below, with one corner less.
  const cut = await listOf(
    layers([
      [0, 0],
      [W, 0],
      [W, 0.2],
      [0.2, D],
      [0, D],
    ]),
  );
  expect(cut.list).toContain(
    'top,1,400,400,15,birch plywood,along the length,no rectangle: its drawing has its corners,\r\n',
  );
  expect(cut.list).toContain('bottom,1,400,400,15,birch plywood,along the length,,\r\n');
  // Ends that are rectangles ring as these do.
  expect(stepped.page).toContain('<td>bottom</td><td>370 mm × 370 mm</td>');
  expect(stepped.page).toContain('<td>top</td><td>270 mm × 220 mm</td>');
  expect(stepped.page).not.toContain('that is no rectangle');
  expect(cut.page).toContain('The first resonance of the top is not worked out: that is no rectangle');
});

test('the cover shows a box that is no cuboid from in front and from behind, with its holes', async () => {
  const prisms = shapeOf('wedge').prisms!([W, H, D])!;
  const box = { outer: { width: W, height: H, depth: D }, thickness: T, prisms };
  const full = ((D + 0.18) / 2) * H * W;
  const hole = round('driver', 'right', 0.12, 0.14, 0.2);
  const plain = outsideOf({ ...plainWork().box!, ...box, holes: [] });
  const cut = outsideOf({ ...plainWork().box!, ...box, holes: [hole] });
  expect(meshFaults(plain)).toEqual([]);
  expect(meshFaults(cut)).toEqual([]);
  expect(volumeOf(plain)).toBeCloseTo(full, 12);
  // A polygon of 48 sides is smaller than its circle by 0.3 %.
  expect((full - volumeOf(cut)) / (Math.PI * 0.1 ** 2 * T)).toBeCloseTo(
    (48 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 48),
    6,
  );
  const work = workOf('wedge', [hole]);
  const { page } = await built({ ...work, box: { ...work.box!, prisms } });
  const cover = page.slice(0, page.indexOf('<h2>Buy</h2>'));
  expect(cover.match(/<title>The box from (in front|behind)/g)).toHaveLength(2);
});

test('a board that reaches farther inside shows both edges: the one that is seen, and the one behind', async () => {
  const { files } = await built(workOf('underSeat', []));
  const { pocket, inside } = dxfOf(files.get('panels/step-1.dxf'));
  const at = (lines: readonly { points: number[][] }[]) => lines.map(({ points }) => points.map(([x]) => x));
  // 140 mm high outside: at the top a mitre, at the lower end the inner surface goes on for 15 mm.
  expect(at(pocket)).toEqual([[140, 140]]);
  expect(at(inside)).toEqual([[15, 15]]);
  const svg = String(files.get('panels/step-1.svg'));
  expect(svg).toContain('step 2: cut at 135°');
  expect(svg).toContain('top: cut at 45°');
  expect(svg).toContain('against left');
});

test('holes lie where the list says, seen from outside: the left and the back are mirrored', async () => {
  const holes = [round('driver', 'right', 0.12, 0.14, 0.2), round('vent', 'left', 0.1, 0.3, 0.06)];
  const vents = [
    {
      count: 1,
      diameter: 0.054,
      outerDiameter: 0.06,
      flangeDiameter: 0.08,
      length: 0.25,
      bend: { radius: 0.06, firstLeg: 0.05, secondLeg: 0.05, from: 'left' as const, towards: 'bottom' as const },
      pieces: [0.25],
      fb: 30,
    },
  ];
  const { page, files } = await built(workOf('underSeat', holes, { vents }));
  const [right] = dxfOf(files.get('panels/right.dxf')).circles;
  expect([...right!.points[0]!, right!.radius]).toEqual([120, 140, 100]);
  const [left] = dxfOf(files.get('panels/left.dxf')).circles;
  expect([...left!.points[0]!, left!.radius]).toEqual([300, 300, 30]);
  expect(String(files.get('panels/left.svg'))).toContain('inside, the arm points to the bottom');
  expect(page).not.toContain('Openings that no drawing shows');
  // The arrow that the steps name is on a drawing.
  expect(page).toContain('as the arrow on the drawing of the left shows');
});

test('bolts of a driver are drilled where the panel has room for them', async () => {
  const tools = { bolts: { count: 8, circle: 0.24, hole: 0.005 } };
  const drilled = async (across: number) => {
    const { files } = await built(workOf('underSeat', [round('driver', 'right', across, 0.14, 0.2)], { tools }));
    return String(files.get('panels/right.dxf'))
      .split(/\r?\n/)
      .filter((line) => line.trim() === 'drill').length;
  };
  expect((await drilled(0.14)) - (await drilled(0.11))).toBe(8);
});

test('bolts without room are told, and the other holes are drawn', async () => {
  const tools = { bolts: { count: 8, circle: 0.242, hole: 0.005 }, printer: { width: 0.3, height: 0.3 } };
  const work = (across: number) => workOf('underSeat', [round('driver', 'right', across, 0.14, 0.2)], { tools });
  const { notes } = await built(work(0.11));
  // The middle of the first bolt lies 0.121 × cos 22.5° = 111.79 mm from that of the driver.
  expect(notes.join().replace(/\u00a0/g, ' ')).toContain(
    'The holes for the bolts of the drivers are not drawn. On the right, a bolt of the driver passes the panels behind its edges by 19.3 mm',
  );
  expect((await built(work(0.14))).notes).toEqual([]);
});

test('a recess and a rounded edge are drawn, weighed and told, as those of a cuboid are', async () => {
  const tools = { recess: 0.006, roundOver: 0.005, density: 5000 };
  const holes = [round('driver', 'right', 0.2, 0.14, 0.232)];
  const { page, files, notes } = await built(workOf('underSeat', holes, { tools }));
  expect(notes).toEqual([]);
  const svg = String(files.get('panels/right.svg'));
  expect(svg).toContain('recess ⌀ 263, 6 deep of 15');
  expect(svg).toContain('inner edge rounded, R 5');
  expect(page).toContain('recess ⌀ 263, 6 deep of 15');
  expect(page.replace(/\u00a0/g, ' ')).toContain('263 mm wide and 6 mm deep');
  expect(page).toContain('on the side that the drawings show');
  const massOf = (text: string) => Number(/weigh about ([\d.]+) kg/.exec(text.replace(/\u00a0/g, ' '))![1]);
  const bare = await built(workOf('underSeat', holes, { tools: { density: 5000 } }));
  const ring = (Math.PI / 4) * (0.263 ** 2 - 0.232 ** 2) * 0.006;
  const edge = (1 - Math.PI / 4) * 0.005 ** 2 * 2 * Math.PI * (0.116 + 0.00112);
  expect(Math.abs(massOf(bare.page) - massOf(page) - 5000 * (ring + edge))).toBeLessThan(0.11);
});

test('a driver that would meet the slanted back by its recess is told', async () => {
  const hole = round('driver', 'front', 0.2, 0.34, 0.08);
  // The inner side of the back lies at 184.0 mm where the driver ends above, at 380 mm.
  const back = 0.4 - (0.22 / 0.42) * 0.38 - 0.015 * Math.hypot(1, 0.22 / 0.42);
  const noted = async (deep: number, recess: number) => {
    const driver = { what: 'driver', least: [0.16, 0.3, T], greatest: [0.24, 0.38, deep] };
    const work = workOf('wedge', [hole], { tools: { recess } });
    const prisms = shapeOf('wedge').prisms!([W, H, D])!;
    const { notes } = await built({ ...work, box: { ...work.box!, prisms, solids: [driver] } });
    return notes.filter((note) => note.includes('would meet the panel behind it'));
  };
  expect(await noted(back - 0.004, 0.0039)).toEqual([]);
  expect(await noted(back - 0.004, 0.0041)).toHaveLength(1);
  expect(await noted(back - 0.006, 0.005)).toEqual([]);
});

test('a recess that would pass the edge of its panel is not drawn, and the steps are silent about it', async () => {
  const holes = [round('driver', 'right', 0.134, 0.14, 0.232)];
  const narrow = await built(workOf('underSeat', [{ ...holes[0]!, across: 0.13 }], { tools: { recess: 0.006 } }));
  expect(narrow.notes.join().replace(/\u00a0/g, ' ')).toContain(
    'On the right, the recess of the driver passes the edge of the panel by 1.5 mm; 2 mm must be left.',
  );
  expect(String(narrow.files.get('panels/right.svg'))).not.toContain('recess');
  expect(narrow.page).not.toContain('Rout the recess');
  expect((await built(workOf('underSeat', holes, { tools: { recess: 0.006 } }))).notes).toEqual([]);
  // At an edge of 45° the floor of the recess is 6 mm nearer to the cut than its rim.
  const sloped = (up: number) =>
    built(workOf('underSeat', [round('driver', 'top', 0.1, up, 0.1)], { tools: { recess: 0.006 }, drivers: small }));
  const small = { ...plainWork().drivers, outerDiameter: 0.12, cutoutDiameter: 0.1 };
  expect((await sloped(0.0605 + 0.0075)).notes.join()).toContain('comes within 1.5');
  expect((await sloped(0.0605 + 0.0085)).notes).toEqual([]);
});

test('a panel that is bent all around is closed to a ring: no edges are mitred', async () => {
  const { page } = await built(workOf('cylinder', []));
  expect(page).toContain('Close the bent panel to a ring');
  expect(page).not.toContain('mitred edges');
  expect((await built(workOf('quarterRound', []))).page).toContain('Tape the mitred edges together');
});

test.each(['underSeat', 'wheelArch', 'wedge'])(
  'a sheet shows each panel within its rectangle, with its holes: %s',
  async (name) => {
    const { files } = await built(workOf(name, [round('vent', 'right', 0.3, 0.33, 0.05)]));
    const { cut, circles } = dxfOf(files.get('sheets/mdf-1.dxf'));
    const flat = panelsOf(name);
    expect(cut).toHaveLength(flat.length);
    const areaOf = (at: readonly (readonly number[])[]) =>
      Math.abs(
        at.reduce((sum, [x, y], i) => sum + x! * at[(i + 1) % at.length]![1]! - at[(i + 1) % at.length]![0]! * y!, 0) /
          2,
      );
    // What covers the section is cut by its outline, the others by their blanks.
    const wanted = flat.map(({ outline, blank, angles, bent }) =>
      bent || angles.some((angle) => Math.abs(angle - Math.PI / 2) > 1e-9) ? blank[0] * blank[1] : areaOf(outline),
    );
    const sorted = (all: readonly number[]) => [...all].sort((a, b) => a - b).map((one) => one.toFixed(6));
    expect(sorted(cut.map(({ points }) => areaOf(points) / 1e6))).toEqual(sorted(wanted));
    expect(circles).toHaveLength(1);
    // As far from the nearest corners of its panel as the panel's own drawing has it.
    const own = dxfOf(files.get('panels/right.dxf'));
    const nearest = ({ cut: all, circles: [hole] }: typeof own) =>
      all
        .flatMap(({ points }) =>
          points.map(([x, y]) => Math.hypot(x! - hole!.points[0]![0]!, y! - hole!.points[0]![1]!)),
        )
        .sort((a, b) => a - b)[0]!;
    expect(nearest({ ...own, cut, circles })).toBeCloseTo(nearest(own), 6);
  },
);

/** The solid between both surfaces of a flat panel. */
function solidOf({ outline, inner, thickness }: ReturnType<typeof panelsOf>[number]): Mesh {
  const count = outline.length;
  const corners = Float64Array.from([
    ...outline.flatMap(([x, y]) => [x, y, 0]),
    ...inner.flatMap(([x, y]) => [x, y, thickness]),
  ]);
  const fan = (from: number, turned: boolean) =>
    Array.from({ length: count - 2 }, (_, i) =>
      turned ? [from, from + i + 2, from + i + 1] : [from, from + i + 1, from + i + 2],
    ).flat();
  const around = Array.from({ length: count }, (_, i) => {
    const j = (i + 1) % count;
    return [i, j, count + j, i, count + j, count + i];
  }).flat();
  return { corners, triangles: Uint32Array.from([...fan(0, true), ...fan(count, false), ...around]) };
}

test.each(['wedge', 'corner', 'underSeat', 'outline'])(
  'the weight is that of the solids less their holes: %s',
  (name) => {
    const panel = panelsOf(name).at(-1)!;
    const holes = [round('driver', panel.face!, 0.15, 0.12, 0.16)];
    const sawing = sawingOf(workOf(name, holes).box!, {});
    if (!sawing.ok) throw new Error(sawing.because[0]!.text);
    const solids = panelsOf(name).reduce((sum, one) => sum + volumeOf(solidOf(one)), 0);
    const wood = solids - (Math.PI / 4) * 0.16 ** 2 * T;
    expect(Math.abs(sawing.mass / (wood * mdf.density) - 1)).toBeLessThan(1e-9);
    const rectangles = sawing.rows.reduce((sum, row) => sum + row.count * row.length * row.width * row.thickness, 0);
    expect(rectangles / wood).toBeGreaterThan(1.05);
  },
);

test('panels between two others ring as plates; those across are told no lower than the rectangle around them', async () => {
  const { page } = await built(workOf('underSeat', []));
  const text = page.slice(page.indexOf('Panels that ring')).replace(/[\u00a0\s]+/g, ' ');
  // Clear of both surfaces: the step is 140 mm high outside, 15 mm less at its top, 370 mm along.
  expect(text).toContain('<td>step 1</td><td>125 mm × 370 mm</td>');
  expect(text).toContain('<td>bottom</td><td>370 mm × 370 mm</td>');
  expect(text).toContain('The first resonance of the left and right, no rectangle, lies at');
  expect(text).toContain('every panel in the table');
  const arch = await built(workOf('wheelArch', []));
  expect(arch.page).toContain('The first resonance of the bent is not worked out');
  const cylinder = await built(workOf('cylinder', []));
  expect(cylinder.page).not.toContain('no rectangle, lies at');
});

test('the steps close the box with the panel that is named, and say nothing of the back', async () => {
  const { page } = await built(workOf('corner', [round('driver', 'top', 0.28, 0.28, 0.16)]));
  const steps = page.slice(page.indexOf('Put it together')).replace(/\u00a0/g, ' ');
  expect(steps).toContain('Glue all panels but the left panel');
  expect(steps).toContain('Glue the left panel on.');
  expect(steps).toContain('low on a panel that stays free');
  expect(steps).not.toMatch(/the back(?! panel)/);
});

/** The frequency at which the page says that a panel rings at least, Hz. */
const toldOf = (page: string, name: string) =>
  Number(new RegExp(`of the [a-z ]*${name}, no rectangle, lies at ([\\d.]+)`).exec(page.replace(/\u00a0/g, ' '))?.[1]);
/** A plate whose straight edges may turn, of the heaviest and least stiff board, from the lowest eigenvalue of its membrane. */
const plateOf = (eigenvalue: number) => {
  const stiffness = (mdf.modulusAlong * T ** 3) / (12 * (1 - mdf.poissonRatio ** 2));
  const worst = mdf.modulusRange[0] / mdf.densityRange[1];
  return (eigenvalue / (2 * Math.PI)) * Math.sqrt((stiffness / (mdf.density * T)) * worst);
};

test('what is told of a triangle and of an L lies below their membranes, by as much as the rectangle around them does', async () => {
  const { page } = await built(workOf('corner', []));
  // A right triangle of two equal sides a: 5 π²/a², half of the mode (1, 2) of the square.
  const leg = W - (2 + Math.SQRT2) * T;
  const triangle = plateOf((5 * Math.PI ** 2) / leg ** 2);
  const square = plateOf((2 * Math.PI ** 2) / (W - 2 * T) ** 2);
  expect(toldOf(page, 'bottom and top')).toBeLessThan(triangle);
  expect(Math.abs(toldOf(page, 'bottom and top') - square)).toBeLessThan(1);
  // An L of three squares of side a: 9.63972/a² (Fox, Henrici and Moler 1967, from memory).
  const a = 0.15;
  const shape = standardShapes
    .find((one) => one.name === 'underSeat')!
    .shape(
      { front: a + 2 * T, step: a },
      { outer: [W, 2 * a + 2 * T, 2 * a + 2 * T], panelThickness: T },
    ) as SpaceShape;
  const panel = shape.panels([W, 2 * a + 2 * T, 2 * a + 2 * T]).at(-1)!;
  const boards = [{ name: 'right', count: 1, length: 2 * a, width: 2 * a, thickness: T, panel }];
  const wide = shape.panels([W, 2 * a + 2 * T, 2 * a + 2 * T])[0]!;
  const more = { name: 'bottom', count: 1, length: wide.blank[0], width: wide.blank[1], thickness: T, panel: wide };
  const box = { boards: [...boards, more], joints: 'mitres', thickness: T, holes: [] };
  const told = toldOf((await built(plainWork({}, box))).page, 'right');
  expect(told).toBeLessThan(plateOf(9.63972 / a ** 2));
  expect(plateOf(9.63972 / a ** 2) / told).toBeCloseTo(9.63972 / (Math.PI ** 2 / 2), 1);
});

test('where the grain runs one way, or the edge is round, nothing is told of a panel that is no rectangle', async () => {
  const grained = await built(workOf('corner', [], { tools: { board: 'birch plywood' } }));
  expect(grained.page).not.toContain('no rectangle, lies at');
  const round = await built(workOf('quarterRound', []));
  expect(round.page).toContain('round at its edge');
});
