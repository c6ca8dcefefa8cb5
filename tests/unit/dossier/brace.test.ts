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
  expect((await built({}, [tube, post])).notes).toContain('is in its way everywhere');
  expect((await built({ border: 0.3 }, [])).notes).toContain('does not fit between the panels');
  const partition = { what: 'board', least: [0.1, 0.018, 0.018], greatest: [0.118, 0.382, 0.462] };
  expect((await built({}, [partition])).notes).toContain('boards divide the air');
});
