/** A recess for the frame of a driver and a rounded inner edge: drawn, told, counted, and refused where the board is too thin. */
import type { Face } from '@airspring/core/space';
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import { type Brief, standard, toBuild } from 'airspring';
import { expect, test } from 'vitest';
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { bestBoxes } from '../../../packages/airspring/src/search/best.js';
import { readStanding } from '../../../packages/airspring/src/standing/read.js';
import { demo, searchFor } from '../../arbitrary/brief.js';
import { demoStanding } from '../../arbitrary/standing.js';
import { plainWork } from '../../arbitrary/work.js';
import { faultsOf, pathsOf } from '../../refusal/faults.js';

async function built(tools: Work['tools'], box: Partial<Work['box']> = {}) {
  const { files, notes } = await filesToBuildFrom(plainWork({ tools }, box));
  const of = (path: string) => String(files.find((file) => file.path === path)!.contents);
  return { of, notes, page: of('build.html').replace(/\u00a0/g, ' ') };
}

/** The circles of a drawing file with their layers: layer and radius, mm. */
function circlesOf(dxf: string): string[] {
  const lines = dxf.split(/\r?\n/).map((line) => line.trim());
  return lines.flatMap((line, i) => {
    if (line !== 'CIRCLE' || lines[i - 1] !== '0') return [];
    const value = (code: string) => lines[lines.findIndex((one, k) => k > i && (k - i) % 2 === 1 && one === code) + 1];
    return [`${value('8')} ${Number(value('40'))}`];
  });
}

const massOf = (page: string) => Number(/weigh about ([\d.]+) kg/.exec(page)![1]);

test('both are in the drawing file on layers of their own, in the picture, and in the steps before gluing', async () => {
  const { of, page, notes } = await built({ recess: 0.006, roundOver: 0.009 });
  expect(notes).toEqual([]);
  // The frame is 262 mm wide, the hole 232 mm.
  expect(circlesOf(of('panels/front.dxf'))).toEqual(expect.arrayContaining(['pocket 131.5', 'cut 116', 'inside 125']));
  expect(of('panels/front.svg')).toContain('recess ⌀ 263, 6 deep of 18');
  expect(of('panels/front.svg')).toContain('inner edge rounded, R 9');
  const step = (words: string) => page.indexOf(words);
  const recess = step('Rout the recess for the driver from outside, 263 mm wide and 6 mm deep');
  const rounded = step('round over the inner edge of the hole of the driver with a radius of 9 mm');
  expect(recess).toBeGreaterThan(step('Mark the centres of the holes'));
  // The middle that the router goes by is gone once the hole is cut.
  expect(step('Cut the holes before gluing')).toBeGreaterThan(recess);
  expect(rounded).toBeGreaterThan(step('Cut the holes before gluing'));
  expect(step('Put the box together dry')).toBeGreaterThan(rounded);
  // A disc as wide as the hole and as deep as the recess.
  expect(page).toContain(`about ${(Math.PI * 1.16 ** 2 * 0.06).toFixed(2)} L of air that the tuning does not count`);
});

test('what is routed away is not weighed', async () => {
  const [bare, routed] = [
    await built({ density: 5000 }),
    await built({ density: 5000, recess: 0.008, roundOver: 0.01 }),
  ];
  // A ring between hole and recess; of the rounded edge the ring of a square less its quarter circle, whose middle is 2.23 mm from the hole.
  const ring = (Math.PI / 4) * (0.263 ** 2 - 0.232 ** 2) * 0.008;
  const edge = (1 - Math.PI / 4) * 0.01 ** 2 * 2 * Math.PI * (0.116 + 0.00223);
  expect(massOf(bare.page) - massOf(routed.page)).toBeCloseTo(5000 * (ring + edge), 0);
  expect(bare.page).not.toContain('Rout the recess');
});

test('without room for it beside a mitre the rest is drawn, and the steps are silent about it', async () => {
  const [hole] = plainWork().box!.holes;
  const { of, page, notes } = await built(
    { recess: 0.006, joint: { mitre: {} } },
    { holes: [{ ...hole!, across: 0.1365 }] },
  );
  expect(circlesOf(of('panels/front.dxf'))).toEqual(['cut 116', 'note 131']);
  expect(notes.join()).toMatch(
    /What is routed around the holes of the drivers is not drawn\. On the front, the recess/,
  );
  expect(page).not.toContain('Rout the recess');
});

test('bolts that would come out in the rounded edge are told', async () => {
  const bolts = { count: 8, circle: 0.247, hole: 0.005 };
  const printer = { width: 0.3, height: 0.25 };
  const { of, notes, page } = await built({ bolts, roundOver: 0.009, printer });
  // The frame is then the template for its screws, which must not come out there either.
  expect(page).toContain('Keep to full thickness where the screws of the frame go in');
  expect(notes.join()).toContain('Bolts of the driver come out in the rounded edge behind it, of 9 mm');
  expect(circlesOf(of('panels/front.dxf'))).toEqual(expect.arrayContaining(['inside 125']));
  const clear = await built({ bolts, roundOver: 0.004, printer });
  expect(clear.notes).toEqual([]);
  expect(clear.page).not.toContain('Keep to full thickness');
});

test('what does not fit is told in the unit of the pages', async () => {
  const sheets = [{ length: 0.3, width: 0.3 }];
  const bolts = { count: 8, circle: 0.247, hole: 0.005 };
  const { notes } = await filesToBuildFrom(plainWork({ tools: { sheets, bolts, roundOver: 0.009 }, unit: 'in' }));
  const text = notes.join(' ').replace(/\u00a0/g, ' ');
  // 280 mm by 280 mm is left of the sheet.
  expect(text).toContain('(trimmed to 11.02 in by 11.02 in)');
  expect(text).toContain('the rounded edge behind it, of 0.3543 in');
  expect(text).not.toMatch(/\d mm/);
});

test('a name that looks like a length is left as it is written', async () => {
  const sheets = [{ length: 0.3, width: 0.3 }];
  const boards = [{ name: 'shelf of 12 mm', count: 1, length: 0.5, width: 0.4, thickness: 0.012 }];
  const { notes } = await filesToBuildFrom(plainWork({ tools: { sheets }, unit: 'in' }, { boards }));
  const text = notes.join(' ').replace(/\u00a0/g, ' ');
  expect(text).toContain('shelf of 12 mm is 19.69 in by 15.75 in and fits no sheet');
});

test('drawings tell lengths in the unit of the pages, and the files for machines stay in millimetres', async () => {
  const { files } = await filesToBuildFrom(plainWork({ unit: 'in' }));
  const of = (path: string) => String(files.find((file) => file.path === path)!.contents);
  const front = of('panels/front.svg');
  // 360 mm by 400 mm, the driver 180 mm from the left.
  expect(front).toContain('Front: 14.173 × 15.748 × 0.709 in');
  expect(front).toContain('lengths in inches');
  expect(front).toMatch(/>7\.087<\/text>/);
  expect(front).toContain('driver: ⌀ 9.134 through');
  expect(front.replace(/width="\d+(\.\d+)?mm" height="\d+(\.\d+)?mm"/, '')).not.toMatch(/\d mm\b/);
  expect(circlesOf(of('panels/front.dxf'))).toEqual(['cut 116', 'note 131']);
  const page = of('build.html');
  expect(page).toContain('Lengths in DXF files are millimetres.');
  expect(page).toContain('Box: 14.173 × 15.748 × 18.898 in outside');
  const metric = await filesToBuildFrom(plainWork({ unit: 'cm' }));
  expect(String(metric.files.find(({ path }) => path === 'panels/front.svg')!.contents)).toContain(
    'Front: 36 × 40 × 1.8 cm',
  );
});

test('a driver that would then meet what stands behind it is told', async () => {
  const driver = { what: 'driver', least: [0.064, 0.134, 0.018], greatest: [0.296, 0.366, 0.118] };
  const vent = { what: 'vent', least: [0.1, 0.15, 0.121], greatest: [0.17, 0.22, 0.4] };
  const near = await built({ recess: 0.006 }, { solids: [driver, vent] });
  expect(near.notes.join()).toContain('In a recess a driver stands 6 mm deeper, and would meet the vent inside.');
  expect((await built({ recess: 0.003 }, { solids: [driver, vent] })).notes).toEqual([]);
  const shallow = { outer: { width: 0.36, height: 0.4, depth: 0.14 }, solids: [driver] };
  expect((await built({ recess: 0.006 }, shallow)).notes.join()).toContain('would meet the panel behind it');
});

test('deeper than half of the board, or rounder than what is left of it: refused where it is written', () => {
  const faults = (workshop: object) =>
    faultsOf(() => readBrief({ ...demo, workshop }, standard)).map(({ path, got, expected }) => [path, got, expected]);
  expect(faults({ recess: '9 mm', roundOver: '9 mm' })).toEqual([]);
  expect(faults({ recess: '9.5 mm' })).toEqual([
    ['workshop.recess', '9.5 mm', 'at most half of space.panelThickness, 18 mm'],
  ]);
  expect(faults({ roundOver: '19 mm' })).toEqual([
    ['workshop.roundOver', '19 mm', 'at most space.panelThickness, 18 mm'],
  ]);
  expect(faults({ recess: '6 mm', roundOver: '13 mm' })).toEqual([
    ['workshop.roundOver', '13 mm', 'at most space.panelThickness, 18 mm less workshop.recess, 6 mm'],
  ]);
});

test.each<[string, object, readonly Face[]]>([
  ['a mitre', { recess: '9 mm', joint: { mitre: {} } }, ['front']],
  ['a rabbet as deep as what the recess leaves', { recess: '9 mm', joint: { rabbet: { depth: '9 mm' } } }, ['front']],
  ['a panel that lies between others', { recess: '6 mm' }, ['top']],
])('a design leaves board between a recess and %s: the pages draw it', async (_, workshop, faces) => {
  const edge = faces[0] === 'top' ? 'depth' : 'height';
  const made = toBuild({
    ...demo,
    drivers: demo.drivers.map((driver) => ({ ...driver, faces })),
    box: { ...demo.box, kinds: ['closed'] },
    wanted: { ...demo.wanted, lowest: '45 Hz', fall: '12 dB', level: '85 dB' },
    // Without a recess the frame, 262 mm wide, fits in there.
    space: { ...demo.space, [edge]: '282 mm', exactly: [edge] },
    workshop,
  } as unknown as Brief);
  if (!made.ok) throw new Error(made.line);
  const { files, notes } = await filesToBuildFrom(made.work);
  expect(notes).toEqual([]);
  expect(String(files.find(({ path }) => path === `panels/${faces[0]}.svg`)!.contents)).toContain('recess ⌀ 263');
});

test('a driver that reaches the back panel by its recess alone stands in no box', () => {
  const [driver] = demo.drivers;
  const flat = (workshop: object, depth: string) =>
    bestBoxes(
      searchFor({
        ...demo,
        box: { ...demo.box, kinds: ['closed'] },
        wanted: { ...demo.wanted, lowest: '60 Hz', fall: '20 dB', level: '80 dB' },
        drivers: [{ ...driver, depth }],
        space: { ...demo.space, depth: '160 mm', exactly: ['depth'] },
        workshop,
      }),
    ).some((box) => box !== undefined);
  expect(flat({}, '140 mm')).toBe(true);
  expect(flat({ recess: '1 mm' }, '140 mm')).toBe(true);
  expect(flat({ recess: '6 mm' }, '140 mm')).toBe(false);
});

test('what counts for a new box alone is refused where the box stands, and a list without a sheet everywhere', () => {
  const standing = (workshop: object) => pathsOf(() => readStanding({ ...demoStanding, workshop }, standard));
  expect(standing({ recess: '6 mm', joint: { mitre: {} }, terminals: {} })).toEqual([
    'workshop.recess',
    'workshop.joint',
    'workshop.terminals',
  ]);
  expect(standing({ holeSaws: [], kerf: '2 mm', board: 'birch plywood' })).toEqual([]);
  expect(pathsOf(() => readBrief({ ...demo, workshop: { sheets: [] } }, standard))).toEqual(['workshop.sheets']);
});
