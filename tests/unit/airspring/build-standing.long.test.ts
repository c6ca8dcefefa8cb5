/** Changes of boxes that stand as pages and solids: what slides, what tunes, and what is refused. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Face } from '@airspring/core/space';
import { filesToBuildFrom, type WorkChange, type WorkTubeSet } from '@airspring/workshop/dossier';
import { toSvg } from '@airspring/workshop/drawing';
import { crossings, extentOf, type Mesh, meshFaults } from '@airspring/workshop/mesh';
import { printedTuning, tubeSegments, twoPartVent, ventSegments } from '@airspring/workshop/solid';
import { retrofit, toBuild } from 'airspring';
import { describe, expect, test, vi } from 'vitest';
import { run as command } from '../../../packages/airspring/src/command/run.js';
import { changeWorkOf } from '../../../packages/airspring/src/page/change-work.js';
import { chosenOf } from '../../../packages/airspring/src/standing/chosen.js';
import { workedOut } from '../../../packages/airspring/src/standing/retrofit.js';
import { bentPanels } from '../../../packages/workshop/src/dossier/standing-panel.js';
import { demoStanding } from '../../arbitrary/standing.js';

vi.setConfig({ testTimeout: 60_000 });

const briefs = fileURLToPath(new URL('../../../packages/airspring/briefs', import.meta.url));
const standing = readdirSync(briefs).filter((name) => 'standing' in briefOf(name));
function briefOf(name: string): Record<string, unknown> {
  return JSON.parse(readFileSync(join(briefs, name), 'utf8'));
}
/** The answer is worked out once for all that is built of it. */
const worked = workedOut(demoStanding);
const { answer } = worked;

const made = new Map<string, ReturnType<typeof changeWorkOf>>();
function built(only: string) {
  const chosen = chosenOf(worked, only);
  if (!('what' in chosen)) throw new Error('there is no such change');
  const work = made.get(only) ?? changeWorkOf(chosen, worked);
  made.set(only, work);
  return work;
}
const changeOf = (only: string): WorkChange => {
  const work = built(only);
  if (!('change' in work)) throw new Error('no change');
  return work.change as WorkChange;
};
async function pageOf(only: string) {
  const { files } = await filesToBuildFrom(built(only));
  return String(files[0]!.contents).replace(/\u00a0/g, ' ');
}

test.each(standing)(
  '%s: what the report says to do first is built by the command, every file is named',
  async (name) => {
    const folder = mkdtempSync(join(tmpdir(), 'airspring-standing-'));
    const { status, out, error } = await command(['build', join(briefs, name), '--into', 'made'], folder);
    expect([status, error]).toEqual([0, '']);
    expect(out).toContain('Open build.html first.');
    const first = name === 'old-thunder-box.json' ? answer : retrofit(briefOf(name));
    expect(out).toContain(first.rows[first.first!]!.change);
    const page = readFileSync(join(folder, 'made/build.html'), 'utf8');
    expect(page).not.toMatch(/undefined|NaN|Infinity|\[object/);
    expect(page).not.toMatch(/<script|src="http|href="http/);
    const named = [...page.matchAll(/<li>([\w./-]+\.\w{3})<\/li>/g)].map(([, path]) => path!);
    const there = readdirSync(join(folder, 'made'), { recursive: true, encoding: 'utf8' }).filter((path) =>
      /\.\w+$/.test(path),
    );
    expect(named.sort()).toEqual(there.filter((path) => path !== 'build.html').sort());
    // A box that is kept has no cut list of six panels.
    expect(there).not.toContain('cut-list.csv');
    // What is made has a file: tubes to print, or boards to cut.
    expect(there.length).toBeGreaterThan(1);
  },
);

test('the head of the pages of a change says so where its vent may be heard at the wanted level', () => {
  const numbered = answer.rows.filter((row) => row.ok).map((row, i) => [String(i + 1), row] as const);
  const heads = numbered.flatMap(([only, { account }]) => {
    const chosen = chosenOf(worked, only);
    if (!('what' in chosen) || account.noise === undefined) return [];
    return [[changeWorkOf(chosen, worked).summary, account.noise.quiet.level] as const];
  });
  expect(heads.length).toBeGreaterThan(3);
  for (const [summary, quiet] of heads) {
    const heard = quiet < answer.asked.level - 0.05;
    expect([summary, summary.includes(`: it is quiet up to ${quiet.toFixed(1)} dB only.`)]).toEqual([summary, heard]);
  }
});

describe('a set of tubes', () => {
  const numbers = answer.tubeSets.filter(({ proposed }) => proposed.length > 0).map((_, i) => `set ${i + 1}`);
  const sets = numbers.map((only) => [only, changeOf(only).set as WorkTubeSet] as const);
  const partsOf = (set: WorkTubeSet, length: number) => {
    const vent = twoPartVent({
      diameter: set.diameter as never,
      wall: Math.min(set.wall, (set.hole - 5e-4 - set.diameter) / 2) as never,
      length: length as never,
      panelThickness: '15 mm',
      hole: set.hole as never,
      flangeDiameter: set.flangeDiameter as never,
      cord: '2 mm',
      fineness: '0.02 mm',
    });
    if (!vent.ok) throw new Error(vent.because[0]?.text);
    return vent;
  };
  const distances = ({ corners }: Mesh, from = 0, to = Infinity) => {
    const found: number[] = [];
    for (let i = 0; i < corners.length; i += 3)
      if (corners[i + 2]! >= from && corners[i + 2]! <= to) found.push(Math.hypot(corners[i]!, corners[i + 1]!));
    return found;
  };
  const most = (values: readonly number[]) => values.reduce((a, b) => Math.max(a, b), 0);
  const least = (values: readonly number[]) => values.reduce((a, b) => Math.min(a, b), Infinity);

  test.each(sets)('%s: each tube slides through flange and hole, and rests on its rim', (_, set) => {
    for (const { length } of set.tubes) {
      const { flange, tube, clearance, proud, flangeDiameter, hole, seated } = partsOf(set, length);
      expect(seated).toBe('on the panel');
      for (const mesh of [flange, tube.mesh]) expect([meshFaults(mesh), crossings(mesh)]).toEqual([[], []]);
      // Behind its rim the tube is narrower than the flange by the clearance all round, and than the hole by its play.
      const behind = most(distances(tube.mesh, 0.0041));
      expect(least(distances(flange)) - behind).toBeCloseTo(clearance, 5);
      expect(hole / 2 - behind).toBeGreaterThan(2.4e-4);
      // Its rim does not go through, and the flange covers the edge of the hole.
      expect(most(distances(tube.mesh))).toBeGreaterThan(least(distances(flange)) + 3e-3);
      expect(flangeDiameter).toBeGreaterThanOrEqual(hole + 0.01 - 1e-9);
      expect(flangeDiameter).toBeGreaterThanOrEqual(set.flangeDiameter - 1e-9);
      expect(extentOf(flange).edges[2]).toBeCloseTo(proud, 9);
    }
  });

  test.each(sets)('%s: pieces fit the printer, and end where the tube ends', (_, set) => {
    const length = Math.max(...set.tubes.map((tube) => tube.length));
    const pieces = tubeSegments({
      vent: partsOf(set, length),
      printer: { width: '180 mm', depth: '180 mm', height: '180 mm' },
    });
    if (!pieces.ok) throw new Error(pieces.because[0]?.text);
    for (const { name, mesh } of pieces.parts) {
      expect([name, meshFaults(mesh), crossings(mesh)]).toEqual([name, [], []]);
      expect(extentOf(mesh).edges[2]).toBeLessThan(0.1801);
    }
    expect(pieces.cuts.length + 1).toBe(Math.ceil((length + 0.012 * pieces.cuts.length) / 0.18));
  });

  test('is told with the tuning of the report and that of the solid, a tenth of a hertz apart at most', async () => {
    // The first has the thinnest wall, and so the greatest difference.
    for (const [only, set] of sets.slice(0, 1)) {
      const page = await pageOf(only);
      const proposed = answer.tubeSets.filter((one) => one.proposed.length > 0)[
        sets.findIndex(([name]) => name === only)
      ]!;
      for (const { option } of proposed.proposed) {
        const { length, account } = proposed.options[option]!;
        const mm = Math.round(length * 1e3);
        expect(set.tubes.map((tube) => Math.round(tube.length * 1e3))).toContain(mm);
        const told = page.match(
          new RegExp(`<td>T\\d, ${mm} mm</td><td>([\\d.]+) Hz</td><td>([\\d.]+) Hz, (?:within|([\\d.]+))`),
        );
        expect(Number(told?.[1])).toBeCloseTo(account.fb!, 1);
        expect(Math.abs(Number(told?.[2]) - account.fb!)).toBeLessThan(0.15);
      }
    }
  }, 120_000);
});

test('one tube of a set is built by its mark, with its flange and nothing of the others', async () => {
  const { set } = changeOf('t5');
  expect(set?.tubes.map(({ mark }) => mark)).toEqual(['T5']);
  const { files } = await filesToBuildFrom(built('t5'));
  const printed = files.map(({ path }) => path).filter((path) => /^print\/.*stl$/.test(path));
  expect(printed).toContain('print/flange.stl');
  expect(printed.filter((path) => path !== 'print/flange.stl').every((path) => path.startsWith('print/tube-t5-'))).toBe(
    true,
  );
}, 60_000);

test('a tube behind its hole tunes as the whole way through panel and tube', () => {
  const { tubes } = changeOf('3');
  const [tube] = tubes;
  expect(tube?.stands).toEqual({ behindWithin: 0.146 });
  const vent = twoPartVent({ diameter: '50 mm', length: '201 mm', panelThickness: '15 mm' });
  if (!vent.ok) throw new Error();
  const whole = printedTuning({ vent: vent.tube, netVolume: '20 L' });
  const short = twoPartVent({ diameter: '50 mm', length: '186 mm', panelThickness: '15 mm' });
  if (!short.ok) throw new Error();
  const behind = printedTuning({ vent: short.tube, netVolume: '20 L', ahead: '15 mm' });
  expect(behind.drawn).toBeCloseTo(whole.drawn, 9);
  expect(behind.effectiveLength).toBeCloseTo(whole.effectiveLength, 9);
});

test('a bent vent for a hole has a joint before its bend', () => {
  const pieces = (firstWithin?: '80 mm') =>
    ventSegments({
      vent: {
        diameter: '50 mm',
        length: '260 mm',
        bends: [{ leg: '80 mm', angle: '90 deg', centreLineRadius: '56 mm' }],
        flange: { diameter: '76 mm' },
      },
      printer: { width: '250 mm', depth: '250 mm', height: '250 mm' },
      firstWithin,
    });
  const [whole, parted] = [pieces(), pieces('80 mm')];
  expect([whole.ok && whole.cuts, parted.ok && parted.cuts.length]).toEqual([[], 1]);
  expect(parted.ok && parted.cuts[0]).toBeLessThanOrEqual(0.068 + 1e-9);
});

describe('a tube that bends in a box whose places are known', () => {
  const { air: _, ...box } = demoStanding.standing;
  const placed = {
    ...demoStanding,
    // One saw is enough for a tube that bends.
    workshop: { holeSaws: ['76 mm'] },
    standing: {
      ...box,
      outer: { width: '240 mm', height: '480 mm', depth: '290 mm' },
      drivers: [110, 290].map((up) => ({ face: 'front', across: '120 mm', up: `${up} mm` })),
      vents: [{ ...box.vents[0]!, place: { face: 'front', across: '80 mm', up: '430 mm' } }],
    },
  };
  const all = workedOut(placed);
  const only = all.answer.rows.find((row) => row.ok && row.box.tubes.some(({ bend }) => bend))!.change;
  const chosen = chosenOf(all, only);
  if (!('what' in chosen)) throw new Error('there is no such change');
  const work = changeWorkOf(chosen, all);
  const change = work.change as WorkChange;
  const [tube] = change.tubes as [WorkChange['tubes'][number]];
  /** The change with a tube from `from` that bends `towards`; holes in that panel alone. */
  const bentFrom = (from: Face, towards: Face, stands = tube.stands): WorkChange => {
    const { outer, holes } = change.standing!;
    return {
      ...change,
      standing: { outer, holes: holes.map((hole) => ({ ...hole, face: from })) },
      tubes: [{ ...tube, stands, bend: { ...tube.bend!, from, towards } }],
    };
  };
  /** The panel that the tube bends behind, with the words of its page. */
  const drawn = async (from: Face, towards: Face, stands = tube.stands) => {
    const { files } = await filesToBuildFrom({ ...work, change: bentFrom(from, towards, stands) });
    const file = (path: string) => String(files.find((one) => one.path === path)?.contents).replace(/\u00a0/g, ' ');
    return { page: file('build.html'), svg: file(`panels/${from}.svg`) };
  };
  /** The tip of an arrow from the middle of a hole, in parts of its radius, to the right and up. */
  const arrowIn = (svg: string, diameter: number) => {
    const radius = [...svg.matchAll(/<circle cx="([\d.-]+)" cy="([\d.-]+)" r="([\d.-]+)"/g)].map((one) =>
      one.slice(1).map(Number),
    );
    const scale = Number(/scale 1 : ([\d.]+)/.exec(svg)![1]);
    const [x, y, r] = radius.find(([, , one]) => Math.abs(one! * scale - 500 * diameter) < 0.2) as number[];
    const [, tx, ty] = new RegExp(`M${x} ${y}L([\\d.-]+) ([\\d.-]+)`).exec(svg)!;
    return [Math.round((Number(tx) - x!) / r!), Math.round((y! - Number(ty)) / r!)];
  };

  test.each([
    [60, 200],
    [80, 200],
    [110, 160],
    [110, 110],
    [200, 200],
  ])('a printer of %s mm height and %s mm width: the tube is made as told, or bought', async (height, width) => {
    const low = workedOut({ ...placed, printer: { height: `${height} mm`, width: `${width} mm` } });
    const one = chosenOf(low, low.answer.rows.find((row) => row.ok && row.box.tubes.some(({ bend }) => bend))!.change);
    if (!('what' in one)) throw new Error('there is no such change');
    const { files, notes } = await filesToBuildFrom(changeWorkOf(one, low));
    expect(notes).toEqual([]);
    const page = String(files[0]!.contents).replace(/\u00a0/g, ' ');
    const pieces = files.filter(({ path }) => path.endsWith('.stl'));
    expect(pieces.length > 0).toBe(!page.includes('Buy a tube'));
    // The tube is 75 mm wide, its elbow with spigot and socket 126 mm.
    expect(pieces.length > 0).toBe(height >= 75 && width >= 126);
    expect(page.includes('lies on its side')).toBe(pieces.length > 0 && height < 126);
  });

  test('the arrow on the drawing of its panel points where the report turns it', async () => {
    const { from, towards } = tube.bend!;
    expect(from).toBe('front');
    const { page, svg } = await drawn(from, towards);
    const towardsOf = /an elbow of .*? towards the (\w+)/.exec(page);
    expect(towardsOf?.[1]).toBe(towards);
    expect(svg).toContain(`inside, the arm points to the ${towards}`);
    expect(page).toContain(`points to the ${towards} panel, as the arrow on the drawing of the front shows`);
    expect(page).toContain('<li>panels/front.svg</li>');
    expect(svg).not.toMatch(/MDF|fibreboard|covers|against/);
  });

  test.each([
    ['front', 'top', [0, 1]],
    ['front', 'left', [-1, 0]],
    ['back', 'left', [1, 0]],
    ['left', 'front', [1, 0]],
    ['right', 'front', [-1, 0]],
    ['bottom', 'front', [0, 1]],
    ['top', 'back', [0, 1]],
  ] as const)('of a vent in the %s the arm to the %s is drawn as it is seen from outside', (from, towards, way) => {
    // Its drawing alone: the tube need not be made for that.
    const [panel] = bentPanels(bentFrom(from, towards));
    expect(panel?.face).toBe(from);
    expect(arrowIn(toSvg(panel!.drawing).replace(/\u00a0/g, ' '), tube.hole)).toEqual(way.map((one) => one + 0));
  });

  test('of a tube that begins behind its hole no line is drawn to a flange outside', async () => {
    const { page } = await drawn('front', 'top', { behindWithin: 0.146 });
    expect(page).toContain('Turn the tube until its arm points to the top panel');
    expect(page).not.toContain('rim of the flange');
  });
});

test('changes of every sort have their parts, and no panel is cut', () => {
  const rows = answer.rows.filter(({ ok }) => ok);
  const number = (change: string) => String(rows.findIndex((row) => row.change === change) + 1);
  const slot = changeOf(number('a slot'));
  expect(slot.plates.reduce((sum, { count }) => sum + count, 0)).toBe(5);
  expect(slot.openings).toHaveLength(1);
  expect(changeOf(number('the vent closed')).plates.map(({ name }) => name)).toEqual([
    'plug, inner disc',
    'plug, outer disc',
  ]);
  const saw = changeOf(number('a wider vent in a hole cut with the larger saw, straight'));
  expect(saw.openings[0]).toMatchObject({
    form: { diameter: 0.076 },
    how: 'with the 76 mm saw, behind the guide board',
  });
  expect(saw.plates[0]).toMatchObject({ name: 'guide board', hole: 0.076 });
  const wiring = changeOf(number('another wiring'));
  expect([wiring.rewired, wiring.plates, wiring.tubes, wiring.openings]).toEqual([true, [], [], []]);
});

test('what is not there, or is nothing to build, is said in one line', () => {
  const one = toBuild(demoStanding, { only: 'set 9' });
  expect(one.ok ? 'built' : one.line).toBe(
    'there is no change, combination, set or tube "set 9"; there is 1 to 12, A, B, C, set 1 (T1, T2, T3), set 2 (T4, T5), set 3 (T6, T7, T8)',
  );
  const why = (only: string) => JSON.stringify(chosenOf(worked, only));
  expect(why('less level')).toContain('nothing to build');
  expect(why('one driver')).toContain('You want to keep the drivers');
});
