/** Whatever a workshop has: pages name files, sections and drawings that are there, and what has no place on a sheet is cut all the same. */
import { filesToBuildFrom, type Work } from '@airspring/workshop/dossier';
import { standardShapes } from '@airspring/workshop/shape';
import { type Design, standard } from 'airspring';
import { expect, test as one } from 'vitest';
import bench from '../../../packages/airspring/briefs/whale-bench.json' with { type: 'json' };
import van from '../../../packages/airspring/briefs/whale-van.json' with { type: 'json' };
import { readBrief } from '../../../packages/airspring/src/brief/read.js';
import { standardModels } from '../../../packages/airspring/src/brief/standard-models.js';
import { workOf } from '../../../packages/airspring/src/page/work.js';
import { memory } from '../../../packages/airspring/src/search/search.js';
import { balanced, searchFor } from '../../arbitrary/brief.js';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { maybe, noNumber } from '../../arbitrary/odd-input.js';
import { fc, test } from '../../arbitrary/property.js';
import { plainWork } from '../../arbitrary/work.js';
import { faultsOf } from '../../refusal/faults.js';

const options = { shapes: standardShapes };
const vent = { smallest: '70 mm', largest: '70 mm' };
const flanks = { width: '520 mm', height: '420 mm', depth: '400 mm', panelThickness: '15 mm', bracing: '0.5 L' };
/** One of each form of box: round vents straight or bent, a slot, a partition, a shape that is no cuboid, and no vent at all. */
const briefs = {
  vented: { ...bench, vent: { ...bench.vent, ...vent, bends: 0 } },
  flared: { ...bench, box: { kinds: ['flared-vented'] }, vent: { ...bench.vent, ...vent } },
  slot: { ...bench, box: { kinds: ['slot-vented'] } },
  closed: { ...bench, wanted: { ...bench.wanted, lowest: '60 Hz' }, box: { kinds: ['closed'] } },
  wedge: {
    ...van,
    space: { ...flanks, shape: { wedge: { top: '180 mm' } } },
    vent: { ...van.vent, quiet: false, smallest: '60 mm', largest: '60 mm' },
  },
} as const;
const designOf = memory((name: string): Design => {
  const brief = briefs[name as keyof typeof briefs];
  return balanced(searchFor(brief as never, standard, options))!.designs[0]!;
});

const mm = (least: number, most: number) => fc.integer({ min: least, max: most }).map((size) => `${size} mm`);
const workshops = fc.record(
  {
    sheets: fc.array(
      fc.record(
        { length: mm(60, 2600), width: mm(60, 1300), count: fc.integer({ min: 1, max: 2 }) },
        { requiredKeys: ['length', 'width'] },
      ),
      { minLength: 1, maxLength: 2 },
    ),
    joint: fc.oneof(
      fc.constantFrom({ butt: {} }, { mitre: {} }),
      mm(2, 20).map((depth) => ({ rabbet: { depth } })),
    ),
    kerf: mm(0, 8),
    trim: mm(0, 40),
    board: fc.constantFrom('birch plywood', 'Sperrholz, 9-lagig', 'фанера', '"<b>"'),
    grain: fc.boolean(),
    bolts: fc.record({ count: fc.integer({ min: 2, max: 12 }), circle: mm(200, 300), hole: mm(3, 12) }),
    terminals: fc.constant({}),
    recess: mm(1, 10),
    roundOver: mm(1, 19),
    nozzle: fc.constantFrom('0.25 mm', '0.6 mm', '1.2 mm'),
    brace: fc.record(
      { across: fc.constantFrom('width', 'height', 'depth'), at: mm(20, 400), border: mm(20, 120) },
      { requiredKeys: [] },
    ),
  },
  { requiredKeys: [] },
);

/** Every claim of a page about files, drawings and sections beside it, checked against what is there. */
async function claimsHold(work: Work): Promise<void> {
  const { files, notes } = await filesToBuildFrom(work);
  const paths = files.map(({ path }) => path);
  expect(new Set(paths).size).toBe(paths.length);
  for (const path of paths) expect(path).toMatch(/^([a-z0-9]+(-[a-z0-9]+)*\/)?[a-z0-9]+(-[a-z0-9]+)*\.[a-z0-9]+$/);
  const page = String(files[0]!.contents).replace(/\u00a0/g, ' ');
  expect(page).not.toMatch(noNumber);
  const named = [...page.matchAll(/<li>([^<]+\.(?:csv|svg|dxf|stl|3mf))<\/li>/g)].map(([, path]) => path);
  expect(named).toEqual(paths.slice(1));
  const has = (start: string) => paths.some((path) => path.startsWith(start));
  const says = (words: RegExp, start: string) => {
    if (words.test(page)) expect([String(words), has(start)]).toEqual([String(words), true]);
  };
  says(/numbered lines/, 'sheets/');
  says(/by the cut list|of the cut list/, 'cut-list.csv');
  says(/the drawings show|Drawings show/, 'panels/');
  for (const [, face] of page.matchAll(/drawing of the (left|right|bottom|top|front|back)\b/g))
    expect(paths).toContain(`panels/${face}.svg`);
  for (const [, folder] of page.matchAll(/folder (vent-\d)/g)) expect(has(`${folder}/`)).toBe(true);
  for (const [, piece] of page.matchAll(/<td>\d+ ×<\/td><td>(vent[^<]*)<\/td>/g))
    expect(paths.some((path) => path.endsWith(`/${piece!.replace(/[^a-z0-9]+/g, '-')}.stl`))).toBe(true);
  const sections = [...page.matchAll(/<h2>([^<]+)<\/h2>/g)].map(([, title]) => title);
  for (const [, title] of page.matchAll(/under &quot;([^&]+)&quot;|&quot;(What these pages leave out)&quot;/g))
    if (title !== undefined) expect(sections).toContain(title);
  for (const note of notes) expect(note).not.toMatch(noNumber);
}

test.prop([fc.constantFrom(...Object.keys(briefs)), workshops, maybe(fc.constantFrom('in', 'cm'))], {
  numRuns: cases(36),
})(
  'a brief with any workshop is refused at the path of its fault, or its pages keep what they say',
  async (name, workshop, unit) => {
    const brief = { ...briefs[name as keyof typeof briefs], workshop, units: { length: unit ?? 'mm' } };
    const read = () => readBrief(brief, standard, standardModels, undefined, standardShapes);
    const faults = faultsOf(read);
    if (faults.length > 0) {
      for (const { path } of faults) expect(path).toMatch(/^workshop\./);
      return;
    }
    await claimsHold(workOf(designOf(name), read()));
  },
  120_000,
);

one('where no sheet takes a panel, only the sheets are lost', async () => {
  const pathsOf = async (tools: Work['tools']) => (await filesToBuildFrom(plainWork({ tools }))).files;
  const whole = await pathsOf({});
  const files = await pathsOf({ sheets: [{ length: 0.6, width: 0.3 }] });
  const without = whole.map(({ path }) => path).filter((path) => !path.startsWith('sheets/'));
  expect(files.map(({ path }) => path)).toEqual(without);
  for (const { path, contents } of whole.slice(1)) {
    if (path.startsWith('sheets/')) continue;
    expect(files.find((other) => other.path === path)!.contents).toEqual(contents);
  }
  const page = String(files[0]!.contents).replace(/\u00a0/g, ' ');
  // Both sizes, and what to do.
  expect(page).toContain('front and back are each 400 mm by 360 mm and fit no sheet (trimmed to 580 mm by 280 mm)');
  expect(page).toContain('write the sheets that you can get into &quot;sheets&quot; of the &quot;workshop&quot;');
  expect(page).toContain('Cut the panels by the cut list.');
  expect(page).toContain('All pieces together weigh about');
  expect(page).toContain('Panels that ring');
  expect(page).not.toContain('numbered lines');
});

one('where a cutout has no room, its place is listed, and the rest is drawn all the same', async () => {
  const [hole] = plainWork().box!.holes;
  const { files, notes } = await filesToBuildFrom(plainWork({}, { holes: [{ ...hole!, across: 0.135 }] }));
  expect(files.map(({ path }) => path)).toContain('cut-list.csv');
  expect(notes.join()).toContain('The drawings have no holes');
  expect(String(files[0]!.contents).replace(/\u00a0/g, ' ')).toContain('<td>135 mm from left, 250 mm from bottom</td>');
});
