/** A window brace that the workshop asks for: where it stands, that it is cut, and that its air is told. */
import { filesToBuildFrom, type Work, type WorkTools } from '@airspring/workshop/dossier';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../arbitrary/fuzz-runs.js';
import { plainWork } from '../../arbitrary/work.js';

type Solids = NonNullable<NonNullable<Work['box']>['solids']>;

const work = (brace: NonNullable<WorkTools['brace']> | undefined, solids: Solids, bracing = 0): Work =>
  plainWork({ tools: brace ? { brace } : {} }, { bracing, holes: [], solids });

async function built(...input: Parameters<typeof work>) {
  const { files, notes } = await filesToBuildFrom(work(...input));
  const texts = new Map(files.map(({ path, contents }) => [path, String(contents).replace(/\u00a0/g, ' ')]));
  return { page: texts.get('build.html')!, texts, notes: notes.join(' ') };
}

const EDGES = { width: 360, height: 400, depth: 480 };
const axes = ['width', 'height', 'depth'] as const;

test('a brace meets nothing that stands inside, or there is none', async () => {
  const cuboid = fc
    .tuple(
      ...axes.map((axis) =>
        fc.tuple(fc.integer({ min: 18, max: EDGES[axis] - 18 }), fc.integer({ min: 10, max: 160 })),
      ),
    )
    .map((ranges) => ({
      what: 'driver',
      least: ranges.map(([from]) => from! / 1e3),
      greatest: ranges.map(([from, long], k) => Math.min(from! + long!, EDGES[axes[k]!] - 18) / 1e3),
    }));
  await fc.assert(
    fc.asyncProperty(
      fc.array(cuboid, { maxLength: 4 }),
      fc.record({ across: fc.option(fc.constantFrom(...axes), { nil: undefined }) }),
      async (solids, { across }) => {
        const { page, texts, notes } = await built({ ...(across && { across }) }, solids);
        const told =
          /of these pages is a board of 18 mm across the (\w+), its middle ([\d.]+) mm.*?border of ([\d.]+) mm/.exec(
            page,
          );
        if (told === null) {
          expect(notes).toContain('No brace is cut: ');
          expect(texts.has('panels/brace.dxf')).toBe(false);
          return;
        }
        const [axis, at, border] = [axes.indexOf(told[1] as never), Number(told[2]), Number(told[3])];
        if (across) expect(told[1]).toBe(across);
        for (const { least, greatest } of solids) {
          const beside = greatest[axis]! * 1e3 <= at - 9 || least[axis]! * 1e3 >= at + 9;
          const through = axes.every(
            (one, k) =>
              k === axis || (least[k]! * 1e3 >= 18 + border && greatest[k]! * 1e3 <= EDGES[one] - 18 - border),
          );
          expect(beside || through).toBe(true);
        }
        // The spacers reach from the panel to the brace.
        const spacer = Number(/Two spacers sawn ([\d.]+) mm/.exec(page)![1]);
        expect(spacer).toBeCloseTo(at - 27, 1);
      },
    ),
    { numRuns: cases(4) },
  );
});

test('it is cut, nested, drawn, weighed, glued in, and its air is told', async () => {
  const bare = await built(undefined, []);
  const { page, texts, notes } = await built({ across: 'depth', at: 0.2, border: 0.06 }, []);
  expect(notes).toBe('');
  expect(texts.get('cut-list.csv')).toContain('brace,1,364,324,18,MDF,none,,opening');
  expect(texts.get('panels/brace.dxf')).toContain('LWPOLYLINE');
  expect(texts.get('sheets/mdf-1.svg')).toMatch(/brace/);
  expect(page).toMatch(/Glue all panels but the back, with the brace between them.*sawn 173 mm long/);
  // 364 × 324 less its opening, whose corners have a radius of a quarter of the border.
  const wood = 0.018 * (0.364 * 0.324 - 0.244 * 0.204 + (4 - Math.PI) * 0.015 ** 2);
  const mass = (text: string) => Number(/together weigh about ([\d.]+) kg/.exec(text)![1]);
  expect(Math.abs(mass(page) - mass(bare.page) - 750 * wood)).toBeLessThan(0.11);
  const [, litres] = /The brace takes ([\d.]+) L of air/.exec(page)!;
  expect(Number(litres) - 1e3 * wood).toBeGreaterThanOrEqual(0);
  expect(Number(litres) - 1e3 * wood).toBeLessThan(0.1);
  // A tuning goes as one over the root of the volume.
  const raised = 100 * (Math.sqrt(46 / (46 - Number(litres))) - 1);
  expect(page).toContain(`by up to ${raised.toFixed(1)} %`);
  expect((await built({ across: 'depth' }, [], 2e-3)).page).toContain('which the design keeps free for bracing');
  expect(bare.page).toContain('write &quot;brace&quot;: {} into the &quot;workshop&quot;');
});

test('a brace that cannot be says what is in its way', async () => {
  const tube = { what: 'vent', least: [0.02, 0.3, 0.02], greatest: [0.34, 0.38, 0.46] };
  const asked = await built({ across: 'depth', at: 0.24 }, [tube]);
  expect(asked.notes).toContain('No brace is cut: the vent is in its way.');
  const post = { what: 'driver', least: [0.02, 0.02, 0.02], greatest: [0.1, 0.38, 0.1] };
  const both = await built({}, [tube, post]);
  expect(both.notes).toContain('No brace is cut: the vent and the driver are in its way everywhere.');
  expect((await built({ border: 0.3 }, [])).notes).toContain('does not fit between the panels');
  expect((await built({ across: 'depth', at: 0.02 }, [])).notes).toContain('the panel beside it is in its way');
  const hole = { what: 'mouth', face: 'top', across: 0.18, up: 0.24, from: ['left', 'front'] } as const;
  const opened = plainWork(
    { tools: { brace: { across: 'depth', at: 0.24 } } },
    { holes: [{ ...hole, form: 'circle', diameter: 0.1 }] },
  );
  expect((await filesToBuildFrom(opened)).notes.join(' ')).toContain('the mouth is in its way');
});

/** A box of 0.9 m of depth that a partition across it divides; its near side is so far from the front. */
const divided = (
  wall: number,
  brace: NonNullable<WorkTools['brace']>,
  {
    solids = [],
    bracing = [0, 0],
  }: { readonly solids?: Solids; readonly bracing?: readonly [front: number, behind: number] } = {},
) => {
  const thickness = 0.018;
  const board = { name: 'partition', size: [0.324, 0.364], from: [thickness, thickness, wall] } as const;
  const hole = { what: 'driver', face: 'front', board, across: 0.16, up: 0.18, from: ['left', 'bottom'] } as const;
  const [from, to] = [wall + thickness, 0.9 - thickness];
  const air = (length: number) => 0.324 * 0.364 * length;
  return plainWork(
    { tools: { brace } },
    {
      outer: { width: 0.36, height: 0.4, depth: 0.9 },
      bracing: bracing[1],
      solids,
      holes: [{ ...hole, form: 'circle', diameter: 0.2 }],
      boards: [{ name: 'partition', count: 1, length: 0.324, width: 0.364, thickness }],
      chambers: [
        {
          ...{ name: 'front chamber', across: 'depth', from: thickness, to: wall },
          ...{ netVolume: air(wall - thickness), vented: true },
          ...{ bracing: bracing[0], bracingIn: ['partition', 'frontBracing'] as const },
        },
        {
          ...{ name: 'closed chamber', across: 'depth', from, to },
          ...{ netVolume: air(to - from), vented: false },
          ...{ bracing: bracing[1], bracingIn: ['space', 'bracing'] as const },
        },
      ],
    },
  );
};
async function toldOf(work: Work) {
  const { files, notes } = await filesToBuildFrom(work);
  const texts = new Map(files.map(({ path, contents }) => [path, String(contents).replace(/\u00a0/g, ' ')]));
  return { texts, notes: notes.join(' '), page: texts.get('build.html')! };
}
const litresTold = (page: string) => Number(/The brace takes ([\d.]+) L/.exec(page)![1]) / 1e3;

test('beside a partition a brace stands in one chamber, clear of it, and its air is that of the chamber', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 100, max: 800 }), async (wall) => {
      const work = divided(wall / 1e3, {});
      const { page, texts } = await toldOf(work);
      const [, axis, middle] = /is a board of 18 mm across the (\w+), its middle ([\d.]+) mm/.exec(page)!;
      expect(axis).toBe('depth');
      const at = Number(middle);
      expect(at + 9 <= wall || at - 9 >= wall + 18).toBe(true);
      expect(texts.get('cut-list.csv')).toContain('brace,1,364,324,18');
      const front = at < wall;
      const { netVolume } = work.box!.chambers![front ? 0 : 1]!;
      const taken = litresTold(page);
      const raised = (100 * (Math.sqrt(netVolume / (netVolume - taken)) - 1)).toFixed(1);
      expect(page).toContain(`from the ${front ? 'front' : 'closed'} chamber`);
      expect(page).toContain(
        `raises the ${front ? 'tuning of the front' : 'resonance of the closed'} chamber by up to ${raised} %`,
      );
      const sawn = Number(/Two spacers sawn ([\d.]+) mm long, between it and/.exec(page)![1]);
      expect(sawn).toBeCloseTo(front ? at - 27 : at - 9 - wall - 18, 1);
      expect(page.includes('between it and the partition before it')).toBe(!front);
    }),
    { numRuns: cases(3) },
  );
});

test('air that is kept for bracing is that of its own chamber', async () => {
  const kept = [0, 5e-3] as const;
  const behind = { across: 'depth', at: 0.6 } as const;
  const inFront = { across: 'depth', at: 0.15 } as const;
  const enough = (name: string) => `from the ${name} chamber, which the design keeps free for bracing`;
  expect((await toldOf(divided(0.3, behind, { bracing: kept }))).page).toContain(enough('closed'));
  const { page } = await toldOf(divided(0.3, inFront, { bracing: kept }));
  expect(page).toContain('and the design keeps none free for it there');
  const written = /Write "frontBracing": "([\d.]+) L" into the "partition" of the brief/.exec(
    page.replaceAll('&quot;', '"'),
  );
  // With what it says to write, it is counted.
  const counted = divided(0.3, inFront, { bracing: [Number(written![1]) / 1e3, 0] });
  expect((await toldOf(counted)).page).toContain(enough('front'));
  expect((await toldOf(divided(0.3, behind))).page.replaceAll('&quot;', '"')).toMatch(
    /Write "bracing": "[\d.]+ L" into the "space"/,
  );
});

test('a partition is in the way of a brace across it, and is named with the other things', async () => {
  const driver = { what: 'driver', least: [0.06, 0.06, 0.2], greatest: [0.3, 0.34, 0.8] };
  const across = await toldOf(divided(0.3, { across: 'width' }));
  expect(across.notes).toContain('No brace is cut: the partition is in its way everywhere.');
  const { notes } = await toldOf(
    divided(0.3, { border: 0.08 }, { solids: [driver, { ...driver, what: 'vent', least: [0.02, 0.02, 0.02] }] }),
  );
  expect(notes).toContain('No brace is cut: the driver, the vent and the partition are in its way everywhere.');
  const at = await toldOf(divided(0.3, { across: 'depth', at: 0.31 }));
  expect(at.notes).toContain('No brace is cut: the partition is in its way.');
});

test('a partition holds the panels as a brace does', async () => {
  const rings = (page: string) => {
    const text = page.slice(page.indexOf('Panels that ring'));
    return Number(/<td>bottom, top<\/td><td>[^<]+<\/td><td>(\d+) to/.exec(text)![1]);
  };
  const work = divided(0.44, {});
  const alone = await toldOf({ ...work, tools: {}, box: { ...work.box!, holes: [] } });
  const held = await toldOf({ ...work, tools: {} });
  expect(held.page).toContain('The partition holds the panels as a brace does');
  expect(alone.page).not.toContain('as a brace does');
  expect(rings(held.page)).toBeGreaterThan(1.1 * rings(alone.page));
});

test('between the boards of a line a brace makes it narrower, and that is told by its resonances', async () => {
  const board = { what: 'board', least: [0.018, 0.018, 0.441], greatest: [0.342, 0.28, 0.459] };
  const work = divided(0.3, { across: 'depth' }, { solids: [board] });
  const { chambers: _, ...box } = { ...work.box!, holes: [] };
  const { page } = await toldOf({ ...work, box });
  const at = Number(/across the depth, its middle ([\d.]+) mm/.exec(page)![1]);
  expect(at <= 441 - 9 || at >= 459 + 9).toBe(true);
  const part = (100 * litresTold(page)) / box.netVolume;
  expect(page).toContain(`moves the resonances of the line by up to ${part.toFixed(1)} %`);
  expect(page).not.toContain('raises the tuning');
});
